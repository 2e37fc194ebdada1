using FrontEnd.Advice;
using FrontEnd.Documents;
using FrontEnd.Documents.Reading;
using FrontEnd.Identity;

namespace FrontEnd.Terminal;

/// <summary>What can happen to the model: a key, a click, or news from the background. A closed set.</summary>
public abstract record Message
{
    private Message()
    {
    }

    /// <summary>A key was pressed.</summary>
    /// <param name="MidWord">True for a letter in the middle of what looks like a word typed slowly.</param>
    public sealed record Pressed(Keystroke Key, bool MidWord = false) : Message;

    /// <summary>Something is to be done, by name.</summary>
    public sealed record Do(Act Act) : Message;

    /// <summary>A text was pasted.</summary>
    public sealed record Pasted(string Text) : Message;

    /// <summary>The terminal has another size.</summary>
    public sealed record Resized(int Width, int Height) : Message;

    /// <summary>To a place.</summary>
    public sealed record GoTo(string PlaceId) : Message;

    /// <summary>A click on a field of the form.</summary>
    public sealed record PickField(int Row) : Message;

    /// <summary>A click on a figure.</summary>
    public sealed record PickResult(int Row) : Message;

    /// <summary>A click on a row of the page, or an answer.</summary>
    public sealed record PickChoice(int Row) : Message;

    /// <summary>A click into a plot: share of its axis, 0 to 1.</summary>
    public sealed record CursorAt(double Share) : Message;

    /// <summary>The wheel was turned.</summary>
    /// <param name="Over">What it points at where nothing lies over the form.</param>
    public sealed record Scrolled(int Lines, Pane Over) : Message;

    /// <summary>Letters that are commands came as a word does: none of them is one.</summary>
    /// <param name="Before">The model before the first of them.</param>
    public sealed record Word(string Text, Model Before) : Message;

    /// <summary>New figures.</summary>
    public sealed record Evaluated(int Slot, int Run, Assessment Assessment) : Message;

    /// <summary>The same figures with what helps.</summary>
    public sealed record Advised(int Slot, int Run, Assessment Assessment) : Message;

    /// <summary>What moves a figure.</summary>
    public sealed record Moved(int Slot, int Run, ResultId ResultId, IReadOnlyList<Sensitivity> Sensitivities) : Message;

    /// <summary>How far a study is, 0 to 1.</summary>
    public sealed record Progressed(int Number, double Share) : Message;

    /// <summary>What a study found.</summary>
    public sealed record Studied(int Number, StudyOutcome Outcome) : Message;

    /// <summary>A design was read.</summary>
    public sealed record Opened(DesignDocument Document, string? Path) : Message;

    /// <summary>A design's file and its cards as they stand on the disk.</summary>
    /// <param name="Path">The file that was looked at; null for a design that is in none.</param>
    /// <param name="File">What it says; null where it is gone.</param>
    /// <param name="Known">What the file said as far as the program knew when it looked: a save in between makes the look stale.</param>
    public sealed record SeenOnDisk(int Slot, string? Path, DesignDocument? File, CardTexts Cards, DesignDocument Known) : Message;

    /// <summary>A save found another text in the file than it knew of, and wrote nothing.</summary>
    /// <param name="Theirs">What the file says now.</param>
    public sealed record FoundOther(int Slot, string Path, DesignDocument Theirs) : Message;

    /// <summary>Which of the open designs other runs of the program have open as well.</summary>
    /// <param name="Processes">By slot, the number of the process that has it.</param>
    public sealed record OpenElsewhere(IReadOnlyDictionary<int, int> Processes) : Message;

    /// <summary>Cards that an edit asked for.</summary>
    /// <param name="Again">The edit, to be made again with them.</param>
    public sealed record CardsRead(int Slot, CardTexts Cards, Message Again) : Message;

    /// <summary>A design was written.</summary>
    public sealed record Saved(int Slot, string Path, DesignDocument Document) : Message;

    /// <summary>What a half-typed path can become.</summary>
    public sealed record Listed(FilePurpose Purpose, string Typed, IReadOnlyList<string> Entries) : Message;

    /// <summary>A line for the user: a file written, a copy made.</summary>
    public sealed record Told(string Text) : Message;

    /// <summary>Something did not work.</summary>
    public sealed record Failed(Finding Finding) : Message;

    /// <summary>Earlier sessions left something: unsaved work, or files that cannot be read.</summary>
    public sealed record FoundRecovery(FoundWork Work) : Message;

    /// <summary>Take unsaved work in hand.</summary>
    public sealed record Recover(IReadOnlyList<RecoveredDesign> Designs) : Message;

    /// <summary>Delete unsaved work that was found.</summary>
    public sealed record DropRecovery : Message;

    /// <summary>Close a design, whatever is unsaved in it.</summary>
    public sealed record Close(int Slot) : Message;

    /// <summary>Overwrite the file even though it is there.</summary>
    public sealed record SaveTo(string Path) : Message;

    /// <summary>A file is there already.</summary>
    public sealed record Exists(FilePurpose Purpose, string Path) : Message
    {
        /// <summary>What is told to write all the same; null where the purpose says it.</summary>
        public Message? Anyway { get; init; }
    }

    /// <summary>Write marks, over what is there.</summary>
    internal sealed record MarksTo(string Path, MarkingPage Page) : Message;

    /// <summary>Write the sheet, over what is there.</summary>
    public sealed record SheetTo(string Path) : Message;

    /// <summary>Write the coefficients, over what is there.</summary>
    public sealed record CoefficientsTo(string Path) : Message;

    /// <summary>A text for a field, as if it were typed.</summary>
    public sealed record SetField(string Key, string Text) : Message;

    /// <summary>The same card for several parts of the design, one step of undo.</summary>
    public sealed record SetCards(IReadOnlyList<string> Keys, string Card) : Message;

    /// <summary>Take a document in hand that was asked about first.</summary>
    public sealed record Take(DesignDocument Document, string Label) : Message;

    /// <summary>Save the design in hand, and once it is on the disk do something else.</summary>
    public sealed record SaveThen(Message Next) : Message;

    /// <summary>Quit, whatever is unsaved.</summary>
    public sealed record LeaveNow : Message;

    /// <summary>Close the page.</summary>
    public sealed record Dismiss : Message;
}

/// <summary>Parts of the form that are scrolled each for itself.</summary>
public enum Pane
{
    /// <summary>Neither of them, such as the strip or a plot.</summary>
    None,

    /// <summary>What can be changed.</summary>
    Fields,

    /// <summary>What it does.</summary>
    Figures,
}

/// <summary>Unsaved work of an earlier session.</summary>
/// <param name="Path">The file it belongs to; null where it had none.</param>
public sealed record RecoveredDesign(string? Path, string Text)
{
    /// <summary>What stands in that file now; null where there is none.</summary>
    public string? FileText { get; init; }

    /// <summary>The user's cards that the two texts name.</summary>
    public CardTexts Cards { get; init; } = CardTexts.None;
}
