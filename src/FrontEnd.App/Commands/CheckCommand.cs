using System.CommandLine;
using FrontEnd.Advice;
using FrontEnd.Documents;
using FrontEnd.Documents.Sheets;
using FrontEnd.Reporting;
using FrontEnd.Unknowns;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend check</c>: verdicts, budgets, findings.</summary>
internal static class CheckCommand
{
    public static Command Make(Outlet outlet)
    {
        Argument<string?> design = new("design")
        {
            Description = "design file, TOML or plain-number JSON; default: the starter design",
            Arity = ArgumentArity.ZeroOrOne,
        };
        Option<bool> json = OptionValues.Json();
        Option<bool> plain = new("--no-advice") { Description = "skip the searches for the change that helps each verdict most and for the limits of use, which take longer; default: search" };
        Command command = new("check",
            "Evaluates a design and compares it with its requirements. Exit code 0: all met, 1: some not met, 2: the design cannot be used.") { design,
            json, plain };
        command.SetAction(call => Run(call.GetValue(design), call.GetValue(json), !call.GetValue(plain), outlet));
        return command;
    }

    private static int Run(string? path, bool json, bool advice, Outlet outlet)
    {
        DesignDocument document = DesignInput.Read(path);

        // Figures of a design that was read in part would be figures of another design.
        Assessment assessment = document.HasErrors
            ? new Assessment(document.Design, [], [], Curves.None)
            : document.NotAllKnown is not null ? PartlyKnownEvaluator.Evaluate(document.PartlyKnown!)
            : Evaluator.Evaluate(document.Design);
        Sheet sheet = new(document, advice && assessment.PartlyKnown is null ? Advisor.Advise(assessment) : assessment);
        if (json)
        {
            outlet.Results.Write(AnswerJson.Of(sheet));
        }

        if (sheet.HasErrors)
        {
            outlet.Tell(sheet.Findings);
            return ExitCode.Unusable;
        }

        if (!json)
        {
            outlet.Results.Write(assessment.PartlyKnown is null ? CheckText.Of(sheet) : PartlyKnownText.Of(sheet));
        }

        return assessment.AllRequirementsMet ? ExitCode.Met : ExitCode.NotMet;
    }
}
