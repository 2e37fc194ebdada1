namespace FrontEnd.Documents.Reading;

/// <summary>A file's text with its name, for places in findings.</summary>
internal sealed class SourceText
{
    private readonly List<int> _lineStarts = [0];

    public SourceText(string? file, string text)
    {
        (File, Text) = (file, text);
        for (int i = 0; i < text.Length; i++)
        {
            if (text[i] == '\n')
            {
                _lineStarts.Add(i + 1);
            }
        }
    }

    /// <summary>The file as the user named it; null for text that is in no file.</summary>
    public string? File { get; }

    public string Text { get; }

    /// <summary>Line from 1.</summary>
    public int LineOf(int offset)
    {
        int index = _lineStarts.BinarySearch(Math.Clamp(offset, 0, Text.Length));
        return index < 0 ? ~index : index + 1;
    }

    /// <summary>The finding with file, line and, where it has no excerpt of its own, the line's text with a caret before the
    /// place.</summary>
    public Finding Placed(Finding finding, int offset)
    {
        int line = LineOf(offset);
        return finding with { File = File, Line = line, Excerpt = finding.Excerpt ?? Excerpt(offset) };
    }

    /// <summary>The finding at its key's place, or at that of the nearest table above it; with the file alone where neither is in the
    /// file.</summary>
    public Finding PlacedByKey(Finding finding, IReadOnlyDictionary<string, Span> places)
    {
        for (string key = finding.Field; key.Length > 0; key = key[..Math.Max(0, key.LastIndexOf('.'))])
        {
            // An item of a list that has no place of its own stands in the list.
            if (places.TryGetValue(key, out Span span) || (key is [.., ']'] && places.TryGetValue(key[..key.LastIndexOf('[')], out span)))
            {
                return Placed(finding, span.Start);
            }
        }

        return finding with { File = File };
    }

    /// <summary>The line's text with a caret before the place; long lines are cut to what stands near it.</summary>
    private string Excerpt(int offset)
    {
        offset = Math.Clamp(offset, 0, Text.Length);
        int start = _lineStarts[LineOf(offset) - 1];
        int end = Text.IndexOf('\n', start);
        end = end < 0 ? Text.Length : end;
        int from = Math.Max(start, offset - Near);
        int to = Math.Min(end, offset + Near);
        string before = (from == start ? "" : "…") + Text[from..offset];
        string after = Text[offset..Math.Max(offset, to)].TrimEnd() + (to < end ? "…" : "");
        return $"\"{before.TrimStart()}^{after}\"";
    }

    private const int Near = 60;
}
