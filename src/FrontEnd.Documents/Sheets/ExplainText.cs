using FrontEnd.Advice;
using FrontEnd.Teaching;

namespace FrontEnd.Documents.Sheets;

/// <summary>Why one figure is what it is, as plain text.</summary>
internal static class ExplainText
{
    /// <summary>Inputs shown in the sensitivity table.</summary>
    public const int Rows = Explained.MovesShown;

    /// <summary>The whole page.</summary>
    public static string Of(Explained explained)
    {
        TextPage page = new();
        Result result = explained.Result;
        if (TextPage.Width < result.Name.Length + 2 + result.Id.Text.Length)
        {
            page.Paragraph(result.Name);
            page.Ends("", result.Id.Text);
        }
        else
        {
            page.Ends(result.Name, result.Id.Text);
        }

        page.OwnCautions(explained.Assessment.Design);
        page.Blank();
        foreach (ExplainLine line in (ExplainLine[])[.. Reasons(result), .. Judgement(result.Verdict)])
        {
            page.Paragraph(line.Text, line.Label.PadRight(17));
        }

        Picture(page, explained);
        Moves(page, result, explained.Moves);
        page.Cautions();
        return page.ToString();
    }

    /// <summary>Where the figure comes from: equation, numbers, the same by hand, source, why in plain words, what is taken for granted,
    /// what to read.</summary>
    public static IReadOnlyList<ExplainLine> Reasons(Result result)
    {
        List<ExplainLine> lines = [];
        void Line(string label, string text) => Add(lines, label, text);

        Line("equation", result.Symbol.Length == 0 ? result.Equation.Text : $"{result.Symbol}: {result.Equation.Text}");

        // Where the network was solved the only numbers put in are the hand formula's; they stand there.
        Line("numbers", string.Equals(result.Substituted, result.Hand?.Substituted, StringComparison.Ordinal) ? "" : result.Substituted);
        Line("figure",
            Wording.Value(result) + (result.Text is { Length: > 0 } text && result.State != ResultState.Word ? $"; {text}" : ""));
        if (result.Hand is { } hand)
        {
            Line("by hand", hand.Formula);
            Line("", hand.Substituted);
            Line("",
                $"{QuantityText.Format(hand.Value)}, {Wording.Difference(result, hand)} against the figure"
                    + (hand.Assumption is null || hand.Difference == 0 ? "" : $": {hand.Assumption}"));
        }

        Line("source", SourceList.Of(result.Equation.Source));
        if (result.Hand is { } formula && formula.Source != result.Equation.Source)
        {
            Line("", "by hand: " + SourceList.Of(formula.Source));
        }

        if (Explanations.Of(result.Id) is { } why)
        {
            Line("why", why.Reason);
            Line("assumes", why.Assumes);
            Line("further reading", why.Read is null ? "" : SourceList.Of(why.Read));
        }

        return lines;
    }

    /// <summary>The verdict, where its limit comes from, what contributes most, which single change helps most.</summary>
    public static IReadOnlyList<ExplainLine> Judgement(Verdict verdict)
    {
        List<ExplainLine> lines = [];
        string word = $"{Wording.Sign(verdict.Kind)} {Wording.Word(verdict.Kind)}";
        Add(lines, "verdict", verdict.Because.Length == 0 ? word : $"{word}: {verdict.Because}");
        Add(lines, "limit from", verdict.LimitSource is null ? "" : SourceList.Of(verdict.LimitSource));
        Add(lines, "most of it", verdict.Dominates ?? "");
        Add(lines, "helps most", Wording.Helps(verdict) ?? "");
        return lines;
    }

    /// <summary>What stands in place of the inputs that move a figure where there are none.</summary>
    public static string NoMoves(Result result) => Sensitivity.IsLookedFor(result.Id)
        ? "no single input of the design"
        : "not shown: each limit of use is itself the result of a search";

    private static void Picture(TextPage page, Explained explained)
    {
        if (explained.Picture is not { } diagram)
        {
            return;
        }

        page.Blank();
        page.Line(diagram.Title);
        foreach (string line in diagram.Lines(explained.Assessment))
        {
            page.Line("  " + line);
        }
    }

    private static void Moves(TextPage page, Result result, IReadOnlyList<Sensitivity> sensitivities)
    {
        page.Blank();
        if (sensitivities.Count == 0)
        {
            page.Line($"moves with: {NoMoves(result)}");
            return;
        }

        page.Line($"moves with each input up a tenth, temperatures by {Sensitivity.Kelvins:0} K (the {Math.Min(Rows, sensitivities.Count)} largest of {sensitivities.Count})");
        page.Table(
            [new("input", true), new("from"), new("to"), new("result"), new("change")],
            [.. sensitivities.Take(Rows).Select(one =>
                new Row([one.Key, QuantityText.Format(one.From), QuantityText.Format(one.To), After(one) ?? "none", Change(result, one)]))]);
    }

    /// <summary>What an input's tenth makes of the figure, with as many digits as tell it from what it is; null where there is no
    /// number.</summary>
    public static string? After(Sensitivity one)
    {
        const int most = 6;
        return one.After is null ? null : QuantityText.Format(one.After, QuantityText.DigitsApart(one.Before, one.After, most));
    }

    /// <summary>What an input's tenth does to the figure, as a share or a plain difference, with its sign; "" where there is no
    /// number.</summary>
    public static string Change(Result result, Sensitivity one)
    {
        if (one.After is null || !double.IsFinite(one.Change))
        {
            return "";
        }

        bool plain = QuantityKind.IsByDifference(result.Value);
        string text = plain
            ? QuantityText.FormatDifference(one.Change, result.Unit)
            : QuantityText.FormatPercent(Quantities.Ratio.FromFraction(one.Change), 2);
        return one.Change < 0 ? text : "+" + text;
    }

    private static void Add(List<ExplainLine> lines, string label, string text)
    {
        if (text.Length > 0)
        {
            lines.Add(new ExplainLine(label, text));
        }
    }
}

/// <summary>One paragraph of an explanation; the label is empty where it belongs to the paragraph above.</summary>
internal sealed record ExplainLine(string Label, string Text);
