using System.CommandLine;
using FrontEnd.Documents.Sheets;
using FrontEnd.Reporting;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend explain</c>: why one figure is what it is.</summary>
internal static class ExplainCommand
{
    private const int NearestShown = 5;

    public static Command Make(Outlet outlet)
    {
        Argument<string> design = new("design") { Description = "design file, TOML or plain-number JSON" };
        Argument<string> id = new("id") { Description = "the result's id as `frontend check --all` shows it, such as noise.total" };
        Option<bool> json = OptionValues.Json();
        Command command = new("explain",
            "Shows where a figure comes from: equation, numbers, the same figure by hand, source, verdict, a diagram where it helps, and how it moves with each input. Exit code 0: done, 2: there is no such figure, 130: interrupted.") { design,
            id, json };
        command.SetAction(call => Run(call.GetRequiredValue(design), call.GetRequiredValue(id), call.GetValue(json), outlet));
        return command;
    }

    private static int Run(string path, string id, bool json, Outlet outlet)
    {
        if (DesignInput.Usable(path, outlet) is not { } document)
        {
            return ExitCode.Unusable;
        }

        Assessment assessment = Evaluator.Evaluate(document.Design);
        Finding[] errors = [.. assessment.Findings.Where(finding => finding.Severity == Severity.Error)];
        if (errors.Length > 0)
        {
            outlet.Tell(errors);
            return ExitCode.Unusable;
        }

        if (LongWork.Explain(assessment, id, outlet, out bool cancelled) is not { } explained)
        {
            if (cancelled)
            {
                return ExitCode.Interrupted;
            }

            outlet.Tell(CallMessages.NoResult(id, NearestOf(id, assessment)));
            return ExitCode.Unusable;
        }

        outlet.Results.Write(json ? AnswerJson.Of(explained) : ExplainText.Of(explained));
        return ExitCode.Met;
    }

    /// <summary>The misspelt id first, then ids that share a word with what was asked for.</summary>
    private static List<string> NearestOf(string id, Assessment assessment)
    {
        string[] ids = [.. assessment.Results.Select(result => result.Id.Text)];
        List<string> nearest = Nearest.Of(id, ids) is { } first ? [first] : [];
        string[] words = id.Split(['.', '_', '-'], StringSplitOptions.RemoveEmptyEntries);
        nearest.AddRange(ids.Where(one =>
            Array.Exists(words, word => word.Length > 2 && one.Contains(word, StringComparison.OrdinalIgnoreCase))));
        return [.. nearest.Distinct(StringComparer.Ordinal).Take(NearestShown)];
    }
}
