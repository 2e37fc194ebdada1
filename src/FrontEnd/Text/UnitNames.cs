using System.Text.RegularExpressions;

namespace FrontEnd.Text;

/// <summary>Names of units that are in use beside those of <see cref="Kinds"/>, and what is written for them.</summary>
internal static partial class UnitNames
{
    // The SI's symbols in Russian: GOST 8.417, from memory. Whole units before single letters, so that a к before Ом is a prefix and no look-alike.
    private static readonly (string Cyrillic, string Latin)[] Units =
        [("Ом", "Ω"), ("Гц", "Hz"), ("Ф", "F"), ("В", "V"), ("А·ч", "Ah"), ("Ач", "Ah"), ("А", "A"), ("с", "s"), ("м", "m"), ("Кл", "C"), ("Тл", "T"), ("дБ", "dB"), ("бит", "bit")];

    private static readonly (string Cyrillic, string Latin)[] Prefixes =
        [("ф", "f"), ("п", "p"), ("н", "n"), ("мк", "µ"), ("м", "m"), ("к", "k"), ("М", "M"), ("Г", "G"), ("с", "c"), ("", "")];

    /// <summary>What stands for a unit or a prefix, its name among ours, and what kind of name it is.</summary>
    private static readonly (Regex Written, string Name, string Why)[] Others =
    [
        (PerSecond(), "Hz", "a rate is in hertz"),
        (Percent(), "%", "a share has the sign `%`"),
        (Micro(), "µ", "micro is `µ` or `u`"),
        (Pico(), "p", "micro of micro is pico, `p`"),
        (RootHertz(), "/√Hz", "a noise density is per root of the bandwidth, `/√Hz` or `/rtHz`"),
        (Squared(), "${unit}²", "an area has its unit squared, `cm²` or `cm2`"),
        (European(), "Ω", "ohms are `Ω`, `ohm` or `R`"),
    ];

    /// <summary>A unit in Cyrillic letters as it is written here; the text itself where it has none.</summary>
    public static string FromCyrillic(string text)
    {
        int at = text.AsSpan().IndexOfAnyInRange('\u0400', '\u04FF');
        if (at < 0)
        {
            return text;
        }

        string unit = text[at..].TrimEnd('.', ' ');
        foreach ((string prefix, string latin) in Prefixes)
        {
            foreach ((string symbol, string name) in Units)
            {
                if (string.Equals(unit, prefix + symbol, StringComparison.Ordinal))
                {
                    return text[..at] + latin + name;
                }
            }
        }

        return text;
    }

    /// <summary>A text with another name of a unit replaced by ours.</summary>
    public static string Known(string text)
    {
        foreach ((Regex written, string name, _) in Others)
        {
            if (written.IsMatch(text))
            {
                return written.Replace(text, name);
            }
        }

        return text;
    }

    /// <summary>What is said of the name that <see cref="Known"/> replaces.</summary>
    public static string Why(string text) => Array.Find(Others, other => other.Written.IsMatch(text)).Why;

    [GeneratedRegex(@"(?<=[0-9kKMµum]\s*)(?:cps|c/s|1/s(?:ec)?|/\s*s(?:ec(?:ond)?)?|s\^?-1|s⁻¹|per second|cycles(?:/s| per second)?)$", RegexOptions.IgnoreCase, 1000)]
    private static partial Regex PerSecond();

    [GeneratedRegex(@"(?<=[0-9]\s*)(?:pct\.?|p\.?\s?c\.?|prozent|procent|prosent|procento|per cent|pour cent|por ciento|per cento)$", RegexOptions.IgnoreCase, 1000)]
    private static partial Regex Percent();

    [GeneratedRegex(@"\s*(?:(?:/|per)\s*(?:square\s+|sq\.?\s*)?root[\s-]*\(?Hz\)?|[\s·]Hz\^\(?-(?:0\.5|1/2|½)\)?)$", RegexOptions.IgnoreCase, 1000)]
    private static partial Regex RootHertz();

    [GeneratedRegex(@"(?<=[0-9]\s*)(?:sq\.?\s*|square\s+|q)(?<unit>[cm]?m)$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Squared();

    [GeneratedRegex(@"(?<=[0-9]\s*)mc(?=\p{L})", RegexOptions.None, 1000)]
    private static partial Regex Micro();

    [GeneratedRegex(@"(?<=[0-9]\s*)(?:uu|µµ|μμ|mmf$)(?=\p{L})", RegexOptions.None, 1000)]
    private static partial Regex Pico();

    [GeneratedRegex(@"(?<=[0-9]\s*[kKM]?)E$", RegexOptions.None, 1000)]
    private static partial Regex European();
}
