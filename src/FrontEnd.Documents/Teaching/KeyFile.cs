using System.Text;
using System.Text.Json;
using FrontEnd.Documents.Sheets;
using FrontEnd.Numbers;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>The key of a homework, a JSON file: written beside the sheets, read for marking.</summary>
internal static class KeyFile
{
    private const string Format = "frontend-key";
    private const int FormatVersion = 3;

    /// <summary>Sealed over what decides marks alone, see <see cref="KeySeal"/>.</summary>
    private const int MarksSealedVersion = 2;

    private const int UnsealedVersion = 1;

    /// <summary>The text of the file.</summary>
    public static string Write(Key key)
    {
        MemoryStream text = new();
        Write(key, text);
        return Encoding.UTF8.GetString(text.GetBuffer(), 0, (int)text.Length);
    }

    /// <summary>The same, written as it is made.</summary>
    /// <remarks>It is made twice, for the seal and for the file, as neither is held in memory.</remarks>
    public static void Write(Key key, Stream file)
    {
        using JsonSeal seal = new();
        AnswerJson.Plain(Json(key, ""), seal);
        AnswerJson.Plain(Json(key, seal.Finish()), file);
    }

    private static KeyJson Json(Key key, string seal) => new(
        Format, FormatVersion, seal, key.Code, key.TemplateVersion, SeededRandom.Name, key.Seed, RubricJson.From(key.Rubric), key.Sheets.Select(KeySheetJson.From));

    /// <summary>Null with a finding where the text is no key, or where nothing says that it is as it was written.</summary>
    /// <param name="trust">Takes a key whose seal does not fit, or that has none, with a warning.</param>
    public static Key? Read(string text, string path, out Finding? finding, bool trust = false) =>
        Read(Encoding.UTF8.GetBytes(text), path, out finding, trust);

    /// <summary>The same of a text in UTF-8.</summary>
    public static Key? Read(ReadOnlyMemory<byte> text, string path, out Finding? finding, bool trust = false)
    {
        finding = null;
        try
        {
            using JsonDocument document = JsonDocument.Parse(text);
            JsonElement root = document.RootElement;
            if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty("format", out JsonElement format) || format.ValueKind != JsonValueKind.String || format.GetString() != Format)
            {
                finding = Messages.BadKey(path, "it is no key of a homework");
                return null;
            }

            int version = root.GetProperty("version").GetInt32();
            if (version is not (FormatVersion or MarksSealedVersion or UnsealedVersion))
            {
                finding = Messages.BadKey(path, $"it is of version {version}, and versions {UnsealedVersion} to {FormatVersion} are known");
                return null;
            }

            Key key = new(root.GetProperty("seed").GetUInt64(), Word(root, "templates"),
                [.. root.GetProperty("sheets").EnumerateArray().Select(ReadSheet)])
            {
                Code = version == UnsealedVersion ? "" : Word(root, "code"),
                Rubric = root.TryGetProperty("rubric", out JsonElement rubric) ? ReadRubric(rubric) : Rubric.Usual,
            };
            if (version == UnsealedVersion)
            {
                finding = Messages.UnsealedKey(path, trust);
            }
            else if (!string.Equals(Word(root, "seal"), version == FormatVersion ? JsonSeal.Of(text.Span) : KeySeal.Of(key), StringComparison.Ordinal))
            {
                finding = Messages.EditedKey(path, trust);
            }
            else if (version == MarksSealedVersion)
            {
                finding = Messages.MarksSealedKey(path);
            }

            return finding is { Severity: Severity.Error } ? null : key;
        }
        catch (BadKeyException problem)
        {
            finding = Messages.BadKey(path, problem.Message);
            return null;
        }
        catch (Exception problem) when (problem is JsonException or KeyNotFoundException or InvalidOperationException or FormatException or ArgumentException)
        {
            finding = Messages.BadKey(path, Why(problem));
            return null;
        }
    }

    /// <summary>In words of ours: the reader's own name its types.</summary>
    private static string Why(Exception problem) => problem switch
    {
        JsonException { LineNumber: { } line } => FormattableString.Invariant($"it is not valid JSON, in line {line + 1}"),
        JsonException => "it is not valid JSON",
        KeyNotFoundException => "a field is missing",
        _ => "a field holds another kind of value than a key has there",
    };

    /// <summary>A key that cannot be used, in words of ours.</summary>
    private sealed class BadKeyException(string message) : Exception(message);

    private static Rubric ReadRubric(JsonElement rubric) => new()
    {
        All = ReadShares(rubric.GetProperty("all")),
        Questions = rubric.GetProperty("questions").EnumerateObject().ToDictionary(one => one.Name, one => ReadShares(one.Value), StringComparer.OrdinalIgnoreCase),
    };

    private static QuestionRubric ReadShares(JsonElement shares) => new()
    {
        Slip = shares.GetProperty("slip") is { ValueKind: JsonValueKind.Number } slip ? slip.GetDouble() : null, Rounding = Number(shares, "rounding"),
        UnitLeftOut = Number(shares, "unit"), OtherKind = Number(shares, "kind"), WrongSign = Number(shares, "sign"),
    };

    private static KeySheet ReadSheet(JsonElement sheet) =>
        new(Word(sheet, "student"), Word(sheet, "name"), [.. sheet.GetProperty("questions").EnumerateArray().Select(ReadQuestion)]);

    private static KeyQuestion ReadQuestion(JsonElement question)
    {
        QuantityKind? kind = null;
        if (question.TryGetProperty("kind", out JsonElement word))
        {
            kind = QuantityKind.Find(word.GetString()) ?? throw new BadKeyException($"`{word.GetString()}` is no kind of quantity");
        }

        string[] options = question.TryGetProperty("choices", out JsonElement choices)
            ? [.. choices.EnumerateArray().Select(choice => choice.GetString() ?? "")]
            : [];
        if (kind is null && options.Length == 0)
        {
            throw new BadKeyException("a question has neither a kind nor choices");
        }

        KeySlip[] slips = [.. question.GetProperty("slips").EnumerateArray().Select(ReadSlip)];
        return new KeyQuestion(Word(question, "id"), Word(question, "template"), question.GetProperty("points").GetInt32(),
            Word(question, "answer"), slips)
        {
            Kind = kind, Options = options, Value = Number(question, "value"), Low = Number(question, "low"),
            High = Number(question, "high"), Unrounded = question.TryGetProperty("unrounded", out JsonElement unrounded) ? unrounded.GetDouble() : null,
            HasIntermediates = question.TryGetProperty("has_intermediates", out JsonElement several) && several.GetBoolean(),
            Title = Said(question, "title"), Text = Said(question, "text"),
            Givens = question.TryGetProperty("givens", out JsonElement givens)
                ? [.. givens.EnumerateArray().Select(one => new KeyGiven(Word(one, "symbol"), Word(one, "name"), Word(one, "value")))]
                : [],
            Steps = question.TryGetProperty("steps", out JsonElement steps)
                ? [.. steps.EnumerateArray().Select(one => new KeyStep(Word(one, "says"), Word(one, "formula"), Word(one, "substituted")))]
                : [],
        };
    }

    private static KeySlip ReadSlip(JsonElement slip) =>
        new(Word(slip, "slip"), Word(slip, "remark"), Number(slip, "value"), Number(slip, "low"), Number(slip, "high"),
            Number(slip, "points"));

    /// <summary>A text that may be missing.</summary>
    private static string Said(JsonElement element, string name) => element.TryGetProperty(name, out JsonElement said) ? said.GetString() ?? "" : "";

    private static string Word(JsonElement element, string name) => element.GetProperty(name).GetString() ?? "";

    private static double Number(JsonElement element, string name) => element.GetProperty(name).GetDouble();
}
