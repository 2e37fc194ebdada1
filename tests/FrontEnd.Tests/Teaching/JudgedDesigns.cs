using FrontEnd.Amplifier;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Interference;
using FrontEnd.Quantities;
using FrontEnd.Teaching;
using FrontEnd.Topologies;

namespace FrontEnd.Tests.Teaching;

/// <summary>The chain of the judgement problems, built again from what the sheet prints, and each change by its words.</summary>
internal static class JudgedDesigns
{
    internal static Design Build(Problem problem)
    {
        T Get<T>(string symbol)
            where T : struct, IQuantity => Find<T>(symbol) ?? throw new ArgumentException($"{symbol} is not given", nameof(symbol));
        T? Find<T>(string symbol)
            where T : struct, IQuantity => PrintedValues.Of(problem).TryGetValue(symbol, out double value) ? (T)FrontEnd.Text.QuantityKind.Of<T>().FromSi(value) : null;
        Voltage lowest = Find<Voltage>("V_s") ?? Voltage.FromVolts(3);
        Electrode electrode = new() { ContactResistance = Get<Resistance>("R_d"), ContactCapacitance = Get<Capacitance>("C_d") };
        VoltageNoiseDensity e = Get<VoltageNoiseDensity>("e");
        return new Design
        {
            Electrodes = new ElectrodeSet { Active = electrode, Reference = electrode, Ground = electrode, Mismatch = Get<Ratio>("m") },
            Input = new InputNetwork { SeriesResistor = Get<Resistance>("R_p") },
            Amplifier = new DifferentialAmplifier
            {
                Gain = Get<Ratio>("G₁").Fraction, InputNoise = e, OutputNoise = VoltageNoiseDensity.FromVoltsPerRootHertz(3 * e.VoltsPerRootHertz), CurrentNoise = Get<CurrentNoiseDensity>("i"), Cmrr = Get<Decibels>("CMRR"), OutputMargin = Find<Voltage>("h") ?? Voltage.FromVolts(0.1),
            },
            GroundDrive = new GroundDrive { SeriesResistor = Get<Resistance>("R_g") },
            Mains = new Mains { LoopArea = Get<Area>("A"), Harmonics = [1], Field = Find<MagneticFluxDensity>("B") ?? MagneticFluxDensity.FromTeslas(1e-7), LeadToMains = Find<Capacitance>("C_l") ?? Capacitance.FromFarads(2e-15) },
            Supply = new Supply { Lowest = lowest, Highest = Voltage.FromVolts(lowest.Volts + 0.3) },
            Stages =
            [
                new GainStage { Name = "gain 2", CouplingCapacitor = Capacitance.FromMicrofarads(1), FeedbackResistor = Resistance.FromKilohms(Get<Ratio>("G₂").Fraction - 1), GroundResistor = Resistance.FromKilohms(1) },
                new RcSection { Name = "anti-alias 1", R = Resistance.FromKilohms(10), C = Get<Capacitance>("C") },
            ],
            Converter = new AnalogDigitalConverter { Rate = Get<Frequency>("f_s"), Noise = Get<VoltageRms>("σ_adc") },
        };
    }

    internal static Design Change(Design design, string option) => option switch
    {
        "an amplifier with half the voltage noise" => design with { Amplifier = design.Amplifier with { InputNoise = Times(design.Amplifier.InputNoise, 0.5), OutputNoise = Times(design.Amplifier.OutputNoise, 0.5) } },
        "an amplifier with a third of the current noise" => design with { Amplifier = design.Amplifier with { CurrentNoise = CurrentNoiseDensity.FromAmperesPerRootHertz(design.Amplifier.CurrentNoise.AmperesPerRootHertz / 3) } },
        "electrodes of half the impedance" => design with { Electrodes = design.Electrodes with { Active = Halved(design.Electrodes.Active), Reference = Halved(design.Electrodes.Reference) } },
        "a converter with a third of the noise and two bits more" => design with { Converter = design.Converter with { Bits = 14, Noise = VoltageRms.FromVolts(design.Converter.NoiseVolts / 3) } },
        "an amplifier with 20 dB more common-mode rejection" => design with { Amplifier = design.Amplifier with { Cmrr = Decibels.FromStated(design.Amplifier.Cmrr.Value + 20) } },
        "a third of the difference between the electrodes" => design with { Electrodes = design.Electrodes with { Mismatch = Ratio.FromFraction(design.Electrodes.Mismatch!.Value.Fraction / 3) } },
        "a fourth of the loop's area, the leads twisted" => design with { Mains = design.Mains with { LoopArea = Area.FromSquareMetres(design.Mains.LoopArea.SquareMetres / 4) } },
        "a tenth of the ground electrode's series resistor" => design with { GroundDrive = design.GroundDrive with { SeriesResistor = Resistance.FromOhms(design.GroundDrive.SeriesResistor.Ohms / 10) } },
        _ when option.EndsWith(" the sampling rate", StringComparison.Ordinal) => design with { Converter = design.Converter with { Rate = Frequency.FromHertz(Times(option) * design.Converter.Rate.Hertz) } },
        "two more, equal RC sections with buffers" => design with { Stages = [.. design.Stages, Rc(design) with { Name = "second" }, Rc(design) with { Name = "third" }] },
        "a second, equal RC section with its buffer" => design with { Stages = [.. design.Stages, Rc(design) with { Name = "second" }] },
        _ when option.EndsWith(" the capacitor of the RC section", StringComparison.Ordinal) => design with { Stages = [design.Stages[0], Rc(design) with { C = Capacitance.FromFarads(Times(option) * Rc(design).C.Farads) }] },
        _ when option.EndsWith(" gain of the first stage", StringComparison.Ordinal) => design with { Amplifier = design.Amplifier with { Gain = design.Amplifier.Gain * Times(option) } },
        _ when option.EndsWith(" more supply", StringComparison.Ordinal) => More(design, PrintedValues.Read(option[..^" more supply".Length])),
        "a first stage whose output comes within 20 mV of the rails" => design with { Amplifier = design.Amplifier with { OutputMargin = Voltage.FromVolts(0.02) } },
        _ => throw new ArgumentOutOfRangeException(nameof(option), option, "Not a change that the tests know."),
    };

    private static Design More(Design design, double volts) => design with { Supply = design.Supply with { Lowest = Voltage.FromVolts(design.Supply.Lowest.Volts + volts), Highest = Voltage.FromVolts(design.Supply.Highest.Volts + volts) } };

    private static double Times(string option) => Words.First(word => option.StartsWith(word.Text, StringComparison.Ordinal)).Times;

    private static readonly (string Text, double Times)[] Words = [("twice", 2), ("three times", 3), ("four times", 4), ("five times", 5), ("ten times", 10), ("half", 0.5), ("three quarters", 0.75), ("four fifths", 0.8)];

    internal static bool Belongs(string option, string source) => option switch
    {
        "the electrodes' own noise" => source.Contains("electrode", StringComparison.Ordinal),
        "the protection resistors" => source.Contains("protection", StringComparison.Ordinal),
        "the differential amplifier, voltage and current" => source.StartsWith("amplifier", StringComparison.Ordinal),
        "the converter, its steps included" => source is "converter" or "quantisation",
        _ => throw new ArgumentOutOfRangeException(nameof(option), option, "Not a group that the tests know."),
    };

    private static RcSection Rc(Design design) => (RcSection)design.Stages[1];

    private static Electrode Halved(Electrode electrode) => electrode with
    {
        ContactResistance = Resistance.FromOhms(electrode.ContactResistance.Ohms / 2), ContactCapacitance = Capacitance.FromFarads(electrode.ContactCapacitance.Farads * 2),
    };

    private static VoltageNoiseDensity Times(VoltageNoiseDensity density, double factor) => VoltageNoiseDensity.FromVoltsPerRootHertz(factor * density.VoltsPerRootHertz);
}
