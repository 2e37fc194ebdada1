namespace FrontEnd.Documents.Tests;

/// <summary>A folder that goes away with the test.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("frontend-test-").FullName;

    public string Write(string name, string text)
    {
        string path = System.IO.Path.Combine(Path, name);
        File.WriteAllText(path, text);
        return path;
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
