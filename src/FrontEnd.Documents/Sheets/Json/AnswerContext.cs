using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using FrontEnd.Catalogue;
using FrontEnd.Spread;

namespace FrontEnd.Documents.Sheets;

/// <summary>How the answers are written; which there are stands beside <see cref="AnswerJson"/>.</summary>
internal sealed partial class AnswerContext
{
    /// <summary>With our names, our words and quantities as numbers.</summary>
    public static AnswerContext Shared { get; } = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters =
        {
            new NumberConverter(),
            new QuantityConverter(),
            new WordConverter<VerdictKind>(Wording.Word),
            new WordConverter<Severity>(Wording.Word),
            new WordConverter<ResultState>(Wording.Word),
            new WordConverter<Bench.SuspectKind>(Wording.Word),
            new WordConverter<Compare.ChangeKind>(Wording.Word),
            new WordConverter<SpreadPlace>(Wording.Word),
            new WordConverter<PartDistribution>(Wording.Word),
        },
    });

    /// <summary>The same for what is written straight into a file.</summary>
    public static AnswerContext Files { get; } = new(new JsonSerializerOptions(Shared.Options) { WriteIndented = true, NewLine = "\n" });
}

/// <summary>A converter that writes only: nothing reads an answer back.</summary>
internal abstract class WritingConverter<T> : JsonConverter<T>
{
    public sealed override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new NotSupportedException("Answers are written and never read.");
}

/// <summary>A number; null where it has no bound, as JSON has no word for that.</summary>
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

/// <summary>A quantity as the number in its SI unit; records declare it as <see cref="IQuantity"/>, so that one converter does for all of
/// them.</summary>
internal sealed class QuantityConverter : WritingConverter<IQuantity>
{
    public override void Write(Utf8JsonWriter writer, IQuantity value, JsonSerializerOptions options) =>
        writer.WriteNumberValue(value.SiValue);
}

/// <summary>A choice as the word that all views print.</summary>
internal sealed class WordConverter<T>(Func<T, string> word) : WritingConverter<T>
    where T : struct, Enum
{
    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => writer.WriteStringValue(word(value));
}

/// <summary>A design inside an answer: the plain-number form, which <see cref="DesignDocument"/> reads.</summary>
internal sealed class DesignConverter : WritingConverter<DesignJson>
{
    public override void Write(Utf8JsonWriter writer, DesignJson value, JsonSerializerOptions options) =>
        PlainDesign.Write(writer, value.Design, value.PartlyKnown);
}

/// <summary>A design, written by <see cref="DesignConverter"/> and not member by member.</summary>
[JsonConverter(typeof(DesignConverter))]
internal sealed record DesignJson(Design Design, PartlyKnownDesign? PartlyKnown = null);
