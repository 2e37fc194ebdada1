using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>Compares what a command prints with its <c>--json</c>: every number of the text must be in the JSON, to the digits that are printed.</summary>
/// <remarks>
/// A printed number counts with its unit and prefix, without its sign. It is in the JSON where a number there rounds to it, or where a text there
/// (a name, a sentence, a key) has it. Ids and names such as <c>mains.harmonic.3</c> or <c>R1</c> are no numbers.
/// </remarks>
internal static partial class EveryNumberInJson
{
    private const double Celsius = 273.15;

    /// <summary>Fails with the lines whose numbers are missing.</summary>
    public static void Holds(string text, string json)
    {
        string[] missing = Missing(text, json);
        Assert.True(missing.Length == 0, $"not in the JSON:\n{string.Join('\n', missing)}");
    }

    /// <summary>Runs a command without and with <c>--json</c> and compares the two.</summary>
    public static void HoldsOf(params string[] call) => Holds(Shell.Run(call).Output, Shell.Run([.. call, "--json"]).Output);

    /// <summary>The numbers that are missing, each with its line.</summary>
    public static string[] Missing(string text, string json)
    {
        using JsonDocument document = JsonDocument.Parse(json);
        List<double> found = [];
        Collect(document.RootElement, found);
        double[] known = [.. found.Select(Math.Abs).Distinct().Order()];
        return
        [
            .. text.Split('\n').SelectMany(line => Numbers(line).Where(one => !Has(known, one)).Select(one => $"{one.Written}   in: {line.Trim()}")).Distinct(),
        ];
    }

    /// <summary>A percentage may stand as a share or, in the name of a percentile, as it is.</summary>
    private static bool Has(double[] known, Printed one) =>
        Has(known, one.Value, one.Half) || (one.Written.EndsWith('%') && Has(known, one.Bare, 100 * one.Half));

    private static bool Has(double[] known, double value, double half)
    {
        int at = Array.BinarySearch(known, value - half);
        at = at < 0 ? ~at : at;
        return at < known.Length && known[at] <= value + half;
    }

    private static void Collect(JsonElement element, List<double> found)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Number:
                found.Add(element.GetDouble());
                break;
            case JsonValueKind.String:
                found.AddRange(Numbers(element.GetString()!).SelectMany(one => new[] { one.Value, one.Bare }));
                break;
            case JsonValueKind.Array:
                foreach (JsonElement one in element.EnumerateArray())
                {
                    Collect(one, found);
                }

                break;
            case JsonValueKind.Object:
                foreach (JsonProperty member in element.EnumerateObject())
                {
                    found.AddRange(Numbers(member.Name).Select(one => one.Bare));
                    Collect(member.Value, found);
                }

                break;
            default:
                break;
        }
    }

    /// <summary>The numbers of a line in SI units.</summary>
    private static IEnumerable<Printed> Numbers(string line) => Pattern().Matches(line).Select(match =>
    {
        string digits = match.Groups["number"].Value;
        double bare = double.Parse(digits, CultureInfo.InvariantCulture), scale = Scale(match);
        string mantissa = digits.Split('e', 'E')[0];
        int point = mantissa.IndexOf('.', StringComparison.Ordinal), exponent = digits.Length == mantissa.Length ? 0 : int.Parse(digits[(mantissa.Length + 1)..], CultureInfo.InvariantCulture);

        // 1030 may stand for 1027: whole numbers are printed with two digits or more.
        int zeros = point < 0 ? Math.Min(mantissa.Length - mantissa.TrimEnd('0').Length, Math.Max(0, mantissa.Length - 2)) : 0;
        double half = 0.5 * Math.Pow(10, exponent - (point < 0 ? -zeros : mantissa.Length - point - 1));
        double offset = match.Groups["unit"].Value is "°C" ? Celsius : 0;
        return new Printed(match.Value, bare, (bare * scale) + offset, (half * scale * (1 + 1e-6)) + (1e-12 * bare * scale));
    });

    private static double Scale(Match match)
    {
        double prefix = match.Groups["prefix"].Value switch
        {
            "f" => 1e-15,
            "p" => 1e-12,
            "n" => 1e-9,
            "µ" => 1e-6,
            "m" => 1e-3,
            "c" => 1e-2,
            "k" => 1e3,
            "M" => 1e6,
            "G" => 1e9,
            _ => 1,
        };
        return match.Groups["unit"].Value switch
        {
            "m²" => prefix * prefix,
            "%" => 0.01,
            "min" => 60,
            "h" => 3600,
            "Ah" => prefix * 3600,
            "k" => 1e3,
            _ => prefix,
        };
    }

    [GeneratedRegex(@"(?<![\p{L}\d._\[#^√])(?<number>\d+(\.\d+)?(e[-+]?\d+)?)(?![\d_]|\.\d)(\s?(?<prefix>[fpnµmckMG]?)(?<unit>Ah|Hz|bit/s|V|A|Ω|F|s|T|C|m²|min|h|m|%|°C|k)(?![\p{L}²]))?(?!\p{L})", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 10_000)]
    private static partial Regex Pattern();

    /// <param name="Written">As printed.</param>
    /// <param name="Bare">Without unit and prefix.</param>
    /// <param name="Value">In the SI unit.</param>
    /// <param name="Half">Half of the last printed digit.</param>
    private sealed record Printed(string Written, double Bare, double Value, double Half);
}
