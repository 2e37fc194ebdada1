using FrontEnd.Catalogue;
using FrontEnd.Fields;

namespace FrontEnd.Documents.Reading;

/// <summary>A value that the file says is not known: the word <c>"unknown"</c>, or the two ends that it lies between.</summary>
/// <param name="Ends">Least and greatest in the field's SI unit; null for the word alone.</param>
internal sealed record UnknownValue(FieldDescription Field, (double Least, double Greatest)? Ends)
{
    /// <summary>The word for a value that nobody knows.</summary>
    public const string Word = "unknown";

    /// <summary>True where the node says so of a field that holds one value; pairs by nature keep their meaning.</summary>
    public static bool Is(FieldDescription field, Node node) => node switch
    {
        TextNode text => string.Equals(text.Value.Trim(), Word, StringComparison.OrdinalIgnoreCase) && IsSingle(field)
            && !FieldText.Words(field).Contains(Word, StringComparer.OrdinalIgnoreCase),
        ListNode { Items.Count: 2 } => field.IsNumeric,
        _ => false,
    };

    /// <summary>The value, or what is wrong with it.</summary>
    public static Finding? Read(FieldDescription field, string key, Node node, DocumentFormat format, out UnknownValue? value, out Node place)
    {
        value = null;
        place = node;
        if (node is not ListNode list)
        {
            value = new(field, null);
            return null;
        }

        double[] ends = new double[2];
        for (int i = 0; i < 2; i++)
        {
            if (NodeValue.Read(field, key, list.Items[i], format, out object? end, out place) is { } finding)
            {
                return finding;
            }

            if (FieldKinds.SiValue(end) is not { } si)
            {
                return ReadingMessages.Type(key, $"a range that ends at {FieldText.Format(field, end)}", "two values, least and greatest", Example(field, format));
            }

            ends[i] = si;
        }

        place = node;
        if (ends[1] <= ends[0])
        {
            return Messages.EndsReversed(key, FieldText.Format(field, field.FromSi(ends[0])), FieldText.Format(field, field.FromSi(ends[1])));
        }

        value = new(field, (ends[0], ends[1]));
        return null;
    }

    /// <summary>A range of a field as it is written.</summary>
    public static string Example(FieldDescription field, DocumentFormat format)
    {
        if (!field.IsNumeric)
        {
            return Messages.Listed([.. FieldText.Words(field)]);
        }

        double one = field.Quantity is null ? 1 : QuantityExample(field);
        return format == DocumentFormat.Toml ? $"[{Literals.Of(field, field.FromSi(one), format)}, {Literals.Of(field, field.FromSi(2 * one), format)}]" : "[least, greatest]";
    }

    /// <summary>The value as a file has it.</summary>
    public static string Literal(UnknownField unknown, DocumentFormat format) => unknown.IsStated && !unknown.IsChoice
        ? $"[{Literals.Of(unknown.Field, unknown.Field.FromSi(unknown.Least), format)}, {Literals.Of(unknown.Field, unknown.Field.FromSi(unknown.Greatest), format)}]"
        : Literals.Quoted(Word);

    /// <summary>The same in words.</summary>
    public override string ToString() => Ends is { } ends
        ? $"{FieldText.Format(Field, Field.FromSi(ends.Least))} to {FieldText.Format(Field, Field.FromSi(ends.Greatest))}"
        : Word;

    private static bool IsSingle(FieldDescription field) => field.IsNumeric || field.Kind is FieldKind.Choice or FieldKind.Flag;

    private static double QuantityExample(FieldDescription field) =>
        FieldText.TryParse(field, field.Quantity!.Example, out object? value, out _) ? FieldKinds.SiValue(value)! .Value : field.Range?.Greatest / 4 ?? 1;
}
