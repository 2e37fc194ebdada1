using FrontEnd.AntiAlias;
using FrontEnd.Circuits;

namespace FrontEnd.Documents.Sheets;

/// <summary>What an analogue filter on a page is built of.</summary>
public sealed record FilterParts
{
    /// <summary>Of every section. Without a card its offset voltage, bias current and output resistance are not given.</summary>
    public OpAmp OpAmp { get; init; } = OpAmp.MicropowerCmos;

    /// <summary>Of a low-pass's pole pairs.</summary>
    public SectionKind Topology { get; init; } = SectionKind.SallenKey;

    /// <summary>Of a notch.</summary>
    public NotchKind Notch { get; init; } = NotchKind.TwinT;
}
