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
    };

    [Theory]
    [MemberData(nameof(Calls))]
    public void Json_AnyCommand_BeginsWithCommandAndVersion(string call, string member)
    {
        using TemporaryFolder folder = new();
        string[] words = [.. call.Split(' ').Select(word => word.Replace("{0}", folder.Path, StringComparison.Ordinal))];
        using JsonDocument json = JsonDocument.Parse(Shell.Run([.. words, "--json"]).Output);
        JsonProperty[] first = [.. json.RootElement.EnumerateObject().Take(3)];
        Assert.Equal(["command", "version", member], first.Select(one => one.Name));
        Assert.Equal(words[0], first[0].Value.GetString());
        Assert.Equal(Version, first[1].Value.GetString());
    }

    /// <summary>No command is left out above, nor (but for those that answer with files) where the numbers of its text are looked for in its JSON; mark wants a class's files and stands there alone.</summary>
    [Fact]
    public void Calls_EveryCommandWithJson_StandsAmongThem()
    {
        using StringWriter nowhere = new();
        IEnumerable<string> commands = CommandLine.Makers.Select(make => make(new Outlet(nowhere, nowhere)))
            .Where(command => command.Options.Any(option => option.Name == "--json")).Select(command => command.Name);
        string numbers = File.ReadAllText(Path.Combine(Repository.Root, "tests", "FrontEnd.App.Tests", "EveryNumberTests.cs"));
        string[] called = [.. Calls.Select(call => call.Data.Item1.Split(' ')[0])];
        Assert.Equal([], commands.Except(called).Where(name => name != "mark"));
        Assert.All(commands.Where(name => name is not ("filter" or "sheet" or "new" or "coefficients")), name => Assert.Contains($"\"{name}", numbers, StringComparison.Ordinal));
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
