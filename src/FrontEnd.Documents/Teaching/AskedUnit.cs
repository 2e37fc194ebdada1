using System.Globalization;
using FrontEnd.Teaching;

namespace FrontEnd.Documents.Teaching;

/// <summary>The unit that a number is asked for in where only a number can be given: that of the right answer as the key prints it.</summary>
/// <param name="Name">As printed, such as <c>µV rms</c>; "" for a plain number.</param>
/// <param name="Scale">What 1 of it is in the SI unit.</param>
internal sealed record AskedUnit(string Name, double Scale)
{
    public static AskedUnit Of(QuantityAnswer answer)
    {
        string text = answer.Text;
        int blank = text.IndexOf(' ', StringComparison.Ordinal);
        if (blank < 0 && text is not [.., '°' or '%'])
        {
            return new AskedUnit("", 1);
        }

        string name = blank < 0 ? text[^1..] : text[(blank + 1)..];
        if (!QuantityText.TryParse(answer.Kind, blank < 0 ? $"1{name}" : $"1 {name}", out IQuantity? one, out _))
        {
            throw new FormatException($"The unit of the answer `{text}` is not read.");
        }

        return new AskedUnit(name, one!.SiValue);
    }

    /// <summary>A value in SI units as a plain number in this one, to more digits than anyone gives.</summary>
    public string Number(double si) => (si / Scale).ToString("G10", CultureInfo.InvariantCulture);
}
