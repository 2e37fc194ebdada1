using System.Text.RegularExpressions;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace FrontEnd.Documents.Reading;

/// <summary>Turns a TOML text into the reader's tree. All syntax errors and all keys set twice are found in one pass.</summary>
internal static partial class TomlTree
{
    /// <summary>Deeper nesting than this is refused before parsing, since the parser calls itself once a level.</summary>
    public const int DepthLimit = 64;

    /// <param name="wanted">What the text should be, for what is said of another language; null for a design.</param>
    public static TableNode Read(SourceText source, List<Finding> findings, WantedFile? wanted = null)
    {
        TableNode root = new(new Span(0, 0), TableForm.Header) { Opened = true, InsertAt = 0 };
        Finding? whole = IsTooDeep(source.Text) ? ReadingMessages.Deep(DepthLimit)
            : source.Text.Contains('\r') && !source.Text.Contains('\n') ? ReadingMessages.OldLineEnds() : null;
        if (whole is not null)
        {
            findings.Add(source.Placed(whole, 0));
            return root;
        }

        string read = source.Text;
        if (Parse(source, read, findings) is not { } document)
        {
            return root;
        }

        if (document.HasErrors && OtherLanguages.Of(source.Text, wanted ?? WantedFile.Design) is { } other)
        {
            findings.Add(source.Placed(other, 0));
            return root;
        }

        // What one slip makes the parser say is said by the slip's own finding; what is left is said as it is.
        List<Slip> slips = [];
        if (document.HasErrors && TomlSlips.Without(source, findings, out slips) is { } repaired)
        {
            read = repaired;
            document = Parse(source, read, findings);
            if (document is null)
            {
                return root;
            }
        }

        // What stumbles a second time on one line follows from the first.
        foreach (DiagnosticMessage diagnostic in document.Diagnostics.DistinctBy(one => source.LineOf(one.Span.Start.Offset)))
        {
            int at = diagnostic.Span.Start.Offset;
            findings.Add(source.Placed(ReadingMessages.SyntaxError(SyntaxWords.OfToml(read, at, diagnostic.Message), "TOML"), at));
        }

        Lowering lowering = new(source, findings);
        foreach (KeyValueSyntax pair in document.KeyValues)
        {
            lowering.Add(root, "", pair);
            root.InsertAt = EndOfLine(source.Text, pair.Span.End.Offset);
        }

        List<(int Start, TableNode? Table)> tables = [(0, root)];
        foreach (TableSyntaxBase table in document.Tables)
        {
            tables.Add((table.Span.Start.Offset, lowering.AddTable(root, table)));
        }

        // Of a key that slips twice nobody knows which is meant.
        foreach (IGrouping<(int Table, string Key), Slip> one in slips.GroupBy(slip => (Table: tables.FindLastIndex(table => table.Start <= slip.Whole.Start), slip.Key))
            .Where(group => tables[group.Key.Table].Table is not null && (group.Count() == 1 || group.Key.Key.Length == 0)))
        {
            tables[one.Key.Table].Table!.Slips.Add(one.First());
        }

        return root;
    }

    /// <summary>One value as it stands behind its key; null where it is none.</summary>
    public static Node? Value(string written)
    {
        List<Finding> findings = [];
        Node? value = Read(new SourceText(null, $"x = {written}\n"), findings).Find("x")?.Value;
        return findings.Count == 0 ? value : null;
    }

    /// <param name="read">The source's text, or one of the same length.</param>
    private static DocumentSyntax? Parse(SourceText source, string read, List<Finding> findings)
    {
        try
        {
            // Half of a surrogate pair is no character, and the parser throws where one follows a backslash. The sign that
            // takes its place has the same length, so that all places stay. Files cannot hold one; texts from elsewhere can.
            string text = LoneSurrogates().Replace(read, "\uFFFD");

            // The parser's own check for keys set twice stops at the first; ours finds all.
            return SyntaxParser.Parse(text, source.File ?? "", validate: false);
        }
        catch (ArgumentException)
        {
            // The parser is not ours: an escape of a code that is no character is thrown for and not told. Of 40,000 texts of the fuzz test
            // nothing else was.
            findings.Add(source.Placed(ReadingMessages.SyntaxError(SyntaxWords.NoCharacter, "TOML"), 0));
            return null;
        }
    }

    [GeneratedRegex("[\\uD800-\\uDBFF](?![\\uDC00-\\uDFFF])|(?<![\\uD800-\\uDBFF])[\\uDC00-\\uDFFF]", RegexOptions.None, 1000)]
    private static partial Regex LoneSurrogates();

    private static int EndOfLine(string text, int offset)
    {
        int at = Math.Clamp(offset, 0, text.Length);
        if (at < text.Length && text[at] == '\n')
        {
            return at + 1;
        }

        int end = text.IndexOf('\n', at);
        return end < 0 ? text.Length : end + 1;
    }

    // Counts brackets, strings and comments included: a text with 64 more opened than closed is no design either way.
    private static bool IsTooDeep(string text)
    {
        int depth = 0;
        foreach (char letter in text)
        {
            depth += letter is '[' or '{' ? 1 : letter is ']' or '}' ? -1 : 0;
            if (DepthLimit < depth)
            {
                return true;
            }

            depth = Math.Max(0, depth);
        }

        return false;
    }

    private sealed class Lowering(SourceText source, List<Finding> findings)
    {
        /// <summary>The table that was opened; null where none was.</summary>
        public TableNode? AddTable(TableNode root, TableSyntaxBase table)
        {
            if (table.Name is null)
            {
                return null;   // a syntax error, reported already
            }

            List<(string Key, Span Span)> path = Path(table.Name);
            if (path.Count == 0)
            {
                return null;
            }

            TableNode? parent = root;
            string prefix = "";
            for (int i = 0; i + 1 < path.Count && parent is not null; i++)
            {
                parent = Descend(parent, prefix, path[i].Key, path[i].Span, TableForm.Implied);
                prefix += path[i].Key + ".";
            }

            if (parent is null)
            {
                return null;
            }

            (string last, Span span) = path[^1];
            TableNode? opened = table is TableArraySyntax || IsListBySlip(parent, prefix + last, last, span) ? OpenElement(parent, prefix, last, span) : Open(parent, prefix, last, span);
            if (opened is null)
            {
                return null;
            }

            opened.InsertAt = EndOfLine(source.Text, table.CloseBracket?.Span.End.Offset ?? span.End);
            foreach (KeyValueSyntax pair in table.Items)
            {
                Add(opened, prefix + last + ".", pair);
                opened.InsertAt = EndOfLine(source.Text, pair.Span.End.Offset);
            }

            return opened;
        }

        /// <summary>True where <c>[name]</c> stands for <c>[[name]]</c>, which is said: the table is an element all the same, so that nothing else is said of it.</summary>
        private bool IsListBySlip(TableNode parent, string path, string last, Span span)
        {
            if (!TomlHeaders.Lists.Contains(path) || !(parent.Find(last) is null || _listsBySlip.Contains(path)))
            {
                return false;
            }

            _listsBySlip.Add(path);
            findings.Add(source.Placed(ReadingMessages.NoTableList(path, "a table"), span.Start));
            return true;
        }

        private readonly HashSet<string> _listsBySlip = new(StringComparer.Ordinal);

        public void Add(TableNode table, string prefix, KeyValueSyntax pair)
        {
            if (pair.Key is null || pair.Value is null)
            {
                return;   // a syntax error, reported already
            }

            List<(string Key, Span Span)> path = Path(pair.Key);
            TableNode? owner = table;
            for (int i = 0; i + 1 < path.Count && owner is not null; i++)
            {
                owner = Descend(owner, prefix, path[i].Key, path[i].Span, TableForm.Dotted);
                prefix += path[i].Key + ".";
            }

            if (owner is null || path.Count == 0)
            {
                return;
            }

            (string last, Span span) = path[^1];
            if (owner.Find(last) is { } first)
            {
                Twice(prefix + last, first, span);
                return;
            }

            owner.Entries.Add(new Entry(last, span, Value(pair.Value, prefix + last)));
        }

        private void Twice(string key, Entry first, Span span, bool header = false, bool isElement = false) =>
            findings.Add(source.Placed(ReadingMessages.Twice(key, first.Value, source.LineOf(first.KeySpan.Start), source.LineOf(span.Start),
                header, isElement), span.Start));

        private TableNode? Descend(TableNode table, string prefix, string key, Span span, TableForm form)
        {
            switch (table.Find(key))
            {
                case null:
                    TableNode made = new(span, form);
                    table.Entries.Add(new Entry(key, span, made));
                    return made;
                case { Value: TableNode found } when found.Form != TableForm.Inline:
                    return found;
                case { Value: ListNode { Items: [.., TableNode element] } } when element.Form != TableForm.Inline:
                    return element;
                case { } other:
                    Twice(prefix + key, other, span, header: form == TableForm.Implied);
                    return null;
            }
        }

        private TableNode? Open(TableNode parent, string prefix, string key, Span span)
        {
            switch (parent.Find(key))
            {
                case null:
                    TableNode made = new(span, TableForm.Header) { Opened = true };
                    parent.Entries.Add(new Entry(key, span, made));
                    return made;
                case { Value: TableNode { Opened: false, Form: TableForm.Implied } found } entry:
                    TableNode replaced = found with { Form = TableForm.Header };   // shares the list of entries
                    replaced.Opened = true;
                    parent.Entries[parent.Entries.IndexOf(entry)] = entry with { Value = replaced };
                    return replaced;
                case { } other:
                    Twice(prefix + key, other, span, header: true);
                    return null;
            }
        }

        private TableNode? OpenElement(TableNode parent, string prefix, string key, Span span)
        {
            TableNode element = new(span, TableForm.Header) { Opened = true };
            switch (parent.Find(key))
            {
                case null:
                    parent.Entries.Add(new Entry(key, span, new ListNode(span, [element])));
                    return element;
                case { Value: ListNode { Items: [TableNode { Form: TableForm.Header }, ..] } list }:
                    list.Items.Add(element);
                    return element;
                case { } other:
                    Twice(prefix + key, other, span, header: true, isElement: true);
                    return null;
            }
        }

        private Node Value(ValueSyntax value, string key)
        {
            Span span = SpanOf(value);
            switch (value)
            {
                case StringValueSyntax text:
                    return new TextNode(span, text.Value ?? "");
                case IntegerValueSyntax whole:
                    return new NumberNode(span, whole.Value, source.Text[span.Start..span.End]);
                case FloatValueSyntax number when double.IsFinite(number.Value):
                    return new NumberNode(span, number.Value, source.Text[span.Start..span.End]);
                case FloatValueSyntax:
                    return new OtherNode(span, "infinite or not a number", source.Text[span.Start..span.End]) { IsNoNumber = true };
                case BooleanValueSyntax flag:
                    return new FlagNode(span, flag.Value);
                case ArraySyntax array:
                    List<Node> items = [];
                    foreach (ArrayItemSyntax item in array.Items)
                    {
                        if (item.Value is not null)
                        {
                            items.Add(Value(item.Value, $"{key}[{items.Count + 1}]"));
                        }
                    }

                    return new ListNode(span, items);
                case InlineTableSyntax inline:
                    TableNode table = new(span, TableForm.Inline) { Opened = true };
                    foreach (InlineTableItemSyntax item in inline.Items)
                    {
                        if (item.KeyValue is not null)
                        {
                            Add(table, key + ".", item.KeyValue);
                        }
                    }

                    return table;
                default:
                    return new OtherNode(span, "a date or time", source.Text[span.Start..span.End]);
            }
        }

        private List<(string Key, Span Span)> Path(KeySyntax name)
        {
            List<(string, Span)> path = [];
            if (name.Key is not null)
            {
                path.Add((Text(name.Key), SpanOf(name.Key)));
            }

            foreach (DottedKeyItemSyntax item in name.DotKeys)
            {
                if (item.Key is not null)
                {
                    path.Add((Text(item.Key), SpanOf(item.Key)));
                }
            }

            return path;
        }

        private static string Text(BareKeyOrStringValueSyntax key) => key switch
        {
            BareKeySyntax bare => bare.Key?.Text ?? "",
            StringValueSyntax quoted => quoted.Value ?? "",
            _ => key.ToString() ?? "",
        };

        // The parser's spans include their last character.
        private Span SpanOf(SyntaxNode node)
        {
            int start = Math.Clamp(node.Span.Start.Offset, 0, source.Text.Length);
            return new Span(start, Math.Clamp(node.Span.End.Offset + 1, start, source.Text.Length));
        }
    }
}
