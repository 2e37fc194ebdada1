using FrontEnd.Advice;
using FrontEnd.Documents.Teaching;
using FrontEnd.Identity;

namespace FrontEnd.App.Terminal;

/// <summary>What lies over the form and its results, if anything. A closed set.</summary>
public abstract record Overlay
{
    private Overlay()
    {
    }

    /// <summary>The reason of one figure.</summary>
    /// <param name="Sensitivities">What moves it; null until worked out.</param>
    public sealed record Why(ResultId ResultId, IReadOnlyList<Sensitivity>? Sensitivities, int Scroll) : Overlay;

    /// <summary>The whole help of a field.</summary>
    public sealed record FieldHelp(string Key, int Scroll) : Overlay;

    /// <summary>What else there is, each on its letter.</summary>
    public sealed record More(int Selected) : Overlay;

    /// <summary>A study of the design: what the command of the same name prints, and what can be taken over from it.</summary>
    /// <param name="Number">Tells runs apart in news from the background.</param>
    /// <param name="Progress">Share that is done while it is worked out; null otherwise.</param>
    /// <param name="Outcome">Null until worked out.</param>
    /// <param name="Choice">Which of the outcome's designs is in hand.</param>
    public sealed record Study(StudyKind Kind, StudyWish Wish, int Number, double? Progress, StudyOutcome? Outcome, int Choice, int Scroll, int Sideways) : Overlay;

    /// <summary>The glossary: a line to search with, and the terms that fit.</summary>
    public sealed record Terms(Line Line, int Selected) : Overlay;

    /// <summary>The sites on a head: what is asked and the answer.</summary>
    /// <param name="Field">Which of <see cref="SitesForm.Fields"/> is in hand.</param>
    /// <param name="Typing">The line that is typed into it; null while none is.</param>
    public sealed record Head(SitesRequest Request, SitesAnswer Answer, int Field, Line? Typing, int Scroll, int Sideways) : Overlay;

    /// <summary>The keys.</summary>
    public sealed record Help(int Scroll) : Overlay;

    /// <summary>A list to choose one value of a field from.</summary>
    public sealed record Choose(string Key, string Title, IReadOnlyList<Choice> Choices, int Selected) : Overlay;

    /// <summary>A list to choose an element from that is put into the design.</summary>
    public sealed record Insert(IReadOnlyList<Insertion> Choices, int Selected) : Overlay;

    /// <summary>A file to open or to save as, typed or chosen.</summary>
    /// <param name="Entries">Folders and files that match; null until listed.</param>
    /// <param name="Selected">Chosen entry; -1 while the typed line counts.</param>
    public sealed record FileName(FilePurpose Purpose, Line Line, IReadOnlyList<string>? Entries, int Selected) : Overlay;

    /// <summary>A question with a few answers, each on its letter.</summary>
    public sealed record Ask(string Question, IReadOnlyList<Answer> Answers) : Overlay;

    /// <summary>Two designs side by side.</summary>
    /// <param name="OtherSlot">The other open design; null for the saved file.</param>
    public sealed record Compare(int? OtherSlot, int Scroll) : Overlay;

    /// <summary>One plot over the whole screen with a cursor.</summary>
    /// <param name="Cursor">Share of the axis, 0 to 1.</param>
    public sealed record Graph(PlotKind Kind, double Cursor, bool LogX, bool LogY) : Overlay;
}

/// <summary>A word to choose and the figures that matter about it.</summary>
public sealed record Choice(string Word, string Note);

/// <summary>An element that can be put into a list of the design.</summary>
public sealed record Insertion(string ListKey, int Variant, string Name);

/// <summary>What a file name is asked for.</summary>
public enum FilePurpose
{
    Open,
    SaveAs,
    Sheet,
    Coefficients,
}

/// <summary>An answer to a question: its letter, its words, what it does.</summary>
public sealed record Answer(char Letter, string Words, Message Message);
