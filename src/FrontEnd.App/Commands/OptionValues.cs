using System.CommandLine;
using System.Globalization;
using System.Numerics;
using System.Text.RegularExpressions;
using FrontEnd.Circuits;
using FrontEnd.Documents;
using FrontEnd.Fields;
using Papers = FrontEnd.Documents.Sheets.Paper;

namespace FrontEnd.App.Commands;

/// <summary>Values of options from their text; what cannot be read becomes a finding at the option.</summary>
internal static partial class OptionValues
{
    /// <summary>The option that every command with figures has.</summary>
    public static Option<bool> Json() => new("--json") { Description = "print JSON with numbers in SI units; default: text, 80 columns" };

    /// <summary>The option of a command that answers with files.</summary>
    public static Option<bool> JsonOfFiles() => new("--json") { Description = "print JSON that names the files written; default: a line each, to the messages" };

    /// <summary>The option of what is printed on paper.</summary>
    public static Option<string?> Paper() => new("--paper")
    {
        Description = $"what is printed on: {string.Join(" or ", Words)}; default: {Papers.A4.Word}", HelpName = "paper",
    };

    /// <summary>The paper that was named; A4 beside the finding, or where none was.</summary>
    public static Papers PaperOf(string? text, List<Finding> findings)
    {
        Papers? paper = Papers.Find(text ?? Papers.A4.Word);
        if (paper is null)
        {
            findings.Add(CallMessages.NoWord("--paper", text!, Words, Nearest.Of(text!, Words)));
        }

        return paper ?? Papers.A4;
    }

    private static IEnumerable<string> Words => Papers.All.Select(paper => paper.Word);

    /// <summary>One of a set of words; the default value beside the finding.</summary>
    public static T Word<T>(string text, string option, IReadOnlyDictionary<string, T> words, List<Finding> findings)
        where T : struct
    {
        if (words.TryGetValue(text, out T value))
        {
            return value;
        }

        findings.Add(CallMessages.NoWord(option, text, words.Keys, Nearest.Of(text, words.Keys)));
        return default;
    }

    /// <summary>Frequencies with commas between them; null where the option is not given.</summary>
    public static List<Frequency>? Frequencies(string? text, string option, List<Finding> findings)
    {
        if (text is null)
        {
            return null;
        }

        List<Frequency> frequencies = [];
        foreach (string part in text.Split(','))
        {
            if (QuantityText.TryParse(part, out Frequency frequency, out ParseProblem? problem))
            {
                frequencies.Add(frequency);
                continue;
            }

            Finding finding = problem!.ToFinding(option, part);
            findings.Add(Several(text) is { } meant ? finding with { Help = meant, Note = "a point is the decimal sign, and commas stand between frequencies" } : finding);
            return frequencies;   // what follows is said of the whole text already
        }

        return frequencies;
    }

    /// <summary>What to write where several frequencies, or one with a decimal comma, are written in another way; null for neither.</summary>
    internal static string? Several(string text)
    {
        static bool IsRead(string one) => QuantityText.IsRead(QuantityKind.Of<Frequency>(), one, out _);
        string[] parts = [.. Separators().Split(text.Trim()).Where(part => part.Length > 0)];
        string unit = parts.Length > 0 ? parts[^1][parts[^1].TakeWhile(letter => char.IsAsciiDigit(letter) || letter == '.').Count()..] : "";
        string[] each = [.. parts.Select(part => NumberMeant.IsNumber(part) ? part + unit : part)];
        string? list = each.Length > 1 && unit.Length > 0 && Array.TrueForAll(each, IsRead) ? $"`{string.Join(',', each)}`" : null;
        string point = text.Replace(',', '.');
        return text.AsSpan().Count(',') == 1 && IsRead(point) && list is not null ? $"write `{point}` for one, {list} for two"
            : list is not null ? $"write {list}"
            : QuantityMeant.Ends(text, QuantityKind.Of<Frequency>()) is var (low, high) ? $"write `{low},{high}`" : null;
    }

    // Commas and semicolons, and blanks before the next number.
    [GeneratedRegex(@"\s*[,;]\s*|\s+(?=[0-9])", RegexOptions.None, 1000)]
    private static partial Regex Separators();

    /// <summary>One quantity with its unit; null where the option is not given or cannot be read.</summary>
    public static T? Quantity<T>(string? text, string option, List<Finding> findings)
        where T : struct, IQuantity
    {
        if (text is null)
        {
            return null;
        }

        if (QuantityText.TryParse(text, out T value, out ParseProblem? problem))
        {
            return value;
        }

        findings.Add(problem!.ToFinding(option, text));
        return null;
    }

    /// <summary>Counts that are checked where they are used: large enough to say what is wrong with them there.</summary>
    public const int AnyCount = 1_000_000_000;

    /// <summary>A whole number of which somebody else knows the range.</summary>
    public static int? Count(string? text, string option, List<Finding> findings) => Whole(text, option, -AnyCount, AnyCount, findings, "");

    /// <summary>A whole number; null where the option is not given, cannot be read or is out of its range.</summary>
    /// <param name="range">As messages say it; "" where the range tells nobody anything.</param>
    /// <param name="code">Of a number that is out of it.</param>
    public static T? Whole<T>(string? text, string option, T least, T most, List<Finding> findings, string? range = null, string code = CallMessages.WholeNumber)
        where T : struct, IBinaryInteger<T>
    {
        if (text is null)
        {
            return null;
        }

        // Signs, digits and nothing else, whatever the machine's language takes for a thousand.
        if (!BigInteger.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out BigInteger number))
        {
            findings.Add(CallMessages.NotWhole(option, text, range ?? $"{least} to {most}"));
            return null;
        }

        if (number < BigInteger.CreateChecked(least) || BigInteger.CreateChecked(most) < number)
        {
            findings.Add(CallMessages.NotInRange(option, text, range is null or "" ? $"{least} to {most}" : range, code));
            return null;
        }

        return T.CreateChecked(number);
    }

    /// <summary>A day; null where the option is not given or cannot be read.</summary>
    public static DateOnly? Day(string? text, string option, List<Finding> findings)
    {
        if (text is null)
        {
            return null;
        }

        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day))
        {
            return day;
        }

        findings.Add(CallMessages.NotADay(option, text));
        return null;
    }

    /// <summary>The option that <see cref="OpAmp"/> reads.</summary>
    public static Option<string?> OpAmpOption() => new("--op-amp")
    {
        Description = "part card of the op-amp that an analogue filter is built with: "
            + string.Join(", ", DesignDocument.CardNames(CardClass.OpAmp))
            + ", or a file; default: a micropower CMOS whose offset, bias current and output resistance are not given",
        HelpName = "card",
    };

    /// <summary>A part card's figures; the default op-amp where none is named.</summary>
    public static OpAmp OpAmp(string? card, string option, List<Finding> findings)
    {
        if (card is null)
        {
            return Circuits.OpAmp.MicropowerCmos;
        }

        (OpAmp opAmp, IReadOnlyList<Finding> wrong) = DesignDocument.OpAmpCard(card, Environment.CurrentDirectory);
        findings.AddRange(wrong.Select(finding => finding with { Field = option, Excerpt = null }));
        return opAmp;
    }
}
