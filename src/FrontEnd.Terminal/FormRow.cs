using FrontEnd.Catalogue;
using FrontEnd.Documents;
using FrontEnd.Documents.Reading;
using FrontEnd.Fields;

namespace FrontEnd.Terminal;

/// <summary>One row of a form: a field, and the heading above it where a new group begins.</summary>
/// <param name="Heading">The group's name where the row is its first; null elsewhere.</param>
internal sealed record FormRow(Field<Design> Field, string Label, string? Heading)
{
    /// <summary>The fields of a place, in the order of its form, each once.</summary>
    public static IReadOnlyList<FormRow> Of(Design design, Place place)
    {
        List<FormRow> rows = [];
        HashSet<string> seen = [];
        // Ranges are tables: they are written in the file.
        IReadOnlyList<Field<Design>> all = [.. DesignFields.Of(design).Where(field => field.Kind != FieldKind.Ranges)];
        string? group = null;
        foreach (string beginning in place.Fields)
        {
            foreach (Field<Design> field in all)
            {
                if (Place.Begins(field.Key, beginning) && seen.Add(field.Key))
                {
                    string mine = Group(field.Key, design, place);
                    rows.Add(new FormRow(field, LabelOf(field.Key), mine == group || mine.Length == 0 ? null : mine));
                    group = mine;
                }
            }
        }

        return rows;
    }

    /// <summary>The value as it is shown: as it was typed; six digits of what arithmetic made longer than anyone types. The editor shows
    /// all of it.</summary>
    public string Value(DesignDocument document)
    {
        if (Errors.InPlaceOfValue(document, Field.Key) is { } unread)
        {
            return unread;
        }

        if (Unknown(Field, document) is { } unknown)
        {
            return unknown;
        }

        object? value = Field.Get(document.Design);
        string text = FieldText.Format(Field, value);
        return text.Length == 0 ? Field.Kind == FieldKind.Card ? "no card" : "-"
            : text.Length > 20 ? FieldText.FormatTrimmed(Field, value, 6) : text;
    }

    /// <summary>True where the value is not the one in the saved file.</summary>
    public static bool IsChanged(Field<Design> field, OpenDesign design) =>
        design.IsChanged
        && (Errors.Problem(design.Saved, field.Key)?.Message != Errors.Problem(design.Document, field.Key)?.Message
            || DesignFields.Find(design.Saved.Design, field.Key) is not { } saved
            || FieldText.Format(field, field.Get(design.Document.Design)) != FieldText.Format(saved, saved.Get(design.Saved.Design)));

    /// <summary>Meaning, unit, range, default and source of a field, in a sentence or two.</summary>
    public static string Describe(Field<Design> field, DesignDocument document)
    {
        string range = Range(field) is { Length: > 0 } words ? $" {words}{(field.Range is null ? ';' : ',')}" : "";
        FieldOrigin? origin = document.OriginOf(field.Key);
        string from = origin?.Kind switch
        {
            _ when Errors.Problem(document, field.Key) is not null => $" What stands in the file cannot be read{(document.WrittenAt(field.Key) is { } written ? $": {written}" : "")}.",
            OriginKind.Given => "",
            OriginKind.Card when document.Undecided is null => $" Now from its card: {origin.Source}.",
            _ when document.Undecided is not null => " Undecided because of errors in the file.",
            _ => " Now at its default.",
        };
        string standard = field.Kind == FieldKind.Card ? "" : $" default {Default(field)}.";
        return $"{field.Meaning};{range}{standard}" + (field.Safety ? " Protects the wearer." : "") + from + $"  {field.Key}";
    }

    /// <summary>The same and what more there is to say, part by part, for a page of its own.</summary>
    public static IReadOnlyList<(string Label, string Text)> Parts(Field<Design> field, DesignDocument document)
    {
        FieldOrigin? origin = document.OriginOf(field.Key);
        string value = Errors.InPlaceOfValue(document, field.Key) ?? Unknown(field, document) ?? FieldText.Format(field, field.Get(document.Design));
        (string, string)[] parts =
        [
            ("means", field.Meaning),
            ("now", (value.Length == 0 ? "none" : value) + origin?.Kind switch
            {
                _ when Errors.Problem(document, field.Key) is { } wrong => $", which cannot be read: {wrong.Message}",
                OriginKind.Card when document.Undecided is null => $", from its card: {origin.Source}",
                _ when document.Undecided is not null && origin?.Kind != OriginKind.Given => ": undecided because of errors in the file",
                OriginKind.Given => ", as in the file",
                _ => ", the default",
            }),
            ("may be", field.Kind == FieldKind.Card ? "a part card: Enter lists the cards, with their figures" : Range(field)),
            ("default", field.Kind == FieldKind.Card ? "" : Default(field)),
            ("safety", field.Safety ? "protects the wearer" : ""),
        ];
        return [.. parts.Where(part => part.Item2.Length > 0)];
    }

    /// <summary>The value in words, as messages about a change say it; what stands in the file where that cannot be read.</summary>
    public static string Said(Field<Design> field, DesignDocument document) =>
        Errors.Problem(document, field.Key) is not null ? document.WrittenAt(field.Key) ?? Errors.Unsure : FieldText.Format(field, field.Get(document.Design));

    /// <summary>What the file says of a value that nobody knows; null for a known one.</summary>
    private static string? Unknown(Field<Design> field, DesignDocument document) =>
        document.PartlyKnown?.Find(field.Key) is null ? null : document.OriginOf(field.Key)?.Text;

    private static string Default(Field<Design> field) =>
        $"{(field.DefaultText.Length == 0 ? "empty"
            : FieldText.TryParse(field, field.DefaultText, out object? value, out _) ? FieldText.Format(field, value)
            : field.DefaultText)} ({field.DefaultSource})";

    private static string Range(Field<Design> field) => field is { Range: not null, IsNumeric: true }
        ? FieldMessages.RangeWords(field)
        : FieldText.Words(field) is { Count: > 0 and < 8 } words ? string.Join(", ", words) : "";

    private static string LabelOf(string key) => key[(key.LastIndexOf('.') + 1)..].Replace('-', ' ');

    /// <summary>What stands between the place and the field's own name: "active", "gain 2, opamp"; "" for the place's own fields.</summary>
    private static string Group(string key, Design design, Place place)
    {
        int dot = key.LastIndexOf('.');
        string owner = dot < 0 ? "" : key[..dot];
        if (owner.IndexOf(']') is var close and > 0 && owner.IndexOf('[') is var open and > 0
            && int.TryParse(owner.AsSpan(open + 1, close - open - 1), out int number))
        {
            DesignList list = DesignFields.Lists.First(one => one.Key == owner[..open]);
            string name = list.NameOf(list.Elements(design)[number - 1]);
            string inner = owner[(close + 1)..].TrimStart('.');
            return inner.Length == 0 ? name : $"{name}, {inner.Replace("opamp", "op-amp")}";
        }

        return string.Equals(owner, place.Id, StringComparison.Ordinal)
            ? ""
            : owner.Replace("electrodes.", "").Replace('-', ' ').Replace(".", ", ").Replace("opamp", "op-amp");
    }
}
