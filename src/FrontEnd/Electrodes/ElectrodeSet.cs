using FrontEnd.Circuits;
using FrontEnd.Quantities;

namespace FrontEnd.Electrodes;

/// <summary>The electrodes of one channel: active, reference and ground, and how unlike the first two are.</summary>
public sealed record ElectrodeSet
{
    public Electrode Active { get; init; } = new();
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

    public ElectrodeBuffer? ActiveBuffer { get; init; }
    public ElectrodeBuffer? ReferenceBuffer { get; init; }

    /// <summary>Dry if either of the two measuring electrodes is.</summary>
    public ContactKind Contact =>
        Active.EffectiveContact == ContactKind.Dry || Reference.EffectiveContact == ContactKind.Dry ? ContactKind.Dry : ContactKind.Wet;

    /// <summary>50 % wet, 100 % dry where not given (common practice, no source).</summary>
    public double EffectiveMismatch => Mismatch?.Fraction ?? (Contact == ContactKind.Dry ? 1.0 : 0.5);
}

/// <summary>An op-amp follower at the electrode: lead, protection resistor and lead capacitances follow its output.</summary>
public sealed record ElectrodeBuffer
{
    public string Card { get; init; } = "";
    public Resistance InputResistance { get; init; } = Resistance.FromOhms(1e12);
    public Capacitance InputCapacitance { get; init; } = Capacitance.FromPicofarads(5);

    /// <summary>A resistor between the electrode and the buffer's input, the only one that limits a fault current into this
    /// electrode.</summary>
    public Resistance SkinResistor { get; init; }

    public Resistance OutputResistance { get; init; } = Resistance.FromOhms(100);
    public OpAmp OpAmp { get; init; } = OpAmp.MicropowerCmos;
}
