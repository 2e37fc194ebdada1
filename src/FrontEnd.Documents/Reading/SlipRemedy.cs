using FrontEnd.Fields;

namespace FrontEnd.Documents.Reading;

/// <summary>What is said of a line that the parser refuses, once it is known which field it is meant for.</summary>
internal static class SlipRemedy
{
    /// <summary>What is wrong with the line, and a remedy that the field takes: where it would refuse the value that the line seems to hold, what it says of that
    /// value counts.</summary>
    public static Finding Of(Slip slip, FieldDescription field, string key, DocumentFormat format)
    {
        if (slip.Meant is null || TomlTree.Value(slip.Meant) is not { } value || (UnknownValue.Is(field, value) && UnknownsReader.MayBeUnknown(key))
            || NodeValue.Read(field, key, value, format, out _, out _) is not { } still)
        {
            return slip.Problem;
        }

        if (string.Equals(still.Code, Messages.OutsideRange, StringComparison.Ordinal))
        {
            return slip.Problem with { Help = $"{slip.Problem.Help}; its range is {FieldMessages.RangeWords(field)}" };
        }

        if (!slip.NeedsKey && value is TextNode text && field.Kind is FieldKind.Number or FieldKind.Count)
        {
            // A number has no quotes to be told of.
            return slip.Problem with { Message = $"`{text.Value}` is not {FieldKinds.Noun(field)}", Note = still.Note, Help = still.Help };
        }

        return slip.Problem with { Help = slip.NeedsKey ? $"a line is `key = value`: {slip.Key} = …; {still.Help}" : still.Help, Note = still.Note ?? slip.Problem.Note };
    }

    /// <summary>Puts the remedies into what was said of a table's lines.</summary>
    /// <param name="path">What stands before the table's keys.</param>
    public static void Apply(TableNode table, string path, IEnumerable<FieldDescription> fields, List<Finding> findings)
    {
        foreach (Slip slip in table.Slips)
        {
            int at = findings.FindIndex(one => ReferenceEquals(one, slip.Problem));
            if (0 <= at && fields.FirstOrDefault(field => string.Equals(field.Key, slip.Key, StringComparison.Ordinal)) is { } field)
            {
                findings[at] = Of(slip, field, path + field.Key, DocumentFormat.Toml);
            }
        }
    }
}
