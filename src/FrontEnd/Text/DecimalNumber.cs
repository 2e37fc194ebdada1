using System.Globalization;

namespace FrontEnd.Text;

/// <summary>A decimal number of up to 19 digits: sign, digits d1 d2 … and the power of ten of d1. No digits are zero.</summary>
internal readonly record struct DecimalNumber
{
    /// <summary>Room for any number that is written here, in characters.</summary>
    internal const int Room = 32;

    private readonly bool _isNegative;

    /// <summary>The digits as one whole number.</summary>
    private readonly ulong _digits;

    private readonly int _count;

    private DecimalNumber(bool isNegative, ulong digits, int count, int exponent) =>
        (_isNegative, _digits, _count, Exponent) = (isNegative, digits, count, exponent);

    /// <summary>The power of ten of the first digit.</summary>
    internal int Exponent { get; }

    internal bool IsZero => _count == 0;

    /// <summary>The nearest double.</summary>
    internal double Value
    {
        get
        {
            Span<char> text = stackalloc char[Room];
            return IsZero ? 0 : double.Parse(text[..WriteScientific(text)], NumberStyles.Float, CultureInfo.InvariantCulture);
        }
    }

    /// <summary>A double with a number of digits, 1..17; null for as many as read back as the same double.</summary>
    internal static DecimalNumber Of(double value, int? digits)
    {
        Span<char> format = ['E', '0', '0'], text = stackalloc char[Room];
        if (digits is { } count)
        {
            (format[1], format[2]) = ((char)('0' + ((count - 1) / 10)), (char)('0' + ((count - 1) % 10)));
        }

        return value.TryFormat(text, out int written, digits is null ? "R" : format, CultureInfo.InvariantCulture)
            ? Read(text[..written])
            : throw new InvalidOperationException("A number is longer than its room.");
    }

    /// <summary>Reads what a double's format writes: "-4700", "2.2E-07", "1.000E+003".</summary>
    private static DecimalNumber Read(ReadOnlySpan<char> text)
    {
        bool isNegative = text[0] == '-', isWhole = true;
        ulong digits = 0;
        int count = 0, exponent = -1, at = isNegative ? 1 : 0;
        for (; at < text.Length && text[at] != 'E'; at++)
        {
            if (text[at] == '.')
            {
                isWhole = false;
                continue;
            }

            // Zeros before the first digit that is none only count for the power of ten.
            bool isSignificant = count != 0 || text[at] != '0';
            digits = isSignificant ? (digits * 10) + (ulong)(text[at] - '0') : 0;
            count += isSignificant ? 1 : 0;
            exponent += isWhole ? (isSignificant ? 1 : 0) : (isSignificant ? 0 : -1);
        }

        exponent += at < text.Length ? int.Parse(text[(at + 1)..], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture) : 0;
        return count == 0 ? default : new DecimalNumber(isNegative, digits, count, exponent);
    }

    /// <summary>The same times a power of ten.</summary>
    internal DecimalNumber Shift(int powers) => IsZero ? this : new(_isNegative, _digits, _count, Exponent + powers);

    /// <summary>Without zeros behind its last digit that is none.</summary>
    internal DecimalNumber Trimmed()
    {
        (ulong digits, int count) = (_digits, _count);
        while (1 < count && digits % 10 == 0)
        {
            (digits, count) = (digits / 10, count - 1);
        }

        return new(_isNegative, digits, count, Exponent);
    }

    /// <summary>Decimal notation where it is readable, else a power of ten; how many characters it takes.</summary>
    internal int WritePlain(Span<char> text)
    {
        if (IsZero || Exponent is < -4 or > 6)
        {
            return WriteScientific(text);
        }

        int at = 0;
        if (_isNegative)
        {
            text[at++] = '-';
        }

        int whole = Exponent + 1;
        if (whole <= 0)
        {
            "0.0000".AsSpan(0, 2 - whole).CopyTo(text[at..]);
            at += 2 - whole;
            return at + WriteDigits(text[at..], _digits, _count);
        }

        if (_count <= whole)
        {
            at += WriteDigits(text[at..], _digits, _count);
            text.Slice(at, whole - _count).Fill('0');
            return at + whole - _count;
        }

        ulong power = Power(_count - whole);
        at += WriteDigits(text[at..], _digits / power, whole);
        text[at++] = '.';
        return at + WriteDigits(text[at..], _digits % power, _count - whole);
    }

    /// <summary>One digit, the others as decimals, and a power of ten where it is another than 0; how many characters it takes.</summary>
    internal int WriteScientific(Span<char> text)
    {
        int at = 0;
        if (IsZero)
        {
            text[at++] = '0';
            return at;
        }

        if (_isNegative)
        {
            text[at++] = '-';
        }

        ulong power = Power(_count - 1);
        at += WriteDigits(text[at..], _digits / power, 1);
        if (1 < _count)
        {
            text[at++] = '.';
            at += WriteDigits(text[at..], _digits % power, _count - 1);
        }

        if (Exponent == 0)
        {
            return at;
        }

        text[at++] = 'e';
        Exponent.TryFormat(text[at..], out int written, default, CultureInfo.InvariantCulture);
        return at + written;
    }

    private static int WriteDigits(Span<char> text, ulong digits, int count)
    {
        for (int i = count - 1; 0 <= i; i--)
        {
            text[i] = (char)('0' + (digits % 10));
            digits /= 10;
        }

        return count;
    }

    private static ulong Power(int exponent)
    {
        ulong power = 1;
        for (int i = 0; i < exponent; i++)
        {
            power *= 10;
        }

        return power;
    }
}
