using System.Globalization;
using FrontEnd.Digital;
using FrontEnd.Filters;

namespace FrontEnd.Documents.Sheets;

/// <summary>What finite words do to a digital filter, in both forms, as tables of plain text.</summary>
internal static class WordTables
{
    private static readonly (string Name, NumberFormat Format)[] Words =
        [("double", NumberFormat.Double), ("single", NumberFormat.Single), ("q31", NumberFormat.Q31), ("q15", NumberFormat.Q15)];

    public static void Write(TextPage page, SecondOrderSections sections)
    {
        WordFigures[][] figures = [.. Words.Select(word => new[] { FilterForm.DirectI, FilterForm.TransposedDirectII }.Select(form => WordFigures.Of(sections, word.Format, form)).ToArray())];
        page.Blank();
        page.Line("coefficients as rounded, the same in both forms");
        page.Table(
            [new("word", IsText: true), new("poles move"), new("poles", IsText: true), new("dc gain"), new("zero at dc", IsText: true), new("headroom")],
            [
                .. figures.Select((both, i) => new Row(
                [
                    Words[i].Name,
                    both[0].PoleMovement == 0 ? "0" : Power(both[0].PoleMovement),
                    Standing(both[0].Standing),
                    both[0].DcGain is { } gain ? FilterPage.Plain(gain, 6) : "pole at 0 Hz",
                    both[0].Filter.Details.Any(d => d.DcZeroLost) ? "LOST" : both[0].Filter.Ideal.Sections.Any(s => s.HasDcZero) ? "kept" : "none",
                    both[0].IsStable ? $"{both[0].HeadroomBits} bit" : "-",
                ])),
            ]);
        page.Blank();
        page.Line("round-off at the output, rms; states at the sample's LSB");
        page.Table(
            [new("word", IsText: true), new("form", IsText: true), new("round-off"), new("dead band"), new("limit cycle found")],
            [
                .. figures.SelectMany((both, i) => both.Select(one => new Row(
                [
                    Words[i].Name,
                    DigitalArithmetic.FormOf(one.Form),
                    one.RoundOff is { } rms ? $"{FilterPage.Plain(rms, 3)} LSB" : one.ConstantRoundOff is { } share ? $"{Power(share)} of dc" : "-",
                    one.DeadBand is { } band ? $"{FilterPage.Plain(band, 3)} LSB" : "-",
                    Cycle(one),
                ]))),
            ]);
        page.Paragraph("In whole numbers both forms give the same bits: each section's sum is exact and rounded once. In floating point the round-off follows the signal: shown is its share of a dc level at the input, such as an electrode offset.", "  ");
        foreach (string remedy in figures.SelectMany((both, i) => both.Where(one => one.Remedy is not null).Select(one => $"{Words[i].Name}: {one.Remedy}")).Distinct(StringComparer.Ordinal))
        {
            page.Paragraph(remedy, "  - ");
        }

        page.Blank();
        page.Line("growth from the input to each section's output");
        List<Row> rows = [.. RoundOff.Overflow(sections).Select((n, i) => new Row([$"{i + 1}", FilterPage.Plain(n.L1, 4), FilterPage.Plain(n.L2, 4), FilterPage.Plain(n.LInfinity, 4)]))];
        page.Table([new("no."), new("any input (L1)"), new("white noise, rms (L2)"), new("sine (L-infinity)")], rows);
    }

    private static string Cycle(WordFigures figures)
    {
        if (figures.Filter.Format is not FixedFormat || !figures.IsStable)
        {
            return "-";
        }

        LimitCycleSearch search = figures.SearchLimitCycles();
        return search.Largest is { } cycle
            ? $"{FilterPage.Plain(cycle.Amplitude, 3)} LSB, {(cycle.Period == 1 ? "constant" : $"period {cycle.Period.ToString(CultureInfo.InvariantCulture)}")}"
            : search.IsComplete ? "none" : "not searched";
    }

    private static string Standing(PoleStanding standing) => standing switch
    {
        PoleStanding.InsideCircle => "inside",
        PoleStanding.OnCircle => "ON the circle",
        PoleStanding.OutsideCircle => "OUTSIDE",
        _ => throw new ArgumentOutOfRangeException(nameof(standing), standing, "The standing is not handled."),
    };

    private static string Power(double value) => value.ToString("0.0e0", CultureInfo.InvariantCulture);
}
