using System.Buffers.Binary;
using System.IO.Compression;
using FrontEnd.Documents.Files;

namespace FrontEnd.Documents.Drawing;

/// <summary>The font that comes with the program, regular or bold, and how wide it says its letters are.</summary>
/// <remarks>Of a TrueType file four tables are read: <c>head</c> and <c>hhea</c> (counts and units), <c>cmap</c> in its format 4 (from letter
/// to shape) and <c>hmtx</c> (widths of the shapes). The layout is from memory; the tests compare widths.</remarks>
internal sealed class FontFile
{
    public static readonly FontFile Regular = new("DejaVuSans"), Bold = new("DejaVuSans-Bold");

    /// <summary>What stands in the place of a letter that the font does not have.</summary>
    private const char Instead = '\uFFFD';

    private readonly Lazy<byte[]> _bytes;
    private readonly Lazy<Dictionary<char, double>> _widths;

    private FontFile(string name)
    {
        Name = name;
        _bytes = new(() => Unpacked(Embedded.Bytes($"fonts/{name}.ttf.gz")));
        _widths = new(Read);
    }

    public string Name { get; }

    public byte[] Bytes => _bytes.Value;

    /// <summary>True where the font has a shape of its own for a letter.</summary>
    public bool Has(char letter) => _widths.Value.ContainsKey(letter);

    /// <summary>How far a letter moves the next one, over the letters' size. A letter without a shape is as wide as what stands in its
    /// place.</summary>
    public double Advance(char letter) => _widths.Value.TryGetValue(letter, out double width) ? width : _widths.Value[Instead];

    /// <summary>A text of letters that the font has.</summary>
    public string Drawable(string text) => text.All(Has) ? text : string.Create(text.Length, text, (letters, from) =>
    {
        for (int at = 0; at < from.Length; at++)
        {
            letters[at] = Has(from[at]) ? from[at] : Instead;
        }
    });

    private static byte[] Unpacked(byte[] packed)
    {
        using GZipStream stream = new(new MemoryStream(packed), CompressionMode.Decompress);
        using MemoryStream bytes = new();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }

    private Dictionary<char, double> Read()
    {
        byte[] bytes = Bytes;
        int head = Table("head"), across = Table("hhea"), widths = Table("hmtx"), map = Table("cmap");
        double units = U16(head + 18);
        int measured = U16(across + 34);
        double Width(int shape) => U16(widths + (4 * Math.Min(shape, measured - 1))) / units;

        Dictionary<char, double> read = [];
        int format4 = Enumerable.Range(0, U16(map + 2)).Select(at => map + (int)U32(map + 4 + (8 * at) + 4)).First(at => U16(at) == 4);
        int count = U16(format4 + 6) / 2, ends = format4 + 14, starts = ends + (2 * count) + 2, deltas = starts + (2 * count), offsets = deltas + (2 * count);
        for (int piece = 0; piece < count; piece++)
        {
            int first = U16(starts + (2 * piece)), last = U16(ends + (2 * piece)), offset = U16(offsets + (2 * piece));
            for (int letter = first; letter <= last && letter < 0xFFFF; letter++)
            {
                int shape = offset == 0 ? letter : U16(offsets + (2 * piece) + offset + (2 * (letter - first)));
                shape = offset != 0 && shape == 0 ? 0 : (shape + U16(deltas + (2 * piece))) & 0xFFFF;
                if (shape != 0)
                {
                    read[(char)letter] = Width(shape);
                }
            }
        }

        return read;

        int Table(string tag) => Enumerable.Range(0, U16(4)).Select(at => 12 + (16 * at))
            .Where(at => System.Text.Encoding.ASCII.GetString(bytes, at, 4) == tag).Select(at => (int)U32(at + 8)).Single();
        ushort U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan(at));
        uint U32(int at) => BinaryPrimitives.ReadUInt32BigEndian(bytes.AsSpan(at));
    }
}
