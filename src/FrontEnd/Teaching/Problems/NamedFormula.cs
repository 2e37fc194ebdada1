using FrontEnd.Textbook;

namespace FrontEnd.Teaching.Problems;

/// <summary>A formula of the textbooks that an expression may name.</summary>
/// <param name="Name">How it is called: rc_corner.</param>
/// <param name="Unit">Unit of what it gives.</param>
/// <param name="Parameters">What it takes, in order.</param>
/// <param name="Work">Works it out from values in SI units, decibels, degrees or bits.</param>
internal sealed record NamedFormula(string Name, string Unit, IReadOnlyList<FormulaParameter> Parameters, Func<double[], TextbookFigure> Work)
{
    public static readonly IReadOnlyList<NamedFormula> All =
    [
        new("thermal_density", "V/√Hz", [Is<Resistance>("R"), Is<Temperature>("T")], a => NoiseFormulas.ThermalDensity(Ohms(a[0]), Kelvins(a[1]))),
        new("thermal_noise", "V", [Is<Resistance>("R"), Is<Temperature>("T"), Is<Frequency>("f1"), Is<Frequency>("f2")], a => NoiseFormulas.Thermal(Ohms(a[0]), Kelvins(a[1]), Hertz(a[2]), Hertz(a[3]))),
        new("thermal_noise_rc", "V", [Is<Resistance>("R"), Is<Capacitance>("C"), Is<Temperature>("T"), Is<Frequency>("f1"), Is<Frequency>("f2")],
            a => NoiseFormulas.ThermalParallelRc(Ohms(a[0]), Farads(a[1]), Kelvins(a[2]), Hertz(a[3]), Hertz(a[4]))),
        new("capacitor_noise", "V", [Is<Capacitance>("C"), Is<Temperature>("T")], a => NoiseFormulas.CapacitorLimit(Farads(a[0]), Kelvins(a[1]))),
        new("amplifier_noise", "V", [Is<VoltageNoiseDensity>("e"), Is<Frequency>("f_c"), Is<Frequency>("f1"), Is<Frequency>("f2")],
            a => NoiseFormulas.Amplifier(VoltageNoiseDensity.FromVoltsPerRootHertz(a[0]), Hertz(a[1]), Hertz(a[2]), Hertz(a[3]))),
        new("current_noise", "V", [Is<CurrentNoiseDensity>("i"), Is<Resistance>("R"), Is<Frequency>("f_c"), Is<Frequency>("f1"), Is<Frequency>("f2")],
            a => NoiseFormulas.Current(CurrentNoiseDensity.FromAmperesPerRootHertz(a[0]), Ohms(a[1]), Hertz(a[2]), Hertz(a[3]), Hertz(a[4]))),
        new("shot_density", "A/√Hz", [Is<Current>("I")], a => NoiseFormulas.ShotDensity(Amperes(a[0]))),
        new("noise_together", "V", [Is<VoltageRms>("σ")], a => NoiseFormulas.Together([.. a.Select(VoltageRms.FromVolts)])) { TakesMany = true },
        new("noise_peak_to_peak", "V", [Is<VoltageRms>("σ")], a => NoiseFormulas.PeakToPeak(VoltageRms.FromVolts(a[0]))),
        new("sweeps", "1", [Is<PlainNumber>("ratio"), Is<VoltageRms>("σ"), Is<Voltage>("A")], a => NoiseFormulas.SweepsToAverage(a[0], VoltageRms.FromVolts(a[1]), Volts(a[2]))),
        new("stage_gain", "1", [Is<Resistance>("R_f"), Is<Resistance>("R_g")], a => AmplifierFormulas.StageGain(Ohms(a[0]), Ohms(a[1]))),
        new("closed_loop_bandwidth", "Hz", [Is<Frequency>("GBW"), Is<PlainNumber>("G")], a => AmplifierFormulas.Bandwidth(Hertz(a[0]), a[1])),
        new("first_stage_gain", "1", [Is<Voltage>("V_s"), Is<Voltage>("V_h"), Is<Voltage>("V_o"), Is<Voltage>("V_p")],
            a => AmplifierFormulas.FirstStageGainLimit(Volts(a[0]), Volts(a[1]), Volts(a[2]), Volts(a[3]))),
        new("supply_ripple", "V", [Is<VoltageRms>("V"), Is<Decibels>("PSRR")], a => AmplifierFormulas.SupplyRipple(VoltageRms.FromVolts(a[0]), Decibels.FromStated(a[1]))),
        new("bias_offset", "V", [Is<Current>("I"), Is<Resistance>("R")], a => AmplifierFormulas.BiasOffset(Amperes(a[0]), Ohms(a[1]))),
        new("converter_step", "V", [Is<VoltagePeakToPeak>("FS"), Is<BitCount>("N")], a => ConverterFormulas.Step(VoltagePeakToPeak.FromVolts(a[0]), BitCount.FromBits(a[1]))),
        new("quantisation_noise", "V", [Is<Voltage>("LSB")], a => ConverterFormulas.QuantisationNoise(Volts(a[0]))),
        new("ideal_signal_to_noise", "dB", [Is<BitCount>("N")], a => ConverterFormulas.IdealSignalToNoise(BitCount.FromBits(a[0]))),
        new("effective_bits", "bit", [Is<VoltagePeakToPeak>("FS"), Is<VoltageRms>("σ")], a => ConverterFormulas.EffectiveBits(VoltagePeakToPeak.FromVolts(a[0]), VoltageRms.FromVolts(a[1]))),
        new("noise_free_bits", "bit", [Is<VoltagePeakToPeak>("FS"), Is<VoltageRms>("σ")], a => ConverterFormulas.NoiseFreeBits(VoltagePeakToPeak.FromVolts(a[0]), VoltageRms.FromVolts(a[1]))),
        new("dynamic_range", "dB", [Is<VoltagePeakToPeak>("FS"), Is<VoltageRms>("σ")], a => ConverterFormulas.DynamicRange(VoltagePeakToPeak.FromVolts(a[0]), VoltageRms.FromVolts(a[1]))),
        new("rc_corner", "Hz", [Is<Resistance>("R"), Is<Capacitance>("C")], a => FilterFormulas.RcCorner(Ohms(a[0]), Farads(a[1]))),
        new("sallen_key_frequency", "Hz", [Is<Resistance>("R1"), Is<Resistance>("R2"), Is<Capacitance>("C1"), Is<Capacitance>("C2")],
            a => FilterFormulas.SallenKeyFrequency(Ohms(a[0]), Ohms(a[1]), Farads(a[2]), Farads(a[3]))),
        new("sallen_key_q", "1", [Is<Resistance>("R1"), Is<Resistance>("R2"), Is<Capacitance>("C1"), Is<Capacitance>("C2")],
            a => FilterFormulas.SallenKeyQ(Ohms(a[0]), Ohms(a[1]), Farads(a[2]), Farads(a[3]))),
        new("settling_time", "s", [Is<Resistance>("R"), Is<Capacitance>("C"), Is<Voltage>("V"), Is<Voltage>("δ")], a => FilterFormulas.Settling(Ohms(a[0]), Farads(a[1]), Volts(a[2]), Volts(a[3]))),
        new("fold_frequency", "Hz", [Is<Frequency>("f_s"), Is<Frequency>("f2")], a => FilterFormulas.FoldFrequency(Hertz(a[0]), Hertz(a[1]))),
        new("lands_at", "Hz", [Is<Frequency>("f"), Is<Frequency>("f_s")], a => FilterFormulas.LandsAt(Hertz(a[0]), Hertz(a[1]))),
        new("notch_attenuation", "dB", [Is<Frequency>("f"), Is<Frequency>("f_0"), Is<PlainNumber>("Q")], a => FilterFormulas.NotchAttenuation(Hertz(a[0]), Hertz(a[1]), a[2])),
        new("plate_capacitance", "F", [Is<Area>("A"), Is<Length>("d"), Is<PlainNumber>("ε_r")], a => ElectrodeFormulas.PlateCapacitance(Area.FromSquareMetres(a[0]), Length.FromMetres(a[1]), a[2])),
        new("battery_life", "s", [Is<Charge>("Q"), Is<Ratio>("share"), Is<Current>("I")], a => PowerFormulas.BatteryLife(Charge.FromCoulombs(a[0]), Ratio.FromFraction(a[1]), Amperes(a[2]))),
        new("fault_current", "A", [Is<Voltage>("V"), Is<Resistance>("R")], a => SafetyFormulas.FaultCurrent(Volts(a[0]), Ohms(a[1]))),
        new("series_resistance_needed", "Ω", [Is<Voltage>("V"), Is<Current>("I_limit")], a => SafetyFormulas.SeriesResistanceNeeded(Volts(a[0]), Amperes(a[1]))),
        new("displacement_current", "A", [Is<VoltageRms>("V"), Is<Frequency>("f"), Is<Capacitance>("C")], a => MainsFormulas.DisplacementCurrent(VoltageRms.FromVolts(a[0]), Hertz(a[1]), Farads(a[2]))),
        new("residue", "V", [Is<VoltageRms>("V_cm"), Is<Decibels>("CMRR")], a => MainsFormulas.Residue(VoltageRms.FromVolts(a[0]), Decibels.FromStated(a[1]))),
        new("rejection_needed", "dB", [Is<VoltageRms>("V_cm"), Is<VoltageRms>("V")], a => MainsFormulas.RejectionNeeded(VoltageRms.FromVolts(a[0]), VoltageRms.FromVolts(a[1]))),
        new("loop_voltage", "V", [Is<Frequency>("f"), Is<MagneticFluxDensity>("B"), Is<Area>("A")], a => MainsFormulas.LoopVoltage(Hertz(a[0]), MagneticFluxDensity.FromTeslas(a[1]), Area.FromSquareMetres(a[2]))),
        new("drive_loop_gain", "1", [Is<Frequency>("f_u"), Is<Frequency>("f")], a => MainsFormulas.DrivenGroundLoopGain(Hertz(a[0]), Hertz(a[1]))),
    ];

    private static readonly Dictionary<string, NamedFormula> ByName = All.ToDictionary(formula => formula.Name, StringComparer.Ordinal);

    /// <summary>True for one that takes as many values as there are, all of the kind of its one parameter.</summary>
    public bool TakesMany { get; init; }

    public Dimension Dimension => Dimension.Of(Unit);

    /// <summary>How it is called: "rc_corner(R, C)".</summary>
    public string Signature => $"{Name}({string.Join(", ", Parameters.Select(parameter => parameter.Name))}{(TakesMany ? ", …" : "")})";

    /// <summary>Null for a name that there is none of.</summary>
    public static NamedFormula? Find(string name) => ByName.GetValueOrDefault(name);

    private static FormulaParameter Is<T>(string name)
        where T : struct, IQuantity => new(name, QuantityKind.Of<T>());

    private static Resistance Ohms(double value) => Resistance.FromOhms(value);

    private static Capacitance Farads(double value) => Capacitance.FromFarads(value);

    private static Frequency Hertz(double value) => Frequency.FromHertz(value);

    private static Voltage Volts(double value) => Voltage.FromVolts(value);

    private static Current Amperes(double value) => Current.FromAmperes(value);

    private static Temperature Kelvins(double value) => Temperature.FromKelvins(value);
}

/// <summary>What a named formula takes at one place.</summary>
internal sealed record FormulaParameter(string Name, QuantityKind Kind)
{
    public string Words => $"{Name}, {Kind.Words}";

    public Dimension Dimension => Dimension.Of(Kind);
}
