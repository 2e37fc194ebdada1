using System.Text;
using FrontEnd.Compare;
using FrontEnd.Identity;
using FrontEnd.Results;
using FrontEnd.Text;

namespace FrontEnd.Documents.Sheets;

/// <summary>What differs between two designs as plain text: each difference with the judged figures that it alone changes, then all
/// together.</summary>
public static class CompareText
{
    public static string Of(Comparison comparison)
    {
        StringBuilder text = new();
        text.Append(comparison.Differences.Count == 0
            ? "the designs do not differ"
            : $"{comparison.From.Design.Name} -> {comparison.To.Design.Name}").Append('\n');
        foreach (Difference difference in comparison.Differences)
        {
            text.Append('\n').Append($"{difference.Key}: {difference.From} -> {difference.To}\n");
            AddChanges(text, comparison, difference.Alone);
        }

        if (comparison.Differences.Count > 0)
        {
            text.Append('\n').Append("all together\n");
            AddChanges(text, comparison, comparison.To);
        }

        return text.ToString();
    }

    private static void AddChanges(StringBuilder text, Comparison comparison, Assessment changed)
    {
        bool any = false;
        foreach (ResultId id in comparison.JudgedIds)
        {
            string before = Shown(comparison.From.Find(id)), after = Shown(changed.Find(id));
            if (before != after)
            {
                any = true;
                text.Append($"  {id}: {before} -> {after}\n");
            }
        }

        if (!any)
        {
            text.Append("  no judged figure changes\n");
        }
    }

    private static string Shown(Result? result) => result is null
        ? "none"
        : $"{(result.State == ResultState.Number ? QuantityText.Format(result.Value) : result.Text ?? "no limit found")} ({Wording.Word(result.Verdict.Kind)})";
}
