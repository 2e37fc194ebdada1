using System.CommandLine;
using FrontEnd.Documents;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Sheets;
using FrontEnd.Documents.Teaching;
using FrontEnd.Teaching;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend lesson</c>: short guided experiments.</summary>
internal static class LessonCommand
{
    /// <summary>The lesson's design, to go on with.</summary>
    private const string DesignExtension = ".toml";

    private static readonly string[] Extensions = [.. LessonPages.Extensions, DesignExtension];

    public static Command Make(Outlet outlet)
    {
        Argument<string?> name = new("name") { Description = "the lesson; default: list them", Arity = ArgumentArity.ZeroOrOne };
        Option<string?> design = new("--design") { Description = "run it on this design, TOML or plain-number JSON; default: the lesson's own", HelpName = "file" };
        Option<string?> value = new("--to") { Description = "another value to change to, such as \"25 kΩ\"; default: the lesson's", HelpName = "value" };
        Option<bool> answers = new("--answers") { Description = "print question and answer at once; default: on a terminal, ask first and wait" };
        Option<string[]> files = new("--output", "-o")
        {
            Description = $"file to write; its extension decides what: {string.Join(" and ", LessonPages.Extensions)} a page to print, with the answer on a sheet of its own, {DesignExtension} the lesson's design. May be given several times; a file that exists is replaced; default: print the lesson",
            HelpName = "file",
        };
        Option<bool> json = OptionValues.Json();
        Command command = new("lesson",
            "Runs a short guided experiment: a question about a design, a prediction, one change, the figures before and after, and why. Exit code 0: done, 2: something cannot be used.")
        {
            name, design, value, answers, files, json,
        };
        command.SetAction(call => Run(
            new Asked(call.GetValue(name), call.GetValue(design), call.GetValue(value), call.GetValue(files) ?? [])
            {
                AtOnce = call.GetValue(answers), Json = call.GetValue(json),
            },
            outlet));
        return command;
    }

    /// <summary>A call as it was typed.</summary>
    private sealed record Asked(string? Name, string? Design, string? Value, string[] Files)
    {
        public bool AtOnce { get; init; }

        public bool Json { get; init; }
    }

    private static int Run(Asked asked, Outlet outlet)
    {
        List<Finding> wrong =
        [
            .. asked.Files.Where(file => !SheetFormats.Knows(file, Extensions)).Select(file => WritingMessages.Format(file, Extensions)),
            .. CallMessages.NamedTwice(asked.Files),
        ];
        if (asked.Name is null)
        {
            string[] alone = [.. asked.Design is null ? (string[])[] : ["--design"], .. asked.Value is null ? (string[])[] : ["--to"], .. asked.Files.Length == 0 ? (string[])[] : ["--output"]];
            wrong.AddRange(alone.Select(option => CallMessages.OptionAlone(option, "the name of a lesson")));
        }

        Lesson? lesson = asked.Name is null ? null : Lessons.Find(asked.Name);
        if (asked.Name is not null && lesson is null)
        {
            string[] names = [.. Lessons.All.Select(one => one.Name)];
            wrong.Add(Messages.NoLesson(asked.Name, Nearest.Of(asked.Name, names), names));
        }

        if (wrong.Count != 0)
        {
            outlet.Tell(wrong);
            return ExitCode.Unusable;
        }

        if (lesson is null)
        {
            outlet.Results.Write(asked.Json ? AnswerJson.Of(Lessons.All) : LessonText.List(Lessons.All));
            return ExitCode.Met;
        }

        return Work(asked, lesson, outlet);
    }

    private static int Work(Asked asked, Lesson lesson, Outlet outlet)
    {
        DesignDocument? own = null;
        if (asked.Design is { } file && (own = DesignInput.Usable(file, outlet)) is null)
        {
            return ExitCode.Unusable;
        }

        List<Finding> findings = [];
        LessonOutcome? outcome = LessonRun.Work(lesson, own, asked.Value, findings);
        outlet.Tell(findings);
        if (outcome is null)
        {
            return ExitCode.Unusable;
        }

        foreach (string path in asked.Files)
        {
            Finding? problem = SheetFormats.Knows(path, [DesignExtension])
                ? TextFiles.WriteAtomically(path, own?.Text ?? LessonRun.DesignText(lesson))
                : LessonPages.Write(path, outcome, asked.Design);
            if (problem is not null)
            {
                outlet.Tell(problem);
                return ExitCode.Unusable;
            }

            outlet.NameBeside(asked.Json, [path]);
        }

        if (asked.Json)
        {
            outlet.Results.Write(AnswerJson.Of(outcome, asked.Design, asked.Files));
        }
        else if (asked.Files.Length == 0)
        {
            Print(asked, outcome, outlet);
        }

        return ExitCode.Met;
    }

    private static void Print(Asked asked, LessonOutcome outcome, Outlet outlet)
    {
        if (asked.AtOnce || outlet.Answers is not { } person)
        {
            outlet.Results.Write(LessonText.Of(outcome, asked.Design));
            return;
        }

        outlet.Results.Write(LessonText.Question(outcome));
        int? said = Ask(outcome, person, outlet);

        // A screen at a time: what came of it, why, and what must be said.
        string answer = LessonText.Answer(outcome, said, asked.Design);
        foreach (string label in (string[])["\nthoughts ", "\nwhy ", "\ncautions\n"])
        {
            int at = answer.IndexOf(label, StringComparison.Ordinal);
            if (0 < at)
            {
                outlet.Results.Write("\n" + answer[..at].TrimStart('\n') + $"\nEnter: {label.Trim()} ");
                outlet.Results.Flush();
                _ = person.ReadLine();
                answer = answer[at..];
            }
        }

        outlet.Results.Write(answer);
    }

    /// <summary>Asks until a letter of a choice comes; null where nothing is answered.</summary>
    private static int? Ask(LessonOutcome outcome, TextReader person, Outlet outlet)
    {
        string letters = string.Join(", ", outcome.Choices.Select((_, at) => LessonText.Letter(at)));
        while (true)
        {
            outlet.Results.Write($"\nYour prediction ({letters}; Enter alone shows the answer): ");
            outlet.Results.Flush();
            string? line = person.ReadLine()?.Trim();
            if (string.IsNullOrEmpty(line))
            {
                return null;
            }

            int choice = char.ToLowerInvariant(line[0]) - LessonText.Letter(0);
            if (line.Length == 1 && 0 <= choice && choice < outcome.Choices.Count)
            {
                return choice;
            }

            outlet.Results.Write($"`{line}` is none of {letters}.");
        }
    }
}
