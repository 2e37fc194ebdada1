using FrontEnd.Electrodes;
using FrontEnd.Fields;

namespace FrontEnd.Designs;

/// <summary>One recorded channel of a design that names its channels: where its electrode stands, and what is its own of the electrode and the
/// buffer there. Everything else is the design's.</summary>
public sealed record Channel
{
    /// <summary>What results call it; the only one of the design.</summary>
    public string Name { get; init; } = "";

    /// <summary>The site of its electrode: a name of the 10-20 or 10-10 system, <c>ear-left</c> and the like, or any words.</summary>
    public string Site { get; init; } = "";

    /// <summary>The electrode, where it is not the design's active one.</summary>
    public Electrode? Electrode { get; init; }

    /// <summary>The buffer at the electrode, where it is not the design's for active electrodes.</summary>
    public ElectrodeBuffer? Buffer { get; init; }

    /// <summary>True where the electrode has no buffer, whatever the design's active ones have.</summary>
    public bool IsUnbuffered { get; init; }

    /// <summary>The electrode that this channel alone is measured against, in hardware; null for the reference that all share.</summary>
    public MinusElectrode? Minus { get; init; }

    /// <summary>The site, or the name where none is given.</summary>
    public string EffectiveSite => Site.Length == 0 ? Name : Site;
}

/// <summary>The other electrode of a channel that is bipolar in hardware: with nothing given it is like the channel's own.</summary>
public sealed record MinusElectrode
{
    /// <summary>Where it stands.</summary>
    public string Site { get; init; } = "";

    /// <summary>The electrode; null for one like the channel's own.</summary>
    public Electrode? Electrode { get; init; }

    /// <summary>The buffer at it; null for one like the channel's own, if that has any.</summary>
    public ElectrodeBuffer? Buffer { get; init; }

    /// <summary>True where it has no buffer, whatever the channel's own has.</summary>
    public bool IsUnbuffered { get; init; }
}

/// <summary>A channel that is computed from recorded ones.</summary>
public sealed record DerivedChannel
{
    /// <summary>What results call it.</summary>
    public string Name { get; init; } = "";

    /// <summary>Weights of recorded channels, by their names.</summary>
    public NamedNumbers Weights { get; init; } = NamedNumbers.None;
}

/// <summary>One derived channel as weights of all recorded ones, in their order.</summary>
public sealed record DerivedRow(string Name, IReadOnlyList<double> Weights);

/// <summary>One lead that measures.</summary>
/// <param name="Channel">The channel whose lead it is, counted from 0; null for the reference that all share.</param>
/// <param name="IsMinus">True for the lead of the channel's own minus electrode.</param>
/// <param name="Electrode">The electrode at its end.</param>
/// <param name="Buffer">The buffer there; null for none.</param>
/// <param name="SkinResistorKey">The key of the resistor in front of that buffer, in whichever table of the design gives the buffer.</param>
public sealed record MeasuringLead(int? Channel, bool IsMinus, Electrode Electrode, ElectrodeBuffer? Buffer, string SkinResistorKey);
