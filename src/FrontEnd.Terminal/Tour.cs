using System.Collections.Immutable;
using FrontEnd.Catalogue;
using FrontEnd.Documents;
using FrontEnd.Identity;
using FrontEnd.Teaching;

namespace FrontEnd.Terminal;

/// <summary>One step of the guided tour: what to look at, what to change, and which figure tells.</summary>
/// <param name="Field">The field that it points at; "" for none.</param>
/// <param name="Try">What to set it to, as it is typed; "" where there is nothing to change.</param>
/// <param name="Result">The figure to watch.</param>
public sealed record TourStep(string Title, string Text, string Place, string Field, string Try, ResultId Result);

/// <summary>A tour on its way.</summary>
/// <param name="Steps">Its steps, with the values and figures of the user's design.</param>
/// <param name="Slot">The user's design, which the tour leaves alone.</param>
/// <param name="From">Where the user was.</param>
public sealed record Tour(ImmutableList<TourStep> Steps, int Slot, Spot From)
{
    /// <summary>A tour of the design in hand: the stops that it has something to show for, between a first and a last step.</summary>
    /// <param name="shown">Its figures.</param>
    public static Tour Of(Model model, Assessment shown)
    {
        IEnumerable<TourStep> stops =
            from stop in TourStops.Of(shown)
            let taken = stop.Tries.FirstOrDefault(text => IsTaken(model.Here.Document, stop.Field, text))
            where taken is not null
            select new TourStep(stop.Title, stop.Text, PlaceOf(stop.Subject), stop.Field, taken, stop.Result);
        return new Tour([First(shown), .. stops, Last(shown)], model.Here.Slot, Spot.Of(model));
    }

    /// <summary>The figure to watch, as it is now and as it was before the change.</summary>
    public static string Watch(TourStep step, OpenDesign design)
    {
        if (design.Shown?.Find(step.Result) is not { } now)
        {
            return "";
        }

        string value = ResultText.Value(now);
        const int most = 4;
        (string Before, string? Now)? was = ResultText.Was(design.Before?.Find(step.Result), now, most);
        return $"{now.Name}: {was?.Now ?? value}" + (was is not null ? $" (was {was?.Before})"
            : design.IsFresh && !design.Undo.IsEmpty ? " as before: something else decides it here" : "");
    }

    private static TourStep First(Assessment shown)
    {
        string name = shown.Design.Name;
        return new(
            "the path is the map",
            $"This is a copy of {name}: nothing the tour does touches yours. The strip above is the signal's path, from scalp to samples. Below it, on the left, is what you can change; on the right, what it does, worst first. After the tour the arrows move along the path, Tab switches sides, and Enter on a figure explains it.",
            Place.Electrodes, "", "", ResultIds.Noise.Total);
    }

    /// <summary>What next: the worst figure and what helps it, and the keys that go on from there.</summary>
    private static TourStep Last(Assessment shown)
    {
        Result? worst = shown.Judged is [var first, ..] ? first : null;
        string stands = worst is null ? "" : $"The worst figure of this design is {worst.Name}, {ResultText.Value(worst)}: {ResultText.Margin(worst)}. ";
        string helps = worst?.Verdict.Improvement is { } improvement ? $"What helps it most: {improvement.Change}. " : "";
        return new(
            "what next",
            $"{stands}{helps}Space brings your design back. Then v shows the verdicts, h makes the change that helps most, u undoes it; w saves, e saves under another name, y writes the sheet, c compares, ? shows all keys.",
            Place.Verdicts, "", "", worst?.Id ?? ResultIds.Mains.Total);
    }

    private static string PlaceOf(TourSubject subject) => subject switch
    {
        TourSubject.Offset => Place.Amplifier,
        TourSubject.Imbalance or TourSubject.Skin => Place.Electrodes,
        TourSubject.Leads => "mains",
        TourSubject.Aliases or TourSubject.AntiAlias => "aliases",
        TourSubject.Bits => Place.Converter,
        TourSubject.SeriesResistor => "safety",
        _ => throw new ArgumentOutOfRangeException(nameof(subject), subject, "TourStop has no place."),
    };

    /// <summary>True where the document takes the value, and with it is another design.</summary>
    private static bool IsTaken(DesignDocument document, string key, string text) =>
        DesignFields.Find(document.Design, key) is { } field && Edits.Set(document, field, text) is { Finding: null, CardsWanted.Count: 0 } edit
            && !edit.Document.HasErrors && !string.Equals(edit.Document.Text, document.Text, StringComparison.Ordinal);
}

/// <summary>Where the user is: a place and what is in hand there.</summary>
public sealed record Spot(string PlaceId, string BlockId, int FieldRow, int ResultRow, bool OnResults)
{
    /// <summary>Where the user is now.</summary>
    public static Spot Of(Model model) => new(model.PlaceId, model.BlockId, model.FieldRow, model.ResultRow, model.OnResults);

    /// <summary>The model back there.</summary>
    public Model Back(Model model) => model with
    {
        PlaceId = PlaceId, BlockId = BlockId, FieldRow = FieldRow, ResultRow = ResultRow, OnResults = OnResults,
    };
}
