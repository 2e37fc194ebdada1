using System.Collections.Immutable;
using FrontEnd.Designs;
using FrontEnd.Documents;
using FrontEnd.Findings;

namespace FrontEnd.App.Terminal;

/// <summary>Everything that the screen shows, at one moment. Immutable.</summary>
public sealed record Model
{
    public required ImmutableList<OpenDesign> Designs { get; init; }

    /// <summary>Which of <see cref="Designs"/> is in hand.</summary>
    public int Current { get; init; }

    /// <summary>The slot that the next opened design gets.</summary>
    public int NextSlot { get; init; } = 1;

    public int Width { get; init; } = 80;

    public int Height { get; init; } = 24;

    /// <summary>The block or cross-cutting view in hand.</summary>
    public string PlaceId { get; init; } = Place.Electrodes;

    /// <summary>The block to go back to from a cross-cutting view.</summary>
    public string BlockId { get; init; } = Place.Electrodes;

    /// <summary>Which row of the form is in hand, headings not counted.</summary>
    public int FieldRow { get; init; }

    public int ResultRow { get; init; }

    public bool OnResults { get; init; }

    public FieldEditor? Editing { get; init; }

    public Overlay? Overlay { get; init; }

    /// <summary>Step of the guided tour, from 0; null where none is on.</summary>
    public int? TourStep { get; init; }

    /// <summary>The last thing there is to say; stands in place of the help line until the next key.</summary>
    public string Status { get; init; } = "";

    /// <summary>What the status is about where it is a complaint; null where it is none.</summary>
    public Finding? Complaint { get; init; }

    /// <summary>Number of the study that was asked for last.</summary>
    public int Studies { get; init; }

    public bool Quitting { get; init; }

    public OpenDesign Here => Designs[Current];

    public Design Design => Here.Document.Design;

    /// <summary>True where the terminal is too small to show anything useful.</summary>
    public bool TooSmall => Width < 60 || Height < 18;

    /// <summary>A model with one design in it and its first evaluation asked for.</summary>
    public static (Model Model, Effect Effect) Start(DesignDocument document, string? path)
    {
        OpenDesign design = new() { Slot = 0, Document = document, Saved = document, Path = path, Run = 1 };
        string hint = path is null ? "New here? t begins a tour of ten steps; ? shows the keys, z what else there is." : "";
        return (new Model { Designs = [design], Status = hint }, new Effect.Evaluate(0, 1, document.Design));
    }
}
