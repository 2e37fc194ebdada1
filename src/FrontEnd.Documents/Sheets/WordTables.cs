using System.Globalization;
using FrontEnd.DesignedFilters;
using FrontEnd.Digital;
using FrontEnd.Filters;

namespace FrontEnd.Documents.Sheets;

/// <summary>What finite words do to a digital filter, in both forms, as tables of plain text.</summary>
internal static class WordTables
{
    public static void Write(TextPage page, WordStudy study)
    {
        page.Blank();
        page.Line("coefficients as rounded, the same in both forms");
        page.Table(
            [new("word", IsText: true), new("poles move"), new("poles", IsText: true), new("dc gain"), new("zero at dc", IsText: true),
                new("headroom")],
            [.. study.Words.Select(Coefficients)]);
        page.Blank();
        page.Line("round-off at the output, rms; states with the sample's LSB");
        page.Table(
            [new("word", IsText: true), new("form", IsText: true), new("round-off"), new("limit cycle, at most"), new("found")],
            [.. study.Words.SelectMany(word => word.Forms.Select(form => Form(word, form)))]);
        page.Paragraph(
            "In fixed point both forms give the same bits: each section's sum is exact and rounded once. In floating point the round-off follows the signal: "
            + "its share of a dc level at the input, such as an electrode offset, is shown.", "  ");
        page.Paragraph(
            "With no input, a fixed-point filter can stay in a limit cycle. At most: a bound on it that carries every section's rounding through the sections after it; "
            + "found: the largest cycle seen when the whole filter was run from many starting states. There may be larger ones below the bound.", "  ");
        foreach (WordRemedy remedy in study.Remedies)
        {
            page.Paragraph($"{DigitalArithmetic.WordOf(remedy.Word)}: {remedy.Remedy}", "  - ");
        }

        page.Blank();
        page.Line("growth from the input to each section's output");
        page.Table(
            [new("no."), new("any input (L1)"), new("white noise, rms (L2)"), new("sine (L-infinity)")],
            [.. study.Growth.Select(
                (n, i) => new Row([$"{i + 1}", FilterPage.Plain(n.L1, 4), FilterPage.Plain(n.L2, 4), FilterPage.Plain(n.LInfinity, 4)]))]);
    }

    private static Row Coefficients(WordResult word)
    {
        WordFigures figures = word.Coefficients;
        return new Row(
        [
            DigitalArithmetic.WordOf(word.Word),
            figures.PoleMovement == 0 ? "0" : Power(figures.PoleMovement),
            Standing(figures.Standing),
            figures.DcGain is { } gain ? FilterPage.Plain(gain, 6) : "pole at 0 Hz",
            Word(word.DcZero),
            figures.IsStable ? $"{figures.HeadroomBits} bit" : "-",
        ]);
    }

    internal static string Word(DcZero zero) => zero switch
    {
        DcZero.None => "none",
        DcZero.Kept => "kept",
        DcZero.Lost => "LOST",
        _ => throw new ArgumentOutOfRangeException(nameof(zero), zero, "What becomes of the zero is not handled."),
    };

    private static Row Form(WordResult word, WordFigures figures) => new(
    [
        DigitalArithmetic.WordOf(word.Word),
        DigitalArithmetic.FormOf(figures.Form),
        figures.RoundOff is { } rms ? $"{FilterPage.Plain(rms, 3)} LSB"
            : figures.ConstantRoundOff is { } share ? $"{Power(share)} of dc" : "-",
        figures.DeadBand is { } band ? $"{FilterPage.Plain(band, 3)} LSB" : "-",
        Cycle(word.LimitCycles),
    ]);

    private static string Cycle(LimitCycleSearch? search) => search switch
    {
        null => "-",
        { Largest: { Period: 1 } level } => $"{FilterPage.Plain(level.Amplitude, 3)} LSB, constant",
        { Largest: { } cycle } => $"{FilterPage.Plain(cycle.Amplitude, 3)} LSB, period {cycle.Period.ToString(CultureInfo.InvariantCulture)}",
        { IsComplete: true } => "none",
        _ => "not searched",
    };

    private static string Standing(PoleStanding standing) => standing switch
    {
        PoleStanding.InsideCircle => "inside",
        PoleStanding.OnCircle => "ON the circle",
        PoleStanding.OutsideCircle => "OUTSIDE",
        _ => throw new ArgumentOutOfRangeException(nameof(standing), standing, "The standing is not handled."),
    };

    private static string Power(double value) => value.ToString("0.0e0", CultureInfo.InvariantCulture);
}
