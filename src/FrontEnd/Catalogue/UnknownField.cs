using FrontEnd.Designs;
using FrontEnd.Fields;

namespace FrontEnd.Catalogue;

/// <summary>A design and what is known of the bought device that it stands for.</summary>
/// <param name="Design">The design, before the bought device became gains and stages.</param>
/// <param name="Bought">The bought device; null for a design of one's own.</param>
public sealed record DeviceDraft(Design Design, BoughtDevice? Bought);

/// <summary>A field whose value nobody knows, with the ends that it lies between.</summary>
/// <param name="Field">The field of the draft.</param>
/// <param name="Least">Least value in the field's SI unit; of a choice or a flag 0.</param>
/// <param name="Greatest">Greatest value; of a choice the number of its last word.</param>
public sealed record UnknownField(Field<DeviceDraft> Field, double Least, double Greatest)
{
    /// <summary>Where the ends come from.</summary>
    public required string Source { get; init; }

    /// <summary>Who could say the value.</summary>
    public required KnownBy KnownBy { get; init; }

    /// <summary>True where the file or a card gives the ends; false where they are what is usual.</summary>
    public bool IsStated { get; init; }

    /// <summary>The field's key.</summary>
    public string Key => Field.Key;

    /// <summary>True where the ends are numbers of words and not numbers.</summary>
    public bool IsChoice => Field.Kind is FieldKind.Choice or FieldKind.Flag;

    /// <summary>The value at a place between the ends, 0 to 1: by factors where both ends are positive, else by steps; whole numbers and words
    /// take equal parts.</summary>
    public object At(double place)
    {
        if (IsChoice || Field.Kind == FieldKind.Count)
        {
            double count = Greatest - Least + 1;
            double one = Least + Math.Min(count - 1, Math.Floor(place * count));
            return Field.Kind switch
            {
                FieldKind.Count => (int)one,
                FieldKind.Flag => one == 1,
                _ => Field.Choices[(int)one].Value,
            };
        }

        double value = place <= 0 ? Least : 1 <= place ? Greatest
            : 0 < Least ? Least * Math.Pow(Greatest / Least, place) : Least + (place * (Greatest - Least));
        return Field.FromSi(value);
    }
}
