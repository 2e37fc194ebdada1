namespace FrontEnd.Documents.Tests;

/// <summary>Finds the project's folders from wherever the tests run.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    public static string Designs => Path.Combine(Root, "designs");

    public static string Worked => Path.Combine(Root, "reference", "worked");

    public static string Parts => Path.Combine(Root, "reference", "parts");

    private static string Find()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "FrontEnd.sln")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return folder ?? throw new InvalidOperationException("FrontEnd.sln is in no folder above the tests.");
    }
}
