using System.Globalization;
using System.Text;

namespace FrontEnd.Text;

/// <summary>The bare number that a text with a comma, a unit of level or a sign was probably meant to be.</summary>
internal static class NumberMeant
{
    /// <summary>How a number is written.</summary>
    public const string Rule = "a number has the digits 0 to 9 with nothing between them and a point as its decimal sign";

    /// <summary>What to do about a text where a bare number is expected; null where none can be made out.</summary>
    public static string? Remedy(string text)
    {
        string plain = text.Trim().Trim('×', 'x', 'X', ' ');
        return plain.EndsWith("dB", StringComparison.OrdinalIgnoreCase) && QuantityText.TryParse(plain, out Decibels level, out _)
            ? $"{QuantityText.FormatTrimmed(level, 6)} are a factor of {Factor(level)} (10^(dB/20)): write {Factor(level)}"
            : IsNumber(plain) ? $"write {plain}, a bare number without quotes"
            : Plain(plain) is { } digits ? $"write {digits}, a bare number: {Rule}"
            : plain.All(letter => char.IsAsciiDigit(letter) || letter is ',' or '.' or '-' or '+') && plain.Contains(',', StringComparison.Ordinal)
                ? $"write {WithoutComma(plain)}, a bare number without quotes"
            : null;
    }

    /// <summary>A number that other hands and keyboards write otherwise - as <see cref="PlainSigns"/>, no digit on one side of the point, zeros in front - as it is to be written;
    /// null where it is none, or is written so.</summary>
    public static string? Plain(string written)
    {
        string text = written.Trim(), number = Padded(PlainSigns(text));
        return IsNumber(number) && number != text ? number : null;
    }

    /// <summary>A text with digits of other scripts, a raised or a wide point, a long minus and gaps between thousands written in plain signs; what is no part of a number
    /// stays.</summary>
    public static string PlainSigns(string text)
    {
        StringBuilder plain = new(text.Length);
        for (int i = 0; i < text.Length; i++)
        {
            char letter = text[i];
            bool isBetweenDigits = 0 < i && i + 1 < text.Length && char.IsDigit(text[i - 1]) && char.IsDigit(text[i + 1]);
            if (CharUnicodeInfo.GetDecimalDigitValue(letter) is >= 0 and int digit)
            {
                plain.Append((char)('0' + digit));
            }
            else if (isBetweenDigits && letter is ('·' or '٫' or '．' or '∙' or '⋅'))
            {
                plain.Append('.');
            }
            else if (!isBetweenDigits || !IsGap(letter) || !IsGroup(text.AsSpan(i + 1)))
            {
                plain.Append(letter switch { '−' or '–' or '‒' or '－' or '﹣' => '-', '＋' => '+', _ => letter });
            }
        }

        return plain.ToString();
    }

    private static bool IsGap(char letter) => char.IsWhiteSpace(letter) || letter is '\'' or '’' or '٬';

    private static bool IsGroup(ReadOnlySpan<char> rest) =>
        rest.Length >= 3 && char.IsDigit(rest[1]) && char.IsDigit(rest[2]) && (rest.Length == 3 || !char.IsDigit(rest[3]));

    /// <summary>With a digit on either side of the point, and no zeros in front.</summary>
    private static string Padded(string number)
    {
        int first = number.AsSpan().IndexOfAnyExcept('+', '-');
        if (first < 0)
        {
            return number;
        }

        int end = number.AsSpan(first).IndexOfAnyExceptInRange('0', '9') is var length and >= 0 ? first + length : number.Length;
        string whole = number[first..end].TrimStart('0'), rest = number[end..];
        if (first == end && rest is not ['.', >= '0' and <= '9', ..])
        {
            return number;
        }

        bool isWithoutDigit = first < end && rest.Length > 0 && rest[0] == '.' && (rest.Length == 1 || rest[1] is 'e' or 'E');
        return number[..first] + (whole.Length == 0 ? "0" : whole) + (isWithoutDigit ? rest[1..] : rest);
    }

    /// <summary>True for a finite number in plain signs.</summary>
    public static bool IsNumber(string text) =>
        double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number);

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
