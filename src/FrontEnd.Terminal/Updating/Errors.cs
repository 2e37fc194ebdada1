using FrontEnd.Documents;
using FrontEnd.Documents.Reading;

namespace FrontEnd.Terminal;

/// <summary>What is wrong with a design's file: which errors there are, what they leave unsaid, and the way from one to the next.</summary>
internal static class Errors
{
    /// <summary>The way to the next error: its field where it has one, and what is wrong.</summary>
    public static readonly Act Way = new(',', [], "next error of the design's file", model => (Next(model), null));

    /// <summary>The errors of the design in hand, in the order of its file.</summary>
    public static IReadOnlyList<Finding> Of(OpenDesign design) =>
        [.. design.Document.Findings.Where(finding => finding.Severity == Severity.Error)];

    /// <summary>"1 error", "3 errors"; null for none.</summary>
    public static string? Counted(OpenDesign design) => Of(design).Count switch
    {
        0 => null,
        1 => "1 error",
        var count => $"{count} errors",
    };

    /// <summary>The first error, as what stands in the way of anything that needs the whole design; null for none.</summary>
    /// <param name="design">The design in hand.</param>
    /// <param name="mayBeUnknown">True where values that nobody knows are no hindrance.</param>
    public static Finding? InTheWay(OpenDesign design, bool mayBeUnknown = false) =>
        Of(design) is [var first, ..] ? first : mayBeUnknown ? null : NotAllKnown(design.Document);

    /// <summary>What stands in the way of figures where some values are not known, with the keys that lead to what can be said; null where all are known.</summary>
    public static Finding? NotAllKnown(DesignDocument document) =>
        document.NotAllKnown is null ? null : Messages.NeedsAllOnScreens(document.NotKnown, $"z {UnknownsPage.Way.Under}");

    /// <summary>What is wrong with the value that the file gives a field; null where it was read.</summary>
    public static Finding? Problem(DesignDocument document, string key) => document.Unread.FirstOrDefault(one => one.Key == key)?.Problem;

    /// <summary>What the screen shows for the value of a field of which nobody can say what it is; null for a field that has a value.</summary>
    public static string? InPlaceOfValue(DesignDocument document, string key) =>
        Problem(document, key) is not null ? document.WrittenAt(key) ?? Unsure
        : document.Undecided is not null && document.OriginOf(key)?.Kind != OriginKind.Given ? Unsure
        : null;

    /// <summary>True for a block with a field of which nobody can say what it is: what the strip shows of it would be made up.</summary>
    public static bool Hide(DesignDocument document, Place block) =>
        document.Undecided is not null
        || IsIn(document.Unread.Select(one => one.Key), block)
        || (document.PartlyKnown is { } partly && IsIn(partly.Unknowns.Select(one => one.Key), block));

    /// <summary>True for a block with a field whose value could not be read.</summary>
    public static bool AreIn(DesignDocument document, Place block) => IsIn(document.Unread.Select(one => one.Key), block);

    /// <summary>What stands in place of what nobody can say.</summary>
    public const string Unsure = "?";

    /// <summary>The model at the first error of a design that was opened just now; as it is where there is none.</summary>
    public static Model AtFirst(Model model) => Of(model.Here) is [var first, ..] ? At(model, first) : model;

    /// <summary>"error 2 of 3, line 7: " in front of a complaint that is one of the file's errors.</summary>
    public static string Heading(OpenDesign design, Finding complaint)
    {
        IReadOnlyList<Finding> all = Of(design);
        int at = all.ToList().FindIndex(one => ReferenceEquals(one, complaint));
        string where = complaint.Line is not { } line ? ""
            : complaint.File is { } file && file != design.Document.File ? $"{Path.GetFileName(file)} line {line}"
            : $"line {line}";
        return at < 0 ? "" : (all.Count > 1 ? $"error {at + 1} of {all.Count}" : "error") + (where.Length > 0 ? $", {where}: " : ": ");
    }

    private static Model Next(Model model)
    {
        IReadOnlyList<Finding> all = Of(model.Here);
        if (all.Count == 0)
        {
            return model.Tell("the design's file has no errors");
        }

        int at = model.Error is { } last ? all.ToList().FindIndex(one => ReferenceEquals(one, last)) : -1;
        return At(model with { Page = null, Editing = null }, all[(at + 1) % all.Count]);
    }

    private static Model At(Model model, Finding error)
    {
        Model there = Field(model, error.Field) ?? model;
        return there.Complain(error) with { Error = error };
    }

    /// <summary>The model at a field, or at the first one of the nearest table above it that has a form; null where nothing of it has.</summary>
    private static Model? Field(Model model, string key)
    {
        if (key.Length == 0)
        {
            return null;
        }

        foreach (Place place in Place.Blocks(model.Design).Concat(Place.Views).OrderBy(place => place.Id != model.PlaceId))
        {
            int row = FormRow.Of(model.Design, place).ToList().FindIndex(one => one.Field.Key == key);
            if (0 <= row)
            {
                return Whereabouts.GoTo(model, place.Id) with { FieldRow = row };
            }
        }

        int dot = key.LastIndexOf('.');
        string table = dot < 0 ? key : key[..dot];
        Model there = Whereabouts.AtField(model, table + (table.EndsWith(']') ? "." : ""));
        return ReferenceEquals(there, model) ? null : there;
    }

    private static bool IsIn(IEnumerable<string> keys, Place block) =>
        keys.Any(key => block.Fields.Any(beginning => Place.Begins(key, beginning))
            || (block.Id == Place.Electrodes && key.StartsWith("channels[", StringComparison.Ordinal)));
}
