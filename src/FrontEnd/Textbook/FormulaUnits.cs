namespace FrontEnd.Textbook;

/// <summary>Finds the unit behind a number in a formula with the numbers put in.</summary>
internal static class FormulaUnits
{
    private const string Prefixes = "fpnµμumkMGTc";

    private static readonly HashSet<string> Whole = new(StringComparer.Ordinal) { "%", "°", "°C", "dB", "bit", "bits", "min", "h", "d", "ppm", "rad", "m" };

    private static readonly HashSet<string> Scaled = new(StringComparer.Ordinal)
    {
        "V", "A", "Ω", "Hz", "F", "H", "T", "W", "K", "s", "m", "g", "J", "C", "S", "N", "B", "bit", "Ah", "Wh", "Pa", "ohm",
    };

    private static readonly string[] Per = ["/√Hz", "/Hz", "/min", "/s", "/h", "/m", "/K"];

    private static readonly string[] Kinds = [" rms", " p-p", " pp"];

    /// <summary>How many letters from a place on are a unit, such as kΩ, nV/√Hz, cm², nT rms; 0 for none.</summary>
    public static int Length(string text, int at)
    {
        int end = at;
        while (end < text.Length && (char.IsLetter(text[end]) || text[end] is '%' or '°'))
        {
            end++;
        }

        if (!IsUnit(text.AsSpan(at, end - at)))
        {
            return 0;
        }

        end += end < text.Length && text[end] is '²' or '³' ? 1 : 0;
        foreach (string per in Per)
        {
            if (StartsAt(text, end, per))
            {
                end += per.Length;
                break;
            }
        }

        foreach (string kind in Kinds)
        {
            end += StartsAt(text, end, kind) ? kind.Length : 0;
        }

        return end - at;
    }

    private static bool StartsAt(string text, int at, string piece) => string.CompareOrdinal(text, at, piece, 0, piece.Length) == 0
        && (at + piece.Length >= text.Length || !char.IsLetterOrDigit(text[at + piece.Length]) && text[at + piece.Length] is not '_');

    private static bool IsUnit(ReadOnlySpan<char> letters) => letters.Length > 0
        && (Whole.Contains(letters.ToString()) || Scaled.Contains(letters.ToString())
            || (letters.Length > 1 && Prefixes.Contains(letters[0], StringComparison.Ordinal) && Scaled.Contains(letters[1..].ToString())));
}
