using System.Text;

namespace FrontEnd.Documents;

/// <summary>The tables of a TOML text that belong together, as ranges of its lines: the elements of one list, or one table with those
/// inside it.</summary>
/// <remarks>Works on lines, not on the parsed tree, so that comments keep their places. A form it does not see through, such as a list in
/// one line, gives no tables; callers check what comes out by reading it.</remarks>
internal sealed class ListTables
{
    private ListTables(string[] lines, IReadOnlyList<LineRange> tables) => (Lines, Tables) = (lines, tables);

    /// <summary>The text's lines without their line feeds.</summary>
    public IReadOnlyList<string> Lines { get; }

    /// <summary>Lines that are put in, ended as those of the text are.</summary>
    public IEnumerable<string> Ended(IEnumerable<string> lines) => Lines[0].EndsWith('\r') ? lines.Select(line => line + '\r') : lines;

    public IReadOnlyList<LineRange> Tables { get; }

    /// <summary>The elements <c>[[key]]</c> of a list, each with the tables inside it.</summary>
    public static ListTables OfList(string text, string key) =>
        Of(text, (name, isElement) => isElement && name == key, name => name.StartsWith(key + ".", StringComparison.Ordinal));

    /// <summary>The table <c>[key]</c> with the tables inside it.</summary>
    public static ListTables OfTable(string text, string key) =>
        Of(text, (name, _) => name == key || name.StartsWith(key + ".", StringComparison.Ordinal), _ => false);

    /// <summary>The lines that hold a comment: a comment alone as it is, a value with one as "# was: …", so that neither is lost when the
    /// value goes.</summary>
    public static IEnumerable<string> Comments(IEnumerable<string> lines) => lines
        .Select(line => line.Trim())
        .Where(HasComment)
        .Select(line => line[0] == '#' ? line : $"# was: {line}");

    /// <summary>The text with these lines in place of the old ones.</summary>
    public static string Text(IEnumerable<string> lines) => string.Join('\n', lines);

    private static ListTables Of(string text, Func<string, bool, bool> begins, Func<string, bool> isInside)
    {
        string[] lines = text.Split('\n');
        List<LineRange> tables = [];
        int header = -1, content = -1, before = -1;
        for (int at = 0; at <= lines.Length; at++)
        {
            (string Name, bool IsElement)? found = at == lines.Length ? ("", false) : Header(lines[at]);
            if (found is var (name, isElement) && !(header >= 0 && isInside(name)))
            {
                if (header >= 0)
                {
                    tables.Add(new LineRange(First(lines, header, before), header, content + 1));
                }

                before = content;
                header = begins(name, isElement) ? at : -1;
            }

            if (at < lines.Length && lines[at].Trim() is [not '#', ..])
            {
                content = at;
            }
        }

        return new ListTables(lines, tables);
    }

    /// <summary>The comment right above a header belongs to it.</summary>
    private static int First(string[] lines, int header, int content)
    {
        int first = header;
        while (content < first - 1 && 0 < first && lines[first - 1].TrimStart().StartsWith('#'))
        {
            first--;
        }

        // What stands at the very top of a file speaks of the file.
        return first == 0 ? header : first;
    }

    private static (string Name, bool IsElement)? Header(string line)
    {
        string bare = line.Trim();
        if (bare is not ['[', ..])
        {
            return null;
        }

        bool isElement = bare.StartsWith("[[", StringComparison.Ordinal);
        int close = bare.IndexOf(']');
        StringBuilder name = new();
        foreach (char letter in close < 0 ? "" : bare[(isElement ? 2 : 1)..close])
        {
            if (letter is not (' ' or '"' or '\''))
            {
                name.Append(letter);
            }
        }

        // A row of a list of numbers or words begins with a bracket too.
        return name.Length > 0 && char.IsLetter(name[0]) && !name.ToString().Contains(',') ? (name.ToString(), isElement) : null;
    }

    private static bool HasComment(string line)
    {
        char quote = '\0';
        foreach (char letter in line)
        {
            if (quote != '\0')
            {
                quote = letter == quote ? '\0' : quote;
            }
            else if (letter is '"' or '\'')
            {
                quote = letter;
            }
            else if (letter == '#')
            {
                return true;
            }
        }

        return false;
    }
}

/// <summary>Lines of a table: from the comment right above its header, or the header itself, to the one behind its last value.</summary>
internal readonly record struct LineRange(int First, int Header, int End);
