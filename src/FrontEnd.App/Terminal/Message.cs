using FrontEnd.Advice;
using FrontEnd.Documents;
using FrontEnd.Findings;
using FrontEnd.Identity;
using FrontEnd.Results;

namespace FrontEnd.App.Terminal;

/// <summary>What can happen to the model: a key, a click, or news from the background. A closed set.</summary>
public abstract record Message
{
    private Message()
    {
    }

    public sealed record Pressed(Keystroke Key) : Message;

    public sealed record Do(Act Act) : Message;

    public sealed record Pasted(string Text) : Message;

    public sealed record Resized(int Width, int Height) : Message;

    public sealed record GoTo(string PlaceId) : Message;

    public sealed record PickField(int Row) : Message;

    public sealed record PickResult(int Row) : Message;

    public sealed record PickChoice(int Row) : Message;

    public sealed record CursorAt(double Share) : Message;

    /// <summary>The wheel over the form, the figures or an overlay.</summary>
    public sealed record Scrolled(int Lines) : Message;

    public sealed record Evaluated(int Slot, int Run, Assessment Assessment) : Message;

    public sealed record Advised(int Slot, int Run, Assessment Assessment) : Message;

    public sealed record Moved(int Slot, int Run, ResultId ResultId, IReadOnlyList<Sensitivity> Sensitivities) : Message;

    /// <summary>How far a study is, 0 to 1.</summary>
    public sealed record Progressed(int Number, double Share) : Message;

    public sealed record Studied(int Number, StudyOutcome Outcome) : Message;

    public sealed record Opened(DesignDocument Document, string? Path) : Message;

    public sealed record Saved(int Slot, string Path, DesignDocument Document) : Message;

    public sealed record Listed(FilePurpose Purpose, string Typed, IReadOnlyList<string> Entries) : Message;

    /// <summary>A line for the user: a file written, a copy made.</summary>
    public sealed record Told(string Text) : Message;

    /// <summary>Something did not work.</summary>
    public sealed record Failed(Finding Finding) : Message;

    /// <summary>Unsaved work of an earlier session was found.</summary>
    public sealed record FoundRecovery(IReadOnlyList<RecoveredDesign> Designs) : Message;

    public sealed record Recover(IReadOnlyList<RecoveredDesign> Designs) : Message;

    public sealed record DropRecovery : Message;

    public sealed record Close(int Slot) : Message;

    /// <summary>Overwrite the file even though it is there.</summary>
    public sealed record SaveTo(string Path) : Message;

    public sealed record Exists(FilePurpose Purpose, string Path) : Message;

    public sealed record SheetTo(string Path) : Message;

    public sealed record CoefficientsTo(string Path) : Message;

    /// <summary>The same card for several parts of the design, one step of undo.</summary>
    public sealed record SetCards(IReadOnlyList<string> Keys, string Card) : Message;

    /// <summary>Take a document in hand that was asked about first.</summary>
    public sealed record Take(DesignDocument Document, string Label) : Message;

    public sealed record LeaveNow : Message;

    public sealed record Dismiss : Message;
}

/// <summary>Unsaved work of an earlier session.</summary>
/// <param name="Path">The file it belongs to; null where it had none.</param>
public sealed record RecoveredDesign(string? Path, string Text)
{
    /// <summary>What stands in that file now; null where there is none.</summary>
    public string? FileText { get; init; }
}
