using FrontEnd.Teaching;

namespace FrontEnd.Documents.Teaching;

/// <summary>Terms of the glossary as text.</summary>
internal static class GlossaryText
{
    /// <summary>The term with its symbol and unit: "noise  σ [V rms]".</summary>
    public static string Head(Term term)
    {
        string[] signs = [.. new[] { term.Symbol, term.Unit.Length == 0 ? "" : $"[{term.Unit}]" }.Where(sign => sign.Length > 0)];
        return term.Name + (signs.Length == 0 ? "" : $"  {string.Join(" ", signs)}");
    }

    /// <summary>Head, meaning and, where asked for, the other names under which it is looked up; a line each.</summary>
    public static string Of(Term term, bool others) =>
        $"{Head(term)}\n  {term.Meaning}\n" + (others && term.Others.Count > 0 ? $"  also: {string.Join(", ", term.Others)}\n" : "");
}
