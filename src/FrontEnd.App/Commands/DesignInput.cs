using FrontEnd.Documents;
using FrontEnd.Documents.Reading;

namespace FrontEnd.App.Commands;

/// <summary>The design that a command works on.</summary>
internal static class DesignInput
{
    /// <param name="path">Null for the starter design.</param>
    public static DesignDocument Read(string? path) =>
        path is null ? DesignDocument.Parse(DesignDocument.StarterText, DocumentFormat.Toml) : Named(path);

    /// <summary>True for an argument that is a design and no command: a file that is there, or a name that only a file has.</summary>
    public static bool IsDesign(string argument) =>
        !argument.StartsWith('-')
            && (argument.EndsWith(".toml", StringComparison.OrdinalIgnoreCase)
                || argument.EndsWith(".json", StringComparison.OrdinalIgnoreCase) || argument.Contains('/') || File.Exists(argument));

    /// <summary>The word for what comes in by the standard input.</summary>
    public const string StandardInput = FrontEnd.Documents.Sheets.CheckText.StandardInput;

    // It can be read once: a call that names it twice means the same design.
    private static readonly Lazy<DesignDocument> Input = new(() => DesignDocument.ReadInput(Console.OpenStandardInput, StandardInput, Directory.GetCurrentDirectory()));

    /// <summary>The design of a path, or the one that comes in by the standard input.</summary>
    public static DesignDocument Named(string path) => path == StandardInput ? Input.Value : DesignDocument.Read(path);

    /// <summary>Reads a design of which every value is to be known; null where it cannot be used, and the outlet has been told why.</summary>
    public static DesignDocument? Usable(string path, Outlet outlet)
    {
        if (Readable(path, outlet) is not { } document)
        {
            return null;
        }

        if (document.NotAllKnown is { } open)
        {
            outlet.Tell(open);
            return null;
        }

        return document;
    }

    /// <summary>The same where some values may be unknown.</summary>
    public static DesignDocument? Readable(string path, Outlet outlet)
    {
        DesignDocument document = Named(path);
        outlet.Tell(document.Findings);
        return document.HasErrors ? null : document;
    }
}
