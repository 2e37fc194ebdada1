using System.Collections.Immutable;
using FrontEnd.Documents;

namespace FrontEnd.Terminal;

/// <summary>Everything that the screen shows, at one moment. Immutable.</summary>
public sealed record Model
{
    /// <summary>The open designs, one at least.</summary>
    public required ImmutableList<OpenDesign> Designs { get; init; }

    /// <summary>Which of <see cref="Designs"/> is in hand.</summary>
    public int Current { get; init; }

    /// <summary>The slot that the next opened design gets.</summary>
    public int NextSlot { get; init; } = 1;

    /// <summary>Columns of the terminal.</summary>
    public int Width { get; init; } = 80;

    /// <summary>Rows of the terminal.</summary>
    public int Height { get; init; } = 24;

    /// <summary>True where the terminal shows only the ASCII characters.</summary>
    public bool Ascii { get; init; }

    /// <summary>The block or cross-cutting view in hand.</summary>
    public string PlaceId { get; init; } = Place.Electrodes;

    /// <summary>The block to go back to from a cross-cutting view.</summary>
    public string BlockId { get; init; } = Place.Electrodes;

    /// <summary>Which row of the form is in hand, headings not counted.</summary>
    public int FieldRow { get; init; }

    /// <summary>Which figure is in hand.</summary>
    public int ResultRow { get; init; }

    /// <summary>True where the figures, not the form, have the keys.</summary>
    public bool OnResults { get; init; }

    /// <summary>The field that is typed in; null for none.</summary>
    public FieldEditor? Editing { get; init; }

    /// <summary>What lies over the form; null for nothing.</summary>
    public Page? Page { get; init; }

    /// <summary>Step of the guided tour, from 0; null where none is on.</summary>
    public int? TourStep { get; init; }

    /// <summary>The guided tour; null where none is on.</summary>
    public Tour? Tour { get; init; }

    /// <summary>The last thing there is to say; stands in place of the help line until the next key.</summary>
    public string Status { get; init; } = "";

    /// <summary>What the status is about where it is a complaint; null where it is none.</summary>
    public Finding? Complaint { get; init; }

    /// <summary>The error of the design's file that was shown last; null for none yet.</summary>
    public Finding? Error { get; init; }

    /// <summary>Number of the study that was asked for last.</summary>
    public int Studies { get; init; }

    /// <summary>What follows once the design in hand is saved; null for nothing.</summary>
    public Message? AfterSave { get; init; }

    /// <summary>True once the user has left of their own will.</summary>
    public bool Quitting { get; init; }

    /// <summary>The open design in hand.</summary>
    public OpenDesign Here => Designs[Current];

    /// <summary>The design in hand.</summary>
    public Design Design => Here.Document.Design;

    /// <summary>True where the terminal is too small to show anything useful.</summary>
    public bool TooSmall => Width < 60 || Height < 15;

    /// <summary>A model with one design in it and its first evaluation asked for.</summary>
    public static (Model Model, Effect Effect) Start(DesignDocument document, string? path)
    {
        OpenDesign design = new() { Slot = 0, Document = document, Saved = document, Path = path, Run = 1 };
        string hint = path is null ? "New here? t starts a tour on a copy of this design; ? shows the keys, z everything else." : "";
        return (Errors.AtFirst(new Model { Designs = [design], Status = hint }), Effect.Evaluate.Of(0, 1, document));
    }

    /// <summary>The model with something to say.</summary>
    public Model Tell(string text) => this with { Status = text, Complaint = null };

    /// <summary>The model with a complaint.</summary>
    public Model Complain(Finding finding) => this with { Status = finding.Message, Complaint = finding };

    /// <summary>The model with one of its open designs changed; the same where there is no such design.</summary>
    public Model WithDesign(int slot, Func<OpenDesign, OpenDesign> change) =>
        Designs.FindIndex(design => design.Slot == slot) is var at and >= 0
            ? this with { Designs = Designs.SetItem(at, change(Designs[at])) }
            : this;
}
