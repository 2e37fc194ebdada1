using System.Globalization;

namespace FrontEnd.Fields;

/// <summary>Wording about the values of fields. The codes stand with all others in <see cref="Messages"/>.</summary>
internal static class FieldMessages
{
    /// <summary>The legal values of a field in words: "above 0 Ω, up to 10.0 GΩ".</summary>
    public static string RangeWords(FieldDescription field)
    {
        if (field.Range is not { } range)
        {
            return "";
        }

        return $"{(range.LeastOpen ? "above " : "from ")}{FieldText.FormatSi(field, range.Least)}{(range.GreatestOpen ? " to below " : " to ")}{FieldText.FormatSi(field, range.Greatest)}";
    }

    /// <summary>A value outside its field's range.</summary>
    /// <param name="key">The field's key, or that of the values that it was worked out from.</param>
    public static Finding Outside(FieldDescription field, string key, string written) =>
        Finding.Error(Messages.OutsideRange, key, $"{key} {written} is outside its range, {RangeWords(field)}", $"{key}: {field.Meaning}",
            OutsideRemedy(field, written));

    /// <summary>Where a number without unit, a share in per cent or a sign explains it, what is probably meant.</summary>
    private static string OutsideRemedy(FieldDescription field, string written)
    {
        string plain = written.Trim();
        bool isNumber = NumberMeant.IsNumber(plain);
        if (field.Kind is FieldKind.Number or FieldKind.Count)
        {
            return $"write a {(field.Kind == FieldKind.Count ? "whole " : "")}number {RangeWords(field)}";
        }

        if (isNumber && FieldText.IsShare(field) && field.Range!.Value.Contains(double.Parse(plain, CultureInfo.InvariantCulture) / 100))
        {
            return $"write \"{plain} %\" if per cent is meant; a number alone is a factor, and 1 is the whole";
        }

        return plain is ['-' or '−', ..] && field.Quantity is { } kind && QuantityText.TryParse(kind, plain[1..], out IQuantity? value, out _) && field.Range!.Value.Contains(value!.SiValue)
            ? $"check the sign, and the prefix of the unit: `{plain[1..]}` is inside the range" : "check the number and the prefix of its unit";
    }

    internal static Finding NotAWord(FieldDescription field, string text, string? nearest) =>
        Finding.Error(Messages.UnknownWord, field.Key, $"`{text}` is not a value of {field.Key}", null,
            (nearest is null ? "" : $"did you mean `{nearest}`? ") + $"write {Messages.Listed(FieldText.Words(field))}");

    /// <summary>A range of a field that has none.</summary>
    public static Finding NotRanged(FieldDescription field, string key, IReadOnlyList<string> keys, string? nearest) =>
        Finding.Error(Messages.UnknownWord, field.Key, $"`{key}` has no range in {field.Key}",
            "a spread run draws only these values",
            (nearest is null ? "" : $"did you mean `{nearest}`? ") + $"write {Messages.Listed(keys)}");

    internal static Finding NoNumberText(FieldDescription field, string text) =>
        Finding.Error(Messages.NotANumberText, field.Key, $"`{text}` is not a number", null,
            NumberMeant.Remedy(text) ?? $"write a number without unit, such as {FieldKinds.Example(field)}");

    internal static Finding NotWhole(FieldDescription field, string text) =>
        Finding.Error(Messages.NotAWholeNumber, field.Key, $"`{text}` is not a whole number", null,
            $"write a whole number, {RangeWords(field)}");

    internal static Finding NoFlag(FieldDescription field, string text) =>
        Finding.Error(Messages.NotAFlag, field.Key, $"`{text}` is neither true nor false", null, "write true or false");

    internal static Finding TimeDoesNotRise(FieldDescription field, int number, string after, string before) =>
        Finding.Error(Messages.TimesDoNotRise, field.Key, $"time {number} of {field.Key}, {after}, is not after the one before it, {before}",
            "the list states how a contact changes after the electrode is put on", "write the times in rising order, each once");

    internal static Finding TimeOutside(FieldDescription field, int number, string after, string longest) =>
        Finding.Error(Messages.TimesDoNotRise, field.Key, $"time {number} of {field.Key}, {after}, is outside the range above 0 up to {longest}",
            "times are counted from when the electrode is put on", "check the number and its unit");

    internal static Finding FactorOutside(FieldDescription field, string number, string what, string factor, string largest) =>
        Finding.Error(Messages.FactorOutside, field.Key, $"the factor of {what} at time {number} of {field.Key} is {factor}, outside the range above 0 up to {largest}",
            "the electrode's own values are multiplied by it; 1 is as designed", "write the factor, 2 for twice as much");

    internal static Finding WrongList(FieldDescription field, string what) =>
        Finding.Error(Messages.BadList, field.Key, $"{field.Key} needs {what}", null, $"write a value like {FieldKinds.Example(field)}");

    /// <summary>A list field that has the wrong number of items.</summary>
    public static Finding NeedsList(FieldDescription field, string key, string what) => WrongList(field, what) with { Field = key };
}
