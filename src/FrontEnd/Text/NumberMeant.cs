using System.Globalization;

namespace FrontEnd.Text;

/// <summary>The bare number that a text with a comma, a unit of level or a sign was probably meant to be.</summary>
internal static class NumberMeant
{
    /// <summary>What to do about a text where a bare number is expected; null where none can be made out.</summary>
    public static string? Remedy(string text)
    {
        string plain = text.Trim().Trim('×', 'x', 'X', ' ');
        return plain.EndsWith("dB", StringComparison.OrdinalIgnoreCase) && QuantityText.TryParse(plain, out Decibels level, out _)
            ? $"{QuantityText.FormatTrimmed(level, 6)} are a factor of {Factor(level)} (10^(dB/20)): write {Factor(level)}"
            : double.TryParse(plain, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number)
                ? $"write it as {plain}, a bare number without quotes"
            : plain.All(letter => char.IsAsciiDigit(letter) || letter is ',' or '.' or '-' or '+') && plain.Contains(',', StringComparison.Ordinal)
                ? $"write it as {WithoutComma(plain)}"
            : null;
    }

    /// <summary>A number with a decimal comma, or with commas between its thousands, as it is to be written. One comma before three digits may
    /// be either.</summary>
    public static string WithoutComma(string written)
    {
        string plain = written.Replace(",", "", StringComparison.Ordinal), point = written.Replace(',', '.');
        int commas = written.Length - plain.Length;
        bool isGroup = commas == 1 && written.Length - written.IndexOf(',', StringComparison.Ordinal) == 4
            && !written.TrimStart('+', '-').StartsWith('0');
        return 1 < commas ? $"{plain}: no signs between thousands" : isGroup ? $"{point} or {plain}, whichever is intended" : point;
    }

    private static string Factor(Decibels level) => QuantityText.FormatTrimmed(level.VoltageRatio, "1", 4);
}
