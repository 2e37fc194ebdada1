using System.Text.RegularExpressions;
using FrontEnd.Catalogue;
using FrontEnd.Sizing;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Reading;

/// <summary>Lines that begin a table, and those that were meant to.</summary>
internal static partial class TomlHeaders
{
    /// <summary>The lists of tables of a design.</summary>
    public static readonly IReadOnlySet<string> Lists = DesignFields.Lists.Select(list => list.Key).ToHashSet(StringComparer.Ordinal);

    /// <summary>Every table that a file of ours can have.</summary>
    private static readonly string[] Tables =
    [
        .. DesignFields.Fixed.SelectMany(field => Parents(field.Key)).Concat(Lists)
            .Concat([DesignFields.AntiAliasKey, PartlyKnownDesign.BoughtKey, SizingFields.Table, HomeworkFields.PointsKey, HomeworkFields.RubricKey, "templates", "values", "usual"])
            .Distinct(StringComparer.Ordinal),
    ];

    private const int LongestName = 100;

    private static IEnumerable<string> Parents(string key)
    {
        for (int dot = key.IndexOf('.', StringComparison.Ordinal); 0 < dot; dot = key.IndexOf('.', dot + 1))
        {
            yield return key[..dot];
        }
    }

    /// <summary>True for a line without square brackets in front that was meant to begin a table: in other brackets, or the name of one alone.</summary>
    public static bool IsMeant(string line)
    {
        string code = TomlLine.Code(line).Trim();
        return code.Length <= LongestName && (Alone().Match(code) is { Success: true } alone ? alone.Groups["bracket"].Success || Known(TomlLine.PlainName(alone.Groups["name"].Value)) is not null
            : Decorated().Match(code) is { Success: true } decorated && Known(TomlLine.PlainName(decorated.Groups["name"].Value)) is not null);
    }

    /// <summary>The path of a table by its header, the elements of a list of tables counted.</summary>
    /// <param name="lists">How many elements each list has so far.</param>
    public static string Path(string header, Dictionary<string, int> lists)
    {
        string name = Name().Match(header).Value;
        if (header.TrimStart().StartsWith("[[", StringComparison.Ordinal))
        {
            lists[name] = lists.GetValueOrDefault(name) + 1;
        }

        string first = name.Split('.')[0];
        return lists.TryGetValue(first, out int count) ? $"{first}[{count}]{name[first.Length..]}" : name;
    }

    /// <summary>What is wrong with such a line, and the table that is meant.</summary>
    public static Finding Wrong(string line)
    {
        string code = TomlLine.Code(line).Trim();
        Match written = Inside().Match(code) is { Success: true } within && within.Groups["name"].Value.Any(char.IsLetter) && Plainly().IsMatch(within.Groups["name"].Value)
            || !Decorated().IsMatch(code) ? Inside().Match(code) : Decorated().Match(code);
        string inside = written.Groups["name"].Value.Trim(), rest = written.Groups["rest"].Value.Trim(']', ')', '}', '>', ':', ';', ',', ' ');
        string plain = TomlLine.PlainName(Dots().Replace(inside.Replace("\"", "", StringComparison.Ordinal), "."));
        int word = plain.IndexOf('-', StringComparison.Ordinal);
        if (Known(plain) is null && inside.Contains(' ', StringComparison.Ordinal) && 0 < word && Array.Exists(Tables, table => table == plain[..word]))
        {
            plain = $"{plain[..word]}.{plain[(word + 1)..]}";   // a table in a table, with a blank for the dot
        }

        string? known = Known(plain) ?? (plain.Contains('.', StringComparison.Ordinal) && Array.Exists(Tables, table => plain.StartsWith(table + ".", StringComparison.Ordinal)) ? null : Nearest.Of(plain, Tables));
        bool isName = PlainName().IsMatch(plain);
        if (!isName && known is null)
        {
            return ReadingMessages.NoTableNamed(inside, [.. Tables.Where(table => !table.Contains('.', StringComparison.Ordinal))]);
        }

        string name = known is not null && (!isName || Known(plain) is not null || plain != inside) ? known : plain;
        bool isList = Lists.Contains(name) || (known is null && code.StartsWith("[[", StringComparison.Ordinal));
        string meant = isList ? $"[[{name}]]" : $"[{name}]";
        return ReadingMessages.TableName(code, rest.Length > 0 && OtherComment().IsMatch(rest) ? $"{meant}  # {OtherComment().Replace(rest, "")}" : meant, Lookalikes.Reason(inside));
    }

    private static string? Known(string name) => Array.Find(Tables, table => string.Equals(Spelt(table), Spelt(name), StringComparison.Ordinal));

    private static string Spelt(string name) => name.Replace("-", "", StringComparison.Ordinal).Replace("_", "", StringComparison.Ordinal).ToUpperInvariant();

    [GeneratedRegex("(?<=^\\s*\\[\\[?\\s*)[A-Za-z0-9_.-]+", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Name();

    // A name alone in its line, with or without brackets or a colon.
    [GeneratedRegex("^(?<bracket>[({<])?[({<]*\\s*(?<name>[\\p{L}][\\p{L}0-9_. -]*?)\\s*(?<bracket>[\\])}>])?[\\])}>]*[:;]?$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Alone();

    // A table's name between signs of any kind, or before a brace.
    [GeneratedRegex("^[^\\p{L}\\p{N}\"']*(?<name>\\p{L}[\\p{L}0-9_. -]*?)(?:\\s*(?:=\\s*)?\\{|\\s*={2,}|[^\\p{L}\\p{N}\"'=]*)$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Decorated();

    [GeneratedRegex("^[\\p{L}0-9_.:/ \\-–\"']+$", RegexOptions.None, 1000)]
    private static partial Regex Plainly();

    [GeneratedRegex("^[\\[({<]*(?<name>[^\\])}>;]*?)\\s*(?:[\\])}>;]+(?<rest>.*))?$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Inside();

    [GeneratedRegex("\\s*[/\\\\:>]+\\s*|\\s*\\.\\s*", RegexOptions.None, 1000)]
    private static partial Regex Dots();

    [GeneratedRegex("^[A-Za-z0-9_-]+(?:\\.[A-Za-z0-9_-]+)*$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex PlainName();

    [GeneratedRegex("^(?://+|--+|/\\*+|%+)\\s*", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex OtherComment();
}
