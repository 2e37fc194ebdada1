using FrontEnd.Bench;
using FrontEnd.Documents.Sheets;

namespace FrontEnd.Terminal;

/// <summary>What the built board should read.</summary>
internal sealed record BenchPage : StudyPage
{
    /// <summary>The way to it.</summary>
    public static readonly Act Way = new(
        '\0', [], "bench: fixtures and the readings to expect", model => OpenStudy(model, new BenchPage())) { Under = 'b' };

    /// <inheritdoc/>
    public override string Title => "bench tests";

    /// <inheritdoc/>
    public override string Does => "Works out what the built board should read.";

    /// <inheritdoc/>
    public override StudyOutcome Work(Design design, Action<double> progress, CancellationToken cancellation)
    {
        (IReadOnlyList<BenchReading> plan, IReadOnlyList<Finding> findings) = BenchPlan.Of(design);
        return findings.Count > 0 ? Refused(findings, "") : new StudyOutcome(width => BenchText.Of(design, plan, width, $"the sheet (Esc, then {Act.WriteSheet.Letter} writes it)"), [], 0);
    }
}
