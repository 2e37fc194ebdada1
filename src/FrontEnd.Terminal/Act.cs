namespace FrontEnd.Terminal;

/// <summary>Something that can be done, by name: its keys, what the help says of it, and what it does to the model. Keys, key line, help
/// and mouse all speak of these.</summary>
/// <param name="letter">Plain letter, for while no field is being typed in; Alt and the letter works always. '\0' for none.</param>
/// <param name="others">Further keys.</param>
/// <param name="does">What it does, in a few words.</param>
/// <param name="perform">From a model to the next and what is wanted done.</param>
public sealed class Act(char letter, IReadOnlyList<Keystroke> others, string does, Func<Model, (Model Model, Effect? Effect)> perform)
{
    /// <summary>The letter of the page of what else there is.</summary>
    public const char MoreLetter = 'z';

    /// <summary>Rows that a page key goes.</summary>
    private const int Leap = 10;

    /// <summary>More rows than any list has.</summary>
    private const int ToTheEnd = 10_000;

    public static readonly Act PreviousBlock = new(
        '\0', [new(KeyName.Left)], "block nearer the scalp", model => (Whereabouts.Walk(model, -1), null));
    public static readonly Act NextBlock = new(
        '\0', [new(KeyName.Right)], "block nearer the samples", model => (Whereabouts.Walk(model, +1), null));
    public static readonly Act Up = new('\0', [new(KeyName.Up)], "field or figure above", model => (Whereabouts.Step(model, -1), null));
    public static readonly Act Down = new('\0', [new(KeyName.Down)], "field or figure below", model => (Whereabouts.Step(model, +1), null));
    public static readonly Act PageUp = new('\0', [new(KeyName.PageUp)], "ten up", model => (Whereabouts.Step(model, -Leap), null));
    public static readonly Act PageDown = new('\0', [new(KeyName.PageDown)], "ten down", model => (Whereabouts.Step(model, +Leap), null));
    public static readonly Act First = new(
        '\0', [new(KeyName.Home)], "first field or figure", model => (Whereabouts.Step(model, -ToTheEnd), null));
    public static readonly Act Last = new(
        '\0', [new(KeyName.End)], "last field or figure", model => (Whereabouts.Step(model, +ToTheEnd), null));
    public static readonly Act SwitchPane = new(
        '\0', [new(KeyName.Tab)], "switch between what you can change and what it does", Whereabouts.SwitchPane);
    public static readonly Act Enter = new('\0', [new(KeyName.Enter)], "on a field: type or choose; on a figure: why",
        model => model.OnResults ? WhyPage.Open(model) : Typing.Begin(model, null));
    public static readonly Act Back = new('\0', [new(KeyName.Escape)], "discard, close, go back", model => (Whereabouts.Back(model), null));
    public static readonly Act StepUp = new(
        '+', [Keystroke.Of('=')], "next preferred value up", model => Changes.StepValue(model, up: true)) { NeedsTheForm = true };
    public static readonly Act StepDown = new('-', [], "next preferred value down", model => Changes.StepValue(model, up: false)) { NeedsTheForm = true };
    public static readonly Act ToDefault = new('d', [], "back to the default or the card's value", Changes.ToDefault) { NeedsTheForm = true };
    public static readonly Act ToSaved = new('b', [], "back to the saved value", Changes.ToSaved) { NeedsTheForm = true };
    public static readonly Act Undo = new('u', [], "undo", Changes.UndoOne);
    public static readonly Act Redo = new('r', [new(KeyName.Letter, 'y', Ctrl: true)], "redo", Changes.RedoOne);
    public static readonly Act ViewVerdicts = new('v', [], "verdicts and requirements",
        model => (Whereabouts.GoTo(model, Place.Verdicts) with { OnResults = true }, null));
    public static readonly Act ViewNoise = View("noise", 'n', "noise, source by source");
    public static readonly Act ViewMains = View("mains", 'm', "mains hum and its harmonics");
    public static readonly Act ViewLevels = View("levels", 'l', "levels: offset, headroom, clipping");
    public static readonly Act ViewAliases = View("aliases", 'a', "aliases: what folds and where it lands");
    public static readonly Act ViewSafety = View("safety", 'f', "safety: currents after a fault");
    public static readonly Act ViewPower = View("power", 'p', "power and data rate");
    public static readonly Act ViewSheet = View("sheet", 's', "the design's name, purpose, montage; write its sheet");
    public static readonly Act RemoveStage = new('x', [new(KeyName.Delete)], "remove the selected stage, filter or band", Elements.Remove) { NeedsTheForm = true, StandsAlone = true };
    public static readonly Act MoveEarlier = new(
        '<', [], "move the selected stage, filter or band one place nearer the scalp", model => Elements.Move(model, -1)) { NeedsTheForm = true };
    public static readonly Act MoveLater = new('>', [], "move it one place nearer the samples", model => Elements.Move(model, +1)) { NeedsTheForm = true };
    public static readonly Act Apply = new('h', [], "make the change that most helps the selected figure", Advising.Apply) { NeedsTheForm = true };
    public static readonly Act NextDesign = new('k', [], "next open design", model => (Whereabouts.NextDesign(model), null));
    public static readonly Act CloseDesign = new('\0', [new(KeyName.Letter, 'w', Ctrl: true)], "close this design", Files.AskClose);
    public static readonly Act Open = new('o', [new(KeyName.Letter, 'o', Ctrl: true)], "open a design", Files.AskOpen);
    public static readonly Act Save = new('w', [new(KeyName.Letter, 's', Ctrl: true)], "save", Files.Save) { StandsAlone = true };
    public static readonly Act SaveAs = new('e', [], "save under another name", model => Files.AskName(model, FilePurpose.SaveAs));
    public static readonly Act WriteSheet = new('y', [], "write the sheet", model => Files.AskName(model, FilePurpose.Sheet));
    public static readonly Act WriteCoefficients = new(
        '\0', [], "write the digital filters' coefficients", Files.AskCoefficients) { Under = 'c' };
    public static readonly Act TakeFromDisk = new(
        '!', [], "take over what changed on disk: the design's file, its cards", Disk.TakeOver) { Under = 'd' };
    public static readonly Act Tour = new('t', [], "guided tour, on a copy of the design", Touring.Start);
    public static readonly Act Copy = new(
        '\0', [new(KeyName.Letter, 'c', Ctrl: true)], "in a field: copy; elsewhere: quit", Files.AskQuit);
    public static readonly Act Redraw = new(
        '\0', [new(KeyName.F5), new(KeyName.Letter, 'l', Ctrl: true)], "redraw the screen", model => (model, new Effect.Redraw()))
    {
        IsOfTheTerminal = true,
    };
    public static readonly Act Suspend = new(
        '\0', [new(KeyName.Letter, 'z', Ctrl: true)], "suspend: back to the shell; fg there brings the screen back",
        model => (model, new Effect.Suspend()))
    {
        IsOfTheTerminal = true,
    };
    public static readonly Act Quit = new('q', [new(KeyName.Letter, 'q', Ctrl: true)], "quit", Files.AskQuit) { StandsAlone = true };

    /// <summary>Plain letter; '\0' for none.</summary>
    public char Letter => letter;

    /// <summary>Further keys.</summary>
    public IReadOnlyList<Keystroke> Others => others;

    /// <summary>What it does, in a few words.</summary>
    public string Does => does;

    /// <summary>True for what concerns the terminal and not the design: its keys mean the same everywhere, in a field and in a question too.</summary>
    public bool IsOfTheTerminal { get; init; }

    /// <summary>True for what acts on the field or figure in hand: nothing that cannot be seen is changed, so a page that covers the form is
    /// closed first.</summary>
    public bool NeedsTheForm { get; init; }

    /// <summary>True for what saves, ends or removes: its letter does nothing in the middle of what looks like a word.</summary>
    public bool StandsAlone { get; init; }

    /// <summary>The letter behind the key of the page of what else there is; '\0' for what is not under it.</summary>
    public char Under { get; init; }

    /// <summary>The keys as the help writes them.</summary>
    public string Keys => string.Join(
        ' ',
        (string[])
        [
            .. letter == '\0' ? (string[])[] : [letter.ToString()],
            .. others.Select(key => key.ToString()),
            .. Under == '\0' ? (string[])[] : [$"{MoreLetter} {Under}"],
        ]);

    /// <summary>The model after it, and what is wanted done.</summary>
    public (Model Model, Effect? Effect) Perform(Model model) => perform(model);

    private static Act View(string id, char letter, string does) => new(letter, [], does, model => (Whereabouts.GoTo(model, id), null));
}
