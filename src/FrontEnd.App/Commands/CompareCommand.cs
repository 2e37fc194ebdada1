using System.CommandLine;
using FrontEnd.Compare;
using FrontEnd.Documents;
using FrontEnd.Documents.Sheets;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend compare</c>: what differs between two designs and what each difference does.</summary>
internal static class CompareCommand
{
    public static Command Make(Outlet outlet)
    {
        Argument<string> from = new("a") { Description = "first design file" };
        Argument<string> to = new("b") { Description = "second design file" };
        Option<bool> json = OptionValues.Json();
        Command command = new(
            "compare",
            "Lists the differences between two designs and what each does to each verdict, alone and all together. Exit code 0: done, 2: a design cannot be used.")
        {
            from, to, json,
        };
        command.SetAction(call =>
        {
            DesignDocument? a = DesignInput.Usable(call.GetValue(from)!, outlet), b = DesignInput.Usable(call.GetValue(to)!, outlet);
            if (a is null || b is null)
            {
                return ExitCode.Unusable;
            }

            Comparison comparison = Comparison.Of(a.Design, b.Design);
            outlet.Results.Write(call.GetValue(json) ? AnswerJson.Of(comparison) : CompareText.Of(comparison));
            return ExitCode.Met;
        });
        return command;
    }
}
