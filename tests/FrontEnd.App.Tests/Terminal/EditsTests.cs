using System.Globalization;
using FrontEnd.Advice;
using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Documents;
using FrontEnd.Documents.Reading;
using FrontEnd.Fields;
using FrontEnd.Reporting;
using FrontEnd.Terminal;
using Xunit;

namespace FrontEnd.App.Tests.Terminal;

/// <summary>Changes to a design's file beyond one value: nothing of the user's is lost.</summary>
public class EditsTests
{
    private static readonly string[] Files = ["dry-headband.toml", "gel-cap.toml", "hobbyist.toml", "starter.toml", "engineer.toml", "saline-sponge.toml", "minimal.toml"];

    public static TheoryData<string, string> Pairs
    {
        get
        {
            TheoryData<string, string> pairs = [];
            for (int at = 0; at < Files.Length; at++)
            {
                pairs.Add(Files[at], Files[(at + 1) % Files.Length]);
                pairs.Add(Files[at], Files[(at + 3) % Files.Length]);
            }

            return pairs;
        }
    }

    private static DesignDocument Read(string file) => DesignDocument.Read(Path.Combine(Setup.Root, "designs", file));

    /// <summary>Any design can be written into the file of any other: all its values are there, and every comment still is.</summary>
    [Theory]
    [MemberData(nameof(Pairs))]
    public void TakeOver_AnotherDesign_HasItsValuesAndKeepsTheComments(string file, string other)
    {
        DesignDocument document = Read(file);
        Design wanted = Read(other).Design;

        TakenOver taken = Edits.TakeOver(document, wanted);

        Assert.Null(taken.Finding);
        Assert.Equal(DesignWriter.ToToml(wanted), DesignWriter.ToToml(taken.Document.Design));
        StudyTests.AssertKeepsComments(document.Text, taken.Document.Text);
    }

    /// <summary>One channel on the forehead, dry: its advice is taken twice until the contacts are good enough.</summary>
    private static string DryStarter => File.ReadAllText(Path.Combine(Setup.Root, "designs", "starter.toml")).Split('\n').Select(line =>
        line.StartsWith("channels = 2 ", StringComparison.Ordinal) ? "channels = 1"
        : line.StartsWith("sites =", StringComparison.Ordinal) ? "sites = [\"Fp1\"]"
        : line.Replace("\"gel-prepared\"", "\"dry-forehead\"", StringComparison.Ordinal)).Aggregate((text, line) => text + "\n" + line);

    public static TheoryData<string> Advised => [.. Files, "eight-channel-cap.toml", "mixed-headset.toml", "instructor.toml", "a dry starter"];

    /// <summary>Whatever advice is taken over, once and once more, in place or by writing the file anew: what the file states and the change leaves alone is
    /// stated afterwards, with its value.</summary>
    [Theory]
    [MemberData(nameof(Advised))]
    public void TakeOver_AnyAdvice_LeavesStatedWhatIsStated(string file)
    {
        DesignDocument document = file.EndsWith(".toml", StringComparison.Ordinal) ? Read(file) : DesignDocument.Parse(DryStarter, DocumentFormat.Toml);
        List<string> anew = [];
        foreach (Candidate first in Candidates.For(document.Design, Evaluator.Evaluate(document.Design)))
        {
            DesignDocument once = Taken(document, first, anew);
            foreach (Candidate second in Candidates.For(once.Design, Evaluator.Evaluate(once.Design)).Where(one => one.Change[..8] == first.Change[..8]))
            {
                Taken(once, second, anew);
            }
        }

        Assert.True(anew.Count == 0, string.Join('\n', anew));
    }

    private static DesignDocument Taken(DesignDocument document, Candidate candidate, List<string> anew)
    {
        TakenOver taken = Edits.TakeOver(document, candidate.Design);
        if (taken.Comments is not null)
        {
            anew.Add(candidate.Change);
        }

        AssertStates(document, candidate.Design, taken.Document, candidate.Change);
        AssertStates(document, candidate.Design, Edits.Anew(document, candidate.Design).Document, candidate.Change);
        return taken.Document;
    }

    private static void AssertStates(DesignDocument before, Design wanted, DesignDocument after, string change)
    {
        Assert.Equal(DesignWriter.ToToml(wanted), DesignWriter.ToToml(after.Design));
        string[] lost = [.. Said(before, before.Stated).Intersect(Said(after, DesignFields.Of(wanted).Select(field => field.Key))).Except(Said(after, after.Stated))];
        Assert.True(lost.Length == 0, $"{change}: {string.Join("; ", lost)}");

        // Elements of lists by their names: their places move.
        static IEnumerable<string> Said(DesignDocument document, IEnumerable<string> keys) =>
            keys.Select(key => DesignFields.Find(document.Design, key)!).Where(field => DesignFields.IsPresent(document.Design, field.Key))
                .Select(field => $"{Named(document.Design, field.Key)} = {FieldText.Format(field, field.Get(document.Design))}");

        static string Named(Design design, string key) => DesignFields.Lists.FirstOrDefault(list => key.StartsWith(list.Key + "[", StringComparison.Ordinal)) is not { } list ? key
            : $"{list.Key} {list.NameOf(list.Elements(design)[int.Parse(key[(list.Key.Length + 1)..key.IndexOf(']')], CultureInfo.InvariantCulture) - 1])}{key[(key.IndexOf(']') + 1)..]}";
    }

    /// <summary>What is said where nothing is given is not said of what is.</summary>
    [Fact]
    public void TakeOver_ByWritingAnew_DrawsNoFindingOfWhatIsNotGiven()
    {
        DesignDocument document = DesignDocument.Parse(DryStarter, DocumentFormat.Toml);
        DesignDocument anew = Edits.Anew(document, document.Design with { Channels = 3 }).Document;
        Assert.Contains("highest = \"3.3 V\"", anew.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(anew.Findings, finding => finding.Code is "FE0210" or "FE0211" or "FE0212");
    }

    /// <summary>The same advice twice: both are made in the file's own lines, and the ranges go with the area.</summary>
    [Fact]
    public void Advice_TakenTwice_StaysInPlace_AndTheRangesGoWithTheArea()
    {
        DesignDocument document = DesignDocument.Parse(DryStarter, DocumentFormat.Toml);
        for (int i = 1; i <= 2; i++)
        {
            Candidate larger = Candidates.For(document.Design, Evaluator.Evaluate(document.Design)).Single(one => one.Change.StartsWith("twice the contact area", StringComparison.Ordinal));
            TakenOver taken = Edits.TakeOver(document, larger.Design);
            Assert.Null(taken.Comments);
            document = taken.Document;
            PartRange contact = document.Design.Electrodes.Active.Ranges.Of("contact-resistance")!, excess = document.Design.Electrodes.Reference.Ranges.Of("excess-density")!;
            Assert.Equal((100e3 / (1 << i), 1e6 / (1 << i)), (contact.Low, contact.High));
            Assert.Equal(3.13e-12 / (1 << i), excess.Low, 1e-20);
        }

        Assert.Contains("highest = \"3.3 V\"", document.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    public void TakeOver_ElementsReplaced_LeavesTheOthersAndTheirCommentsInPlace(string lineEnd)
    {
        const string Text = """
            # of the file
            name = "x"

            # the coupling
            [[stages]]   # two
            kind = "gain"
            name = "gain 2"
            feedback-resistor = "200 kΩ"   # times 201

            # before the converter
            [[stages]]
            kind = "low-pass"
            topology = "rc"
            name = "anti-alias 1"
            r = "10 kΩ"   # thick film
            c = "100 nF"

            # behind
            [converter]
            bits = 16   # enough
            """;
        DesignDocument document = DesignDocument.Parse(Text.ReplaceLineEndings(lineEnd), DocumentFormat.Toml);
        Design wanted = document.Design with { Stages = [document.Design.Stages[0], new Topologies.SallenKeySection { Name = "anti-alias 1" }] };

        DesignDocument after = Edits.TakeOver(document, wanted).Document;

        Assert.Equal(DesignWriter.ToToml(wanted), DesignWriter.ToToml(after.Design));
        string[] lines = [.. after.Text.Split('\n').Select(line => line.TrimEnd('\r'))];
        int first = Array.IndexOf(lines, "# the coupling"), old = Array.IndexOf(lines, "# was: r = \"10 kΩ\"   # thick film"), behind = Array.IndexOf(lines, "# behind");
        Assert.True(0 < first && first < old && old < behind, after.Text);
        Assert.Equal("[[stages]]   # two", lines[first + 1]);
        Assert.Equal("[converter]", lines[behind + 1]);
        Assert.Contains("feedback-resistor = \"200 kΩ\"   # times 201", lines);
        Assert.DoesNotContain("c = \"100 nF\"", lines);
        Assert.Equal(after.Text, after.Text.ReplaceLineEndings(lineEnd));
    }

    [Fact]
    public void Move_TakesTheCommentAboveAnElementAlong()
    {
        DesignDocument document = DesignDocument.Parse("name = \"x\"\n\n# one\n[[bands]]\nname = \"low\"   # slow\nlow = \"1 Hz\"\nhigh = \"4 Hz\"\n\n# two\n[[bands]]\nname = \"high\"\nlow = \"8 Hz\"\nhigh = \"12 Hz\"\n\n# not of a band\n\n[converter]\nbits = 12\n", DocumentFormat.Toml);

        EditResult moved = Edits.Move(document, DesignFields.Lists[2], 0, +1);

        Assert.Equal("name = \"x\"\n\n# two\n[[bands]]\nname = \"high\"\nlow = \"8 Hz\"\nhigh = \"12 Hz\"\n\n# one\n[[bands]]\nname = \"low\"   # slow\nlow = \"1 Hz\"\nhigh = \"4 Hz\"\n\n# not of a band\n\n[converter]\nbits = 12\n", moved.Document.Text);
    }

    /// <summary>Where the file's form leaves no place the user is asked first; saying no leaves it to the character.</summary>
    [Fact]
    public void TakeOver_AFormWithoutAPlace_AsksFirst()
    {
        const string Text = "# mine\nname = \"x\"\n\n[[stages]]\nkind = \"gain\"\nname = \"gain 2\"\n\n[anti-alias]   # by what it must do\norder = 3\ncorner = \"100 Hz\"\n";
        DesignDocument document = DesignDocument.Parse(Text, DocumentFormat.Toml);
        Design wanted = document.Design with { Stages = [new Topologies.RcSection { Name = "anti-alias 1" }] };
        TakenOver taken = Edits.TakeOver(document, wanted);
        Assert.Equal(2, taken.Comments);

        (Model model, _) = Model.Start(document, null);
        Model study = Setup.Settle(model with { Page = new SizingPage { Number = 1, Outcome = new StudyOutcome(_ => "", [new("a", wanted, "")], 0) } }, new Effect.Evaluate(0, 1, document.Design));
        Model asked = study.Press(new Keystroke(KeyName.Enter));
        Assert.IsType<QuestionPage>(asked.Page);
        Assert.Equal(Text, asked.Here.Document.Text);
        Assert.Equal(Text, asked.Type("n").Here.Document.Text);
        Model done = asked.Type("y");
        Assert.Equal(DesignWriter.ToToml(wanted), DesignWriter.ToToml(done.Design));
        StudyTests.AssertKeepsComments(Text, done.Here.Document.Text);
        Assert.Equal(Text, done.Type("u").Here.Document.Text);
    }

    /// <summary>Moving an element and moving it back is nothing; moved, the list has the two changed over, and no comment is lost.</summary>
    [Theory]
    [InlineData("dry-headband.toml")]
    [InlineData("gel-cap.toml")]
    [InlineData("hobbyist.toml")]
    [InlineData("engineer.toml")]
    public void Move_AndBack_IsIdentity(string file)
    {
        DesignDocument document = Read(file);
        int moved = 0;
        foreach (DesignList list in DesignFields.Lists)
        {
            for (int index = 0; index + 1 < list.Count(document.Design); index++)
            {
                EditResult there = Edits.Move(document, list, index, +1);
                Assert.Null(there.Finding);
                Assert.Equal(list.NameOf(list.Elements(document.Design)[index]), list.NameOf(list.Elements(there.Document.Design)[index + 1]));
                StudyTests.AssertKeepsComments(document.Text, there.Document.Text);
                EditResult back = Edits.Move(there.Document, list, index + 1, -1);
                Assert.Equal(DesignWriter.ToToml(document.Design), DesignWriter.ToToml(back.Document.Design));
                if (ListTables.OfList(document.Text, list.Key).Tables.Count > 0)
                {
                    Assert.Equal(document.Text, back.Document.Text);
                }

                moved++;
            }
        }

        Assert.NotEqual(0, moved);
    }

    /// <summary>A list in one line has no table to move: it is said, and nothing is changed.</summary>
    [Fact]
    public void Move_InAListInOneLine_IsRefused()
    {
        DesignDocument document = Read("minimal.toml");
        EditResult refused = Edits.Move(document, DesignFields.Lists[1], 0, +1);
        Assert.Equal("FE0190", refused.Finding?.Code);
        Assert.Same(document, refused.Document);
    }

    [Fact]
    public void Move_ByKey_TakesTheFieldInHandAlong_AndUndoTakesItBack()
    {
        Model model = Setup.Start(Setup.Headband).At("stage 1", "stages[1].feedback-resistor");

        Model moved = model.Type(">");

        Assert.Equal("gain 2", moved.Design.Stages[1].Name);
        Assert.Equal("stages[2].feedback-resistor", Whereabouts.FormOf(moved)[moved.FieldRow].Field.Key);
        Assert.Contains("moved nearer the samples", moved.Status, StringComparison.Ordinal);
        Assert.Equal(model.Here.Document.Text, moved.Type("<").Here.Document.Text);
        Assert.Equal(model.Here.Document.Text, moved.Type("u").Here.Document.Text);
        Assert.Contains("already the last", moved.Type(">").Status, StringComparison.Ordinal);
        Assert.Contains("go to one of its fields", Setup.Start().Type(">").Status, StringComparison.Ordinal);
    }

    [Fact]
    public void Remove_LeavesTheCommentsAroundAnElement()
    {
        DesignDocument document = DesignDocument.Parse("[[digital]]\nkind = \"high-pass\"\ncorner = \"0.5 Hz\"\n\n# the converter\n[converter]\nbits = 12\n", DocumentFormat.Toml);

        DesignDocument removed = Edits.Remove(document, DesignFields.Lists[1], 0).Document;

        Assert.Empty(removed.Design.Digital);
        Assert.Contains("# the converter\n[converter]", removed.Text, StringComparison.Ordinal);
    }
}
