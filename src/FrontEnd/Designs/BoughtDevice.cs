using FrontEnd.Topologies;

namespace FrontEnd.Designs;

/// <summary>What is known of a device that somebody else built, as a data sheet for its wearer says it: the table <c>[bought]</c>. It becomes
/// gains and stages, and is no part of a design after that.</summary>
public sealed record BoughtDevice
{
    /// <summary>Below this range an offset of ±300 mV between the electrodes finds no room behind the whole gain, so that there is a
    /// coupling capacitor behind the first amplifier (common practice, no source).</summary>
    private const double LeastRangeCoupledForDc = 0.1;

    private static readonly Resistance Rg = Resistance.FromKilohms(1), FilterR = Resistance.FromKilohms(22);
    private static readonly Capacitance Coupling = Capacitance.FromMicrofarads(1);

    /// <summary>Largest signal that it records, at the electrodes, peak-to-peak.</summary>
    public VoltagePeakToPeak Range { get; init; } = VoltagePeakToPeak.FromVolts(2e-3);

    /// <summary>Corner of the coupling behind the first amplifier, where the range asks for one.</summary>
    public Frequency HighPass { get; init; } = Frequency.FromHertz(0.3);

    /// <summary>Order of the filter in front of the converter: 1 two parts, 2 an op-amp stage.</summary>
    public int FilterOrder { get; init; } = 1;

    /// <summary>Its corner as a share of the sampling rate.</summary>
    public Ratio FilterCorner { get; init; } = Ratio.FromFraction(0.4);

    /// <summary>White voltage noise of the op-amps behind the first amplifier.</summary>
    public VoltageNoiseDensity StageNoise { get; init; } = VoltageNoiseDensity.FromNanovoltsPerRootHertz(55);

    /// <summary>The converter's own noise, over what is usual for its steps and range.</summary>
    public Ratio ConverterNoise { get; init; } = Ratio.FromFraction(1);

    /// <summary>A device of this range: the gain that full scale over range asks for, the coupling, the filter. A design that lists its
    /// stages keeps them, and its full scale is the range times their gain.</summary>
    /// <param name="gainIsKnown">True where the first amplifier's gain is given and not one that follows.</param>
    public Design Realise(Design design, bool gainIsKnown)
    {
        if (design.Stages.Count > 0)
        {
            double gain = design.Amplifier.Gain * design.Stages.Aggregate(1.0, (all, stage) => all * stage.NominalGain);
            return WithNoise(WithFullScale(design, Range.Volts * gain));
        }

        var opAmp = Circuits.OpAmp.MicropowerCmos with { VoltageNoise = StageNoise };
        double whole = design.Converter.FullScale.Volts / Range.Volts;
        List<Stage> stages = [];
        if (Range.Volts < LeastRangeCoupledForDc)
        {
            double rest = Math.Max(1, whole / design.Amplifier.Gain);
            stages.Add(new GainStage
            {
                Name = "gain 2", CouplingCapacitor = Coupling, OpAmp = opAmp,
                CouplingResistor = Resistance.FromOhms(1 / (2 * Math.PI * HighPass.Hertz * Coupling.Farads)),
                GroundResistor = Rg, FeedbackResistor = Resistance.FromOhms((rest - 1) * Rg.Ohms),
            });
            design = WithFullScale(design, Range.Volts * design.Amplifier.Gain * rest);
        }
        else if (gainIsKnown)
        {
            design = WithFullScale(design, Range.Volts * design.Amplifier.Gain);
        }
        else
        {
            design = design with { Amplifier = design.Amplifier with { Gain = whole } };
        }

        stages.Add(Filter(design.Converter.Rate, opAmp));
        return WithNoise(design with { Stages = stages });
    }

    private static Design WithFullScale(Design design, double volts) =>
        design with { Converter = design.Converter with { FullScale = VoltagePeakToPeak.FromVolts(volts) } };

    private Design WithNoise(Design design) => design.Converter.Noise is not null ? design
        : design with { Converter = design.Converter with { Noise = VoltageRms.FromVolts(ConverterNoise.Fraction * design.Converter.NoiseVolts) } };

    /// <summary>Of order 2 a Butterworth, its two resistors equal: C1 = √2/(ωR), C2 = C1/2.</summary>
    private Stage Filter(Frequency rate, Circuits.OpAmp opAmp)
    {
        double omega = 2 * Math.PI * FilterCorner.Fraction * rate.Hertz;
        double c = Math.Sqrt(2) / (omega * FilterR.Ohms);
        return FilterOrder == 1
            ? new RcSection { Name = "anti-alias 1", R = FilterR, C = Capacitance.FromFarads(1 / (omega * FilterR.Ohms)) }
            : new SallenKeySection { Name = "anti-alias 1", R1 = FilterR, R2 = FilterR, C1 = Capacitance.FromFarads(c), C2 = Capacitance.FromFarads(c / 2),
                OpAmp = opAmp };
    }
}
