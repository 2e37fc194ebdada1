using FrontEnd.Documents;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Reading;

namespace FrontEnd.Terminal;

/// <summary>Keeps unsaved work in a file of its own, so that a crash or a hang-up loses nothing. One file a session.</summary>
/// <remarks>Form: for each design a line <c>== path</c> (empty path: no file yet) with the number of the text's characters, then the
/// text.</remarks>
internal sealed class RecoveryFiles : IDisposable
{
    private const string Ending = ".recovery", EndingAside = ".unreadable";

    // How long a change waits for others before all are written; with the writing it must stay below a quarter of a second.
    private const int Milliseconds = 120;

    private readonly Lock _gate = new();
    private readonly string _folder;
    private readonly string _mine;
    private readonly Timer _timer;
    private readonly List<string> _found = [];
    private Model? _latest;

    /// <summary>Keeps work in a folder, in a file of this session's own.</summary>
    public RecoveryFiles(string folder)
    {
        _folder = folder;
        _mine = Path.Combine(folder, $"session-{Environment.ProcessId}-{Path.GetRandomFileName()}{Ending}");
        _timer = new Timer(_ => WriteLatest());
    }

    /// <summary>Writes within a quarter of a second, however many changes come.</summary>
    public void Later(Model model)
    {
        lock (_gate)
        {
            bool idle = _latest is null;
            _latest = model;
            if (idle)
            {
                _timer.Change(Milliseconds, Timeout.Infinite);
            }
        }
    }

    /// <summary>Writes at once. From any thread.</summary>
    public void Now(Model model)
    {
        lock (_gate)
        {
            _latest = null;
            Write(model);
        }
    }

    /// <summary>Unsaved work of earlier sessions. A session that is still running keeps its own. A file that holds anything else than
    /// designs is set aside under another name, and never deleted.</summary>
    public FoundWork Find()
    {
        List<RecoveredDesign> designs = [];
        List<string> aside = [];
        try
        {
            if (!Directory.Exists(_folder))
            {
                return FoundWork.Nothing;
            }

            foreach (string file in Directory.GetFiles(_folder, "session-*" + Ending).Order(StringComparer.Ordinal))
            {
                if (file == _mine || IsAlive(file))
                {
                    continue;
                }

                if (TextFiles.Read(file, out _) is not { } text)
                {
                    aside.Add(SetAside(file));
                    continue;
                }

                IReadOnlyList<RecoveredDesign> all = Parse(text, out string rest);
                RecoveredDesign[] found = [.. all.Where(IsDesign)];
                designs.AddRange(found.Select(WithDisk));
                if (rest.Length > 0 || found.Length < all.Count)
                {
                    aside.Add(SetAside(file));
                }
                else
                {
                    _found.Add(file);
                }
            }
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // A folder that cannot be read holds nothing for us.
        }

        return new FoundWork(designs, aside);
    }

    /// <summary>Gives a file a name under which it is not looked for again; the name that it has afterwards.</summary>
    private static string SetAside(string file)
    {
        string aside = file[..^Ending.Length] + EndingAside;
        try
        {
            File.Move(file, aside);
            return aside;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // It stays where it is, and is named at the next start again.
            return file;
        }
    }

    private static bool IsDesign(RecoveredDesign one) =>
        !DesignDocument.Parse(one.Text, DesignDocument.FormatOf(one.Path ?? "", one.Text), one.Path).IsNoDesign;

    /// <summary>Deletes what <see cref="Find"/> found.</summary>
    public void DropFound()
    {
        foreach (string file in _found)
        {
            Delete(file);
        }

        _found.Clear();
    }

    /// <summary>Deletes this session's own file.</summary>
    public void Drop()
    {
        lock (_gate)
        {
            _latest = null;
            Delete(_mine);
        }
    }

    public void Dispose() => _timer.Dispose();

    /// <summary>The designs of a recovery file.</summary>
    /// <param name="rest">What follows them and is none of this form; "" where all of it is.</param>
    public static IReadOnlyList<RecoveredDesign> Parse(string text, out string rest)
    {
        List<RecoveredDesign> designs = [];
        int at = 0;
        while (at < text.Length && text.AsSpan(at).StartsWith("== "))
        {
            int end = text.IndexOf('\n', at);
            if (end < 0)
            {
                break;
            }

            string head = text[(at + 3)..end];
            int blank = head.IndexOf(' ');
            if (!int.TryParse(blank < 0 ? head : head[..blank], out int length) || length < 0 || text.Length < end + 1 + length)
            {
                break;
            }

            string path = blank < 0 ? "" : head[(blank + 1)..];
            designs.Add(new RecoveredDesign(path.Length == 0 ? null : path, text.Substring(end + 1, length)));
            at = end + 1 + length + 1;
        }

        rest = at < text.Length ? text[at..] : "";
        return designs;
    }

    /// <summary>The form of a recovery file.</summary>
    public static string Format(IEnumerable<RecoveredDesign> designs) =>
        string.Concat(designs.Select(design => $"== {design.Text.Length} {design.Path}\n{design.Text}\n"));

    /// <summary>The design with what its file says now and with the cards that both name.</summary>
    private static RecoveredDesign WithDisk(RecoveredDesign design)
    {
        string? there = design.Path is { } path ? TextFiles.Read(path, out _) : null, folder = Path.GetDirectoryName(design.Path);
        CardTexts Cards(string text) =>
            DesignDocument.ReadText(text, DesignDocument.FormatOf(design.Path ?? "", text), design.Path, folder).Cards;
        return design with { FileText = there, Cards = Cards(design.Text).And(Cards(there ?? "")) };
    }

    private void WriteLatest()
    {
        lock (_gate)
        {
            if (_latest is { } model)
            {
                _latest = null;
                Write(model);
            }
        }
    }

    private void Write(Model model)
    {
        List<RecoveredDesign> changed =
            [.. model.Designs.Where(design => design.IsChanged).Select(
                design => new RecoveredDesign(design.Path is null ? null : Path.GetFullPath(design.Path), design.Document.Text))];
        if (changed.Count == 0)
        {
            Delete(_mine);
            return;
        }

        try
        {
            Directory.CreateDirectory(_folder);
            TextFiles.WriteAtomically(_mine, Format(changed));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // Nowhere to keep it: the user still has the screen.
        }
    }

    private static bool IsAlive(string file)
    {
        string[] parts = Path.GetFileName(file).Split('-');
        if (parts.Length < 3 || !int.TryParse(parts[1], out int process) || process == Environment.ProcessId)
        {
            return false;
        }

        try
        {
            using System.Diagnostics.Process other = System.Diagnostics.Process.GetProcessById(process);
            return !other.HasExited && other.ProcessName.Contains("frontend", StringComparison.OrdinalIgnoreCase);
        }
        catch (Exception error) when (error is ArgumentException or InvalidOperationException or System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }

    private static void Delete(string file)
    {
        try
        {
            File.Delete(file);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or DirectoryNotFoundException)
        {
            // It will be offered once more; better than lost.
        }
    }
}

/// <summary>What earlier sessions left.</summary>
/// <param name="Designs">Their unsaved designs.</param>
/// <param name="SetAside">Files that hold something else, by the names that they have now.</param>
public sealed record FoundWork(IReadOnlyList<RecoveredDesign> Designs, IReadOnlyList<string> SetAside)
{
    /// <summary>They left nothing.</summary>
    public static FoundWork Nothing { get; } = new([], []);

    /// <summary>True where there is nothing to tell.</summary>
    public bool IsNothing => Designs.Count + SetAside.Count == 0;
}
