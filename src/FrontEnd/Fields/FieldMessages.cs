namespace FrontEnd.Fields;

/// <summary>Wording about the values of fields. The codes stand with all others in <see cref="Messages"/>.</summary>
public static class FieldMessages
{
    /// <summary>The legal values of a field in words: "above 0 Ω, up to 10.0 GΩ".</summary>
    public static string RangeWords(FieldDescription field)
    {
        if (field.Range is not { } range)
        {
            return "";
        }

        // Shares and tolerances in per cent throughout, where one alone would turn to a factor from 1 on.
        string Number(double si) =>
            FieldText.IsShare(field) ? $"{Math.Round(si * 100, 9):0.#########} %" : FieldText.FormatSi(field, si);
        return $"{(range.LeastOpen ? "above " : "from ")}{Number(range.Least)}{(range.GreatestOpen ? " to below " : " to ")}{Number(range.Greatest)}";
    }

    /// <summary>A value outside its field's range.</summary>
    /// <param name="key">The field's key, or that of the values that it was worked out from.</param>
    public static Finding Outside(FieldDescription field, string key, string written) =>
        Finding.Error(Messages.OutsideRange, key, $"{key} {written} is outside its range, {RangeWords(field)}", $"{key}: {field.Meaning}",
            "check the number and the prefix of its unit");

    internal static Finding NotAWord(FieldDescription field, string text, string? nearest) =>
        Finding.Error(Messages.UnknownWord, field.Key, $"`{text}` is not a word that {field.Key} takes", null,
            (nearest is null ? "" : $"did you mean `{nearest}`? ") + $"write {Messages.Listed(FieldText.Words(field))}");

    /// <summary>A range of a field that has none.</summary>
    public static Finding NotRanged(FieldDescription field, string key, IReadOnlyList<string> keys, string? nearest) =>
        Finding.Error(Messages.UnknownWord, field.Key, $"`{key}` has no range in {field.Key}",
            "a spread run draws these values and no others",
            (nearest is null ? "" : $"did you mean `{nearest}`? ") + $"write {Messages.Listed(keys)}");

    internal static Finding NoNumberText(FieldDescription field, string text) =>
        Finding.Error(Messages.NotANumberText, field.Key, $"`{text}` is not a number", null,
            $"write a number without unit, such as {FieldKinds.Example(field)}");

    internal static Finding NotWhole(FieldDescription field, string text) =>
        Finding.Error(Messages.NotAWholeNumber, field.Key, $"`{text}` is not a whole number", null,
            $"write a whole number, {RangeWords(field)}");

    internal static Finding NoFlag(FieldDescription field, string text) =>
        Finding.Error(Messages.NotAFlag, field.Key, $"`{text}` is neither true nor false", null, "write true or false");

    internal static Finding WrongList(FieldDescription field, string what) =>
        Finding.Error(Messages.BadList, field.Key, $"{field.Key} needs {what}", null, $"write it as {FieldKinds.Example(field)}");

    /// <summary>A list field that has the wrong number of items.</summary>
    public static Finding NeedsList(FieldDescription field, string key, string what) => WrongList(field, what) with { Field = key };
}
