using FrontEnd.Amplifier;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Interference;
using FrontEnd.Topologies;

namespace FrontEnd.Teaching.Problems;

/// <summary>What the values of a judgement's chain are drawn from: two gain stages, one RC section and a successive-approximation
/// converter.</summary>
/// <remarks>A judgement narrows some of the lists so that each of its choices is the right one often enough.</remarks>
internal sealed record TeachingChain
{
    public double[] Contact { get; init; } = [20e3, 51e3, 150e3, 620e3];

    public double[] Across { get; init; } = [4.7e-9, 22e-9, 47e-9];

    public double[] Mismatch { get; init; } = [0.2, 0.5, 1];

    public double[] Protection { get; init; } = [10e3, 47e3, 100e3, 220e3];

    public double[] Ground { get; init; } = [10e3, 100e3, 330e3];

    public double[] VoltageNoise { get; init; } = [15e-9, 50e-9, 120e-9];

    public double[] CurrentNoise { get; init; } = [1e-15, 100e-15, 300e-15];

    public double[] Rejection { get; init; } = [70, 86, 100];

    public double[] FirstGain { get; init; } = [4, 5, 6];

    public double[] SecondGain { get; init; } = [11, 34, 101];

    public double[] LowPass { get; init; } = [100e-9, 150e-9, 220e-9];

    public double[] Rate { get; init; } = [250, 500, 1000];

    public double[] ConverterNoise { get; init; } = [150e-6, 300e-6, 600e-6];

    public double[] Loop { get; init; } = [10e-4, 20e-4, 80e-4];

    /// <summary>Flux density through the loop; null where the judgement is not about mains.</summary>
    public double[]? Field { get; init; }

    /// <summary>Capacitance from the mains to each lead; null where the judgement is not about mains.</summary>
    public double[]? LeadToMains { get; init; }

    /// <summary>Lowest supply; null where the judgement is not about what the stages carry.</summary>
    public double[]? Supply { get; init; }

    /// <summary>How near the first stage's output comes to the rails; null where the judgement is not about what the stages carry.</summary>
    public double[]? Margin { get; init; }

    public Design Draw(Draw d)
    {
        Resistance contact = d.OneOf<Resistance>("R_d", "contact resistance of each electrode", Contact);
        Capacitance across = d.OneOf<Capacitance>("C_d", "capacitance across it", Across);
        Ratio mismatch = d.OneOf<Ratio>("m", "difference of the two electrodes over their mean", Mismatch);
        Electrode electrode = new() { ContactResistance = contact, ContactCapacitance = across };
        var input = new InputNetwork
        {
            SeriesResistor = d.OneOf<Resistance>("R_p", "protection resistor in each measuring lead", Protection),
        };
        var ground = new GroundDrive
        {
            SeriesResistor = d.OneOf<Resistance>("R_g", "series resistor of the passive ground electrode", Ground),
        };
        DifferentialAmplifier amplifier = First(d);
        Ratio second = d.OneOf<Ratio>("G₂", "gain of the second, ac-coupled stage (1 µF, 1 MΩ)", SecondGain);
        Capacitance low = d.OneOf<Capacitance>("C", "capacitor of the RC low-pass with 10 kΩ", LowPass);
        Frequency rate = d.OneOf<Frequency>("f_s", "sampling rate", Rate);
        VoltageRms converter = d.OneOf<VoltageRms>("σ_adc", "converter's noise at its pin, 12 bit, 3 V full scale, rms", ConverterNoise);
        Mains mains = Surroundings(d);
        return new Design
        {
            Name = "teaching chain",
            Electrodes = new ElectrodeSet { Active = electrode, Reference = electrode, Ground = electrode, Mismatch = mismatch },
            Input = input, Amplifier = amplifier, GroundDrive = ground, Mains = mains, Supply = Rails(d),
            Stages =
            [
                new GainStage { Name = "gain 2", CouplingCapacitor = Capacitance.FromMicrofarads(1),
                    FeedbackResistor = Resistance.FromKilohms(second.Fraction - 1), GroundResistor = Resistance.FromKilohms(1) },
                new RcSection { Name = "anti-alias 1", R = Resistance.FromKilohms(10), C = low },
            ],
            Converter = new AnalogDigitalConverter { Rate = rate, Noise = converter },
        };
    }

    private DifferentialAmplifier First(Draw d)
    {
        VoltageNoiseDensity e = d.OneOf<VoltageNoiseDensity>("e",
            "amplifier's voltage noise density at its input, white; three times that at its output", VoltageNoise);
        CurrentNoiseDensity i = d.OneOf<CurrentNoiseDensity>("i", "amplifier's current noise density, each input", CurrentNoise);
        Decibels rejection = d.OneOf<Decibels>("CMRR", "amplifier's common-mode rejection at dc; corner 150 Hz", Rejection);
        Ratio gain = d.OneOf<Ratio>("G₁", "gain of the first, dc-coupled stage", FirstGain);
        DifferentialAmplifier amplifier = new()
        {
            Gain = gain.Fraction, InputNoise = e, OutputNoise = VoltageNoiseDensity.FromVoltsPerRootHertz(3 * e.VoltsPerRootHertz),
            CurrentNoise = i, Cmrr = rejection,
        };
        return Margin is null
            ? amplifier
            : amplifier with { OutputMargin = d.OneOf<Voltage>("h", "how near the first stage's output comes to each rail", Margin) };
    }

    private Mains Surroundings(Draw d)
    {
        Mains mains = new() { Harmonics = [1] };
        mains = Field is null
            ? mains with { LoopArea = d.OneOf<Area>("A", "area of the leads' loop, in a field of 0.1 µT", Loop) }
            : mains with { LoopArea = d.OneOf<Area>("A", "area of the leads' loop", Loop),
                Field = d.OneOf<MagneticFluxDensity>("B", "flux density of the mains through it, rms", Field) };
        return LeadToMains is null
            ? mains
            : mains with { LeadToMains = d.OneOf<Capacitance>("C_l", "capacitance from the mains to each lead", LeadToMains) };
    }

    private Supply Rails(Draw d)
    {
        if (Supply is null)
        {
            return new Supply();
        }

        Voltage lowest = d.OneOf<Voltage>("V_s", "supply at its lowest, the reference at half of it", Supply);
        return new Supply { Lowest = lowest, Highest = Voltage.FromVolts(lowest.Volts + 0.3) };
    }
}
