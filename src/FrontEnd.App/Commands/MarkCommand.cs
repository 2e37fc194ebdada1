using System.CommandLine;
using FrontEnd.Documents;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Sheets;
using FrontEnd.Documents.Teaching;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend mark</c>: marks a list of answers.</summary>
internal static class MarkCommand
{
    private static readonly string[] Extensions = [".csv", ".html"];

    public static Command Make(Outlet outlet)
    {
        Argument<string> key = new("key") { Description = "the key.json that was written with the sheets" };
        Argument<string> answers = new("answers") { Description = "list of answers, its first row student,question,answer" };
        Option<string[]> output = new("--output", "-o")
        {
            Description = "file to write: marks as a list (.csv), or a page for each student to hand back (.html). May be given several times; an existing file is replaced", Required = true, HelpName = "file",
        };
        Option<bool> json = OptionValues.Json();
        Command command = new("mark",
            "Marks answers as people write them, with part of the points and a remark where a known slip explains an answer; tells which slips the class made.") { key,
            answers, output, json };
        command.SetAction(call =>
            Run(call.GetRequiredValue(key), call.GetRequiredValue(answers), call.GetRequiredValue(output), call.GetValue(json), outlet));
        return command;
    }

    private static int Run(string keyPath, string answersPath, string[] outputs, bool json, Outlet outlet)
    {
        Finding[] wrong = [.. outputs.Where(file =>
            !Extensions.Contains(Path.GetExtension(file), StringComparer.OrdinalIgnoreCase)).Select(file =>
                WritingMessages.Format(file, Extensions))];
        if (wrong.Length > 0)
        {
            outlet.Tell(wrong);
            return ExitCode.Unusable;
        }

        List<Finding> findings = [];
        Key? key = TextFiles.BytesOfClass(keyPath, out Finding? noKey) is { } keyText ? KeyFile.Read(keyText, keyPath, out noKey) : null;
        IReadOnlyList<GivenAnswer>? answers = TextFiles.ReadOfClass(answersPath, out Finding? noAnswers) is { } text
            ? ClassFiles.Answers(text, answersPath, findings)
            : null;
        findings.AddRange(new[] { noKey, noAnswers }.OfType<Finding>());
        if (key is null || answers is null)
        {
            outlet.Tell(findings);
            return ExitCode.Unusable;
        }

        Marks marks = Marker.Mark(key, answers);
        findings.AddRange(marks.Findings.Select(finding => finding with { File = answersPath }));
        outlet.Tell(findings);
        outlet.Results.Write(json ? AnswerJson.Of(marks, findings) : MarksText.Of(marks));
        foreach (string output in outputs)
        {
            bool pages = string.Equals(Path.GetExtension(output), ".html", StringComparison.OrdinalIgnoreCase);
            if (TextFiles.WriteAtomically(output, pages ? ReturnedHtml.Page(key, marks) : ClassFiles.MarksTable(marks)) is { } problem)
            {
                outlet.Tell(problem);
                return ExitCode.Unusable;
            }

            outlet.Messages.WriteLine($"wrote {output}");
        }

        return ExitCode.Met;
    }
}
