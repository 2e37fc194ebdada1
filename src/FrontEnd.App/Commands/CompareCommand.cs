using System.CommandLine;
using System.Text;
using FrontEnd.Compare;
using FrontEnd.Documents;
using FrontEnd.Documents.Sheets;
using FrontEnd.Identity;
using FrontEnd.Results;
using FrontEnd.Text;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend compare</c>: what differs between two designs and what each difference does.</summary>
internal static class CompareCommand
{
    public static Command Make(Outlet outlet)
    {
        Argument<string> from = new("a") { Description = "first design file" };
        Argument<string> to = new("b") { Description = "second design file" };
        Option<bool> json = new("--json") { Description = "print JSON with numbers in SI units; default: text" };
        Command command = new("compare", "Lists what differs between two designs and what each difference does to each verdict, alone and all together. Exit code 0: done, 2: a design cannot be used.") { from, to, json };
        command.SetAction(call =>
        {
            DesignDocument? a = DesignInput.Usable(call.GetValue(from)!, outlet), b = DesignInput.Usable(call.GetValue(to)!, outlet);
            if (a is null || b is null)
            {
                return ExitCode.Unusable;
            }

            Comparison comparison = Comparison.Of(a.Design, b.Design);
            outlet.Results.Write(call.GetValue(json) ? AnswerJson.Of(comparison) : Words(comparison));
            return ExitCode.Met;
        });
        return command;
    }

    private static string Words(Comparison comparison)
    {
        StringBuilder text = new();
        text.AppendLine(comparison.Differences.Count == 0 ? "the designs do not differ" : $"{comparison.From.Design.Name} -> {comparison.To.Design.Name}");
        foreach (Difference difference in comparison.Differences)
        {
            text.AppendLine().AppendLine($"{difference.Key}: {difference.From} -> {difference.To}");
            AddChanges(text, comparison, difference.Alone);
        }

        if (comparison.Differences.Count > 0)
        {
            text.AppendLine().AppendLine("all together");
            AddChanges(text, comparison, comparison.To);
        }

        return text.ToString();
    }

    private static void AddChanges(StringBuilder text, Comparison comparison, Assessment changed)
    {
        bool any = false;
        foreach (ResultId id in comparison.JudgedIds)
        {
            string before = Shown(comparison.From.Find(id)), after = Shown(changed.Find(id));
            if (before != after)
            {
                any = true;
                text.AppendLine($"  {id}: {before} -> {after}");
            }
        }

        if (!any)
        {
            text.AppendLine("  no judged figure changes");
        }
    }

    private static string Shown(Result? result) => result is null
        ? "none"
        : $"{(result.State == ResultState.Number ? QuantityText.Format(result.Value) : result.Text ?? "no limit found")} ({Wording.Word(result.Verdict.Kind)})";
}
