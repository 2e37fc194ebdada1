using System.Text;
using FrontEnd.Documents.Files;
using Microsoft.Win32.SafeHandles;

namespace FrontEnd.Documents.Recordings;

/// <summary>The bytes of a file of any size, read piece by piece as often as they are wanted. What the file has when it is opened is read,
/// even if it grows meanwhile.</summary>
internal sealed class RecordingBytes : IDisposable
{
    /// <summary>Most bytes that are taken from a pipe, 1 GiB: it may have no end, and is kept in a temporary file as it can be read but
    /// once.</summary>
    public const long PipeLimit = 1024L * 1024 * 1024;

    private readonly FileStream _file;
    private readonly SafeFileHandle _handle;
    private IProgress<int>? _progress;
    private CancellationToken _cancellation;
    private long _read, _expected;
    private int _told;

    private RecordingBytes(string path, FileStream file)
    {
        (Path, _file, _handle, Length) = (path, file, file.SafeFileHandle, file.Length);
    }

    /// <summary>As the user named it.</summary>
    public string Path { get; }

    public long Length { get; }

    /// <summary>Thousandths that a progress goes to.</summary>
    public const int Steps = 1000;

    /// <summary>Opens a file; null with a finding where it cannot be had.</summary>
    public static RecordingBytes? Open(string path, out Finding? finding) => Open(path, PipeLimit, out finding);

    internal static RecordingBytes? Open(string path, long pipeLimit, out Finding? finding)
    {
        FileStream? file = TextFiles.Open(path, out finding);
        try
        {
            // A device says that it has no bytes, as an empty file does.
            FileStream? whole = file is null || (file.CanSeek && file.Length != 0) ? file : Copied(file, path, pipeLimit, out finding);
            return whole is null ? null : new RecordingBytes(path, whole);
        }
        catch (Exception error) when (TextFiles.IsOfFile(error))
        {
            file!.Dispose();
            finding = FileMessages.Unreadable(path, error);
            return null;
        }
    }

    public void Dispose() => _file.Dispose();

    /// <summary>Whom to tell how far the reading is, and who may end it.</summary>
    public void Watch(IProgress<int>? progress, CancellationToken cancellation) =>
        (_progress, _cancellation, _read, _told) = (progress, cancellation, 0, 0);

    /// <summary>How often the whole file will be read, as far as is known.</summary>
    public void Expect(int readings) => _expected = readings * Length;

    /// <summary>Fills the buffer with the bytes from a place on; throws <see cref="BadRecordingException"/> where the file has them no
    /// longer.</summary>
    public void Read(long at, Span<byte> buffer)
    {
        _cancellation.ThrowIfCancellationRequested();
        try
        {
            for (int filled = 0, read; filled < buffer.Length; filled += read)
            {
                read = RandomAccess.Read(_handle, buffer[filled..], at + filled);
                if (read == 0)
                {
                    throw new BadRecordingException(RecordingMessages.Changed(Path));
                }
            }
        }
        catch (Exception error) when (TextFiles.IsOfFile(error))
        {
            throw new BadRecordingException(FileMessages.Unreadable(Path, error));
        }

        _read += buffer.Length;
        int step = _expected == 0 ? 0 : (int)Math.Min(Steps, _read * (double)Steps / _expected);
        if (_told < step)
        {
            _progress?.Report(_told = step);
        }
    }

    /// <summary>The bytes as text from the beginning; what is no UTF-8 becomes the sign for that.</summary>
    public TextReader Text() => new Letters(this);

    private static FileStream? Copied(FileStream pipe, string path, long limit, out Finding? finding)
    {
        using (pipe)
        {
            string name = System.IO.Path.GetTempFileName();
            FileStream copy = new(name, FileMode.Create, FileAccess.ReadWrite, FileShare.ReadWrite | FileShare.Delete, 1,
                FileOptions.DeleteOnClose);
            if (!OperatingSystem.IsWindows())
            {
                // Without a name it is gone even if the program is ended.
                File.Delete(name);
            }

            var chunk = new byte[64 * 1024];
            for (int read; copy.Length <= limit && 0 < (read = pipe.Read(chunk));)
            {
                copy.Write(chunk, 0, read);
            }

            finding = limit < copy.Length ? RecordingMessages.EndlessPipe(path, limit) : null;
            if (finding is null)
            {
                return copy;
            }

            copy.Dispose();
            return null;
        }
    }

    private sealed class Letters(RecordingBytes bytes) : TextReader
    {
        private readonly Decoder _decoder = Encoding.UTF8.GetDecoder();
        private readonly byte[] _held = new byte[64 * 1024];
        private int _from, _to;
        private long _at;

        public override int Read(char[] buffer, int index, int count)
        {
            int letters;
            do
            {
                if (_from == _to)
                {
                    (_from, _to) = (0, (int)Math.Min(_held.Length, bytes.Length - _at));
                    bytes.Read(_at, _held.AsSpan(0, _to));
                    _at += _to;
                }

                _decoder.Convert(_held.AsSpan(_from, _to - _from), buffer.AsSpan(index, count), _at == bytes.Length, out int used, out letters, out _);
                _from += used;
            }
            while (letters == 0 && (_from < _to || _at < bytes.Length));

            return letters;
        }
    }
}
