using System.Globalization;

namespace FrontEnd.Text;

/// <summary>Quantity to text and back: the one formatter for screens, command output and sheets, so that they agree.</summary>
/// <remarks>
/// Rounds first and chooses the prefix after: 999.96 mV with 4 digits prints as 1.000 V.
/// Always the invariant culture; never throws, whatever the number of digits asked for.
/// </remarks>
public static partial class QuantityText
{
    /// <summary>Significant digits where none are asked for.</summary>
    public const int DefaultDigits = 3;

    /// <summary>Digits of the part-value form: enough for any value on a part, and few enough to hide the rounding of binary
    /// arithmetic.</summary>
    private const int PartDigits = 12;

    /// <summary>A double's shortest text that reads back as the same double.</summary>
    private const int Shortest = 0;

    /// <summary>The quantity with three significant digits: <c>4.70 kΩ</c>, <c>1.50 µV rms</c>, <c>45.0°</c>.</summary>
    public static string Format(IQuantity? quantity) => Format(quantity, DefaultDigits);

    /// <summary>The quantity with a number of significant digits, 1..17. Decibels, degrees, temperatures and bits have at most <c>digits −
    /// 1</c> decimals.</summary>
    public static string Format(IQuantity? quantity, int digits)
    {
        if (quantity is null)
        {
            return "";
        }

        QuantityKind? kind = Kinds.Find(quantity.GetType());
        int used = Math.Clamp(digits, 1, 17);
        return kind is null ? Plain(Rounded(quantity.SiValue, used), quantity.SiUnit)
            : Write(quantity.SiValue, kind, used, trim: false);
    }

    /// <summary>A value as it stands on a part: no trailing zeros, <c>4.7 kΩ</c>, <c>220 nF</c>. Up to 12 digits, so what was typed with up
    /// to 12 digits is printed as typed and reads back exactly.</summary>
    public static string FormatPart(IQuantity? quantity)
    {
        QuantityKind? kind = quantity is null ? null : Kinds.Find(quantity.GetType());
        return kind is null ? Format(quantity, PartDigits) : Write(quantity!.SiValue, kind, PartDigits, trim: true);
    }

    /// <summary>The quantity with at most a number of significant digits, trailing zeros left out: <c>4.7 kΩ</c>; for numbers inside a
    /// formula.</summary>
    public static string FormatTrimmed(IQuantity? quantity, int digits)
    {
        QuantityKind? kind = quantity is null ? null : Kinds.Find(quantity.GetType());
        return kind is null ? Format(quantity, digits) : Write(quantity!.SiValue, kind, Math.Clamp(digits, 1, 17), trim: true);
    }

    /// <summary>A number in an SI unit with at most a number of significant digits, trailing zeros left out.</summary>
    public static string FormatTrimmed(double siValue, string siUnit, int digits)
    {
        QuantityKind? kind = siUnit is "1" ? null : Kinds.FindUnit(siUnit);
        return double.IsFinite(siValue) && kind is not null
            ? Write(siValue, kind, Math.Clamp(digits, 1, 17), trim: true)
            : double.IsFinite(siValue)
                ? Plain(Rounded(siValue, Math.Clamp(digits, 1, 17)).Trimmed(), siUnit is "1" ? "" : siUnit) : Format(siValue, siUnit);
    }

    /// <summary>The shortest text that reads back as exactly this quantity, for files: <c>4.7 kΩ</c>. A value from arithmetic may need 17
    /// digits.</summary>
    public static string FormatExact(IQuantity? quantity)
    {
        QuantityKind? kind = quantity is null ? null : Kinds.Find(quantity.GetType());
        return kind is null ? Format(quantity, 17) : Write(quantity!.SiValue, kind, Shortest, trim: true);
    }

    /// <summary>A number in an SI unit as a result or a curve carries it, with a prefix where the unit takes one: 1.5e-6, "V" is <c>1.50
    /// µV</c>.</summary>
    public static string Format(double siValue, string siUnit, int digits = DefaultDigits)
    {
        int used = Math.Clamp(digits, 1, 17);
        if (!double.IsFinite(siValue))
        {
            // A point of a curve or a formula without bound; a quantity is always finite.
            return double.IsNaN(siValue) ? "no number" : double.IsNegative(siValue) ? "-∞" : "∞";
        }

        QuantityKind? kind = siUnit is "1" ? null : Kinds.FindUnit(siUnit);
        return kind is null ? Plain(Rounded(siValue, used), siUnit is "1" ? "" : siUnit) : Write(siValue, kind, used, trim: false);
    }

    /// <summary>A number without unit: 1200, 0.0345, 1.38e-23.</summary>
    public static string FormatNumber(double value, int digits = DefaultDigits) => Format(value, "1", digits);

    /// <summary>As many digits as tell two quantities apart, three at least; three where they are equal or where that takes more than
    /// <paramref name="most"/>.</summary>
    internal static int DigitsApart(IQuantity? one, IQuantity? other, int most)
    {
        for (int digits = DefaultDigits; digits <= most; digits++)
        {
            if (!string.Equals(Format(one, digits), Format(other, digits), StringComparison.Ordinal))
            {
                return digits;
            }
        }

        return DefaultDigits;
    }

    /// <summary>A difference of two values with two digits that count, also where the unit has a fixed number of decimals: <c>0.0043 dB</c>.</summary>
    internal static string FormatDifference(double siValue, string siUnit)
    {
        const int most = 7;
        int place = siValue == 0 || !double.IsFinite(siValue) ? 0 : (int)Math.Floor(Math.Log10(Math.Abs(siValue)));
        return Format(siValue, siUnit, Math.Clamp(2 - place, DefaultDigits, most));
    }

    /// <summary>A ratio as percent, also from 1 on: <c>120 %</c>.</summary>
    public static string FormatPercent(Ratio ratio, int digits = DefaultDigits) =>
        Plain(Rounded(ratio.Fraction, Math.Clamp(digits, 1, 17)).Shift(2), "%");

    /// <summary>A ratio as a factor, also below 1: <c>0.500 ×</c>.</summary>
    public static string FormatFactor(Ratio ratio, int digits = DefaultDigits) =>
        Plain(Rounded(ratio.Fraction, Math.Clamp(digits, 1, 17)), "×");

    private static string Write(double si, QuantityKind kind, int digits, bool trim) => kind.Form switch
    {
        NumberForm.Prefixed => WritePrefixed(Digits(si, digits, trim), kind.Units[0], kind.Suffix, kind.PlainDownTo),
        NumberForm.Scientific => Scientific(Digits(si, digits, trim), kind.Units[0].Spellings[0]),
        NumberForm.Temperature => WriteTemperature(si, digits, trim),
        NumberForm.Plain => Join(Limited(si, digits, trim), kind.Units[0].Spellings[0]),
        NumberForm.Degrees => Limited(si, digits, trim) + kind.Units[0].Spellings[0],
        NumberForm.Count => Join(Whole(si) ?? Limited(si, digits, trim), kind.Units[0].Spellings[0]),
        NumberForm.Percent => Plain(Digits(si, digits, trim).Shift(2), "%"),
        NumberForm.Bare => Whole(si) ?? Plain(Digits(si, digits, trim)),
        NumberForm.Fraction => WriteFraction(Digits(si, digits, trim)),
        NumberForm.Time => WriteTime(si, kind, digits, trim),
        NumberForm.Capacity => WriteCapacity(si, kind, digits, trim),
        NumberForm.Square => WriteSquare(Digits(si, digits, trim), kind),
        NumberForm.SecondUnit => Join(Plain(Digits(si, digits, trim).Shift(-kind.Units[1].Exponent)), kind.Units[1].Spellings[0]),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind.Form, "Number form is not handled."),
    };

    /// <summary>A whole number without decimals; null for another. Adding zero takes the sign off a negative zero.</summary>
    private static string? Whole(double si) => si == Math.Round(si) && Math.Abs(si) < 1e15
        ? (si + 0.0).ToString("0", CultureInfo.InvariantCulture)
        : null;

    /// <param name="plainDownTo">Power of ten down to which a number below 1 has decimals and no prefix.</param>
    private static string WritePrefixed(DecimalNumber number, Unit unit, string suffix, int plainDownTo = 0)
    {
        if (number.IsZero)
        {
            return Join("0", unit.Spellings[0] + suffix);
        }

        if (number.Exponent < 0 && plainDownTo <= number.Exponent)
        {
            return Plain(number, unit.Spellings[0], suffix);
        }

        int wanted = (int)Math.Floor(number.Exponent / 3.0) * 3;
        (char? Prefix, int Exponent) best = (null, 0);
        foreach (char prefix in unit.Prefixes)
        {
            int exponent = Prefixes.Exponent(prefix);
            if (exponent % 3 == 0 && Math.Abs(exponent - wanted) < Math.Abs(best.Exponent - wanted))
            {
                best = (prefix, exponent);
            }
        }

        // Beyond the prefixes a few more zeros read better than a power of ten: 0.100 fA/√Hz.
        int shift = number.Exponent - best.Exponent;
        return shift is < -2 or > 5
            ? Scientific(number, unit.Spellings[0], suffix)
            : Plain(number.Shift(-best.Exponent), unit.Spellings[0], suffix, best.Prefix);
    }

    private static string WriteFraction(DecimalNumber number)
    {
        if (number.IsZero)
        {
            return "0 %";
        }

        return number.Exponent < 0 ? Plain(number.Shift(2), "%") : Plain(number, "×");
    }

    private static string WriteTemperature(double kelvins, int digits, bool trim)
    {
        if (digits != Shortest)
        {
            return Join(Limited(kelvins - Temperature.ZeroCelsius, digits, trim), "°C");
        }

        return Exactly(kelvins, kelvins - Temperature.ZeroCelsius, celsius => celsius + Temperature.ZeroCelsius) is string celsius
            ? Join(celsius, "°C")
            : Plain(Digits(kelvins, Shortest, trim), "K");
    }

    private static string WriteTime(double seconds, QuantityKind kind, int digits, bool trim)
    {
        double size = Math.Abs(seconds);
        Unit unit = size < 120 ? kind.Units[0] : size < 7200 ? kind.Units[1] : kind.Units[2];
        return WriteFactored(seconds, unit, kind, digits, trim);
    }

    private static string WriteCapacity(double coulombs, QuantityKind kind, int digits, bool trim)
    {
        double size = Math.Abs(coulombs);
        Unit unit = size < 3.6e-3 ? kind.Units[0] : size < 36000 ? kind.Units[2] : kind.Units[1];
        return WriteFactored(coulombs, unit, kind, digits, trim);
    }

    private static string WriteFactored(double si, Unit unit, QuantityKind kind, int digits, bool trim)
    {
        if (unit.Factor == 1)
        {
            return WritePrefixed(Digits(si, digits, trim), unit, "");
        }

        if (digits != Shortest)
        {
            return Plain(Digits(si / unit.Factor, digits, trim), unit.Spellings[0]);
        }

        return Exactly(si, si / unit.Factor, number => number * unit.Factor) is string number
            ? Join(number, unit.Spellings[0])
            : WritePrefixed(Digits(si, Shortest, trim), kind.Units[0], "");
    }

    private static string WriteSquare(DecimalNumber number, QuantityKind kind)
    {
        if (number.IsZero)
        {
            return "0 m²";
        }

        return number.Exponent switch
        {
            >= 0 => Plain(number, "m²"),
            >= -4 => Plain(number.Shift(4), "cm²"),
            >= -9 => Plain(number.Shift(6), "mm²"),
            _ => Scientific(number, kind.Units[0].Spellings[0]),
        };
    }

    /// <summary>The shortest decimal number near <paramref name="guess"/> that <paramref name="back"/> takes to the value exactly; null
    /// where none of 17 digits does.</summary>
    private static string? Exactly(double value, double guess, Func<double, double> back)
    {
        for (int digits = 1; digits <= 17; digits++)
        {
            DecimalNumber candidate = Digits(guess, digits, trim: true);
            if (back(candidate.Value) == value)
            {
                return Plain(candidate);
            }
        }

        return null;
    }

    /// <summary>A number whose decimals, not digits, are limited: 0.004 dB prints as 0.00 dB with 3 digits.</summary>
    private static string Limited(double value, int digits, bool trim)
    {
        if (digits == Shortest)
        {
            return Plain(Digits(value, Shortest, trim));
        }

        DecimalNumber number = Rounded(value, digits);
        if (!number.IsZero && 0 <= number.Exponent)
        {
            return Plain(trim ? number.Trimmed() : number);
        }

        string text = value.ToString("F" + (digits - 1).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        text = trim && text.Contains('.') ? text.TrimEnd('0').TrimEnd('.') : text;
        return text.StartsWith('-') && text.AsSpan(1).IndexOfAnyExcept('0', '.') < 0 ? text[1..] : text;
    }

    private static DecimalNumber Digits(double value, int digits, bool trim)
    {
        var number = DecimalNumber.Of(value, digits == Shortest ? null : digits);
        return trim ? number.Trimmed() : number;
    }

    private static DecimalNumber Rounded(double value, int digits) => DecimalNumber.Of(value, digits);

    /// <summary>Decimal notation where it is readable, else a power of ten; behind it the unit with its prefix.</summary>
    private static string Plain(DecimalNumber number, string unit = "", string suffix = "", char? prefix = null)
    {
        Span<char> text = stackalloc char[DecimalNumber.Room];
        return WithUnit(text[..number.WritePlain(text)], prefix, unit, suffix);
    }

    /// <summary>A power of ten in any case.</summary>
    private static string Scientific(DecimalNumber number, string unit, string suffix = "")
    {
        Span<char> text = stackalloc char[DecimalNumber.Room];
        return WithUnit(text[..number.WriteScientific(text)], null, unit, suffix);
    }

    private static string WithUnit(ReadOnlySpan<char> number, char? prefix, string unit, string suffix)
    {
        if (prefix is null && unit.Length == 0 && suffix.Length == 0)
        {
            return number.ToString();
        }

        Span<char> text = stackalloc char[number.Length + unit.Length + suffix.Length + 2];
        number.CopyTo(text);
        int at = number.Length;
        text[at++] = ' ';
        if (prefix is { } letter)
        {
            text[at++] = letter;
        }

        unit.CopyTo(text[at..]);
        suffix.CopyTo(text[(at + unit.Length)..]);
        return text[..(at + unit.Length + suffix.Length)].ToString();
    }

    private static string Join(string number, string unit) => unit.Length == 0 ? number : number + " " + unit;
}
