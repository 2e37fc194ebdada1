using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using FrontEnd.Documents.Files;

namespace FrontEnd.Terminal;

/// <summary>Tells other runs of the program which design files are open here, and finds out which are open there: a small file for each run in the folder
/// for what the program remembers.</summary>
/// <remarks>Form: the start of the process in seconds, then a path a line. A file whose process is gone, or is another one by now, counts for nothing and is
/// taken away.</remarks>
internal sealed class Presence : IDisposable
{
    private const string Ending = ".open";

    /// <summary>By how much two processes may tell the start of one apart [s].</summary>
    private const long Slack = 2;

    private readonly Lock _gate = new();
    private readonly string _folder;
    private readonly string _mine;
    private string _written = "";

    /// <summary>Tells and finds in a folder.</summary>
    public Presence(string folder)
    {
        _folder = folder;
        _mine = Path.Combine(folder, $"run-{Environment.ProcessId}-{Path.GetRandomFileName()}{Ending}");
    }

    /// <summary>Says which files are open here from now on.</summary>
    public void Note(ImmutableList<OpenDesign> designs)
    {
        string text = string.Concat(designs.Where(design => design.Path is not null).Select(design => FullPath(design.Path!) + "\n"));
        lock (_gate)
        {
            if (string.Equals(text, _written, StringComparison.Ordinal))
            {
                return;
            }

            _written = text;
            try
            {
                Directory.CreateDirectory(_folder);
                TextFiles.WriteAtomically(_mine, string.Create(CultureInfo.InvariantCulture, $"{StartOf(Environment.ProcessId)}\n{text}"));
            }
            catch (Exception error) when (error is IOException or UnauthorizedAccessException)
            {
                // Nowhere to say it: the files themselves are still watched.
            }
        }
    }

    /// <summary>The files that other runs have open, each with the number of the process that has it.</summary>
    public ImmutableSortedDictionary<string, int> Others()
    {
        var others = ImmutableSortedDictionary.Create<string, int>(StringComparer.Ordinal);
        try
        {
            foreach (string file in Directory.Exists(_folder) ? Directory.EnumerateFiles(_folder, "run-*" + Ending) : [])
            {
                if (file == _mine || TextFiles.Read(file, out _) is not { } text)
                {
                    continue;
                }

                string[] lines = text.Split('\n', StringSplitOptions.RemoveEmptyEntries);
                if (!int.TryParse(Path.GetFileName(file).Split('-')[1], CultureInfo.InvariantCulture, out int process) || lines.Length == 0
                    || !long.TryParse(lines[0], CultureInfo.InvariantCulture, out long began) || StartOf(process) is not { } start || Slack < Math.Abs(start - began))
                {
                    File.Delete(file);
                    continue;
                }

                foreach (string path in lines.Skip(1))
                {
                    others = others.SetItem(path, process);
                }
            }
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // A folder that cannot be read tells of nobody.
        }

        return others;
    }

    /// <summary>The path that says which file it is, whatever folder a run was started in.</summary>
    public static string FullPath(string path)
    {
        string full = Path.GetFullPath(path);
        try
        {
            return File.ResolveLinkTarget(full, returnFinalTarget: true)?.FullName ?? full;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return full;
        }
    }

    /// <summary>Takes back what was said.</summary>
    public void Dispose()
    {
        lock (_gate)
        {
            try
            {
                File.Delete(_mine);
            }
            catch (Exception error) when (error is IOException or UnauthorizedAccessException)
            {
                // The next run sees that the process is gone.
            }
        }
    }

    /// <summary>When a process began [s]; null where there is none. A number is given again to a process that begins later.</summary>
    private static long? StartOf(int process)
    {
        try
        {
            using Process one = Process.GetProcessById(process);
            return one.HasExited ? null : one.StartTime.ToUniversalTime().Ticks / TimeSpan.TicksPerSecond;
        }
        catch (Exception error) when (error is ArgumentException or InvalidOperationException or System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }
}
