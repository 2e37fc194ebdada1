using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using FrontEnd.Findings;
using FrontEnd.Quantities;

namespace FrontEnd.Documents.Sheets;

/// <summary>Generated code that writes the answers of the filter commands.</summary>
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
        Converters = { new FilterNumberConverter(), new FilterQuantityConverter() },
    });
}

internal abstract class FilterWritingConverter<T> : JsonConverter<T>
{
    public sealed override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new NotSupportedException("Answers are written and never read.");
}

internal sealed class FilterNumberConverter : FilterWritingConverter<double>
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

internal sealed class FilterQuantityConverter : FilterWritingConverter<IQuantity>
{
    public override void Write(Utf8JsonWriter writer, IQuantity value, JsonSerializerOptions options) =>
        writer.WriteNumberValue(value.SiValue);
}

internal sealed record FilterFindingJson(string Code, string Severity, string Field, string Message, string? Note, string? Help)
{
    public static IReadOnlyList<FilterFindingJson> From(IEnumerable<Finding> findings) =>
        [.. findings.Select(f => new FilterFindingJson(f.Code, f.Severity == FrontEnd.Findings.Severity.Error ? "error" : "warning", f.Field, f.Message, f.Note, f.Help))];
}

internal static class FilterEnvelope
{
    internal static string Write<T>(T answer) => JsonSerializer.Serialize(answer, FilterContext.Shared.GetTypeInfo(typeof(T))!) + "\n";
}
