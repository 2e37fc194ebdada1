using System.Text.Json;
using FrontEnd.Bench;
using FrontEnd.Designs;
using FrontEnd.Findings;
using FrontEnd.Results;

namespace FrontEnd.Documents.Sheets;

/// <summary>Tests at the bench and what came of them for programs, SI units.</summary>
public static class BenchJson
{
    public static string Of(Design design, IReadOnlyList<BenchReading> plan, IReadOnlyList<BenchResult> results, IReadOnlyList<Finding> findings) => JsonText.Of(json =>
    {
        json.WriteStartObject();
        json.WriteString("design", design.Name);
        json.WriteString("caution", BenchPlan.Caution);
        json.WriteStartArray("tests");
        foreach (BenchReading test in plan)
        {
            json.WriteStartObject();
            json.WriteString("name", test.Name);
            json.WriteString("title", test.Title);
            json.WriteString("fixture", test.Fixture);
            json.WriteString("setting", test.Setting);
            JsonText.Number(json, "expected", test.Expected?.SiValue);
            json.WriteString("unit", test.Expected?.SiUnit);
            JsonText.Number(json, "least", test.Least);
            JsonText.Number(json, "greatest", test.Greatest);
            json.WriteString("tolerance", test.Tolerance);
            json.WriteNumber("spread", test.Spread);
            json.WriteString("source", test.Source.Key);
            json.WriteString("remark", test.Remark);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("results");
        foreach (BenchResult result in results)
        {
            Write(json, result);
        }

        json.WriteEndArray();
        JsonText.Findings(json, findings);
        json.WriteEndObject();
    });

    private static void Write(Utf8JsonWriter json, BenchResult result)
    {
        json.WriteStartObject();
        json.WriteString("name", result.Reading.Name);
        json.WriteString("verdict", Wording.Word(result.Verdict));
        json.WriteNumber("measured", result.Measured.SiValue);
        json.WriteString("unit", result.Measured.SiUnit);
        json.WriteNumber("spread", result.Spread);
        json.WriteString("because", result.Because);
        json.WriteString("taken", result.Taken);
        json.WriteStartArray("suspects");
        foreach (Suspect suspect in result.Suspects)
        {
            json.WriteStartObject();
            json.WriteString("kind", Word(suspect.Kind));
            json.WriteString("text", suspect.Text);
            json.WriteString("evidence", suspect.Evidence);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("lines");
        foreach (FoundLine line in result.Lines)
        {
            json.WriteStartObject();
            json.WriteNumber("frequency", line.Frequency.Hertz);
            json.WriteNumber("rms", line.Rms.Volts);
            JsonText.Number(json, "harmonic", line.Harmonic);
            JsonText.Number(json, "mains", line.Mains?.Hertz);
            json.WriteBoolean("folded", line.Folded);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        foreach (Curve curve in result.Spectra)
        {
            json.WriteStartObject(curve.Name);
            Numbers(json, "hertz", curve.X);
            Numbers(json, "density", curve.Y);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static void Numbers(Utf8JsonWriter json, string name, double[] values)
    {
        json.WriteStartArray(name);
        foreach (double value in values)
        {
            json.WriteNumberValue(value);
        }

        json.WriteEndArray();
    }

    private static string Word(SuspectKind kind) => kind switch
    {
        SuspectKind.MainsPickup => "mains-pick-up",
        SuspectKind.Aliasing => "aliasing",
        SuspectKind.OtherLine => "other-line",
        SuspectKind.LouderPart => "louder-part",
        SuspectKind.LowFrequency => "low-frequency",
        SuspectKind.HighFrequency => "high-frequency",
        SuspectKind.TooQuiet => "too-quiet",
        SuspectKind.DeadChannel => "dead-channel",
        SuspectKind.Clipping => "clipping",
        SuspectKind.Unit => "unit",
        SuspectKind.DigitalFilter => "digital-filter",
        SuspectKind.InputLoad => "input-load",
        SuspectKind.Fixture => "fixture",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Kind is not handled."),
    };
}
