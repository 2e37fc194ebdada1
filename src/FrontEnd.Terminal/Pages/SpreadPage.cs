using FrontEnd.Documents.Sheets;
using FrontEnd.Reporting;
using FrontEnd.Spread;

namespace FrontEnd.Terminal;

/// <summary>Thousands of builds of the design.</summary>
/// <param name="Builds">Devices that are drawn.</param>
/// <param name="Seed">Where the drawing begins.</param>
/// <param name="Normal">True for parts that lie normally within their tolerance.</param>
internal sealed record SpreadPage(int Builds = 10_000, ulong Seed = 1, bool Normal = false) : StudyPage
{
    /// <summary>The way to it.</summary>
    public static readonly Act Way = new(
        '\0', [], "spread: thousands of builds with drawn parts, yield", model => OpenStudy(model, new SpreadPage())) { Under = 's' };

    /// <summary>The numbers of builds that + and - go through.</summary>
    private static readonly int[] Counts = [100, 300, 1000, 3000, 10_000, 30_000, 100_000];

    /// <inheritdoc/>
    public override string Title => "spread";

    /// <inheritdoc/>
    public override string Does =>
        "Simulates thousands of builds of this design, every part drawn within its tolerance, and shows how the figures spread: how many meet each requirement, and which parts matter.";

    /// <inheritdoc/>
    public override bool WaitsForStart => true;

    /// <inheritdoc/>
    protected override IEnumerable<KeyHint> WishKeys => [new("+-", "builds"), new("d", "distribution"), new("e", "seed")];

    /// <inheritdoc/>
    public override StudyOutcome Work(Design design, Action<double> progress, CancellationToken cancellation)
    {
        SpreadOptions options = new()
        {
            Builds = Builds, Seed = Seed, Distribution = Normal ? PartDistribution.Normal : PartDistribution.Uniform,

            // One core stays free for the keys.
            Threads = Math.Max(1, Environment.ProcessorCount - 1),
        };
        return SpreadRun.Run(design, options, new Told<int>(builds => progress((double)builds / Builds)), cancellation) is { } result
            ? new StudyOutcome(width => SpreadText.Of(result, width, $"Enter on a figure of the verdicts (Esc, then {Act.ViewVerdicts.Letter})"), [], 0)
            : Refused(Evaluator.Evaluate(design).Findings, "the network of at least one build of this design has no solution");
    }

    /// <inheritdoc/>
    protected override string Wish(Model model) =>
        $"{Builds} builds, seed {Seed}, parts {(Normal ? "normal, tolerance = 3 sigma" : "uniform within tolerance")}";

    /// <inheritdoc/>
    protected override StudyPage? Wished(char letter) => letter switch
    {
        '+' or '=' or '-' =>
            this with { Builds = Counts[Math.Clamp(Array.IndexOf(Counts, Builds) + StepOf(letter), 0, Counts.Length - 1)] },
        'd' => this with { Normal = !Normal },
        'e' => this with { Seed = Seed + 1 },
        _ => null,
    };
}
