using FrontEnd.Results;

namespace FrontEnd.Rates;

/// <summary>The design at one sampling rate. Figures are null where the rate cannot be evaluated; <see cref="Because"/> says why.</summary>
internal sealed record RateOption(Frequency Rate)
{
    /// <summary>Of what depends on the rate: fold, mains in the recording, resolution.</summary>
    public VerdictKind Verdict { get; init; } = VerdictKind.Fail;

    /// <summary>One sentence.</summary>
    public string Because { get; init; } = "";

    /// <summary>Requirements that depend on the rate and are not met.</summary>
    public int Unmet { get; init; }

    /// <summary>fs − f2.</summary>
    public Frequency Fold { get; init; }

    /// <summary>Attenuation at the fold by path and converter as they stand; null where unbounded.</summary>
    public Decibels? FoldAttenuation { get; init; }

    /// <summary>What the converter's own decimator gives of it; 0 for successive approximation.</summary>
    public Decibels ConverterShare { get; init; }

    /// <summary>Delta-sigma: attenuation of the image at the modulator's clock; null otherwise.</summary>
    public Decibels? ModulatorAttenuation { get; init; }

    /// <summary>Orders of analogue low-passes with half power at the comparison's corner.</summary>
    public IReadOnlyList<OrderNeeded> Orders { get; init; } = [];

    /// <summary>The design's own mains first, then the other one.</summary>
    public IReadOnlyList<MainsAtRate> Mains { get; init; } = [];

    public IReadOnlyList<InterfererAtRate> Interferers { get; init; } = [];

    /// <summary>Loss of path and converter at the band's upper edge against mid-band; negative where it rises.</summary>
    public Decibels DroopHigh { get; init; }

    /// <summary>The same at the lower edge.</summary>
    public Decibels DroopLow { get; init; }

    /// <summary>From the electrode to the filtered sample (<c>latency.total</c>).</summary>
    public Duration Delay { get; init; }

    public VoltageRms Noise { get; init; }

    public DataRate DataRate { get; init; }

    /// <summary>Null where no battery is given.</summary>
    public Duration? BatteryLife { get; init; }

    /// <summary>What keeps the rate from being worked out.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    public bool IsWorkedOut => 0 < Mains.Count;
}
