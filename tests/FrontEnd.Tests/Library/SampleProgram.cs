using System.Diagnostics;
using System.Text;
using System.Text.RegularExpressions;
using FrontEnd.Tests.Reference;
using Xunit;

namespace FrontEnd.Tests.Library;

/// <summary>A program in one file, run as its reader would: <c>dotnet run file.cs</c>.</summary>
internal static partial class SampleProgram
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    /// <summary>What the program prints, line by line; whatever ends it otherwise than well fails the test.</summary>
    /// <param name="folder">Where it runs; null for the repository's.</param>
    public static IReadOnlyList<string> Run(string file, string? folder = null)
    {
        ProcessStartInfo start = new("dotnet", ["run", file])
        {
            UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true, RedirectStandardInput = true,
            WorkingDirectory = folder ?? ReferenceTable.Root, StandardOutputEncoding = Encoding.UTF8,
        };

        // What the build that runs these tests has set for itself is no business of another build.
        foreach (string name in start.Environment.Keys.Where(name => name.StartsWith("MSBUILD", StringComparison.OrdinalIgnoreCase)).ToArray())
        {
            start.Environment.Remove(name);
        }

        using Process process = Process.Start(start)!;
        process.StandardInput.Close();
        Task<string> output = process.StandardOutput.ReadToEndAsync(), messages = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(Patience))
        {
            process.Kill(entireProcessTree: true);
            Assert.Fail($"{file} runs longer than {Patience.TotalMinutes} min");
        }

        Assert.True(process.ExitCode == 0, $"{file} ended with {process.ExitCode}\n{output.Result}\n{messages.Result}");
        return [.. output.Result.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n')];
    }

    /// <summary>The pieces of code that a page shows, put together to one program: a line of dashes is printed after each.</summary>
    /// <param name="project">The library's folder and project under src.</param>
    public static string Joined(IEnumerable<string> pieces, string project = "FrontEnd")
    {
        List<string> usings = [], body = [];
        foreach (string piece in pieces)
        {
            foreach (string line in piece.Split('\n'))
            {
                (UsingLine().IsMatch(line) ? usings : body).Add(line);
            }

            body.Add($"Console.WriteLine(\"{Between}\");");
        }

        string library = Path.Combine(ReferenceTable.Root, "src", project, project + ".csproj");
        return $"#:project {library}\n#:property PublishAot=false\n{string.Join('\n', usings.Distinct())}\n{string.Join('\n', body)}\n";
    }

    /// <summary>Printed between two pieces.</summary>
    public const string Between = "----";

    [GeneratedRegex(@"^using [\w.]+;$", RegexOptions.None, 1000)]
    private static partial Regex UsingLine();
}
