using System.Buffers;
using System.Text;
using System.Text.Json;
using FrontEnd.Findings;

namespace FrontEnd.Documents.Sheets;

/// <summary>What every JSON output shares: indentation, missing numbers as null, findings.</summary>
internal static class JsonText
{
    public static string Of(Action<Utf8JsonWriter> write)
    {
        ArrayBufferWriter<byte> buffer = new();
        using (Utf8JsonWriter json = new(buffer, new JsonWriterOptions { Indented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            write(json);
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }

    public static void Number(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number && double.IsFinite(number))
        {
            json.WriteNumber(name, number);
        }
        else
        {
            json.WriteNull(name);
        }
    }

    /// <summary>What every JSON says of a finding.</summary>
    public static void Members(Utf8JsonWriter json, Finding finding)
    {
        json.WriteString("code", finding.Code);
        json.WriteString("severity", finding.Severity == Severity.Error ? "error" : "warning");
        json.WriteString("field", finding.Field);
        json.WriteString("message", finding.Message);
        json.WriteString("note", finding.Note);
        json.WriteString("help", finding.Help);
    }

    public static void Findings(Utf8JsonWriter json, IEnumerable<Finding> findings)
    {
        json.WriteStartArray("findings");
        foreach (Finding finding in findings)
        {
            json.WriteStartObject();
            Members(json, finding);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
