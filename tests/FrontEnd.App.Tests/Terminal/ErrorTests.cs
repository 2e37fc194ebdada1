using FrontEnd.Catalogue;
using FrontEnd.Documents;
using FrontEnd.Fields;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Terminal;
using FrontEnd.Unknowns;
using Xunit;

namespace FrontEnd.App.Tests.Terminal;

/// <summary>Files with errors: nothing on the screen rests on a value that nobody has given, and every error is one key away.</summary>
public sealed class ErrorTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory().FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private Model Open(string text, string name = "design.toml")
    {
        string path = Path.Combine(_folder, name);
        File.WriteAllText(path, text);
        return Setup.Start(path, 120, 40);
    }

    [Fact]
    public void Field_ThatCannotBeRead_IsMarked_AndNothingThatRestsOnItIsShown()
    {
        Model model = Open("[amplifier]\ngain = \"3,5\"\n");
        string[] screen = model.Screen().Split('\n');

        Assert.Contains("x 1 error", screen[0], StringComparison.Ordinal);
        Assert.DoesNotContain("x 5", string.Join('\n', screen[1..5]), StringComparison.Ordinal);
        Assert.Contains(screen, line => line.Contains("gain", StringComparison.Ordinal) && line.Contains("3,5 x", StringComparison.Ordinal));
        Assert.Contains("FE0124", model.Screen(), StringComparison.Ordinal);
        Assert.Equal("amplifier.gain", Whereabouts.FieldInHand(model)!.Field.Key);
        Assert.Equal(ResultState.Missing, model.Here.Shown!["levels.offset_survived"].State);
        Assert.Equal(ResultState.Missing, model.Here.Shown!["noise.total"].State);
        Assert.Empty(model.Here.Shown.Curves.Response);

        Assert.Contains("not drawn while the file has errors", model.Type("g").Screen(), StringComparison.Ordinal);

        // What does not rest on the gain stands.
        Assert.Equal(Open("[amplifier]\ngain = 5\n").Here.Shown![Identity.ResultIds.Safety.SeriesResistanceNeeded].Si, model.Here.Shown![Identity.ResultIds.Safety.SeriesResistanceNeeded].Si);

        Model mended = model.Type("3.5").Press(KeyName.Enter);
        Assert.DoesNotContain("error", mended.Screen().Split('\n')[0], StringComparison.Ordinal);
        Assert.Equal(ResultState.Number, mended.Here.Shown!["noise.total"].State);
        Assert.Equal("amplifier.gain 3,5 -> 3.5", mended.Here.Undo.Peek().Label);

        // The value that stands in for it is a change as well.
        Assert.Equal(5, model.Type("5").Press(KeyName.Enter).Design.Amplifier.Gain);
        Assert.False(model.Type("5").Press(KeyName.Enter).Here.Document.HasErrors);
        Assert.False(model.Type("d").Here.Document.HasErrors);
        Assert.True(model.Type("+").Here.Document.HasErrors);
    }

    /// <summary>A line that the parser refuses, in a table whose part has a card: what the file says stands in the field, not what the card says; typed
    /// anew, it takes the line's place.</summary>
    [Theory]
    [InlineData("[amplifier]\ncard = \"integrated-programmable-gain\"\nSLIP\n", "amplifier", "amplifier.gain", "gain = 3,5", "3,5", "gain = 3.5")]
    [InlineData("[amplifier]\ncard = \"integrated-programmable-gain\"\nSLIP   # about\ncmrr = \"90 dB\"\n", "amplifier", "amplifier.gain", "gain = 3,5", "3,5", "gain = 3.5")]
    [InlineData("amplifier.SLIP\n", "amplifier", "amplifier.gain", "gain = 3,5", "3,5", "gain = 3.5")]
    [InlineData("[amplifier]\nSLIP\n", "amplifier", "amplifier.gain", "gain = 3.5 x", "3.5 x", "gain = 3.5")]
    [InlineData("[amplifier]\nSLIP\n", "amplifier", "amplifier.gain", "gain 3.7", "gain 3.7", "gain = 3.5")]
    [InlineData("[amplifier]\nSLIP\n", "amplifier", "amplifier.gain", "gain =", "?", "gain =3.5")]
    [InlineData("[converter]\nSLIP\n", "converter", "converter.rate", "rate = 250 Hz", "250 Hz", "rate = \"300 Hz\"")]
    [InlineData("[[stages]]\nkind = \"gain\"\n[[stages]]\nkind = \"gain\"\nSLIP\n", "stage 2", "stages[2].feedback-resistor", "feedback-resistor = 200 kΩ", "200 kΩ", "feedback-resistor = \"3.5k\"")]
    public void Line_ThatTheParserRefuses_IsItsFieldsValue(string text, string place, string key, string slip, string shown, string mended)
    {
        Model model = Open(text.Replace("SLIP", slip, StringComparison.Ordinal)).At(place, key);
        FormRow row = Whereabouts.FieldInHand(model)!;
        Assert.Equal(shown, row.Value(model.Here.Document));
        Assert.Equal(key, Errors.Of(model.Here)[0].Field);
        Assert.DoesNotContain("Now", FormRow.Describe(row.Field, model.Here.Document), StringComparison.Ordinal);
        Assert.Contains("cannot be read", FormRow.Describe(row.Field, model.Here.Document), StringComparison.Ordinal);

        Model done = model.Type(mended[(mended.IndexOf('=', StringComparison.Ordinal) + 1)..].Trim(' ', '"')).Press(KeyName.Enter);
        Assert.Equal(text.Replace("SLIP", mended, StringComparison.Ordinal), done.Here.Document.Text);
        Assert.False(done.Here.Document.HasErrors, done.Complaint?.Message);
        DesignDocument cleared = model.Here.Document.Clear(key).Document;
        Assert.False(cleared.HasErrors);
        Assert.DoesNotContain(slip, cleared.Text, StringComparison.Ordinal);
    }

    /// <summary>Where the file may mean anything, what a card says is as little the design's as a default is.</summary>
    [Fact]
    public void Card_OfAFileThatMayMeanAnything_SaysNothing()
    {
        Model model = Open("[amplifier]\ncard = \"integrated-programmable-gain\"\ngian = 3.5\n").At("amplifier", "amplifier.gain");
        FormRow row = Whereabouts.FieldInHand(model)!;
        Assert.Equal("?", row.Value(model.Here.Document));
        Assert.DoesNotContain("Now from its card", FormRow.Describe(row.Field, model.Here.Document), StringComparison.Ordinal);
    }

    /// <summary>With figures withheld nobody knows that none of them depends on a change.</summary>
    [Theory]
    [InlineData("[amplifier]\ngain = 3,5\n[input]\nseries-resistor = \"10 kΩ\"\n")]
    [InlineData("[amplifier]\ngian = 3.5\n[input]\nseries-resistor = \"10 kΩ\"\n")]
    public void Change_OfAFileWithErrors_ClaimsNothingOfWhatIsWithheld(string text)
    {
        Model model = Open(text).At("input", "input.series-resistor").Type("+");
        Assert.NotEqual("10 kΩ", FieldText.Format(DesignFields.Find(model.Design, "input.series-resistor")!, model.Design.Input.SeriesResistor));
        Assert.DoesNotContain("none of them depends", model.Status, StringComparison.Ordinal);
    }

    [Fact]
    public void Limit_ThatCannotBeRead_LeavesTheFigureAndTakesTheVerdict()
    {
        Model good = Open("[requirements]\nnoise = \"1 µV p-p\"\n"), model = Open("[requirements]\nnoise = \"lots\"\n");
        Result mine = model.Here.Shown!["noise.board_share"], theirs = good.Here.Shown!["noise.board_share"];
        Assert.Equal(theirs.Si, mine.Si);
        Assert.Equal((VerdictKind.Fail, VerdictKind.NotJudged), (theirs.Verdict.Kind, mine.Verdict.Kind));
        Assert.Equal("requirements.noise", mine.Verdict.Requirement);
    }

    [Theory]
    [InlineData("[amplifier]\ngian = 3.5\n")]
    [InlineData("[amplifier]\ngain = 3.5\ngain = 7\n")]
    [InlineData("[amplifier]\ngain = 3.5\n[converter\nrate = \"500 Hz\"\n")]
    [InlineData("[amplifier]\ncard = \"no-such-card\"\n")]
    [InlineData("amplifier = 7\n[input]\nseries-resistor = \"1 kΩ\"\n")]
    public void File_ThatMayMeanAnything_HasNoFigures(string text)
    {
        Model model = Open(text);
        Assert.All(model.Here.Shown!.Results, result => Assert.Equal(ResultState.Missing, result.State));
        Assert.All(Place.Blocks(model.Design), block => Assert.True(Errors.Hide(model.Here.Document, block)));
        Assert.NotNull(Errors.Counted(model.Here));
        Assert.NotNull(model.Complaint);
    }

    [Fact]
    public void Key_WalksThroughTheErrors_RoundAndRound()
    {
        Model model = Open("[amplifier]\ngain = \"3,5\"\n[converter]\nrate = \"abc\"\n[requirements]\nnoise = \"lots\"\n");
        Assert.Contains("x 3 errors", model.Screen().Split('\n')[0], StringComparison.Ordinal);
        List<string> places = [];
        for (int i = 0; i < 4; i++)
        {
            places.Add($"{model.PlaceId} {Whereabouts.FieldInHand(model)!.Field.Key}");
            Assert.Contains($"error {(i % 3) + 1} of 3, line ", model.Screen(), StringComparison.Ordinal);
            model = model.Type(",");
        }

        Assert.Equal(["amplifier amplifier.gain", "converter converter.rate", "verdicts requirements.noise", "amplifier amplifier.gain"], places);
    }

    /// <summary>What would be written or worked out of such a design would be another's.</summary>
    [Theory]
    [InlineData("zr")]
    [InlineData("zs")]
    [InlineData("zb")]
    [InlineData("h")]
    public void Whatever_NeedsTheWholeDesign_IsRefused(string keys)
    {
        Model model = Open("[amplifier]\ngain = \"3,5\"\n").Type(keys);
        Assert.Equal("FE0124", model.Complaint?.Code);
        Assert.False(model.Page is StudyPage);
    }

    [Theory]
    [InlineData("design.toml", "")]
    [InlineData("design.toml", "# a comment\n")]
    [InlineData("design.json", "{}")]
    [InlineData("design.json", "[]")]
    [InlineData("design.json", "{\"name\": \"x\", \"version\": \"1.0.0\", \"dependencies\": {\"a\": \"1\"}}")]
    [InlineData("design.json", "nothing")]
    [InlineData("readme.md", "Hello, this is a text.\n")]
    [InlineData("picture.png", "\u0089PNG\r\n\u001a\n\0\0\0\rIHDR\0\0")]
    public void File_ThatIsNoDesign_IsOpenedAsNothing(string name, string text)
    {
        string path = Path.Combine(_folder, name);
        File.WriteAllText(path, text);
        DesignDocument document = DesignDocument.Read(path);
        Assert.True(document.IsNoDesign);
        Assert.True(document.HasErrors);

        List<Message> said = [];
        using Performer performer = new(null, null, _ => { });
        performer.Attach(said.Add, _ => { });
        performer.Perform(new Effect.Open(path));
        Assert.IsType<Message.Failed>(Assert.Single(said));
    }

    /// <summary>What is shown of a file with an unreadable value is what every legal value there gives: fields of all kinds, values that the program does
    /// not try itself.</summary>
    [Theory]
    [InlineData("amplifier.gain")]
    [InlineData("converter.rate")]
    [InlineData("converter.bits")]
    [InlineData("input.series-resistor")]
    [InlineData("electrodes.mismatch")]
    [InlineData("electrodes.active.contact-resistance")]
    [InlineData("mains.frequency")]
    [InlineData("supply.highest")]
    [InlineData("signal.largest")]
    [InlineData("requirements.noise")]
    [InlineData("ground-drive.kind")]
    [InlineData("band")]
    [InlineData("purpose")]
    public void Figures_OfAFileWithAnUnreadableValue_AreThoseOfEveryValue(string key)
    {
        DesignDocument whole = DesignDocument.Read(Setup.Headband);
        Field<Designs.Design> field = DesignFields.Find(whole.Design, key)!;
        string mark = "!?";
        DesignDocument stated = whole.Set(key, field.Kind == FieldKind.Text ? "words" : FieldText.Format(field, field.Get(whole.Design))).Document;
        string literal = stated.WrittenAt(key) is { } written && stated.Text.Contains($"\"{written}\"", StringComparison.Ordinal) && field.Kind != FieldKind.FrequencyRange
            ? $"\"{written}\"" : stated.WrittenAt(key)!;
        int at = stated.Text.IndexOf(literal, stated.Text.IndexOf(key[(key.LastIndexOf('.') + 1)..] + " =", StringComparison.Ordinal), StringComparison.Ordinal);
        DesignDocument broken = stated.WithText(string.Concat(stated.Text.AsSpan(0, at), field.Kind == FieldKind.Text ? "7" : $"\"{mark}\"", stated.Text.AsSpan(at + literal.Length)));
        Assert.Equal(key, Assert.Single(broken.Unread).Key);
        Assert.Null(broken.Undecided);

        Assessment shown = PartlyReadEvaluator.Evaluate(broken.AsFarAsRead());
        Result[] standing = [.. shown.Results.Where(result => result.State != ResultState.Missing)];
        Assert.Contains(shown.Findings, finding => finding.Field == key && finding.Severity == Findings.Severity.Error);
        foreach (double factor in new[] { 1, 0.71, 1.37, 2.3 })
        {
            object? value = field.Get(stated.Design) switch
            {
                FrequencyRange band => new FrequencyRange(Quantities.Frequency.FromHertz(band.Low.Hertz * factor), Quantities.Frequency.FromHertz(band.High.Hertz * factor)),
                _ when field.SiValue(stated.Design) is { } si => field.FromSi(si * factor),
                var own => own,
            };
            Assessment possible = Evaluator.Evaluate(field.Set(stated.Design, value));
            if (!possible.HasFigures)
            {
                continue;
            }

            foreach (Result result in standing)
            {
                Assert.Equal(Said(possible[result.Id]), Said(result));
                if (result.Verdict.Kind != VerdictKind.NotJudged)
                {
                    Assert.Equal(possible[result.Id].Verdict.Kind, result.Verdict.Kind);
                }
            }
        }

        static string Said(Result result) => $"{result.Id} {ResultText.Value(result)}";
    }
}
