using FrontEnd.Documents.Files;

namespace FrontEnd.Terminal;

/// <summary>The designs opened lately, newest first, one path a line. A list that cannot be kept is no reason to complain.</summary>
internal sealed class RecentFiles(string folder)
{
    private const int Most = 20;

    private string File => Path.Combine(folder, "recent");

    /// <summary>The paths, newest first.</summary>
    public IReadOnlyList<string> All => System.IO.File.Exists(File) && TextFiles.Read(File, out _) is { } text
        ? [.. text.Split('\n', StringSplitOptions.RemoveEmptyEntries)]
        : [];

    /// <summary>Puts a path first.</summary>
    public void Add(string path)
    {
        string full = Path.GetFullPath(path);
        if (full.Contains('\n'))
        {
            return;
        }

        try
        {
            Directory.CreateDirectory(folder);
            TextFiles.WriteAtomically(File, string.Join('\n', All.Where(one => one != full).Prepend(full).Take(Most)) + "\n");
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // Read-only homes exist.
        }
    }
}
