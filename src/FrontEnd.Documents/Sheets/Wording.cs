using FrontEnd.Bench;
using FrontEnd.Compare;
using FrontEnd.Spread;

namespace FrontEnd.Documents.Sheets;

/// <summary>Verdicts and results in words: the same in every format.</summary>
internal static class Wording
{
    /// <summary>Plain ASCII beside the word, never alone.</summary>
    public static char Sign(VerdictKind kind) => kind switch
    {
        VerdictKind.Pass => '+',
        VerdictKind.Marginal => '~',
        VerdictKind.Fail => 'x',
        VerdictKind.Open => '?',
        VerdictKind.NotJudged => '.',
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Verdict is not handled."),
    };

    public static string Word(VerdictKind kind) => kind switch
    {
        VerdictKind.Pass => "pass",
        VerdictKind.Marginal => "marginal",
        VerdictKind.Fail => "fail",
        VerdictKind.Open => "open",
        VerdictKind.NotJudged => "not judged",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Verdict is not handled."),
    };

    public static string Word(Severity severity) => severity == Severity.Error ? "error" : "warning";

    public static string Word(ResultState state) => state switch
    {
        ResultState.Number => "number",
        ResultState.Word => "word",
        ResultState.Unbounded => "unbounded",
        ResultState.Interval => "interval",
        ResultState.Missing => "missing",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, "State is not handled."),
    };

    public static string Word(SpreadPlace place) => place switch
    {
        SpreadPlace.Board => "board",
        SpreadPlace.Electrodes => "electrodes",
        SpreadPlace.Leads => "leads",
        SpreadPlace.Surroundings => "surroundings",
        _ => throw new ArgumentOutOfRangeException(nameof(place), place, "Place is not handled."),
    };

    public static string Word(PartDistribution distribution) => distribution == PartDistribution.Normal ? "normal" : "uniform";

    /// <summary>What became of a figure between two designs.</summary>
    public static string Word(ChangeKind kind) => kind switch
    {
        ChangeKind.NewlyFails => "fails now",
        ChangeKind.FailsByMore => "fails by more",
        ChangeKind.WorseVerdict => "verdict worse, or no longer judged",
        ChangeKind.Worse => "worse, same verdict",
        ChangeKind.OtherLimit => "compared with another limit",
        ChangeKind.Moved => "changed with no limit set, or newly judged",
        ChangeKind.Better => "better",
        ChangeKind.Unjudged => "not judged, changed by more than a tenth",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Kind is not handled."),
    };

    public static string Word(SuspectKind kind) => kind switch
    {
        SuspectKind.MainsPickup => "mains-pick-up",
        SuspectKind.Aliasing => "aliasing",
        SuspectKind.OtherLine => "other-line",
        SuspectKind.LouderPart => "louder-part",
        SuspectKind.LowFrequency => "low-frequency",
        SuspectKind.HighFrequency => "high-frequency",
        SuspectKind.TooQuiet => "too-quiet",
        SuspectKind.DeadChannel => "dead-channel",
        SuspectKind.Clipping => "clipping",
        SuspectKind.Unit => "unit",
        SuspectKind.DigitalFilter => "digital-filter",
        SuspectKind.InputLoad => "input-load",
        SuspectKind.Polarity => "polarity",
        SuspectKind.Fixture => "fixture",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Kind is not handled."),
    };

    /// <summary>How many of each: "x 2  ~ 3  + 14  . 1".</summary>
    public static string Counts(Assessment assessment) =>
        string.Join("   ", new[] { VerdictKind.Fail, VerdictKind.Open, VerdictKind.Marginal, VerdictKind.Pass, VerdictKind.NotJudged }
        .Where(kind => kind != VerdictKind.Open || assessment.PartlyKnown is not null).Select(kind => $"{Sign(kind)} {assessment.Judged.Count(result => result.Verdict.Kind == kind)}"));

    /// <summary>The figure, or the word that stands for it.</summary>
    public static string Value(Result result) => result.State switch
    {
        ResultState.Number => QuantityText.Format(result.Value),
        ResultState.Word => result.Text ?? "",
        ResultState.Unbounded => UnboundedWords.Of(result),
        ResultState.Interval => Span(result),
        ResultState.Missing => $"missing, see {result.FindingCode}",
        _ => throw new ArgumentOutOfRangeException(nameof(result), result.State, "State is not handled."),
    };

    /// <summary>True for a current through the wearer that nothing in the device limits; its text says what that means. No other current is without
    /// bound.</summary>
    public static bool IsNotLimited(Result result) => result is { State: ResultState.Unbounded, Unit: "A" };

    /// <summary>Least and greatest of a figure that rests on what is not known, with two digits, which is more than is known.</summary>
    public static string Span(Result result) => result.Interval is { } span ? Span(span.Least, span.Greatest, result) : Value(result);

    /// <summary>The same for nine in ten of the draws.</summary>
    public static string Usual(Result result) => result.Interval is { } span ? Span(span.P05, span.P95, result) : Value(result);

    /// <summary>Where an end has no bound, which way stands in words: "54 mV up, or any offset".</summary>
    private static string Span(double least, double greatest, Result result)
    {
        string low = End(least), high = End(greatest);
        return (double.IsFinite(least), double.IsFinite(greatest)) switch
        {
            (true, true) => string.Equals(low, high, StringComparison.Ordinal) ? $"about {low}" : $"{low} to {high}",
            (true, false) => $"{low} up, or {high}",
            (false, true) => $"{low}, or up to {high}",
            (false, false) => string.Equals(low, high, StringComparison.Ordinal) ? low : $"{low}, or {high}",
        };

        string End(double si) => double.IsFinite(si) ? QuantityText.Format(si, result.Unit, SpanDigits) : UnboundedWords.Of(result.Id, result.Unit, below: si < 0);
    }

    private const int SpanDigits = 2;

    /// <summary>Name and remark in one line; a word's own text is its value and not repeated.</summary>
    public static string Description(Result result) =>
        result.Text is { Length: > 0 } text && result.State != ResultState.Word ? $"{result.Name}; {text}" : result.Name;

    /// <summary>"at most 3.50 µV rms"; "none set" where nothing is asked.</summary>
    public static string Limit(Verdict verdict) =>
        verdict.LimitSpan is { } span ? $"{(verdict.LimitIsGreatest ? "at most" : "at least")} {LimitEnds(span)}{(span.OrNone ? ", or none" : "")}"
        : verdict.Limit is null ? verdict.Wanted ?? "none set" : $"{(verdict.LimitIsGreatest ? "at most" : "at least")} {QuantityText.Format(verdict.Limit)}";

    private static string LimitEnds(LimitSpan span)
    {
        string least = QuantityText.Format(span.Least), greatest = QuantityText.Format(span.Greatest);
        // Two ends have the digits of a figure's ends.
        return string.Equals(least, greatest, StringComparison.Ordinal) ? least : $"{QuantityText.Format(span.Least, SpanDigits)} to {QuantityText.Format(span.Greatest, SpanDigits)}";
    }

    /// <summary>How far on the right side of the limit, with its sign; "" where there is no number.</summary>
    public static string Margin(Result result) =>
        result.Verdict.Margin is { } margin ? (margin < 0 ? "" : "+") + QuantityText.Format(margin, result.Unit) : "";

    /// <summary>The change, the figure and the verdict that it gives, and what it makes worse; null where none helps or the requirement is
    /// met with enough to spare.</summary>
    public static string? Helps(Verdict verdict) => verdict.Improvement is not { } improvement || verdict.Kind == VerdictKind.Pass
        ? null
        : $"{improvement.Change}; gives {(improvement.After is null ? improvement.AfterInWords ?? "no number" : QuantityText.Format(improvement.After))}, {Word(improvement.Verdict)}"
            + (improvement.SideEffect is null ? "" : $"; but {improvement.SideEffect}");

    /// <summary>The share or plain difference of a hand figure, with its sign.</summary>
    public static string Difference(Result result, HandFigure hand) =>
        QuantityKind.IsByDifference(result.Value)
            ? Signed(hand.Difference, QuantityText.Format(hand.Difference, result.Unit))
            : Signed(hand.Difference, QuantityText.FormatPercent(Quantities.Ratio.FromFraction(hand.Difference), 2));

    private static string Signed(double number, string text) => number < 0 ? text : "+" + text;
}
