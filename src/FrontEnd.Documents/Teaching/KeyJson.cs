using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using FrontEnd.Findings;
using FrontEnd.Numbers;
using FrontEnd.Teaching;
using FrontEnd.Text;

namespace FrontEnd.Documents.Teaching;

/// <summary>The key as JSON: written beside the sheets, read for marking.</summary>
public static class KeyJson
{
    private const string Format = "frontend-key";
    private const int FormatVersion = 1;

    public static string Write(Key key)
    {
        using MemoryStream stream = new();

        // The key is a file of its own and never part of a web page, so Ω and µ stay readable.
        using (Utf8JsonWriter json = new(stream, new JsonWriterOptions { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteString("format", Format);
            json.WriteNumber("version", FormatVersion);
            json.WriteString("templates", key.TemplateVersion);
            json.WriteString("generator", SeededRandom.Name);
            json.WriteNumber("seed", key.Seed);
            json.WriteStartArray("sheets");
            foreach (KeySheet sheet in key.Sheets)
            {
                WriteSheet(json, sheet);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    /// <summary>Null with a finding where the text is no key.</summary>
    public static Key? Read(string text, string path, out Finding? finding)
    {
        finding = null;
        try
        {
            using JsonDocument document = JsonDocument.Parse(text);
            JsonElement root = document.RootElement;
            if (root.GetProperty("format").GetString() != Format || root.GetProperty("version").GetInt32() != FormatVersion)
            {
                finding = Messages.BadKey(path, $"it is not a {Format} of version {FormatVersion}");
                return null;
            }

            return new Key(root.GetProperty("seed").GetUInt64(), Word(root, "templates"), [.. root.GetProperty("sheets").EnumerateArray().Select(ReadSheet)]);
        }
        catch (Exception problem) when (problem is JsonException or KeyNotFoundException or InvalidOperationException or FormatException)
        {
            finding = Messages.BadKey(path, problem is KeyNotFoundException ? "a field is missing" : problem.Message.TrimEnd('.'));
            return null;
        }
    }

    private static void WriteSheet(Utf8JsonWriter json, KeySheet sheet)
    {
        json.WriteStartObject();
        json.WriteString("student", sheet.Student);
        json.WriteString("name", sheet.Name);
        json.WriteStartArray("questions");
        foreach (KeyQuestion question in sheet.Questions)
        {
            json.WriteStartObject();
            json.WriteString("id", question.Id);
            json.WriteString("template", question.Template);
            json.WriteNumber("points", question.Points);
            json.WriteString("answer", question.Answer);
            if (question.Kind is { } kind)
            {
                json.WriteString("kind", kind.Name);
            }

            if (question.Options.Count > 0)
            {
                json.WriteStartArray("choices");
                foreach (string option in question.Options)
                {
                    json.WriteStringValue(option);
                }

                json.WriteEndArray();
            }

            WriteRange(json, question.Value, question.Low, question.High);
            json.WriteStartArray("slips");
            foreach (KeySlip slip in question.Slips)
            {
                json.WriteStartObject();
                json.WriteString("slip", slip.Code);
                WriteRange(json, slip.Value, slip.Low, slip.High);
                json.WriteNumber("points", slip.Points);
                json.WriteString("remark", slip.Remark);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteRange(Utf8JsonWriter json, double value, double low, double high)
    {
        json.WriteNumber("value", value);
        json.WriteNumber("low", low);
        json.WriteNumber("high", high);
    }

    private static KeySheet ReadSheet(JsonElement sheet) =>
        new(Word(sheet, "student"), Word(sheet, "name"), [.. sheet.GetProperty("questions").EnumerateArray().Select(ReadQuestion)]);

    private static KeyQuestion ReadQuestion(JsonElement question)
    {
        QuantityKind? kind = null;
        if (question.TryGetProperty("kind", out JsonElement word))
        {
            kind = QuantityKind.Find(word.GetString()) ?? throw new FormatException($"`{word}` is no kind of quantity");
        }

        string[] options = question.TryGetProperty("choices", out JsonElement choices) ? [.. choices.EnumerateArray().Select(choice => choice.GetString() ?? "")] : [];
        if (kind is null && options.Length == 0)
        {
            throw new FormatException("a question has neither a kind nor choices");
        }

        KeySlip[] slips =
        [
            .. question.GetProperty("slips").EnumerateArray().Select(slip => new KeySlip(Word(slip, "slip"), Word(slip, "remark"), Number(slip, "value"), Number(slip, "low"), Number(slip, "high"), Number(slip, "points"))),
        ];
        return new KeyQuestion(Word(question, "id"), Word(question, "template"), question.GetProperty("points").GetInt32(), Word(question, "answer"), slips)
        {
            Kind = kind, Options = options, Value = Number(question, "value"), Low = Number(question, "low"), High = Number(question, "high"),
        };
    }

    private static string Word(JsonElement element, string name) => element.GetProperty(name).GetString() ?? "";

    private static double Number(JsonElement element, string name) => element.GetProperty(name).GetDouble();
}
