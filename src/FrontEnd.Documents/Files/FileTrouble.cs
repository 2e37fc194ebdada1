namespace FrontEnd.Documents.Files;

/// <summary>Why a file cannot be read or written, and what to do, in words of ours: what the framework says names types, temporary files and
/// paths that nobody typed.</summary>
/// <param name="Because">The fact.</param>
/// <param name="Do">The remedy.</param>
internal sealed record FileTrouble(string Because, string Do)
{
    /// <summary>Where the system's numbers begin that are no error numbers of Unix: Windows has its own in the lower half.</summary>
    private const int WindowsMask = unchecked((int)0xFFFF0000), WindowsBase = unchecked((int)0x80070000);

    private static readonly FileTrouble
        Full = new("there is no space left where it would stand", "free some space, or write somewhere else"),
        Locked = new("the place can only be read from", "write somewhere else"),
        Taken = new("something else of that name is there already", "choose another name"),
        InUse = new("another program is using it", "close it there, and try again"),
        Broken = new("the device reports an error", "check the disk or the connection"),
        Circle = new("links on the way to it lead back to themselves", "mend the link, or name the file itself"),
        Many = new("the system has too many files open", "close other programs, and try again"),
        Closed = new("it is closed", "leave it open, or name a file to write to"),
        NoPlace = new("nothing answers there", "name a file on a disk");

    /// <summary>Of what reading or writing a path threw.</summary>
    /// <param name="path">As the user named it.</param>
    public static FileTrouble Of(Exception error, string path, bool isWritten) => error switch
    {
        FileTooLargeException => new("it would be larger than the file system or a limit allows", "write less into it, or write somewhere else"),
        DirectoryNotFoundException => Folder(path, isWritten),
        FileNotFoundException => isWritten
            ? new("its folder takes no files", "name a file in another folder")
            : new("it is there no longer", "check whether another program has moved or removed it"),
        PathTooLongException => new("its name is longer than the file system takes", "choose a shorter name"),
        UnauthorizedAccessException => isWritten
            ? new("you have no right to write there", "choose another folder, or change the rights of this one")
            : new("you have no right to read it", "check that the file is yours to read"),
        ArgumentException => Empty(path),
        _ => Numbered(error.HResult),
    };

    /// <summary>Of a name that no file can have.</summary>
    public static FileTrouble Empty(string path) => path.Length == 0
        ? new("its name is empty", "give it a name")
        : new("its name holds a sign that no file name may have", "choose another name");

    /// <summary>The first folder on the way that is missing or is none.</summary>
    private static FileTrouble Folder(string path, bool isWritten)
    {
        string? missing = null;
        for (string? place = Path.GetDirectoryName(path); !string.IsNullOrEmpty(place); place = Path.GetDirectoryName(place))
        {
            if (File.Exists(place))
            {
                return new($"`{place}` is a file, not a folder", "check the name");
            }

            missing = Directory.Exists(place) ? missing : place;
        }

        return missing is null ? new("its folder is there no longer", "check the name and the folder")
            : new($"there is no folder `{missing}`", isWritten ? "make the folder first, or name another" : "check the name and the folder");
    }

    /// <summary>Of the system's number, which stands in the framework's exception.</summary>
    private static FileTrouble Numbered(int result)
    {
        bool isWindows = (result & WindowsMask) == WindowsBase;
        int number = isWindows ? result & ~WindowsMask : result;
        return isWindows ? number switch
        {
            112 or 39 => Full,
            80 or 183 => Taken,
            19 => Locked,
            32 or 33 => InUse,
            123 or 161 => Empty(" "),
            4 => Many,
            _ => Other(number),
        }
        : number switch
        {
            28 or 122 => Full,
            17 => Taken,
            30 => Locked,
            9 => Closed,
            11 or 16 or 26 or 35 => InUse,
            5 => Broken,
            40 or 62 => Circle,
            23 or 24 => Many,
            6 or 19 => NoPlace,
            _ => Other(number),
        };
    }

    private static FileTrouble Other(int number) =>
        new(number > 0 ? FormattableString.Invariant($"the system refuses it, with its error {number}") : "the system refuses it", "check the name, the rights and the space left, or write somewhere else");
}

/// <summary>A file that grows beyond what the disk can name, or may hold by a limit.</summary>
internal sealed class FileTooLargeException(Exception inner) : IOException(null, inner);
