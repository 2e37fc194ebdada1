using System.CommandLine;
using FrontEnd.Documents.Sheets;
using FrontEnd.Documents.Teaching;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend mark</c>: marks a list of answers.</summary>
internal static class MarkCommand
{
    public static Command Make(Outlet outlet)
    {
        Argument<string> key = new("key") { Description = "the key.json that was written with the sheets" };
        Argument<string> answers = new("answers") { Description = "list of answers, its first row student,question,answer" };
        Option<string[]> output = new("--output", "-o")
        {
            Description = "file to write: marks as a list (.csv), or a page for each student to hand back (.html, .pdf). May be given several times; an existing file is replaced, but never a list of answers or of students; default: only how the class did is printed, with --json also every mark", HelpName = "file",
        };
        Option<string?> half = new("--half-points")
        {
            Description = "yes: part of the points for a known slip, a unit left out, a wrong sign, as the homework's file says or else half; no: points for right answers only, whatever the file says; default: yes", HelpName = "yes|no",
        };
        Option<bool> trust = new("--trust-key") { Description = "use a key that was changed after it was written, or that has no seal; default: refuse it" };
        Option<bool> solutions = new("--solutions") { Description = "pages to hand back show the worked solution of every question that did not earn all its points, with the slip explained" };
        Option<string?> paper = OptionValues.Paper();
        Option<bool> json = OptionValues.Json();
        Command command = new("mark",
            "Marks answers as people write them, with part of the points and a remark where a known slip explains an answer; tells which slips the class made. A number without a unit is read in the unit that the sheet asks for; one that is right in the SI unit instead earns the share of a unit left out.") { key,
            answers, output, half, trust, solutions, paper, json };
        command.SetAction(call => Run(
            new MarkCall(call.GetRequiredValue(key), call.GetRequiredValue(answers), call.GetValue(output) ?? [])
            {
                HalfPoints = call.GetValue(half), TrustKey = call.GetValue(trust), Solutions = call.GetValue(solutions), Paper = call.GetValue(paper), Json = call.GetValue(json),
            },
            outlet));
        return command;
    }

    private static bool IsKey(string path) => string.Equals(Path.GetExtension(path), ".json", StringComparison.OrdinalIgnoreCase);

    private static int Run(MarkCall call, Outlet outlet)
    {
        List<Finding> findings = [.. call.Outputs.SelectMany(output => MarkedClass.Wrong(output, call.Key, call.Answers))];
        Rubric? rubric = RubricOf(call.HalfPoints, findings);
        SheetLook look = new() { Paper = OptionValues.PaperOf(call.Paper, findings) };
        if (findings.Count > 0)
        {
            outlet.Tell(findings);
            return ExitCode.Unusable;
        }

        if (IsKey(call.Answers) && !IsKey(call.Key))
        {
            outlet.Tell(CallMessages.Call("the files are the other way round", "frontend mark", "the key comes first, then the answers"));
            return ExitCode.Unusable;
        }

        MarkedClass? marked = MarkedClass.Read(call.Key, call.Answers, call.TrustKey, rubric, findings);
        outlet.Tell(findings);
        if (marked is null)
        {
            return ExitCode.Unusable;
        }

        foreach (string output in call.Outputs)
        {
            if (marked.Write(output, call.Solutions, look) is { } problem)
            {
                outlet.Tell(problem);
                return ExitCode.Unusable;
            }
        }

        outlet.Results.Write(call.Json ? AnswerJson.Of(marked.Marks, findings, call.Outputs) : MarksText.Of(marked.Marks));
        outlet.NameBeside(call.Json, call.Outputs);
        return ExitCode.Met;
    }

    /// <summary>Null for the key's own.</summary>
    private static Rubric? RubricOf(string? halfPoints, List<Finding> findings)
    {
        switch (halfPoints?.ToLowerInvariant())
        {
            case null or "yes":
                return null;
            case "no":
                return Rubric.RightOnly;
            default:
                findings.Add(CallMessages.NoWord("--half-points", halfPoints, ["yes", "no"], Nearest.Of(halfPoints, ["yes", "no"])));
                return null;
        }
    }

    /// <summary>What was typed.</summary>
    private sealed record MarkCall(string Key, string Answers, string[] Outputs)
    {
        public string? HalfPoints { get; init; }

        public bool TrustKey { get; init; }

        public bool Solutions { get; init; }

        public string? Paper { get; init; }

        public bool Json { get; init; }
    }
}
