using System.Globalization;
using System.Text;
using System.Text.Json;

namespace FrontEnd.Documents.Reading;

/// <summary>Turns a JSON text (comments and trailing commas allowed) into the reader's tree.</summary>
internal static class JsonTree
{
    public static TableNode Read(SourceText source, List<Finding> findings)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(source.Text);
        Offsets offsets = new(source.Text, bytes);
        JsonReaderOptions options =
            new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true, MaxDepth = TomlTree.DepthLimit };
        Utf8JsonReader reader = new(bytes, options);
        TableNode root = new(new Span(0, 0), TableForm.Inline);
        try
        {
            if (!reader.Read())
            {
                findings.Add(source.Placed(ReadingMessages.SyntaxError("the file is empty", "JSON"), 0));
                return root;
            }

            Node node = Value(ref reader, offsets, source, findings, "");
            reader.Read();   // anything behind the value is a syntax error, and thrown as one
            if (node is TableNode table)
            {
                return table;
            }

            findings.Add(source.Placed(ReadingMessages.NoTable("the file", ReadingMessages.Noun(node)), 0));
            return root;
        }
        catch (JsonException error)
        {
            int at = offsets.OfLine((int)(error.LineNumber ?? 0), (int)(error.BytePositionInLine ?? 0));
            findings.Add(source.Placed(ReadingMessages.SyntaxError(SyntaxWords.OfJson(source.Text, at, error), "JSON"), at));
            return root;
        }
        catch (InvalidOperationException)
        {
            // A text with half of a surrogate pair: valid to the reader, no string to us.
            findings.Add(source.Placed(ReadingMessages.SyntaxError("a text holds half of a character", "JSON"), offsets.OfByte((int)reader.TokenStartIndex)));
            return root;
        }
    }

    private static Node Value(ref Utf8JsonReader reader, Offsets offsets, SourceText source, List<Finding> findings, string path)
    {
        Span span = offsets.Token(ref reader);
        switch (reader.TokenType)
        {
            case JsonTokenType.StartObject:
                TableNode table = new(span, TableForm.Inline) { Opened = true };
                while (reader.Read() && reader.TokenType != JsonTokenType.EndObject)
                {
                    string key = reader.GetString() ?? "";
                    Span keySpan = offsets.Token(ref reader);
                    reader.Read();
                    Node value = Value(ref reader, offsets, source, findings, path + key + ".");
                    if (table.Find(key) is { } first)
                    {
                        findings.Add(source.Placed(ReadingMessages.Twice(path + key, first.Value, source.LineOf(first.KeySpan.Start), source.LineOf(keySpan.Start)), keySpan.Start));
                        continue;
                    }

                    table.Entries.Add(new Entry(key, keySpan, value));
                }

                return table with { Span = span with { End = offsets.Token(ref reader).End } };
            case JsonTokenType.StartArray:
                List<Node> items = [];
                while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
                {
                    items.Add(Value(ref reader, offsets, source, findings, $"{path.TrimEnd('.')}[{items.Count + 1}]."));
                }

                return new ListNode(span with { End = offsets.Token(ref reader).End }, items);
            case JsonTokenType.String:
                return new TextNode(span, reader.GetString() ?? "");
            case JsonTokenType.Number:
                string written = Encoding.UTF8.GetString(reader.ValueSpan);
                return double.TryParse(written, NumberStyles.Float, CultureInfo.InvariantCulture, out double number)
                    && double.IsFinite(number)
                    ? new NumberNode(span, number, written)
                    : new OtherNode(span, "a number that is too large", "");
            case JsonTokenType.True or JsonTokenType.False:
                return new FlagNode(span, reader.TokenType == JsonTokenType.True);
            default:
                return new NullNode(span);
        }
    }

    /// <summary>From the reader's byte offsets to offsets in the text.</summary>
    private sealed class Offsets
    {
        private readonly int[]? _ofByte;
        private readonly byte[] _bytes;

        public Offsets(string text, byte[] bytes)
        {
            _bytes = bytes;
            if (text.Length == bytes.Length)
            {
                return;   // all ASCII: the same
            }

            _ofByte = new int[bytes.Length + 1];
            int at = 0;
            int index = 0;
            while (index < text.Length)
            {
                int units = char.IsHighSurrogate(text[index]) && index + 1 < text.Length && char.IsLowSurrogate(text[index + 1]) ? 2 : 1;
                int length = Encoding.UTF8.GetByteCount(text.AsSpan(index, units));
                Array.Fill(_ofByte, index, at, length);
                at += length;
                index += units;
            }

            _ofByte[^1] = text.Length;
        }

        public int OfByte(int position) =>
            _ofByte is null ? Math.Clamp(position, 0, _bytes.Length) : _ofByte[Math.Clamp(position, 0, _bytes.Length)];

        public int OfLine(int line, int bytePosition)
        {
            int at = 0;
            for (; 0 < line; line--)
            {
                int end = Array.IndexOf(_bytes, (byte)'\n', at);
                if (end < 0)
                {
                    break;
                }

                at = end + 1;
            }

            return OfByte(at + bytePosition);
        }

        public Span Token(ref Utf8JsonReader reader) => new(OfByte((int)reader.TokenStartIndex), OfByte((int)reader.BytesConsumed));
    }
}
