using System.Text.RegularExpressions;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace FrontEnd.Documents.Reading;

/// <summary>Slips of one line that a TOML parser tells of in several places, none of them the slip: a decimal comma, a text without one of its
/// quotes, a sign that only looks right, a table's name without its bracket.</summary>
internal static partial class TomlSlips
{
    private static readonly string[] Yes = ["true", "yes", "on"], No = ["false", "no", "off"];

    /// <summary>The text with each such line made a comment, of the same length, and a finding for each; null where there is none.</summary>
    /// <remarks>For a text that the parser refuses. A line is looked at alone: one that the parser takes is none of them. A list over several
    /// lines is left to the parser, and so is a text in which texts go over several lines.</remarks>
    /// <param name="slips">The lines whose key is known.</param>
    public static string? Without(SourceText source, List<Finding> findings, out List<Slip> slips)
    {
        slips = [];
        string text = source.Text;
        if (text.Contains("\"\"\"", StringComparison.Ordinal) || text.Contains("'''", StringComparison.Ordinal))
        {
            return null;
        }

        char[]? repaired = null;
        string table = "";
        Dictionary<string, int> lists = new(StringComparer.Ordinal);
        int open = 0;
        bool isTableLost = false;
        for (int start = 0; start < text.Length;)
        {
            int end = text.IndexOf('\n', start);
            end = end < 0 ? text.Length : end;
            string line = text[start..end].TrimEnd('\r');
            bool isWithin = 0 < open, isHeader = !isWithin && line.TrimStart().StartsWith('[');
            string? problem = isWithin ? null : Problem(line);
            open = isWithin || (problem is not null && !isHeader) ? Math.Max(0, open + Depth(line)) : 0;
            isTableLost &= !isHeader;
            if (isHeader)
            {
                table = Path(line, lists) + ".";
            }

            if (problem is not null && open == 0)
            {
                (Finding finding, int at) = isHeader ? (ReadingMessages.TableName(line.Trim(), Meant(line)), line.IndexOf('[')) : Slip(table, line, problem);
                findings.Add(source.Placed(finding, start + at));
                if (!isHeader && !isTableLost && Written(line, start, findings[^1]) is { } slip)
                {
                    slips.Add(slip);
                }

                isTableLost |= isHeader;
            }

            // The keys below a table's name that cannot be read are not those of the table before.
            if ((isTableLost || (problem is not null && open == 0)) && start < end)
            {
                repaired ??= text.ToCharArray();
                repaired[start] = '#';
            }

            start = end + 1;
        }

        return repaired is null ? null : new string(repaired);
    }

    /// <summary>What the parser first stumbles over in a line by itself, in words of ours; null for nothing.</summary>
    private static string? Problem(string line)
    {
        try
        {
            DocumentSyntax document = SyntaxParser.Parse(line, "", validate: false);
            return document.HasErrors && document.Diagnostics.FirstOrDefault() is { } first ? SyntaxWords.OfToml(line, first.Span.Start.Offset, first.Message) : null;
        }
        catch (ArgumentException)
        {
            // It throws for an escape of a code that is no character, as it does for the whole text.
            return SyntaxWords.NoCharacter;
        }
    }

    /// <summary>The path of a table by its header, the elements of a list of tables counted.</summary>
    /// <param name="lists">How many elements each list has so far.</param>
    private static string Path(string header, Dictionary<string, int> lists)
    {
        string name = Name().Match(header).Value;
        if (header.TrimStart().StartsWith("[[", StringComparison.Ordinal))
        {
            lists[name] = lists.GetValueOrDefault(name) + 1;
        }

        string first = name.Split('.')[0];
        return lists.TryGetValue(first, out int count) ? $"{first}[{count}]{name[first.Length..]}" : name;
    }

    /// <summary>How many more brackets a line opens than it closes, but for those in texts and comments.</summary>
    private static int Depth(string line)
    {
        int depth = 0;
        char quote = '\0';
        foreach (char letter in line)
        {
            if (quote != '\0')
            {
                quote = letter == quote ? '\0' : quote;
            }
            else if (letter == '#')
            {
                break;
            }
            else
            {
                quote = letter is '"' or '\'' ? letter : '\0';
                depth += letter is '[' or '{' ? 1 : letter is ']' or '}' ? -1 : 0;
            }
        }

        return depth;
    }

    private static string Meant(string line) =>
        Name().Match(line).Value is { Length: > 0 } name ? line.TrimStart().StartsWith("[[", StringComparison.Ordinal) ? $"[[{name}]]" : $"[{name}]" : "[name]";

    private static (Finding Finding, int At) Slip(string table, string line, string problem)
    {
        if (Pair().Match(line) is { Success: true } pair)
        {
            Group key = pair.Groups["key"], value = pair.Groups["value"];
            string path = table + Lookalikes.ToLatin(key.Value);
            return Lookalikes.First(key.Value) is not null
                ? (ReadingMessages.Lookalike(path, key.Value), key.Index)
                : Value(path, value.Value.TrimEnd()) is var (finding, at) ? (finding, value.Index + at)
                : (ReadingMessages.SyntaxError(problem, "TOML") with { Field = path }, value.Index);
        }

        return WithoutSign().Match(line) is { Success: true } words
            ? (ReadingMessages.NoEquals(table + words.Groups["key"].Value, line.Trim(), words.Groups["key"].Value, Bare(words.Groups["value"].Value)), words.Groups["key"].Index)
            : (ReadingMessages.SyntaxError(problem, "TOML"), line.Length - line.TrimStart().Length);
    }

    /// <summary>Where key and value of such a line stand; null where there is no key.</summary>
    private static Slip? Written(string line, int start, Finding problem)
    {
        Match pair = Pair().Match(line);
        Match match = pair.Success ? pair : WithoutSign().Match(line);
        (Group key, Group value) = (match.Groups["key"], match.Groups["value"]);
        if (!match.Success || (!pair.Success && !value.Success))
        {
            return null;
        }

        Span from = new(start + value.Index, start + value.Index + Bare(value.Value).Length);
        return new Slip(Lookalikes.ToLatin(key.Value), new Span(start + key.Index, from.End), from,
            !pair.Success || Lookalikes.First(key.Value) is not null, problem);
    }

    /// <summary>What is wrong with a value that the parser refuses, and where in it; null where nothing is known of it.</summary>
    private static (Finding Finding, int At)? Value(string path, string written)
    {
        if (written.Length == 0)
        {
            return (ReadingMessages.NoValue(path), 0);
        }

        if (written[0] is '"' or '\'' && !written.Contains('\\'))
        {
            // One quote alone, or one more than pairs.
            return written.Count(letter => letter == written[0]) % 2 == 1 ? (ReadingMessages.NotClosed(path, written, written[0]), 0) : null;
        }

        if (written[0] == '[')
        {
            return Items(written).Select(item => Value(path, item.Text) is var (finding, at) && Problem($"x = {item.Text}") is not null ? (finding, item.At + at) : ((Finding, int)?)null)
                .FirstOrDefault(item => item is not null);
        }

        string bare = Bare(written);
        return bare.Length == 0 ? (ReadingMessages.NoValue(path), 0)
            : Quotes().Match(bare) is { Success: true } quoted ? (ReadingMessages.OtherQuotes(path, bare[0], Proper(quoted.Groups["text"].Value)), 0)
            : Grouped().IsMatch(bare) || Decimal().IsMatch(bare) ? (ReadingMessages.CommaInNumber(path, bare), bare.IndexOf(','))
            : NumberMeant.Plain(bare) is { } plain ? (ReadingMessages.NotPlain(path, bare, plain), 0)
            : bare[^1] is '"' or '\'' && bare.Count(letter => letter == bare[^1]) % 2 == 1 ? (ReadingMessages.NotOpened(path, bare, Proper(bare[..^1])), 0)
            : bare[^1] is ',' or ';' && Problem($"x = {bare[..^1]}") is null ? (ReadingMessages.EndsInSign(path, bare), bare.Length - 1)
            : Array.Exists(Yes, word => Same(word, bare)) ? (ReadingMessages.NotTrueOrFalse(path, bare, "true"), 0)
            : Array.Exists(No, word => Same(word, bare)) ? (ReadingMessages.NotTrueOrFalse(path, bare, "false"), 0)
            : WithUnit().IsMatch(bare) || Word().IsMatch(bare) ? (ReadingMessages.NotInQuotes(path, bare), 0)
            : null;
    }

    private static bool Same(string word, string written) => string.Equals(word, written, StringComparison.OrdinalIgnoreCase);

    /// <summary>A value without the comment behind it.</summary>
    private static string Bare(string written) => (written.IndexOf('#') is var comment and >= 0 ? written[..comment] : written).Trim();

    /// <summary>A text as it is to be written: a number bare, anything else in quotes.</summary>
    private static string Proper(string text) => NumberMeant.Plain(text) ?? (NumberMeant.IsNumber(text.Trim()) ? text.Trim() : $"\"{text.Trim()}\"");

    /// <summary>The items of a list in one line, and where they stand in it.</summary>
    private static IEnumerable<(string Text, int At)> Items(string list) =>
        Item().Matches(list).Select(item => (item.Value.TrimEnd(), item.Index));

    [GeneratedRegex("(?<=^\\s*\\[\\[?\\s*)[A-Za-z0-9_.-]+", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Name();

    [GeneratedRegex("^\\s*(?<key>[\\p{L}0-9_.-]+)\\s*=\\s*(?<value>.*)$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Pair();

    [GeneratedRegex("^\\s*(?<key>[A-Za-z][A-Za-z0-9_.-]*)\\s*([:\\s]\\s*(?<value>\\S.*))?$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex WithoutSign();

    [GeneratedRegex("(\"[^\"]*\"|'[^']*'|[^\\[\\],\\s])(\"[^\"]*\"|'[^']*'|[^\\[\\],])*", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Item();

    [GeneratedRegex("^[“”„«»‘’‚`](?<text>[^“”„«»‘’‚`]*)[“”„«»‘’‚`\"']?$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Quotes();

    [GeneratedRegex("^[+-]?[0-9]{1,3}(,[0-9]{3}){2,}(\\.[0-9]*)?\\b", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Grouped();

    [GeneratedRegex("^[+-]?[0-9]+,[0-9]+(?![0-9,])", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Decimal();

    // A number with something behind it that no number, date or time of TOML has: a blank and letters, or a sign of a unit.
    [GeneratedRegex("^[+-]?[0-9]+(\\.[0-9]+)?(\\s+[\\p{L}%°/²]|[a-zA-ZµΩ%°])", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex WithUnit();

    [GeneratedRegex("^\\p{L}[\\p{L}0-9 ._+-]*$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Word();
}
