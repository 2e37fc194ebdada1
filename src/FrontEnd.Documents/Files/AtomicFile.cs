using System.Text;

namespace FrontEnd.Documents.Files;

/// <summary>Takes bytes, each time behind those before.</summary>
internal delegate void ByteSink(ReadOnlySpan<byte> bytes);

/// <summary>A file that is written piece by piece and never seen half written: it is a temporary file beside its place until it is whole,
/// and is then flushed to the disk and renamed.</summary>
/// <remarks>What goes wrong with the file is thrown as reading and writing throw it, see <see cref="TextFiles.IsOfFile"/>. A device, such as
/// <c>/dev/stdout</c>, is written to as it stands: renaming a file over it would take it away.</remarks>
internal sealed class AtomicFile : IDisposable
{
    private readonly string _place, _temporary;
    private readonly bool _isDevice;
    private readonly Stream _stream;
    private StreamWriter? _text;
    private bool _isWhole;

    public AtomicFile(string path)
        : this(path, temporary => new FileStream(temporary, FileMode.CreateNew, FileAccess.Write, FileShare.None))
    {
    }

    /// <param name="path">Its place.</param>
    /// <param name="open">Makes the temporary file.</param>
    internal AtomicFile(string path, Func<string, Stream> open)
    {
        _place = System.IO.Path.GetFullPath(path);
        _isDevice = IsDevice(_place);

        // Not made from the file's own name, which may be as long as a name can be.
        _temporary = _isDevice ? _place : System.IO.Path.Combine(System.IO.Path.GetDirectoryName(_place) ?? _place, $".frontend-{System.IO.Path.GetRandomFileName()}");
        _stream = _isDevice ? new FileStream(_place, FileMode.Open, FileAccess.Write, FileShare.ReadWrite) : open(_temporary);
    }

    /// <summary>What is written as text.</summary>
    public StreamWriter Text => _text ??= new StreamWriter(_stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), bufferSize: 64 * 1024);

    /// <summary>Writes what is no text, behind what was written before.</summary>
    public void Write(ReadOnlySpan<byte> bytes)
    {
        try
        {
            _text?.Flush();
            _stream.Write(bytes);
        }
        catch (ArgumentException error)
        {
            throw TooLarge(error);
        }
    }

    /// <summary>Puts the file in its place.</summary>
    public void Finish()
    {
        try
        {
            _text?.Flush();
            if (_stream is FileStream file)
            {
                file.Flush(flushToDisk: !_isDevice);
            }
        }
        catch (ArgumentException error)
        {
            throw TooLarge(error);
        }

        _stream.Dispose();
        if (_isDevice)
        {
            _isWhole = true;
            return;
        }

        if (!OperatingSystem.IsWindows() && File.Exists(_place))
        {
            File.SetUnixFileMode(_temporary, File.GetUnixFileMode(_place));
        }

        File.Move(_temporary, _place, overwrite: true);
        _isWhole = true;
    }

    /// <summary>Removes what is not whole.</summary>
    public void Dispose()
    {
        if (_isWhole)
        {
            return;
        }

        // Closing writes what is held, which a full disk refuses again; the file goes whatever comes of that.
        Quietly(_stream.Dispose);
        if (!_isDevice)
        {
            Quietly(() => File.Delete(_temporary));
        }
    }

    /// <summary>The framework tells no device from a file; where the system keeps its devices, nothing else is.</summary>
    private static bool IsDevice(string place) =>
        !OperatingSystem.IsWindows() && (Under(place, "/dev/") || Under(place, "/proc/")) && !Under(place, "/dev/shm/") && File.Exists(place);

    private static bool Under(string place, string folder) => place.StartsWith(folder, StringComparison.Ordinal);

    /// <summary>The framework calls a file that grows beyond what the disk can name, or may hold by a limit, a wrong argument.</summary>
    private static FileTooLargeException TooLarge(ArgumentException error) => new(error);

    private static void Quietly(Action act)
    {
        try
        {
            act();
        }
        catch (Exception error) when (TextFiles.IsOfFile(error))
        {
            // The write's own failure is what the user needs to know; a left-over temporary file is the lesser evil.
        }
    }
}
