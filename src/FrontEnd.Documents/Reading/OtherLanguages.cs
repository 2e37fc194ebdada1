using System.Text.RegularExpressions;

namespace FrontEnd.Documents.Reading;

/// <summary>Texts of another language than TOML, told by their form as a whole: one thing is wrong with them, and not each of their lines.</summary>
internal static partial class OtherLanguages
{
    /// <summary>No longer text is looked at as a whole.</summary>
    private const int MostLines = 20_000;

    /// <summary>What a text that is no TOML is; null where it is one with slips.</summary>
    /// <param name="wanted">What should be in it.</param>
    public static Finding? Of(string text, WantedFile wanted)
    {
        string start = wanted.Start, name = wanted == WantedFile.Design ? "name a design file" : $"name {wanted.Name}";
        if (Json().IsMatch(text))
        {
            return ReadingMessages.OtherLanguage("JSON",
                (wanted == WantedFile.Design ? "let its name end in .json if it is a design in the plain-number form; " : $"{name}, in TOML; ") + start);
        }

        if (Markup().IsMatch(text))
        {
            return ReadingMessages.OtherLanguage("HTML or XML", $"{name}; {start}");
        }

        string[] lines = [.. text.Split('\n').Select(line => line.TrimEnd()).Where(line => line.Length > 0 && !line.TrimStart().StartsWith('#'))];
        int ours = lines.Count(line => Ours().IsMatch(line));
        if (lines.Length is < 2 or > MostLines || ours * 10 > lines.Length)
        {
            return null;
        }

        // Hardly a line has a key with its sign, or begins a table.
        int Count(string line, char sign) => line.AsSpan().Count(sign);
        return ours == 0 && Array.TrueForAll(lines, line => Yaml().IsMatch(line)) ? ReadingMessages.OtherLanguage("YAML", "a line is `key = value`, and a table starts with `[name]`; " + start)
            : ours == 0 && ",;\t".Any(sign => Count(lines[0], sign) > 0 && Array.TrueForAll(lines, line => Count(line, sign) == Count(lines[0], sign)))
                ? ReadingMessages.OtherLanguage("a table of values (CSV)", $"{name}; {start}")
            : lines.Length > 2 ? ReadingMessages.OtherLanguage("a text with hardly a key in it", $"{name}; {start}") : null;
    }

    [GeneratedRegex("\\A\\s*(?:\\{\\s*\"[^\"]*\"\\s*:|\\[\\s*\\{)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Json();

    [GeneratedRegex("\\A\\s*<(?:\\?xml|!DOCTYPE|html|svg)\\b", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, 1000)]
    private static partial Regex Markup();

    // A key with its sign, or the name of a table in brackets.
    [GeneratedRegex("^\\s*(?:[\\p{L}0-9_.\"' -]{1,60}=|\\[[^,]*\\]\\s*(?:#.*)?$)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Ours();

    [GeneratedRegex("^\\s*(?:- .*|-{3}|[\"']?[A-Za-z][A-Za-z0-9_ -]*[\"']?:(?:\\s.*)?)$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Yaml();
}
