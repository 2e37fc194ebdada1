using FrontEnd.Designs;
using FrontEnd.Head;

namespace FrontEnd.Pairs;

/// <summary>Which pairs of sites are asked about, and what they are to show.</summary>
internal sealed record PairsQuestion
{
    /// <summary>The sources, at least one.</summary>
    public IReadOnlyList<CortexPatch> Patches { get; init; } = [];

    /// <summary>The head that they are on.</summary>
    public HeadMeasures Head { get; init; } = new();

    /// <summary>What the rest of the brain does.</summary>
    public BackgroundActivity Background { get; init; } = new();

    /// <summary>The design whose channels or noise are meant; null for none.</summary>
    public Design? Design { get; init; }

    /// <summary>Pairs as they are written, or sites of which all pairs are tried; null for the channels of the design, empty for the sites of the
    /// 10-20 system.</summary>
    public IReadOnlyList<string>? Sites { get; init; }

    /// <summary>Noise of one electrode's path in the band, where no design says it; null to leave it out.</summary>
    public VoltageRms? Noise { get; init; }

    /// <summary>How many of the best pairs are wanted; null for the channels or pairs as they are.</summary>
    public int? Best { get; init; }
}
