using FrontEnd.Amplifier;
using FrontEnd.AntiAlias;
using FrontEnd.Quantities;

namespace FrontEnd.Spread;

/// <summary>Everything that is drawn for a design, in a fixed order, and how drawn values are put into it.</summary>
internal sealed class PartList
{
    private readonly Design _design;
    private readonly List<SpreadPart> _parts = [];
    private readonly List<(int Stage, string Part, int Index)> _stageParts = [];

    public PartList(Design design, SpreadOptions options)
    {
        _design = design;
        SpreadRanges ranges = options.Ranges;
        SpreadLaw law = options.Distribution == PartDistribution.Normal ? SpreadLaw.Normal : SpreadLaw.Uniform;
        double r = design.Input.ResistorTolerance.Fraction, c = design.Input.CapacitorTolerance.Fraction;
        ActiveResistor = Add("input.series-resistor (active)", law, 1 - r, 1 + r);
        ReferenceResistor = Add("input.series-resistor (reference)", law, 1 - r, 1 + r);
        if (0 < design.Input.ShuntCapacitor.Farads)
        {
            ActiveShunt = Add("input.shunt-capacitor (active)", law, 1 - c, 1 + c);
            ReferenceShunt = Add("input.shunt-capacitor (reference)", law, 1 - c, 1 + c);
        }

        if (design.Input.BiasResistor is not null)
        {
            ActiveBias = Add("input.bias-resistor (active)", law, 1 - r, 1 + r);
            ReferenceBias = Add("input.bias-resistor (reference)", law, 1 - r, 1 + r);
        }

        bool ground = design.Electrodes.Ground is not null;
        if (ground)
        {
            double tolerance = design.GroundDrive.ResistorTolerance.Fraction;
            GroundResistor = Add("ground-drive.series-resistor", law, 1 - tolerance, 1 + tolerance);
        }

        for (int i = 0; i < design.Stages.Count; i++)
        {
            AddStage(i, design.Stages[i], law);
        }

        double decibels = Math.Pow(10, ranges.Cmrr / 20), half = design.Electrodes.EffectiveMismatch / 2, factor = ranges.Surroundings;
        Cmrr = Add("amplifier.cmrr", SpreadLaw.LogUniform, 1 / decibels, decibels);
        Gain = Add("amplifier.gain", SpreadLaw.Uniform, 1 - ranges.Gain, 1 + ranges.Gain);
        Noise = Add("amplifier.input-noise", SpreadLaw.Uniform, 1 - ranges.Noise, 1 + ranges.Noise);
        half = ranges.Electrodes ? half : 0;
        ActiveElectrode = Add("electrodes.active", SpreadLaw.Uniform, 1 - half, 1 + half);
        ReferenceElectrode = Add("electrodes.reference", SpreadLaw.Uniform, 1 - half, 1 + half);
        if (ground)
        {
            GroundElectrode = Add("electrodes.ground", SpreadLaw.Uniform, 1 - half, 1 + half);
        }

        BodyToMains = Add("mains.body-to-mains", SpreadLaw.LogUniform, 1 / factor, factor);
        BodyToEarth = Add("mains.body-to-earth", SpreadLaw.LogUniform, 1 / factor, factor);
        AmplifierToEarth = Add("mains.amplifier-to-earth", SpreadLaw.LogUniform, 1 / factor, factor);
        AmplifierToMains = Add("mains.amplifier-to-mains", SpreadLaw.LogUniform, 1 / factor, factor);
        LeadToMains = Add("mains.lead-to-mains", SpreadLaw.LogUniform, 1 / factor, factor);
        MainsVoltage = Add("mains.voltage", SpreadLaw.Uniform, 1 - ranges.MainsVoltage, 1 + ranges.MainsVoltage);
    }

    public IReadOnlyList<SpreadPart> Parts => _parts;

    /// <summary>Parts of the stages: the stage's number, the part's key and its number in <see cref="Parts"/>.</summary>
    public IReadOnlyList<(int Stage, string Part, int Index)> StageParts => _stageParts;

    public int ActiveResistor { get; }

    public int ReferenceResistor { get; }

    public int ActiveShunt { get; } = -1;

    public int ReferenceShunt { get; } = -1;

    public int ActiveBias { get; } = -1;

    public int ReferenceBias { get; } = -1;

    public int GroundResistor { get; } = -1;

    public int Cmrr { get; }

    public int Gain { get; }

    public int Noise { get; }

    public int ActiveElectrode { get; }

    public int ReferenceElectrode { get; }

    public int GroundElectrode { get; } = -1;

    public int BodyToMains { get; }

    public int BodyToEarth { get; }

    public int AmplifierToEarth { get; }

    public int AmplifierToMains { get; }

    public int LeadToMains { get; }

    public int MainsVoltage { get; }

    /// <summary>The design and the leads' parts of one build, for the full evaluation.</summary>
    /// <param name="factor">Value over nominal value of each part.</param>
    public (Design Design, BuiltParts Built) Apply(ReadOnlySpan<double> factor)
    {
        BuiltParts nominal = BuiltParts.Balanced(_design);
        var built = new BuiltParts(
            nominal.ActiveOhms * At(factor, ActiveResistor),
            nominal.ReferenceOhms * At(factor, ReferenceResistor),
            nominal.ActiveFarads * At(factor, ActiveShunt),
            nominal.ReferenceFarads * At(factor, ReferenceShunt),
            nominal.ActiveBiasOhms * At(factor, ActiveBias),
            nominal.ReferenceBiasOhms * At(factor, ReferenceBias),
            At(factor, ActiveElectrode),
            At(factor, ReferenceElectrode),
            At(factor, GroundElectrode))
        {
            NominalMains = _design.Mains,
        };
        DifferentialAmplifier amplifier = _design.Amplifier;
        Interference.Mains mains = _design.Mains;
        double noise = At(factor, Noise);
        Design design = _design with
        {
            GroundDrive = _design.GroundDrive with { SeriesResistor = Resistance.FromOhms(_design.GroundDrive.SeriesResistor.Ohms * At(factor, GroundResistor)) },
            Stages = Stages(factor),
            Amplifier = amplifier with
            {
                Gain = amplifier.Gain * At(factor, Gain),
                Cmrr = Decibels.FromVoltageRatio(amplifier.Cmrr.VoltageRatio * At(factor, Cmrr)),
                InputNoise = VoltageNoiseDensity.FromVoltsPerRootHertz(amplifier.InputNoise.VoltsPerRootHertz * noise),
                OutputNoise = VoltageNoiseDensity.FromVoltsPerRootHertz(amplifier.OutputNoise.VoltsPerRootHertz * noise),
            },
            Mains = mains with
            {
                Voltage = VoltageRms.FromVolts(mains.Voltage.Volts * At(factor, MainsVoltage)),
                BodyToMains = Capacitance.FromFarads(mains.BodyToMains.Farads * At(factor, BodyToMains)),
                BodyToEarth = Capacitance.FromFarads(mains.BodyToEarth.Farads * At(factor, BodyToEarth)),
                AmplifierToEarth = Capacitance.FromFarads(mains.AmplifierToEarth.Farads * At(factor, AmplifierToEarth)),
                AmplifierToMains = Capacitance.FromFarads(mains.AmplifierToMains.Farads * At(factor, AmplifierToMains)),
                LeadToMains = Capacitance.FromFarads(mains.LeadToMains.Farads * At(factor, LeadToMains)),
            },
        };
        return (design, built);
    }

    /// <summary>The stages with one build's parts.</summary>
    public Stage[] Stages(ReadOnlySpan<double> factor)
    {
        Stage[] stages = [.. _design.Stages];
        foreach ((int stage, string part, int index) in _stageParts)
        {
            stages[stage] = With(stages[stage], part, factor[index]);
        }

        return stages;
    }

    private static double At(ReadOnlySpan<double> factor, int index) => index < 0 ? 1 : factor[index];

    private static Resistance Times(Resistance r, double factor) => Resistance.FromOhms(r.Ohms * factor);

    private static Capacitance Times(Capacitance c, double factor) => Capacitance.FromFarads(c.Farads * factor);

    private static Stage With(Stage stage, string part, double f) => (stage, part) switch
    {
        (GainStage s, "coupling-capacitor") => s with { CouplingCapacitor = Times(s.CouplingCapacitor!.Value, f) },
        (GainStage s, "coupling-resistor") => s with { CouplingResistor = Times(s.CouplingResistor, f) },
        (GainStage s, "feedback-resistor") => s with { FeedbackResistor = Times(s.FeedbackResistor, f) },
        (GainStage s, "ground-resistor") => s with { GroundResistor = Times(s.GroundResistor!.Value, f) },
        (GainStage s, "feedback-capacitor") => s with { FeedbackCapacitor = Times(s.FeedbackCapacitor!.Value, f) },
        (RcSection s, "r") => s with { R = Times(s.R, f) },
        (RcSection s, "c") => s with { C = Times(s.C, f) },
        (SallenKeySection s, "r1") => s with { R1 = Times(s.R1, f) },
        (SallenKeySection s, "r2") => s with { R2 = Times(s.R2, f) },
        (SallenKeySection s, "c1") => s with { C1 = Times(s.C1, f) },
        (SallenKeySection s, "c2") => s with { C2 = Times(s.C2, f) },
        (SallenKeySection s, "feedback-resistor") => s with { FeedbackResistor = Times(s.FeedbackResistor, f) },
        (SallenKeySection s, "ground-resistor") => s with { GroundResistor = Times(s.GroundResistor!.Value, f) },
        (MultipleFeedbackSection s, "r1") => s with { R1 = Times(s.R1, f) },
        (MultipleFeedbackSection s, "r2") => s with { R2 = Times(s.R2, f) },
        (MultipleFeedbackSection s, "r3") => s with { R3 = Times(s.R3, f) },
        (MultipleFeedbackSection s, "c1") => s with { C1 = Times(s.C1, f) },
        (MultipleFeedbackSection s, "c2") => s with { C2 = Times(s.C2, f) },
        (TwinTNotch s, "r1") => s with { R1 = Times(s.R1, f) },
        (TwinTNotch s, "r2") => s with { R2 = Times(s.R2, f) },
        (TwinTNotch s, "r3") => s with { R3 = Times(s.R3, f) },
        (TwinTNotch s, "c1") => s with { C1 = Times(s.C1, f) },
        (TwinTNotch s, "c2") => s with { C2 = Times(s.C2, f) },
        (TwinTNotch s, "c3") => s with { C3 = Times(s.C3, f) },
        (TwinTNotch s, "feedback-resistor") => s with { FeedbackResistor = Times(s.FeedbackResistor, f) },
        (TwinTNotch s, "ground-resistor") => s with { GroundResistor = Times(s.GroundResistor!.Value, f) },
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, "Part is not one of the stage's."),
    };

    private int Add(string key, SpreadLaw law, double low, double high)
    {
        _parts.Add(new SpreadPart(key, law, low, high));
        return _parts.Count - 1;
    }

    /// <summary>Parts in the order in which the stage's network takes them.</summary>
    private void AddStage(int index, Stage stage, SpreadLaw law)
    {
        foreach ((string part, int _, int resistor) in new StageModel(stage, _design.BoardTemperature).Parts)
        {
            double tolerance = 0 <= resistor ? stage.ResistorTolerance.Fraction : stage.CapacitorTolerance.Fraction;
            _stageParts.Add((index, part, Add($"stages.{DesignFields.Slug(stage.Name)}.{part}", law, 1 - tolerance, 1 + tolerance)));
        }
    }
}
