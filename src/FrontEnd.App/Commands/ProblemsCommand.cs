using System.CommandLine;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Sheets;
using FrontEnd.Documents.Teaching;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend problems</c>: problem sheets with a key.</summary>
internal static class ProblemsCommand
{
    private const int MostQuestions = 100;

    public static Command Make(Outlet outlet)
    {
        Argument<string?> homework = new("homework") { Description = "homework file (.toml), as --homework names it; default: none", Arity = ArgumentArity.ZeroOrOne };
        Option<string[]> topics = new("--topic") { Description = $"what the problems are about: {string.Join(", ", Topics.Words)}; may be given several times; default: all, taking turns", HelpName = "topic" };
        Option<string?> count = new("--count") { Description = $"questions on a sheet, 1 to {MostQuestions}; default: 10",
            HelpName = "number" };
        Option<string?> seed = new("--seed") { Description = "whole number from 0 that fixes all numbers; the same seed and secret give the same sheets; default: 1", HelpName = "number" };
        Option<string?> secret = new("--secret") { Description = "file with a secret of 16 or more letters that nobody can guess: without it nobody can draw the sheets or the key; default: none, with a warning", HelpName = "file" };
        Option<string?> level = new("--level") { Description = "1: one formula, 2: choose or convert first, 3: several steps or a judgement; default: all", HelpName = "1..3" };
        Option<string?> plan = new("--homework") { Description = "homework file (.toml) that says which templates or topics, how many, points, course, date due and paper, instead of --topic, --count, --level and --seed; it may name files of your own templates, and what a slip earns", HelpName = "file" };
        Option<string?> students = new("--students") { Description = "list of students with the first row id,name: each gets a sheet with other numbers; default: one sheet for all", HelpName = "file" };
        Option<string[]> own = new("--templates") { Description = "file of templates of your own, TOML; they join the program's. May be given several times; with --list they are checked and listed; default: none", HelpName = "file" };
        Option<string?> folder = new("--output",
            "-o") { Description = "folder for problems.pdf and problems.html (to print), answers-blank.csv (to copy and fill in), sheets/ and key/; existing files are replaced, but never answers",
            HelpName = "folder" };
        Option<string?> paper = OptionValues.Paper();
        Option<string?> qti = new("--qti") { Description = "package of QTI 2.2 to write (.zip), for a test program: an item for each question of each sheet", HelpName = "file" };
        Option<string?> bank = new("--bank") { Description = "table of all questions to write (.csv): id, text, givens, unit, answer, low, high, solution", HelpName = "file" };
        Option<bool> again = new("--again") { Description = "write into a folder that holds answers; a list that is filled in, and the key of another homework, are kept there under another name" };
        Option<bool> only = new("--list") { Description = "only list the kinds of problems; nothing is written" };
        Option<bool> json = new("--json") { Description = "print JSON: with --list the kinds of problems; else every file written, what was drawn with, the questions without their answers, and the code on each student's sheet; default: text" };
        Command command = new("problems",
            "Writes problem sheets with numbers drawn for each student, and a key with worked solutions apart from them.") { homework, topics, count,
            seed, secret, level, plan, students, own, folder, again, paper, qti, bank, only, json };
        command.SetAction(call => Run(
            new ProblemsCall(call.GetValue(topics)
                ?? [], call.GetValue(count), call.GetValue(seed), call.GetValue(level), call.GetValue(students))
            {
                ListOnly = call.GetValue(only), Json = call.GetValue(json), Folder = call.GetValue(folder), Secret = call.GetValue(secret), Paper = call.GetValue(paper),
                Qti = call.GetValue(qti), Bank = call.GetValue(bank), Again = call.GetValue(again), Plan = call.GetValue(plan) ?? call.GetValue(homework), PlanTwice = call.GetValue(plan) is not null && call.GetValue(homework) is not null, Templates = call.GetValue(own) ?? [],
            },
            outlet));
        return command;
    }

    private static int Run(ProblemsCall call, Outlet outlet)
    {
        List<Finding> findings = [];
        if (call.PlanTwice)
        {
            findings.Add(CallMessages.Call("the homework file is named twice, by --homework and without it", "frontend problems"));
        }

        HomeworkPlan? plan = call.Plan is { } path ? ReadPlan(call, path, findings) : null;
        List<Topic> topics = Named(call.Topics, findings);
        int count = plan?.Questions ?? OptionValues.Whole(call.Count, "--count", 1, MostQuestions, findings) ?? 10;
        int? level = OptionValues.Whole(call.Level, "--level", 1, 3, findings);
        ulong seed = plan is null ? OptionValues.Whole(call.Seed, "--seed", 0UL, ulong.MaxValue, findings) ?? 1 : (ulong)plan.Seed;
        (IReadOnlyList<Student> students, DrawSource source) = call.ListOnly
            ? new HomeworkClass([], new DrawSource(seed))
            : HomeworkClass.Read(call.Students, call.Secret, call.Folder, seed, findings);
        IReadOnlyList<Template> own = call.Plan is null ? OwnTemplateFile.ReadAll(call.Templates, findings) : plan?.OwnTemplates ?? [];
        SheetLook look = SheetLook.Of(plan ?? new HomeworkPlan());
        look = call.Paper is null ? look : look with { Paper = OptionValues.PaperOf(call.Paper, findings) };
        if (!call.ListOnly && (call.Folder ?? call.Qti ?? call.Bank) is null)
        {
            findings.Add(CallMessages.Call("nothing is asked for", "frontend problems", "-o names the folder to write to, --qti and --bank a file, and --list only lists"));
        }

        string[] inputs = Inputs(call, plan);
        if (call.Folder is { } place && !call.ListOnly)
        {
            findings.AddRange(HomeworkFolder.Wrong(place, inputs, call.Again));
        }

        findings.AddRange(new[] { call.Qti, call.Bank }.OfType<string>().Select(output => HomeworkFolder.Lost(output, inputs)).OfType<Finding>());
        if (findings.Exists(finding => finding.Severity == Severity.Error))
        {
            // Nothing is drawn, with a secret or without one.
            outlet.Tell(findings.Where(finding => finding.Code != Messages.SecretMissing));
            return ExitCode.Unusable;
        }

        IReadOnlyList<Template> templates = TemplateSet.Fitting(topics, level, own);
        if (templates.Count == 0)
        {
            outlet.Tell(Messages.NoTemplate());
            return ExitCode.Unusable;
        }

        if (call.ListOnly)
        {
            outlet.Tell(findings);
            outlet.Results.Write(call.Json ? AnswerJson.Of(templates) : TemplateList.Of(templates));
            return ExitCode.Met;
        }

        if (plan is null && templates.Count < count)
        {
            findings.Add(Messages.AskedAgain(count, templates.Count));
        }

        outlet.Tell(findings);
        Homework homework = plan is null ? Homework.Make(topics, level, count, source, students, own) : Homework.Make(plan, source, students);
        WrittenHomework written = new(homework, students) { Findings = findings };
        if (((call.Folder is null ? null : Write(call.Folder, written, look)) ?? WriteExchange(call, written)) is { } problem)
        {
            Kept(written, outlet);
            outlet.Tell(problem);
            return ExitCode.Unusable;
        }

        if (call.Json)
        {
            outlet.Results.Write(AnswerJson.Of(written));
            return ExitCode.Met;
        }

        Kept(written, outlet);
        Tell(call, written, count, outlet);
        return ExitCode.Met;
    }

    /// <summary>The homework's file; null with errors where it cannot be used, or where an option says what it says.</summary>
    private static HomeworkPlan? ReadPlan(ProblemsCall call, string path, List<Finding> findings)
    {
        (HomeworkPlan? plan, IReadOnlyList<Finding> read) = HomeworkPlanFile.Read(path, call.Templates);
        findings.AddRange(read);
        if (call.ListOnly)
        {
            return plan;
        }

        (string Option, bool Given)[] said =
            [("--topic", call.Topics.Length > 0), ("--count", call.Count is not null), ("--level", call.Level is not null), ("--seed", call.Seed is not null)];
        findings.AddRange(said.Where(one => one.Given).Select(one => Messages.SaidInHomework(one.Option, path)));
        return plan;
    }

    private static Finding? WriteExchange(ProblemsCall call, WrittenHomework written)
    {
        foreach ((string? path, Func<string, Finding?> write) in new (string?, Func<string, Finding?>)[]
            { (call.Qti, path => TextFiles.WriteAtomically(path, QtiPackage.Of(written.Homework))), (call.Bank, path => TextFiles.WriteAtomically(path, QuestionBank.Of(written.Homework))) })
        {
            if (path is null)
            {
                continue;
            }

            if (write(path) is { } problem)
            {
                return problem;
            }

            written.AddKey(path);
        }

        return null;
    }

    private static Finding? Write(string folder, WrittenHomework written, SheetLook look)
    {
        written.Kept = HomeworkFolder.Keep(folder, written.Homework, out Finding? problem);
        return problem ?? HomeworkFiles.Write(folder, written.Homework, look, written);
    }

    private static void Kept(WrittenHomework written, Outlet outlet)
    {
        foreach (string file in written.Kept)
        {
            outlet.Messages.WriteLine($"kept {file}, which stood in the way");
        }
    }

    /// <summary>Says where everything is.</summary>
    private static void Tell(ProblemsCall call, WrittenHomework written, int count, Outlet outlet)
    {
        if (call.Folder is { } folder)
        {
            Homework homework = written.Homework;
            string sheets = homework.Sheets.Count == 1 ? "1 sheet" : $"{homework.Sheets.Count} sheets", key = Path.Combine(folder, "key");
            outlet.Messages.WriteLine($"wrote {Path.Combine(folder, "problems.pdf")} and {Path.Combine(folder, "problems.html")} to print: {sheets} of {count} questions{(HomeworkFiles.SheetsOfPdf < homework.Sheets.Count ? $", {HomeworkFiles.SheetsOfPdf} in each PDF (problems-2.pdf …)" : "")}");
            outlet.Messages.WriteLine($"the key is in {key}; the list of answers to fill in a copy of is {Path.Combine(folder, "answers-blank.csv")}");
        }

        foreach (string path in new[] { call.Qti, call.Bank }.OfType<string>())
        {
            outlet.Messages.WriteLine($"wrote {path}: it has the answers and is not for students");
        }
    }

    /// <summary>The files that this call reads.</summary>
    private static string[] Inputs(ProblemsCall call, HomeworkPlan? plan) =>
    [
        .. new[] { call.Students, call.Secret, call.Plan }.OfType<string>(), .. call.Templates,
        .. plan is null ? [] : HomeworkPlanFile.Places(plan, call.Plan),
    ];

    private static List<Topic> Named(string[] words, List<Finding> findings)
    {
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

        return topics;
    }

    /// <summary>What was typed.</summary>
    private sealed record ProblemsCall(string[] Topics, string? Count, string? Seed, string? Level, string? Students)
    {
        public bool ListOnly { get; init; }

        public bool Json { get; init; }

        public string? Folder { get; init; }

        public string[] Templates { get; init; } = [];

        public string? Secret { get; init; }

        public string? Plan { get; init; }

        /// <summary>True where it is named with its option and without.</summary>
        public bool PlanTwice { get; init; }

        public string? Paper { get; init; }

        public string? Qti { get; init; }

        public string? Bank { get; init; }

        public bool Again { get; init; }
    }
}
