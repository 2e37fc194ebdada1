using FrontEnd.Citations;
using FrontEnd.Documents.Sheets;

namespace FrontEnd.Terminal;

/// <summary>Results and verdicts in words. Every figure goes through the one formatter.</summary>
internal static class ResultText
{
    /// <summary>The colour of a verdict.</summary>
    public static Ink Ink(VerdictKind kind) => kind switch
    {
        VerdictKind.Pass => Terminal.Ink.Pass,
        VerdictKind.Marginal => Terminal.Ink.Marginal,
        VerdictKind.Fail => Terminal.Ink.Fail,
        VerdictKind.NotJudged or VerdictKind.Open => Terminal.Ink.Dim,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Verdict is not handled."),
    };

    /// <summary>The figure or the word.</summary>
    public static string Value(Result result) => result.State switch
    {
        ResultState.Number => QuantityText.Format(result.Value),
        ResultState.Word => result.Text ?? "",
        // Why is longer than a figure's place; it stands with the reasons.
        ResultState.Unbounded => UnboundedWords.Of(result),
        ResultState.Interval => Wording.Span(result),
        ResultState.Missing => $"not computed ({result.FindingCode})",
        _ => throw new ArgumentOutOfRangeException(nameof(result), result.State, "State is not handled."),
    };

    /// <summary>What a figure was, with as many digits as tell it from what it is, and, where those are more than it
    /// is shown with, what it is with as many; null where it has not moved so that <paramref name="most"/> digits would show it.</summary>
    public static (string Before, string? Now)? Was(Result? before, Result now, int most)
    {
        if (before is null || before.State != now.State || now.State != ResultState.Number)
        {
            return before is not null && Value(before) != Value(now) ? (Value(before), null) : null;
        }

        int digits = QuantityText.DigitsApart(before.Value, now.Value, most);
        string was = QuantityText.Format(before.Value, digits), value = QuantityText.Format(now.Value, digits);
        return was == value ? null : (was, digits == QuantityText.DefaultDigits ? null : value);
    }

    /// <summary>Verdict, margin and limit in one line: "fail, 34.8 µV over 3.50 µV rms".</summary>
    public static string Margin(Result result)
    {
        Verdict verdict = result.Verdict;
        if (verdict.Limit is not { } limit || verdict.Margin is not { } margin)
        {
            return $"{Wording.Word(verdict.Kind)}: {verdict.Because}";
        }

        string side = verdict.IsAboveLimit ? "above" : "below";
        return $"{Wording.Word(verdict.Kind)}, {QuantityText.Format(Math.Abs(margin), limit.SiUnit)} {side} {QuantityText.Format(limit)}";
    }

    /// <summary>The change that helps most with its effect; null where there is none.</summary>
    public static string? Helps(Result result) => result.Verdict.Improvement is not { } improvement
        ? null
        : $"helps most: {improvement.Change}; then {(improvement.After is null ? improvement.AfterInWords ?? "no number" : QuantityText.Format(improvement.After))}, {Wording.Word(improvement.Verdict)}"
            + (improvement.SideEffect is null ? "" : $"; but {improvement.SideEffect}");

    /// <summary>A source's place for the reader: "metting-van-rijn-1990, sec. 2.1".</summary>
    public static string Source(SourceRef source) =>
        source.Place.Length == 0 ? source.Key.Replace('-', ' ') : $"{source.Key.Replace('-', ' ')}, {source.Place}";
}
