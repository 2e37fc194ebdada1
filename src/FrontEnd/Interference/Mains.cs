using FrontEnd.Fields;

namespace FrontEnd.Interference;

/// <summary>The mains around the wearer: its voltage, its stray capacitances and its magnetic field.</summary>
public sealed record Mains
{
    /// <summary>Shares of the fundamental, h = 1, 2, 3 …: the limits of EN 50160 for h = 2…25. Beyond the last one nothing is known, so
    /// whoever says where harmonics land says up to which one it looked.</summary>
    public static readonly IReadOnlyList<double> StandardHarmonics =
    [
        1, 0.02, 0.05, 0.01, 0.06, 0.005, 0.05, 0.005, 0.015, 0.005, 0.035, 0.005, 0.03, 0.005, 0.005, 0.005, 0.02, 0.005, 0.015, 0.005,
        0.005, 0.005, 0.015, 0.005, 0.015,
    ];

    /// <summary>Mains frequency [Hz].</summary>
    public Frequency Frequency { get; init; } = Frequency.FromHertz(50);

    /// <summary>Voltage of the mains to earth [V rms].</summary>
    public VoltageRms Voltage { get; init; } = VoltageRms.FromVolts(230);

    /// <summary>Stray capacitance from the body to the mains, C_p [F].</summary>
    public Capacitance BodyToMains { get; init; } = Capacitance.FromPicofarads(3);

    /// <summary>Stray capacitance from the body to earth, C_b [F].</summary>
    public Capacitance BodyToEarth { get; init; } = Capacitance.FromPicofarads(300);

    /// <summary>Amplifier common to earth: small for a battery device that floats, 1 µF stands for an earthed one.</summary>
    public Capacitance AmplifierToEarth { get; init; } = Capacitance.FromPicofarads(10);

    /// <summary>Stray capacitance from the amplifier's common to the mains [F].</summary>
    public Capacitance AmplifierToMains { get; init; } = Capacitance.FromPicofarads(0.05);

    /// <summary>Each lead to the mains.</summary>
    public Capacitance LeadToMains { get; init; } = Capacitance.FromFarads(2e-15);

    /// <summary>B, rms, at the fundamental.</summary>
    public MagneticFluxDensity Field { get; init; } = MagneticFluxDensity.FromTeslas(100e-9);

    /// <summary>A: area of the loop that the leads make.</summary>
    public Area LoopArea { get; init; } = Area.FromSquareMetres(0.002);

    /// <summary>Share of the mains voltage at h = 1, 2, 3 ….</summary>
    public IReadOnlyList<double> Harmonics { get; init; } = StandardHarmonics;

    /// <summary>Share of the field at h = 1, 2, 3 …; null for the same as the voltage's.</summary>
    public IReadOnlyList<double>? FieldHarmonics { get; init; }

    /// <summary>The highest harmonic that voltage or field has a share of; nothing is said of those above.</summary>
    public int HighestHarmonic => Math.Max(Harmonics.Count, FieldHarmonics?.Count ?? 0);

    /// <summary>Which harmonics were looked at, as "h = 1 to 25".</summary>
    public string LookedAt => HighestHarmonic == 1 ? "h = 1 alone" : $"h = 1 to {HighestHarmonic}";

    /// <summary>How far its values go from piece to piece; see <see cref="PartRanges"/>.</summary>
    public PartRanges Ranges { get; init; } = PartRanges.None;

    /// <summary>δ: how far the mains frequency may be from its nominal value.</summary>
    public Ratio Deviation { get; init; } = Ratio.FromFraction(0.004);

    /// <summary>From here on the amplifier's common counts as earthed or wired to something: no box that floats has as much (common
    /// practice, no source).</summary>
    private static readonly Capacitance Wired = Capacitance.FromNanofarads(10);

    /// <summary>True where the amplifier's common is earthed or wired, so that a direct current can return that way.</summary>
    public bool CommonIsEarthed => Wired.Farads <= AmplifierToEarth.Farads;
}
