using System.Collections.Immutable;
using FrontEnd.Documents;
using FrontEnd.Documents.Reading;

namespace FrontEnd.Terminal;

/// <summary>One open design: its document, its file, the way back and forth, and the last figures.</summary>
public sealed record OpenDesign
{
    /// <summary>Tells open designs apart in messages from the background; never used twice.</summary>
    public required int Slot { get; init; }

    /// <summary>The document with all changes made so far.</summary>
    public required DesignDocument Document { get; init; }

    /// <summary>What stands in the file; where the design is in no file yet, what it began with.</summary>
    public required DesignDocument Saved { get; init; }

    /// <summary>Where it is saved; null for the starter, which has no file yet.</summary>
    public string? Path { get; init; }

    /// <summary>What the design is called that this is the tour's copy of; null for a design of the user's. A copy is never saved, kept for
    /// recovery or asked about.</summary>
    public string? CopyOf { get; init; }

    /// <summary>States to go back to, the last change on top.</summary>
    public ImmutableStack<Past> Undo { get; init; } = [];

    /// <summary>States that were gone back from, the last on top.</summary>
    public ImmutableStack<Past> Redo { get; init; } = [];

    /// <summary>Number of the evaluation that was asked for last.</summary>
    public int Run { get; init; }

    /// <summary>Number of the evaluation that <see cref="Shown"/> belongs to; below <see cref="Run"/> while new figures come.</summary>
    public int ShownRun { get; init; }

    /// <summary>The last figures; null until the first come.</summary>
    public Assessment? Shown { get; init; }

    /// <summary>The figures before the last change, so that a screen can say what moved.</summary>
    public Assessment? Before { get; init; }

    /// <summary>The figures of the saved file, where they were ever shown; for comparisons.</summary>
    public Assessment? SavedShown { get; init; }

    /// <summary>True once <see cref="Shown"/> carries advice.</summary>
    public bool Advised { get; init; }

    /// <summary>The design's file as it was last seen on the disk; null where nobody has looked, or where there is none.</summary>
    public DesignDocument? FileOnDisk { get; init; }

    /// <summary>The user's cards as they were last seen on the disk; null where nobody has looked.</summary>
    public CardTexts? CardsOnDisk { get; init; }

    /// <summary>True where the design's file was there once and is no more.</summary>
    public bool IsGone { get; init; }

    /// <summary>The number of another run of the program that has the file open as well; null for none.</summary>
    public int? Elsewhere { get; init; }

    /// <summary>True where another program has written the design's file.</summary>
    public bool FileChanged => FileOnDisk is { } there && !string.Equals(there.Text, Saved.Text, StringComparison.Ordinal);

    /// <summary>The cards that the design names and whose files say something else than what its figures were worked out with.</summary>
    public IReadOnlyList<string> CardsChanged => CardsOnDisk is not { } there ? [] :
        [.. Document.Cards.DifferingFrom(there).Where(name => there.Of(name)?.Text is not null && Document.NamesCard(name))];

    /// <summary>The cards that the design names, whose files were there and are no more.</summary>
    public IReadOnlyList<string> CardsGone => CardsOnDisk is not { } there ? [] :
        [.. Document.Cards.DifferingFrom(there).Where(name => there.Of(name)?.Text is null && Document.Cards.Of(name)?.Text is not null && Document.NamesCard(name))];

    /// <summary>The stages' headline for the title: file name, else the design's own name.</summary>
    public string Title => CopyOf is { } own ? $"tour, on a copy of {own}" : Path is null ? Document.Design.Name : System.IO.Path.GetFileNameWithoutExtension(Path);

    /// <summary>True where the file does not say what the document says.</summary>
    public bool IsChanged => CopyOf is null && !ReferenceEquals(Document, Saved) && !string.Equals(Document.Text, Saved.Text, StringComparison.Ordinal);

    /// <summary>True where the figures are those of the document.</summary>
    public bool IsFresh => ShownRun == Run;
}

/// <summary>A state to go back to.</summary>
/// <param name="Label">What the change after it was: "mismatch 50 % -> 20 %".</param>
public sealed record Past(DesignDocument Document, string Label);
