using static FrontEnd.Findings.Finding;

namespace FrontEnd.Documents.Files;

/// <summary>All wording about files that cannot be had or made.</summary>
internal static class FileMessages
{
    public const string FileMissing = "FE0140";
    public const string FileUnreadable = "FE0141";
    public const string FileTooLarge = "FE0142";
    public const string FileNotText = "FE0143";
    public const string FileIsFolder = "FE0144";
    public const string FileUnwritable = "FE0146";

    internal static Finding Missing(string path) =>
        Error(FileMissing, "", $"there is no file `{path}`", null, "check the name and the folder") with { File = path };

    /// <param name="error">What reading it threw.</param>
    internal static Finding Unreadable(string path, Exception error) =>
        With(FileTrouble.Of(error, path, isWritten: false), FileUnreadable, path, "read");

    /// <param name="error">What writing it threw.</param>
    internal static Finding Unwritable(string path, Exception error) =>
        With(FileTrouble.Of(error, path, isWritten: true), FileUnwritable, path, "written");

    private static Finding With(FileTrouble trouble, string code, string path, string done) =>
        Error(code, "", $"`{path}` cannot be {done}", trouble.Because, trouble.Do) with { File = path };

    internal static Finding TooLarge(string path, long bytes, long limit) =>
        Error(FileTooLarge, "", $"`{path}` has {bytes} bytes, but at most {limit} are read", null,
            "check that it is the right file") with { File = path };

    internal static Finding ClassTooLarge(string path, long bytes, long limit) =>
        Error(FileTooLarge, "", $"`{path}` has {bytes} bytes, but at most {limit} are read", null,
            "check that it is the right file, or mark the class in parts") with { File = path };

    internal static Finding NotText(string path, string what, long position) =>
        Error(FileNotText, "", $"`{path}` is not a text file in UTF-8: {what} at byte {position}", null,
            what.StartsWith("byte", StringComparison.Ordinal) ? "save it as UTF-8; letters such as µ and Ω are other bytes in Windows-1252 and Latin-1" : "a text has no zero byte: take it out, or save the text as UTF-8") with { File = path };

    internal static Finding NotText(string path, string what, string remedy) =>
        Error(FileNotText, "", $"`{path}` is not a text file in UTF-8: {what}", null, remedy) with { File = path };

    internal static Finding Packed(string path) =>
        Error(FileNotText, "", $"`{path}` is a packed file, such as a spreadsheet's own, and no text", null,
            "save the table as CSV") with { File = path };

    internal static Finding Folder(string path) =>
        Error(FileIsFolder, "", $"`{path}` is a folder", null, "name a file inside it") with { File = path };

    internal static Finding FolderToWrite(string path) =>
        Error(FileIsFolder, "", $"`{path}` is a folder", null, "name a file in it") with { File = path };

    /// <summary>A message of the framework as the middle of a sentence of ours.</summary>
    internal static string Lower(string text)
    {
        string trimmed = text.Trim().TrimEnd('.');
        return trimmed.Length == 0 ? trimmed : char.ToLowerInvariant(trimmed[0]) + trimmed[1..];
    }
}
