namespace FrontEnd.Benchmarks;

/// <summary>Finds the project's folder from wherever the benchmark runs.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    private static string Find()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "FrontEnd.sln")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return folder ?? throw new InvalidOperationException("FrontEnd.sln is in no folder above the benchmarks.");
    }
}
