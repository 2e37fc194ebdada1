using FrontEnd.Bench;
using FrontEnd.Citations;

namespace FrontEnd.Documents.Sheets;

/// <summary>The sheet's page on how to try the board, and what the figures rest on.</summary>
internal static class SheetGrounds
{
    /// <summary>Bench tests, findings, assumptions, defaults, sources.</summary>
    public static IEnumerable<Block> Of(Sheet sheet)
    {
        if (sheet.Bench.Count > 0)
        {
            Column[] columns = [new("test", true), new("expect", true), new("figure", true)];
            yield return new Block.Heading("bench tests, and the reading to expect");
            yield return new Block.Paragraph(BenchPlan.Caution);
            if (sheet.Bench[0].Channel is { } channel)
            {
                yield return new Block.Paragraph(BenchWording.OfChannel(channel));
            }

            yield return new Block.Table(columns, [.. sheet.Bench.Select(BenchWording.Row)], Small: true);
            yield return new Block.Heading("the first recordings on a wearer, on battery, after all of these");
            yield return new Block.Table(columns, [.. BenchFigures.Worn(sheet.Assessment).Select(BenchWording.Row)], Small: true);
        }

        if (sheet.Findings.Count > 0)
        {
            yield return new Block.Heading("what to know when reading the figures");
            yield return new Block.Items([.. sheet.Findings.Select(Told)], Small: true);
        }

        string[] assumptions =
        [
            .. sheet.Assessment.Results.Select(result => result.Hand).OfType<HandFigure>().Where(hand => hand.Difference != 0)
                .Select(hand => hand.Assumption).OfType<string>().Distinct(StringComparer.Ordinal),
        ];
        yield return new Block.Heading("assumptions");
        yield return new Block.Items(
        [
            "Figures are of the nominal design in its stated worst case; parts are linear, op-amps have one pole, electrodes are one or two RC pairs.",
            $"Peak-to-peak noise is {TradeConstants.NoisePeakToPeak} times the rms; mains figures add up with the worst signs.",
            .. assumptions.Length == 0
                ? (string[])[]
                : ["Where a figure by hand differs from the network's: " + string.Join("; ", assumptions) + "."],
        ],
            Small: true);
        yield return new Block.Heading("defaults used, by their source");
        yield return new Block.Items([.. DefaultUsed.BySource(sheet).Select(one => $"{one.Source}: {one.Texts}")], Small: true);
        yield return new Block.Heading("sources of the equations and limits");
        IEnumerable<SourceRef> sources = sheet.Assessment.Results
            .SelectMany(result => new[] { result.Equation.Source, result.Hand?.Source, result.Verdict.LimitSource }).OfType<SourceRef>();
        yield return new Block.Items([.. sources.Select(SourceList.Of).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)],
            Small: true);
    }

    private static string Told(Finding finding) =>
        finding.Message + (finding.Note is null ? "" : $"; {finding.Note}") + (finding.Help is null ? "." : $". To do: {finding.Help}.")
            + $" [{finding.Code}]";
}
