using FrontEnd.Bench;
using FrontEnd.Designs;
using FrontEnd.Documents.Sheets;
using FrontEnd.Documents.Sizing;
using FrontEnd.Findings;
using FrontEnd.Rates;
using FrontEnd.Reporting;
using FrontEnd.Sizing;
using FrontEnd.Spread;
using FrontEnd.Text;

namespace FrontEnd.App.Terminal;

/// <summary>Studies of a whole design, each with a command of its own.</summary>
public enum StudyKind
{
    Rates,
    Spread,
    Sizing,
    Bench,
}

/// <summary>What a study is asked for.</summary>
/// <param name="Builds">Devices that a spread draws.</param>
/// <param name="Normal">True for parts that lie normally within their tolerance.</param>
/// <param name="KeepAmplifier">True where sizing takes the design's own amplifier.</param>
/// <param name="KeepConverter">True where sizing takes the design's own converter.</param>
public sealed record StudyWish(int Builds = 10_000, ulong Seed = 1, bool Normal = false, bool KeepAmplifier = false, bool KeepConverter = false)
{
    /// <summary>The numbers of builds that + and - go through.</summary>
    public static readonly IReadOnlyList<int> BuildCounts = [100, 300, 1000, 3000, 10_000, 30_000, 100_000];
}

/// <summary>What a study found.</summary>
/// <param name="Text">What the command of the same name prints.</param>
/// <param name="Choices">Designs that can be taken over; empty where there is nothing to take.</param>
/// <param name="Pick">The recommended one of them.</param>
public sealed record StudyOutcome(string Text, IReadOnlyList<StudyChoice> Choices, int Pick)
{
    /// <summary>The text in lines.</summary>
    public IReadOnlyList<string> Lines { get; } = Text.TrimEnd('\n').Split('\n');
}

/// <summary>A design to take over, and its name in a few words.</summary>
/// <param name="Note">A sentence about it.</param>
public sealed record StudyChoice(string Word, Design Design, string Note);

/// <summary>Asks the core for a study and the sheets for its text.</summary>
public static class Studies
{
    /// <summary>The study's title, and what it does, for the moment before it is started.</summary>
    public static (string Title, string Does) Words(StudyKind kind) => kind switch
    {
        StudyKind.Rates => ("sampling rates", "Works the design out at each rate."),
        StudyKind.Spread => ("spread", "Draws thousands of devices of this design, every part within its tolerance, and shows how the figures spread: how many meet each requirement, and which parts matter."),
        StudyKind.Sizing => ("size the rest", "Keeps what only you can know: electrodes, band, signals, mains, supply, channels, digital filters and all that is asked for. Searches amplifier, gains, anti-alias filter, converter, rate, ground and protection for complete designs that meet it all. Safety limits are not searched over."),
        StudyKind.Bench => ("bench tests", "Works out what the built board should read."),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Study is not handled."),
    };

    /// <summary>True for a study that takes long enough to be started by hand.</summary>
    public static bool WaitsForStart(StudyKind kind) => kind is StudyKind.Spread or StudyKind.Sizing;

    /// <param name="progress">Told the share that is done, from any thread.</param>
    /// <param name="cancellation">Ends the work with <see cref="OperationCanceledException"/>.</param>
    public static StudyOutcome Run(StudyKind kind, StudyWish wish, Design design, Action<double> progress, CancellationToken cancellation) => kind switch
    {
        StudyKind.Rates => Rates(design, cancellation),
        StudyKind.Spread => Spread(wish, design, progress, cancellation),
        StudyKind.Sizing => Size(wish, design, progress, cancellation),
        StudyKind.Bench => Bench(design),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Study is not handled."),
    };

    private static StudyOutcome Rates(Design design, CancellationToken cancellation)
    {
        RateComparison comparison = RateStudy.Compare(design, null, cancellation);
        List<RateOption> options = [.. comparison.Options.Where(option => option.IsWorkedOut)];
        return new StudyOutcome(
            RatesText.Of(comparison),
            [.. options.Select(option => new StudyChoice($"{QuantityText.FormatTrimmed(option.Rate.Hertz, "1", 6)} S/s", RateStudy.AtRate(design, option.Rate), option.Because))],
            comparison.Pick is { } pick ? Math.Max(0, options.IndexOf(pick)) : 0);
    }

    private static StudyOutcome Spread(StudyWish wish, Design design, Action<double> progress, CancellationToken cancellation)
    {
        SpreadOptions options = new()
        {
            Builds = wish.Builds, Seed = wish.Seed, Distribution = wish.Normal ? PartDistribution.Normal : PartDistribution.Uniform,

            // One core stays free for the keys.
            Threads = Math.Max(1, Environment.ProcessorCount - 1),
        };
        SpreadResult? result = SpreadRun.Run(design, options, new Percents(builds => progress((double)builds / wish.Builds)), cancellation);
        return result is null ? Refused(Evaluator.Evaluate(design).Findings, "some build of this design makes a network without an answer") : new StudyOutcome(SpreadText.Of(result), [], 0);
    }

    private static StudyOutcome Size(StudyWish wish, Design design, Action<double> progress, CancellationToken cancellation)
    {
        PartShelf shelf = SizingFile.Shelf;
        SizingRequest request = new(design, shelf with
        {
            Amplifiers = wish.KeepAmplifier ? [design.Amplifier] : shelf.Amplifiers,
            Converters = wish.KeepConverter ? [design.Converter] : shelf.Converters,
        });
        SizingOutcome outcome = Sizer.Size(request, new Shares(progress), cancellation);
        return outcome.Findings.Count > 0
            ? Refused(outcome.Findings, "")
            : new StudyOutcome(SizeText.Of(request, outcome), [.. outcome.Front.Select((one, at) => new StudyChoice($"design {at + 1}: {one.Summary}", one.Design, $"{one.Summary}; least to spare: {one.LimitedBy}"))], 0);
    }

    private static StudyOutcome Bench(Design design)
    {
        (IReadOnlyList<BenchReading> plan, IReadOnlyList<Finding> findings) = BenchPlan.Of(design);
        return findings.Count > 0 ? Refused(findings, "") : new StudyOutcome(BenchText.Of(design, plan), [], 0);
    }

    private static StudyOutcome Refused(IEnumerable<Finding> findings, string otherwise)
    {
        string text = string.Concat(findings.Where(finding => finding.Severity == Severity.Error).Select(FindingText.Of));
        return new StudyOutcome(text.Length > 0 ? text : otherwise, [], 0);
    }

    /// <summary>Passes on what is told, on the thread that tells it.</summary>
    private sealed class Percents(Action<int> told) : IProgress<int>
    {
        public void Report(int value) => told(value);
    }

    private sealed class Shares(Action<double> told) : IProgress<double>
    {
        public void Report(double value) => told(value);
    }
}
