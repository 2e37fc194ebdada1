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
