using FrontEnd.Documents.Files;
using FrontEnd.Teaching;

namespace FrontEnd.Documents.Teaching;

/// <summary>The file of the secret that a homework is drawn with: any bytes.</summary>
internal static class SecretFile
{
    /// <summary>The bytes that count; empty with an error where there are none.</summary>
    /// <param name="folder">Where the sheets will be written; null where that is not known.</param>
    public static ReadOnlyMemory<byte> Read(string path, string? folder, List<Finding> findings)
    {
        if (TextFiles.Bytes(path, TextFiles.Limit, FileMessages.TooLarge, out Finding? unread) is not { } bytes)
        {
            findings.Add(unread!);
            return default;
        }

        byte[] secret = DrawSource.Trimmed(bytes.Span).ToArray();
        if (secret.Length == 0)
        {
            findings.Add(Messages.EmptySecret(path));
        }
        else if (secret.Length < Messages.SecretBytes)
        {
            findings.Add(Messages.ShortSecret(path, secret.Length));
        }

        if (folder is not null && IsBelow(path, folder))
        {
            findings.Add(Messages.SecretInFolder(path, folder));
        }

        return secret;
    }

    private static bool IsBelow(string path, string folder)
    {
        string way = Path.GetRelativePath(Path.GetFullPath(folder), Path.GetFullPath(path));
        return way != ".." && !way.StartsWith(".." + Path.DirectorySeparatorChar, StringComparison.Ordinal) && !Path.IsPathRooted(way);
    }
}
