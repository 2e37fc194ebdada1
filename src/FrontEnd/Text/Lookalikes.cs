using System.Text;

namespace FrontEnd.Text;

/// <summary>Letters of other scripts that look like Latin ones: typed on another keyboard or copied from a page, they stand in a word that
/// nobody can tell from the right one by eye.</summary>
internal static class Lookalikes
{
    // By their shapes in common fonts (Unicode charts 0370 and 0400); Ω and µ are no look-alikes, they are units.
    private const string Cyrillic = "АВЕКМНОРСТХІЈЅаеорсухкмнтіјѕ", CyrillicLatin = "ABEKMHOPCTXIJSaeopcyxkmhtijs";
    private const string Greek = "ΑΒΕΖΗΙΚΜΝΟΡΤΥΧοκνρ", GreekLatin = "ABEZHIKMNOPTYXokvp";

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
