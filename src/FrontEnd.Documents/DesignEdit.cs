using FrontEnd.Documents.Reading;
using FrontEnd.Fields;

namespace FrontEnd.Documents;

/// <summary>A document after a change, or the same document and why it was not changed.</summary>
public sealed record EditResult(DesignDocument Document, Finding? Finding)
{
    /// <summary>Cards that the edit names and that are to be read from the disk first; then it can be made again. Empty where nothing is in
    /// its way.</summary>
    internal IReadOnlyList<string> CardsWanted { get; init; } = [];
}

/// <summary>Finds where in a file's text a key's value stands or belongs, and puts it there. All other characters stay.</summary>
internal sealed class DesignEdit(string text, DocumentFormat format, TableNode root)
{
    private PartRanges? _ranges;
    private readonly string _newLine = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";

    /// <summary>The changed text; null where the file's form leaves no place for the key.</summary>
    /// <param name="field">The field.</param>
    /// <param name="literal">Its value as it is written.</param>
    /// <param name="value">The value itself, for one that may stand in a table of its own.</param>
    public string? Set(FieldDescription field, string literal, object? value = null)
    {
        _ranges = value as PartRanges;
        if (format == DocumentFormat.Toml)
        {
            return SetAt(Segments(field.Key), literal, field);
        }

        string[] plain = Segments(field.JsonKey);
        string[] other = Segments(field.Key.Replace('-', '_'));
        return SetAt(Exists(other) && !Exists(plain) ? other : plain, literal, field);
    }

    /// <summary>The text without the line of a key; null where the key stands inside a value.</summary>
    public string? Remove(Field<Design> field)
    {
        Node? node = root;
        Entry? entry = null;
        string[] path = Segments(field.Key);
        for (int depth = 0; depth < path.Length; depth++)
        {
            if (Slipped(node as TableNode, path[depth..]) is { } slip)
            {
                int from = LineStart(slip.Whole.Start);
                return text.Remove(from, LineEnd(slip.Whole.End) - from);
            }

            string segment = path[depth];
            entry = (node as TableNode)?.Find(segment);
            node = node switch
            {
                TableNode { Form: TableForm.Inline } => null,
                TableNode => entry?.Value,
                ListNode list => Item(list, segment),
                _ => null,
            };
        }

        if (node is null || entry is null || format == DocumentFormat.Json)
        {
            return null;
        }

        int start = LineStart(entry.KeySpan.Start);
        int end = LineEnd(entry.Value.Span.End);
        return text.Remove(start, end - start);
    }

    private static string[] Segments(string key) => key.Replace("[", ".[", StringComparison.Ordinal).Split('.');

    private bool Exists(string[] path)
    {
        Node? node = root;
        foreach (string segment in path)
        {
            node = node switch
            {
                TableNode table => table.Find(segment)?.Value,
                ListNode list => Item(list, segment),
                _ => null,
            };
        }

        return node is not null;
    }

    private static Node? Item(ListNode list, string segment) =>
        segment.StartsWith('[') && int.TryParse(segment.AsSpan(1, segment.Length - 2), out int number) && 1 <= number
            && number <= list.Items.Count ? list.Items[number - 1] : null;

    private string? SetAt(string[] path, string literal, FieldDescription field)
    {
        TableNode table = root;
        int tableDepth = 0;
        for (int depth = 0; depth < path.Length; depth++)
        {
            switch (table.Find(path[depth])?.Value)
            {
                case null when Slipped(table, path[depth..]) is { } slip:
                    return slip.NeedsKey ? Replace(slip.Whole, $"{slip.Key} = {literal}") : Replace(slip.Value, literal);
                case null:
                    return Insert(table, path[tableDepth..depth], path[depth..], path[..tableDepth], literal);
                case TextNode card when depth + 1 < path.Length:
                    return BesideCard(card, path[(depth + 1)..], literal);
                case NullNode nothing when depth + 1 < path.Length && format == DocumentFormat.Json:
                    return Replace(nothing.Span, $"{{ {Pair(path[(depth + 1)..], literal)} }}");
                case TableNode inner when depth + 1 < path.Length:
                    // A table made by dotted keys has no place of its own: new keys go where it was begun.
                    if (inner.Form == TableForm.Dotted)
                    {
                        return table.Form == TableForm.Inline && !Exists(path)
                            ? InsertInline(table, path[depth..], literal)
                            : SetDotted(path, depth, inner, literal, field);
                    }

                    (table, tableDepth) = (inner, depth + 1);
                    break;
                case ListNode list when depth + 2 < path.Length && Item(list, path[depth + 1]) is TableNode element:
                    (table, tableDepth) = (element, depth + 2);
                    depth++;
                    break;
                case { } value when depth + 1 == path.Length:
                    return Instead(value, field, literal);
                default:
                    return null;
            }

            if (depth + 2 == path.Length && field.Holds<ExcessNoise>() && ExcessInstead(table, path[^1], literal) is { } replaced)
            {
                return replaced;
            }
        }

        return null;
    }

    private static Slip? Slipped(TableNode? table, string[] rest) => table is not { Slips.Count: > 0 } ? null
        : table.Slips.Find(slip => string.Equals(slip.Key, string.Join('.', rest), StringComparison.Ordinal));

    /// <summary>A value in the place of another one, which may be a table where the field's value is one; null where it may not.</summary>
    private string? Instead(Node old, FieldDescription field, string literal)
    {
        if (old is not TableNode table)
        {
            return Replace(old.Span, literal);
        }

        if (field.Kind is not (FieldKind.Ranges or FieldKind.NamedNumbers))
        {
            return null;
        }

        return table.Form == TableForm.Inline ? Replace(table.Span, literal) : _ranges is { } ranges ? Ranges(table, field, ranges) : null;
    }

    /// <summary>Ranges that stand line by line, <c>ranges.gain = […]</c> or below a header: each in its line, those that go with theirs, new ones behind the
    /// last.</summary>
    private string? Ranges(TableNode table, FieldDescription field, PartRanges ranges)
    {
        if (table.Entries.Count == 0 || table.Entries.Exists(entry => text[LineStart(entry.KeySpan.Start)..entry.KeySpan.Start].Contains('{', StringComparison.Ordinal)))
        {
            return null;
        }

        Entry last = table.Entries[^1];
        string lead = text[LineStart(last.KeySpan.Start)..last.KeySpan.Start];
        int end = LineEnd(last.Value.Span.End);
        string changed = text.Insert(end, string.Concat(ranges.All.Where(range => table.Find(range.Key) is null).Select((range, at) =>
            (at == 0 ? BreakBefore(end) : "") + lead + range.Key + " = " + Literals.Ends(field, range) + _newLine)));
        foreach (Entry entry in table.Entries.OrderByDescending(entry => entry.KeySpan.Start))
        {
            if (ranges.Of(entry.Key) is { } range)
            {
                changed = string.Concat(changed.AsSpan(0, entry.Value.Span.Start), Literals.Ends(field, range), changed.AsSpan(entry.Value.Span.End));
            }
            else
            {
                int from = LineStart(entry.KeySpan.Start);
                changed = changed.Remove(from, LineEnd(entry.Value.Span.End) - from);
            }
        }

        return changed;
    }

    private string? SetDotted(string[] path, int depth, TableNode dotted, string literal, FieldDescription field)
    {
        Node? node = dotted;
        int at = depth + 1;
        TableNode deepest = dotted;
        while (at < path.Length && node is TableNode table && table.Find(path[at]) is { } entry)
        {
            node = entry.Value;
            deepest = node as TableNode ?? deepest;
            at++;
        }

        if (at == path.Length)
        {
            return node is null ? null : Instead(node, field, literal);
        }

        if (node is TextNode card)
        {
            return BesideCard(card, path[at..], literal);
        }

        if (deepest.Form == TableForm.Inline)
        {
            return InsertInline(deepest, path[at..], literal);
        }

        if (node is not TableNode || deepest.Entries.Count == 0)
        {
            return null;
        }

        // Behind the line of its last key, written out as the others are.
        Entry last = deepest.Entries[^1];
        int end = LineEnd(last.Value.Span.End);
        int start = text.LastIndexOf('\n', Math.Max(0, last.KeySpan.Start - 1)) + 1;
        string written = text[start..last.KeySpan.Start];
        return text.Insert(end, BreakBefore(end) + written + string.Join('.', path[at..]) + " = " + literal + _newLine);
    }

    /// <summary><c>active = "gel-prepared"</c> names a card only: it becomes a table that names it and holds the key too.</summary>
    private string BesideCard(TextNode card, string[] rest, string literal)
    {
        if (rest is ["card"])
        {
            return Replace(card.Span, literal);
        }

        if (string.Equals(card.Value, TableReader.NoPart, StringComparison.Ordinal))
        {
            return Replace(card.Span,
                format == DocumentFormat.Toml ? $"{{ {string.Join('.', rest)} = {literal} }}" : $"{{ {Pair(rest, literal)} }}");
        }

        string name = text[card.Span.Start..card.Span.End];
        return Replace(card.Span, format == DocumentFormat.Toml
            ? $"{{ card = {name}, {string.Join('.', rest)} = {literal} }}"
            : $"{{ \"card\": {name}, {Pair(rest, literal)} }}");
    }

    /// <summary>The density takes the place of the rms and the band that said the same.</summary>
    private string? ExcessInstead(TableNode table, string key, string literal)
    {
        if (table.Find(key) is not null || (table.Find("excess-rms") ?? table.Find("excess_rms")) is not { } rms)
        {
            return null;
        }

        string name = format == DocumentFormat.Toml ? "excess-density = " : $"\"{key}\": ";
        string changed = text[..rms.KeySpan.Start] + name + literal + text[rms.Value.Span.End..];
        Entry? band = table.Find("excess-band");
        if (band is null)
        {
            return table.Find("excess_band") is null ? changed : null;
        }

        if (table.Form == TableForm.Inline)
        {
            return null;
        }

        int shift = changed.Length - text.Length;
        int start = LineStart(band.KeySpan.Start);
        int end = LineEnd(band.Value.Span.End);
        return rms.KeySpan.Start < start ? changed.Remove(start + shift, end - start) : changed.Remove(start, end - start);
    }

    private string? Insert(TableNode table, string[] between, string[] rest, string[] before, string literal)
    {
        if (table.Form == TableForm.Inline)
        {
            return InsertInline(table, [.. between, .. rest], literal);
        }

        if (format == DocumentFormat.Json || Array.Exists(rest, segment => segment.StartsWith('[')))
        {
            return null;
        }

        string[] names = [.. between, .. rest];
        bool inElement = Array.Exists(before, segment => segment.StartsWith('['));
        if (table.Form == TableForm.Header && (names.Length == 1 || inElement))
        {
            string line = string.Join('.', names) + " = " + literal + _newLine;
            int at = table.InsertAt;
            string gap = ReferenceEquals(table, root) && table.Entries.TrueForAll(entry => entry.Value is TableNode or ListNode)
                && text.Length > 0 ? _newLine : "";
            return text.Insert(at, BreakBefore(at) + line + gap);
        }

        // A header that is missing: behind the tables of the same family, else at the end.
        string header = $"[{string.Join('.', (string[])[.. before, .. names[..^1]])}]";
        int place = FamilyEnd(before.Length > 0 ? before[0] : names[0]);
        string ahead = BreakBefore(place) + (place == 0 ? "" : _newLine);
        string behind = place < text.Length && text[place] is not ('\n' or '\r') ? _newLine : "";
        return text.Insert(place, ahead + header + _newLine + names[^1] + " = " + literal + _newLine + behind);
    }

    private int FamilyEnd(string family)
    {
        int end = -1;
        Collect(root.Find(family)?.Value, ref end);
        return end < 0 ? text.Length : end;

        static void Collect(Node? node, ref int end)
        {
            switch (node)
            {
                case TableNode table:
                    end = table.Form == TableForm.Header ? Math.Max(end, table.InsertAt) : end;
                    foreach (Entry entry in table.Entries)
                    {
                        Collect(entry.Value, ref end);
                    }

                    break;
                case ListNode list:
                    foreach (Node item in list.Items)
                    {
                        Collect(item, ref end);
                    }

                    break;
                default:
                    break;
            }
        }
    }

    private string? InsertInline(TableNode table, string[] names, string literal)
    {
        if (Array.Exists(names, segment => segment.StartsWith('[')) || table.Span.Length < 2)
        {
            return null;
        }

        string pair = format == DocumentFormat.Toml ? $"{string.Join('.', names)} = {literal}" : Pair(names, literal);
        if (table.Entries.Count == 0)
        {
            return text.Insert(table.Span.Start + 1, format == DocumentFormat.Toml ? $" {pair} " : pair);
        }

        Entry last = table.Entries[^1];
        int end = EndOf(last.Value);
        if (format == DocumentFormat.Toml)
        {
            return text.Insert(end, ", " + pair);
        }

        // As the last key is written: on a line of its own, or behind it.
        int start = LineStart(last.KeySpan.Start);
        string indent = text[start..last.KeySpan.Start];
        return text.Insert(end, string.IsNullOrWhiteSpace(indent) ? $",{_newLine}{indent}{pair}" : $", {pair}");
    }

    // A table of dotted keys inside an inline table ends with its last value.
    private static int EndOf(Node node) =>
        node is TableNode { Form: TableForm.Dotted, Entries: [.., var last] } ? EndOf(last.Value) : node.Span.End;

    private static string Pair(string[] names, string literal)
    {
        string pair = literal;
        for (int i = names.Length - 1; 0 <= i; i--)
        {
            pair = i == 0 ? $"\"{names[i]}\": {pair}" : $"{{\"{names[i]}\": {pair}}}";
        }

        return pair;
    }

    private string Replace(Span span, string literal) => string.Concat(text.AsSpan(0, span.Start), literal, text.AsSpan(span.End));

    private string BreakBefore(int at) => at == 0 || text[at - 1] == '\n' ? "" : _newLine;

    private int LineStart(int at) => at == 0 ? 0 : text.LastIndexOf('\n', at - 1) + 1;

    private int LineEnd(int at)
    {
        int end = text.IndexOf('\n', at);
        return end < 0 ? text.Length : end + 1;
    }
}
