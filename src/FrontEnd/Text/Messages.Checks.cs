using FrontEnd.Fields;
using FrontEnd.Findings;
using FrontEnd.Quantities;

namespace FrontEnd.Text;

/// <summary>Wording for field values and for checks between fields that need no evaluation.</summary>
public static partial class Messages
{
    public const string OutsideRange = "FE0110";
    public const string UnknownWord = "FE0111";
    public const string NotANumberText = "FE0112";
    public const string NotAWholeNumber = "FE0113";
    public const string NotAFlag = "FE0114";
    public const string BadList = "FE0115";

    public const string BandOrder = "FE0301";
    public const string BandAboveHalfRate = "FE0302";
    public const string NameTwice = "FE0303";
    public const string PassiveNotLast = "FE0304";
    public const string NoDcPath = "FE0305";
    public const string CornerAboveHalfRate = "FE0306";
    public const string SupplyOrder = "FE0307";
    public const string FeedbackWithoutGround = "FE0308";
    public const string StageOscillates = "FE0330";
    public const string HalfABlock = "FE0309";
    public const string StepDisagrees = "FE0310";
    public const string BadRow = "FE0311";
    public const string UnstableSection = "FE0312";
    public const string SitesCount = "FE0313";
    public const string TooFewChannels = "FE0314";
    public const string SignalOrder = "FE0315";
    public const string MidRailOutside = "FE0316";
    public const string NoFundamental = "FE0317";
    public const string LimitRaised = "FE0318";
    public const string EarthedWithoutCaution = "FE0319";
    public const string CheckAboveHalfRate = "FE0320";
    public const string ReferenceInputsAboveChannels = "FE0321";
    public const string ShieldWithoutLead = "FE0322";
    public const string NameMissing = "FE0323";
    public const string MarginsExceedSupply = "FE0324";
    public const string RangeWithoutValue = "FE0325";
    public const string NameReserved = "FE0326";

    /// <summary>The legal values of a field in words: "above 0 Ω, up to 10.0 GΩ".</summary>
    public static string RangeWords(FieldDescription field)
    {
        if (field.Range is not { } range)
        {
            return "";
        }

        // Shares and tolerances in per cent throughout, where one alone would turn to a factor from 1 on.
        string Number(double si) => field.Kind == FieldKind.Ratio && range.Greatest <= 2 ? $"{Math.Round(si * 100, 9):0.#########} %" : FieldText.FormatSi(field.Kind, si);
        return $"{(range.LeastOpen ? "above " : "from ")}{Number(range.Least)}{(range.GreatestOpen ? " to below " : " to ")}{Number(range.Greatest)}";
    }

    internal static Finding Outside(FieldDescription field, string key, string written) =>
        Error(OutsideRange, key, $"{key} {written} is outside its range, {RangeWords(field)}", $"{key}: {field.Meaning}", "check the number and the prefix of its unit");

    internal static Finding NotAWord(FieldDescription field, string text, string? nearest) =>
        Error(UnknownWord, field.Key, $"`{text}` is not a word that {field.Key} takes", null,
            (nearest is null ? "" : $"did you mean `{nearest}`? ") + $"write {Listed(FieldText.Words(field))}");

    /// <summary>A range of a field that has none.</summary>
    public static Finding NotRanged(FieldDescription field, string key, IReadOnlyList<string> keys, string? nearest) =>
        Error(UnknownWord, field.Key, $"`{key}` has no range in {field.Key}", "a spread run draws these values and no others", (nearest is null ? "" : $"did you mean `{nearest}`? ") + $"write {Listed(keys)}");

    internal static Finding NoNumberText(FieldDescription field, string text) =>
        Error(NotANumberText, field.Key, $"`{text}` is not a number", null, $"write a number without unit, such as {FieldKinds.Example(field.Kind)}");

    internal static Finding NotWhole(FieldDescription field, string text) =>
        Error(NotAWholeNumber, field.Key, $"`{text}` is not a whole number", null, $"write a whole number, {RangeWords(field)}");

    internal static Finding NoFlag(FieldDescription field, string text) =>
        Error(NotAFlag, field.Key, $"`{text}` is neither true nor false", null, "write true or false");

    internal static Finding WrongList(FieldDescription field, string what) =>
        Error(BadList, field.Key, $"{field.Key} needs {what}", null, $"write it as {FieldKinds.Example(field.Kind)}");

    /// <summary>A value that was worked out from others and came out of range.</summary>
    public static Finding OutsideFor(FieldDescription field, string key, string written) => Outside(field, key, written);

    /// <summary>Two edges in the wrong order.</summary>
    public static Finding EdgesReversed(string key, Frequency low, Frequency high) =>
        Error(BandOrder, key, $"{key} begins at {QuantityText.Format(low)} and ends at {QuantityText.Format(high)}", null, "write the lower frequency first");

    /// <summary>A list field that has the wrong number of items.</summary>
    public static Finding NeedsList(FieldDescription field, string key, string what) => WrongList(field, what) with { Field = key };

    /// <summary>`a`, `b` or `c`.</summary>
    public static string Listed(IReadOnlyList<string> words) => words.Count switch
    {
        0 => "",
        1 => $"`{words[0]}`",
        _ => string.Join(", ", words.Take(words.Count - 1).Select(word => $"`{word}`")) + $" or `{words[^1]}`",
    };

    private static Finding Error(string code, string field, string message, string? note, string? help) => new(code, Severity.Error, field, message, note, help);
}
