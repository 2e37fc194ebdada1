using FrontEnd.Terminal;
using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Documents;
using FrontEnd.Fields;
using FrontEnd.Findings;
using FrontEnd.Results;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;
using Result = FrontEnd.Results.Result;

namespace FrontEnd.App.Tests.Terminal;

/// <summary>What holds whatever is pressed.</summary>
public class LawTests
{
    private static readonly Model Starter = Setup.Start();
    private static readonly Model Headband = Setup.Start(Setup.Headband);

    public static class Arbitraries
    {
        private static readonly Gen<Keystroke> Any = Gen.OneOf(
            Gen.Elements(Enum.GetValues<KeyName>()).Where(key => key != KeyName.Letter).Select(key => new Keystroke(key)),
            Gen.Elements("+-=0123456789.kMuΩ µhHzV%abcdefghijklmnopqrstuvwxyz?ABXY\"日".ToCharArray()).Select(Keystroke.Of),
            Gen.Elements("abcdefghijklmnopqrstuvwxyz".ToCharArray()).Select(letter => new Keystroke(KeyName.Letter, letter, Alt: true)),
            Gen.Elements("acluwyzoqsr".ToCharArray()).Select(letter => new Keystroke(KeyName.Letter, letter, Ctrl: true)));

        public static Arbitrary<Keystroke> Keys() => Any.ToArbitrary();
    }

    /// <summary>What leads into each page, so that the keys of every one are pressed; nothing for the form.</summary>
    private static readonly IReadOnlyList<Keystroke[]> Pages = [[], [], [Keystroke.Of('v'), new(KeyName.Enter)], [Keystroke.Of('+'), Keystroke.Of('q')], .. KeyMap.Acts.SelectMany(Ways)];

    // What takes long is not worked out here; what is pressed on a study's page does not depend on what it finds.
    private static readonly StudyOutcome Found =
        new(_ => "found\n\n1  one\n2  two", [new("design 1: the same", Headband.Design, "note"), new("design 2: the starter", Starter.Design, "note")], 0);

    private static readonly System.Collections.Concurrent.ConcurrentDictionary<Type, StudyOutcome> Outcomes = new();

    private static StudyOutcome Outcome(StudyPage page) =>
        page.WaitsForStart ? Found : Outcomes.GetOrAdd(page.GetType(), _ => page.Work(Headband.Design, _ => { }, CancellationToken.None));

    /// <summary>The keys that lead into an act's page, and those that start the study there; none for an act that leads to no page.</summary>
    private static IEnumerable<Keystroke[]> Ways(Act act)
    {
        Keystroke[] keys = act.Letter != '\0' ? [Keystroke.Of(act.Letter)] : act.Others.Count > 0 ? [act.Others[0]] : [Keystroke.Of(Act.MoreLetter), Keystroke.Of(act.Under)];
        Page? page = keys.Aggregate(Headband, (model, key) => Updater.Update(model, new Message.Pressed(key)).Model).Page;
        return page is null ? [] : page is StudyPage { WaitsForStart: true } ? [keys, [.. keys, new(KeyName.Enter)]] : [keys];
    }

    /// <summary>Every page has a way that the laws walk.</summary>
    [Fact]
    public void Pages_AllOfThem_AreReached()
    {
        IEnumerable<Type> reached = Pages.Select(keys => keys.Aggregate(Headband, (model, key) => Updater.Update(model, new Message.Pressed(key)).Model).Page?.GetType()).OfType<Type>();
        // What a field can be, a file that another program has changed (`DiskTests`), a class that is marked (`ProblemPagesTests`) and a message that has no room (`MessageTests`) are not reached by keys alone.
        Assert.Equal([nameof(ChoosePage), nameof(ConflictPage), nameof(MarkingPage), nameof(MessagePage)], typeof(Page).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(Page)) && !type.IsAbstract).Except(reached).Select(type => type.Name));
    }

    /// <summary>Any keys, on any page, at any size: nothing throws, the picture has the size asked for, and what is drawn in ASCII is ASCII.</summary>
    [Property(Arbitrary = [typeof(Arbitraries)], MaxTest = 300)]
    public void AnyKeys_NeverThrow(Keystroke[] keys, byte page, byte width, byte height, bool ascii)
    {
        Model model = Headband with { Width = width, Height = Math.Max((byte)1, height) };
        IEnumerable<Keystroke> first = Pages[page % Pages.Count];
        foreach (Keystroke key in first.Concat(keys))
        {
            // Figures of the first moment stand for all: what is pressed matters here, not what is worked out.
            (model, Effect? effect) = Updater.Update(model, new Message.Pressed(key));
            foreach (Effect one in effect is Effect.Several several ? several.Effects : effect is null ? [] : [effect])
            {
                model = one switch
                {
                    Effect.Evaluate evaluate => Updater.Update(model, new Message.Evaluated(evaluate.Slot, evaluate.Run, Headband.Here.Shown!)).Model,
                    Effect.Study study when study.Number % 3 != 0 => Updater.Update(model, new Message.Studied(study.Number, Outcome(study.Page))).Model,
                    Effect.Study study => Updater.Update(model, new Message.Progressed(study.Number, 0.5)).Model,
                    _ => model,
                };
            }

            Canvas canvas = Painter.Paint(model, ascii);
            Assert.Equal(Math.Max(1, (int)width), canvas.Width);
            if (ascii)
            {
                Assert.True(System.Text.Ascii.IsValid(canvas.ToString()), canvas.ToString());
            }
        }
    }

    /// <summary>Undo after a change is the state before it, redo the state after it; to the character of the file.</summary>
    [Property(MaxTest = 120)]
    public void UndoAfterDo_IsIdentity(ushort place, ushort row, byte act, bool headband)
    {
        Model start = headband ? Headband : Starter;
        List<string> places = [.. Place.Blocks(start.Design).Select(one => one.Id), .. Place.Views.Select(one => one.Id)];
        Model there = Updater.Update(start, new Message.GoTo(places[place % places.Count])).Model;
        int rows = Whereabouts.FormOf(there).Count;
        there = there with { FieldRow = rows == 0 ? 0 : row % rows };

        Act[] acts = [Act.StepUp, Act.StepDown, Act.ToDefault, Act.MoveEarlier, Act.MoveLater, Act.RemoveStage];
        Model done = Updater.Update(there, new Message.Do(acts[act % acts.Length])).Model;
        Model undone = Updater.Update(done, new Message.Do(Act.Undo)).Model;
        Model redone = Updater.Update(undone, new Message.Do(Act.Redo)).Model;

        Assert.Equal(start.Here.Document.Text, undone.Here.Document.Text);
        Assert.Equal(DesignWriter.ToToml(start.Design), DesignWriter.ToToml(undone.Design));
        Assert.Equal(done.Here.Document.Text, redone.Here.Document.Text);
        Assert.False(undone.Here.IsChanged);
    }

    /// <summary>Where 0 is legal, a step up from it goes to the field's smallest value and a step down comes back; stepping down always ends there.</summary>
    [Theory]
    [InlineData("starter.toml")]
    [InlineData("dry-headband.toml")]
    [InlineData("mixed-headset.toml")]
    public void StepUpFromNothing_GoesToTheSmallestValue_AndDownComesBack(string file)
    {
        Design design = DesignDocument.Read(Path.Combine(Setup.Root, "designs", file)).Design;
        int checkedFields = 0;
        foreach (Field<Design> field in DesignFields.Of(design).Where(one => one.IsNumeric && one.Range?.Contains(0) == true && one.SiValue(design) is not null))
        {
            Design at = field.WithSiValue(design, 0);
            string nothing = FieldText.Format(field, field.Get(at));
            string? up = Stepping.Next(field, at, up: true);
            Assert.True(up is not null && up != nothing, $"{field.Key}: + from {nothing} gives {up ?? "nothing"}");
            Design above = Set(at, field, up!);
            Assert.True(field.SiValue(above) > 0, $"{field.Key}: {up}");
            Assert.Equal(nothing, Stepping.Next(field, above, up: false));
            checkedFields++;

            // From where it stands down to the end.
            Design now = design;
            for (int steps = 0; field.SiValue(now) > 0; steps++)
            {
                Assert.True(steps < 400, $"{field.Key} never comes to 0");
                now = Set(now, field, Stepping.Next(field, now, up: false)!);
            }
        }

        Assert.True(checkedFields > 20);
    }

    private static Design Set(Design design, Field<Design> field, string text)
    {
        Assert.True(FieldText.TryParse(field, text, out object? value, out Finding? finding), finding?.Message);
        return field.Set(design, value);
    }

    /// <summary>Stepping up and down again comes back, where a step was made from a preferred value.</summary>
    [Property(MaxTest = 60)]
    public void StepUpThenDown_FromAPreferredValue_IsIdentity(ushort number)
    {
        List<Field<Design>> fields = [.. DesignFields.Of(Starter.Design).Where(field => field.Holds<Quantities.Resistance>() || field.Holds<Quantities.Capacitance>() || field.Kind == FieldKind.Count)];
        Field<Design> field = fields[number % fields.Count];
        if (Stepping.Next(field, Starter.Design, up: true) is { } first && DesignFields.Find(Starter.Design, field.Key) is not null)
        {
            Design at = Put(Starter.Design, field, first);
            if (Stepping.Next(field, at, up: true) is { } second)
            {
                Design above = Put(at, field, second);
                Assert.Equal(first, Stepping.Next(field, above, up: false));
            }
        }

        static Design Put(Design design, Field<Design> field, string text)
        {
            Assert.True(FieldText.TryParse(field, text, out object? value, out Finding? finding), finding?.Message);
            return field.Set(design, value);
        }
    }

    /// <summary>What the screen shows is what the results print: every figure of every place, walked through one by one.</summary>
    [Theory]
    [InlineData(null)]
    [InlineData("dry-headband.toml")]
    [InlineData("gel-cap.toml")]
    [InlineData("saline-sponge.toml")]
    public void Screen_ShowsWhatTheResultsPrint(string? file)
    {
        Model model = Setup.Start(file is null ? null : Path.Combine(Setup.Root, "designs", file), 200, 50);
        HashSet<string> seen = [];
        foreach (string place in (string[])[.. Place.Blocks(model.Design).Select(one => one.Id), .. Place.Views.Select(one => one.Id)])
        {
            Model there = Updater.Update(model, new Message.GoTo(place)).Model with { OnResults = true };
            IReadOnlyList<Result> results = Whereabouts.ResultsOf(there);
            for (int row = 0; row < results.Count; row++)
            {
                string screen = (there with { ResultRow = row }).Screen();
                string value = ResultText.Value(results[row]);
                seen.Add(results[row].Id.Text);
                Assert.True(results[row].State != ResultState.Number || screen.Contains(value, StringComparison.Ordinal), $"{results[row].Id}: {value} is not on the screen of {place}:\n{screen}");
            }
        }

        // And nothing that was worked out is out of reach.
        Assert.Equal([], model.Here.Shown!.Results.Select(result => result.Id.Text).Except(seen));
    }

    /// <summary>Every field of a design stands on some form.</summary>
    [Theory]
    [InlineData("dry-headband.toml")]
    [InlineData("gel-cap.toml")]
    public void Forms_HoldEveryField(string file)
    {
        Model model = Setup.Start(Path.Combine(Setup.Root, "designs", file));
        HashSet<string> seen = [.. Place.Blocks(model.Design).Concat(Place.Views).SelectMany(place => FormRow.Of(model.Design, place)).Select(row => row.Field.Key)];

        // Ranges are tables of other fields; they are written in the file.
        Assert.Equal([], DesignFields.Of(model.Design).Where(field => field.Kind != FieldKind.Ranges).Select(field => field.Key).Except(seen));
    }
}
