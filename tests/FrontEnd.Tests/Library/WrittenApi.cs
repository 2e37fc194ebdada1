using System.Reflection;
using PublicApiGenerator;

namespace FrontEnd.Tests.Library;

/// <summary>What a library shows, held against the file that it is written down in.</summary>
internal static class WrittenApi
{
    /// <summary>What differs; null for nothing, and where FRONTEND_ACCEPT=1 has written the file anew.</summary>
    public static string? Difference(Assembly library, string path)
    {
        string actual = library.GeneratePublicApi(new ApiGeneratorOptions { IncludeAssemblyAttributes = false }).ReplaceLineEndings("\n").TrimEnd() + "\n";
        if (Environment.GetEnvironmentVariable("FRONTEND_ACCEPT") is "1")
        {
            File.WriteAllText(path, actual);
            return null;
        }

        string[] written = File.ReadAllText(path).ReplaceLineEndings("\n").Split('\n'), lines = actual.Split('\n');
        string[] more = [.. lines.Except(written, StringComparer.Ordinal)], less = [.. written.Except(lines, StringComparer.Ordinal)];
        return written.SequenceEqual(lines, StringComparer.Ordinal) ? null
            : $"the public surface is not as in {Path.GetFileName(path)} (FRONTEND_ACCEPT=1 writes it anew)\nnew:\n{string.Join('\n', more)}\ngone:\n{string.Join('\n', less)}";
    }
}
