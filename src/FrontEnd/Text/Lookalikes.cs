using System.Text;

namespace FrontEnd.Text;

/// <summary>Letters of other scripts that look like Latin ones: typed on another keyboard or copied from a page, they stand in a word that
/// nobody can tell from the right one by eye.</summary>
internal static class Lookalikes
{
    // By their shapes in common fonts (Unicode charts 0370 and 0400); Ω and µ are no look-alikes, they are units.
    private const string Cyrillic = "АВЕКМНОРСТХІЈЅУаеорсухкмнтіјѕԁгп", CyrillicLatin = "ABEKMHOPCTXIJSYaeopcyxkmhtijsdrn";
    private const string Greek = "ΑΒΕΖΗΙΚΜΝΟΡΤΥΧαηικνορτυχω", GreekLatin = "ABEZHIKMNOPTYXanikvoptuxw";

    /// <summary>The first such letter of a text, its script and the Latin letter it looks like; null for none.</summary>
    public static (char Letter, string Script, char Latin)? First(string text)
    {
        foreach (char letter in text)
        {
            if (Latin(letter) is { } latin)
            {
                return (letter, Cyrillic.Contains(letter) ? "Cyrillic" : "Greek", latin);
            }
        }

        return null;
    }

    /// <summary>The text with Latin letters in place of all of them.</summary>
    public static string ToLatin(string text)
    {
        StringBuilder plain = new(text.Length);
        foreach (char letter in text)
        {
            plain.Append(Latin(letter) ?? letter);
        }

        return plain.ToString();
    }

    /// <summary>"`к` is a Cyrillic letter that looks like `k`"; null where there is none.</summary>
    public static string? Reason(string text) => First(text) is var (letter, script, latin)
        ? $"`{letter}` is a {script} letter that looks like the Latin `{latin}`"
        : null;

    /// <summary>The text without signs that nobody sees: blanks of no width, marks of direction, soft hyphens.</summary>
    public static string WithoutInvisible(string text) => string.Concat(text.Where(letter => !IsInvisible(letter)));

    /// <summary>Which of them the text has, by its code; null for none.</summary>
    public static string? InvisibleReason(string text) =>
        text.FirstOrDefault(IsInvisible) is var letter and not '\0' ? FormattableString.Invariant($"a sign that nobody sees stands in it, U+{(int)letter:X4}") : null;

    /// <summary>The text with letters, digits and signs of full width in their plain forms.</summary>
    public static string ToAscii(string text) =>
        string.Concat(text.Select(letter => letter is >= '\uFF01' and <= '\uFF5E' ? (char)(letter - 0xFEE0) : letter == '\u3000' ? ' ' : letter));

    private static bool IsInvisible(char letter) => letter is '\u00AD' or (>= '\u200B' and <= '\u200F') or (>= '\u202A' and <= '\u202E') or (>= '\u2060' and <= '\u2064') or '\uFEFF';

    private static char? Latin(char letter)
    {
        int at = Cyrillic.IndexOf(letter);
        if (0 <= at)
        {
            return CyrillicLatin[at];
        }

        at = Greek.IndexOf(letter);
        return 0 <= at ? GreekLatin[at] : null;
    }
}
