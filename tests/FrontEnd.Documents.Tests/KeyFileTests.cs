using System.Text.Json;
using System.Text.Json.Nodes;
using FrontEnd.Documents.Teaching;
using FrontEnd.Findings;
using FrontEnd.Teaching.Problems;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>A key is written with a seal, and read back whole.</summary>
public class KeyFileTests
{
    private static readonly Homework Homework = Homework.Make([], null, 14, 3, [new Student("s1", "Ada"), new Student("s2", "Ben")]);

    [Fact]
    public void Read_OfWrite_IsTheKeyWithTextsAndGivens()
    {
        Key key = Key.Of(Homework);
        Key read = KeyFile.Read(KeyFile.Write(key), "key.json", out Finding? finding)!;
        Assert.Null(finding);
        Assert.Equal((key.Seed, key.TemplateVersion, Homework.Code), (read.Seed, read.TemplateVersion, read.Code));
        foreach ((ProblemSheet sheet, KeySheet back) in Homework.Sheets.Zip(read.Sheets))
        {
            Assert.Equal(sheet.Questions.Select(one => (one.Id, one.Problem.Title, one.Problem.Text)), back.Questions.Select(one => (one.Id, one.Title, one.Text)));
            Assert.Equal(sheet.Questions.SelectMany(one => one.Problem.Givens.Select(given => (given.Symbol, given.Name, given.Text))), back.Questions.SelectMany(one => one.Givens.Select(given => (given.Symbol, given.Name, given.Value))));
        }

        Assert.Equal(KeySeal.Of(key), KeySeal.Of(read));
        Assert.Equal(KeyFile.Write(key), KeyFile.Write(read));
    }

    /// <summary>Every value of the file is changed by itself: what decides marks breaks the seal, and what does not leaves it.</summary>
    [Fact]
    public void Read_OfAKeyWithOneValueChanged_TellsWhatDecidesMarks()
    {
        string written = KeyFile.Write(Key.Of(Homework.Make([], null, 5, 3, [new Student("s1", "Ada")])));
        string[] free = ["templates", "generator", "seed", "name", "title", "text", "symbol", "value of a given", "says", "formula", "substituted"];
        int told = 0;
        foreach (string path in Leaves(JsonNode.Parse(written)!).Where(path => !path.EndsWith(".format", StringComparison.Ordinal) && path != "$.version"))
        {
            JsonNode changed = JsonNode.Parse(written)!;
            Change(changed, path);
            Key? key = KeyFile.Read(changed.ToJsonString(), "key.json", out Finding? finding);
            string name = path.Contains(".givens[", StringComparison.Ordinal) && path.EndsWith(".value", StringComparison.Ordinal) ? "value of a given" : path[(path.LastIndexOf('.') + 1)..];
            if (free.Contains(name))
            {
                Assert.True(key is not null && finding is null, path);
                continue;
            }

            Assert.True(key is null && finding!.Code is Messages.KeyEdited or Messages.KeyUnreadable, $"{path}: {finding?.Message}");
            told += finding!.Code == Messages.KeyEdited ? 1 : 0;
            if (finding.Code == Messages.KeyEdited)
            {
                Assert.NotNull(KeyFile.Read(changed.ToJsonString(), "key.json", out Finding? warning, trust: true));
                Assert.Equal((Messages.KeyEdited, Severity.Warning), (warning!.Code, warning.Severity));
            }
        }

        Assert.InRange(told, 50, int.MaxValue);
    }

    [Fact]
    public void Read_OfAKeyWrittenInAnotherForm_IsTheKey()
    {
        string written = KeyFile.Write(Key.Of(Homework));
        string compact = JsonNode.Parse(written)!.ToJsonString();
        Assert.NotEqual(written, compact);
        Assert.NotNull(KeyFile.Read(compact, "key.json", out Finding? finding));
        Assert.Null(finding);
    }

    [Fact]
    public void Read_OfAnOldKey_SaysSoAndTakesItOnTrust()
    {
        const string Old = """{"format":"frontend-key","version":1,"templates":"2","generator":"g","seed":1,"sheets":[{"student":"s1","name":"A","questions":[{"id":"q1","template":"t","points":2,"answer":"5 V","kind":"Voltage","value":5,"low":4.9,"high":5.1,"slips":[]}]}]}""";
        Assert.Null(KeyFile.Read(Old, "key.json", out Finding? finding));
        Assert.Equal((Messages.KeyUnsealed, Severity.Error), (finding!.Code, finding.Severity));
        Key key = KeyFile.Read(Old, "key.json", out finding, trust: true)!;
        Assert.Equal((Messages.KeyUnsealed, Severity.Warning), (finding!.Code, finding.Severity));
        Assert.Equal(2, Marker.Mark(key, [new GivenAnswer("s1", "q1", "5 V", 2) { Sheet = "ANYTHING" }]).Rows[0].Points);
    }

    private static IEnumerable<string> Leaves(JsonNode node) => node switch
    {
        JsonObject members => members.SelectMany(member => Leaves(member.Value!)),
        JsonArray items => items.SelectMany(item => Leaves(item!)),
        _ => [node.GetPath()],
    };

    private static void Change(JsonNode root, string path)
    {
        JsonNode leaf = Find(root, path);
        JsonValue other = leaf.GetValueKind() switch
        {
            JsonValueKind.String => JsonValue.Create(leaf.GetValue<string>() + "x"),
            JsonValueKind.True or JsonValueKind.False => JsonValue.Create(!leaf.GetValue<bool>()),
            _ when path.EndsWith(".points", StringComparison.Ordinal) || path.EndsWith(".seed", StringComparison.Ordinal) => JsonValue.Create(leaf.GetValue<double>() + 1),
            _ => JsonValue.Create((leaf.GetValue<double>() * 1.0000001) + double.Epsilon),
        };
        leaf.ReplaceWith(other);
    }

    private static JsonNode Find(JsonNode node, string path) => node.GetPath() == path
        ? node
        : Find((node switch
        {
            JsonObject members => members.Select(member => member.Value!),
            _ => node.AsArray().Select(item => item!),
        }).First(one => path == one.GetPath() || path.StartsWith(one.GetPath() + ".", StringComparison.Ordinal) || path.StartsWith(one.GetPath() + "[", StringComparison.Ordinal)), path);
}
