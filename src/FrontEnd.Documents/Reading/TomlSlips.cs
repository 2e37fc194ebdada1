using System.Text.RegularExpressions;

namespace FrontEnd.Documents.Reading;

/// <summary>Slips of one line that a TOML parser tells of in several places, none of them the slip: a decimal comma, a text without one of its
/// quotes, a sign that only looks right, a table's name without its bracket.</summary>
internal static partial class TomlSlips
{
    /// <summary>What is wrong with a line.</summary>
    /// <param name="At">Where in the line.</param>
    private sealed record Found(Finding Finding, int At)
    {
        /// <summary>Key and value as they stand, where the key is known; null for a line that holds none.</summary>
        public TomlLine? Line { get; init; }

        /// <summary>The key as it is to be written.</summary>
        public string Key { get; init; } = "";

        /// <summary>The value as it is to be written; null where nobody knows.</summary>
        public string? Meant { get; init; }

        public bool NeedsKey { get; init; }

        /// <summary>True for a line that says nothing of any key.</summary>
        public bool IsNoKey { get; init; }
    }

    /// <summary>The text with each such line made a comment, of the same length, and a finding for each; null where there is none.</summary>
    /// <remarks>For a text that the parser refuses. A line is looked at alone: one that the parser takes is none of them. A list over several
    /// lines is one, and a text in which texts go over several lines.</remarks>
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
        int open = 0, joined = 0;
        bool isTableLost = false;
        for (int start = 0; start < text.Length;)
        {
            int end = text.IndexOf('\n', start);
            end = end < 0 ? text.Length : end;
            string line = text[start..end].TrimEnd('\r');
            if (start < joined)
            {
                Comment(start, end);
                start = end + 1;
                continue;
            }

            bool isWithin = 0 < open;
            string? problem = isWithin ? null : TomlLine.Problem(line);
            bool isHeader = !isWithin && line.Length <= Longest && (line.TrimStart().StartsWith('[') || (problem is not null && TomlHeaders.IsMeant(line)));
            open = isWithin || (problem is not null && !isHeader) ? Math.Max(0, open + TomlLine.Depth(line)) : 0;
            isTableLost &= !isHeader;
            if (isHeader)
            {
                table = TomlHeaders.Path(line, lists) + ".";
            }

            // A list over several lines that is none: all of it is one value.
            (int listEnd, bool isClosed) = !isWithin && 0 < open ? ListEnd(text, end, open) : (end, true);
            if (!isWithin && 0 < open && text[start..listEnd] is var block && (!isClosed || TomlLine.Problem(block) is not null))
            {
                (open, joined, problem) = (0, listEnd, TomlLine.Problem(block) ?? problem);
                line = string.Join(' ', block.Split('\n').Select(one => TomlLine.Code(one).Trim()));
            }

            bool isBad = problem is not null && open == 0;
            if (isBad)
            {
                string next = NextLine(text, end, out int after);
                Found found = isHeader ? new(TomlHeaders.Wrong(line), line.Length - line.TrimStart().Length) : Slip(table, line, problem!, next);
                joined = found.Line is { Value: "", Sign: "=" } && found.Meant is not null ? after : joined;
                findings.Add(source.Placed(found.Finding, Math.Min(start + found.At, end)));
                if (!isTableLost && !isHeader && !found.IsNoKey)
                {
                    slips.Add(Written(found, start, joined == listEnd && end < listEnd ? listEnd : null, findings[^1]) ?? new Slip("", new Span(start, start), new Span(start, start), true, findings[^1]));
                }

                isTableLost |= isHeader;
            }

            // The keys below a table's name that cannot be read are not those of the table before.
            if (isTableLost || isBad)
            {
                Comment(start, end);
            }

            start = end + 1;
        }

        return repaired is null ? null : new string(repaired);

        void Comment(int from, int to)
        {
            if (from < to)
            {
                repaired ??= text.ToCharArray();
                repaired[from] = '#';
            }
        }
    }

    /// <summary>Where a list ends that begins in a line, and whether by its bracket: else before the next key or table, or with the text.</summary>
    /// <param name="end">The end of its first line.</param>
    /// <param name="depth">How many brackets are open there.</param>
    private static (int End, bool IsClosed) ListEnd(string text, int end, int depth)
    {
        int last = end;
        while (0 < depth && last < text.Length && !Begins().IsMatch(text, last + 1))
        {
            int next = text.IndexOf('\n', last + 1);
            next = next < 0 ? text.Length : next;
            depth += TomlLine.Depth(text[(last + 1)..next]);
            last = next;
        }

        return (last, depth <= 0);
    }

    /// <summary>The line behind an end of line, where it holds nothing but a value.</summary>
    /// <param name="after">Where it ends.</param>
    private static string NextLine(string text, int end, out int after)
    {
        int start = Math.Min(end + 1, text.Length);
        after = text.IndexOf('\n', start) is >= 0 and int at ? at : text.Length;
        string next = TomlLine.Code(text[start..after].TrimEnd('\r')).Trim();
        return next is ['"' or '\'' or (>= '0' and <= '9'), ..] && TomlLine.IsValue(next) ? next : "";
    }

    /// <summary>Longest line that is taken apart, in characters: some searches take time with the square of the length.</summary>
    internal const int Longest = 2000;

    private static Found Slip(string table, string line, string problem, string next)
    {
        if (Longest < line.Length)
        {
            return new(ReadingMessages.SyntaxError(problem, "TOML"), 0);
        }

        string code = TomlLine.Code(line);
        int indent = code.Length - code.TrimStart().Length;
        if (CommentSign().Match(code) is { Success: true } comment)
        {
            return new(ReadingMessages.OtherComment(comment.Groups["sign"].Value, $"# {comment.Groups["text"].Value.Trim()}"), indent) { IsNoKey = true };
        }

        // Blanks that are none, and signs that nobody sees.
        string clean = OddBlanks().Replace(Lookalikes.WithoutInvisible(code), " ");
        if (clean != code && TomlLine.Problem(clean) is null && TomlLine.Of(clean) is { } read)
        {
            char odd = code.First(letter => !clean.Contains(letter));
            return new(ReadingMessages.OddBlank(table + read.Key, odd, clean.Trim()), code.IndexOf(odd)) { Line = TomlLine.Of(code.Replace(odd, ' ')), Key = read.Key, Meant = read.Value, NeedsKey = true };
        }

        // A quote too many in a key.
        int equals = code.IndexOf('=', StringComparison.Ordinal);
        if (0 < equals && TomlLine.Of(code) is null && TomlLine.Of(code[..equals].Replace('"', ' ').Replace('\'', ' ') + code[equals..]) is { Key.Length: > 0 } stray)
        {
            return OfKey(table, stray with { Key = code[..equals].Trim() }, code, "");
        }

        string bullet = Bullet().Match(code).Value;
        if (TomlLine.Of(code[bullet.Length..]) is not { } pair || pair.Key.Length == 0)
        {
            return new(ReadingMessages.SyntaxError(problem, "TOML"), indent);
        }

        pair = pair with { KeyAt = pair.KeyAt + bullet.Length, ValueAt = pair.ValueAt + bullet.Length };
        return bullet.Length == 0 && pair.Sign is "=" && pair.IsKeyPlain ? OfValue(table, pair, problem, next) : OfKey(table, pair, code, bullet);
    }

    /// <summary>A line whose key and sign are right.</summary>
    private static Found OfValue(string table, TomlLine pair, string problem, string next)
    {
        string path = table + pair.Key;
        if (pair.Value.Length == 0 && next.Length > 0)
        {
            return new(ReadingMessages.ValueBelow(path, $"{pair.Key} = {next}"), pair.ValueAt) { Line = pair, Key = pair.Key, Meant = next };
        }

        return TomlValues.Of(path, pair.Value) is var (finding, at, meant)
            ? new(finding, pair.ValueAt + at) { Line = pair, Key = pair.Key, Meant = meant }
            : new(ReadingMessages.SyntaxError(problem, "TOML") with { Field = path }, pair.ValueAt) { Line = pair, Key = pair.Key };
    }

    /// <summary>A line of which key or sign are wrong: what it is to be, as a whole.</summary>
    private static Found OfKey(string table, TomlLine pair, string code, string bullet)
    {
        // Words without a sign: the last of them may be a value, or all of them may be the key's.
        string key = pair.PlainKey, path = table + key, value = pair.Value;
        string? meant = value.Length == 0 ? null : TomlLine.IsValue(value) ? value : TomlValues.Of(path, value)?.Meant;
        string whole = $"{key} = {meant ?? value}";
        Finding finding = Lookalikes.First(pair.Key) is not null && Plain().IsMatch(Lookalikes.ToLatin(pair.Key)) ? ReadingMessages.Lookalike(path, pair.Key)
            : !pair.IsKeyPlain && pair.Sign.Length > 0 ? ReadingMessages.NoKeyName(path, pair.Key, value.Length == 0 || !Plain().IsMatch(key) ? null : whole)
            : bullet.Length > 0 ? ReadingMessages.NotFirst(path, bullet.Trim(), whole)
            : pair.Sign.Length > 0 ? ReadingMessages.OtherSign(path, pair.Sign, value.Length == 0 ? null : whole)
            : ReadingMessages.NoEquals(path, code.Trim(), key, meant ?? value);
        return new(finding, pair.KeyAt) { Line = value.Length == 0 && pair.Sign.Length == 0 ? null : pair, Key = key, Meant = meant, NeedsKey = true };
    }

    /// <summary>Where key and value of such a line stand; null where there is no key.</summary>
    /// <param name="end">Where a value over several lines ends; null for one of this line.</param>
    private static Slip? Written(Found found, int start, int? end, Finding problem) => found.Line is not { } line ? null
        : new Slip(found.Key, new Span(start + line.KeyAt, end ?? start + line.ValueAt + line.Value.Length), new Span(start + line.ValueAt, end ?? start + line.ValueAt + line.Value.Length), found.NeedsKey, problem)
        {
            Meant = found.Meant,
        };

    // A line that begins a key or a table.
    [GeneratedRegex("\\G[ \\t]*(?:\\[\\[?\\s*[A-Za-z][A-Za-z0-9_. -]*\\]\\]?\\s*(?:#[^\\n]*)?(?:\\r?\\n|\\z)|[A-Za-z][A-Za-z0-9_.-]*[ \\t]*=)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Begins();

    [GeneratedRegex("^\\s*(?<sign>//+|;+|--+(?=\\s)|/\\*+|%+|<!--|REM(?=\\s))(?<text>.*?)(?:\\*/|-->)?\\s*$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex CommentSign();

    [GeneratedRegex("[\\u00A0\\u1680\\u2000-\\u200A\\u202F\\u205F\\u3000]", RegexOptions.None, 1000)]
    private static partial Regex OddBlanks();

    [GeneratedRegex("^\\s*(?:[-*•+>]\\s+|(?:let|var|const|set|def)\\s+(?=[^=:]*[=:]))", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Bullet();

    [GeneratedRegex("^[A-Za-z0-9_.-]+$", RegexOptions.None, 1000)]
    private static partial Regex Plain();
}
