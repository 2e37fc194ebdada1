using System.CommandLine;
using FrontEnd.App.Commands;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>What a shell is answered when a call is half typed. What zsh, fish and PowerShell make of it is tried by hand, with
/// <c>tests/completion-in-shells.sh</c>.</summary>
public sealed class CompletionTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("frontend-test-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Theory]
    [InlineData("frontend s", "samples schema sheet sites size spread")]
    [InlineData("/usr/bin/frontend sc", "schema")]
    [InlineData("frontend schema ", "design homework sizing")]
    [InlineData("frontend cards dry", "dry-comb dry-forehead dry-multipin")]
    [InlineData("frontend cards new b", "buffer")]
    [InlineData("frontend cards n", "new")]
    [InlineData("frontend lesson al", "aliasing")]
    [InlineData("frontend check --q", "--quiet")]
    [InlineData("frontend completion p", "powershell")]
    [InlineData("frontend glossary driven", "driven ground")]
    [InlineData("frontend glossary \"driven g", "driven ground")]
    [InlineData("frontend glossary driven\\ g", "driven ground")]
    [InlineData("frontend filter --family c", "chebyshev critically-damped")]
    [InlineData("frontend filter --family=el", "--family=elliptic")]
    [InlineData("frontend filter notch --topology ", "state-variable twin-t")]
    [InlineData("frontend filter fir --word q", "q15 q31")]
    [InlineData("frontend samples x.toml --signal blink,al", "blink,alpha")]
    [InlineData("frontend samples x.toml --without hu", "hum")]
    [InlineData("frontend spread x.toml --distribution ", "normal uniform")]
    [InlineData("frontend pairs --band b", "beta")]
    [InlineData("frontend pairs --under O", "O1 O2 Oz")]
    [InlineData("frontend pairs --sites \"Fz O", "Fz O1 Fz O2 Fz Oz")]
    [InlineData("frontend pairs --sites Fz,O", "Fz,O1 Fz,O2 Fz,Oz")]
    [InlineData("frontend pairs --sites Fz-O", "Fz-O1 Fz-O2 Fz-Oz")]
    [InlineData("frontend pairs --sites=Fz,O1,Oz", "--sites=Fz,O1,Oz")]
    [InlineData("frontend cards -- dry-m", "dry-multipin")]
    [InlineData("frontend problems --paper l", "letter")]
    [InlineData("frontend bench designs/starter.toml --test sh", "shorted")]
    public void Completion_OfALine_IsWhatMayFollow(string line, string expected) =>
        Assert.Equal(expected, string.Join(' ', Answers(line).Order(StringComparer.Ordinal)));

    /// <summary>Nothing is said where a file, a number or nothing at all is next: the shell has its own answers.</summary>
    [Theory]
    [InlineData("frontend check ")]
    [InlineData("frontend check -- -")]
    [InlineData("frontend check -- --q")]
    [InlineData("frontend glossary driven -- ")]
    [InlineData("frontend check designs/starter.toml ")]
    [InlineData("frontend explain ")]
    [InlineData("frontend sheet x.toml -o ")]
    [InlineData("frontend size --take ")]
    [InlineData("frontend filter --order ")]
    [InlineData("frontend nonsense ")]
    [InlineData("frontend filter --nonsense=")]
    public void Completion_WhereTheProgramKnowsNothing_IsEmpty(string line) => Assert.Empty(Answers(line));

    /// <summary>The results are those of the design that the line names; without one that can be used, those that every design has.</summary>
    [Fact]
    public void Completion_OfAnId_IsOfTheNamedDesign()
    {
        Assert.Equal(["noise.total"], Answers("frontend explain no-such.toml noise.to"));
        Assert.DoesNotContain("noise.source.anti-alias-1-resistors", Answers("frontend explain no-such.toml noise.source."));
        string folder = Path.Combine(_folder.FullName, "my designs");
        Directory.CreateDirectory(folder);
        File.Copy("designs/starter.toml", Path.Combine(folder, "a b.toml"));
        Assert.Contains("noise.source.anti-alias-1-resistors", Answers($"frontend explain \"{folder}/a b.toml\" noise.source."));
        Assert.All(Answers($"frontend explain '{folder}/a b.toml' noise."), id => Assert.Equal(0, Shell.Run("explain", $"{folder}/a b.toml", id).Code));
    }

    /// <summary>Whatever values an option or argument takes: the program tells them, or they are numbers, names of the user's own, or files.</summary>
    [Fact]
    public void Completion_OfEveryOptionWithWords_KnowsThem()
    {
        string[] free = ["file", "folder", "N", "F", "F[,F]", "dB", "number", "day", "length", "area", "voltage", "value", "design", "pair"];
        string[] named = ["--builds", "--seed", "--yield", "--measured", "--channel", "--fixture", "--narrow", "--length", "--rates", "--output", "--take", "a", "b", "design", "file", "key", "answers", "requirements", "homework", "--to"];
        using StringWriter nowhere = new();
        Assert.All(CommandLine.Makers.Select(make => make(new Outlet(nowhere, nowhere))).SelectMany(Tree), command =>
        {
            Assert.All(command.Options.Where(option => option.ValueType != typeof(bool) && !free.Contains(option.HelpName) && !named.Contains(option.Name)),
                option => Assert.True(Completions.Knows(command, option.Name), $"{command.Name} {option.Name}"));
            Assert.All(command.Arguments.Where(argument => !named.Contains(argument.Name)), argument => Assert.True(Completions.Knows(command, argument.Name), $"{command.Name} {argument.Name}"));
        });
    }

    /// <summary>The table of values names nothing that is not there.</summary>
    [Fact]
    public void Completion_EveryNameOfTheTable_IsOfACommand()
    {
        using StringWriter nowhere = new();
        HashSet<string> there = [.. CommandLine.Makers.Select(make => make(new Outlet(nowhere, nowhere))).SelectMany(Tree)
            .SelectMany(command => command.Options.Select(option => option.Name).Concat(command.Arguments.Select(argument => argument.Name)))];
        Assert.All(Completions.Names, name => Assert.Contains(name, there));
    }

    /// <summary>Words come out of a line as they went in, however they are quoted.</summary>
    [Property(MaxTest = 300)]
    public void Line_OfQuotedWords_IsTheWords(NonEmptyArray<NonNull<string>> words, bool single)
    {
        string[] clean = [.. words.Get.Select(word => string.Concat(word.Get.Where(letter => !char.IsControl(letter) && !char.IsSurrogate(letter))))];
        string Quoted(string word) => single ? $"'{word.Replace("'", "'\"'\"'", StringComparison.Ordinal)}'"
            : $"\"{word.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";
        CompletionLine line = CompletionLine.Of("frontend " + string.Join(' ', clean.Select(Quoted)));
        Assert.Equal(clean, line.Before.Append(line.Word));
        Assert.Equal("", CompletionLine.Of("frontend " + string.Join(' ', clean.Select(Quoted)) + " ").Word);
    }

    [Theory]
    [InlineData("bash", "complete -o bashdefault")]
    [InlineData("zsh", "#compdef frontend")]
    [InlineData("fish", "complete -c frontend")]
    [InlineData("powershell", "Register-ArgumentCompleter")]
    public void Completion_OfAShell_IsItsScript(string shell, string line) => Assert.Contains(line, Shell.Run("completion", shell).Output, StringComparison.Ordinal);

    /// <summary>Bash runs the script: the function that it defines completes a word, quotes what needs it, and puts in no word twice.</summary>
    [Theory]
    [InlineData("frontend les", "frontend les", "lesson")]
    [InlineData("frontend glossary driven", "frontend glossary driven", "driven\\ ground")]
    [InlineData("frontend filter --family=el", "frontend filter --family = el", "elliptic")]
    public void Completion_InBash_CompletesAWord(string line, string words, string expected)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows() || !File.Exists("/bin/bash"), "needs bash");
        string script = Path.Combine(_folder.FullName, "frontend.bash");
        File.WriteAllText(script, Shell.Run("completion", "bash").Output);
        string call = $"frontend() {{ dotnet '{Shell.Program}' \"$@\"; }}; source '{script}'; COMP_LINE='{line}'; COMP_POINT={line.Length}; COMP_WORDS=({words}); COMP_CWORD={words.Count(letter => letter == ' ')}; _frontend; echo \"${{COMPREPLY[@]}}\"";
        Assert.Equal(expected + "\n", Shell.Process("/bin/bash", "-c", call).Output);
    }

    private static IEnumerable<Command> Tree(Command command) => [command, .. command.Subcommands.SelectMany(Tree)];

    private static string[] Answers(string line) => Shell.Run($"[suggest:{line.Length}]", line).Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
}
