using System.Text.RegularExpressions;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace FrontEnd.Documents.Reading;

/// <summary>A line that a TOML parser refuses, taken apart as its writer meant it: key, sign, value, comment.</summary>
/// <param name="Key">As it stands there; empty for none.</param>
/// <param name="KeyAt">Where it begins in the line.</param>
/// <param name="Sign">What stands between key and value; empty for nothing.</param>
/// <param name="Value">Without blanks around it and without the comment.</param>
/// <param name="ValueAt">Where it begins; where it should begin if there is none.</param>
internal sealed partial record TomlLine(string Key, int KeyAt, string Sign, string Value, int ValueAt)
{
    /// <summary>What the parser first stumbles over in a line by itself, in words of ours; null for nothing.</summary>
    public static string? Problem(string line)
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

    /// <summary>True for what the parser takes as the value of a key.</summary>
    public static bool IsValue(string value) => value.Length > 0 && Problem("x = " + value) is null;

    /// <summary>The line without its comment.</summary>
    public static string Code(string line)
    {
        char quote = '\0';
        for (int i = 0; i < line.Length; i++)
        {
            char letter = line[i];
            if (quote != '\0')
            {
                quote = letter == quote ? '\0' : quote;
            }
            else if (letter == '#')
            {
                return line[..i].TrimEnd();
            }
            else if (letter is '"' or '\'' && BeginsText(line, i))
            {
                quote = letter;
            }
        }

        // A text that is not closed would take the comment with it.
        return quote != '\0' && line.IndexOf(" #", StringComparison.Ordinal) is >= 0 and int at ? line[..at].TrimEnd() : line.TrimEnd();
    }

    /// <summary>How many more brackets a line opens than it closes, but for those in texts and comments.</summary>
    public static int Depth(string line)
    {
        int depth = 0;
        char quote = '\0';
        string code = Code(line);
        for (int i = 0; i < code.Length; i++)
        {
            char letter = code[i];
            if (quote != '\0')
            {
                quote = letter == quote ? '\0' : quote;
            }
            else
            {
                quote = letter is '"' or '\'' && BeginsText(code, i) ? letter : '\0';
                depth += letter is '[' or '{' ? 1 : letter is ']' or '}' ? -1 : 0;
            }
        }

        return depth;
    }

    /// <summary>Key, sign and value of a line without its comment; null where it is neither a key with a sign nor words.</summary>
    public static TomlLine? Of(string code)
    {
        Match match = Pair().Match(code);
        match = match.Success ? match : Words().Match(code);
        if (!match.Success)
        {
            return null;
        }

        Group key = match.Groups["key"], value = match.Groups["value"];
        return new TomlLine(key.Value.TrimEnd(), key.Index, match.Groups["sign"].Value, value.Value.TrimEnd(), value.Success ? value.Index : code.Length);
    }

    /// <summary>The key in letters that a key may have, words joined by hyphens: what it probably is; empty where nothing is left.</summary>
    public string PlainKey => PlainName(Key.Trim('"', '\''));

    /// <summary>True where the key may stand so.</summary>
    public bool IsKeyPlain => Bare().IsMatch(Key) || (Key is ['"' or '\'', .., '"' or '\''] && Key[0] == Key[^1]);

    /// <summary>A name in letters that a name may have.</summary>
    public static string PlainName(string name)
    {
        string plain = Dashes().Replace(Lookalikes.ToLatin(Lookalikes.ToAscii(Lookalikes.WithoutInvisible(name))), "-");
        return string.Join('-', plain.Split([' ', '\t', '\u00A0', '(', ')', '[', ']', ','], StringSplitOptions.RemoveEmptyEntries)).Trim('.', '-');
    }

    // An apostrophe in a word is none of a text's quotes.
    private static bool BeginsText(string line, int at) => at == 0 || !char.IsLetterOrDigit(line[at - 1]);

    [GeneratedRegex("^\\s*(?<key>\"[^\"]*\"|'[^']*'|[^\\s=:\"'#<>~＝：≔\\[{(][^=:\"'#<>~＝：≔]*?)\\s*(?<sign>[=:~＝：≔]+>?|-+>|<-+)\\s*(?<value>.*)$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Pair();

    [GeneratedRegex("^\\s*(?<key>[\\p{L}_][\\p{L}0-9_.-]*)(?:\\s+(?<value>\\S.*))?$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Words();

    [GeneratedRegex("^[A-Za-z0-9_-]+(?:\\s*\\.\\s*[A-Za-z0-9_-]+)*$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Bare();

    [GeneratedRegex("[\u2010-\u2015\u2212]", RegexOptions.None, 1000)]
    private static partial Regex Dashes();
}
