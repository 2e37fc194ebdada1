using System.Buffers.Binary;
using System.Text;

namespace FrontEnd.Documents.Files;

/// <summary>Tables of a class as spreadsheets save them: UTF-8, UTF-16 with or without its mark, or Windows-1252, whichever it is.</summary>
internal static class TableText
{
    /// <summary>What Windows-1252 has where Latin-1 has control codes, from 0x80 on; from memory. The five places that it leaves free stay
    /// control codes.</summary>
    private const string High = "€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008DŽ\u008F\u0090‘’“”•–—˜™š›œ\u009DžŸ";

    private static ReadOnlySpan<byte> Packed => "PK\u0003\u0004"u8;

    /// <summary>The file's text; null with a finding where it cannot be had or is none.</summary>
    public static string? Read(string path, out Finding? finding) =>
        TextFiles.Bytes(path, TextFiles.ClassLimit, FileMessages.ClassTooLarge, out finding) is { } bytes ? Decode(path, bytes.Span, out finding) : null;

    internal static string? Decode(string path, ReadOnlySpan<byte> bytes, out Finding? finding)
    {
        finding = null;
        if (bytes.StartsWith(Packed))
        {
            finding = FileMessages.Packed(path);
            return null;
        }

        if (IsUtf16(bytes, out bool isBigEndian))
        {
            return Utf16(path, bytes, isBigEndian, out finding);
        }

        if (System.Text.Unicode.Utf8.IsValid(bytes))
        {
            return TextFiles.Decode(path, bytes, out finding);
        }

        int control = bytes.IndexOfAnyInRange((byte)0, (byte)8);
        if (0 <= control)
        {
            finding = FileMessages.NotText(path, $"byte 0x{bytes[control]:X2}", control);
            return null;
        }

        StringBuilder text = new(bytes.Length);
        foreach (byte letter in bytes)
        {
            text.Append(letter is >= 0x80 and < 0xA0 ? High[letter - 0x80] : (char)letter);
        }

        return text.ToString();
    }

    /// <summary>True for pairs of bytes that begin with the mark, or most of which hold a zero on one side and none on the other, as ordinary
    /// letters do.</summary>
    private static bool IsUtf16(ReadOnlySpan<byte> bytes, out bool isBigEndian)
    {
        isBigEndian = bytes.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]);
        if (isBigEndian || bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]))
        {
            return true;
        }

        int first = 0, second = 0, pairs = bytes.Length / 2;
        for (int at = 0; at + 1 < bytes.Length; at += 2)
        {
            first += bytes[at] == 0 ? 1 : 0;
            second += bytes[at + 1] == 0 ? 1 : 0;
        }

        isBigEndian = second == 0;
        return bytes.Length % 2 == 0 && pairs > 0 && Math.Min(first, second) == 0 && pairs < 2 * Math.Max(first, second);
    }

    private static string? Utf16(string path, ReadOnlySpan<byte> bytes, bool isBigEndian, out Finding? finding)
    {
        StringBuilder text = new(bytes.Length / 2);
        for (int at = 0; at + 1 < bytes.Length; at += 2)
        {
            char letter = (char)(isBigEndian ? BinaryPrimitives.ReadUInt16BigEndian(bytes[at..]) : BinaryPrimitives.ReadUInt16LittleEndian(bytes[at..]));
            if (letter == 0)
            {
                finding = FileMessages.NotText(path, "a zero letter", at);
                return null;
            }

            if (letter != '\uFEFF' || at > 0)
            {
                text.Append(letter);
            }
        }

        finding = null;
        return text.ToString();
    }
}
