using System.Globalization;

namespace FrontEnd.Documents.Recordings;

/// <summary>Numbers in the eight letters that a header of EDF has for each.</summary>
internal static class EdfNumber
{
    /// <summary>Letters of a number.</summary>
    public const int Width = 8;

    /// <summary>As many decimals as there is room for, none where they are zeros; null where the number itself is too long.</summary>
    public static string? Text(double value)
    {
        for (int decimals = Width - 2; 0 <= decimals; decimals--)
        {
            string text = value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
            text = 0 < decimals ? text.TrimEnd('0').TrimEnd('.') : text;
            if (text.Length <= Width)
            {
                return text is "-0" ? "0" : text;
            }
        }

        return null;
    }

    /// <summary>The number that the letters stand for.</summary>
    public static double Value(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
