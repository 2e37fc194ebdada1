using System.Text.Json.Nodes;
using System.Text.Json;
using System.Text;
using FrontEnd.Documents.Teaching;
using FrontEnd.Findings;
using FrontEnd.Teaching.Problems;
using FrontEnd.Text;
using FsCheck.Xunit;
using FsCheck;
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

    private static readonly string Written = KeyFile.Write(Key.Of(Homework.Make([], null, 5, 3, [new Student("s1", "Ada")])));

    private static readonly string[] Places = [.. Leaves(JsonNode.Parse(Written)!)];

    /// <summary>Every value of the file is changed by itself: questions, givens and solutions as well as what decides marks.</summary>
    [Fact]
    public void Read_OfAKeyWithOneValueChanged_TellsIt()
    {
        int told = 0;
        foreach (string path in Places)
        {
            JsonNode changed = JsonNode.Parse(Written)!;
            Change(changed, path);
            told += IsTold(changed.ToJsonString(), path) ? 1 : 0;
        }

        Assert.InRange(told, 100, int.MaxValue);
    }

    /// <summary>Any other value in any place, in any of the ways that somebody's hand or a program may change it.</summary>
    [Property(MaxTest = 300)]
    public void Read_OfAKeyWithAnyOtherValue_TellsIt(int place, NonNull<string> text, int number, byte how)
    {
        string path = Places[(int)((uint)place % Places.Length)];
        JsonNode changed = JsonNode.Parse(Written)!, leaf = Find(changed, path);
        string written = string.Concat(text.Get.Where(letter => !char.IsSurrogate(letter)));
        JsonNode? other = (how % 5) switch
        {
            0 => JsonValue.Create(written),
            1 => JsonValue.Create(number),
            2 => null,
            3 => JsonNode.Parse("[]"),
            _ => leaf.GetValueKind() switch
            {
                JsonValueKind.String => JsonValue.Create(leaf.GetValue<string>().ToUpperInvariant()),
                JsonValueKind.Number => JsonNode.Parse(leaf.ToJsonString() + "0"),
                _ => JsonValue.Create(leaf.GetValueKind() == JsonValueKind.False),
            },
        };
        if (other?.ToJsonString() == leaf.ToJsonString())
        {
            return;
        }

        leaf.ReplaceWith(other);
        IsTold(changed.ToJsonString(), path);
    }

    /// <summary>A member more, a member less, two in another order, a name in other letters, one twice.</summary>
    [Fact]
    public void Read_OfAKeyWithOtherMembers_TellsIt()
    {
        JsonNode more = JsonNode.Parse(Written)!, less = JsonNode.Parse(Written)!, turned = JsonNode.Parse(Written)!;
        JsonNode Question(JsonNode key, int at) => key["sheets"]![0]!["questions"]![at]!;
        Question(more, 0)["hint"] = "look it up";
        Question(less, 1).AsObject().Remove("title");
        JsonArray questions = turned["sheets"]![0]!["questions"]!.AsArray();
        JsonNode first = questions[0]!;
        questions.RemoveAt(0);
        questions.Add(first);
        foreach (JsonNode one in (JsonNode[])[more, less, turned])
        {
            IsTold(one.ToJsonString(), "members");
        }

        int seal = Written.IndexOf("\"seal\"", StringComparison.Ordinal);
        IsTold(Written.Insert(seal, "\"seal\": \"0\",\n  "), "two seals");
        IsTold(Written.Replace("\"name\": \"Ada\"", "\"name\": \"Ada\", \"name\": \"Ada\"", StringComparison.Ordinal), "a name twice");
    }

    /// <summary>White space, and how a letter is escaped, are no change.</summary>
    [Property(MaxTest = 100)]
    public void Read_OfAKeyWithOtherWhiteSpace_IsTheKey(int seed)
    {
        Random random = new(seed);
        StringBuilder spaced = new();
        bool isText = false;
        for (int at = 0; at < Written.Length; at++)
        {
            isText ^= Written[at] == '"' && Written[at - 1] != '\\';
            if (!isText && char.IsWhiteSpace(Written[at]))
            {
                continue;
            }

            spaced.Append(isText && char.IsAsciiLetter(Written[at]) && Written[at - 1] != '\\' && random.Next(200) == 0 ? $"\\u{(int)Written[at]:x4}" : Written[at]);
            if (!isText && Written[at] is '{' or '[' or ',' or ':')
            {
                spaced.Append(" \n\t"[..random.Next(4)]);
            }
        }

        Assert.NotNull(KeyFile.Read(spaced.ToString(), "key.json", out Finding? finding));
        Assert.Null(finding);
    }

    /// <summary>The seal is the same whether the text is whole or comes in pieces of any length.</summary>
    [Property(MaxTest = 50)]
    public void Seal_OfATextInPieces_IsThatOfTheWhole(PositiveInt length)
    {
        byte[] whole = Encoding.UTF8.GetBytes(Written);
        using JsonSeal seal = new();
        foreach (byte[] piece in whole.Chunk(1 + (length.Get * 37 % 5000)))
        {
            seal.Write(piece);
        }

        Assert.Equal(JsonSeal.Of(whole), seal.Finish());
    }

    /// <summary>A key of the version before is read; its seal tells what decides marks, and that it does not tell the rest.</summary>
    [Fact]
    public void Read_OfAKeySealedOverMarksAlone_SaysWhatIsCovered()
    {
        Key key = KeyFile.Read(Written, "key.json", out _)!;
        JsonNode old = JsonNode.Parse(Written)!;
        old["version"] = 2;
        old["seal"] = KeySeal.Of(key);
        Assert.NotNull(KeyFile.Read(old.ToJsonString(), "key.json", out Finding? finding));
        Assert.Equal((Messages.KeyMarksSealed, Severity.Warning), (finding!.Code, finding.Severity));
        old["sheets"]![0]!["questions"]![0]!["text"] = "another question";
        Assert.NotNull(KeyFile.Read(old.ToJsonString(), "key.json", out _));
        old["sheets"]![0]!["questions"]![0]!["points"] = 99;
        Assert.Null(KeyFile.Read(old.ToJsonString(), "key.json", out finding));
        Assert.Equal(Messages.KeyEdited, finding!.Code);
    }

    /// <summary>True where the seal tells it, false where the file is no key any more.</summary>
    private static bool IsTold(string text, string path)
    {
        Key? key = KeyFile.Read(text, "key.json", out Finding? finding);
        Assert.True(key is null && finding!.Code is Messages.KeyEdited or Messages.KeyUnreadable or Messages.KeyUnsealed, $"{path}: {finding?.Message}");
        if (finding!.Code == Messages.KeyEdited)
        {
            Assert.NotNull(KeyFile.Read(text, "key.json", out Finding? warning, trust: true));
            Assert.Equal((Messages.KeyEdited, Severity.Warning), (warning!.Code, warning.Severity));
        }

        return finding.Code == Messages.KeyEdited;
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
