using FrontEnd.Documents;
using FrontEnd.Documents.Reading;
using FrontEnd.Identity;
using FrontEnd.Reporting;
using FrontEnd.Unknowns;

namespace FrontEnd.Terminal;

/// <summary>What the model wants done outside it; one class performs these and sends messages back. A closed set.</summary>
public abstract record Effect
{
    private Effect()
    {
    }

    /// <summary>Work out a design, then look for advice.</summary>
    public sealed record Evaluate(int Slot, int Run, Design Design) : Effect
    {
        /// <summary>Why there are no figures, as where some values are not known; null where they are worked out.</summary>
        public Finding? Refused { get; init; }

        /// <summary>The document, where some of its values could not be read: then only what does not rest on them is worked out. Null elsewhere.</summary>
        public DesignDocument? ReadInPart { get; init; }

        /// <summary>Of a document with its cards read.</summary>
        public static Evaluate Of(int slot, int run, DesignDocument document) => new(slot, run, document.Design)
        {
            Refused = document.Undecided ?? Errors.NotAllKnown(document) ?? (document.Unread is [var first, ..] ? first.Problem : null),
            ReadInPart = document.WithoutFigures is null && document.Unread.Count > 0 ? document : null,
        };

        /// <summary>The figures: none that rests on a value which nobody has given.</summary>
        /// <param name="whole">Works out a design that is known in whole.</param>
        public Assessment Figures(Func<Design, Assessment> whole) =>
            ReadInPart is { } document ? PartlyReadEvaluator.Evaluate(document.AsFarAsRead())
            : Refused is { } why ? Evaluator.WithoutFigures(Design, [why])
            : whole(Design);
    }

    /// <summary>Work out what moves one result.</summary>
    public sealed record Move(int Slot, int Run, Assessment Assessment, ResultId ResultId) : Effect;

    /// <summary>Read a design file.</summary>
    public sealed record Open(string Path) : Effect;

    /// <summary>Read part cards that an edit names, then make the edit again.</summary>
    /// <param name="Known">The cards that are held already, with the place where paths start from.</param>
    public sealed record ReadCards(int Slot, CardTexts Known, IReadOnlyList<string> Names, Message Again) : Effect;

    /// <param name="MayReplace">False where a file that is there must be asked about first.</param>
    public sealed record Save(int Slot, string Path, DesignDocument Document, bool MayReplace) : Effect
    {
        /// <summary>What the file is known to say: where it says something else, nothing is written and the user is asked. Null where that has been asked
        /// about already.</summary>
        public string? Known { get; init; }

        /// <summary>True where the file is known to be no text.</summary>
        public bool IsKnownUnreadable { get; init; }
    }

    public sealed record Sheet(string Path, DesignDocument Document, Assessment Assessment, bool MayReplace) : Effect;

    /// <summary>Write the digital filters' coefficients.</summary>
    public sealed record Coefficients(string Path, Design Design, bool MayReplace) : Effect;

    /// <summary>Write a homework's sheets, key and list for answers into a folder.</summary>
    internal sealed record Problems(string Folder, ProblemsPage Page) : Effect;

    /// <summary>Write marks, or pages to hand back.</summary>
    internal sealed record Marks(string Path, MarkingPage Page, bool MayReplace) : Effect;

    /// <summary>Work a study out; news carry its number.</summary>
    public sealed record Study(int Number, StudyPage Page, Design Design) : Effect;

    /// <summary>Break off the study that is being worked out.</summary>
    public sealed record CancelStudy : Effect;

    /// <summary>List what a half-typed path can become; an empty one lists the recent files.</summary>
    public sealed record List(FilePurpose Purpose, string Typed) : Effect;

    /// <summary>Put a text on the clipboard.</summary>
    public sealed record Copy(string Text) : Effect;

    /// <summary>End the program.</summary>
    public sealed record Quit : Effect;

    /// <summary>Delete the unsaved work that was found.</summary>
    public sealed record DropRecovery : Effect;

    /// <summary>Draw everything anew.</summary>
    public sealed record Redraw : Effect;

    /// <summary>Stop as a job of the shell.</summary>
    public sealed record Suspend : Effect;

    /// <summary>One after the other.</summary>
    public sealed record Several(IReadOnlyList<Effect> Effects) : Effect;
}
