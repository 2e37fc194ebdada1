using System.Numerics;
using FrontEnd.Fields;

namespace FrontEnd.Electrodes;

/// <summary>One electrode on the skin: Z(f) = Rs + Rd/(1 + s·Rd·Cd) [+ Rd2/(1 + s·Rd2·Cd2)] and its noise 4kT·Re Z + K/f^α.</summary>
public sealed record Electrode
{
    /// <summary>The part card it was taken from; "" for none.</summary>
    public string Card { get; init; } = "";

    /// <summary>How far its values go from piece to piece; see <see cref="PartRanges"/>.</summary>
    public PartRanges Ranges { get; init; } = PartRanges.None;

    /// <summary>Rs: wire, gel and deeper tissue.</summary>
    public Resistance SeriesResistance { get; init; }

    /// <summary>Rd: the contact's parallel resistance.</summary>
    public Resistance ContactResistance { get; init; } = Resistance.FromKilohms(51);

    /// <summary>Cd: the contact's parallel capacitance.</summary>
    public Capacitance ContactCapacitance { get; init; } = Capacitance.FromNanofarads(47);

    /// <summary>Rd2 of a second block (skin beneath the gel); null for none.</summary>
    public Resistance? SecondResistance { get; init; }

    /// <summary>Capacitance of the second block [F]; null where there is none.</summary>
    public Capacitance? SecondCapacitance { get; init; }

    /// <summary>K: excess noise power density at 1 Hz of this one electrode.</summary>
    public ExcessNoise ExcessNoise { get; init; }

    /// <summary>α of K/f^α.</summary>
    public double ExcessSlope { get; init; } = 2;

    /// <summary>How contact and excess noise change from when it is put on; none where nothing is known of it.</summary>
    public ContactOverTime OverTime { get; init; } = ContactOverTime.None;

    /// <summary>Wet, dry, or null: judged by the resistance.</summary>
    public ContactKind? Contact { get; init; }

    /// <summary>All resistances in series, the impedance at dc.</summary>
    public Resistance DcResistance => SeriesResistance + ContactResistance + (SecondResistance ?? default);

    /// <summary>Dry from 100 kΩ on: 100 kΩ to 1 MΩ is the usual design range for dry electrodes (common practice, no source).</summary>
    public ContactKind EffectiveContact => Contact ?? (100e3 <= DcResistance.Ohms ? ContactKind.Dry : ContactKind.Wet);

    /// <summary>The electrode with its impedance multiplied: resistances times the factor, capacitances over it, so that the time constants
    /// stay. The range of its contact resistance goes with it.</summary>
    public Electrode Scaled(double factor) => this with
    {
        Ranges = Ranges.Scaled("contact-resistance", factor),
        SeriesResistance = Resistance.FromOhms(SeriesResistance.Ohms * factor),
        ContactResistance = Resistance.FromOhms(ContactResistance.Ohms * factor),
        ContactCapacitance = Capacitance.FromFarads(ContactCapacitance.Farads / factor),
        SecondResistance = SecondResistance is { } r ? Resistance.FromOhms(r.Ohms * factor) : null,
        SecondCapacitance = SecondCapacitance is { } c ? Capacitance.FromFarads(c.Farads / factor) : null,
    };

    /// <summary>The electrode with the power of its excess noise multiplied, and the range of it.</summary>
    public Electrode WithExcess(double factor) => this with
    {
        ExcessNoise = ExcessNoise.FromVoltsSquaredPerHertz(ExcessNoise.VoltsSquaredPerHertz * factor),
        Ranges = Ranges.Scaled("excess-density", factor),
    };

    /// <summary>The same contact on another area: many small contacts side by side, so that impedance and power of the excess noise go as
    /// one over the area, and with them how far they range.</summary>
    public Electrode OfArea(double factor) => Scaled(1 / factor).WithExcess(1 / factor);

    /// <summary>The electrode at a time after it was put on. It stays wet or dry as it is judged today, and with it its mismatch.</summary>
    public Electrode After(Duration time)
    {
        ContactFactors factors = OverTime.At(time);
        return (factors.Impedance == 1 ? this : Scaled(factors.Impedance)).WithExcess(factors.Excess * factors.Excess) with
        {
            Contact = factors.Impedance == 1 ? Contact : EffectiveContact,
        };
    }

    /// <summary>Z(f) [Ω].</summary>
    public Complex Impedance(Frequency frequency)
    {
        double w = 2 * Math.PI * frequency.Hertz;
        Complex z = SeriesResistance.Ohms + Block(ContactResistance.Ohms, ContactCapacitance.Farads, w);
        return SecondResistance is { } second ? z + Block(second.Ohms, SecondCapacitance?.Farads ?? 0, w) : z;
    }

    private static Complex Block(double r, double c, double w) => r / new Complex(1, w * r * c);
}

/// <summary>Wet or dry contact: it decides default mismatch and noise limit.</summary>
public enum ContactKind
{
    /// <summary>Gel or paste between metal and skin.</summary>
    Wet,

    /// <summary>Metal on skin.</summary>
    Dry,
}
