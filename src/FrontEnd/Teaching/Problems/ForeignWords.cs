using System.Text.RegularExpressions;

namespace FrontEnd.Teaching.Problems;

/// <summary>What people write in German and French words, or in English ones for a formula's signs, in the signs and words that answers are read in:
/// <c>23 Nanovolt pro Wurzel Hertz</c>, <c>1,2 mal 10 hoch minus 6 A</c>, <c>464 millisecondes</c>.</summary>
internal static partial class ForeignWords
{
    private static readonly Dictionary<string, string> Words = new(StringComparer.OrdinalIgnoreCase)
    {
        ["pro"] = "per", ["par"] = "per", ["und"] = "and", ["et"] = "and", ["oder"] = "or", ["ou"] = "or", ["bis"] = "to", ["minus"] = "minus", ["moins"] = "minus",
        ["effektiv"] = "rms", ["eff"] = "rms", ["efficace"] = "rms", ["efficaces"] = "rms", ["spitze"] = "peak", ["crête"] = "peak", ["crete"] = "peak",
        ["prozent"] = "%", ["pourcent"] = "%", ["dBs"] = "dB", ["mégohm"] = "megohm", ["mégohms"] = "megohms",
    };

    private static readonly (string Was, string Is)[] Prefixes =
    [
        ("mikro", "micro"), ("piko", "pico"), ("méga", "mega"), ("zenti", "centi"), ("dezi", "deci"), ("déci", "deci"), ("micro", "micro"), ("pico", "pico"),
        ("mega", "mega"), ("centi", "centi"), ("femto", "femto"), ("nano", "nano"), ("milli", "milli"), ("kilo", "kilo"), ("giga", "giga"), ("", ""),
    ];

    private static readonly Dictionary<string, string> Units = new(StringComparer.OrdinalIgnoreCase)
    {
        ["sekunde"] = "second", ["sekunden"] = "seconds", ["seconde"] = "second", ["secondes"] = "seconds", ["minuten"] = "minutes", ["stunde"] = "hour",
        ["stunden"] = "hours", ["heure"] = "hour", ["heures"] = "hours", ["ampère"] = "ampere", ["ampères"] = "amperes", ["bel"] = "bel", ["bels"] = "bels",
        ["grad"] = "degrees", ["degré"] = "degree", ["degrés"] = "degrees", ["octet"] = "byte", ["octets"] = "bytes",
        ["volt"] = "volt", ["volts"] = "volts", ["ampere"] = "ampere", ["amperes"] = "amperes", ["amp"] = "amp", ["ohm"] = "ohm", ["ohms"] = "ohms", ["farad"] = "farad",
        ["farads"] = "farads", ["hertz"] = "hertz", ["watt"] = "watt", ["watts"] = "watts", ["tesla"] = "tesla", ["bit"] = "bit", ["bits"] = "bits", ["byte"] = "byte",
        ["bytes"] = "bytes",
    };

    /// <summary>An answer to a question for a quantity in the words and signs of the reader. What leads to the number is left as it is, but for its sign.</summary>
    public static string InEnglish(string line)
    {
        int first = line.IndexOfAny(['0', '1', '2', '3', '4', '5', '6', '7', '8', '9']);
        if (first < 0)
        {
            return line;
        }

        string before = Moins().Replace(line[..first], "minus "), after = line[first..];
        after = ToThePower().Replace(after, match => $"^{(match.Groups["sign"].Value.Trim() is "" or "+" or "plus" ? "" : "-")}{match.Groups["digits"].Value}");
        after = TimesTen().Replace(after, "×");
        after = PeakToPeak().Replace(after, "p-p");
        after = Root().Replace(after, "√");
        after = VoltsOfMeasure().Replace(after, match => $"{match.Groups["volts"].Value} {(match.Groups["measure"].Value is "ss" or "SS" ? "p-p" : "rms")}");
        after = Hyphened().Replace(after, "");
        return before + Letters().Replace(after, match => Word(match.Value));
    }

    private static string Word(string word)
    {
        if (Words.TryGetValue(word, out string? known))
        {
            return known;
        }

        foreach ((string was, string now) in Prefixes)
        {
            if (word.StartsWith(was, StringComparison.OrdinalIgnoreCase) && Units.TryGetValue(word[was.Length..], out string? unit))
            {
                // What is English already stays as it is written.
                return string.Equals(now + unit, word, StringComparison.OrdinalIgnoreCase) ? word : now + unit;
            }
        }

        return word;
    }

    [GeneratedRegex(@"\p{L}+", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Letters();

    [GeneratedRegex(@"\bmoins\s+(?=\s*$)", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, 1000)]
    private static partial Regex Moins();

    // 10 hoch minus 6, 10 to the power of -6, 10 puissance -6
    [GeneratedRegex(@"(?<=(?<!\d)10)\s*(?:to\s+the(?:\s+power(?:\s+of)?)?|hoch|(?:à\s+la\s+)?puissance)\s*(?<sign>minus\s|moins\s|plus\s|[-+]\s*)?\s*(?<digits>[0-9]{1,3})(?![0-9])",
        RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, 1000)]
    private static partial Regex ToThePower();

    [GeneratedRegex(@"(?<=\d)\s*\b(?:mal|fois|times)\s+(?=10\^)", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, 1000)]
    private static partial Regex TimesTen();

    [GeneratedRegex(@"spitze[\s-]*(?:zu[\s-]*)?spitze|cr[êe]te[\s-]*(?:à|a)[\s-]*cr[êe]te", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, 1000)]
    private static partial Regex PeakToPeak();

    [GeneratedRegex(@"(?:quadratwurzel|wurzel|racine)(?:\s+(?:aus|carr[ée]e))?(?:\s+(?:de|du|von)\b|\s+d')?\s*", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, 1000)]
    private static partial Regex Root();

    // Mikro-Ampere
    [GeneratedRegex(@"(?<=\b(?:mikro|piko|nano|milli|kilo|m[eé]ga|giga))-(?=\p{L})", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, 1000)]
    private static partial Regex Hyphened();

    // nVeff, mV_eff, µVss
    [GeneratedRegex(@"(?<volts>\b[fpnuµμmk]?V)_?(?<measure>eff|ss|SS)\b", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex VoltsOfMeasure();
}
