using System.CommandLine;
using System.Text.Json;
using System.Xml.Linq;
using FrontEnd.App.Commands;
using FrontEnd.Documents;
using FrontEnd.Documents.Reading;
using FrontEnd.Documents.Tests;
using FrontEnd.Findings;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>Every command's <c>--json</c> is one object that says first which command wrote it and in which version.</summary>
public class JsonEnvelopeTests
{
    private static readonly string Version = XDocument.Load(Path.Combine(Repository.Root, "Directory.Build.props")).Descendants("Version").Single().Value;

    /// <summary>A call of each command that has <c>--json</c>, and the first member of its own.</summary>
    public static TheoryData<string, string> Calls => new()
    {
        { "check designs/starter.toml --no-advice", "design" },
        { "compare designs/starter.toml designs/starter.toml", "from_design" },
        { "spread designs/starter.toml --builds 8", "design" },
        { "rates designs/starter.toml --rates 500", "design" },
        { "bench designs/starter.toml", "design" },
        { "explain designs/starter.toml noise.total", "design" },
        { "samples designs/minimal.toml --length 8s", "design" },
        { "sites", "head" },
        { "pairs --sites O1-ears --under O1", "design" },
        { "problems --list", "count" },
        { "glossary", "terms" },
        { "cards", "count" },
        { "cards dry-comb", "count" },
        { "lesson", "count" },
        { "lesson aliasing", "lesson" },
        { "filter --family bessel --shape low-pass --order 4 --corner 40Hz", "sections" },
        { "size designs/hobbyist-requirements.toml", "name" },
        { "size --as-built designs/hobbyist.toml", "name" },
        { "sheet designs/starter.toml -o {0}/sheet.md", "files" },
        { "new {0}/new.toml", "files" },
        { "coefficients designs/hobbyist.toml -o {0}/filters.h", "files" },
        { "schema design -o {0}/design.schema.json", "files" },
        { "manual -o {0}", "files" },
        { "problems --count 2 -o {0}/homework", "seed" },
        { "cards new electrode {0}/mine.toml", "file" },
        { "filter fir --shape low-pass --pass 40Hz --stop 80Hz --ripple 1dB --attenuation 20dB --rate 500Hz", "kind" },
        { "filter notch --rate 500Hz", "kind" },
        { "filter comb --rate 500Hz", "kind" },
        { "filter sinc --rate 500Hz", "kind" },
    };

    /// <summary>Calls that write files, each way of writing of each command among them; {0} is a folder of its own, {1} one with a homework in it.</summary>
    public static TheoryData<string> Writing =>
    [
        "sheet designs/minimal.toml -o {0}/a.md -o {0}/b.html -o {0}/c.csv -o {0}/d.json -o {0}/e.pdf --schematic {0}/f.svg --netlist {0}/g.csv",
        "new {0}/new.toml", "new {0}/new.json --bought", "cards new op-amp {0}/card.toml",
        "coefficients designs/hobbyist.toml -o {0}/filters.h",
        "filter --family bessel --shape low-pass --order 2 --corner 40Hz --rate 500Hz -o {0}/a.h",
        "filter fir --shape low-pass --pass 40Hz --stop 80Hz --ripple 1dB --attenuation 20dB --rate 500Hz -o {0}/a.csv",
        "filter notch --rate 500Hz -o {0}/a.json", "filter comb --rate 500Hz -o {0}/a.h", "filter sinc --rate 500Hz -o {0}/a.h",
        "problems --count 2 -o {0}/homework", "problems --count 3 --students designs/classroom/class.csv --secret designs/classroom/secret.txt -o {0}/homework --qti {0}/q.zip --bank {0}/b.csv",
        "problems --count 2 --again -o {1}", "problems --count 2 --qti {0}/q.zip", "problems --count 2 --bank {0}/b.csv",
        "mark {1}/key/key.json {1}/answers-blank.csv -o {0}/marks.csv -o {0}/marks.html -o {0}/marks.pdf",
        "sites --svg {0}/head.svg", "pairs --sites O1-ears --under O1 --map {0}/map.svg", "pairs --sites O1-ears --under O1 --map {0}/map.txt",
        "lesson aliasing -o {0}/l.html -o {0}/l.pdf -o {0}/l.toml",
        "samples designs/minimal.toml --length 8s --without folded -o {0}/a.edf -o {0}/a.csv -o {0}/a.svg",
        "size designs/hobbyist-requirements.toml -o {0}/d.toml", "size --as-built designs/hobbyist.toml -o {0}/d.toml",
        "bench designs/bought-headband.toml --measured {1}/recording.csv --fixture shorted --narrow {0}/n.toml",
        "schema homework -o {0}/s.json", "manual -o {0}",
    ];

    /// <summary>Options and arguments that name a file or a folder to write.</summary>
    private static readonly string[] Written = ["--output", "--schematic", "--netlist", "--qti", "--bank", "--svg", "--map", "--narrow"];

    /// <summary>Those that name one to read.</summary>
    private static readonly string[] Read = ["--prices", "--secret", "--homework", "--students", "--templates", "--noise", "--current-noise", "--impedance", "--design", "--measured", "--beside", "--as-built", "--op-amp"];

    /// <summary>Every file that stands there afterwards and did not before, or not so, is named, and nothing is told beside the JSON.</summary>
    [Theory]
    [MemberData(nameof(Writing))]
    public void Json_OfACallThatWrites_NamesEveryFile(string call)
    {
        using TemporaryFolder folder = new(), homework = new();
        Assert.Equal(0, Shell.Run("problems", "--count", "1", "-o", homework.Path).Code);
        BenchNarrowingTests.White(homework, 2.5);
        Dictionary<string, DateTime> before = Files(folder, homework);
        string[] words = [.. call.Split(' ').Select(word => word.Replace("{0}", folder.Path, StringComparison.Ordinal).Replace("{1}", homework.Path, StringComparison.Ordinal))];
        Outcome outcome = Shell.Run([.. words, "--json"]);
        Assert.True(outcome.Code == 0, outcome.Messages);
        using JsonDocument json = JsonDocument.Parse(outcome.Output);
        string[] named = [.. json.RootElement.GetProperty("files").EnumerateArray().Select(file => Path.GetFullPath(file.GetString()!))];
        string[] kept = json.RootElement.TryGetProperty("kept", out JsonElement moved) ? [.. moved.EnumerateArray().Select(file => Path.GetFullPath(file.GetString()!))] : [];
        string[] wrote = [.. Files(folder, homework).Where(file => !before.TryGetValue(file.Key, out DateTime then) || then != file.Value).Select(file => file.Key).Except(kept)];
        Assert.NotEmpty(wrote);
        Assert.Equal(wrote.Order(StringComparer.Ordinal), named.Order(StringComparer.Ordinal));
        Assert.DoesNotContain("wrote", outcome.Messages, StringComparison.Ordinal);
    }

    /// <summary>Marks need no file: every mark stands in the JSON, and in plain text how the class did.</summary>
    [Fact]
    public void Mark_WithoutAFile_PrintsTheMarksAndWritesNothing()
    {
        using TemporaryFolder homework = new();
        Assert.Equal(0, Shell.Run("problems", "--count", "2", "-o", homework.Path).Code);
        Dictionary<string, DateTime> before = Files(homework);
        string[] call = ["mark", Path.Combine(homework.Path, "key", "key.json"), Path.Combine(homework.Path, "answers-blank.csv")];
        Outcome json = Shell.Run([.. call, "--json"]), text = Shell.Run(call);
        Assert.Equal((0, 0), (json.Code, text.Code));
        using JsonDocument document = JsonDocument.Parse(json.Output);
        Assert.NotEqual(0, document.RootElement.GetProperty("marks").GetArrayLength());
        Assert.False(document.RootElement.TryGetProperty("files", out _));
        Assert.Contains("question", text.Output, StringComparison.Ordinal);
        Assert.Equal(before, Files(homework));
    }

    /// <summary>What was drawn and whose sheet is which, but nothing that a student must not see.</summary>
    [Fact]
    public void Problems_Json_HasCodesOfTheSheetsAndNoAnswer()
    {
        using TemporaryFolder folder = new();
        string secret = File.ReadAllText(Path.Combine(Repository.Root, "designs", "classroom", "secret.txt")).Trim();
        string text = Shell.Run("problems", "--count", "5", "--seed", "7", "--students", "designs/classroom/class.csv", "--secret", "designs/classroom/secret.txt", "-o", folder.Path, "--json").Output;
        using JsonDocument json = JsonDocument.Parse(text);
        JsonElement root = json.RootElement, sheets = root.GetProperty("sheets");
        Assert.Equal((7UL, true, 5), (root.GetProperty("seed").GetUInt64(), root.GetProperty("secret").GetBoolean(), root.GetProperty("questions").GetArrayLength()));
        Assert.NotEqual(0, sheets.GetArrayLength());
        foreach (JsonElement sheet in sheets.EnumerateArray())
        {
            Assert.Contains(sheet.GetProperty("code").GetString()!, File.ReadAllText(Path.Combine(folder.Path, "sheets", sheet.GetProperty("student").GetString() + ".md")), StringComparison.Ordinal);
        }

        Assert.DoesNotContain(secret, text, StringComparison.Ordinal);
        using JsonDocument key = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder.Path, "key", "key.json")));
        Assert.DoesNotContain($"\"{key.RootElement.GetProperty("code").GetString()}\"", text, StringComparison.Ordinal);
        foreach (JsonElement question in key.RootElement.GetProperty("sheets").EnumerateArray().SelectMany(sheet => sheet.GetProperty("questions").EnumerateArray()))
        {
            Assert.DoesNotContain($"\"{question.GetProperty("answer").GetString()}\"", text, StringComparison.Ordinal);
        }

        Assert.Equal(["key.html", "key.json", "key.md", "key.pdf"], root.GetProperty("with_answers").EnumerateArray().Select(file => Path.GetFileName(file.GetString())).Order(StringComparer.Ordinal));
    }

    /// <summary>What is no answer is not printed as one: the call is refused.</summary>
    [Theory]
    [InlineData("completion bash")]
    [InlineData("manual")]
    [InlineData("schema design")]
    public void Json_OfWhatIsNoAnswer_IsRefused(string call)
    {
        Outcome outcome = Shell.Run([.. call.Split(' '), "--json"]);
        Assert.Equal((2, ""), (outcome.Code, outcome.Output));
        Assert.StartsWith("FE1083 error: `--json` does not apply to ", outcome.Messages, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Calls))]
    public void Json_AnyCommand_BeginsWithCommandAndVersion(string call, string member)
    {
        using TemporaryFolder folder = new();
        string[] words = [.. call.Split(' ').Select(word => word.Replace("{0}", folder.Path, StringComparison.Ordinal))];
        using JsonDocument json = JsonDocument.Parse(Shell.Run([.. words, "--json"]).Output);
        JsonProperty[] first = [.. json.RootElement.EnumerateObject().Take(3)];
        Assert.Equal(["command", "version", member], first.Select(one => one.Name));
        Assert.Equal(words is ["filter", "fir" or "notch" or "comb" or "sinc", ..] ? $"filter {words[1]}" : words[0], first[0].Value.GetString());
        Assert.Equal(Version, first[1].Value.GetString());
    }

    /// <summary>Every command has JSON, or says why not; none is left out above, nor (but for those that answer with files) where the numbers of its text are looked for in its JSON.
    /// Mark wants a class's files and stands there alone.</summary>
    [Fact]
    public void Calls_EveryCommandWithJson_StandsAmongThem()
    {
        (string Name, Command Command)[] commands = [.. Tree()];
        Assert.Equal([], commands.Where(one => one.Command.Options.All(option => option.Name != "--json")).Select(one => one.Name));
        string numbers = File.ReadAllText(Path.Combine(Repository.Root, "tests", "FrontEnd.App.Tests", "EveryNumberTests.cs"));
        string[] called = [.. Calls.Select(call => call.Data.Item1)];
        Assert.Equal([], commands.Select(one => one.Name).Where(name => !called.Any(call => call == name || call.StartsWith(name + " ", StringComparison.Ordinal)) && name is not ("mark" or "completion")));
        string[] withFiles = ["filter", "sheet", "new", "coefficients", "schema", "manual", "completion"];
        Assert.All(commands.Select(one => one.Name.Split(' ')[0]).Distinct().Except(withFiles), name => Assert.Contains($"\"{name}", numbers, StringComparison.Ordinal));
    }

    /// <summary>Whatever names a file to write is tried above with every command that has it; what is neither known to be read nor to be written is told.</summary>
    [Fact]
    public void Writing_EveryOptionThatNamesAFile_StandsAmongThem()
    {
        string[] calls = [.. Writing.Select(call => call.Data)];
        foreach ((string name, Command command) in Tree())
        {
            string[] mine = [.. calls.Where(call => call.StartsWith(name + " ", StringComparison.Ordinal))];
            foreach (Option option in command.Options.Where(option => Written.Contains(option.Name)))
            {
                Assert.True(Array.Exists(mine, call => option.Aliases.Append(option.Name).Any(alias => call.Contains($" {alias} ", StringComparison.Ordinal))), $"{name} {option.Name}");
            }

            Assert.True(!command.Arguments.Any(argument => argument.Name == "file") || mine.Length != 0, name);
            Assert.Equal([], command.Options.Where(option => option.HelpName is "file" or "folder" or "design" || option.Description?.Contains("file to write", StringComparison.Ordinal) == true)
                .Select(option => option.Name).Except(Written).Except(Read).Select(option => $"{name} {option}: read or written?"));
        }
    }

    private static Dictionary<string, DateTime> Files(params TemporaryFolder[] folders) => folders.SelectMany(folder => Directory.EnumerateFiles(folder.Path, "*", SearchOption.AllDirectories))
        .ToDictionary(file => file, File.GetLastWriteTimeUtc, StringComparer.Ordinal);

    /// <summary>Every command with those below it, by the words that call it.</summary>
    private static IEnumerable<(string Name, Command Command)> Tree()
    {
        using StringWriter nowhere = new();
        Outlet outlet = new(nowhere, nowhere);
        return [.. CommandLine.Makers.SelectMany(make => Below(make(outlet), ""))];

        static IEnumerable<(string Name, Command Command)> Below(Command command, string above) =>
            [(above + command.Name, command), .. command.Subcommands.SelectMany(inner => Below(inner, $"{above}{command.Name} "))];
    }

    [Fact]
    public void Json_Sheet_SaysThatASheetWroteIt()
    {
        using TemporaryFolder folder = new();
        string file = Path.Combine(folder.Path, "sheet.json");
        Shell.Run("sheet", "designs/starter.toml", "-o", file);
        using JsonDocument json = JsonDocument.Parse(File.ReadAllText(file));
        Assert.Equal("sheet", json.RootElement.GetProperty("command").GetString());
    }

    /// <summary>What `check` says of a design is a design file: named channels, sources and values that nobody knows included.</summary>
    [Fact]
    public void Check_OfEveryDesignThatComesAlong_IsReadBackAsADesign()
    {
        foreach (string path in Directory.GetFiles(Repository.Designs, "*.toml").Where(path => !DesignDocument.Read(path).HasErrors))
        {
            DesignDocument read = DesignDocument.Parse(Shell.Run("check", path, "--json", "--no-advice").Output, DocumentFormat.Json);
            Assert.True(!read.HasErrors, $"{Path.GetFileName(path)}: {read.Findings.FirstOrDefault(finding => finding.Severity == Severity.Error)?.Message}");
            Assert.Equal(DesignDocument.Read(path).Design.Name, read.Design.Name);
        }
    }
}
