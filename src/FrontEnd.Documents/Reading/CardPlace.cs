using FrontEnd.Catalogue;
using FrontEnd.Fields;

namespace FrontEnd.Documents.Reading;

/// <summary>A table of a design in which a card of each class may stand: its fields are those that the card may have.</summary>
internal static class CardPlace
{
    /// <summary>The classes, in the order of the signal's path.</summary>
    public static IReadOnlyList<CardClass> Classes { get; } = [CardClass.Electrode, CardClass.Buffer, CardClass.Amplifier, CardClass.OpAmp, CardClass.Converter];

    /// <summary>The key of the table.</summary>
    public static string Table(CardClass cardClass) => cardClass switch
    {
        CardClass.Electrode => "electrodes.active",
        CardClass.Amplifier => "amplifier",
        CardClass.OpAmp => "electrodes.active-buffer.opamp",
        CardClass.Converter => "converter",
        CardClass.Buffer => "electrodes.active-buffer",
        _ => throw new ArgumentOutOfRangeException(nameof(cardClass), cardClass, "Class is not handled."),
    };

    /// <summary>The class's word, as a card says it: "op-amp".</summary>
    public static string Word(CardClass cardClass) => CardShelf.Word(cardClass);

    /// <summary>A design that holds nothing but this card.</summary>
    /// <param name="card">Its name, or the path of a file.</param>
    public static string DesignWith(CardClass cardClass, string card) => $"[{Table(cardClass)}]\ncard = {Literals.Quoted(card)}\n";

    /// <summary>The key that a card of the class uses for a field of its table.</summary>
    public static string KeyOn(CardClass cardClass, FieldDescription field) => field.Key[(Table(cardClass).Length + 1)..];

    /// <summary>What a card of the class may have, in the order of the key table; the name of the card itself left out.</summary>
    public static IReadOnlyList<Field<Design>> Fields(CardClass cardClass)
    {
        string prefix = Table(cardClass) + ".", own = prefix + "card";
        return [.. DesignFields.Fixed.Where(field => field.Key.StartsWith(prefix, StringComparison.Ordinal) && !string.Equals(field.Key, own, StringComparison.Ordinal))];
    }

    /// <summary>A design in which the table is there, with every value at its default.</summary>
    internal static Design Empty(CardClass cardClass) =>
        DesignFields.OptionalParts.Where(part => (Table(cardClass) + ".").StartsWith(part.Key + ".", StringComparison.Ordinal)).Aggregate(new Design(), (design, part) => part.With(design, true));
}
