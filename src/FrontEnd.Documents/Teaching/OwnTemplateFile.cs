using FrontEnd.Documents.Files;
using FrontEnd.Documents.Reading;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>A file of an instructor's own problem templates, TOML: each <c>[[templates]]</c> with its givens, steps, answer and slips. Checked as a
/// design is: everything that is wrong is told, with its place.</summary>
internal static class OwnTemplateFile
{
    /// <summary>The templates of several files, ready to draw, no two with one id and none with an id of the program's own.</summary>
    public static IReadOnlyList<Template> ReadAll(IEnumerable<string> paths, List<Finding> findings)
    {
        List<Template> own = [];
        foreach (string path in paths)
        {
            string[] taken = [.. TemplateSet.All.Concat(own).Select(template => template.Id)];
            own.AddRange(Read(path, taken, findings).Select(template => template.Make()));
        }

        return own;
    }

    /// <summary>Reads a file; what is wrong with it stands in the findings, and where that is an error the template is left out.</summary>
    /// <param name="taken">Ids that the templates must not have.</param>
    public static IReadOnlyList<OwnTemplate> Read(string path, IReadOnlyCollection<string> taken, List<Finding> findings)
    {
        string? text = TextFiles.Read(path, out Finding? unread);
        if (text is null)
        {
            findings.Add(unread!);
            return [];
        }

        return Parse(text, path, taken, findings);
    }

    /// <summary>Reads a text.</summary>
    /// <param name="file">Its name for findings; null for none.</param>
    /// <param name="taken">Ids that the templates must not have.</param>
    /// <param name="findings">Hears what is wrong.</param>
    public static IReadOnlyList<OwnTemplate> Parse(string text, string? file, IReadOnlyCollection<string> taken, List<Finding> findings)
    {
        SourceText source = new(file, text);
        List<Finding> own = [];
        TableNode root = TomlTree.Read(source, own, WantedFile.Templates);
        if (own.Count == 0 && OtherFiles.Of(file, root, WantedFile.Templates) is { } other)
        {
            findings.Add(other);
            return [];
        }

        List<OwnTemplate> templates = [];
        if (own.Count == 0)
        {
            KeyReader top = new(root, "", source, own);
            List<KeyReader> tables = top.Tables("templates");
            if (tables.Count == 0 && own.Count == 0)
            {
                own.Add(OwnTemplateMessages.Nothing() with { File = file });
            }

            HashSet<string> ids = new(taken, StringComparer.Ordinal);
            templates.AddRange(tables.Select(table => new OwnTemplateReader(table, ids, file is null ? null : Path.GetDirectoryName(Path.GetFullPath(file))).Read()).OfType<OwnTemplate>());
            top.End();
        }

        findings.AddRange(own.OrderBy(finding => finding.Line ?? int.MaxValue));
        return templates;
    }
}

/// <summary>Takes keys out of a table, one by one; what nobody took is unknown.</summary>
internal sealed class KeyReader(TableNode table, string path, SourceText source, List<Finding> findings)
{
    private readonly HashSet<string> _known = new(StringComparer.Ordinal);

    /// <summary>How findings call it: "templates[1].answer".</summary>
    public string Path => path;

    /// <summary>True once something in it was wrong.</summary>
    public bool Failed { get; private set; }

    /// <summary>The text that it was read from.</summary>
    public string Written => source.Text[Math.Clamp(First(), 0, source.Text.Length)..Math.Clamp(Last(), 0, source.Text.Length)];

    public string KeyOf(string key) => path.Length == 0 ? key : $"{path}.{key}";

    /// <summary>Says what is wrong at a key's value, or at the table where the key is missing.</summary>
    /// <param name="inside">Where in the value's text.</param>
    public void Fail(Finding finding, string key, int? inside = null)
    {
        Failed |= finding.Severity == Severity.Error;
        int at = table.Find(key) is { } entry ? entry.Value.Span.Start + (inside is { } place ? Quotes(entry.Value) + place : 0) : First();
        findings.Add(source.Placed(finding, at));
    }

    /// <summary>Says nothing more: what it rests on is wrong, and has been told.</summary>
    public void Stop() => Failed = true;

    /// <summary>A text; null where it is missing or none, of which the findings say.</summary>
    /// <param name="example">What it may be, where it must be there; null where it may be left out.</param>
    public string? Text(string key, string? example)
    {
        _known.Add(key);
        if (table.Find(key) is not { } entry)
        {
            if (example is not null)
            {
                Fail(OwnTemplateMessages.MissingKey(KeyOf(key), $"{key} = \"{example}\""), key);
            }

            return null;
        }

        if (entry.Value is TextNode { Value: var value } && value.Trim().Length > 0)
        {
            return value;
        }

        Fail(ReadingMessages.Type(KeyOf(key), ReadingMessages.Noun(entry.Value), "a text", $"{key} = \"{example ?? "…"}\""), key);
        return null;
    }

    /// <summary>A number within a range; null where it is missing or none.</summary>
    public double? Number(string key, double least, double greatest, bool isWhole, string? example)
    {
        _known.Add(key);
        if (table.Find(key) is not { } entry)
        {
            if (example is not null)
            {
                Fail(OwnTemplateMessages.MissingKey(KeyOf(key), $"{key} = {example}"), key);
            }

            return null;
        }

        if (entry.Value is NumberNode { Value: var value } && least <= value && value <= greatest && (!isWhole || value == Math.Floor(value)))
        {
            return value;
        }

        string range = System.FormattableString.Invariant($"{(isWhole ? "a whole number" : "a number")} from {least} to {greatest}");
        string what = entry.Value is NumberNode number ? number.Written : ReadingMessages.Noun(entry.Value);
        Fail(ReadingMessages.Type(KeyOf(key), what, range, $"{key} = {example ?? System.FormattableString.Invariant($"{least}")}"), key);
        return null;
    }

    /// <summary>Texts of a list, each with the place of its node.</summary>
    public IReadOnlyList<(string Text, int At)>? Texts(string key)
    {
        _known.Add(key);
        if (table.Find(key) is not { } entry)
        {
            return null;
        }

        if (entry.Value is ListNode list && list.Items.TrueForAll(item => item is TextNode or NumberNode))
        {
            return [.. list.Items.Select(item => (item is TextNode text ? text.Value : ((NumberNode)item).Written, item.Span.Start))];
        }

        Fail(ReadingMessages.Type(KeyOf(key), ReadingMessages.Noun(entry.Value), "a list of values", $"{key} = [\"10 kΩ\", \"22 kΩ\"]"), key);
        return null;
    }

    public void FailAt(Finding finding, int at)
    {
        Failed |= finding.Severity == Severity.Error;
        findings.Add(source.Placed(finding, at));
    }

    /// <summary>One table; null where it is missing or none.</summary>
    public KeyReader? Table(string key, string example)
    {
        _known.Add(key);
        if (table.Find(key) is not { } entry)
        {
            Fail(OwnTemplateMessages.MissingKey(KeyOf(key), example), key);
            return null;
        }

        if (entry.Value is TableNode inner)
        {
            return new KeyReader(inner, KeyOf(key), source, findings);
        }

        Fail(ReadingMessages.NoTable(KeyOf(key), ReadingMessages.Noun(entry.Value)), key);
        return null;
    }

    /// <summary>A list of tables, empty where it is missing or none.</summary>
    public List<KeyReader> Tables(string key)
    {
        _known.Add(key);
        if (table.Find(key) is not { } entry)
        {
            return [];
        }

        if (entry.Value is ListNode list && list.Items.TrueForAll(item => item is TableNode))
        {
            return [.. list.Items.Select((item, at) => new KeyReader((TableNode)item, $"{KeyOf(key)}[{at + 1}]", source, findings))];
        }

        Fail(ReadingMessages.NoTableList(KeyOf(key), ReadingMessages.Noun(entry.Value)), key);
        return [];
    }

    /// <summary>Tells the keys that nobody took.</summary>
    public void End()
    {
        string[] known = [.. _known];
        foreach (Entry entry in table.Entries.Where(entry => !_known.Contains(entry.Key)))
        {
            Failed = true;
            findings.Add(source.Placed(ReadingMessages.Unknown(KeyOf(entry.Key), Nearest.Of(entry.Key, known), known, entry.Value is TableNode), entry.KeySpan.Start));
        }
    }

    private int First() => table.Entries.Count == 0 ? table.Span.Start : table.Entries[0].KeySpan.Start;

    private int Last() => table.Entries.Count == 0 ? table.Span.End : Ends(table);

    private static int Ends(Node node) => node switch
    {
        TableNode inner => Math.Max(inner.Span.End, inner.Entries.Count == 0 ? 0 : inner.Entries.Max(entry => Ends(entry.Value))),
        ListNode list => Math.Max(list.Span.End, list.Items.Count == 0 ? 0 : list.Items.Max(Ends)),
        _ => node.Span.End,
    };

    /// <summary>Letters before the text itself: its quotes.</summary>
    private int Quotes(Node node)
    {
        string text = source.Text[node.Span.Start..node.Span.End];
        return text.StartsWith("\"\"\"", StringComparison.Ordinal) || text.StartsWith("'''", StringComparison.Ordinal) ? 3 : 1;
    }
}
