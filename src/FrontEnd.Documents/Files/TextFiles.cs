using System.Text;
using System.Text.Unicode;

namespace FrontEnd.Documents.Files;

/// <summary>Small UTF-8 text files in and out. What goes wrong with a file is a finding.</summary>
internal static class TextFiles
{
    /// <summary>Largest file that is read, 4 MiB: a design file has some thousand bytes.</summary>
    public const int Limit = 4 * 1024 * 1024;

    /// <summary>Largest file of a class that is read, 1 GiB: its list, its key, its answers. A student has some ten thousand bytes in the
    /// key.</summary>
    public const int ClassLimit = 1024 * 1024 * 1024;

    /// <summary>The byte order mark.</summary>
    private static ReadOnlySpan<byte> Mark => [0xEF, 0xBB, 0xBF];

    /// <summary>The file's text without a byte order mark; null with a finding where it cannot be had.</summary>
    public static string? Read(string path, out Finding? finding) =>
        Bytes(path, Limit, FileMessages.TooLarge, out finding) is { } bytes ? Decode(path, bytes.Span, out finding) : null;

    /// <summary>The same of a stream, which is read to its end.</summary>
    /// <param name="name">What findings call it.</param>
    public static string? Read(Func<Stream> open, string name, out Finding? finding) =>
        Held(open, name, Limit, FileMessages.TooLarge, out finding) is { } bytes ? Decode(name, bytes.Span, out finding) : null;

    /// <summary>The same for what grows with a class: the list of students, the key of a homework, its answers.</summary>
    public static string? ReadOfClass(string path, out Finding? finding) => ReadOfClass(path, ClassLimit, out finding);

    internal static string? ReadOfClass(string path, long limit, out Finding? finding) =>
        Bytes(path, limit, FileMessages.ClassTooLarge, out finding) is { } bytes ? Decode(path, bytes.Span, out finding) : null;

    /// <summary>The same as the bytes of its text, for a key, which takes twice the room as a text.</summary>
    public static ReadOnlyMemory<byte>? BytesOfClass(string path, out Finding? finding)
    {
        if (Bytes(path, ClassLimit, FileMessages.ClassTooLarge, out finding) is not { } bytes)
        {
            return null;
        }

        if (bytes.Span.Contains((byte)0) || !Utf8.IsValid(bytes.Span))
        {
            Decode(path, bytes.Span, out finding);
            return null;
        }

        return bytes.Span.StartsWith(Mark) ? bytes[Mark.Length..] : bytes;
    }

    /// <summary>The file's bytes; null with a finding where they cannot be had.</summary>
    /// <param name="limit">Largest file that is read, in bytes.</param>
    /// <param name="tooLarge">The finding for a larger one: path, its bytes, the limit.</param>
    internal static ReadOnlyMemory<byte>? Bytes(string path, long limit, Func<string, long, long, Finding> tooLarge, out Finding? finding)
    {
        using FileStream? stream = Open(path, out finding);
        return stream is null ? null : Held(() => stream, path, limit, tooLarge, out finding);
    }

    /// <summary>What a stream holds, under the name that findings give it.</summary>
    private static ReadOnlyMemory<byte>? Held(Func<Stream> open, string name, long limit, Func<string, long, long, Finding> tooLarge, out Finding? finding)
    {
        try
        {
            // A pipe or device has no length to trust: read until it is too much.
            Stream stream = open();
            MemoryStream held = new(stream.CanSeek ? (int)Math.Min(limit, stream.Length) : 0);
            byte[] chunk = new byte[64 * 1024];
            for (int read; held.Length <= limit && (read = stream.Read(chunk)) > 0;)
            {
                held.Write(chunk, 0, read);
            }

            long length = stream.CanSeek ? Math.Max(held.Length, stream.Length) : held.Length;
            finding = limit < length ? tooLarge(name, length, limit) : null;
            // In one expression the null would be taken for an empty array, and be an empty file.
            if (finding is null)
            {
                return held.GetBuffer().AsMemory(0, (int)held.Length);
            }

            return null;
        }
        catch (Exception error) when (IsOfFile(error))
        {
            finding = FileMessages.Unreadable(name, error);
            return null;
        }
    }

    /// <summary>The file, open for reading; others may write it meanwhile. Null with a finding where it cannot be had.</summary>
    internal static FileStream? Open(string path, out Finding? finding)
    {
        try
        {
            finding = path.Length == 0 ? FileMessages.Unreadable(path, new ArgumentException(null, nameof(path)))
                : Directory.Exists(path) ? FileMessages.Folder(path) : File.Exists(path) ? null : FileMessages.Missing(path);
            return finding is null
                ? new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete)
                : null;
        }
        catch (Exception error) when (IsOfFile(error))
        {
            finding = FileMessages.Unreadable(path, error);
            return null;
        }
    }

    /// <summary>Writes so that the file is never half written: to a temporary file beside it, flushed to the disk, then renamed over
    /// it.</summary>
    /// <returns>What went wrong; null for nothing.</returns>
    public static Finding? WriteAtomically(string path, string text) => Write(path, file => file.Text.Write(text));

    /// <summary>The same for what is no text.</summary>
    public static Finding? WriteAtomically(string path, byte[] bytes) => Write(path, file => file.Write(bytes));

    private static Finding? Write(string path, Action<AtomicFile> write) => Attempt(path, () =>
    {
        using AtomicFile file = new(path);
        write(file);
        file.Finish();
    });

    /// <summary>Does something to a file that is written; what went wrong with the file, or null.</summary>
    internal static Finding? Attempt(string path, Action act)
    {
        try
        {
            if (Directory.Exists(path))
            {
                return FileMessages.FolderToWrite(path);
            }

            act();
            return null;
        }
        catch (Exception error) when (IsOfFile(error))
        {
            return FileMessages.Unwritable(path, error);
        }
    }

    /// <summary>Makes a folder with those above it, if it is not there; what went wrong, or null.</summary>
    public static Finding? MakeFolder(string path)
    {
        try
        {
            Directory.CreateDirectory(path);
            return null;
        }
        catch (Exception error) when (IsOfFile(error))
        {
            return FileMessages.Unwritable(path, error);
        }
    }

    /// <summary>What reading and writing throw for reasons of the file, its path or its rights.</summary>
    internal static bool IsOfFile(Exception error) =>
        error is IOException or UnauthorizedAccessException or ArgumentException;

    /// <summary>Bytes as text without a byte order mark; null with a finding where they are none.</summary>
    internal static string? Decode(string path, ReadOnlySpan<byte> bytes, out Finding? finding)
    {
        finding = null;
        bytes = bytes.StartsWith(Mark) ? bytes[Mark.Length..] : bytes;
        if (KindOf(bytes) is { } kind)
        {
            finding = FileMessages.NotText(path, kind.What, kind.Remedy);
            return null;
        }

        int zero = bytes.IndexOf((byte)0);
        if (0 <= zero)
        {
            finding = FileMessages.NotText(path, "a zero byte", zero);
            return null;
        }

        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes);
        }
        catch (DecoderFallbackException error)
        {
            finding = FileMessages.NotText(path, $"byte 0x{(error.BytesUnknown is [var first, ..] ? first : (byte)0):X2}", error.Index) with { Line = bytes[..error.Index].Count((byte)'\n') + 1 };
            return null;
        }
    }

    /// <summary>What a file is that is no text in UTF-8, by its first bytes or by where its zeros stand; null where nothing is known.</summary>
    private static (string What, string Remedy)? KindOf(ReadOnlySpan<byte> bytes)
    {
        foreach ((byte[] first, string what) in Signatures)
        {
            if (bytes.StartsWith(first))
            {
                return (what, "name a text file");
            }
        }

        const string AsText = "save it as UTF-8, in the editor's dialogue for saving under another name";
        ReadOnlySpan<byte> head = bytes[..Math.Min(bytes.Length, 1024)];
        int even = 0, odd = 0;
        for (int i = 0; i < head.Length; i++)
        {
            (even, odd) = head[i] != 0 ? (even, odd) : i % 2 == 0 ? (even + 1, odd) : (even, odd + 1);
        }

        bool isWide = head.Length > 7 && head.Length / 3 < Math.Max(even, odd) && Math.Min(even, odd) < head.Length / 8;
        return isWide || bytes.StartsWith((byte[])[0xFF, 0xFE]) || bytes.StartsWith((byte[])[0xFE, 0xFF]) ? ("it is in UTF-16 or UTF-32", AsText) : null;
    }

    // Published with each format; from memory.
    private static readonly (byte[] First, string What)[] Signatures =
        [([0x89, (byte)'P', (byte)'N', (byte)'G'], "it is a picture (PNG)"), ([0xFF, 0xD8, 0xFF], "it is a picture (JPEG)"), ("GIF8"u8.ToArray(), "it is a picture (GIF)"),
            ("%PDF"u8.ToArray(), "it is a PDF"), ([0x7F, (byte)'E', (byte)'L', (byte)'F'], "it is a program"), ([0x1F, 0x8B], "it is a packed file (gzip)"), ("PK\u0003\u0004"u8.ToArray(), "it is a packed file (zip, or an office program's own)")];
}
