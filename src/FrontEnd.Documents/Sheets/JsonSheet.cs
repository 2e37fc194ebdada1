using System.Buffers;
using System.Text;
using System.Text.Json;
using FrontEnd.Findings;
using FrontEnd.Results;

namespace FrontEnd.Documents.Sheets;

/// <summary>Design, results and findings for programs. Numbers are in SI units; the design is in the plain-number form and can be read again.</summary>
public static class JsonSheet
{
    public static string Of(Sheet sheet)
    {
        ArrayBufferWriter<byte> buffer = new();
        JsonWriterOptions options = new() { Indented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
        using (Utf8JsonWriter json = new(buffer, options))
        {
            json.WriteStartObject();
            json.WritePropertyName("design");
            PlainDesign.Write(json, sheet.Design);
            json.WriteStartArray("results");
            foreach (Result result in sheet.Assessment.Results)
            {
                Write(json, result);
            }

            json.WriteEndArray();
            if (sheet.Spread is { } spread)
            {
                json.WriteStartObject("spread");
                SpreadJson.Members(json, spread);
                json.WriteEndObject();
            }

            json.WriteStartArray("findings");
            foreach (Finding finding in sheet.Findings)
            {
                Write(json, finding);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }

    private static void Write(Utf8JsonWriter json, Result result)
    {
        json.WriteStartObject();
        json.WriteString("id", result.Id.Text);
        json.WriteString("name", result.Name);
        json.WriteString("symbol", result.Symbol);
        Number(json, "value", result.Value?.SiValue);
        json.WriteString("unit", result.Unit);
        json.WriteString("equation", result.Equation.Text);
        json.WriteString("substituted", result.Substituted);
        Write(json, result.Hand);
        Write(json, "source", result.Equation.Source);
        json.WriteString("verdict", Wording.Word(result.Verdict.Kind));
        Number(json, "limit", result.Verdict.Limit?.SiValue);
        Number(json, "margin", result.Verdict.Margin);
        json.WriteString("state", result.State switch
        {
            ResultState.Number => "number",
            ResultState.Word => "word",
            ResultState.Unbounded => "unbounded",
            ResultState.Missing => "missing",
            _ => throw new InvalidOperationException($"State {result.State} is not handled."),
        });
        json.WriteString("text", result.Text);
        json.WriteString("finding", result.FindingCode);
        json.WriteString("because", result.Verdict.Because);
        json.WriteString("dominates", result.Verdict.Dominates);
        json.WriteString("helps", Wording.Helps(result.Verdict));
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, HandFigure? hand)
    {
        if (hand is null)
        {
            json.WriteNull("hand");
            return;
        }

        json.WriteStartObject("hand");
        Number(json, "value", hand.Value.SiValue);
        json.WriteString("formula", hand.Formula);
        json.WriteString("substituted", hand.Substituted);
        Write(json, "source", hand.Source);
        Number(json, "difference", hand.Difference);
        json.WriteString("assumption", hand.Assumption);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, string name, SourceRef source)
    {
        json.WriteStartObject(name);
        json.WriteString("key", source.Key);
        json.WriteString("place", source.Place);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, Finding finding)
    {
        json.WriteStartObject();
        JsonText.Members(json, finding);
        json.WriteString("file", finding.File);
        Number(json, "line", finding.Line);
        json.WriteString("excerpt", finding.Excerpt);
        json.WriteEndObject();
    }

    private static void Number(Utf8JsonWriter json, string name, double? number)
    {
        if (number is { } value && double.IsFinite(value))
        {
            json.WriteNumber(name, value);
        }
        else
        {
            json.WriteNull(name);
        }
    }
}
