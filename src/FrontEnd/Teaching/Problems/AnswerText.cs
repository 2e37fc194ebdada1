using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace FrontEnd.Teaching.Problems;

/// <summary>What people write around a number and its unit.</summary>
internal static partial class AnswerText
{
    /// <summary>Longest line that is read; an answer is a number or a letter.</summary>
    private const int MostLetters = 300;

    /// <summary>Words that change what a number says, so that none of them is left out.</summary>
    private static readonly HashSet<string> Telling = new(StringComparer.OrdinalIgnoreCase)
    {
        "per", "peak", "pk", "pp", "ptp", "rms", "or", "and", "to", "not", "no", "nor", "root", "sqrt", "square", "squared", "cubed", "minus", "plus",
        "times", "million", "thousand", "billion", "hundred", "dozen", "half", "less", "more", "than", "under", "over", "below", "above", "between",
        "least", "most", "atto", "femto", "pico", "nano", "micro", "milli", "centi", "kilo", "mega", "giga", "tera", "power", "ten", "log", "ln",
        "twice", "double", "max", "min", "until", "versus", "vs", "instead",
    };

    private static readonly HashSet<string> Measures = new(StringComparer.OrdinalIgnoreCase)
    {
        "rms", "r.m.s.", "pp", "p-p", "ptp", "pk-pk", "peak-to-peak", "peak to peak", "dc",
    };

    /// <summary>What takes the place of what a text system, a formula or a code page leaves.</summary>
    private static readonly (string Was, string Is)[] Replaced =
    [
        ("\\times", "×"), ("\\cdot", "·"), ("\\mu", "µ"), ("\\Omega", "Ω"), ("\\pm", "±"), ("\\mathrm", ""), ("\\text", ""), ("\\,", " "), ("\\;", " "),
        ("\\ ", " "), ("\\%", "%"), ("\\sqrt", "√"), ("\\approx", "≈"), ("$", ""), ("+/-", "±"), ("+-", "±"), ("&nbsp;", " "), ("&micro;", "µ"),
        ("&Omega;", "Ω"), ("Âµ", "µ"), ("Î¼", "µ"), ("Î©", "Ω"), ("â„¦", "Ω"), ("Ã—", "×"), ("Â·", "·"), ("Â°", "°"), ("Â±", "±"), ("âˆš", "√"), ("âˆ’", "-"),
        ("Â ", " "), ("^{", "^("), ("{", ""), ("}", ""),
    ];

    /// <summary>One line with ordinary blanks and signs, without quotes, and without the stop of its sentence.</summary>
    public static string Clean(string text)
    {
        StringBuilder line = new(Math.Min(text.Length, MostLetters));
        foreach (char letter in text.Length <= MostLetters ? text : text[..MostLetters])
        {
            switch (letter)
            {
                case '\u2010' or '\u2011' or '\u2012' or '\u2013' or '\u2014' or '\u2212' or '\uFE63' or '\uFF0D':
                    line.Append('-');
                    break;
                case '\u2018' or '\u2019' or '\u02BC' or '\u00B4' or '`':
                    line.Append('\'');
                    break;
                case '"' or '\u201C' or '\u201D' or '\u201E' or '«' or '»':
                    break;
                case >= '\uFF01' and <= '\uFF5E':
                    line.Append((char)(letter - '\uFF01' + '!'));
                    break;
                case '\u2009' or '\u202F' or '\u00A0':
                    line.Append(' ');
                    break;
                default:
                    line.Append(char.IsWhiteSpace(letter) ? " " : char.GetUnicodeCategory(letter) is UnicodeCategory.Format ? "" : letter.ToString());
                    break;
            }
        }

        foreach ((string was, string now) in Replaced)
        {
            line.Replace(was, now);
        }

        return line.ToString().Trim().Trim('\'').Trim().TrimEnd('.', ';', ',', '!').Trim();
    }

    /// <summary>True for what may stand in front of a number: V, the noise is, about.</summary>
    public static bool IsLead(string text)
    {
        if (text.Length == 0)
        {
            return true;
        }

        bool isPlain = text.All(letter => char.IsLetter(letter) || letter is ' ' or '_' or '.' or ',' or '\'' or '-' or '×' or '(' or ')');
        return isPlain && !Split(text).Any(Telling.Contains);
    }

    /// <summary>Readings of what stands behind a number, the likelier first: as it is, with spelled-out parts as signs, without remarks in
    /// brackets, without words that are no unit. "" for no unit.</summary>
    /// <param name="isCount">True where a plain number is asked for, so that what is counted may follow: 74 sweeps, 6th.</param>
    public static IEnumerable<string> Units(string after, bool isCount)
    {
        // 12-bit, 6-pole
        string bare = after.Trim();
        bare = bare is ['-', var letter, ..] && char.IsLetter(letter) ? bare[1..] : bare;
        if (bare.Length == 0)
        {
            yield return "";
            yield break;
        }

        if (isCount && bare.Length >= 2 && bare[..2].ToLowerInvariant() is "st" or "nd" or "rd" or "th" && (bare.Length == 2 || !char.IsLetter(bare[2])))
        {
            bare = bare[2..].Trim(' ', '-');
            if (bare.Length == 0)
            {
                yield return "";
                yield break;
            }
        }

        string repaired = Repaired(bare);
        foreach (string reading in Readings(bare, isCount).Concat(repaired == bare ? [] : Readings(repaired, isCount)))
        {
            yield return reading;
        }
    }

    private static IEnumerable<string> Readings(string unit, bool isCount)
    {
        string signs = Signs(unit), plain = WithoutBrackets(signs).Replace(',', ' ').Replace(';', ' ').TrimEnd('?', '.', ' ');
        yield return signs;
        yield return plain;
        string[] words = plain.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        for (int length = words.Length - 1; 0 < length; length--)
        {
            for (int from = 0; from + length <= words.Length; from++)
            {
                if (words.Where((_, at) => at < from || from + length <= at).All(IsRemark))
                {
                    yield return string.Join(' ', words[from..(from + length)]);
                }
            }
        }

        if (isCount && (words.All(IsRemark) || words is ["times" or "fold"]))
        {
            yield return "";
        }
    }

    /// <summary>With Latin letters for those that look like them, and with the signs that have no place in Windows-1252: programs write ? or O for
    /// the ohm sign, and for the root v or ?.</summary>
    private static string Repaired(string unit)
    {
        IEnumerable<string> words = Lookalikes.ToLatin(unit).Split(' ').Select(word => word.TrimEnd('.') is [.. var prefix, '?' or 'O'] && prefix is "" or "k" or "K" or "M" or "G" or "m"
            ? prefix + "Ω"
            : word);
        return string.Join(' ', words).Replace("/vHz", "/√Hz", StringComparison.Ordinal).Replace("/?Hz", "/√Hz", StringComparison.Ordinal);
    }

    /// <summary>True for a word that says nothing of a number's size: no unit, no sign, no second value.</summary>
    public static bool IsRemark(string word)
    {
        string plain = word.Trim('.', ',', ';', ':', '(', ')', '!', '\'');
        return plain is "E6" or "E12" or "E24" or "E48" or "E96" or "E192" || (2 <= plain.Length && plain.All(letter => char.IsLetter(letter) || letter is '-' or '\'') && !Split(plain).Any(Telling.Contains)
            && QuantityKind.All.All(kind => !QuantityText.IsRead(kind, "1 " + plain, out _)));
    }

    /// <summary>A choice's text, by which it is told: small letters, single blanks, no quotes, no stop.</summary>
    public static string Phrase(string text)
    {
        string clean = Lookalikes.ToLatin(Clean(text)).ToLowerInvariant().Replace("μ", "µ", StringComparison.Ordinal);
        return string.Join(' ', clean.Split(' ', StringSplitOptions.RemoveEmptyEntries)).Trim('?', ' ', '.', '*', '_');
    }

    /// <summary>The text, and what is left of it without the words that lead to a choice: answer, option, it is.</summary>
    public static IEnumerable<string> WithoutLead(string phrase)
    {
        yield return phrase;
        string rest = phrase;
        while (rest.Split([' ', ':', '=', ','], 2) is [var first, var more]
            && first is "answer" or "option" or "choice" or "letter" or "solution" or "it" or "is" or "the" or "my" or "i" or "choose" or "change" or "ans"
                or "antwort" or "lösung" or "wahl" or "ist" or "die" or "réponse" or "reponse" or "choix" or "lettre" or "buchstabe" or "la" or "est" or "")
        {
            yield return rest = more.Trim();
        }
    }

    /// <summary>A text without "peak" at its end; null where it does not end so.</summary>
    public static string? WithoutPeak(string unit) => Peak().Match(unit.Trim()) is { Success: true } peak ? peak.Groups["unit"].Value : null;

    /// <summary>A density per hertz as one per root of hertz.</summary>
    public static string WithRoot(string text) => PerHertz().Replace(text, "/√Hz");

    /// <summary>True where a further number stands behind the first, and is no exponent: 20 to 30 nV, 174 nV, 348 nV.</summary>
    public static bool HasSecondValue(string after) => SecondValue().IsMatch(after);

    /// <summary>The words of a line, without any sign.</summary>
    public static string[] WordsOf(string text) => [.. Words().Matches(text).Select(match => match.Value)];

    [GeneratedRegex(@"^(?<unit>.*V)\s*[\(_]?(?:peak|pk|p)\)?$", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, 1000)]
    private static partial Regex Peak();

    [GeneratedRegex(@"\s*(?:/|\bper\b|\bpro\b|\bpar\b)\s*(?:Hz|hertz)\b(?!\s*\^)", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, 1000)]
    private static partial Regex PerHertz();

    [GeneratedRegex(@"(?<!\^\s*)(?:^|[\s,;…+\-.~(])\s*[0-9]", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex SecondValue();

    [GeneratedRegex(@"[\p{L}\p{N}']+", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Words();

    // 1/2, 0.5 or ½ as an exponent of hertz, below a fraction's stroke or negative.
    [GeneratedRegex(@"\s*(?:/\s*Hz\s*(?:(?:\^|\*\*)\s*\(?\s*(?:1/2|0[.,]5|½)\s*\)?|½)|[\s·⋅*×]\s*Hz\s*(?:\^|\*\*)\s*\(?\s*-\s*(?:1/2|0[.,]5|½)\s*\)?)", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, 1000)]
    private static partial Regex RootOfHertz();

    [GeneratedRegex(@"^(?:1\s*/\s*s|/\s*s|s\s*(?:\^\s*\(?\s*-\s*1\s*\)?|⁻¹))$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex PerSecond();

    private static string[] Split(string text) => text.Split([' ', '-', '_', '.', ',', ':', '(', ')', '\''], StringSplitOptions.RemoveEmptyEntries);

    /// <summary>Spelled-out parts of a unit as the signs that designs are written with.</summary>
    private static string Signs(string unit)
    {
        string signs = RootOfHertz().Replace(unit.Replace('[', ' ').Replace(']', ' ').Replace('_', ' '), "/√Hz");
        signs = PerSecond().Replace(signs.Trim(), "Hz");
        (string Was, string Is)[] words =
        [
            (" per ", "/"), ("-per-", "/"), ("square root of ", "√"), ("square root ", "√"), ("root-", "√"), ("root(", "√("), ("root ", "√"), ("√ ", "√"), ("roothertz", "√Hz"), ("roothz", "√Hz"),
            ("√hertz", "√Hz"), ("sqrt hertz", "√Hz"), ("sqrt(hertz)", "√Hz"), ("/seconds", "/s"), ("/second", "/s"), ("/sec", "/s"), ("/ s", "/s"),
        ];
        foreach ((string was, string now) in words)
        {
            signs = signs.Replace(was, now, StringComparison.OrdinalIgnoreCase);
        }

        foreach (string word in (string[])["atto", "femto", "pico", "nano", "micro", "milli", "centi", "kilo", "mega", "giga", "tera"])
        {
            signs = signs.Replace(word + "-", word, StringComparison.OrdinalIgnoreCase);
        }

        return signs.Trim();
    }

    /// <summary>Without remarks in brackets, but for what is measured: (rms). A second value in brackets is no remark.</summary>
    private static string WithoutBrackets(string text)
    {
        for (int open = text.IndexOf('('); 0 <= open; open = text.IndexOf('(', open + 1))
        {
            int close = text.IndexOf(')', open);
            string inside = close < 0 ? text[(open + 1)..] : text[(open + 1)..close];
            string kept = Measures.Contains(inside.Trim()) ? " " + inside.Trim() : "";
            if (open == 0 || text[open - 1] == ' ' || kept.Length > 0)
            {
                string behind = close < 0 ? "" : text[(close + 1)..];
                text = text[..open].TrimEnd() + kept + behind;
                open = -1;
            }
        }

        return text.Trim();
    }
}
