using System.Globalization;
using System.Text;
using FrontEnd.Fields;

namespace FrontEnd.Documents.Reading;

/// <summary>Values as they are written in a file of one format.</summary>
internal static class Literals
{
    /// <param name="written">The text that the user typed, kept where the format takes texts; null writes the value in full
    /// precision.</param>
    public static string Of(FieldDescription field, object? value, DocumentFormat format, string? written = null) =>
        format == DocumentFormat.Json ? Json(field, value)
        : value is PartRanges ranges
            ? ranges.All.Count == 0 ? "{}" : $"{{ {string.Join(", ", ranges.All.Select(range => Range(field, range)))} }}"
        : Toml(field, value, written);

    /// <summary>A TOML basic string, also valid JSON.</summary>
    public static string Quoted(string text)
    {
        StringBuilder quoted = new(text.Length + 2);
        quoted.Append('"');
        foreach (char letter in text)
        {
            _ = letter switch
            {
                '"' => quoted.Append("\\\""),
                '\\' => quoted.Append("\\\\"),
                '\n' => quoted.Append("\\n"),
                '\r' => quoted.Append("\\r"),
                '\t' => quoted.Append("\\t"),
                _ when char.IsControl(letter) => quoted.Append("\\u").Append(((int)letter).ToString("X4", CultureInfo.InvariantCulture)),
                _ => quoted.Append(letter),
            };
        }

        return quoted.Append('"').ToString();
    }

    private static string Range(FieldDescription field, PartRange range) => $"{range.Key} = {Ends(field, range)}";

    /// <summary>Both ends of a range, as a TOML list.</summary>
    public static string Ends(FieldDescription field, PartRange range)
    {
        FieldDescription ranged = field.Ranged.First(one => string.Equals(one.Key, range.Key, StringComparison.Ordinal));
        string End(double si) => Of(ranged, ranged.FromSi(si), DocumentFormat.Toml);
        return $"[{End(range.Low)}, {End(range.High)}]";
    }

    private static string Toml(FieldDescription field, object? value, string? written) => value switch
    {
        NamedNumbers numbers => numbers.All.Count == 0 ? "{}" : $"{{ {string.Join(", ", numbers.All.Select(one => $"{Quoted(one.Name)} = {Number(one.Value)}"))} }}",
        ContactOverTime times => $"[{string.Join(", ", times.All.Select(one => $"{{ after = {Quoted(ContactOverTime.Words(one.After))}, impedance = {Number(one.Factors.Impedance)}, excess = {Number(one.Factors.Excess)} }}"))}]",
        null => Quoted(field.NullWord ?? ""),
        bool flag => flag ? "true" : "false",
        int count => count.ToString(CultureInfo.InvariantCulture),
        double number => Number(number),
        FrequencyRange range => $"[{Quoted(QuantityText.FormatExact(range.Low))}, {Quoted(QuantityText.FormatExact(range.High))}]",
        IReadOnlyList<double> numbers => $"[{string.Join(", ", numbers.Select(Number))}]",
        IReadOnlyList<string> texts => $"[{string.Join(", ", texts.Select(Quoted))}]",
        IReadOnlyList<IReadOnlyList<double>> rows =>
            $"[{string.Join(", ", rows.Select(row => $"[{string.Join(", ", row.Select(Number))}]"))}]",
        string text => Quoted(text),
        _ when written is not null && field.Kind != FieldKind.Choice => Quoted(written.Trim()),
        _ => Quoted(FieldText.Format(field, value)),
    };

    private static string Json(FieldDescription field, object? value) => value switch
    {
        null => "null",
        NamedNumbers numbers => $"{{ {string.Join(", ", numbers.All.Select(one => $"{Quoted(one.Name)}: {Number(one.Value)}"))} }}",
        ContactOverTime times => $"[{string.Join(", ", times.All.Select(one => $"{{ \"after\": {Number(one.After.Seconds)}, \"impedance\": {Number(one.Factors.Impedance)}, \"excess\": {Number(one.Factors.Excess)} }}"))}]",
        FrequencyRange range => $"[{Number(range.Low.Hertz)}, {Number(range.High.Hertz)}]",
        _ when field.IsNumeric && FieldKinds.SiValue(value) is { } si => Number(si),
        _ => Toml(field, value, null),
    };

    private static string Number(double number) =>
        number.ToString("R", CultureInfo.InvariantCulture).Replace("E", "e", StringComparison.Ordinal);
}
