using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;

namespace FrontEnd.Text;

public static partial class QuantityText
{
    /// <summary>Reads a quantity as people write it: <c>4.7 kΩ</c>, <c>4k7</c>, <c>220n</c>, <c>50 nV/rtHz</c>, <c>25 °C</c>.</summary>
    /// <param name="value">The quantity; default where the text could not be read.</param>
    /// <param name="problem">Why it could not be read; null where it could.</param>
    /// <remarks>
    /// Units and prefixes may be written in full: <c>27 nanovolts</c>, <c>86 decibels</c>.
    /// The decimal sign is a point. m is milli and M or Meg mega; k and K are both kilo; µ may be written u.
    /// A number without unit is read for ratios, bits and resistances (ohms), and zero for all but a temperature; m alone is not read for a resistance, as it may
    /// be meant for either.
    /// Resistances and capacitances may be written in the code of IEC 60062 (4K7, R47, 4n7; standard not seen, its examples taken from a
    /// public copy). The decimal number and its prefix are converted in one step, so that 4.7 kΩ is exactly 4700.
    /// </remarks>
    public static bool TryParse<T>(ReadOnlySpan<char> text, out T value, [NotNullWhen(false)] out ParseProblem? problem)
        where T : struct, IQuantity => TryParse(text.ToString(), out value, out problem);

    /// <inheritdoc cref="TryParse{T}(ReadOnlySpan{char}, out T, out ParseProblem?)"/>
    public static bool TryParse<T>(string? text, out T value, [NotNullWhen(false)] out ParseProblem? problem)
        where T : struct, IQuantity
    {
        bool read = TryParse(QuantityKind.Of<T>(), text, out IQuantity? quantity, out problem);
        value = read ? (T)quantity! : default;
        return read;
    }

    /// <summary>As the generic form, for a kind that is known only when the program runs.</summary>
    public static bool TryParse(QuantityKind kind, string? text, [NotNullWhen(true)] out IQuantity? value, [NotNullWhen(false)] out ParseProblem? problem)
    {
        value = null;
        problem = Read(kind, text ?? "", ref value, isTold: true);
        return problem is null;
    }

    /// <summary>The same without saying why not: for texts that are tried out while something is said of another.</summary>
    internal static bool IsRead(QuantityKind kind, string text, [NotNullWhen(true)] out IQuantity? value)
    {
        value = null;
        return Read(kind, text, ref value, isTold: false) is null;
    }

    private static readonly ParseProblem Untold = new("", "", null, "", 0, "");

    /// <param name="isTold">False where nobody asks why a text is not read.</param>
    private static ParseProblem? Read(QuantityKind kind, string text, ref IQuantity? value, bool isTold)
    {
        string trimmed = text.Trim();
        if (trimmed.Length == 0)
        {
            return isTold ? Messages.EmptyText(kind) : Untold;
        }

        if (TryCode(kind, trimmed, out string codeNumber, out int codeExponent))
        {
            return Make(kind, text, codeNumber, new Reading("", "", codeExponent, 1, 0), ref value);
        }

        int start = text.Length - text.TrimStart().Length;
        int signed = kind.Form is NumberForm.Fraction or NumberForm.Percent && text[start] == '±' ? start + 1 : start;   // a tolerance is often written ±1 %
        int end = NumberEnd(text, signed);
        if (end == signed)
        {
            return isTold ? Messages.NoNumber(trimmed, kind, signed) : Untold;
        }

        if (end < text.Length && text[end] == ',')
        {
            return isTold ? Messages.Comma(trimmed, kind, end) : Untold;
        }

        string number = text[signed..end].Replace('−', '-');
        int unitStart = end;
        while (unitStart < text.Length && char.IsWhiteSpace(text[unitStart]))
        {
            unitStart++;
        }

        string unit = Normal(text[unitStart..]);
        if (unit.Length == 0)
        {
            bool zero = number.AsSpan().IndexOfAnyInRange('1', '9') < 0 && kind.ZeroNeedsNoUnit;
            return kind.Bare || zero
                ? Make(kind, text, number, default(Reading) with { Factor = 1 }, ref value)
                : isTold ? Messages.NoUnit(trimmed, kind, end) : Untold;
        }

        if (unit is "m" && kind.Is<Resistance>())
        {
            // Milli by the letter, mega by what people mean: nine powers of ten apart.
            return Messages.Ambiguous(trimmed, kind, [Join(number, "mΩ"), Join(number, "MΩ")], unitStart);
        }

        if (kind.Readings.TryExact(unit, out Reading reading))
        {
            return Make(kind, text, number, reading, ref value);
        }

        IReadOnlyList<(string Written, Reading Reading)> readings = kind.Readings.AnyCase(unit);
        if (readings.Count == 1 && SamePrefix(unit, readings[0].Reading.Prefix))
        {
            return Make(kind, text, number, readings[0].Reading, ref value);
        }

        if (0 < readings.Count)
        {
            string[] texts = [.. readings.Select(one => Join(number, one.Reading.Symbol + kind.Suffix)).Distinct(StringComparer.Ordinal)];
            return Messages.Ambiguous(trimmed, kind, texts, unitStart);
        }

        if (!isTold)
        {
            return Untold;
        }

        string[] others = [.. Kinds.All.Where(other => other != kind && other.Readings.TryExact(unit, out _)).Select(other => other.Words)];
        return Messages.UnknownUnit(trimmed, text[unitStart..].TrimEnd(), kind, others, unitStart);
    }

    /// <summary>Only a unit's letters may differ in case ("50 hz", "10 KHZ"); a prefix that changes case changes the size, but for one in
    /// full ("Nanovolts").</summary>
    private static bool SamePrefix(string unit, string prefix) =>
        prefix.Length == 0
        || unit.StartsWith(Prefixes.Word(prefix[0])[..3], StringComparison.OrdinalIgnoreCase)
        || unit[0] == prefix[0]
        || (prefix is "k" && unit[0] == 'K')
        || (prefix is "µ" && unit[0] == 'u');

    private static ParseProblem? Make(QuantityKind kind, string text, string number, Reading reading, ref IQuantity? value)
    {
        int e = number.AsSpan().IndexOfAny('e', 'E');
        string mantissa = e < 0 ? number : number[..e];
        if (!int.TryParse(e < 0 ? "0" : number.AsSpan(e + 1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture,
            out int exponent))
        {
            return Messages.TooLarge(text.Trim(), kind, text.Length - text.TrimStart().Length);
        }

        string whole = mantissa + "e" + ((long)exponent + reading.Exponent).ToString(CultureInfo.InvariantCulture);
        bool read = double.TryParse(whole, NumberStyles.Float, CultureInfo.InvariantCulture, out double scaled);
        double si = (scaled * reading.Factor) + reading.Offset;
        bool lost = scaled == 0 && 0 <= mantissa.AsSpan().IndexOfAnyInRange('1', '9');
        if (!read || !double.IsFinite(si) || lost)
        {
            return Messages.TooLarge(text.Trim(), kind, text.Length - text.TrimStart().Length);
        }

        value = kind.FromSi(si);
        return null;
    }

    /// <summary>Where a decimal number with sign, point and power of ten ends; <paramref name="start"/> where there is none.</summary>
    private static int NumberEnd(string text, int start)
    {
        int at = start;
        if (at < text.Length && text[at] is '+' or '-' or '−')
        {
            at++;
        }

        int digitsFrom = at;
        int digits = 0;
        while (at < text.Length && (char.IsAsciiDigit(text[at]) || text[at] == '.'))
        {
            digits += text[at] == '.' ? 0 : 1;
            if (text[at] == '.' && text.AsSpan(digitsFrom, at - digitsFrom).Contains('.'))
            {
                return start;   // two points are no number
            }

            at++;
        }

        if (digits == 0)
        {
            return start;
        }

        // An e with digits after it is a power of ten; nothing here has a unit that begins with e.
        if (at < text.Length && text[at] is 'e' or 'E')
        {
            int power = at + 1;
            if (power < text.Length && text[power] is '+' or '-' or '−')
            {
                power++;
            }

            int powerDigits = power;
            while (power < text.Length && char.IsAsciiDigit(text[power]))
            {
                power++;
            }

            at = powerDigits < power ? power : at;
        }

        return at;
    }

    /// <summary>A value in the code of IEC 60062: the letter is prefix and decimal point in one, 4K7, R47, 4n7. Other texts are no code,
    /// also 470R, which reads as number and unit.</summary>
    private static bool TryCode(QuantityKind kind, string trimmed, out string number, out int exponent)
    {
        (number, exponent) = ("", 0);
        if (kind.CodeLetters is null)
        {
            return false;
        }

        int from = trimmed[0] is '+' or '-' or '−' ? 1 : 0;
        int at = from;
        while (at < trimmed.Length && char.IsAsciiDigit(trimmed[at]))
        {
            at++;
        }

        if (trimmed.Length <= at || !kind.CodeLetters.TryGetValue(NormalLetter(trimmed[at]), out exponent))
        {
            return false;
        }

        int end = at + 1;
        while (end < trimmed.Length && char.IsAsciiDigit(trimmed[end]))
        {
            end++;
        }

        string unit = Normal(trimmed[end..]);
        bool plainUnit = unit.Length == 0 || kind.Units[0].Spellings.Contains(unit, StringComparer.Ordinal);
        if (end == at + 1 || !plainUnit)
        {
            return false;
        }

        string sign = trimmed[0] is '-' or '−' ? "-" : "";
        number = $"{sign}{(at == from ? "0" : trimmed[from..at])}.{trimmed[(at + 1)..end]}";
        return true;
    }

    /// <summary>A unit without spaces and with one spelling of µ, Ω, √ and ²: what the tables hold.</summary>
    private static string Normal(string unit)
    {
        StringBuilder normal = new(unit.Length);
        foreach (char letter in unit)
        {
            if (!char.IsWhiteSpace(letter))
            {
                normal.Append(NormalLetter(letter));
            }
        }

        return normal.Replace("^2", "²").Replace("·", "").ToString();
    }

    private static char NormalLetter(char letter) => letter switch
    {
        '\u03BC' => '\u00B5',   // Greek mu to the micro sign
        '\u2126' => '\u03A9',   // the ohm sign to Greek omega
        '\u00BA' or '\u02DA' => '\u00B0',   // ordinal and ring above, often typed for degree
        '\u2011' or '\u2012' or '\u2013' or '\u2212' => '-',   // dashes in "p-p"
        _ => letter,
    };

    /// <summary>The unit of an example text: "40 µV" gives µV.</summary>
    internal static string UnitOfExample(string example) => example[NumberEnd(example, 0)..].Trim();
}
