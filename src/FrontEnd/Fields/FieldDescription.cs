namespace FrontEnd.Fields;

/// <summary>What there is to know about one field of a design besides its value: the row of the key table.</summary>
public abstract record FieldDescription
{
    /// <summary>Lower-case words with hyphens, dotted: <c>electrodes.active.contact-resistance</c>.</summary>
    public required string Key { get; init; }

    /// <summary>The key in the plain-number form (JSON): <c>electrodes.active.Rd</c>.</summary>
    public required string JsonKey { get; init; }

    /// <summary>What sort of value it holds.</summary>
    public required FieldKind Kind { get; init; }

    /// <summary>Which quantity the field holds; of a pair of frequencies, a frequency; null for what has no unit.</summary>
    public QuantityKind? Quantity { get; init; }

    /// <summary>One line.</summary>
    public required string Meaning { get; init; }

    /// <summary>The value where none is given, as it would be written in a design file, or in words where it depends on other
    /// fields.</summary>
    public required string DefaultText { get; init; }

    /// <summary>Where the default comes from.</summary>
    public required string DefaultSource { get; init; }

    /// <summary>Legal values in SI units; null for fields that are not numbers. For lists, of each element.</summary>
    public FieldRange? Range { get; init; }

    /// <summary>The words of a choice, in the design file's spelling, with their values.</summary>
    public IReadOnlyList<ChoiceWord> Choices { get; init; } = [];

    /// <summary>The word that stands for no value, such as "none" or "auto"; null where a value is always there.</summary>
    public string? NullWord { get; init; }

    /// <summary>A word that stands for a special value, such as "unlimited"; null for none.</summary>
    public string? SpecialWord { get; init; }

    /// <summary>True for what protects the wearer: such a field is never searched over or relaxed by the program.</summary>
    public bool Safety { get; init; }

    /// <summary>What is drawn from where the value is said to be unknown; null for what cannot be unknown without a range.</summary>
    public UsualRange? Usual { get; init; }

    /// <summary>The class of part cards that a card field names.</summary>
    public CardClass? CardClass { get; init; }

    /// <summary>The fields of the same part that may have a range; empty unless this field holds ranges.</summary>
    public IReadOnlyList<FieldDescription> Ranged { get; init; } = [];

    /// <summary>True where the default is written as a value, so that it can be read back; false where it is a sentence.</summary>
    public bool DefaultIsValue { get; init; } = true;

    /// <summary>True where the field holds one number that could be varied by some per cent.</summary>
    public bool IsNumeric => Kind is FieldKind.Quantity or FieldKind.Number or FieldKind.Count;

    /// <summary>True where the value is written with a unit.</summary>
    public bool HasUnit => Kind == FieldKind.Quantity && !Holds<Ratio>();

    /// <summary>True for a field of this quantity.</summary>
    public bool Holds<T>()
        where T : struct, IQuantity => Kind == FieldKind.Quantity && Quantity!.Is<T>();

    /// <summary>A bare number in SI units as a value of this field; counts are rounded. Only for numeric fields.</summary>
    public object FromSi(double si) => Kind switch
    {
        FieldKind.Quantity => Quantity!.FromSi(si),
        FieldKind.Number => si,
        FieldKind.Count => (int)Math.Clamp(Math.Round(si), int.MinValue, int.MaxValue),
        _ => throw new InvalidOperationException($"{Key} holds no single number."),
    };
}

/// <summary>One word of a choice. <paramref name="Aliases"/> are read too, never written.</summary>
public sealed record ChoiceWord(string Word, object Value, params IReadOnlyList<string> Aliases);

/// <summary>The classes of part cards, one folder each.</summary>
public enum CardClass
{
    /// <summary>Electrodes.</summary>
    Electrode,

    /// <summary>Differential amplifiers.</summary>
    Amplifier,

    /// <summary>Op-amps.</summary>
    OpAmp,

    /// <summary>Converters.</summary>
    Converter,

    /// <summary>Electrode buffers.</summary>
    Buffer,
}
