using System.Text;
using System.Text.Json;

namespace FrontEnd.Documents.Reading;

/// <summary>What is wrong where a text is no TOML or no JSON, told by what stands there: what the parsers say names their tokens.</summary>
internal static class SyntaxWords
{
    /// <summary>Of a code that no character has, which the parser throws for.</summary>
    public const string NoCharacter = "a text holds a code that is no character";

    /// <summary>Longest piece of the text that is repeated.</summary>
    private const int Longest = 40;

    /// <summary>Of a place where the parser stumbled.</summary>
    /// <param name="said">The parser's own sentence, of which only the subject is looked for.</param>
    public static string OfToml(string text, int offset, string said)
    {
        offset = Math.Clamp(offset, 0, text.Length);
        int start = offset == 0 ? 0 : text.LastIndexOf('\n', offset - 1) + 1, end = text.IndexOf('\n', offset);
        string before = text[start..offset].TrimStart(), rest = text[offset..(end < 0 ? text.Length : end)].Trim();
        string word = Word(rest);
        bool Says(string subject) => said.Contains(subject, StringComparison.OrdinalIgnoreCase);
        if (Says("control character"))
        {
            return "a control character stands in it, which nobody sees";
        }

        if (Says("escape") || Says("scalar"))
        {
            return $"`{Escape(rest)}` is no sign after a backslash";
        }

        if (Says("newline in a string") || Says("End-Of-File"))
        {
            return Says("multi-line") ? "a text of several lines has no end: three quotes are missing" : "a text in quotes has no end: a quote is missing on its line";
        }

        if (Says("date time"))
        {
            return $"`{word}` is no date or time";
        }

        if (rest.Length == 0)
        {
            return Unfinished(before, Says("inline table"), Says("array"));
        }

        return before.Length == 0 && word[0] == '=' ? "the line has no key before `=`"
            : before.StartsWith('[') && !before.Contains('=', StringComparison.Ordinal) && !before.Contains(']', StringComparison.Ordinal) ? "a table's name has no `]` behind it"
            : before.Length != 0 && !before.Contains('=', StringComparison.Ordinal) && before[0] is not ('[' or ']' or '{' or ',') ? $"`=` belongs behind the key, not `{word}`"
            : before.EndsWith('=') ? $"`{word}` is no value"
            : $"`{word}` cannot stand here";
    }

    /// <summary>Of a text that the reader of JSON refuses.</summary>
    public static string OfJson(string text, int offset, JsonException error)
    {
        if (IsTooDeep(text))
        {
            return FormattableString.Invariant($"it is nested deeper than {TomlTree.DepthLimit} levels");
        }

        string rest = text[Math.Clamp(offset, 0, text.Length)..].TrimStart();
        int end = rest.IndexOf('\n', StringComparison.Ordinal);
        return rest.Length == 0 ? "it ends too early: a bracket, a quote or a value is missing"
            : error.Message.Contains("within a JSON string", StringComparison.Ordinal) ? "a text in quotes has no end, or holds a sign that wants a backslash before it"
            : $"`{Word((end < 0 ? rest : rest[..end]).Trim())}` cannot stand here";
    }

    private static string Unfinished(string before, bool isInlineTable, bool isArray) =>
        isArray ? "a list has no `]` at its end"
        : isInlineTable ? "a table in braces has no `}` at its end"
        : before.TrimEnd().EndsWith('=') ? "no value stands behind `=`"
        : before.StartsWith('[') ? "a table's name has no `]` behind it"
        : "it ends too early";

    /// <summary>The first word of what stands at the place, a text in quotes whole.</summary>
    private static string Word(string rest)
    {
        StringBuilder word = new();
        foreach (Rune letter in rest.EnumerateRunes())
        {
            bool isFirst = word.Length == 0;
            if (!isFirst && (Rune.IsWhiteSpace(letter) || letter.Value is ',' or ']' or '}' or '=' or '#' || word.Length >= Longest))
            {
                break;
            }

            word.Append(letter);
            if (isFirst && letter.Value is ',' or ']' or '}' or '=' or '[' or '{')
            {
                break;
            }
        }

        return word.ToString();
    }

    /// <summary>The backslash and what follows it: the letter, or the letters of a number.</summary>
    private static string Escape(string rest)
    {
        int at = rest.IndexOf('\\', StringComparison.Ordinal);
        if (at < 0)
        {
            return "\\" + Word(rest);
        }

        int length = at + 1 < rest.Length ? rest[at + 1] switch { 'u' => 6, 'U' => 10, 'x' => 4, _ => 2 } : 1;
        return rest.Substring(at, Math.Min(length, rest.Length - at));
    }

    private static bool IsTooDeep(string text)
    {
        int depth = 0, most = 0;
        foreach (char letter in text)
        {
            depth += letter is '[' or '{' ? 1 : letter is ']' or '}' ? -1 : 0;
            most = Math.Max(most, depth);
        }

        return TomlTree.DepthLimit < most;
    }
}
