using System.Globalization;
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;

namespace FrontEnd.Documents.Drawing;

/// <summary>A PDF file written anew from the library's: the same objects, without what tells one run from another, and compressed.</summary>
/// <remarks>The library draws the tags of its fonts and the numbers of the file at random and always writes a day; and the streams that it
/// compresses lack the checksum that their format asks for at the end. It is therefore asked for plain ones and a table of places, which is what
/// is read here.</remarks>
internal sealed class PdfFile : IDisposable
{
    private const string StreamBegins = "\nstream\n", LengthKey = "/Length ";
    private const int TagLetters = 6, NumberDigits = 32;

    private readonly MemoryStream _file = new();
    private readonly Dictionary<string, string> _tags = new(StringComparer.Ordinal);
    private readonly bool _isDated;

    private PdfFile(bool isDated) => _isDated = isDated;

    /// <param name="isDated">The file says when it was made; if not, that is left out.</param>
    public static byte[] Settled(byte[] bytes, bool isDated)
    {
        using PdfFile file = new(isDated);
        return file.Write(Encoding.Latin1.GetString(bytes));
    }

    public void Dispose() => _file.Dispose();

    /// <param name="text">The library's file, every byte as one letter.</param>
    private byte[] Write(string text)
    {
        int end = text.LastIndexOf("startxref", StringComparison.Ordinal);
        int table = Number(text, end + "startxref".Length), trailer = text.IndexOf("trailer", table, StringComparison.Ordinal);
        int[] places = [.. text[table..trailer].Split('\n').Where(line => line.Contains(" 00000 n", StringComparison.Ordinal)).Select(line => Number(line, 0))];
        int[] inOrder = [.. places.Order()];
        long[] written = new long[places.Length];
        Put(text[..inOrder[0]]);
        for (int at = 0; at < inOrder.Length; at++)
        {
            written[Array.IndexOf(places, inOrder[at])] = _file.Length;
            Object(text[inOrder[at]..(at + 1 < inOrder.Length ? inOrder[at + 1] : table)]);
        }

        // Another content, another number.
        string number = Convert.ToHexString(SHA256.HashData(_file.ToArray()))[..NumberDigits];
        long start = _file.Length;
        Put(string.Create(CultureInfo.InvariantCulture, $"xref\n0 {places.Length + 1}\n0000000000 65535 f \n"));
        foreach (long place in written)
        {
            Put(string.Create(CultureInfo.InvariantCulture, $"{place:0000000000} 00000 n \n"));
        }

        string last = Without(Without(text[trailer..end], "/ID[", "]"), "%", "\n").Trim();
        Put(string.Create(CultureInfo.InvariantCulture, $"{last[..^2]}/ID[<{number}><{number}>]>>\nstartxref\n{start}\n%%EOF\n"));
        return _file.ToArray();
    }

    /// <summary>An object, its stream compressed; what describes the file to programs stays readable.</summary>
    private void Object(string text)
    {
        int stream = text.IndexOf(StreamBegins, StringComparison.Ordinal);
        string head = Head(stream < 0 ? text : text[..stream]);
        if (stream < 0)
        {
            Put(head);
            return;
        }

        if (head.Contains("/Filter", StringComparison.Ordinal))
        {
            throw new ArgumentException("The library has compressed a stream that it was asked to leave plain.", nameof(text));
        }

        int key = head.IndexOf(LengthKey, StringComparison.Ordinal), digits = key + LengthKey.Length, after = digits;
        while (char.IsAsciiDigit(head[after]))
        {
            after++;
        }

        string content = text.Substring(stream + StreamBegins.Length, Number(head, digits));
        bool isDescription = head.Contains("/Subtype/XML", StringComparison.Ordinal);
        byte[] bytes = isDescription ? Encoding.Latin1.GetBytes(Description(content)) : Compressed(content);
        Put(string.Create(CultureInfo.InvariantCulture, $"{head[..digits]}{bytes.Length}{(isDescription ? "" : "/Filter/FlateDecode")}{head[after..]}{StreamBegins}"));
        _file.Write(bytes);
        Put("\nendstream\nendobj\n");
    }

    /// <summary>Fonts have their tags in order of appearance; whatever texts other objects hold stays.</summary>
    private string Head(string text)
    {
        if (!text.Contains("<</Type/Font", StringComparison.Ordinal))
        {
            return _isDated ? text : Without(Without(text, "/CreationDate(", ")"), "/ModDate(", ")");
        }

        for (int plus = text.IndexOf('+', StringComparison.Ordinal); plus > TagLetters; plus = text.IndexOf('+', plus + 1))
        {
            string tag = text[(plus - TagLetters)..plus];
            if (text[plus - TagLetters - 1] != '/' || !tag.All(char.IsAsciiLetterUpper))
            {
                continue;
            }

            if (!_tags.TryGetValue(tag, out string? own))
            {
                own = $"AAAAA{(char)('A' + _tags.Count)}";
                _tags.Add(tag, own);
            }

            text = string.Concat(text.AsSpan(0, plus - TagLetters), own, text.AsSpan(plus));
        }

        return text;
    }

    /// <summary>The numbers in it are left out: they may be, and say nothing of a file that is the same wherever it is made.</summary>
    private string Description(string text)
    {
        text = Without(Without(text, "<xmpMM:DocumentID>", "</xmpMM:DocumentID>"), "<xmpMM:InstanceID>", "</xmpMM:InstanceID>");
        return _isDated ? text : Without(Without(text, "<xmp:CreateDate>", "</xmp:CreateDate>"), "<xmp:ModifyDate>", "</xmp:ModifyDate>");
    }

    private static byte[] Compressed(string content)
    {
        using MemoryStream small = new();
        using (ZLibStream stream = new(small, CompressionLevel.Optimal, leaveOpen: true))
        {
            stream.Write(Encoding.Latin1.GetBytes(content));
        }

        return small.ToArray();
    }

    private void Put(string text) => _file.Write(Encoding.Latin1.GetBytes(text));

    /// <summary>A text without everything between two marks, and without them.</summary>
    private static string Without(string text, string from, string to)
    {
        for (int start = text.IndexOf(from, StringComparison.Ordinal); 0 <= start; start = text.IndexOf(from, start, StringComparison.Ordinal))
        {
            text = text.Remove(start, text.IndexOf(to, start, StringComparison.Ordinal) + to.Length - start);
        }

        return text;
    }

    /// <summary>The number at a place, behind whatever blanks.</summary>
    private static int Number(string text, int at)
    {
        while (char.IsWhiteSpace(text[at]))
        {
            at++;
        }

        int end = at;
        while (end < text.Length && char.IsAsciiDigit(text[end]))
        {
            end++;
        }

        return int.Parse(text.AsSpan(at, end - at), CultureInfo.InvariantCulture);
    }
}
