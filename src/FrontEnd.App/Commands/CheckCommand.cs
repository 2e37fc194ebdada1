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
    // How often a watched file is looked at: soon for an eye, and nothing for the processor.
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(200);

    public static Command Make(Outlet outlet)
    {
        Argument<string[]> designs = new("design")
        {
            Description = "design file, TOML or plain-number JSON; - for the standard input; several give a line each; default: the starter design",
            Arity = ArgumentArity.ZeroOrMore,
        };
        Option<bool> all = new("--all") { Description = "also print the budgets, the limits of use and the defaults with their sources; default: one screen" };
        Option<bool> quiet = new("--quiet", "-q") { Description = "print nothing but errors: the exit code says it" };
        Option<bool> watch = new("--watch") { Description = "check again whenever the file is saved, until interrupted" };
        Option<bool> json = OptionValues.Json();
        Option<bool> plain = new("--no-advice") { Description = "skip the searches for the change that helps each verdict most and for the limits of use, which take longer; default: search" };
        Command command = new("check",
            "Evaluates a design and compares it with its requirements. Exit code 0: all met, 1: some not met, 2: the design cannot be used.") { designs,
            all, quiet, watch, json, plain };
        command.SetAction((call, cancellation) => Task.FromResult(Run(
            new CheckCall(call.GetValue(designs) ?? [], !call.GetValue(plain)) { All = call.GetValue(all), Quiet = call.GetValue(quiet), Json = call.GetValue(json) },
            call.GetValue(watch), outlet, cancellation)));
        return command;
    }

    private static int Run(CheckCall call, bool watch, Outlet outlet, CancellationToken cancellation)
    {
        if (watch && (call.Designs is not [not DesignInput.StandardInput] || call.Json))
        {
            outlet.Tell(CallMessages.Call("--watch cannot be used so", "frontend check", "it wants one design file, which is not the standard input, and no --json"));
            return ExitCode.Unusable;
        }

        if (!watch)
        {
            return call.Designs.Length > 1 ? Several(call, outlet) : One(call, call.Designs is [var path] ? path : null, outlet);
        }

        // The time of before it is read: a save while it is worked out counts.
        string file = call.Designs[0];
        DateTime read = File.GetLastWriteTimeUtc(file);
        int code = One(call, file, outlet);

        // What is held back would be seen at the first change only.
        outlet.Results.Flush();
        while (Changed(file, read, cancellation))
        {
            read = File.GetLastWriteTimeUtc(file);
            outlet.Results.Write($"\n{new string('-', 80)}\n");
            code = One(call, file, outlet);
            outlet.Results.Flush();
        }

        return code;
    }

    /// <summary>Waits until the file is written again; false where the waiting is broken off.</summary>
    private static bool Changed(string path, DateTime before, CancellationToken cancellation)
    {
        while (!cancellation.WaitHandle.WaitOne(BetweenLooks))
        {
            // A file that an editor replaces is away for a moment.
            if (File.Exists(path) && File.GetLastWriteTimeUtc(path) != before)
            {
                return true;
            }
        }

        return false;
    }

    private static int One(CheckCall call, string? path, Outlet outlet)
    {
        Sheet sheet = Checked(path, call.Advice);
        if (call.Json && !call.Quiet)
        {
            outlet.Results.Write(AnswerJson.Of(sheet));
        }

        if (sheet.HasErrors)
        {
            outlet.Tell(sheet.Findings);
            return ExitCode.Unusable;
        }

        if (call is { Json: false, Quiet: false })
        {
            outlet.Results.Write(Text(sheet, call.All, path ?? ""));
        }

        return CodeOf(sheet);
    }

    private static string Text(Sheet sheet, bool all, string path) => (sheet.Assessment.PartlyKnown is not null, all) switch
    {
        (true, true) => PartlyKnownText.Of(sheet),
        (true, false) => PartlyKnownText.Brief(sheet, path),
        (false, true) => CheckText.Of(sheet),
        (false, false) => CheckText.Brief(sheet, path),
    };

    /// <summary>A line for each design, or its whole answer in JSON; the worst of their codes.</summary>
    private static int Several(CheckCall call, Outlet outlet)
    {
        int worst = ExitCode.Met;
        List<string> answers = [];
        int width = Math.Min(44, call.Designs.Max(path => path.Length));
        foreach (string path in call.Designs)
        {
            Sheet sheet = Checked(path, call.Json && call.Advice);
            int code = CodeOf(sheet);
            worst = Math.Max(worst, code);
            if (call.Json)
            {
                answers.Add(AnswerJson.Of(sheet).TrimEnd());
                continue;
            }

            string says = code == ExitCode.Unusable ? sheet.Findings.First(finding => finding.Severity == Severity.Error) is var error ? $"{error.Code} {error.Message}" : ""
                : sheet.Assessment.Judged is [{ Verdict.Kind: VerdictKind.Fail or VerdictKind.Marginal or VerdictKind.Open } first, ..]
                    ? $"{first.Name} {Wording.Value(first)}, {Wording.Limit(first.Verdict)}{(first.Verdict.ClosesInShort is { } closes ? $"; closed by: {closes}" : "")}" : "";
            if (!call.Quiet)
            {
                string sign = code == ExitCode.Unusable ? "x error" : $"{Wording.Sign(Worst(sheet))} {Wording.Word(Worst(sheet))}";
                outlet.Results.WriteLine($"{sign,-12}{path.PadRight(width)}  {says}".TrimEnd());
            }
        }

        if (call is { Quiet: false, Json: true })
        {
            outlet.Results.WriteLine($"[{string.Join(",\n", answers)}]");
        }
        else if (!call.Quiet)
        {
            outlet.Results.WriteLine(Cautions.All[0]);
        }

        return worst;
    }

    private static Sheet Checked(string? path, bool advice)
    {
        DesignDocument document = DesignInput.Read(path);

        // Figures of a design that was read in part would be figures of another design.
        Assessment assessment = document.HasErrors
            ? new Assessment(document.Design, [], [], Curves.None)
            : document.NotAllKnown is not null ? PartlyKnownEvaluator.Evaluate(document.PartlyKnown!)
            : Evaluator.Evaluate(document.Design);
        return new Sheet(document, advice && assessment.PartlyKnown is null ? Advisor.Advise(assessment) : assessment);
    }

    private static VerdictKind Worst(Sheet sheet) => sheet.Assessment.Judged is [var first, ..] ? first.Verdict.Kind : VerdictKind.NotJudged;

    private static int CodeOf(Sheet sheet) =>
        sheet.HasErrors ? ExitCode.Unusable : sheet.Assessment.AllRequirementsMet ? ExitCode.Met : ExitCode.NotMet;

    /// <summary>What was asked for.</summary>
    private sealed record CheckCall(string[] Designs, bool Advice)
    {
        public bool All { get; init; }

        public bool Quiet { get; init; }

        public bool Json { get; init; }
    }
}
