using System.Text.RegularExpressions;

namespace FrontEnd.Documents.Reading;

/// <summary>What is wrong with a value that a TOML parser refuses, and how it is to be written.</summary>
internal static partial class TomlValues
{
    /// <param name="Finding">What is wrong.</param>
    /// <param name="At">Where in the value.</param>
    /// <param name="Meant">The value as it is to be written; null where nobody knows, or where it may be one of two.</param>
    internal sealed record Wrong(Finding Finding, int At, string? Meant);

    /// <summary>Null where nothing is known of it.</summary>
    public static Wrong? Of(string path, string written) => written switch
    {
        "" => new(ReadingMessages.NoValue(path), 0, null),
        ['"' or '\'', ..] => OfText(path, written),
        ['[', ..] or ['(', ..] => OfList(path, written),
        _ => OfBare(path, written),
    };

    /// <summary>A value that begins with a quote.</summary>
    private static Wrong? OfText(string path, string written)
    {
        char quote = written[0];
        if (written.Contains(new string(quote, 3), StringComparison.Ordinal))
        {
            return null;   // a text over several lines, or one that begins so
        }

        int end = written.IndexOf(quote, 1);
        if (end < 0)
        {
            string closed = written.TrimEnd('”', '“', '»', '«', '’', '‘', '"', '\'') is { Length: > 1 } text1 ? text1 + quote : written + quote;
            return new(ReadingMessages.NotClosed(path, written, quote, closed), 0, closed);
        }

        string text = written[..(end + 1)], rest = written[(end + 1)..].Trim();
        if (rest.Length == 0)
        {
            string single = $"'{written[1..^1]}'";
            return quote == '"' && written.Contains('\\') && TomlLine.IsValue(single) ? new(ReadingMessages.Backslash(path, single), written.IndexOf('\\'), single) : null;
        }

        if (rest[0] is ',' or ';')
        {
            string tail = rest[1..].Trim();
            return tail.Trim(',', ';', ' ', '\t').Length == 0 ? new(ReadingMessages.EndsInSign(path, rest[0], text), written.Length - 1, text)
                : KeyBehind().IsMatch(tail) ? new(ReadingMessages.TwoInOneLine(path, text, tail), end + 1, text)
                : (rest[0] == ',' || tail[0] is '"' or '\'') && List(written) is { } list ? new(ReadingMessages.NoBrackets(path, list), 0, list) : Behind();
        }

        // Quotes of the same kind inside: the text ends where its writer did not end it.
        return written[^1] == quote && Inner(written[1..^1]) is { } inner ? new(ReadingMessages.QuotesInside(path, quote, inner), end, inner)
            : rest.Contains(quote) && written[^1] != quote ? new(ReadingMessages.NotClosed(path, written, quote, written + quote), 0, null) : Behind();

        Wrong Behind() => new(ReadingMessages.BehindValue(path, rest, $"{text}  # {Comment().Replace(rest, "")}"), end + 1, text);
    }

    private static string? Inner(string text) => !text.Contains('\'') ? $"'{text}'" : Quoted(text);

    /// <summary>A text in the quotes that are not in it, double ones if it may; null where both are.</summary>
    private static string? Quoted(string text) => !text.Contains('"') ? $"\"{text}\"" : !text.Contains('\'') ? $"'{text}'" : null;

    /// <summary>A list in one line.</summary>
    private static Wrong? OfList(string path, string written)
    {
        if (written.AsSpan(1).IndexOfAny('[', '{') >= 0 || List(written) is not { } meant)
        {
            return null;
        }

        // The first item that is wrong by itself; if none is, what stands around or between them.
        foreach (Match item in Item().Matches(written))
        {
            string text = item.Value.TrimEnd();
            if (text is not ("-" or "–") && Numbers(text) is null && !TomlLine.IsValue(text) && Of(path, text) is var (finding, at, inner) && inner is not null)
            {
                return new(finding with { Help = $"write {meant}" }, item.Index + at, meant);
            }
        }

        bool isOpen = TomlLine.Depth(written) > 0;
        return new(written[0] == '(' ? ReadingMessages.RoundBrackets(path, meant) : isOpen ? ReadingMessages.ListNotClosed(path, meant) : ReadingMessages.NoCommas(path, meant), isOpen ? written.Length : 0, meant);
    }

    /// <summary>A list in brackets with commas, each item as it is to be written; null where an item is none.</summary>
    private static string? List(string written)
    {
        // Where blanks or semicolons part the values, a comma between two digits is a decimal sign.
        written = DecimalComma().IsMatch(written) && Parting().IsMatch(written) ? DecimalComma().Replace(written, ".") : written;
        List<string> items = [];
        foreach (Match match in Item().Matches(written))
        {
            string item = match.Value is ['"' or '\'', ..] text && (text.Length == 1 || text[^1] != text[0]) ? text.TrimEnd(']', ')', ' ') : match.Value.Trim();
            string? meant = item is "-" or "–" ? "" : Numbers(item) is { } numbers ? string.Join(", ", numbers) : TomlLine.IsValue(item) ? item : Of("", item)?.Meant;
            if (meant is null)
            {
                return null;
            }

            items.AddRange(meant.Length > 0 ? [meant] : []);
        }

        return items.Count == 0 ? null : $"[{string.Join(", ", items)}]";
    }

    /// <summary>Numbers with nothing but blanks between them; null for anything else, and for one whose thousands stand apart.</summary>
    private static string[]? Numbers(string text)
    {
        string[] parts = text.Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries);
        return parts.Length > 1 && NumberMeant.Plain(text) is null && Array.TrueForAll(parts, NumberMeant.IsNumber) ? parts : null;
    }

    /// <summary>A value without quotes.</summary>
    private static Wrong? OfBare(string path, string bare)
    {
        if (Quotes().Match(bare) is { Success: true } quoted)
        {
            string proper = Proper(quoted.Groups["text"].Value);
            return new(ReadingMessages.OtherQuotes(path, bare[0], proper), 0, proper);
        }

        if (Grouped().IsMatch(bare) || Decimal().IsMatch(bare))
        {
            string? meant = NumberMeant.Readings(bare) is [var one] ? Proper(one) : null;
            return new(ReadingMessages.CommaInNumber(path, bare), bare.IndexOf(','), meant);
        }

        if (NumberMeant.Plain(bare) is { } plain)
        {
            return new(ReadingMessages.NotPlain(path, bare, plain), 0, plain);
        }

        if (bare[^1] is '"' or '\'' && bare.Count(letter => letter == bare[^1]) % 2 == 1)
        {
            return new(ReadingMessages.NotOpened(path, bare, Proper(bare[..^1])), 0, Proper(bare[..^1]));
        }

        if (bare[^1] is ',' or ';')
        {
            string before = bare.TrimEnd(',', ';', ' ', '\t');
            return TomlLine.IsValue(before) ? new(ReadingMessages.EndsInSign(path, bare[^1], before), bare.Length - 1, before) : before.Length == 0 ? null : Of(path, before);
        }

        if (Switch(bare) is { } flag)
        {
            // Yes may be a name, too.
            return new(ReadingMessages.NotTrueOrFalse(path, bare, flag), 0, string.Equals(bare, flag, StringComparison.OrdinalIgnoreCase) ? flag : null);
        }

        return Digits().IsMatch(bare) ? new(ReadingMessages.TooLong(path, bare), 0, null)
            : Points().IsMatch(bare) ? new(ReadingMessages.TwoPoints(path, bare), 0, NumberMeant.WithoutGroups(bare) is var whole && whole != bare ? whole : null)
            : Behind().Match(bare) is { Success: true } behind && TomlLine.IsValue(behind.Groups["value"].Value)
                ? new(ReadingMessages.BehindValue(path, behind.Groups["rest"].Value, $"{behind.Groups["value"].Value}  # {Comment().Replace(behind.Groups["rest"].Value, "")}"), behind.Groups["rest"].Index, behind.Groups["value"].Value)
            : (Several().IsMatch(bare) || Numbers(bare) is not null) && List(bare) is { } list ? new(ReadingMessages.NoBrackets(path, list), 0, list)
            : !Structure().IsMatch(bare) && Quoted(bare) is { } text ? new(ReadingMessages.NotInQuotes(path, bare, text), 0, text)
            : null;
    }

    /// <summary>The position of a switch that a word stands for; null for any other word.</summary>
    public static string? Switch(string word) => word.Trim().ToUpperInvariant() switch { "TRUE" or "YES" or "ON" or "1" => "true", "FALSE" or "NO" or "OFF" or "0" => "false", _ => null };

    /// <summary>A text as it is to be written: a number bare, anything else in quotes.</summary>
    public static string Proper(string text) => NumberMeant.Plain(text) ?? (NumberMeant.IsNumber(text.Trim()) ? text.Trim() : $"\"{text.Trim()}\"");

    // Texts in any quotes, and words up to the next sign that stands between values.
    [GeneratedRegex("\"[^\"]*\"?|'[^']*'?|[“„«][^”“»]*[”“»]?|[^\\[\\]();,\\s\"'][^\\[\\]();,\"']*", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Item();

    [GeneratedRegex("^[A-Za-z0-9_.\"-]+\\s*[=:]", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex KeyBehind();

    [GeneratedRegex("(?<=[0-9]),(?=[0-9])", RegexOptions.None, 1000)]
    private static partial Regex DecimalComma();

    [GeneratedRegex(";|,\\s", RegexOptions.None, 1000)]
    private static partial Regex Parting();

    // What other files begin a comment with.
    [GeneratedRegex("^(?://+|;+|--+|/\\*+|%+|<!--|!)\\s*|\\s*(?:\\*/|-->)$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Comment();

    [GeneratedRegex("^(?<value>[^\\s]+)\\s+(?<rest>(?://|;|--|/\\*|<!--).*)$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Behind();

    [GeneratedRegex("^[“”„«»‘’‚`](?<text>[^“”„«»‘’‚`]*)[“”„«»‘’‚`\"']?$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Quotes();

    [GeneratedRegex("^[+-]?[0-9]{1,3}(,[0-9]{3}){2,}(\\.[0-9]*)?\\b", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Grouped();

    [GeneratedRegex("^[+-]?(?:[0-9]+|[1-9][0-9]{0,2}(?:\\.[0-9]{3})+),[0-9]+(?![0-9,.])", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Decimal();

    [GeneratedRegex("^[+-]?[0-9_]{19,}$", RegexOptions.None, 1000)]
    private static partial Regex Digits();

    [GeneratedRegex("^[+-]?[0-9]+(?:\\.+[0-9]+){2,}$|^[+-]?[0-9]+\\.{2,}[0-9]+$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Points();

    [GeneratedRegex("[^\\s,;][,;]\\s*[^\\s,;]", RegexOptions.None, 1000)]
    private static partial Regex Several();

    // Signs that belong to the file's own form: what holds one is not a text without its quotes.
    [GeneratedRegex("[\\[\\]{}=\\\\]", RegexOptions.None, 1000)]
    private static partial Regex Structure();
}
