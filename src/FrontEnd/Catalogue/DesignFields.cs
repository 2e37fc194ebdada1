using FrontEnd.Amplifier;
using FrontEnd.Designs;
using FrontEnd.Fields;
using static FrontEnd.Fields.FieldRange;
using static FrontEnd.Fields.Make;

namespace FrontEnd.Catalogue;

/// <summary>The catalogue of a design's fields: one table from which the design file's keys, its documentation, the sensitivities and the
/// forms follow.</summary>
/// <remarks>A list's elements are counted from 1 in keys: <c>stages[1].r1</c> is the first stage. They may also be named:
/// <c>stages.anti-alias-1.r1</c>.</remarks>
public static class DesignFields
{
    /// <summary>The fields outside lists, in the order of the design file.</summary>
    public static readonly IReadOnlyList<Field<Design>> Fixed = Build();

    /// <summary>The lists of a design: stages, digital, bands, interferers.</summary>
    public static IReadOnlyList<DesignList> Lists => DesignList.All;

    /// <summary>The fields of an anti-alias filter that is given by what it has to do, in its own table: it is turned into stages when the
    /// design is read, and is no part of the design after that.</summary>
    public static IReadOnlyList<Field<AntiAliasWish>> AntiAlias => PathFields.AntiAlias;

    /// <summary>The key of that table.</summary>
    public const string AntiAliasKey = "anti-alias";

    /// <summary>Parts of a design that may be absent: their keys' prefix, without the last dot.</summary>
    public static readonly IReadOnlyList<OptionalPart> OptionalParts =
    [
        new("electrodes.ground", design => design.Electrodes.Ground is not null,
            (design, there) =>
                design with { Electrodes = design.Electrodes with { Ground = there ? design.Electrodes.Ground ?? new() : null } }),
        new("electrodes.active-buffer", design => design.Electrodes.ActiveBuffer is not null,
            (design, there) =>
                design with { Electrodes = design.Electrodes with { ActiveBuffer = there
                    ? design.Electrodes.ActiveBuffer ?? new()
                    : null } }),
        new("electrodes.reference-buffer", design => design.Electrodes.ReferenceBuffer is not null,
            (design, there) =>
                design with { Electrodes = design.Electrodes with { ReferenceBuffer = there
                    ? design.Electrodes.ReferenceBuffer ?? new()
                    : null } }),
        new("contact-check", design => design.ContactCheck is not null,
            (design, there) => design with { ContactCheck = there ? design.ContactCheck ?? new() : null }),
        new("head", design => design.Head is not null, (design, there) => design with { Head = there ? design.Head ?? new() : null }),
        new("background", design => design.Background is not null,
            (design, there) => design with { Background = there ? design.Background ?? new() : null }),
    ];

    /// <summary>The optional part that each of <see cref="Fixed"/> belongs to.</summary>
    private static readonly OptionalPart?[] PartOfFixed = [.. Fixed.Select(field => PartOf(field.Key))];

    /// <summary>Every field that this design has, list elements with their number, absent parts left out.</summary>
    public static IReadOnlyList<Field<Design>> Of(Design design)
    {
        var fields = new List<Field<Design>>(Fixed.Count + 64);
        for (int i = 0; i < Fixed.Count; i++)
        {
            if (PartOfFixed[i]?.IsThere(design) != false && (0 == design.ChannelList.Count || Fixed[i].Key != DesignList.ChannelsKey))
            {
                fields.Add(Fixed[i]);
            }
        }

        foreach (DesignList list in Lists)
        {
            int count = list.Count(design);
            for (int index = 0; index < count; index++)
            {
                fields.AddRange(list.FieldsAt(design, index));
            }
        }

        return fields;
    }

    /// <summary>The field with this key in this design; null where there is none. A list element may be counted from 1 or named.</summary>
    public static Field<Design>? Find(Design design, string key)
    {
        foreach (Field<Design> field in Fixed)
        {
            if (string.Equals(field.Key, key, StringComparison.Ordinal))
            {
                return field;
            }
        }

        foreach (DesignList list in Lists)
        {
            if (key.StartsWith(list.Key, StringComparison.Ordinal) && list.Find(design, key[list.Key.Length..]) is { } field)
            {
                return field;
            }
        }

        return null;
    }

    /// <summary>Ranges that do not hold the value they are about, as after the value was changed and the part's card was not: the field of
    /// the ranges, the range, the field of the value. A value of 0 says only that none was given.</summary>
    public static IEnumerable<(Field<Design> Ranges, PartRange Range, Field<Design> Value)> StaleRanges(Design design) =>
        StaleRanges(design, Of(design));

    internal static IEnumerable<(Field<Design> Ranges, PartRange Range, Field<Design> Value)> StaleRanges(Design design,
        IReadOnlyList<Field<Design>> all)
    {
        foreach (Field<Design> field in all.Where(field => field.Kind == FieldKind.Ranges))
        {
            foreach (PartRange range in ((PartRanges)field.Get(design)!).All)
            {
                // 1e-9 of the value for what was written in decimal digits.
                string key = field.Key[..(field.Key.LastIndexOf('.') + 1)] + range.Key;
                if (all.FirstOrDefault(one => string.Equals(one.Key, key, StringComparison.Ordinal)) is { } valued
                    && valued.SiValue(design) is { } value && value != 0
                    && (value < range.Low - (1e-9 * Math.Abs(value)) || range.High + (1e-9 * Math.Abs(value)) < value))
                {
                    yield return (field, range, valued);
                }
            }
        }
    }

    /// <summary>The design without the ranges that do not hold their value.</summary>
    public static Design WithoutStaleRanges(Design design)
    {
        Design kept = design;
        foreach ((Field<Design> ranges, PartRange range, _) in StaleRanges(design))
        {
            kept = ranges.Set(kept, ((PartRanges)ranges.Get(kept)!).Without(range.Key));
        }

        return kept;
    }

    /// <summary>The fields that hold one number which is set: what a sensitivity may vary.</summary>
    public static IEnumerable<Field<Design>> Numeric(Design design) =>
        Of(design).Where(field => field.IsNumeric && field.SiValue(design) is not null);

    /// <summary>False for a field of a part that this design does not have.</summary>
    public static bool IsPresent(Design design, string key) =>
        (design.ChannelList.Count == 0 || key != DesignList.ChannelsKey) && PartOf(key)?.IsThere(design) != false;

    /// <summary>The optional part that a key belongs to; null for none.</summary>
    private static OptionalPart? PartOf(string key)
    {
        foreach (OptionalPart part in OptionalParts)
        {
            if (key.Length > part.Key.Length && key[part.Key.Length] == '.' && key.StartsWith(part.Key, StringComparison.Ordinal))
            {
                return part;
            }
        }

        return null;
    }

    private static IReadOnlyList<Field<Design>> Build() =>
    [
        Wording("name", "unnamed design", "what the design is called", (Design d) => d.Name, (d, v) => d with { Name = v }),
        Wording("purpose", "", "what the device is for, in the builder's words; printed on the sheet", (Design d) =>
            d.Purpose, (d, v) => d with { Purpose = v }),
        Wording("caution", "", "a sentence for the first lines of the sheet", (Design d) => d.Caution, (d, v) => d with { Caution = v }),
        Value("channels", "channels", Closed(1, 1024), "1", Practice, "number of recorded channels, one converter input each; `[[channels]]` names them one by one",
            (Design d) => d.Channels, (d, v) => d with { Channels = v }),
        Value("band", "band", Above(0, 1e9), "[\"0.5 Hz\", \"40 Hz\"]", Practice,
            "the band in which noise and mains are computed, f1 and f2",
            (Design d) =>
                new FrequencyRange(d.Band.Low, d.Band.High), (d, v) => d with { Band = d.Band with { Low = v.Low, High = v.High } }),
        Value("board-temperature", "board_temperature", Closed(223.15, 423.15), "298.15 K", Practice,
            "temperature of the resistors on the board",
            (Design d) => d.BoardTemperature, (d, v) => d with { BoardTemperature = v }),
        Value("skin-temperature", "skin_temperature", Closed(253.15, 353.15), "306.15 K", Practice,
            "temperature of the electrodes' contact",
            (Design d) => d.SkinTemperature, (d, v) => d with { SkinTemperature = v }),
        Maybe("packet-time", "packet_time", Closed(0, 60), "none", "none", ByDesign,
            "delay of radio or cable packets that adds to the latency",
            (Design d) => d.PacketTime, (d, v) => d with { PacketTime = v }),
        Value("signal.smallest", "signal.smallest", Above(0, 1), "0.5 µV",
            "0.5 µV resolvable: requirements attributed to a technologists' association, 2001",
            "smallest signal that must still be seen, rms",
            (Design d) => d.SmallestSignal, (d, v) => d with { SmallestSignal = v }),
        Value("signal.largest", "signal.largest", Closed(0, 5), "2 mV",
            "±2 mV: requirements attributed to a technologists' association, 2001", "largest signal that must pass without clipping, peak",
            (Design d) => d.LargestSignal, (d, v) => d with { LargestSignal = v }),
        .. ChainFields.Mains.Select(field =>
            field.Within("mains.", "mains.", (Design d) => d.Mains, (d, v) => d with { Mains = v }, () => new())),
        .. ElectrodeFields.Set.Select(field =>
            field.Within("electrodes.", "electrodes.", (Design d) => d.Electrodes, (d, v) => d with { Electrodes = v }, () => new())),
        .. InputNetwork.Rows.Select(field => field.Within(
            "input.", string.Equals(field.Key, "reference-inputs", StringComparison.Ordinal) ? "" : "input.", (Design d) =>
                d.Input, (d, v) => d with { Input = v }, () => new())),
        .. DifferentialAmplifier.Rows.Select(field =>
            field.Within("amplifier.", "amplifier.", (Design d) => d.Amplifier, (d, v) => d with { Amplifier = v }, () => new())),
        .. GroundDrive.Rows.Select(field =>
            field.Within("ground-drive.", "ground_drive.", (Design d) => d.GroundDrive, (d, v) => d with { GroundDrive = v }, () => new())),
        .. PathFields.Converter.Select(field =>
            field.Within("converter.", "converter.", (Design d) => d.Converter, (d, v) => d with { Converter = v }, () => new())),
        .. PathFields.Arithmetic.Select(field =>
            field.Within("", "", (Design d) => d.Arithmetic, (d, v) => d with { Arithmetic = v }, () => new())),
        .. ChainFields.Supply.Select(field =>
            field.Within("supply.", "supply.", (Design d) => d.Supply, (d, v) => d with { Supply = v }, () => new())),
        .. ChainFields.Montage.Select(field =>
            field.Within("montage.", "montage.", (Design d) => d.Montage, (d, v) => d with { Montage = v }, () => new())),
        .. ElectrodeFields.Check.Select(field =>
            field.Within("contact-check.", "contact_check.", (Design d) =>
                d.ContactCheck, (d, v) => d with { ContactCheck = v }, () => new())),
        .. HeadFields.Head.Select(field => field.Within("head.", "head.", (Design d) => d.Head, (d, v) => d with { Head = v }, () => new())),
        .. HeadFields.Background.Select(field =>
            field.Within("background.", "background.", (Design d) => d.Background, (d, v) => d with { Background = v }, () => new())),
        .. BoardFields.All.Select(field => field.Within("board.", "board.", (Design d) => d.Board, (d, v) => d with { Board = v }, () => new())),
        .. ChainFields.Requirements.Select(field =>
            field.Within("requirements.", "requirements.", (Design d) =>
                d.Requirements, (d, v) => d with { Requirements = v }, () => new())),
    ];
}

/// <summary>A part of a design that may be absent, such as the ground electrode.</summary>
/// <param name="Key">The prefix of its fields' keys, without the last dot.</param>
public sealed record OptionalPart(string Key, Func<Design, bool> IsThere, Func<Design, bool, Design> With);
