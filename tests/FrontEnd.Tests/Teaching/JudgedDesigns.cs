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
            where T : struct, IQuantity => (T)problem.Givens.First(given => given.Symbol == symbol).Value;
        Electrode electrode = new() { ContactResistance = Get<Resistance>("R_d"), ContactCapacitance = Get<Capacitance>("C_d") };
        VoltageNoiseDensity e = Get<VoltageNoiseDensity>("e");
        return new Design
        {
            Electrodes = new ElectrodeSet { Active = electrode, Reference = electrode, Ground = electrode, Mismatch = Get<Ratio>("m") },
            Input = new InputNetwork { SeriesResistor = Get<Resistance>("R_p") },
            Amplifier = new DifferentialAmplifier
            {
                Gain = Get<Ratio>("G₁").Fraction, InputNoise = e, OutputNoise = VoltageNoiseDensity.FromVoltsPerRootHertz(3 * e.VoltsPerRootHertz), CurrentNoise = Get<CurrentNoiseDensity>("i"), Cmrr = Get<Decibels>("CMRR"),
            },
            GroundDrive = new GroundDrive { SeriesResistor = Get<Resistance>("R_g") },
            Mains = new Mains { LoopArea = Get<Area>("A"), Harmonics = [1] },
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
        "twice the sampling rate" => design with { Converter = design.Converter with { Rate = Frequency.FromHertz(2 * design.Converter.Rate.Hertz) } },
        "a second, equal RC section with its buffer" => design with { Stages = [.. design.Stages, Rc(design) with { Name = "second" }] },
        "twice the capacitor of the RC section" => design with { Stages = [design.Stages[0], Rc(design) with { C = Capacitance.FromFarads(2 * Rc(design).C.Farads) }] },
        "four more bits in the converter" or "a converter with four more bits" => design with { Converter = design.Converter with { Bits = 16 } },
        "half the gain of the first stage" => design with { Amplifier = design.Amplifier with { Gain = design.Amplifier.Gain / 2 } },
        "0.6 V more supply" => design with { Supply = design.Supply with { Lowest = Voltage.FromVolts(design.Supply.Lowest.Volts + 0.6), Highest = Voltage.FromVolts(design.Supply.Highest.Volts + 0.6) } },
        "half the gain of the second, ac-coupled stage" => design with
        {
            Stages = [((GainStage)design.Stages[0]) with { FeedbackResistor = Resistance.FromKilohms((((GainStage)design.Stages[0]).NominalGain / 2) - 1) }, design.Stages[1]],
        },
        _ => throw new ArgumentOutOfRangeException(nameof(option), option, "Not a change that the tests know."),
    };

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
