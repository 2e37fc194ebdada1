using FrontEnd.Designs;
using FrontEnd.Fields;

namespace FrontEnd.Catalogue;

/// <summary>A design of which some values are not known, each with the ends that it lies between. Immutable.</summary>
/// <param name="Given">What is known; the unknown fields hold anything.</param>
/// <param name="Unknowns">The unknown fields, in the order of the catalogue.</param>
public sealed record PartlyKnownDesign(DeviceDraft Given, IReadOnlyList<UnknownField> Unknowns)
{
    /// <summary>The key of the table of a bought device.</summary>
    public const string BoughtKey = "bought";

    /// <summary>The fields of that table.</summary>
    public static IReadOnlyList<Field<BoughtDevice>> BoughtTable => BoughtFields.All;

    /// <summary>The same as fields of a draft.</summary>
    public static readonly IReadOnlyList<Field<DeviceDraft>> OfBought = [.. BoughtFields.All.Select(field =>
        field.Within($"{BoughtKey}.", $"{BoughtKey}.", (DeviceDraft d) => d.Bought, (d, v) => d with { Bought = v }, () => new()))];

    /// <summary>A field of a design as one of a draft.</summary>
    public static Field<DeviceDraft> OfDraft(Field<Design> field) =>
        field.Within("", "", (DeviceDraft d) => d.Design, (d, v) => d with { Design = v }, () => new());

    /// <summary>Which of the unknown fields has this key; null for a known one.</summary>
    public UnknownField? Find(string key) => Unknowns.FirstOrDefault(one => string.Equals(one.Key, key, StringComparison.Ordinal));

    /// <summary>True where a resistor or a voltage that protects the wearer is not known: then nothing is said to be below a limit.</summary>
    public bool LeavesSafetyOpen => Unknowns.Any(one => one.Field.Safety);

    /// <summary>The design in the middle of everything that is unknown. It stands for no device: only what lies beside the unknown may be read
    /// from it.</summary>
    public Design Median => With(Enumerable.Repeat(0.5, Unknowns.Count).ToArray());

    /// <summary>One design that the unknown fields allow.</summary>
    /// <param name="places">Where each of them lies between its ends, 0 to 1, in their order.</param>
    public Design With(IReadOnlyList<double> places)
    {
        DeviceDraft draft = Given;
        for (int i = 0; i < Unknowns.Count; i++)
        {
            draft = Unknowns[i].Field.Set(draft, Unknowns[i].At(places[i]));
        }

        return draft.Bought is { } bought ? bought.Realise(draft.Design, Find(DesignKeys.Amplifier.Gain) is null) : draft.Design;
    }
}
