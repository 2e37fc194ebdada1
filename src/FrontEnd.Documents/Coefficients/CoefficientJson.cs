using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;
using FrontEnd.Digital;
using FrontEnd.Filters;

namespace FrontEnd.Documents.Coefficients;

/// <summary>The filters for programs: sections, taps or a comb's lengths as the machine holds them, powers of z⁻¹, a0 = 1; for fixed point
/// also the whole numbers.</summary>
internal static class CoefficientJson
{
    public static string Of(FilterExport export, string design)
    {
        ArrayBufferWriter<byte> buffer = new();
        JsonWriterOptions options =
            new() { Indented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
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
            switch (export)
            {
                case SectionsExport sections:
                    json.WriteStartArray("sections");
                    for (int i = 0; i < sections.Filter.Details.Count; i++)
                    {
                        Section(json, export.Names[i], sections.Filter.Details[i]);
                    }

                    json.WriteEndArray();
                    break;
                case TapsExport taps:
                    json.WriteString("filter", export.Names[0]);
                    Numbers(json, "taps", taps.Taps.Rounded.Taps.ToArray());
                    Words(json, taps.Taps.FractionBits, taps.Taps.Words);
                    break;
                case CombExport comb:
                    json.WriteString("filter", export.Names[0]);
                    json.WriteNumber("period", comb.Comb.Period);
                    json.WriteNumber("periods", comb.Comb.Periods);
                    break;
                default:
                    throw new ArgumentOutOfRangeException(nameof(export), export, "The export is not handled.");
            }

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
        Words(json, section.FractionBits, section.Words);
        json.WriteEndObject();
    }

    private static void Words(Utf8JsonWriter json, int? fraction, IReadOnlyList<long> words)
    {
        if (fraction is { } bits)
        {
            json.WriteNumber("fraction_bits", bits);
            Numbers(json, "words", [.. words.Select(word => (double)word)]);
        }
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
