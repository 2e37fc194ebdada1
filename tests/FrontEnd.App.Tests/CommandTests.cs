using System.Text.Json;
using System.Text.RegularExpressions;
using FrontEnd.App.Commands;
using FrontEnd.Documents;
using FrontEnd.Documents.Tests;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>The commands as a shell sees them: exit codes, what goes to which stream, what is never done.</summary>
public sealed class CommandTests : IDisposable
{
    private const string Project = "FrontEnd.App.Tests";
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("frontend-test-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Theory]
    [InlineData("starter")]
    [InlineData("dry-headband")]
    public void Check_Design_PrintsTheExpectedText(string name)
    {
        Outcome outcome = Shell.Run("check", $"designs/{name}.toml", "--all"), brief = Shell.Run("check", $"designs/{name}.toml");
        ExpectedText.Matches(outcome.Output, Project, $"check-{name}.txt");
        Assert.Equal("", outcome.Messages);
        ExpectedText.Matches(brief.Output, Project, $"check-{name}-brief.txt");
        Assert.Equal(outcome.Code, brief.Code);
    }

    /// <summary>One screen: what must be said, every verdict, every finding, what next.</summary>
    [Fact]
    public void Check_ByDefault_FitsOneScreen_AndHidesNoVerdictAndNoFinding()
    {
        string all = Shell.Run("check", "designs/hobbyist.toml", "--all", "--no-advice").Output, brief = Shell.Run("check", "designs/hobbyist.toml", "--no-advice").Output;
        Assert.True(brief.Split('\n').Length <= 30, brief);
        Assert.Equal(Regex.Count(all, "^[+~x.?] (pass|marginal|fail|not judged|open)", RegexOptions.Multiline), Regex.Count(brief, "^[+~x.?] (pass|marginal|fail|not judged|open)", RegexOptions.Multiline));
        Assert.Contains("frontend check designs/hobbyist.toml --all", brief, StringComparison.Ordinal);

        string worn = Shell.Run("check", "designs/dry-headband.toml", "--no-advice").Output;
        Assert.Contains("NOT TO BE WORN", worn, StringComparison.Ordinal);
        Assert.Contains("FE0407", worn, StringComparison.Ordinal);
        Assert.Contains("FE0406", worn, StringComparison.Ordinal);
    }

    /// <summary>A line each, and the worst of their codes; what cannot be used hides nothing of the others.</summary>
    [Fact]
    public void Check_OfSeveral_GivesALineEach_AndTheWorstCode()
    {
        Outcome met = Shell.Run("check", "designs/hobbyist.toml", "designs/mixed-headset.toml");
        Assert.Equal(0, met.Code);
        Assert.StartsWith("~ marginal  designs/hobbyist.toml ", met.Output, StringComparison.Ordinal);
        Assert.Equal(1, Shell.Run("check", "designs/hobbyist.toml", "designs/dry-headband.toml").Code);
        Outcome wrong = Shell.Run("check", "designs/wrong-in-six-ways.toml", "designs/dry-headband.toml", "designs/no-such.toml");
        Assert.Equal(2, wrong.Code);
        Assert.Contains("x fail      designs/dry-headband.toml", wrong.Output, StringComparison.Ordinal);
        Assert.Contains("FE0140", wrong.Output, StringComparison.Ordinal);
        using JsonDocument json = JsonDocument.Parse(Shell.Run("check", "designs/hobbyist.toml", "designs/dry-headband.toml", "--json", "--no-advice").Output);
        Assert.Equal(2, json.RootElement.GetArrayLength());
    }

    [Fact]
    public void Check_Quiet_SaysItByItsCode()
    {
        Outcome outcome = Shell.Run("check", "-q", "designs/dry-headband.toml");
        Assert.Equal((1, "", ""), (outcome.Code, outcome.Output, outcome.Messages));
        Assert.Contains("FE0140", Shell.Run("check", "-q", "designs/no-such.toml").Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_OfTheStandardInput_IsThatOfTheFile()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "needs a POSIX shell");
        (int code, string output, string messages) = Shell.Process("sh", "-c", $"dotnet '{Shell.Program}' check - --all < designs/hobbyist.toml");
        Assert.Equal((0, ""), (code, messages));
        Assert.Equal(Shell.Run("check", "designs/hobbyist.toml", "--all").Output, output);
    }

    /// <summary>A file of another kind is told as one, with the command that reads it, and nothing else is said.</summary>
    [Theory]
    [InlineData("designs/hobbyist-requirements.toml", "a file of requirements", "frontend size designs/hobbyist-requirements.toml")]
    [InlineData("designs/classroom/homework.toml", "a homework's file", "frontend problems --homework designs/classroom/homework.toml")]
    [InlineData("designs/classroom/own-problems.toml", "a file of problem templates", "frontend problems --templates designs/classroom/own-problems.toml --list")]
    [InlineData("reference/parts/electrodes/dry-comb.toml", "a part card", "frontend cards reference/parts/electrodes/dry-comb.toml")]
    public void Check_OfAnotherKindOfFile_NamesWhatReadsIt(string file, string what, string command)
    {
        Outcome outcome = Shell.Run("check", file);
        Assert.Equal(2, outcome.Code);
        Assert.Equal(["FE1085"], Regex.Matches(outcome.Messages, "FE[0-9]{4}", RegexOptions.None, TimeSpan.FromSeconds(5)).Select(code => code.Value));
        Assert.Contains($"`{file}` is {what}, not a design", outcome.Messages, StringComparison.Ordinal);
        Assert.Contains($"`{command}`", outcome.Messages, StringComparison.Ordinal);
        string[] call = command.Split(' ')[1..];
        Assert.NotEqual(2, Shell.Run(call is ["problems", "--homework", ..] ? [.. call, "--list"] : call).Code);
    }

    /// <summary>A homework's file is named as a design is, or by its option.</summary>
    [Fact]
    public void Problems_OfAHomeworksFile_TakeItWithAndWithoutTheOption()
    {
        const string Plan = "designs/classroom/homework.toml";
        string plain = Path.Combine(_folder.FullName, "plain"), named = Path.Combine(_folder.FullName, "named");
        Assert.Equal(0, Shell.Run("problems", Plan, "-o", plain).Code);
        Assert.Equal(0, Shell.Run("problems", "--homework", Plan, "-o", named).Code);
        Assert.Equal(File.ReadAllText(Path.Combine(named, "problems.md")), File.ReadAllText(Path.Combine(plain, "problems.md")));
        Outcome twice = Shell.Run("problems", Plan, "--homework", Plan, "--list");
        Assert.Equal(2, twice.Code);
        Assert.Contains("named twice", twice.Messages, StringComparison.Ordinal);
    }

    /// <summary>An empty standard input is no design, alone or among several; named twice it is the same design twice.</summary>
    [Fact]
    public void Check_OfTheStandardInput_NeverJudgesNothing()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "needs a POSIX shell");
        (int code, string output, string messages) = Shell.Process("sh", "-c", $"dotnet '{Shell.Program}' check - < /dev/null");
        Assert.Equal((2, ""), (code, output));
        Assert.Equal(["FE1085"], Regex.Matches(messages, "FE[0-9]{4}", RegexOptions.None, TimeSpan.FromSeconds(5)).Select(match => match.Value));
        (code, output, _) = Shell.Process("sh", "-c", $"dotnet '{Shell.Program}' check - designs/hobbyist.toml < /dev/null");
        Assert.Equal(2, code);
        Assert.StartsWith("x error", output, StringComparison.Ordinal);
        (code, output, _) = Shell.Process("sh", "-c", $"dotnet '{Shell.Program}' check - - < designs/hobbyist.toml");
        Assert.Equal(0, code);
        Assert.Equal(2, Regex.Count(output, "(?m)^~ marginal  -", RegexOptions.None, TimeSpan.FromSeconds(5)));
    }

    /// <summary>Every command and option stands on the manual page, and the formatter finds nothing to complain of.</summary>
    [Fact]
    public void Manual_HasEveryCommand_AndIsGoodForTheFormatter()
    {
        string page = Shell.Run("manual").Output;
        using StringWriter nowhere = new();
        foreach (System.CommandLine.Command command in CommandLine.Makers.Select(make => make(new Outlet(nowhere, nowhere))))
        {
            Assert.Contains($".SS {command.Name}", page, StringComparison.Ordinal);
            Assert.All(command.Options, option => Assert.Contains(option.Name.Replace("-", "\\-", StringComparison.Ordinal), page, StringComparison.Ordinal));
            Assert.All(command.Options.Where(option => option is { HasDefaultValue: true } and not System.CommandLine.Option<bool>), option => Assert.DoesNotContain("default:", option.Description!, StringComparison.Ordinal));
        }

        Assert.Contains("number of builds; default: 10000", page, StringComparison.Ordinal);
        Assert.SkipWhen(!File.Exists("/usr/bin/man"), "needs man");
        (_, _, string complaints) = Shell.Process("man", "--warnings", "-E", "UTF-8", "-l", "-Tutf8", "-Z", Write("frontend.1", page));
        Assert.Equal("", complaints);
    }

    [Fact]
    public void Check_WithoutDesign_TakesTheStarter()
    {
        Outcome outcome = Shell.Run("check", "--all"), named = Shell.Run("check", "--all", "designs/starter.toml");
        Assert.Equal(named.Output, outcome.Output);
        Assert.Equal(named.Code, outcome.Code);
    }

    [Fact]
    public void Check_RequirementsMet_IsZero()
    {
        // Limits so wide that the minimal design meets them all.
        string path = Write("met.toml", File.ReadAllText(Path.Combine(Repository.Designs, "minimal.toml"))
            + "\n[requirements]\nmains-at-electrodes = \"1 V\"\nmains-recorded = \"1 V\"\noffset = \"0 V\"\nheadroom = \"0 dB\"\nfold = \"0 dB\"\nfault-current = \"1 A\"\nnoise = \"1 V\"\nphase-margin = \"0°\"\ndriven-ground-current = \"1 A\"\n");
        Outcome outcome = Shell.Run("check", path);
        Assert.True(outcome.Code == 0, outcome.Messages + outcome.Output);
    }

    [Fact]
    public void Check_RequirementNotMet_IsOne() => Assert.Equal(1, Shell.Run("check", "designs/dry-headband.toml").Code);

    [Fact]
    public void Check_UnusableDesign_IsTwoWithFindingsOnlyOnTheMessages()
    {
        Outcome outcome = Shell.Run("check", "designs/wrong-in-six-ways.toml");
        Assert.Equal(2, outcome.Code);
        Assert.Equal("", outcome.Output);
        foreach (string code in new[] { "FE0126", "FE0305", "FE0102", "FE0121", "FE0110", "FE0306" })
        {
            Assert.Contains($"{code} error: ", outcome.Messages, StringComparison.Ordinal);
        }

        Assert.Contains("  at       designs/wrong-in-six-ways.toml:", outcome.Messages, StringComparison.Ordinal);
        Assert.Contains("  do       ", outcome.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_MissingFile_IsTwo()
    {
        Outcome outcome = Shell.Run("check", "designs/no-such.toml");
        Assert.Equal(2, outcome.Code);
        Assert.Contains("FE0140 error", outcome.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_Json_IsJsonAloneAndReadsBack()
    {
        Outcome outcome = Shell.Run("check", "--json", "designs/dry-headband.toml");
        Assert.Equal(1, outcome.Code);
        using JsonDocument json = JsonDocument.Parse(outcome.Output);
        string path = Write("back.json", json.RootElement.GetProperty("design").GetRawText());
        using JsonDocument again = JsonDocument.Parse(Shell.Run("check", "--json", path).Output);
        Assert.Equal(json.RootElement.GetProperty("results").GetRawText(), again.RootElement.GetProperty("results").GetRawText());

        // The whole output is a design file too: its figures are not read. All is given in it, so that it uses no defaults.
        using JsonDocument whole = JsonDocument.Parse(Shell.Run("check", "--json", Write("whole.json", outcome.Output)).Output);
        Assert.Equal(
            json.RootElement.EnumerateObject().Where(member => member.Name is not ("defaults" or "defaults_count")).Select(member => (member.Name, member.Value.GetRawText())),
            whole.RootElement.EnumerateObject().Where(member => member.Name is not ("defaults" or "defaults_count")).Select(member => (member.Name, member.Value.GetRawText())));
    }

    [Fact]
    public void Check_JsonOfUnusableDesign_HasFindingsAndNoFigures()
    {
        Outcome outcome = Shell.Run("check", "--json", "designs/wrong-in-six-ways.toml");
        Assert.Equal(2, outcome.Code);
        using JsonDocument json = JsonDocument.Parse(outcome.Output);
        Assert.Empty(json.RootElement.GetProperty("results").EnumerateArray());
        Assert.Contains(json.RootElement.GetProperty("findings").EnumerateArray(), finding => finding.GetProperty("code").GetString() is "FE0102");
    }

    [Fact]
    public void Check_NoAdvice_LeavesTheVerdictsAsTheyAre()
    {
        string with = Shell.Run("check", "designs/dry-headband.toml").Output, without = Shell.Run("check", "--no-advice", "designs/dry-headband.toml").Output;
        Assert.Contains("helps most:", with, StringComparison.Ordinal);
        Assert.DoesNotContain("helps most:", without, StringComparison.Ordinal);
        Assert.Contains("x fail", without, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("FE0007", "check", "--jsn")]                                   // near --json, and where a design could stand
    [InlineData("FE0007", "check", "designs/starter.toml", "--colour")]
    [InlineData("FE0001", "chek")]
    [InlineData("FE0001", "check", "--watch", "a.toml", "b.toml")]
    [InlineData("FE0008", "schema", "desing")]
    [InlineData("FE0008", "completion", "tcsh")]
    [InlineData("FE0001", "explain", "designs/starter.toml")]
    [InlineData("FE0001", "sheet", "designs/starter.toml")]
    [InlineData("FE0002", "explain", "designs/starter.toml", "noise.totl")]
    [InlineData("FE0004", "sheet", "designs/starter.toml", "-o", "sheet.odt")]
    [InlineData("FE0140", "check", "--", "--json")]                            // behind -- it is a file's name
    public void Call_ThatCannotBeUsed_IsTwoWithItsCode(string code, params string[] args)
    {
        Outcome outcome = Shell.Run(args);
        Assert.Equal(2, outcome.Code);
        Assert.Equal("", outcome.Output);
        Assert.StartsWith($"{code} error: ", outcome.Messages, StringComparison.Ordinal);
        Assert.Equal(1, outcome.Messages.Split(" error: ").Length - 1);
    }

    [Fact]
    public void Explain_MisspeltId_NamesTheNearest() => Assert.Contains("`noise.total`", Shell.Run("explain", "designs/starter.toml", "noise.totl").Messages, StringComparison.Ordinal);

    [Fact]
    public void Explain_NoiseTotal_ShowsEquationHandFigureAndSensitivities()
    {
        Outcome outcome = Shell.Run("explain", "designs/dry-headband.toml", "noise.total");
        Assert.Equal(0, outcome.Code);
        ExpectedText.Matches(outcome.Output, Project, "explain-noise.total.txt");
    }

    [Fact]
    public void New_File_HoldsTheStarterAndIsNeverWrittenOver()
    {
        string path = Path.Combine(_folder.FullName, "mine.toml");
        Outcome first = Shell.Run("new", path);
        Assert.Equal(0, first.Code);
        Assert.Equal("", first.Output);
        Assert.Equal(DesignDocument.StarterText, File.ReadAllText(path));
        File.WriteAllText(path, "name = \"work of a week\"\n");
        Outcome second = Shell.Run("new", path);
        Assert.Equal(2, second.Code);
        Assert.Contains("FE0003 error", second.Messages, StringComparison.Ordinal);
        Assert.Equal("name = \"work of a week\"\n", File.ReadAllText(path));
        Assert.Single(Directory.GetFiles(_folder.FullName));
    }

    [Fact]
    public void New_FolderThatIsNotThere_IsTwo() => Assert.Equal(2, Shell.Run("new", Path.Combine(_folder.FullName, "no", "mine.toml")).Code);

    [Fact]
    public void Sheet_AllFormats_AreWrittenAtOnce()
    {
        string[] files = [.. Documents.Sheets.SheetFormats.Extensions.Select(extension => Path.Combine(_folder.FullName, "sheet" + extension))];
        Outcome outcome = Shell.Run(["sheet", "designs/gel-cap.toml", .. files.SelectMany(file => new[] { "-o", file })]);
        Assert.True(outcome.Code == 0, outcome.Messages);
        Assert.Equal("", outcome.Output);
        Assert.All(files, file => Assert.True(new FileInfo(file).Length > 500));
    }

    [Fact]
    public void Sheet_SameFileTwice_IsTwoAndWritesNothing()
    {
        string file = Path.Combine(_folder.FullName, "sheet.md");
        Assert.Equal(2, Shell.Run("sheet", "designs/gel-cap.toml", "-o", file, "-o", Path.Combine(_folder.FullName, ".", "sheet.md")).Code);
        Assert.Empty(Directory.GetFiles(_folder.FullName));
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("check", "--help")]
    [InlineData("sheet", "-h")]
    [InlineData("explain", "--help")]
    [InlineData("new", "--help")]
    [InlineData("--version")]
    public void Help_Asked_GoesToTheResults(params string[] args)
    {
        Outcome outcome = Shell.Run(args);
        Assert.Equal(0, outcome.Code);
        Assert.NotEqual("", outcome.Output);
        Assert.Equal("", outcome.Messages);
    }

    [Fact]
    public void NoArguments_WithoutTerminal_IsHelp_AndWithOneOpensIt()
    {
        Assert.Contains("check", Shell.Run().Output, StringComparison.Ordinal);
        Assert.Equal(7, Shell.Run([], () => 7).Code);
        Assert.Contains("check", Shell.Run([], () => null).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Fault_OfOurs_IsSeventyInOneMessage()
    {
        Outcome outcome = Shell.Run([], () => throw new InvalidOperationException("a bulb broke"));
        Assert.Equal(70, outcome.Code);
        Assert.StartsWith("FE0070 error: the program failed: a bulb broke\n", outcome.Messages, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", outcome.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void Output_HasNoControlCharacters_SoThatNoColourIsEverSent()
    {
        foreach (string[] args in new string[][] { ["check", "designs/dry-headband.toml"], ["explain", "designs/dry-headband.toml", "mains.total"], ["--help"], ["check", "designs/wrong-in-six-ways.toml"] })
        {
            Outcome outcome = Shell.Run(args);
            Assert.DoesNotContain(outcome.Output + outcome.Messages, letter => char.IsControl(letter) && letter != '\n' && letter != '\r');
        }
    }

    [Fact]
    public void Process_ReaderThatLeaves_IsNoCrash()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "needs a POSIX shell");
        (int code, string output, string messages) = Shell.Process("sh", "-c", $"dotnet '{Shell.Program}' check designs/dry-headband.toml | head -n 1");
        Assert.Equal(0, code);
        Assert.Single(output.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.Equal("", messages);
    }

    [Fact]
    public void Process_AnyLocale_WritesUtf8AndTheVerdictsExitCode()
    {
        (int code, string output, string messages) = Shell.Process("dotnet", Shell.Program, "check", "--no-advice", "designs/dry-headband.toml");
        Assert.Equal(1, code);
        Assert.Contains("µV", output, StringComparison.Ordinal);
        Assert.Equal("", messages);
    }

    private string Write(string name, string text)
    {
        string path = Path.Combine(_folder.FullName, name);
        File.WriteAllText(path, text);
        return path;
    }
}
