using System.Globalization;

namespace FrontEnd.Building;

/// <summary>Values in the code of IEC 60062, for machines that mangle Ω and µ: the letter of the prefix stands for the decimal point.</summary>
/// <remarks>4.7 kΩ is 4K7, 47 Ω is 47R, 4.7 nF is 4n7; the µ of the standard is written u.</remarks>
internal static class PartCode
{
    private static readonly (double Unit, string Letter)[] Ohms = [(1e9, "G"), (1e6, "M"), (1e3, "K"), (1, "R")];
    private static readonly (double Unit, string Letter)[] Farads = [(1e-3, "m"), (1e-6, "u"), (1e-9, "n"), (1e-12, "p")];

    /// <summary>Of a resistance or a capacitance above zero; "" for any other quantity.</summary>
    public static string Of(IQuantity? value) => value switch
    {
        Resistance { Ohms: > 0 } r => Coded(r.Ohms, Ohms),
        Capacitance { Farads: > 0 } c => Coded(c.Farads, Farads),
        _ => "",
    };

    private static string Coded(double value, (double Unit, string Letter)[] units)
    {
        (double unit, string letter) = Array.Find(units, one => one.Unit * (1 - 1e-9) <= value) is { Letter: not null } found ? found : units[^1];
        string digits = (value / unit).ToString("0.######", CultureInfo.InvariantCulture);
        return digits.StartsWith("0.", StringComparison.Ordinal) ? letter + digits[2..]
            : digits.Contains('.', StringComparison.Ordinal) ? digits.Replace(".", letter, StringComparison.Ordinal)
            : digits.Length == 1 ? digits + letter + "0"
            : digits + letter;
    }
}
