using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace FrontEnd.Text;

/// <summary>The bare number that a text with a comma, a unit of level or a sign was probably meant to be.</summary>
internal static partial class NumberMeant
{
    /// <summary>How a number is written.</summary>
    public const string Rule = "a number has the digits 0 to 9 with nothing between them and a point as its decimal sign";

    /// <summary>What to do about a text where a bare number is expected; null where none can be made out.</summary>
    public static string? Remedy(string text)
    {
        string plain = Lookalikes.ToAscii(Lookalikes.WithoutInvisible(text)).Trim().Trim('×', 'x', 'X', ' ');
        if (Plain(plain) is { } signs && !IsNumber(plain))
        {
            return $"write {signs}, a bare number: {Rule}";
        }

        if (plain.EndsWith("dB", StringComparison.OrdinalIgnoreCase))
        {
            return QuantityText.TryParse(plain, out Decibels level, out _)
                ? $"{QuantityText.FormatTrimmed(level, 6)} are a factor of {Factor(level)} (10^(dB/20)): write {Factor(level)}" : null;
        }

        return IsNumber(plain) ? $"write {plain}, a bare number without quotes"
            : plain.EndsWith('%') && QuantityText.TryParse(plain, out Share share, out _)
                ? $"{plain} are a factor of {Number(share.Fraction)}: write {Number(share.Fraction)}"
            : plain.All(letter => char.IsAsciiDigit(letter) || letter is ',' or '.' or '-' or '+') && Readings(plain).Length > 0
                ? $"write {WithoutComma(plain)}, a bare number without quotes"
            : Quotient().Match(plain) is { Success: true } quotient && Value(quotient.Groups["over"].Value) / Value(quotient.Groups["under"].Value) is var ratio && double.IsFinite(ratio)
                ? $"write {Number(ratio)}, a bare number without quotes"
            : Among().Match(plain) is { Success: true } one && IsNumber(one.Groups["number"].Value) && !plain.Contains("dB", StringComparison.OrdinalIgnoreCase)
                ? $"write {one.Groups["number"].Value} if that is intended, a bare number without unit"
            : null;
    }

    private static double Value(string number) => double.Parse(number, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static string Number(double number) => QuantityText.FormatTrimmed(number, "1", 6);

    [GeneratedRegex(@"^(?<over>[0-9]+(?:\.[0-9]+)?)\s*[:/]\s*(?<under>[0-9]+(?:\.[0-9]+)?)$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Quotient();

    // One number, and words or signs of a unit around it.
    [GeneratedRegex(@"^[^0-9+.,−-]*(?<number>[+-]?[0-9]+(?:\.[0-9]+)?)[^0-9.,+−-]*$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Among();

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

    /// <summary>What to write for a number with a decimal comma, or with commas between its thousands. One comma before three digits may be either.</summary>
    /// <param name="quotes">True for a text, which a file has in quotes.</param>
    public static string WithoutComma(string written, bool quotes = false)
    {
        string[] readings = [.. Readings(written).Select(one => quotes ? $"\"{one}\"" : one)];
        return readings switch
        {
            [] => "the number with a point as its decimal sign, and no comma",
            [var one] when 1 < written.AsSpan().Count(',') => $"{one}: no signs between thousands",
            [var one] => one,
            var both => $"{both[0]} or {both[1]}, whichever is intended",
        };
    }

    private static readonly SearchValues<char> InNumbers = SearchValues.Create("0123456789,.");

    /// <summary>What a number with commas may be, each in plain signs with what follows the number; one, two where the comma may be a point or stand between
    /// thousands, none where nobody knows: 10,5,3 and 0,000,001.</summary>
    public static string[] Readings(string written)
    {
        int from = Math.Max(0, written.AsSpan().IndexOfAny(InNumbers)), length = written.AsSpan(from).IndexOfAnyExcept(InNumbers);
        int end = length < 0 ? written.Length : from + length;
        string number = written[from..end], before = written[..from], behind = written[end..];
        string Bare(char grouping) => before + number.Replace($"{grouping}", "", StringComparison.Ordinal).Replace(',', '.') + behind;
        bool isDecimal = DecimalComma().IsMatch(number), isGrouped = ThousandsByComma().IsMatch(number);
        return isDecimal && isGrouped ? [Bare('\0'), Bare(',')] : isDecimal ? [Bare('\0')] : isGrouped ? [Bare(',')] : ThousandsByPoint().IsMatch(number) ? [Bare('.')] : [];
    }

    [GeneratedRegex("^[0-9]*,[0-9]*$", RegexOptions.None, 1000)]
    private static partial Regex DecimalComma();

    [GeneratedRegex("^[1-9][0-9]{0,2}(?:,[0-9]{3})+(?:\\.[0-9]*)?$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex ThousandsByComma();

    [GeneratedRegex("^[1-9][0-9]{0,2}(?:\\.[0-9]{3})+,[0-9]*$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex ThousandsByPoint();

    /// <summary>A number with points or underscores between its thousands without them: 1.000.000, 2_200.</summary>
    public static string WithoutGroups(string text) => Grouped().Replace(text, match => match.Value.Replace(".", "", StringComparison.Ordinal).Replace("_", "", StringComparison.Ordinal));

    [GeneratedRegex(@"(?<![0-9.])(?:[0-9]{1,3}(?:\.[0-9]{3}){2,}|[0-9]+(?:_[0-9]+)+)(?![0-9.])", RegexOptions.None, 1000)]
    private static partial Regex Grouped();

    /// <summary>The digits of a number that is whole and written in another way; null where it is none.</summary>
    public static string? Whole(string text) => Plain(text) is { } plain && plain.All(letter => char.IsAsciiDigit(letter) || letter == '-') ? plain
        : Ungrouped(text) is { } grouped ? grouped
        : double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && number == Math.Floor(number) && Math.Abs(number) < 1e15
            ? number.ToString("F0", CultureInfo.InvariantCulture)
            : null;

    /// <summary>The digits of a whole number without the commas or points between its thousands, be they one: 1,000; null where there are none.</summary>
    public static string? Ungrouped(string text)
    {
        string[] groups = text.TrimStart('-').Split(text.Contains(',', StringComparison.Ordinal) ? ',' : '.');
        return groups.Length > 1 && groups[0] is [not '0', ..] and { Length: < 4 } && groups.All(group => group.All(char.IsAsciiDigit)) && groups.Skip(1).All(group => group.Length == 3)
            ? (text is ['-', ..] ? "-" : "") + string.Concat(groups) : null;
    }

    /// <summary>The factor of a level as it is to be written: 5.012 of 14 dB.</summary>
    public static string Factor(Decibels level) => QuantityText.FormatTrimmed(level.VoltageRatio, "1", 4);
}
