using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Fields;
using static FrontEnd.Fields.Make;

namespace FrontEnd.Catalogue;

/// <summary>The fields of a named channel and of a channel that is derived from others.</summary>
internal static class ChannelFields
{
    private static readonly IReadOnlyList<Field<MinusElectrode>> Minus =
    [
        Wording("site", "", "site of this channel's own reference electrode", (MinusElectrode m) => m.Site, (m, v) => m with { Site = v }),
        .. ElectrodeFields.Electrode.Select(field => field.Within("electrode.", "electrode.", (MinusElectrode m) => m.Electrode,
            (m, v) => m with { Electrode = v }, () => new Electrode())),
        .. ElectrodeFields.Buffer.Select(field => field.Within("buffer.", "buffer.", (MinusElectrode m) => m.Buffer,
            (m, v) => m with { Buffer = v }, () => new ElectrodeBuffer())),
    ];

    public static readonly IReadOnlyList<Field<Channel>> Channel =
    [
        Wording("name", "", "name of the channel in results; its site if not given", (Channel c) => c.Name, (c, v) => c with { Name = v }),
        Wording("site", "", "where its electrode is: a name of the 10-20 or 10-10 system, `ear-left`, `mastoid-right`, or any words",
            (Channel c) => c.Site, (c, v) => c with { Site = v }),
        .. ElectrodeFields.Electrode.Select(field => field.Within("electrode.", "electrode.", (Channel c) => c.Electrode,
            (c, v) => c with { Electrode = v }, () => new Electrode())),
        .. ElectrodeFields.Buffer.Select(field => field.Within("buffer.", "buffer.", (Channel c) => c.Buffer,
            (c, v) => c with { Buffer = v }, () => new ElectrodeBuffer())),
        .. Minus.Select(field => field.Within("minus.", "minus.", (Channel c) => c.Minus, (c, v) => c with { Minus = v }, () => new MinusElectrode())),
    ];

    /// <summary>What a channel may have of its own. A buffer that is said to be none is none, whatever the design's active electrodes have.</summary>
    public static readonly IReadOnlyList<ElementPart> Parts =
    [
        ElementPart.Of("electrode", (Channel c) => c.Electrode is not null, (c, there) => c with { Electrode = there ? c.Electrode ?? new() : null }, isWhole: true),
        ElementPart.Of("buffer", (Channel c) => c.Buffer is not null,
            (c, there) => c with { Buffer = there ? c.Buffer ?? new() : null, IsUnbuffered = !there }, c => c.IsUnbuffered),
        ElementPart.Of("minus", (Channel c) => c.Minus is not null, (c, there) => c with { Minus = there ? c.Minus ?? new() : null }),
        ElementPart.Of("minus.electrode", (Channel c) => c.Minus?.Electrode is not null,
            (c, there) => c with { Minus = (c.Minus ?? new()) with { Electrode = there ? c.Minus?.Electrode ?? new() : null } }, isWhole: true),
        ElementPart.Of("minus.buffer", (Channel c) => c.Minus?.Buffer is not null,
            (c, there) => c with { Minus = (c.Minus ?? new()) with { Buffer = there ? c.Minus?.Buffer ?? new() : null, IsUnbuffered = !there } },
            c => c.Minus?.IsUnbuffered == true),
    ];

    public static readonly IReadOnlyList<Field<DerivedChannel>> Derived =
    [
        Wording("name", "", "name of the derived channel in results", (DerivedChannel d) => d.Name, (d, v) => d with { Name = v }),
        Value("weights", "weights", null, "", "none unless given", "weights of recorded channels, by their names",
            (DerivedChannel d) => d.Weights, (d, v) => d with { Weights = v }),
    ];
}
