using FrontEnd.AntiAlias;
using FrontEnd.Circuits;
using FrontEnd.Filters;
using FrontEnd.Topologies;

namespace FrontEnd.DesignedFilters;

/// <summary>What an analogue filter is to be built of.</summary>
public sealed record FilterParts
{
    /// <summary>Of every section. Without a card its offset voltage, bias current and output resistance are not given.</summary>
    public OpAmp OpAmp { get; init; } = OpAmp.MicropowerCmos;

    /// <summary>Of a low-pass's pole pairs.</summary>
    public SectionKind Topology { get; init; } = SectionKind.SallenKey;

    /// <summary>Of a notch.</summary>
    public NotchKind Notch { get; init; } = NotchKind.TwinT;

    /// <summary>Series that resistors are taken from; those of E96 have 1 %.</summary>
    public PreferredSeries ResistorSeries { get; init; } = PreferredSeries.E96;

    /// <summary>Series that capacitors are taken from.</summary>
    public PreferredSeries CapacitorSeries { get; init; } = PreferredSeries.E12;

    /// <summary>Topology of a low-pass's pole pairs by its word.</summary>
    public static IReadOnlyDictionary<string, SectionKind> Topologies { get; } = new Dictionary<string, SectionKind>(StringComparer.Ordinal)
    {
        ["sallen-key"] = SectionKind.SallenKey,
        ["sallen-key-equal"] = SectionKind.SallenKeyEqual,
        ["multiple-feedback"] = SectionKind.MultipleFeedback,
    };

    /// <summary>Circuit of a notch by its word.</summary>
    public static IReadOnlyDictionary<string, NotchKind> Notches { get; } = new Dictionary<string, NotchKind>(StringComparer.Ordinal)
    {
        ["twin-t"] = NotchKind.TwinT,
        ["state-variable"] = NotchKind.StateVariable,
    };

    private static Dictionary<string, PreferredSeries> Series { get; } = Enum.GetValues<PreferredSeries>().ToDictionary(series => series.ToString(), StringComparer.Ordinal);

    /// <summary>Choices that are none, as a number cast to one is.</summary>
    internal IReadOnlyList<Finding> Unknown() =>
    [
        .. new[]
        {
            FilterMessages.Unknown("", "topology of a pole pair", Topology, Topologies), FilterMessages.Unknown("", "circuit of a notch", Notch, Notches),
            FilterMessages.Unknown("", "series of resistors", ResistorSeries, Series), FilterMessages.Unknown("", "series of capacitors", CapacitorSeries, Series),
        }.OfType<Finding>(),
    ];
}
