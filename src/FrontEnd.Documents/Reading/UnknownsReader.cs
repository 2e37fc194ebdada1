using FrontEnd.Catalogue;
using FrontEnd.Fields;

namespace FrontEnd.Documents.Reading;

/// <summary>What of a design is not known, once all of its file is read: the values that it says are unknown, and in a bought device all
/// those that have a usual range and that the file does not give.</summary>
internal sealed class UnknownsReader(ReadingLog log)
{
    /// <summary>What is asked for, which nobody but the user decides.</summary>
    private static readonly string[] Asked = ["requirements.", "signal.", "bands["];

    private const string ByFile = "design file", ByCard = "the card's class";

    /// <summary>False for what is asked for: it has one value.</summary>
    public static bool MayBeUnknown(string key) => !Array.Exists(Asked, table => key.StartsWith(table, StringComparison.Ordinal));

    /// <summary>Null where everything is known.</summary>
    public PartlyKnownDesign? Read(Design design, BoughtDevice? bought)
    {
        if (bought is null && log.Unknown.Count == 0)
        {
            return null;
        }

        List<UnknownField> unknowns = [];
        foreach (Field<Design> field in DesignFields.Of(design))
        {
            Add(unknowns, PartlyKnownDesign.OfDraft(field), design, bought is not null && field.Get(design) is not null || IsOpenByNature(field, bought));
        }

        foreach (Field<DeviceDraft> field in bought is null ? [] : PartlyKnownDesign.OfBought)
        {
            Add(unknowns, field, design, true);
        }

        return unknowns.Count == 0 && bought is null ? null : new PartlyKnownDesign(new DeviceDraft(design, bought), unknowns);
    }

    // A value that follows from others where none is given, such as the mismatch.
    private static bool IsOpenByNature(FieldDescription field, BoughtDevice? bought) => bought is not null && field is { DefaultIsValue: false, Usual.WhenBought: true };

    /// <param name="mayBeMissing">True where a value that nobody gives is not known.</param>
    private void Add(List<UnknownField> unknowns, Field<DeviceDraft> field, Design design, bool mayBeMissing)
    {
        if (log.Unread.Contains(field.Key))
        {
            return;
        }

        if (log.Unknown.TryGetValue(field.Key, out UnknownValue? said))
        {
            if (!MayBeUnknown(field.Key))
            {
                log.Report(Messages.NoLimitUnknown(field.Key));
            }
            else if (Of(field, design, said.Ends) is { } unknown)
            {
                unknowns.Add(unknown);
            }
            else
            {
                log.Report(Messages.NotUnknown(field.Key, UnknownValue.Example(field, DocumentFormat.Toml)));
            }

            return;
        }

        OriginKind kind = log.Origins.TryGetValue(field.Key, out FieldOrigin? origin) ? origin.Kind : OriginKind.Default;
        if (mayBeMissing && kind != OriginKind.Given && field.Usual is { WhenBought: true } && Of(field, design, null) is { } left
            && (kind == OriginKind.Default || left.IsStated))
        {
            unknowns.Add(left);
            log.Origins[field.Key] = new FieldOrigin(field.Key, OriginKind.Given, UnknownValue.Word, $"not given; {left.Source}");
        }
    }

    /// <summary>The ends that the file gives; else those of the card's class, else the usual ones.</summary>
    private UnknownField? Of(Field<DeviceDraft> field, Design design, (double Least, double Greatest)? said)
    {
        KnownBy by = field.Usual?.KnownBy ?? KnownBy.Maker;
        if (said is { } ends)
        {
            return new(field, ends.Least, ends.Greatest) { Source = ByFile, KnownBy = by, IsStated = true };
        }

        if (OfClass(field, design) is { } card)
        {
            return new(field, card.Least, card.Greatest) { Source = ByCard, KnownBy = by, IsStated = true };
        }

        return field.Usual is { } usual ? new(field, usual.Least, usual.Greatest) { Source = $"usual; {usual.Source}", KnownBy = by } : null;
    }

    private (double Least, double Greatest)? OfClass(Field<DeviceDraft> field, Design design)
    {
        int dot = field.Key.LastIndexOf('.');
        if (dot < 0)
        {
            return null;
        }

        return DesignFields.Find(design, field.Key[..dot] + ".ranges")?.Get(design) is PartRanges ranges && ranges.Of(field.Key[(dot + 1)..]) is { } range
            && range.Low < range.High ? (range.Low, range.High)
            : log.UsualOfCards.TryGetValue(field.Key, out (double Least, double Greatest) usual) && usual.Least < usual.Greatest ? usual : null;
    }
}
