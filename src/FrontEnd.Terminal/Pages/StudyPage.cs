using System.Collections.Concurrent;
using FrontEnd.Documents.Sheets;

namespace FrontEnd.Terminal;

/// <summary>A study of a whole design: what the command of the same name prints, and what can be taken over from it. What takes long runs
/// in the background, tells how far it is, and is broken off when its page is left.</summary>
public abstract record StudyPage : TextPage
{
    private const int BarWidth = 40;

    /// <summary>Tells runs apart in news from the background.</summary>
    public int Number { get; init; }

    /// <summary>Share that is done while it is worked out; null otherwise.</summary>
    public double? Progress { get; init; }

    /// <summary>What was found; null until worked out.</summary>
    public StudyOutcome? Outcome { get; init; }

    /// <summary>Which of the outcome's designs is in hand.</summary>
    public int Choice { get; init; }

    /// <summary>Its name.</summary>
    public abstract string Title { get; }

    /// <summary>What it does, for the moment before it is started.</summary>
    public abstract string Does { get; }

    /// <summary>True for a study that takes long enough to be started by hand.</summary>
    public virtual bool WaitsForStart => false;

    /// <summary>Asks the core for the study and the sheets for its text. Runs in the background.</summary>
    /// <param name="progress">Told the share that is done, from any thread.</param>
    /// <param name="cancellation">Ends the work with <see cref="OperationCanceledException"/>.</param>
    public abstract StudyOutcome Work(Design design, Action<double> progress, CancellationToken cancellation);

    /// <summary>A study whose page is left or which is begun anew is worked out for nobody: it is broken off.</summary>
    public static (Model Model, Effect? Effect) StopForgotten(Model before, (Model Model, Effect? Effect) next)
    {
        bool forgotten = before.Page is StudyPage { Progress: not null } was
            && !(next.Model.Page is StudyPage { Progress: not null } now && now.Number == was.Number);
        return !forgotten
            ? next
            : (next.Model, next.Effect is null ? new Effect.CancelStudy() : new Effect.Several([new Effect.CancelStudy(), next.Effect]));
    }

    /// <inheritdoc/>
    public override Page Hear(Model model, Message news) => news switch
    {
        Message.Progressed progressed when Progress is not null && progressed.Number == Number => this with { Progress = progressed.Share },
        Message.Studied studied when Progress is not null && studied.Number == Number =>
            this with { Progress = null, Outcome = studied.Outcome, Choice = studied.Outcome.Pick },
        _ => this,
    };

    /// <inheritdoc/>
    public override string Hint(Model model) => Outcome is { Choices.Count: > 0 } found ? found.Choices[Choice].Note : base.Hint(model);

    /// <inheritdoc/>
    public override IEnumerable<KeyHint> Keys(Model model)
    {
        KeyHint choose = new("up/dn Tab", "scroll");
        return this switch
        {
            { Progress: not null } => [KeyHint.Of(KeyName.Escape, "Esc", "break off")],
            { Outcome: null } => [KeyHint.Of(KeyName.Enter, "Enter", "start"), .. WishKeys, KeyHint.Back],
            { Outcome.Choices.Count: > 0 } => [
                new("+-", "choose"), KeyHint.Of(KeyName.Enter, "Enter", "take over"), choose, .. WishKeys, KeyHint.Back],
            _ => [choose, .. WishKeys, KeyHint.Back],
        };
    }

    /// <inheritdoc/>
    public override (Model Model, Effect? Effect)? Press(Model model, Keystroke key)
    {
        if (key.Key == KeyName.Escape)
        {
            return Progress is null ? Close(model) : ((model with { Page = this with { Progress = null } }).Tell("broken off"), null);
        }

        if (Outcome is not null && Moved(model, key) is { } moved)
        {
            return Show(model, moved);
        }

        if (key.Key == KeyName.Enter)
        {
            return this switch
            {
                { Progress: not null } => (model, null),
                { Outcome.Choices.Count: > 0 } => Take(model, Outcome.Choices[Choice]),
                { Outcome: null } => Start(model),
                _ => Close(model),
            };
        }

        return key is not { Key: KeyName.Letter, Alt: false, Ctrl: false } ? null
            : Progress is null ? PressLetter(model, char.ToLowerInvariant(key.Letter))
            : PressWhileWorking(model, char.ToLowerInvariant(key.Letter));
    }

    /// <summary>A letter while the study is worked out: one that asks for something else begins anew with it, every other one does nothing. None
    /// means what it means on the form, which cannot be seen.</summary>
    private (Model, Effect?) PressWhileWorking(Model model, char letter) =>
        Turned(letter) is { } turned ? Show(model, turned)
        : Wished(letter) is { WaitsForStart: false } wished ? wished.Start(model)
        : (model, null);

    /// <inheritdoc/>
    public override void Paint(Canvas canvas, Model model, Frame frame)
    {
        int end = canvas.Put(1, frame.Top, Title, Ink.Title);
        string head = Outcome is { Choices.Count: > 0 } found
            ? $"selected ({Choice + 1} of {found.Choices.Count}): {found.Choices[Choice].Word}"
            : Wish(model);
        canvas.Put(end + 3, frame.Top, canvas.Fit(head, frame.Width - end - 4), Outcome is { Choices.Count: > 0 } ? Ink.Key : Ink.Strong);
        if (Progress is { } share)
        {
            // The short ones do not say how far they are.
            string bar = new string('#', (int)(share * BarWidth)).PadRight(BarWidth, '.');
            canvas.Put(1, frame.Top + 2, WaitsForStart ? $"[{bar}] {(int)(100 * share),3} %" : "computing", Ink.Changed);
            canvas.Put(1, frame.Top + 3, "Esc breaks it off", Ink.Dim);
        }
        else if (Outcome is not null)
        {
            PaintText(canvas, model, frame);
        }
        else
        {
            int y = frame.Top + 2;
            foreach (string line in canvas.Wrap(Does + "\n\nEnter starts.", Math.Min(PageWidth, frame.Width) - 2))
            {
                canvas.Put(1, y++, line, Ink.Plain);
            }
        }
    }

    /// <summary>Opens a study; a short one begins at once.</summary>
    /// <param name="model">The interface as it stands.</param>
    /// <param name="study">The study.</param>
    /// <param name="takesUnknown">True for one that works on a design of which not everything is known.</param>
    /// <param name="needsDesign">False for one that has a design of its own.</param>
    protected static (Model Model, Effect? Effect) OpenStudy(Model model, StudyPage study, bool takesUnknown = false, bool needsDesign = true)
    {
        if (needsDesign && Errors.InTheWay(model.Here, mayBeUnknown: takesUnknown) is { } why)
        {
            return (model.Complain(why), null);
        }

        Model opened = model with { Page = study with { Number = model.Studies }, Editing = null };
        return study.WaitsForStart ? (opened, null) : study.Start(opened);
    }

    /// <inheritdoc/>
    protected override bool HasParagraphs => true;

    /// <inheritdoc/>
    protected override IReadOnlyList<string> TextIn(int width) => Progress is null && Outcome is not null ? Outcome.LinesIn(width) : [];

    /// <inheritdoc/>
    protected override Frame TextFrame(Canvas canvas, Frame frame) => frame with { Top = frame.Top + 1 };

    /// <summary>What it is asked for, in words; "" where there is nothing to say.</summary>
    protected virtual string Wish(Model model) => "";

    /// <summary>The keys that ask for something else.</summary>
    protected virtual IEnumerable<KeyHint> WishKeys => [];

    /// <summary>The study with another wish after a letter; null for a letter that says none.</summary>
    protected virtual StudyPage? Wished(char letter) => null;

    /// <summary>The same study seen another way after a letter: nothing is worked out anew; null for a letter that turns nothing.</summary>
    protected virtual StudyPage? Turned(char letter) => null;

    /// <summary>1 for the key that goes up, −1 for the one that goes down, else 0.</summary>
    protected static int StepOf(char letter) => letter is '+' or '=' ? 1 : letter == '-' ? -1 : 0;

    /// <summary>Findings one after the other.</summary>
    protected static string Found(IEnumerable<Finding> findings, int width, string before = "") =>
        string.Concat(findings.Select(finding => before + FindingText.Of(finding, width)));

    /// <summary>What stands in place of a study that cannot be made.</summary>
    protected static StudyOutcome Refused(IEnumerable<Finding> findings, string otherwise)
    {
        Finding[] errors = [.. findings.Where(finding => finding.Severity == Severity.Error)];
        return new StudyOutcome(width => errors.Length > 0 ? Found(errors, width) : string.Join('\n', Lettering.Wrap(otherwise, width, ascii: false)), [], 0);
    }

    private (Model, Effect?) Start(Model model)
    {
        int number = model.Studies + 1;
        StudyPage begun = this with { Number = number, Progress = 0, Outcome = null, Choice = 0, Scroll = 0, Sideways = 0 };
        return (model with { Studies = number, Page = begun }, new Effect.Study(number, begun, model.Design));
    }

    private (Model, Effect?)? PressLetter(Model model, char letter)
    {
        if (Outcome is { Choices.Count: > 0 } found && (StepOf(letter) != 0 || char.IsAsciiDigit(letter)))
        {
            int row = char.IsAsciiDigit(letter) ? letter - '1' : Math.Clamp(Choice + StepOf(letter), 0, found.Choices.Count - 1);
            return Show(model, this with { Choice = 0 <= row && row < found.Choices.Count ? row : Choice });
        }

        if (Turned(letter) is { } turned)
        {
            return Show(model, turned);
        }

        // What begins by itself begins anew.
        return Wished(letter) is not { } wished ? null : wished.WaitsForStart ? Show(model, wished with { Outcome = null }) : wished.Start(model);
    }

    private static (Model, Effect?) Take(Model model, StudyChoice choice)
    {
        string words = choice.Word.Length > 60 ? choice.Word[..choice.Word.IndexOf(':')] : choice.Word;
        Model closed = model with { Page = null };
        (Model next, Effect? effect) = Advising.TakeOver(closed, choice.Design, words, $"taken over: {words}; u undoes it");
        return next.Page is null && next.Complaint is null && ReferenceEquals(next.Here, closed.Here)
            ? (closed.Tell($"{words} is already set"), null)
            : (next, effect);
    }
}

/// <summary>What a study found.</summary>
/// <param name="Write">Its text in so many columns; in 80 what the command of the same name prints.</param>
/// <param name="Choices">Designs that can be taken over; empty where there is nothing to take.</param>
/// <param name="Pick">The recommended one of them.</param>
public record StudyOutcome(Func<int, string> Write, IReadOnlyList<StudyChoice> Choices, int Pick)
{
    private readonly WrittenLines _lines = new(Write);

    /// <summary>What the command prints.</summary>
    public string Text => Write(TextPage.PageWidth);

    /// <summary>The same in lines.</summary>
    public IReadOnlyList<string> Lines => LinesIn(TextPage.PageWidth);

    /// <summary>The lines of a page of so many columns.</summary>
    public IReadOnlyList<string> LinesIn(int width) => _lines.In(width);
}

/// <summary>A text in lines, kept by width: a page is drawn at each key.</summary>
internal sealed class WrittenLines(Func<int, string> write)
{
    private readonly ConcurrentDictionary<int, IReadOnlyList<string>> _kept = [];

    /// <summary>The lines of a page of so many columns.</summary>
    public IReadOnlyList<string> In(int width) => _kept.GetOrAdd(width, columns => write(columns).TrimEnd('\n').Split('\n'));
}

/// <summary>A design to take over, and its name in a few words.</summary>
/// <param name="Note">A sentence about it.</param>
public sealed record StudyChoice(string Word, Design Design, string Note);

/// <summary>Passes on what is told, on the thread that tells it.</summary>
internal sealed class Told<T>(Action<T> told) : IProgress<T>
{
    public void Report(T value) => told(value);
}
