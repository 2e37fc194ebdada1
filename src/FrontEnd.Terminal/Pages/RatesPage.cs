using FrontEnd.Documents.Sheets;
using FrontEnd.Rates;

namespace FrontEnd.Terminal;

/// <summary>The sampling rates against each other.</summary>
internal sealed record RatesPage : StudyPage
{
    /// <summary>The way to it.</summary>
    public static readonly Act Way = new(
        '\0', [], "sampling rates compared, with a recommendation", model => OpenStudy(model, new RatesPage())) { Under = 'r' };

    /// <inheritdoc/>
    public override string Title => "sampling rates";

    /// <inheritdoc/>
    public override string Does => "Evaluates the design at each rate.";

    /// <inheritdoc/>
    public override StudyOutcome Work(Design design, Action<double> progress, CancellationToken cancellation)
    {
        RateComparison comparison = RateStudy.Compare(design, null, cancellation);
        List<RateOption> options = [.. comparison.Options.Where(option => option.IsWorkedOut)];
        return new StudyOutcome(
            width => RatesText.Of(comparison, width),
            [.. options.Select(option => new StudyChoice(
                $"{QuantityText.FormatTrimmed(option.Rate.Hertz, "1", 6)} S/s", RateStudy.AtRate(design, option.Rate), option.Because))],
            comparison.Pick is { } pick ? Math.Max(0, options.IndexOf(pick)) : 0);
    }
}
