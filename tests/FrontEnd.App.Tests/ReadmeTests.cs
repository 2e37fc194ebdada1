using FrontEnd.Documents.Tests;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>Every command that README.md shows is run, and every output that it shows is compared.</summary>
public sealed class ReadmeTests
{
    private const string FromSource = "dotnet run --project src/FrontEnd.App -- ";

    // These two build the whole solution and are run where it is built and published.
    private static readonly string[] NotRunHere = ["dotnet test --solution FrontEnd.sln", "dotnet publish src/FrontEnd.App -c Release -r linux-x64 -p:PublishAot=true"];

    private static readonly string[] Text = File.ReadAllLines(Path.Combine(Repository.Root, "README.md"));

    [Fact]
    public void Readme_CommandsForAFreshMachine_AreThoseKnownOrRun()
    {
        string[] commands = [.. Blocks("sh").SelectMany(block => block)];
        Assert.Contains(NotRunHere[0], commands);
        foreach (string command in commands.Where(command => !NotRunHere.Contains(command, StringComparer.Ordinal)))
        {
            Assert.StartsWith(FromSource, command, StringComparison.Ordinal);
            Assert.InRange(Shell.Run(command[FromSource.Length..].Split(' ')).Code, 0, 1);
        }
    }

    [Fact]
    public void Readme_OutputsShown_AreWhatTheCommandsPrint()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("frontend-readme-");
        try
        {
            int shown = 0;
            foreach (List<string> block in Blocks("console"))
            {
                Assert.StartsWith("$ ", block[0], StringComparison.Ordinal);
                int code = 0;
                for (int at = 0; at < block.Count;)
                {
                    string command = block[at++][2..];
                    int end = block.FindIndex(at, line => line.StartsWith("$ ", StringComparison.Ordinal)) is var next and >= 0 ? next : block.Count;
                    if (command.StartsWith("cc ", StringComparison.Ordinal) && CCompiler.Find() is null)
                    {
                        at = end;
                        continue;
                    }

                    string actual = string.Equals(command, "echo $?", StringComparison.Ordinal) ? $"{code}\n"
                        : command.StartsWith("cc ", StringComparison.Ordinal) ? CCompiler.Shell(command, folder.FullName) : Run(command, folder.FullName, ref code);
                    Compare(command, block[at..end], actual.TrimEnd('\n').Split('\n'));
                    at = end;
                    shown++;
                }
            }

            // Were the blocks not found, nothing would have been compared.
            Assert.True(shown >= 5, $"{shown} commands found");
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>The screen shown is the one that the screens' own test draws.</summary>
    [Fact]
    public void Readme_ScreenShown_IsTheOneDrawn()
    {
        string[] drawn = File.ReadAllLines(Path.Combine(Repository.Root, "tests", "FrontEnd.App.Tests", "Terminal", "Expected", "electrodes-80x24.txt"));
        Assert.Equal(drawn, Assert.Single(Blocks("screen")));
    }

    /// <summary>What a terminal would show. Files that a command writes go to a folder of the test, and its name is taken out again.</summary>
    private static string Run(string command, string folder, ref int code)
    {
        string[] words = command.Split(' ');
        Assert.Equal("frontend", words[0]);
        string prefix = folder + Path.DirectorySeparatorChar;
        string[] args = [.. words.Skip(1).Select((word, at) => words[at] is "-o" or "--qti" or "--schematic" or "--netlist" or "new" || File.Exists(prefix + word) ? prefix + word : word)];
        Outcome outcome = Shell.Run(args);
        code = outcome.Code;
        return (outcome.Output + outcome.Messages).Replace(prefix, "", StringComparison.Ordinal);
    }

    /// <summary>A line of … stands for any number of lines left out.</summary>
    private static void Compare(string command, List<string> shown, string[] actual)
    {
        int at = 0;
        bool mayJump = false;
        foreach (string line in shown)
        {
            if (line is "…")
            {
                mayJump = true;
                continue;
            }

            int found = Array.IndexOf(actual, line, at);
            Assert.True(found >= 0 && (mayJump || found == at), $"`{command}` does not print this where README.md shows it: {line}\nit prints: {(at < actual.Length ? actual[at] : "(end)")}");
            at = found + 1;
            mayJump = false;
        }

        Assert.True(mayJump || at == actual.Length, $"`{command}` prints more than README.md shows: {(at < actual.Length ? actual[at] : "")}");
    }

    private static IEnumerable<List<string>> Blocks(string kind)
    {
        List<string>? block = null;
        foreach (string line in Text)
        {
            if (block is null)
            {
                block = string.Equals(line, "```" + kind, StringComparison.Ordinal) ? [] : null;
            }
            else if (line is "```")
            {
                yield return block;
                block = null;
            }
            else
            {
                block.Add(line);
            }
        }
    }
}
