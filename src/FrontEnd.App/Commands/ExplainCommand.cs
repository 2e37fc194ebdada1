using System.CommandLine;
using FrontEnd.Advice;
using FrontEnd.Documents.Sheets;
using FrontEnd.Findings;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Text;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend explain</c>: why one figure is what it is.</summary>
internal static class ExplainCommand
{
    private const int NearestShown = 5;

    public static Command Make(Outlet outlet)
    {
        Argument<string> design = new("design") { Description = "design file, TOML or plain-number JSON" };
        Argument<string> id = new("id") { Description = "the result's id as `frontend check` shows it, such as noise.total" };
        Command command = new("explain", "Shows where a figure comes from: equation, numbers, the same figure by hand, source, verdict, a diagram where it helps, and how it moves with each input.") { design, id };
        command.SetAction(call => Run(call.GetRequiredValue(design), call.GetRequiredValue(id), outlet));
        return command;
    }

    private static int Run(string path, string id, Outlet outlet)
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

        if (assessment.Find(id) is not { } asked)
        {
            outlet.Tell(CallMessages.NoResult(id, NearestOf(id, assessment)));
            return ExitCode.Unusable;
        }

        Assessment advised = Advisor.Advise(assessment);
        outlet.Results.Write(ExplainText.Of(advised, advised[asked.Id], Sensitivity.Of(assessment, asked.Id)));
        return ExitCode.Met;
    }

    /// <summary>The misspelt id first, then ids that share a word with what was asked for.</summary>
    private static List<string> NearestOf(string id, Assessment assessment)
    {
        string[] ids = [.. assessment.Results.Select(result => result.Id.Text)];
        List<string> nearest = Nearest.Of(id, ids) is { } first ? [first] : [];
        string[] words = id.Split(['.', '_', '-'], StringSplitOptions.RemoveEmptyEntries);
        nearest.AddRange(ids.Where(one => Array.Exists(words, word => word.Length > 2 && one.Contains(word, StringComparison.OrdinalIgnoreCase))));
        return [.. nearest.Distinct(StringComparer.Ordinal).Take(NearestShown)];
    }
}
