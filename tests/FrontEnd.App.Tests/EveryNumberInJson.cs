using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>The law that a program reads no less than a person: every number that a command prints as text is in its <c>--json</c>, to the digits printed.</summary>
/// <remarks>
/// A number of the text, with its unit and prefix, is looked for among all the numbers of the JSON, which are in SI units, losses in dB, shares or per cent.
/// What is no number of the answer is left out: names (C1, q31, FE0301), sentences that stand word for word in a string of the JSON (findings, formulas with the numbers put in), and the labels that the caller names, such as <c>-3 dB</c>.
/// </remarks>
internal static partial class EveryNumberInJson
{
    /// <summary>SI value of one unit; a unit that is not listed counts as 1.</summary>
    private static readonly Dictionary<string, double> Factors = new(StringComparer.Ordinal)
    {
        ["min"] = 60, ["h"] = 3600, ["d"] = 86_400, ["Ah"] = 3600, ["ppm"] = 1e-6, ["k"] = 1e3,
    };

    private static readonly Dictionary<string, double> Prefixes = new(StringComparer.Ordinal)
    {
        [""] = 1, ["f"] = 1e-15, ["p"] = 1e-12, ["n"] = 1e-9, ["µ"] = 1e-6, ["u"] = 1e-6, ["m"] = 1e-3, ["c"] = 1e-2, ["k"] = 1e3, ["M"] = 1e6, ["G"] = 1e9, ["T"] = 1e12,
    };

    /// <summary>Fails with every number of the text that the JSON lacks.</summary>
    /// <param name="text">What the command prints for a person.</param>
    /// <param name="json">What it prints with <c>--json</c> for the same call.</param>
    /// <param name="labels">Fixed words of the page that hold a number: <c>-3 dB (half power)</c>. Blanks stand for any white space.</param>
    public static void Holds(string text, string json, params string[] labels)
    {
        IReadOnlyList<string> missing = Missing(text, json, labels);
        Assert.True(missing.Count == 0, $"{missing.Count} printed numbers are not in the JSON:\n{string.Join("\n", missing)}");
    }

    /// <summary>Fails with every number of the text that the JSON has neither as a number nor in any of its texts and keys.</summary>
    /// <remarks>For pages that are made of sentences and lists as much as of figures: a default's <c>47 kΩ</c>, a year in a source, a count in a remark. Signs do not count.</remarks>
    public static void IsTold(string text, string json)
    {
        List<double> numbers = [];
        using (JsonDocument document = JsonDocument.Parse(json))
        {
            CollectTold(document.RootElement, numbers);
        }

        double[] sorted = [.. numbers.SelectMany(one => new[] { one, -one }).Order()];
        string[] missing = [.. Printed().Matches(text).Where(one => !IsFound(one, sorted, 2)).Select(one => $"  {one.Value.Trim()}   in: {About(text, one)}")];
        Assert.True(missing.Length == 0, $"{missing.Length} printed numbers are nowhere in the JSON:\n{string.Join("\n", missing)}");
    }

    private static void CollectTold(JsonElement element, List<double> numbers)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                foreach (JsonProperty property in element.EnumerateObject())
                {
                    numbers.AddRange(Printed().Matches(property.Name).SelectMany(Values));
                    CollectTold(property.Value, numbers);
                }

                break;
            case JsonValueKind.Array:
                foreach (JsonElement one in element.EnumerateArray())
                {
                    CollectTold(one, numbers);
                }

                break;
            case JsonValueKind.Number:
                numbers.Add(element.GetDouble());
                break;
            case JsonValueKind.String:
                numbers.AddRange(Printed().Matches(element.GetString()!).SelectMany(Values));
                break;
            default:
                break;
        }
    }

    /// <summary>A written number as it stands, and in SI units.</summary>
    private static double[] Values(Match printed)
    {
        double number = double.Parse(printed.Groups["number"].ValueSpan, CultureInfo.InvariantCulture);
        return [number, number * Scale(printed), printed.Groups["unit"].Value is "%" ? number / 100 : number];
    }

    private static double Scale(Match printed)
    {
        string unit = printed.Groups["unit"].Value;
        double prefix = Prefixes[printed.Groups["prefix"].Value];
        return (unit is "m²" ? prefix * prefix : prefix) * Factors.GetValueOrDefault(unit, 1);
    }

    /// <summary>The printed numbers that the JSON lacks, each with the words about it.</summary>
    /// <inheritdoc cref="Holds"/>
    public static IReadOnlyList<string> Missing(string text, string json, params string[] labels)
    {
        List<double> numbers = [];
        HashSet<string> prose = new(labels, StringComparer.Ordinal);
        using (JsonDocument document = JsonDocument.Parse(json))
        {
            Collect(document.RootElement, numbers, prose);
        }

        double[] sorted = [.. numbers.Order()];
        // The longest first: a short sentence may be part of a long one.
        foreach (string words in prose.OrderByDescending(one => one.Length))
        {
            text = Regex.Replace(text, @"(?<![\p{L}\p{N}])" + string.Join(@"\s+", words.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Select(Regex.Escape)) + @"(?![\p{L}\p{N}])", "…", RegexOptions.None, TimeSpan.FromSeconds(5));
        }

        return [.. Printed().Matches(text).Where(one => !IsFound(one, sorted)).Select(one => $"  {one.Value.Trim()}   in: {About(text, one)}")];
    }

    private static void Collect(JsonElement element, List<double> numbers, HashSet<string> prose)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                foreach (JsonProperty property in element.EnumerateObject())
                {
                    Collect(property.Value, numbers, prose);
                }

                break;
            case JsonValueKind.Array:
                foreach (JsonElement one in element.EnumerateArray())
                {
                    Collect(one, numbers, prose);
                }

                break;
            case JsonValueKind.Number:
                numbers.Add(element.GetDouble());
                break;
            case JsonValueKind.String:
                string words = element.GetString()!;
                // A number printed into a string, "50 Hz", is no number for a program; a sentence about it is prose.
                if (words.Any(char.IsAsciiDigit) && 3 <= Printed().Replace(words, "").Count(char.IsLetter))
                {
                    prose.Add(words);
                }

                break;
            default:
                break;
        }
    }

    /// <summary>True where the JSON has a number that prints as this one.</summary>
    /// <param name="digits">The fewest digits to which a number is printed.</param>
    private static bool IsFound(Match printed, double[] sorted, int digits = 3)
    {
        double number = double.Parse(printed.Groups["number"].ValueSpan, CultureInfo.InvariantCulture);
        double room = HalfLastPlace(printed.Groups["mantissa"].Value, digits) * (printed.Groups["exponent"] is { Success: true } e ? Math.Pow(10, int.Parse(e.ValueSpan, CultureInfo.InvariantCulture)) : 1);
        string sign = printed.Groups["sign"].Value;
        string unit = printed.Groups["unit"].Value;
        double scale = Scale(printed);
        return (sign switch { "±" => new[] { number, -number }, "-" or "−" => [-number], _ => [number] }).Any(value => unit switch
        {
            "%" => Has(value, 1) || Has(value, 0.01),
            "°C" => Has(value, 1) || Has(value + 273.15, 1),
            _ => Has(value, scale),
        });

        bool Has(double value, double si)
        {
            double within = (room * si * (1 + 1e-9)) + (Math.Abs(value * si) * 1e-12), least = (value * si) - within;
            int at = Array.BinarySearch(sorted, least);
            at = at < 0 ? ~at : at;
            return at < sorted.Length && sorted[at] <= (value * si) + within;
        }
    }

    /// <summary>Half a unit of the last digit that counts. A number without a point is whole, or was trimmed from that many digits or more; zeros at its end may only hold the place.</summary>
    private static double HalfLastPlace(string mantissa, int fewest)
    {
        int point = mantissa.IndexOf('.', StringComparison.Ordinal);
        if (0 <= point)
        {
            return 0.5 * Math.Pow(10, point + 1 - mantissa.Length);
        }

        int digits = mantissa.TrimStart('0').Length;
        return digits == 0 ? 0.005 : 0.5 * Math.Pow(10, digits - Math.Max(fewest, mantissa.Trim('0').Length));
    }

    private static string About(string text, Match number)
    {
        const int Around = 50;
        int from = Math.Max(0, number.Index - Around), to = Math.Min(text.Length, number.Index + number.Length + Around);
        return Blanks().Replace(text[from..to], " ").Trim();
    }

    /// <summary>A number that is not part of a name, and the unit behind it.</summary>
    [GeneratedRegex(
        @"(?<![\p{L}\p{N}_.][-+−]?)(?<sign>[-+−±]?)(?<number>(?<mantissa>\d+(?:\.\d+)?)(?:e(?<exponent>[-+]?\d+))?)(?![\p{N}_]|\.\d)"
        + @"(?:(?:\s|(?=[%°]))(?<prefix>[fpnuµmckMGT]?)(?<unit>Hz|S/s|bit/s|bit|m²|Ah|min|h|d|ppm|%|dB|°C|°|LSB|V|A|Ω|F|s|C|T|W|J|K|m|k|×)(?![\p{L}\p{N}])|(?!\p{L}))",
        RegexOptions.CultureInvariant, 5000)]
    private static partial Regex Printed();

    [GeneratedRegex(@"\s+", RegexOptions.CultureInvariant, 5000)]
    private static partial Regex Blanks();
}
