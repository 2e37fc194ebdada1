namespace FrontEnd.Documents.Files;

/// <summary>Whether two paths name one file: by another spelling, through links, on a disk that takes capitals for small letters.</summary>
internal static class SameFile
{
    private const int MostLinks = 40;

    /// <summary>True where writing to one path would write over what is read at the other.</summary>
    public static bool Is(string output, string input)
    {
        try
        {
            StringComparison comparison = OperatingSystem.IsLinux() ? StringComparison.Ordinal : StringComparison.OrdinalIgnoreCase;
            return string.Equals(Path.GetFullPath(output), Path.GetFullPath(input), comparison)
                || string.Equals(Resolved(output), Resolved(input), comparison) || IsOneOnDisk(output, input);
        }
        catch (Exception error) when (TextFiles.IsOfFile(error))
        {
            // What cannot be looked at cannot be read or written either, and reading or writing it tells why.
            return false;
        }
    }

    /// <summary>The path with every link on its way followed.</summary>
    private static string Resolved(string path)
    {
        string full = Path.GetFullPath(path), root = Path.GetPathRoot(full) ?? "", way = root;
        Queue<string> names = new(full[root.Length..].Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries));
        for (int links = 0; names.TryDequeue(out string? name);)
        {
            string next = Path.Combine(way, name);
            if (new FileInfo(next).LinkTarget is { } target && links++ < MostLinks)
            {
                string there = Path.GetFullPath(Path.Combine(way, target));
                root = Path.GetPathRoot(there) ?? "";
                names = new(there[root.Length..].Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries).Concat(names));
                way = root;
            }
            else
            {
                way = next;
            }
        }

        return way;
    }

    /// <summary>True where the system has one file under both names: one that is opened for nobody else cannot be opened a second time.</summary>
    /// <remarks>The framework tells no file numbers. Files of different length, pipes and devices, which have none, are not opened.</remarks>
    private static bool IsOneOnDisk(string output, string input)
    {
        FileInfo one = new(output), other = new(input);
        if (!one.Exists || !other.Exists || one.Length != other.Length || one.Length == 0)
        {
            return false;
        }

        using FileStream held = new(input, FileMode.Open, FileAccess.Read, FileShare.None);
        try
        {
            using FileStream second = new(output, FileMode.Open, FileAccess.Read, FileShare.Read);
            return false;
        }
        catch (IOException)
        {
            return true;
        }
    }
}
