using System.CommandLine;
using System.Globalization;
using FrontEnd.Documents;
using FrontEnd.Documents.Teaching;
using FrontEnd.Findings;
using FrontEnd.Teaching;
using FrontEnd.Text;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend problems</c>: problem sheets with a key.</summary>
internal static class ProblemsCommand
{
    private const int MostQuestions = 100;

    public static Command Make(Outlet outlet)
    {
        Option<string[]> topics = new("--topic") { Description = $"what the problems are about: {string.Join(", ", Topics.Words)}; may be given several times; default: all, taking turns", HelpName = "topic" };
        Option<string?> count = new("--count") { Description = $"questions on a sheet, 1 to {MostQuestions}; default: 10", HelpName = "number" };
        Option<string?> seed = new("--seed") { Description = "whole number from 0 that fixes all numbers; the same seed gives the same sheets; default: 1", HelpName = "number" };
        Option<string?> level = new("--level") { Description = "1: one formula, 2: choose or convert first, 3: several steps or a judgement; default: all", HelpName = "1..3" };
        Option<string?> students = new("--students") { Description = "list of students with the first row id,name: each gets a sheet with other numbers; default: one sheet for all", HelpName = "file" };
        Option<string?> folder = new("--output", "-o") { Description = "folder for problems.html (to print), answers-blank.csv (a copy to fill in), sheets/ and key/; files that are there are replaced", HelpName = "folder" };
        Option<bool> only = new("--list") { Description = "only list the kinds of problems that there are; nothing is written" };
        Command command = new("problems", "Writes problem sheets with numbers drawn for each student, and a key with worked solutions apart from them.") { topics, count, seed, level, students, folder, only };
        command.SetAction(call => Run(
            call.GetValue(topics) ?? [], call.GetValue(count), call.GetValue(seed), call.GetValue(level), call.GetValue(students), call.GetValue(only), call.GetValue(folder), outlet));
        return command;
    }

    private static int Run(string[] words, string? countText, string? seedText, string? levelText, string? list, bool only, string? folder, Outlet outlet)
    {
        List<Finding> findings = [];
        List<Topic> topics = [];
        foreach (string word in words)
        {
            if (Topics.Find(word) is { } topic)
            {
                topics.Add(topic);
            }
            else
            {
                findings.Add(Messages.NoTopic(word, Nearest.Of(word, Topics.Words), Topics.Words));
            }
        }

        int count = (int)Whole("--count", countText, 10, 1, MostQuestions, findings);
        int? level = levelText is null ? null : (int)Whole("--level", levelText, 1, 1, 3, findings);
        ulong seed = Whole("--seed", seedText, 1, 0, ulong.MaxValue, findings);
        IReadOnlyList<Student> students = list is null ? [] : ReadStudents(list, findings);
        if (!only && folder is null)
        {
            findings.Add(CallMessages.Call("-o with a folder to write to is missing, or --list", "frontend problems"));
        }

        if (findings.Exists(finding => finding.Severity == Severity.Error))
        {
            outlet.Tell(findings);
            return ExitCode.Unusable;
        }

        int templates = TemplateSet.Fitting(topics, level).Count;
        if (templates > 0 && only)
        {
            outlet.Results.Write(TemplateList.Of(TemplateSet.Fitting(topics, level)));
            return ExitCode.Met;
        }

        if (templates == 0)
        {
            outlet.Tell(Messages.NoTemplate());
            return ExitCode.Unusable;
        }

        if (templates < count)
        {
            findings.Add(Messages.AskedAgain(count, templates));
        }

        outlet.Tell(findings);
        Homework homework = Homework.Make(topics, level, count, seed, students);
        if (HomeworkFiles.Write(folder!, homework) is { } problem)
        {
            outlet.Tell(problem);
            return ExitCode.Unusable;
        }

        string sheets = homework.Sheets.Count == 1 ? "1 sheet" : $"{homework.Sheets.Count} sheets";
        outlet.Messages.WriteLine($"wrote {Path.Combine(folder!, "problems.html")} to print: {sheets} of {count} questions");
        outlet.Messages.WriteLine($"the key is in {Path.Combine(folder!, "key")}; the list of answers to fill in a copy of is {Path.Combine(folder!, "answers-blank.csv")}");
        return ExitCode.Met;
    }

    private static IReadOnlyList<Student> ReadStudents(string path, List<Finding> findings)
    {
        string? text = TextFiles.Read(path, out Finding? unread);
        if (text is null)
        {
            findings.Add(unread!);
            return [];
        }

        IReadOnlyList<Student> students = ClassFiles.Students(text, path, findings);
        if (students.Count == 0 && !findings.Exists(finding => finding.Severity == Severity.Error))
        {
            findings.Add(Messages.EmptyTable(path));
        }

        return students;
    }

    private static ulong Whole(string option, string? text, ulong usual, ulong least, ulong greatest, List<Finding> findings)
    {
        if (text is null)
        {
            return usual;
        }

        if (ulong.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out ulong value) && least <= value && value <= greatest)
        {
            return value;
        }

        findings.Add(Messages.NotInRange(option, text, FormattableString.Invariant($"{least} to {greatest}")));
        return usual;
    }
}
