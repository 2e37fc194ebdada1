using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using FrontEnd.Bench;
using FrontEnd.Compare;
using FrontEnd.DesignedFilters;
using FrontEnd.Documents.Cards;
using FrontEnd.Pairs;
using FrontEnd.Rates;
using FrontEnd.Sizing;
using FrontEnd.Spread;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Sheets;

/// <summary>The answers of the commands as JSON: the only writer of it. Numbers are in SI units, decibels, degrees or bits.</summary>
/// <remarks>
/// Every answer is one object that begins with <c>command</c> and <c>version</c>. What follows are the members of a small record that is
/// mapped from the core's answer in one place (<see cref="CheckJson"/> and its neighbours) and written by the generated
/// <see cref="AnswerContext"/>, without reflection. Names are snake_case; a number that is missing or without bound is null. Whatever a command
/// has written stands in <c>files</c>, every file of it.
/// </remarks>
internal static class AnswerJson
{
    /// <summary>Digits of the program's version: 0.1.0.</summary>
    private const int VersionParts = 3;

    /// <summary>The program's version, as <c>frontend --version</c> says it.</summary>
    public static string Version { get; } = typeof(AnswerJson).Assembly.GetName().Version!.ToString(VersionParts);

    /// <summary>Design, results and findings; the design is in the plain-number form and can be read again.</summary>
    /// <param name="command">The command that wrote it: check or sheet.</param>
    public static string Of(Sheet sheet, string command = "check") => Write(command, CheckJson.From(sheet));

    /// <summary>The files that a command wrote.</summary>
    public static string OfFiles(string command, params IEnumerable<string> files) => Write(command, new WrittenJson([.. files]));

    /// <summary>The lessons there are.</summary>
    public static string Of(IReadOnlyList<Lesson> lessons) => Write("lesson", LessonsJson.From(lessons));

    /// <summary>A lesson with what came of it.</summary>
    /// <param name="design">The user's file, where the lesson is on one; null where it is on its own design.</param>
    /// <param name="files">That were written; as below, null for none.</param>
    public static string Of(LessonOutcome outcome, string? design, IReadOnlyList<string>? files = null) =>
        Write("lesson", LessonJson.From(outcome, design), files);

    /// <summary>How the figures of many builds spread.</summary>
    public static string Of(SpreadResult result) => Write("spread", SpreadJson.From(result));

    /// <summary>What differs between two designs, and what each difference does.</summary>
    public static string Of(Comparison comparison) => Write("compare", ComparisonJson.Of(comparison));

    /// <summary>What changes when a design is built of parts that can be bought.</summary>
    public static string Of(AsBuilt built, IReadOnlyList<string>? files = null) => Write("size", BoughtDesignJson.From(built), files);

    /// <summary>Sampling rates side by side.</summary>
    public static string Of(RateComparison comparison) => Write("rates", RatesJson.From(comparison));

    /// <summary>Tests at the bench and what came of them.</summary>
    public static string Of(Design design, IReadOnlyList<BenchReading> plan, IReadOnlyList<BenchResult> results,
        IReadOnlyList<Finding> findings) =>
        Write("bench", BenchJson.From(design, plan, results, findings));

    /// <summary>What a recording on a fixture leaves of what is not known.</summary>
    public static string Of(Narrowing narrowing, IReadOnlyList<RecordingChoice> next, IReadOnlyList<Finding> findings, IReadOnlyList<string>? files = null) =>
        Write("bench", NarrowingJson.From(narrowing, next, findings), files);

    /// <summary>What to record of a device that somebody else built.</summary>
    public static string Of(RecordingPlan plan) => Write("bench", RecordingPlanJson.From(plan));

    /// <summary>What a search for a design found; each design as the text of its file.</summary>
    public static string Of(SizingRequest request, SizingOutcome outcome, IReadOnlyList<Finding> findings, IReadOnlyList<string>? files = null) =>
        Write("size", SizeJson.From(request, outcome, findings), files);

    /// <summary>What simulated samples hold, and what was written of them.</summary>
    public static string Of(SampleAnswer answer, IReadOnlyList<string>? files = null) => Write("samples", SamplesJson.From(answer), files);

    /// <summary>Why one figure is what it is.</summary>
    public static string Of(Explained explained) => Write("explain", ExplainJson.From(explained));

    /// <summary>Where the sites lie on one head.</summary>
    public static string Of(HeadSites sites, IReadOnlyList<string>? files = null) => Write("sites", SitesJson.From(sites), files);

    /// <summary>What pairs of sites show of sources.</summary>
    public static string Of(PairsAnswer answer, IReadOnlyList<string>? files = null) => Write("pairs", PairsJson.From(answer), files);

    /// <summary>What a class did, and every mark.</summary>
    public static string Of(Marks marks, IEnumerable<Finding> findings, IReadOnlyList<string>? files = null) =>
        Write("mark", MarkJson.From(marks, findings), files);

    /// <summary>The kinds of problems that there are.</summary>
    public static string Of(IReadOnlyList<Template> templates) => Write("problems", ProblemsJson.From(templates));

    /// <summary>The problem sheets that were written: what was asked and whose sheet is which, no answer and no secret.</summary>
    public static string Of(WrittenHomework written) => Write("problems", WrittenHomeworkJson.From(written), written.Files);

    /// <summary>Terms of the glossary.</summary>
    public static string Of(IReadOnlyList<Term> terms) => Write("glossary", new GlossaryJson(terms));

    /// <summary>Part cards with their values.</summary>
    public static string Of(IReadOnlyList<ShownCard> cards) => Write("cards", CardsJson.From(cards));

    /// <summary>A new part card, and what was fitted for it.</summary>
    public static string Of(NewCard card, string file) => Write("cards", NewCardJson.From(card, file), [file]);

    /// <summary>A designed filter: losses in dB, null where a loss is without bound. Every number reads back as the same double.</summary>
    /// <param name="command">"filter", "filter notch" …</param>
    public static string Of(DesignedFilter filter, string command) => filter switch
    {
        DesignedSections sections => Write(command, FilterJson.From(sections)),
        DesignedFir fir => Write(command, FirJson.From(fir)),
        DesignedComb comb => Write(command, CombJson.From(comb)),
        DesignedNotches notches => Write(command, NotchJson.From(notches)),
        DesignedSinc sinc => Write(command, SincJson.From(sinc)),
        _ => throw new ArgumentOutOfRangeException(nameof(filter), filter, "The filter is not handled."),
    };

    /// <summary>Any answer that <see cref="AnswerContext"/> lists, in the envelope that all share.</summary>
    /// <param name="files">That the command wrote, all of them, as they were named; null where it wrote none.</param>
    internal static string Write<T>(string command, T answer, IReadOnlyList<string>? files = null)
    {
        using JsonDocument members = JsonSerializer.SerializeToDocument(answer, AnswerContext.Shared.GetTypeInfo(typeof(T))!);
        return Text(json =>
        {
            json.WriteStartObject();
            json.WriteString("command", command);
            json.WriteString("version", Version);
            foreach (JsonProperty member in members.RootElement.EnumerateObject())
            {
                member.WriteTo(json);
            }

            if (files is { Count: > 0 })
            {
                json.WriteStartArray("files");
                foreach (string file in files)
                {
                    json.WriteStringValue(file);
                }

                json.WriteEndArray();
            }

            json.WriteEndObject();
        });
    }

    /// <summary>A file of its own that is no command's answer, such as the key of a homework: without the envelope.</summary>
    internal static string Plain<T>(T file) =>
        Text(json => JsonSerializer.Serialize(json, file, AnswerContext.Shared.GetTypeInfo(typeof(T))!));

    /// <summary>The same, written as it is made.</summary>
    internal static void Plain<T>(T file, Stream stream)
    {
        JsonSerializer.Serialize(stream, file, AnswerContext.Files.GetTypeInfo(typeof(T))!);
        stream.WriteByte((byte)'\n');
    }

    private static string Text(Action<Utf8JsonWriter> write)
    {
        // Never part of a web page, so Ω and µ stay readable.
        JsonWriterOptions options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, NewLine = "\n" };
        ArrayBufferWriter<byte> buffer = new();
        using (Utf8JsonWriter json = new(buffer, options))
        {
            write(json);
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }
}

/// <summary>Generated code that writes the records of <see cref="AnswerJson"/>; a line for each answer.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(BenchJson))]
[JsonSerializable(typeof(CardsJson))]
[JsonSerializable(typeof(CheckJson))]
[JsonSerializable(typeof(CoefficientJson))]
[JsonSerializable(typeof(CombJson))]
[JsonSerializable(typeof(BoughtDesignJson))]
[JsonSerializable(typeof(ComparisonJson))]
[JsonSerializable(typeof(ExplainJson))]
[JsonSerializable(typeof(FilterJson))]
[JsonSerializable(typeof(FirJson))]
[JsonSerializable(typeof(GlossaryJson))]
[JsonSerializable(typeof(KeyJson))]
[JsonSerializable(typeof(LessonJson))]
[JsonSerializable(typeof(WrittenHomeworkJson))]
[JsonSerializable(typeof(WrittenJson))]
[JsonSerializable(typeof(LessonsJson))]
[JsonSerializable(typeof(MarkJson))]
[JsonSerializable(typeof(NarrowingJson))]
[JsonSerializable(typeof(NewCardJson))]
[JsonSerializable(typeof(NotchJson))]
[JsonSerializable(typeof(PairsJson))]
[JsonSerializable(typeof(ProblemsJson))]
[JsonSerializable(typeof(RatesJson))]
[JsonSerializable(typeof(RecordingPlanJson))]
[JsonSerializable(typeof(SamplesJson))]
[JsonSerializable(typeof(SincJson))]
[JsonSerializable(typeof(SitesJson))]
[JsonSerializable(typeof(SizeJson))]
[JsonSerializable(typeof(SpreadJson))]
internal sealed partial class AnswerContext : JsonSerializerContext;
