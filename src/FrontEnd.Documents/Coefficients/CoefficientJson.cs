using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;
using FrontEnd.Digital;
using FrontEnd.Filters;

namespace FrontEnd.Documents.Coefficients;

/// <summary>The sections for programs: coefficients as the machine holds them, powers of z⁻¹, a0 = 1; for fixed point also the whole numbers.</summary>
internal static class CoefficientJson
{
    public static string Of(FilterExport export, string design)
    {
        ArrayBufferWriter<byte> buffer = new();
        JsonWriterOptions options = new() { Indented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
        using (Utf8JsonWriter json = new(buffer, options))
        {
            json.WriteStartObject();
            json.WriteString("design", design);
            json.WriteNumber("rate", export.Rate.Hertz);
            json.WriteString("word", DigitalArithmetic.WordOf(export.Arithmetic.Word));
            json.WriteString("form", DigitalArithmetic.FormOf(export.Arithmetic.Form));
            json.WriteNumber("state_fraction_bits", export.Arithmetic.IsFixed ? export.Arithmetic.StateFraction : 0);
            json.WriteNumber("headroom_bits", export.HeadroomBits);
            json.WriteString("checksum", export.Checksum.ToString("x8", CultureInfo.InvariantCulture));
            json.WriteStartArray("sections");
            for (int i = 0; i < export.Filter.Details.Count; i++)
            {
                Section(json, export.Names[i], export.Filter.Details[i]);
            }

            json.WriteEndArray();
            json.WriteStartObject("self_test");
            Numbers(json, "input", export.TestInput);
            Numbers(json, "output", export.TestOutput);
            json.WriteNumber("tolerance", export.Tolerance);
            json.WriteEndObject();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }

    private static void Section(Utf8JsonWriter json, string name, QuantisedSection section)
    {
        Biquad s = section.Rounded;
        json.WriteStartObject();
        json.WriteString("filter", name);
        Numbers(json, "b", [s.B0, s.B1, s.B2]);
        Numbers(json, "a", [1, s.A1, s.A2]);
        if (section.FractionBits is { } bits)
        {
            json.WriteNumber("fraction_bits", bits);
            Numbers(json, "words", [.. section.Words.Select(word => (double)word)]);
        }

        json.WriteEndObject();
    }

    private static void Numbers(Utf8JsonWriter json, string name, IReadOnlyList<double> values)
    {
        json.WriteStartArray(name);
        foreach (double value in values)
        {
            json.WriteNumberValue(value == 0 ? 0.0 : value);
        }

        json.WriteEndArray();
    }
}
