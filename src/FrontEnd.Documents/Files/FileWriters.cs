using System.Collections.Concurrent;

namespace FrontEnd.Documents.Files;

/// <summary>Writes many files while others are being made. A file that is flushed waits for the disk, not for a core, so that several are
/// under way at once; few are held, whoever adds more waits.</summary>
internal sealed class FileWriters : IDisposable
{
    private const int Writers = 8;

    private readonly BlockingCollection<(string Path, string Text)> _files = new(boundedCapacity: 4 * Writers);
    private readonly Thread[] _threads;
    private Finding? _problem;

    public FileWriters()
    {
        _threads = new Thread[Writers];
        for (int i = 0; i < Writers; i++)
        {
            _threads[i] = new Thread(Write) { IsBackground = true };
            _threads[i].Start();
        }
    }

    /// <summary>The first problem so far; null for none. What is added after one is not written.</summary>
    public Finding? Problem => Volatile.Read(ref _problem);

    public void Add(string path, string text) => _files.Add((path, text));

    /// <summary>Waits until all are written; the first problem, or null.</summary>
    public Finding? Finish()
    {
        _files.CompleteAdding();
        Array.ForEach(_threads, thread => thread.Join());
        return Problem;
    }

    public void Dispose()
    {
        Finish();
        _files.Dispose();
    }

    private void Write()
    {
        foreach ((string path, string text) in _files.GetConsumingEnumerable())
        {
            if (Problem is null && TextFiles.WriteAtomically(path, text) is { } problem)
            {
                Interlocked.CompareExchange(ref _problem, problem, null);
            }
        }
    }
}
