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

    internal static Finding Unreadable(string path, string why) =>
        Error(FileUnreadable, "", $"`{path}` cannot be read: {Lower(why)}", null,
            "check that the file is yours to read") with { File = path };

    internal static Finding Unwritable(string path, string why) =>
        Error(FileUnwritable, "", $"`{path}` cannot be written: {Lower(why)}", null,
            "check the folder, its permissions and the space left") with { File = path };

    internal static Finding TooLarge(string path, long bytes, long limit) =>
        Error(FileTooLarge, "", $"`{path}` has {bytes} bytes, but a design file may have at most {limit}", null,
            "check that it is a design file") with { File = path };

    internal static Finding ClassTooLarge(string path, long bytes, long limit) =>
        Error(FileTooLarge, "", $"`{path}` has {bytes} bytes, but at most {limit} are read", null,
            "check that it is the right file, or mark the class in parts") with { File = path };

    internal static Finding NotText(string path, string what, long position) =>
        Error(FileNotText, "", $"`{path}` is not a text file in UTF-8: {what} at byte {position}", null,
            "save it as UTF-8") with { File = path };

    internal static Finding Packed(string path) =>
        Error(FileNotText, "", $"`{path}` is a packed file, such as a spreadsheet's own, and no text", null,
            "save the table as CSV") with { File = path };

    internal static Finding Folder(string path) =>
        Error(FileIsFolder, "", $"`{path}` is a folder", null, "name the design file inside it") with { File = path };

    internal static Finding FolderToWrite(string path) =>
        Error(FileIsFolder, "", $"`{path}` is a folder", null, "name a file in it") with { File = path };

    /// <summary>A message of the framework as the middle of a sentence of ours.</summary>
    internal static string Lower(string text)
    {
        string trimmed = text.Trim().TrimEnd('.');
        return trimmed.Length == 0 ? trimmed : char.ToLowerInvariant(trimmed[0]) + trimmed[1..];
    }
}
