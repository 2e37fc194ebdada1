using System.Text.RegularExpressions;

namespace FrontEnd.Documents.Reading;

/// <summary>Slips of one line that a TOML parser tells of in several places, none of them the slip: a decimal comma, a text without its
/// quotes or without the second one, a letter of another script in a key.</summary>
internal static partial class TomlSlips
{
    /// <summary>The text with each such line made a comment, of the same length, and a finding for each; null where there is none.</summary>
    /// <remarks>For a text that the parser refuses. A text over several lines may hold anything: where one is, nothing is looked for.</remarks>
    public static string? Without(SourceText source, List<Finding> findings)
    {
        string text = source.Text;
        if (text.Contains("\"\"\"", StringComparison.Ordinal) || text.Contains("'''", StringComparison.Ordinal))
        {
            return null;
        }

        char[]? repaired = null;
        string table = "";
        for (int start = 0; start < text.Length;)
        {
            int end = text.IndexOf('\n', start);
            end = end < 0 ? text.Length : end;
            string line = text[start..end].TrimEnd('\r');
            if (Header().Match(line) is { Success: true } header)
            {
                table = header.Groups["name"].Value + ".";
            }
            else if (Pair().Match(line) is { Success: true } pair
                && Slip(table + Lookalikes.ToLatin(pair.Groups["key"].Value), pair.Groups["key"], pair.Groups["value"]) is var (finding, at))
            {
                findings.Add(source.Placed(finding, start + at));
                repaired ??= text.ToCharArray();
                repaired[start] = '#';
            }

            start = end + 1;
        }

        return repaired is null ? null : new string(repaired);
    }

    private static (Finding Finding, int At)? Slip(string path, Group key, Group value)
    {
        string written = value.Value.TrimEnd();
        if (Lookalikes.First(key.Value) is not null)
        {
            return (ReadingMessages.Lookalike(path, key.Value), key.Index);
        }

        if (written.Length > 0 && written[0] == '"')
        {
            // One quote alone, or one more than pairs.
            return written.Count(letter => letter == '"') % 2 == 1 && !written.Contains('\\')
                ? (ReadingMessages.NotClosed(path, written), value.Index) : null;
        }

        string bare = (written.IndexOf('#') is var comment and >= 0 ? written[..comment] : written).TrimEnd();
        return Grouped().IsMatch(bare) || Decimal().IsMatch(bare) ? (ReadingMessages.CommaInNumber(path, bare), value.Index + bare.IndexOf(','))
            : WithUnit().IsMatch(bare) ? (ReadingMessages.NotInQuotes(path, bare), value.Index)
            : null;
    }

    [GeneratedRegex("^\\s*\\[\\[?\\s*(?<name>[A-Za-z0-9_.-]+)\\s*\\]", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Header();

    [GeneratedRegex("^\\s*(?<key>[\\p{L}0-9_.-]+)\\s*=\\s*(?<value>.*)$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Pair();

    [GeneratedRegex("^[+-]?[0-9]{1,3}(,[0-9]{3}){2,}(\\.[0-9]*)?\\b", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Grouped();

    [GeneratedRegex("^[+-]?[0-9]+,[0-9]+(?![0-9,])", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Decimal();

    // A number with something behind it that no number, date or time of TOML has: a blank and letters, or a sign of a unit.
    [GeneratedRegex("^[+-]?[0-9]+(\\.[0-9]+)?(\\s+[\\p{L}%°/²]|[a-df-zA-DF-ZµΩ%°])", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex WithUnit();
}
