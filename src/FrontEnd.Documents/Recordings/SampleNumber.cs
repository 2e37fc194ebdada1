using System.Globalization;

namespace FrontEnd.Documents.Recordings;

/// <summary>The number in a cell of a recording, with a decimal point or with a decimal comma: one that stands in a cell separates nothing,
/// as it is quoted or semicolons do.</summary>
internal static class SampleNumber
{
    /// <summary>Digits that surely fit into the 53 bits of a double, and powers of ten that are exact in one up to 22.</summary>
    private const int MostDigits = 15;

    private static readonly double[] Powers = [.. Enumerable.Range(0, MostDigits + 1).Select(power => Math.Pow(10, power))];

    public static bool TryParse(ReadOnlySpan<char> cell, out double value) => TryPlain(cell, out value) || TryAny(cell, out value);

    /// <summary>A sign, a few digits and a point, as nearly all samples are: whole number and power of ten are exact, so that their one
    /// division is rounded as the library rounds, at a fifth of the time.</summary>
    private static bool TryPlain(ReadOnlySpan<char> cell, out double value)
    {
        value = 0;
        ReadOnlySpan<char> text = cell.Trim(' ');
        bool isNegative = text is ['-', ..];
        text = isNegative || text is ['+', ..] ? text[1..] : text;
        long whole = 0;
        int point = -1, digits = 0;
        for (int at = 0; at < text.Length; at++)
        {
            int digit = text[at] - '0';
            if (digit is >= 0 and <= 9)
            {
                whole = (10 * whole) + digit;
                digits++;
            }
            else if (text[at] is '.' or ',' && point < 0)
            {
                point = at;
            }
            else
            {
                return false;
            }

            if (MostDigits < digits)
            {
                return false;
            }
        }

        double size = whole / Powers[point < 0 ? 0 : text.Length - 1 - point];
        value = isNegative ? -size : size;
        return 0 < digits;
    }

    private static bool TryAny(ReadOnlySpan<char> cell, out double value)
    {
        string text = cell.Count(',') == 1 ? cell.ToString().Replace(',', '.') : cell.ToString();
        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value);
    }
}
