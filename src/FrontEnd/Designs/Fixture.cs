using FrontEnd.Electrodes;
using FrontEnd.Interference;

namespace FrontEnd.Designs;

/// <summary>The design with parts in place of its electrodes: resistors at board temperature without excess noise, all alike, away from
/// the mains.</summary>
internal static class Fixture
{
    /// <summary>Wire and clip of a short circuit (common practice, no source).</summary>
    private const double ShortOhms = 0.1;

    /// <summary>Every electrode a short circuit.</summary>
    public static Electrode Short { get; } = Of(Resistance.FromOhms(ShortOhms), default);

    /// <summary>A resistor with a capacitor across it; no capacitance for a resistor alone.</summary>
    public static Electrode Of(Resistance resistance, Capacitance capacitance) => new()
    {
        SeriesResistance = default, ContactResistance = resistance, ContactCapacitance = capacitance, ExcessNoise = default,
        Contact = ContactKind.Wet,
    };

    /// <summary>The same part at every electrode.</summary>
    public static Design With(Design design, Electrode electrode) => With(design, electrode, electrode, electrode);

    public static Design With(Design design, Electrode active, Electrode reference, Electrode ground) => design with
    {
        Electrodes = design.Electrodes with
        {
            Active = active, Reference = reference, Ground = design.Electrodes.Ground is null
                ? null
                : ground, Mismatch = default(Ratio), Offset = default,
        },
        SkinTemperature = design.BoardTemperature,
        Mains = Quiet(design.Mains),
    };

    /// <summary>A screened box: no coupling to the mains, no loop.</summary>
    private static Mains Quiet(Mains mains) =>
        mains with { BodyToMains = default, AmplifierToMains = default, LeadToMains = default, LoopArea = default };
}
