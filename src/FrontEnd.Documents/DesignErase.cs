using FrontEnd.Documents.Reading;

namespace FrontEnd.Documents;

/// <summary>Takes a key and its value out of a file's text, so that its card or its default holds again. All other characters stay.</summary>
internal sealed class DesignErase(string text, DocumentFormat format, TableNode root)
{
    private static readonly string[] ExcessKeys = ["excess-rms", "excess_rms", "excess-band", "excess_band"];

    /// <summary>The changed text; the same text where the key is not there; null where it cannot be taken out by itself.</summary>
    public string? Clear(string key)
    {
        string[] path = key.Replace("[", ".[", StringComparison.Ordinal).Split('.');
        Node? node = root;
        TableNode? owner = null;
        Entry? entry = null;
        for (int depth = 0; depth < path.Length; depth++)
        {
            switch (node)
            {
                case TableNode table:
                    owner = table;
                    entry = table.Find(path[depth]) ?? table.Find(path[depth].Replace('-', '_'));
                    if (entry is null)
                    {
                        return depth == path.Length - 1 && path[depth] == "excess-density" ? ClearExcess(table) : text;
                    }

                    node = entry.Value;
                    break;
                case ListNode list when path[depth].StartsWith('[') && int.TryParse(path[depth].AsSpan(1, path[depth].Length - 2), out int number) && 1 <= number && number <= list.Items.Count:
                    node = list.Items[number - 1];
                    break;
                case TextNode when path[^1] == "card" && depth == path.Length - 1 && entry is not null && owner is not null:
                    // `active = "gel-prepared"` names the card by itself.
                    return Remove(text, owner, entry);
                default:
                    return text;
            }
        }

        return entry is null || owner is null ? text : Remove(text, owner, entry);
    }

    /// <summary>The rms and the band that say together what the density would.</summary>
    private string? ClearExcess(TableNode table)
    {
        Entry[] entries = [.. ExcessKeys.Select(table.Find).OfType<Entry>().OrderByDescending(entry => entry.KeySpan.Start)];
        string? changed = text;
        foreach (Entry entry in entries)
        {
            changed = changed is null || table.Form == TableForm.Inline ? null : Remove(changed, table, entry);
        }

        return changed;
    }

    private string? Remove(string from, TableNode owner, Entry entry)
    {
        if (format == DocumentFormat.Toml && owner.Form != TableForm.Inline)
        {
            int start = entry.KeySpan.Start == 0 ? 0 : from.LastIndexOf('\n', entry.KeySpan.Start - 1) + 1;
            int end = from.IndexOf('\n', entry.Value.Span.End);

            // A dotted key inside an inline table stands on a line that is not its own.
            string before = from[start..entry.KeySpan.Start];
            return before.Contains('{') || before.Contains(',') ? null : from.Remove(start, (end < 0 ? from.Length : end + 1) - start);
        }

        int at = owner.Entries.IndexOf(entry);
        if (at < 0)
        {
            return null;
        }

        // With the comma and the blanks that go with it.
        (int first, int last) = at + 1 < owner.Entries.Count
            ? (KeyStart(from, entry), KeyStart(from, owner.Entries[at + 1]))
            : at > 0 ? (owner.Entries[at - 1].Value.Span.End, entry.Value.Span.End) : (KeyStart(from, entry), entry.Value.Span.End);
        return from.Remove(first, last - first);
    }

    private int KeyStart(string from, Entry entry) => format == DocumentFormat.Json && entry.KeySpan.Start > 0 && from[entry.KeySpan.Start] != '"' && from[entry.KeySpan.Start - 1] == '"'
        ? entry.KeySpan.Start - 1
        : entry.KeySpan.Start;
}
