using FrontEnd.Catalogue;
using FrontEnd.Documents.Reading;
using FrontEnd.Fields;

namespace FrontEnd.Documents;

/// <summary>The figures of a part card that decide a choice.</summary>
internal static class CardFigures
{
    private static readonly System.Collections.Concurrent.ConcurrentDictionary<(CardClass, string), string> Known = new();

    /// <summary>One line: "contact resistance 5 kΩ, contact capacitance 100 nF …"; "" for a card that cannot be read.</summary>
    public static string Of(CardClass cardClass, string name) => Known.GetOrAdd((cardClass, name), key => Read(key.Item1, key.Item2));

    private static string Read(CardClass cardClass, string name)
    {
        (string Field, string Short)[] keys = cardClass switch
        {
            CardClass.Electrode => [("contact-resistance", "Rd"), ("contact-capacitance", "Cd"), ("series-resistance", "Rs"), ("excess-density", "excess at 1 Hz")],
            CardClass.Amplifier => [("input-noise", "noise"), ("noise-corner", "corner"), ("cmrr", "CMRR"), ("bias-current", "bias"), ("supply-current", "supply")],
            CardClass.OpAmp => [("voltage-noise", "noise"), ("noise-corner", "corner"), ("gain-bandwidth", "GBW"), ("bias-current", "bias"), ("supply-current", "supply")],
            CardClass.Converter => [("bits", "bits"), ("full-scale", "full scale"), ("noise", "noise"), ("rate", "rate")],
            CardClass.Buffer => [("input-resistance", "Rin"), ("input-capacitance", "Cin"), ("opamp.voltage-noise", "noise")],
            _ => throw new ArgumentOutOfRangeException(nameof(cardClass), cardClass, "Class is not handled."),
        };
        string part = CardPlace.Table(cardClass) + ".";
        Design design = DesignDocument.Parse(CardPlace.DesignWith(cardClass, name), DocumentFormat.Toml).Design;
        return string.Join(", ", keys
            .Select(key => (key.Short, Field: DesignFields.Find(design, part + key.Field)))
            .Where(pair => pair.Field?.Get(design) is not null)
            .Select(pair =>
                $"{pair.Short} {(pair.Field!.Get(design) is Quantities.IQuantity quantity ? QuantityText.FormatTrimmed(quantity, 3) : FieldText.Format(pair.Field, pair.Field.Get(design)))}"));
    }
}
