using System.CommandLine;
using FrontEnd.Documents;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Recordings;
using FrontEnd.Documents.Sheets;
using FrontEnd.Reporting;
using FrontEnd.Simulation;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend samples</c>: what the designed device would deliver, sample by sample, on an invented head.</summary>
internal static class SamplesCommand
{
    /// <summary>Values that are made without a word: a second or two.</summary>
    private const long Few = 2_000_000;

    /// <summary>How much longer a value takes, about, where everything goes from node to node.</summary>
    private const int StepsCost = 20;

    /// <summary>Samples in files, and a picture of them.</summary>
    private static readonly string[] Extensions = [.. SampleFiles.Extensions, SamplesDrawing.Extension];

    public static Command Make(Outlet outlet)
    {
        Argument<string> design = new("design") { Description = "design file, TOML or plain-number JSON" };
        Option<string?> length = new("--length") { Description = $"how long, up to {QuantityText.FormatPart(SampleWish.Longest)}; default: {QuantityText.FormatPart(new SampleWish().Length)}" };
        Option<string> seed = SpreadCommand.SeedOption();
        Option<string[]> signals = new("--signal")
        {
            Description = $"a signal of the simulated head, followed by `=` and its amplitude if not the usual one: {string.Join("; ", HeadSignal.All.Select(one => $"{one.Word} ({one.What})"))}. May be given several times, or with commas; default: only noise, mains and the design's patches",
            HelpName = "name",
        };
        Option<string[]> without = new("--without") { Description = "leave out: hum, electrodes, a noise source by its name in the budget, such as folded or quantisation, or a stage, digital filter or patch by its name. May be given several times, or with commas; default: nothing", HelpName = "name" };
        Option<bool> counts = new("--counts") { Description = "write converter counts; default: volts at the electrodes" };
        Option<string?> beside = new("--beside") { Description = "second design to show beside the first, with the same seed; files hold the first design's samples; default: none", HelpName = "design" };
        Option<string?> day = new("--date") { Description = "recording date for an .edf, such as 2026-11-26; default: the first of January 2026, so that the same samples give the same file", HelpName = "day" };
        Option<string[]> files = new("--output", "-o")
        {
            Description = $"file to write; its extension sets the format: {string.Join(", ", Extensions)}. May be given several times; an existing file is replaced; default: only print the summary",
            HelpName = "file",
        };
        Option<bool> json = OptionValues.Json();
        Command command = new("samples",
            "Simulates the samples that the designed device would deliver on an invented head: nobody is recorded. Compares them with the noise budget, and writes them to files. Exit code 0: done, 2: an input cannot be used, 130 or 143: interrupted.") { design,
            length, seed, signals, without, counts, beside, day, files, json };
        command.SetAction(call => Run(new Asked(call.GetRequiredValue(design), call.GetValue(beside), call.GetValue(files) ?? [])
        {
            Length = call.GetValue(length), Seed = call.GetRequiredValue(seed), Signals = call.GetValue(signals) ?? [], Without = call.GetValue(without) ?? [],
            Counts = call.GetValue(counts), Day = call.GetValue(day), Json = call.GetValue(json),
        }, outlet));
        return command;
    }

    /// <summary>A call as it was typed.</summary>
    private sealed record Asked(string Design, string? Beside, string[] Files)
    {
        public IEnumerable<string> Pictures => Files.Where(file => SheetFormats.Knows(file, [SamplesDrawing.Extension]));

        public string? Length { get; init; }

        public required string Seed { get; init; }

        public string[] Signals { get; init; } = [];

        public string[] Without { get; init; } = [];

        public bool Counts { get; init; }

        public string? Day { get; init; }

        public bool Json { get; init; }
    }

    private static int Run(Asked asked, Outlet outlet)
    {
        List<Finding> wrong = [];
        SampleWish wish = Wish(asked, wrong);
        wrong.AddRange(asked.Files.Where(file => !SheetFormats.Knows(file, Extensions)).Select(file => WritingMessages.SamplesFormat(file, Extensions)));
        wrong.AddRange(CallMessages.NamedTwice(asked.Files));
        SampleFileWish written = new() { InSteps = asked.Counts, Day = OptionValues.Day(asked.Day, "--date", wrong), Version = AnswerJson.Version };
        if (asked.Day is not null && !Array.Exists(asked.Files, file => SheetFormats.Knows(file, [SampleFiles.Dated])))
        {
            wrong.Add(CallMessages.SaysNothing("--date", $"anything but a file that ends in {SampleFiles.Dated}"));
        }

        if (asked.Counts && !Array.Exists(asked.Files, file => SheetFormats.Knows(file, SampleFiles.Extensions)))
        {
            wrong.Add(CallMessages.OptionAlone("--counts", "--output"));
        }

        if (wrong.Count != 0)
        {
            outlet.Tell(wrong);
            return ExitCode.Unusable;
        }

        if (Prepared(asked.Design, wish, outlet) is not { } first)
        {
            return ExitCode.Unusable;
        }

        // A picture of samples that lack something shows them whole as well.
        string? other = asked.Beside ?? (0 < wish.Without.Count && asked.Pictures.Any() ? asked.Design : null);
        Made? second = other is null ? null : Prepared(other, asked.Beside is null ? wish with { Without = [] } : wish, outlet);
        return other is not null && second is null ? ExitCode.Unusable : Make(asked, written, first, second, outlet);
    }

    /// <summary>What is simulated, of what is typed.</summary>
    private static SampleWish Wish(Asked asked, List<Finding> wrong)
    {
        Duration? length = OptionValues.Quantity<Duration>(asked.Length, "--length", wrong);
        HeadSignal[] signals = [.. Each(asked.Signals).Select(text => HeadSignal.Parse(text, wrong)).OfType<HeadSignal>()];
        return new SampleWish { Length = length ?? new SampleWish().Length, Seed = SpreadCommand.Seed(asked.Seed, wrong), Signals = signals, Without = [.. Each(asked.Without)] };
    }

    /// <summary>Names that were given one by one or with commas between them.</summary>
    private static IEnumerable<string> Each(string[] texts) => texts.SelectMany(text => text.Split(',', StringSplitOptions.TrimEntries));

    /// <summary>A design that is ready to be simulated.</summary>
    /// <param name="Assessment">Of the design without what is left out.</param>
    /// <param name="Findings">What the samples do not hold.</param>
    private sealed record Made(SampleRun Run, Results.Assessment Assessment, IReadOnlyList<Finding> Findings);

    /// <summary>Null where it cannot be, and the outlet has been told why.</summary>
    private static Made? Prepared(string path, SampleWish wish, Outlet outlet)
    {
        if (DesignInput.Usable(path, outlet) is not { } document)
        {
            return null;
        }

        Results.Assessment assessment = Evaluator.Evaluate(document.Design);
        if (!assessment.HasFigures)
        {
            outlet.Tell(assessment.Findings.Where(finding => finding.Severity == Severity.Error).Select(document.Placed));
            return null;
        }

        List<Finding> found = [];
        SampleRun? run = SampleRun.Prepare(document.Design, wish, found);
        Finding[] findings = [.. found.Select(finding => finding.Field.StartsWith("--", StringComparison.Ordinal) ? finding : document.Placed(finding))];
        outlet.Tell(findings);
        return run is null ? null : new Made(run, wish.Without.Count == 0 ? assessment : Evaluator.Evaluate(run.Design), findings);
    }

    private static int Make(Asked asked, SampleFileWish wish, Made first, Made? second, Outlet outlet)
    {
        SampleRun run = first.Run;
        SampleLook? own = null, beside = null;
        IReadOnlyList<WrittenSamples>? files = null;
        Finding? problem = null;
        string what = $"simulating {QuantityText.FormatPart(run.Wish.Length)} of {run.Channels.Count} channel{(run.Channels.Count == 1 ? "" : "s")}";
        long values = run.Count * run.Channels.Count * (run.IsStepByStep ? StepsCost : 1);
        int? ended = LongWork.Samples(what, Few < values, outlet, (progress, cancellation) =>
        {
            beside = second is null ? null : Look(second, wish, [], progress, cancellation, out _, out _);
            own = Look(first, wish, [.. asked.Files.Except(asked.Pictures)], progress, cancellation, out files, out problem);
        });
        if (ended is { } code)
        {
            return code;
        }

        if (own is null || (problem = Draw(asked, first, own, beside)) is not null)
        {
            outlet.Tell(problem!);
            return ExitCode.Unusable;
        }

        SampleAnswer answer = new(Answered(own, first), beside is null ? null : Answered(beside, second!), files!);
        outlet.Results.Write(asked.Json ? AnswerJson.Of(answer, asked.Files) : SamplesText.Of(answer));
        outlet.NameBeside(asked.Json, asked.Files);
        return ExitCode.Met;
    }

    private static SampledDesign Answered(SampleLook look, Made made) => new(look.Run, look.Summary) { Findings = made.Findings };

    /// <summary>Makes the samples, into files if there are any; null with a finding where one cannot be written.</summary>
    private static SampleLook? Look(Made made, SampleFileWish wish, string[] paths, IProgress<int>? progress, CancellationToken cancellation,
        out IReadOnlyList<WrittenSamples>? files, out Finding? problem)
    {
        SampleLook.Builder look = new(made.Run, SamplesDrawing.Shown);
        files = SampleFiles.Write(made.Run, made.Assessment, wish, paths, look.Take, progress, cancellation, out problem);
        return files is null ? null : look.Whole();
    }

    /// <summary>Draws the pictures that are asked for; a finding where one cannot be written.</summary>
    private static Finding? Draw(Asked asked, Made made, SampleLook own, SampleLook? beside)
    {
        string name = asked.Beside is not null ? asked.Design : own.Run.Wish.Without.Count == 0 ? "samples" : "without " + string.Join(", ", own.Run.Wish.Without);
        (SampleLook, string)? second = beside is null ? null : (beside, asked.Beside ?? "with all");
        foreach (string path in asked.Pictures)
        {
            if (TextFiles.WriteAtomically(path, SamplesDrawing.FileOf(made.Assessment, own, name, second)) is { } finding)
            {
                return finding;
            }
        }

        return null;
    }
}
