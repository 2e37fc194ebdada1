using System.Text;
using FrontEnd.Compare;

namespace FrontEnd.Documents.Sheets;

/// <summary>What differs between two designs as plain text: what all differences together make of the figures, worst first, then each
/// difference alone.</summary>
internal static class CompareText
{
    public static string Of(Comparison comparison)
    {
        StringBuilder text = new();
        text.Append(comparison.Differences.Count == 0
            ? "the designs do not differ"
            : $"{comparison.From.Design.Name} -> {comparison.To.Design.Name}").Append('\n');

        TextPage own = new();
        own.OwnCautions(comparison.From.Design, comparison.To.Design);
        text.Append(own);

        Headlines(text, comparison);

        // One difference alone is all together.
        if (comparison.Differences.Count > 1)
        {
            text.Append('\n').Append("all together\n");
            AddChanges(text, comparison, comparison.To, comparison.Together);
        }

        foreach (Difference difference in comparison.Differences)
        {
            text.Append('\n').Append($"{difference.Key}{(comparison.Differences.Count > 1 ? " alone" : "")}: {difference.From} -> {difference.To}\n");
            AddChanges(text, comparison, difference.Alone, comparison.Of(difference));
        }

        TextPage cautions = new();
        cautions.Cautions();
        return text.Append(cautions).ToString();
    }

    /// <summary>What designs are chosen by beside the verdicts, of both.</summary>
    private static void Headlines(StringBuilder text, Comparison comparison)
    {
        if (comparison.Differences.Count == 0 || comparison.Headlines.Count == 0)
        {
            return;
        }

        text.Append("\nnot judged, but often decisive\n");
        foreach (Headline one in comparison.Headlines)
        {
            int digits = Digits(one.Before, one.After);
            (string before, string after) = (Shown(one.Before, digits), Shown(one.After, digits));
            text.Append($"  {one.Id}: {(before == after ? $"{after} in both" : $"{before} -> {after}")}\n");
        }
    }

    private static void AddChanges(StringBuilder text, Comparison comparison, Assessment changed, IReadOnlyList<FigureChange> changes)
    {
        foreach (Finding finding in comparison.NewFindings(changed))
        {
            text.Append($"  {Wording.Word(finding.Severity)} {finding.Code}: {finding.Message}\n");
        }

        if (!changed.HasFigures || !comparison.From.HasFigures)
        {
            text.Append(changed.HasFigures
                ? "  the first design has no figures to compare with\n"
                : "  no figures: a design with this difference is invalid\n");
            return;
        }

        foreach (IGrouping<ChangeKind, FigureChange> group in changes.GroupBy(change => change.Kind))
        {
            text.Append($"  {Wording.Word(group.Key)}\n");
            foreach (FigureChange change in group)
            {
                text.Append($"    {Line(change)}\n");
            }
        }

        if (changes.Count == 0)
        {
            text.Append("  no judged figure changes, and no other by more than a tenth\n");
        }
        else if (changes.All(change => change.Kind == ChangeKind.Unjudged))
        {
            text.Append("  no judged figure changes\n");
        }
    }

    private static string Line(FigureChange change)
    {
        bool judged = change.Kind != ChangeKind.Unjudged;

        int digits = Digits(change.Before, change.After);
        string other = change.Before is { } before && before.Id != change.Id ? $"{before.Id} " : "";
        bool limits = change.Kind == ChangeKind.OtherLimit;
        return $"{change.Id}: {other}{Shown(change.Before, digits)}{Verdict(change.Before)} -> {Shown(change.After, digits)}{Verdict(change.After)}";

        string Verdict(Result? result) => judged && result is not null
            ? $" ({Wording.Word(result.Verdict.Kind)}{(limits ? $", {Wording.Limit(result.Verdict)}" : "")})"
            : "";
    }

    /// <summary>As many digits as tell both apart.</summary>
    private static int Digits(Result? before, Result? after)
    {
        const int most = 9;
        return QuantityText.DigitsApart(before?.Value, after?.Value, most);
    }

    private static string Shown(Result? result, int digits) => result switch
    {
        null => "none",
        { State: ResultState.Number } => QuantityText.Format(result.Value, digits),
        _ => Wording.Value(result),
    };
}
