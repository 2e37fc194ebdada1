using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using FrontEnd.Quantities;

namespace FrontEnd.Documents.Sheets;

[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(FilterJson))]
[JsonSerializable(typeof(FirJson))]
[JsonSerializable(typeof(CombJson))]
[JsonSerializable(typeof(NotchJson))]
[JsonSerializable(typeof(SincJson))]
internal sealed partial class FilterContext : JsonSerializerContext
{
    public static FilterContext Shared { get; } = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower, WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new NumberConverter(), new QuantityConverter() },
    });
}

internal abstract class WritingConverter<T> : JsonConverter<T>
{
    public sealed override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new NotSupportedException("Answers are written and never read.");
}

internal sealed class NumberConverter : WritingConverter<double>
{
    public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options)
    {
        if (double.IsFinite(value))
        {
            writer.WriteNumberValue(value);
        }
        else
        {
            writer.WriteNullValue();
        }
    }
}

internal sealed class QuantityConverter : WritingConverter<IQuantity>
{
    public override void Write(Utf8JsonWriter writer, IQuantity value, JsonSerializerOptions options) => writer.WriteNumberValue(value.SiValue);
}

internal sealed record FindingJson(string Code, string Severity, string Field, string Message, string? Note, string? Help)
{
    public static IReadOnlyList<FindingJson> From(IEnumerable<Finding> findings) => [.. findings.Select(f => new FindingJson(f.Code, f.Severity == FrontEnd.Severity.Error ? "error" : "warning", f.Field, f.Message, f.Note, f.Help))];
}

public static class AnswerJson
{
    internal static string Write<T>(string command, T answer) => JsonSerializer.Serialize(answer, FilterContext.Shared.GetTypeInfo(typeof(T))!) + command[..0] + "\n";
}
