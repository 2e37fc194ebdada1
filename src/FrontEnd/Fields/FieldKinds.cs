namespace FrontEnd.Fields;

/// <summary>What follows from a field's kind: its name in a sentence, an example, and its value as a bare number. Quantities are described
/// by their row in FrontEnd.Text.</summary>
internal static class FieldKinds
{
    /// <param name="Noun">The kind in a sentence: "`40 uW` is not a voltage".</param>
    /// <param name="Example">A value as it is written in a design file.</param>
    /// <param name="Type">The type that always means this kind; null where a field says so itself.</param>
    private sealed record Row(FieldKind Kind, string Noun, string Example, Type? Type = null);

    private static readonly Row[] Rows =
    [
        new(FieldKind.Number, "a number", "2.5", typeof(double)),
        new(FieldKind.Count, "a whole number", "8", typeof(int)),
        new(FieldKind.Flag, "true or false", "true", typeof(bool)),
        new(FieldKind.Text, "a text", "\"text\"", typeof(string)),
        new(FieldKind.Choice, "one of the words", "\"word\""),
        new(FieldKind.Card, "the name of a part card", "\"card-name\""),
        new(FieldKind.FrequencyRange, "a pair of frequencies", "[\"0.5 Hz\", \"40 Hz\"]", typeof(FrequencyRange)),
        new(FieldKind.NumberList, "a list of numbers", "[1, 0.02, 0.05]", typeof(IReadOnlyList<double>)),
        new(FieldKind.TextList, "a list of texts", "[\"Fp1\", \"Fp2\"]", typeof(IReadOnlyList<string>)),
        new(FieldKind.SectionRows, "a list of rows of six numbers", "[[b0, b1, b2, a0, a1, a2]]",
            typeof(IReadOnlyList<IReadOnlyList<double>>)),
        new(FieldKind.NamedNumbers, "a table of numbers", "{ O1 = 1, O2 = -1 }", typeof(NamedNumbers)),
        new(FieldKind.ContactOverTime, "a list of times with factors", "[{ after = \"10 min\", impedance = 1.5, excess = 1.5 }]", typeof(ContactOverTime)),
        new(FieldKind.Ranges, "a table of ranges", "{ key = [\"1 mV\", \"2 mV\"] }"),
    ];

    /// <summary>The kind in a sentence: "`40 uW` is not a voltage".</summary>
    public static string Noun(FieldDescription field) => field.Kind == FieldKind.Quantity ? field.Quantity!.Words : Of(field.Kind).Noun;

    /// <summary>A value as it is written in a design file.</summary>
    public static string Example(FieldDescription field) =>
        field.Kind == FieldKind.Quantity ? Example(field.Quantity!) : Of(field.Kind).Example;

    /// <summary>The same of a size that this field is likely to have: its default, where that is a quantity with a unit.</summary>
    public static string Likely(FieldDescription field) => UnitOfDefault(field) is null ? Example(field) : $"\"{field.DefaultText}\"";

    /// <summary>The unit in which a field's default is told, with its prefix; null where the default is none, nothing or no number with a unit.</summary>
    public static string? UnitOfDefault(FieldDescription field)
    {
        string[] words = field.DefaultText.Split(' ', 2);
        return field.Quantity is { } kind && words.Length == 2 && QuantityText.TryParse(kind, field.DefaultText, out IQuantity? value, out _) && value!.SiValue != 0 ? words[1] : null;
    }

    /// <summary>The unit that a bare number probably has: the default's, or the one without a prefix, whichever brings it nearer to the default; null where the default
    /// says nothing.</summary>
    public static string? LikelyUnit(FieldDescription field, string number)
    {
        if (UnitOfDefault(field) is not { } unit || field.Quantity is not { } kind || !NumberMeant.IsNumber(number))
        {
            return null;
        }

        double Off(string one) => QuantityText.TryParse(kind, $"{number} {one}", out IQuantity? value, out _) && QuantityText.TryParse(kind, field.DefaultText, out IQuantity? usual, out _)
            && value!.SiValue != 0 && usual!.SiValue != 0 ? Math.Abs(Math.Log(Math.Abs(value.SiValue / usual.SiValue))) : double.PositiveInfinity;
        string plain = kind.Units[0].Spellings[0];
        return Off(plain) < Off(unit) ? plain : unit;
    }

    /// <summary>A quantity as it is written in a design file.</summary>
    public static string Example(QuantityKind kind) => $"\"{kind.Example}\"";

    /// <summary>A boxed value as a bare number in SI units; null where it is no number.</summary>
    public static double? SiValue(object? value) => value switch
    {
        IQuantity quantity => quantity.SiValue,
        double number => number,
        int count => count,
        _ => null,
    };

    /// <summary>The kind of a value's type, and the kind of quantity that it is or holds two of.</summary>
    internal static (FieldKind Kind, QuantityKind? Quantity) Of<T>()
    {
        if (QuantityKind.Find(typeof(T)) is { } quantity)
        {
            return (FieldKind.Quantity, quantity);
        }

        FieldKind kind = Array.Find(Rows, row => row.Type == typeof(T))?.Kind
            ?? throw new NotSupportedException($"No field kind holds {typeof(T)}.");
        return (kind, kind == FieldKind.FrequencyRange ? QuantityKind.Of<Frequency>() : null);
    }

    private static Row Of(FieldKind kind) => Rows.First(row => row.Kind == kind);
}
