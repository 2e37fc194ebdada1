using FrontEnd.Terminal;
using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Fields;
using Xunit;

namespace FrontEnd.App.Tests.Terminal;

/// <summary>Files that change under an open design: nothing moves by itself, it is told, and taken over when asked for.</summary>
public sealed class DiskTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory().FullName;

    private string DesignPath => Path.Combine(_folder, "design.toml");

    private string CardPath => Path.Combine(_folder, "mine.toml");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static void WriteCard(string path, double gain) =>
        File.WriteAllText(path, $"class = \"amplifier\"\nname = \"mine\"\nsource = \"data sheet, revision A\"\n[values]\ngain = {gain.ToString(System.Globalization.CultureInfo.InvariantCulture)}\n");

    /// <summary>A design with a card of the user's own, gain 7.</summary>
    private Model Open()
    {
        WriteCard(CardPath, 7);
        File.WriteAllText(DesignPath, "name = \"d\"  # mine\n[amplifier]\ncard = \"mine.toml\"\n");
        return Setup.Start(DesignPath);
    }

    /// <summary>Looks at the disk until nothing new is told, as the clock would.</summary>
    private static Model Look(Model model, DiskWatch watch)
    {
        watch.Note(model.Designs);
        return watch.Look().Aggregate(model, (now, seen) => Updater.Update(now, seen).Model);
    }

    private static double Gain(Model model) => model.Design.Amplifier.Gain;

    [Fact]
    public void Edit_AfterACardChangedOnDisk_MovesNothingElse_AndUndoGivesWhatWasShown()
    {
        Model model = Open();
        WriteCard(CardPath, 20);

        Model edited = model.At("input", "input.series-resistor").Type("+");

        Assert.Equal(7, Gain(edited));
        Assert.Equal(7, Gain(edited.Type("d")));
        Assert.Equal(7, Gain(edited.Type("u")));
        Assert.Equal(model.Here.Document.Text, edited.Type("u").Here.Document.Text);
    }

    /// <summary>A look that began before a save and is told after it says nothing: the file it saw is the program's own former one.</summary>
    [Fact]
    public void Look_ToldAfterASave_IsStale_AndTheNextOneLooksAnew()
    {
        Model model = Open().At("input", "input.series-resistor");
        DiskWatch watch = new();
        watch.Note(model.Designs);
        IReadOnlyList<Message.SeenOnDisk> late = watch.Look();
        Model changed = model.Type("+");
        Assert.Null(changed.Here.Document.Save(DesignPath));
        Model saved = Updater.Update(changed, new Message.Saved(changed.Here.Slot, DesignPath, changed.Here.Document)).Model;

        Model after = late.Aggregate(saved, (now, seen) => Updater.Update(now, seen).Model);
        Assert.StartsWith("saved ", after.Status, StringComparison.Ordinal);
        Assert.DoesNotContain("!disk", Look(after, watch).Screen(), StringComparison.Ordinal);

        File.WriteAllText(DesignPath, "name = \"another\"\n");
        Assert.Contains("changed on disk: the design's file", Look(after, watch).Status, StringComparison.Ordinal);
    }

    [Fact]
    public void Card_ChangedOnDisk_IsTold_AndTakenOverOnRequest_AndUndoGoesBack()
    {
        Model model = Open();
        DiskWatch watch = new();
        model = Look(model, watch);
        Assert.Empty(model.Status);
        Assert.DoesNotContain("!disk", model.Screen(), StringComparison.Ordinal);

        WriteCard(CardPath, 20);
        Model told = Look(model, watch);
        Assert.Contains("changed on disk: the card mine.toml", told.Status, StringComparison.Ordinal);
        Assert.Contains("!disk", told.Screen().Split('\n')[0], StringComparison.Ordinal);
        Assert.Equal(7, Gain(told));
        Assert.False(told.Here.IsChanged);

        Model taken = told.Type("!");
        Assert.Equal(20, Gain(taken));
        Assert.Equal(taken.Design, taken.Here.Shown!.Design);
        Assert.DoesNotContain("!disk", taken.Screen(), StringComparison.Ordinal);
        Assert.Equal(20, Gain(taken.At("input", "input.series-resistor").Type("+")));

        // Back to what was shown before, and the disk says something else again.
        Model undone = taken.Type("u");
        Assert.Equal(7, Gain(undone));
        Assert.Contains("!disk", undone.Screen(), StringComparison.Ordinal);
        Assert.Equal(20, Gain(undone.Type("r")));
    }

    [Fact]
    public void File_ChangedOnDisk_IsTold_AndTakenOver_WithItsNewCard()
    {
        Model model = Open().At("input", "input.series-resistor").Type("+");
        DiskWatch watch = new();
        model = Look(model, watch);
        WriteCard(Path.Combine(_folder, "other.toml"), 11);
        File.WriteAllText(DesignPath, "name = \"theirs\"\n[amplifier]\ncard = \"other.toml\"\n");

        Model told = Look(model, watch);
        Assert.Contains("changed on disk: the design's file", told.Status, StringComparison.Ordinal);
        Assert.Contains("u brings your changes back", told.Status, StringComparison.Ordinal);
        Assert.Equal("d", told.Design.Name);

        Model taken = told.Type("!");
        Assert.Equal(("theirs", 11), (taken.Design.Name, Gain(taken)));
        Assert.False(taken.Here.IsChanged);
        Model undone = taken.Type("u");
        Assert.Equal(model.Here.Document.Text, undone.Here.Document.Text);
        Assert.Equal(7, Gain(undone));
        Assert.True(undone.Here.IsChanged);   // against the file as it is now
    }

    [Fact]
    public void File_SavedByUs_IsNoNews_AndOneThatIsGoneIsToldAfterTheSecondLook()
    {
        Model model = Open();
        DiskWatch watch = new();
        model = Look(model, watch).At("input", "input.series-resistor").Type("+");
        Assert.Null(model.Here.Document.Save(DesignPath));
        Model saved = Look(Updater.Update(model, new Message.Saved(0, DesignPath, model.Here.Document)).Model, watch);
        Assert.DoesNotContain("!disk", saved.Screen(), StringComparison.Ordinal);

        File.Delete(DesignPath);
        Model once = Look(saved, watch);
        Assert.DoesNotContain("!gone", once.Screen(), StringComparison.Ordinal);
        Model twice = Look(once, watch);
        Assert.Contains("gone from the disk", twice.Status, StringComparison.Ordinal);
        Assert.Contains("!gone", twice.Screen(), StringComparison.Ordinal);
        Assert.Equal(saved.Here.Document.Text, twice.Type("!").Here.Document.Text);
        Assert.Null(twice.Here.Document.Save(DesignPath));
        Assert.DoesNotContain("!gone", Look(twice, watch).Screen(), StringComparison.Ordinal);
    }

    /// <summary>A card that an edit names is read by an effect, and the edit made then; one that cannot be read is refused, and can be asked for again.</summary>
    [Fact]
    public void Card_NamedByAnEdit_IsReadByAnEffect()
    {
        Model model = Open().At(Place.Amplifier, "amplifier.card");
        Field<Design> field = DesignFields.Find(model.Design, "amplifier.card")!;
        Message set = new Message.SetField(field.Key, "new.toml");

        Model refused = Answered(Updater.Update(model, set));
        Assert.NotNull(refused.Complaint);
        Assert.Equal(7, Gain(refused));
        Assert.Same(model.Here.Document, refused.Here.Document);

        WriteCard(Path.Combine(_folder, "new.toml"), 33);
        Model changed = Answered(Updater.Update(refused, set));
        Assert.Equal(33, Gain(changed));
        Assert.Equal(7, Gain(changed.Type("u")));

        static Model Answered((Model Model, Effect? Effect) asked)
        {
            Effect.ReadCards read = Assert.IsType<Effect.ReadCards>(asked.Effect);
            return Updater.Update(asked.Model, new Message.CardsRead(read.Slot, read.Known.Read(read.Names), read.Again)).Model;
        }
    }

    /// <summary>A save as the performer makes it, and what comes of it.</summary>
    private static Model Saved(Model model, (Model Model, Effect? Effect) asked)
    {
        List<Message> said = [];
        using Performer performer = new(null, null, _ => { });
        performer.Attach(said.Add, fault => Assert.Fail(fault.ToString()));
        foreach (Effect effect in asked.Effect is Effect.Several several ? several.Effects : asked.Effect is null ? [] : [asked.Effect])
        {
            if (effect is Effect.Save)
            {
                performer.Perform(effect);
            }
        }

        Assert.NotNull(model);
        return said.Aggregate(Setup.Settle(asked.Model, asked.Effect), (now, message) => Updater.Update(now, message).Model);
    }

    private static Model Save(Model model) => Saved(model, Updater.Update(model, new Message.Pressed(Keystroke.Of('w'))));

    private static Model Choose(Model model, string words)
    {
        string[] screen = model.Screen().Split('\n');
        int first = Array.FindIndex(screen, line => line.Contains("back: write nothing", StringComparison.Ordinal));
        int row = Array.FindIndex(screen, line => line.Contains(words, StringComparison.Ordinal)) - first;
        Assert.True(row >= 0, words);
        Model there = model.Press([.. Enumerable.Repeat(KeyName.Down, row)]);
        return Saved(there, Updater.Update(there, new Message.Pressed(new Keystroke(KeyName.Enter))));
    }

    /// <summary>Theirs and mine in different keys, before anybody has looked at the disk: nothing is written unasked, and one file has both.</summary>
    [Fact]
    public void Save_OverAnothersChange_AsksFirst_AndMergesDifferentKeys()
    {
        Model model = Open().At("input", "input.series-resistor").Type("33 kΩ").Press(KeyName.Enter);
        const string Theirs = "name = \"theirs\"  # their comment\n[amplifier]\ncard = \"mine.toml\"\n";
        File.WriteAllText(DesignPath, Theirs);

        Model asked = Save(model);
        Assert.IsType<ConflictPage>(asked.Page);
        Assert.Equal(Theirs, File.ReadAllText(DesignPath));
        Assert.Contains("theirs", asked.Screen(), StringComparison.Ordinal);
        Assert.Contains("input.series-resistor", asked.Screen(), StringComparison.Ordinal);

        // The choice in hand writes nothing.
        Assert.Null(asked.Press(KeyName.Enter).Page);
        Assert.Equal(Theirs, File.ReadAllText(DesignPath));

        Model merged = Choose(asked, "merge:");
        Assert.Equal("theirs", merged.Design.Name);
        Assert.Equal(model.Design.Input.SeriesResistor, merged.Design.Input.SeriesResistor);
        Assert.False(merged.Here.IsChanged);
        Assert.Equal(merged.Here.Document.Text, File.ReadAllText(DesignPath));
        Assert.Contains("# their comment", merged.Here.Document.Text, StringComparison.Ordinal);
        Assert.Equal(model.Here.Document.Text, merged.Type("u").Here.Document.Text);
    }

    [Fact]
    public void Save_WhereBothChangedOneKey_CannotMerge_AndEitherCanBeTaken()
    {
        Model model = Open().At("input", "input.series-resistor").Type("33 kΩ").Press(KeyName.Enter);
        File.WriteAllText(DesignPath, "name = \"d\"\n[amplifier]\ncard = \"mine.toml\"\n[input]\nseries-resistor = \"47 kΩ\"\n");
        Model asked = Save(model);
        Assert.DoesNotContain("merge:", asked.Screen(), StringComparison.Ordinal);
        Assert.Contains("x input.series-resistor", asked.Screen(), StringComparison.Ordinal);

        Model theirs = Choose(asked, "take the version on disk");
        Assert.Equal(47e3, theirs.Design.Input.SeriesResistor.Ohms);
        Assert.False(theirs.Here.IsChanged);
        Assert.Equal(model.Here.Document.Text, theirs.Type("u").Here.Document.Text);

        Model mine = Choose(asked, "save yours over");
        Assert.Equal(model.Here.Document.Text, File.ReadAllText(DesignPath));
        Assert.False(mine.Here.IsChanged);
    }

    /// <summary>What changed again while the question stood is asked about again.</summary>
    [Fact]
    public void Save_OverWhatChangedAgain_AsksAgain()
    {
        Model model = Open().At("input", "input.series-resistor").Type("33 kΩ").Press(KeyName.Enter);
        File.WriteAllText(DesignPath, "name = \"once\"\n");
        Model asked = Save(model);
        File.WriteAllText(DesignPath, "name = \"twice\"\n");
        Model again = Choose(asked, "save yours over");
        Assert.IsType<ConflictPage>(again.Page);
        Assert.Contains("twice", again.Screen(), StringComparison.Ordinal);
        Assert.Equal("name = \"twice\"\n", File.ReadAllText(DesignPath));
    }

    [Theory]
    [InlineData("\0\u0001 no text")]
    [InlineData("")]
    [InlineData("[package]\nversion = 1\n")]
    public void File_ThatIsNoDesignAnyMore_IsTold_NotTakenOver_AndNotOverwrittenUnasked(string text)
    {
        Model model = Open().At("input", "input.series-resistor").Type("33 kΩ").Press(KeyName.Enter);
        DiskWatch watch = new();
        model = Look(model, watch);
        File.WriteAllText(DesignPath, text);
        Model told = Look(model, watch);
        Assert.Contains("no longer a design", told.Status, StringComparison.Ordinal);
        Assert.Same(told.Here.Document, told.Type("!").Here.Document);

        Model asked = Save(told);
        Assert.IsType<ConflictPage>(asked.Page);
        Assert.Equal(text, File.ReadAllText(DesignPath));
        Choose(asked, "save yours over");
        Assert.Equal(model.Here.Document.Text, File.ReadAllText(DesignPath));
    }

    [Fact]
    public void Card_DeletedOutside_IsTold_AndItsFiguresStay()
    {
        Model model = Open();
        DiskWatch watch = new();
        model = Look(model, watch);
        File.Delete(CardPath);
        Model told = Look(model, watch);
        Assert.Contains("the card mine.toml is gone", told.Status, StringComparison.Ordinal);
        Assert.Equal(7, Gain(told));
    }

    /// <summary>Two runs with one file each know of the other, whatever they call it, until one ends.</summary>
    [Fact]
    public void TwoRuns_WithOneFile_KnowOfEachOther()
    {
        Model model = Open();
        string state = Path.Combine(_folder, "state"), link = Path.Combine(_folder, "link.toml");
        File.CreateSymbolicLink(link, DesignPath);
        using Presence one = new(state);
        Presence other = new(state);
        one.Note(model.Designs);
        other.Note([model.Here with { Path = link }]);
        Assert.Equal(Environment.ProcessId, one.Others()[DesignPath]);
        Assert.Equal(Environment.ProcessId, other.Others()[DesignPath]);

        Model told = Updater.Update(model, new Message.OpenElsewhere(new Dictionary<int, int> { [0] = 4711 })).Model;
        Assert.Contains("open twice", told.Screen().Split('\n')[0], StringComparison.Ordinal);
        Assert.Contains("4711", told.Status, StringComparison.Ordinal);

        other.Dispose();
        Assert.Empty(one.Others());

        // A run that was killed leaves its file behind, and counts for nothing.
        File.WriteAllText(Path.Combine(state, $"run-{Environment.ProcessId}-x.open"), $"1\n{DesignPath}\n");
        Assert.Empty(one.Others());
        Assert.Single(Directory.GetFiles(state));
    }

    /// <summary>The whole way: the performer looks, the screen says so, the key takes over.</summary>
    [Fact]
    public void Performer_LooksAndTells()
    {
        Open();
        using Harness harness = new(80, 24, DesignPath);
        harness.LookAtDisk();
        WriteCard(CardPath, 20);
        harness.LookAtDisk();
        Assert.Contains("!disk", harness.Screen, StringComparison.Ordinal);
        Assert.Equal(7, Gain(harness.Session.Model));
        harness.Type("!");
        Assert.Equal(20, Gain(harness.Session.Model));
        Assert.DoesNotContain("!disk", harness.Screen, StringComparison.Ordinal);
    }
}
