using System.Globalization;

namespace FrontEnd.Teaching.Problems;

/// <summary>The unit that a sheet asks an answer in, and in which a number is read that has none: that of the right answer as the key prints it.</summary>
/// <param name="Name">As printed, such as <c>µV rms</c>; "" for a plain number.</param>
/// <param name="Scale">What one step of it is in the SI unit.</param>
internal sealed record AskedUnit(string Name, double Scale)
{
    /// <summary>What 0 of it is in the SI unit; other than 0 for degrees Celsius alone.</summary>
    public double Zero { get; init; }

    /// <summary>True where a number is the same in the SI unit.</summary>
    public bool IsSi => Scale == 1 && Zero == 0;

    /// <summary>The unit of a quantity that is asked for; a choice has none.</summary>
    public static AskedUnit Of(QuantityAnswer answer) =>
        Find(answer.Kind, answer.Text) ?? throw new FormatException($"The unit of the answer `{answer.Text}` is not read.");

    /// <summary>The same of a question in a key; the SI unit where somebody has written another answer into the key.</summary>
    public static AskedUnit Of(QuantityKind kind, KeyQuestion question) =>
        Find(kind, question.Answer) ?? new AskedUnit(kind.SiUnit is "1" ? "" : kind.SiUnit, 1);

    /// <summary>What stands in front of the room for an answer.</summary>
    public static string Label(Answer answer) => answer is QuantityAnswer quantity
        ? Of(quantity) is { Name.Length: > 0 } unit ? $"Answer in {unit.Name}" : "Answer, a plain number"
        : "Answer, a letter";

    /// <summary>A number of this unit in the SI unit.</summary>
    public double Si(double number) => (number * Scale) + Zero;

    /// <summary>A value in SI units as a plain number in this one, to more digits than anyone gives.</summary>
    public string Number(double si) => ((si - Zero) / Scale).ToString("G10", CultureInfo.InvariantCulture);

    private static AskedUnit? Find(QuantityKind kind, string answer)
    {
        int blank = answer.IndexOf(' ', StringComparison.Ordinal);
        if (blank < 0 && answer is not [.., '°' or '%'])
        {
            return double.TryParse(answer, NumberStyles.Float, CultureInfo.InvariantCulture, out _) ? new AskedUnit("", 1) : null;
        }

        (string name, string between) = blank < 0 ? (answer[^1..], "") : (answer[(blank + 1)..], " ");
        return QuantityText.TryParse(kind, $"1{between}{name}", out IQuantity? one, out _) && QuantityText.TryParse(kind, $"0{between}{name}", out IQuantity? zero, out _)
            && one!.SiValue != zero!.SiValue
            ? new AskedUnit(name, one.SiValue - zero.SiValue) { Zero = zero.SiValue }
            : null;
    }
}
