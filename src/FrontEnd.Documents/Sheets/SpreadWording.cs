using System.Globalization;
using FrontEnd.Spread;

namespace FrontEnd.Documents.Sheets;

/// <summary>A spread run in words and tables: the same in the command and on the sheet.</summary>
internal static class SpreadWording
{
    /// <summary>Bins of a histogram, in every format.</summary>
    public const int Bins = 12;

    /// <summary>Parts that are named for a figure.</summary>
    private const int MostParts = 4;

    /// <summary>What the design without any difference between builds is called; <see cref="NoMismatchMeaning"/> says what it is.</summary>
    private const string NoMismatch = "no mismatch";

    /// <summary>Why the design without mismatch has other figures than the assessment.</summary>
    public const string NoMismatchMeaning =
        "No mismatch: every part at its nominal value and both leads alike. `check` prints a different figure where balance matters (mains, system CMRR): it assumes the worst signs of the stated mismatch and tolerances.";

    /// <summary>One of a figure's values, written as the assessment writes it; what is infinite has no bound.</summary>
    public static string Value(SpreadFigure figure, double value, int digits = 3) =>
        !double.IsFinite(value) ? UnboundedWords.Of(figure.Id, figure.Unit, below: value < 0) : QuantityText.Format(figure.Quantity(value), digits);

    public static string Share(double share) => QuantityText.FormatPercent(Ratio.FromFraction(share));

    public static string Limit(SpreadFigure figure) =>
        figure.Limit is { } limit ? $"{(figure.LimitIsGreatest ? "at most" : "at least")} {Value(figure, limit)}" : "none set";

    public static string Yield(SpreadResult result) =>
        result is { Yield: { } yield, YieldWithoutElectrodesAndLeads: { } inside, YieldOfParts: { } parts }
            ? $"{Share(yield)} of the builds meet every requirement that is judged; {Share(inside)} of the same builds with electrodes and leads at their nominal values, {Share(parts)} with the board's parts alone drawn"
            : "nothing is judged";

    /// <summary>Number, seed and how resistors and capacitors are drawn.</summary>
    public static string Run(SpreadResult result) =>
        $"{result.Options.Builds} builds, seed {result.Options.Seed}, resistors and capacitors {(result.Options.Distribution == PartDistribution.Normal ? "normal, tolerance = 3σ" : "uniform within their tolerance")}";

    /// <summary>What is drawn besides resistors and capacitors, and from where.</summary>
    public static IReadOnlyList<string> Drawn(SpreadResult result)
    {
        string[] given = [.. result.Parts.Where(part => part.IsRanged).Select(part => part.Key)];
        SpreadRanges ranges = result.Options.Ranges;
        return
        [
            .. given.Length == 0 ? (string[])[] : ["Drawn within the ranges that cards and design give: " + string.Join(", ", given) + "."],
            $"{(given.Length == 0 ? "Cards and design give no ranges; these are used (common practice, no source)" : "Where they give none (common practice, no source)")}: CMRR ±{QuantityText.FormatTrimmed(ranges.Cmrr, "1", 3)} dB, amplifier gain ±{Share(ranges.Gain)}, its voltage noise ±{Share(ranges.Noise)}, electrodes ± half their mismatch, "
            + $"stray capacitances up or down by a factor of up to {QuantityText.FormatTrimmed(ranges.Surroundings, "1", 3)}, mains voltage ±{Share(ranges.MainsVoltage)}. Everything else is as in the design.",
            $"Tied to each other: {string.Join("; ", result.Ties)}.",
        ];
    }

    public static Column[] YieldColumns { get; } = [new("figure", true), new("yield"), new("parts"), new("limit"), new("key", true)];

    public static IReadOnlyList<Row> YieldRows(SpreadResult result) =>
        [.. result.Figures.Where(figure =>
            figure.Yield is not null).Select(figure =>
                new Row([figure.Id.Text, Share(figure.Yield!.Value), Share(figure.YieldOfParts!.Value), Limit(figure), figure.Requirement!]))];

    public static Column[] PercentileColumns { get; } = [new("figure", true), new(NoMismatch),
        .. SpreadFigure.Percents.Select(percent => new Column(Percent(percent)))];

    public static IReadOnlyList<Row> PercentileRows(SpreadResult result) =>
        [.. result.Figures.Select(figure =>
            new Row([figure.Id.Text, Value(figure, figure.Nominal), .. figure.Percentiles.Select(value => Value(figure, value))]))];

    /// <summary>Why weak correlations are not shown.</summary>
    public static string ChanceMeaning(SpreadResult result) =>
        $"Rank correlations up to 3/√builds = {QuantityText.FormatTrimmed(SpreadFigure.Chance(result.Options.Builds), "1", 2)} are what chance alone gives with this many builds: they are left out.";

    /// <summary>The parts that a figure follows most.</summary>
    public static string Parts(SpreadFigure figure) => figure.Ranks.Count == 0
        ? "no part stands out"
        : string.Join(", ",
            figure.Ranks.Take(MostParts).Select(rank =>
                $"{rank.Key} {rank.Coefficient.ToString("+0.00;-0.00", CultureInfo.InvariantCulture)}"))
                    + (figure.Ranks.Count <= MostParts ? "; nothing else stands out" : "");

    /// <summary>The design without mismatch and the parts' corners, in one line.</summary>
    public static string Extremes(SpreadFigure figure) =>
        $"{NoMismatch} {Value(figure, figure.Nominal)}, parts at their corners {Value(figure, figure.Least)} to {Value(figure, figure.Most)}"
        + (figure.IsDrawnBeyondCorners
            ? $" (builds beyond them: {Value(figure, figure.LeastDrawn)} to {Value(figure, figure.MostDrawn)})"
            : "");

    public static string Percent(double percent) => percent.ToString(CultureInfo.InvariantCulture) + " %";
}
