using FrontEnd.Circuits;
using FrontEnd.Fields;

namespace FrontEnd.Electrodes;

/// <summary>The electrodes of one channel: active, reference and ground, and how unlike the first two are.</summary>
public sealed record ElectrodeSet
{
    /// <summary>The electrode whose site is recorded.</summary>
    public Electrode Active { get; init; } = new();

    /// <summary>The electrode that the recorded one is measured against.</summary>
    public Electrode Reference { get; init; } = new();

    /// <summary>The ground electrode; null for a two-electrode device, which then needs bias resistors.</summary>
    public Electrode? Ground { get; init; } = new();

    /// <summary>m: the active electrode's impedance is multiplied by 1 + m/2, the reference's by 1 − m/2. Null takes 50 % wet, 100 %
    /// dry.</summary>
    public Ratio? Mismatch { get; init; }

    /// <summary>Worst dc difference between two electrodes' half-cells.</summary>
    public Voltage Offset { get; init; } = Voltage.FromMillivolts(300);

    /// <summary>How far its values go from piece to piece; see <see cref="PartRanges"/>.</summary>
    public PartRanges Ranges { get; init; } = PartRanges.None;

    /// <summary>Buffer at the recorded electrode; null for a passive one.</summary>
    public ElectrodeBuffer? ActiveBuffer { get; init; }

    /// <summary>Buffer at the reference electrode; null for a passive one.</summary>
    public ElectrodeBuffer? ReferenceBuffer { get; init; }

    /// <summary>Sites of the reference electrode; where there are two, such as both ears, there stands an electrode at each, and they are joined
    /// before one protection resistor. Empty where the montage or nobody says.</summary>
    public IReadOnlyList<string> ReferenceSites { get; init; } = [];

    /// <summary>Site of the ground electrode; "" where nobody says.</summary>
    public string GroundSite { get; init; } = "";

    /// <summary>The reference's electrodes as one: impedances in parallel, and of each one's excess noise its share of the current
    /// divider.</summary>
    public Electrode JoinedReference => ReferenceSites.Count is var n and > 1
        ? Reference.Scaled(1.0 / n) with
        {
            ExcessNoise = ExcessNoise.FromVoltsSquaredPerHertz(Reference.ExcessNoise.VoltsSquaredPerHertz / n), Contact = Reference.EffectiveContact,
        }
        : Reference;

    /// <summary>Dry if either of the two measuring electrodes is.</summary>
    public ContactKind Contact =>
        Active.EffectiveContact == ContactKind.Dry || Reference.EffectiveContact == ContactKind.Dry ? ContactKind.Dry : ContactKind.Wet;

    /// <summary>50 % wet, 100 % dry where not given (common practice, no source).</summary>
    public double EffectiveMismatch => Mismatch?.Fraction ?? (Contact == ContactKind.Dry ? 1.0 : 0.5);
}

/// <summary>An op-amp follower at the electrode: lead, protection resistor and lead capacitances follow its output.</summary>
public sealed record ElectrodeBuffer
{
    /// <summary>Name of the part card; "" for none.</summary>
    public string Card { get; init; } = "";

    /// <summary>Common-mode resistance of the buffer's input [Ω].</summary>
    public Resistance InputResistance { get; init; } = Resistance.FromOhms(1e12);

    /// <summary>Capacitance of the buffer's input to common [F].</summary>
    public Capacitance InputCapacitance { get; init; } = Capacitance.FromPicofarads(5);

    /// <summary>A resistor between the electrode and the buffer's input, the only one that limits a fault current into this
    /// electrode.</summary>
    public Resistance SkinResistor { get; init; }

    /// <summary>Resistance between the buffer's output and the lead [Ω].</summary>
    public Resistance OutputResistance { get; init; } = Resistance.FromOhms(100);

    /// <summary>The op-amp that it is made of.</summary>
    public OpAmp OpAmp { get; init; } = OpAmp.MicropowerCmos;
}
