using System.Globalization;
using FrontEnd.Teaching;

namespace FrontEnd.Tests.Teaching;

/// <summary>What a student reads off a sheet: numbers and units as printed, by no parser of ours.</summary>
internal static class PrintedValues
{
    // A unit that begins with a prefix's letter stands before the prefixes do.
    private static readonly (string Unit, double Factor, double Offset)[] Units =
    [
        ("", 1, 0), ("%", 0.01, 0), ("Ω", 1, 0), ("F", 1, 0), ("V", 1, 0), ("V rms", 1, 0), ("V p-p", 1, 0), ("A", 1, 0), ("Hz", 1, 0), ("s", 1, 0),
        ("dB", 1, 0), ("bit", 1, 0), ("T rms", 1, 0), ("V/√Hz", 1, 0), ("A/√Hz", 1, 0), ("cm²", 1e-4, 0), ("mm²", 1e-6, 0), ("m", 1, 0), ("°C", 1, 273.15),
    ];

    private static readonly Dictionary<char, double> Prefixes = new()
    {
        ['f'] = 1e-15, ['p'] = 1e-12, ['n'] = 1e-9, ['µ'] = 1e-6, ['m'] = 1e-3, ['k'] = 1e3, ['M'] = 1e6, ['G'] = 1e9,
    };

    /// <summary>The given values by their symbols, from their printed texts.</summary>
    public static Dictionary<string, double> Of(Problem problem) => problem.Givens.ToDictionary(given => given.Symbol, given => Read(given.Text), StringComparer.Ordinal);

    /// <summary>A number and its unit, in the SI unit.</summary>
    public static double Read(string printed)
    {
        string text = printed.Trim();
        int end = text.TakeWhile(letter => char.IsAsciiDigit(letter) || letter is '.' or '-').Count();
        decimal number = decimal.Parse(text[..end], CultureInfo.InvariantCulture);
        string unit = text[end..].Trim();
        foreach ((string name, double factor, double offset) in Units)
        {
            if (unit == name)
            {
                return ((double)number * factor) + offset;
            }

            if (unit.Length == name.Length + 1 && unit.EndsWith(name, StringComparison.Ordinal) && Prefixes.TryGetValue(unit[0], out double prefix))
            {
                return (double)number * prefix * factor;
            }
        }

        throw new FormatException($"`{printed}` has no unit that a student would know");
    }
}
