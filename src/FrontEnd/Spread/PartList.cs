using FrontEnd.Amplifier;
using FrontEnd.Circuits;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Fields;
using FrontEnd.Inputs;
using FrontEnd.Interference;
using FrontEnd.Topologies;

namespace FrontEnd.Spread;

/// <summary>Everything that is drawn for a design, in a fixed order, and how drawn values are put into it.</summary>
/// <remarks>
/// What has a range, on its card or in the design, is drawn within it; evenly in the logarithm where the ends have one sign and lie a
/// factor of two or more apart and where the unit is the decibel, else evenly. An electrode's range of contact resistance scales all of its
/// impedance, time constants kept, and takes the mismatch's place. A range of what is zero in the design is drawn for offsets and bias
/// currents only: nothing else can be scaled from zero.
/// </remarks>
internal sealed class PartList
{
    private const double LeastElectrode = 1e-6;

    private readonly Design _design;
    private readonly List<SpreadPart> _parts = [];
    private readonly Dictionary<int, double> _fromZero = [];
    private readonly List<(int Stage, string Part, int Index)> _stageParts = [];
    private readonly OpAmpParts[] _stageOpAmps;

    public PartList(Design design, SpreadOptions options)
    {
        _design = design;
        SpreadRanges ranges = options.Ranges;
        SpreadLaw law = options.Distribution == PartDistribution.Normal ? SpreadLaw.Normal : SpreadLaw.Uniform;
        double r = design.Input.ResistorTolerance.Fraction, c = design.Input.CapacitorTolerance.Fraction;
        ActiveResistor = Add("input.series-resistor (active)", law, 1 - r, 1 + r);
        ReferenceResistor = Add("input.series-resistor (reference)", law, 1 - r, 1 + r);
        Buffers = [.. new[] { ("active", design.Electrodes.ActiveBuffer), ("reference", design.Electrodes.ReferenceBuffer) }.Where(one =>
            one.Item2 is not null).Select(one => AddBuffer(one.Item1, one.Item2!, law, r))];
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

        if (design.Electrodes.Ground is not null)
        {
            double tolerance = design.GroundDrive.ResistorTolerance.Fraction;
            GroundResistor = Add(DesignKeys.GroundDrive.SeriesResistor, law, 1 - tolerance, 1 + tolerance);
        }

        _stageOpAmps = new OpAmpParts[design.Stages.Count];
        for (int i = 0; i < design.Stages.Count; i++)
        {
            _stageOpAmps[i] = AddStage(i, design.Stages[i], law);
        }

        DifferentialAmplifier amplifier = design.Amplifier;
        PartRanges own = amplifier.Ranges;
        double decibels = Math.Pow(10, ranges.Cmrr / 20);
        Cmrr = own.Of("cmrr") is { } cmrr
            ? Add(DesignKeys.Amplifier.Cmrr, SpreadLaw.LogUniform, Math.Pow(10, (cmrr.Low - amplifier.Cmrr.Value) / 20),
                Math.Pow(10, (cmrr.High - amplifier.Cmrr.Value) / 20), ranged: true)
            : Add(DesignKeys.Amplifier.Cmrr, SpreadLaw.LogUniform, 1 / decibels, decibels);
        Gain = Ranged("amplifier.", "gain", own, amplifier.Gain, otherwise: new("", SpreadLaw.Uniform, 1 - ranges.Gain, 1 + ranges.Gain));
        Noise = Ranged("amplifier.", "input-noise", own, amplifier.InputNoise.VoltsPerRootHertz,
            otherwise: new("", SpreadLaw.Uniform, 1 - ranges.Noise, 1 + ranges.Noise));
        OutputNoise = Ranged("amplifier.", "output-noise", own, amplifier.OutputNoise.VoltsPerRootHertz) is var output and >= 0
            ? output
            : Noise;
        CurrentNoise = Ranged("amplifier.", "current-noise", own, amplifier.CurrentNoise.AmperesPerRootHertz);
        BiasCurrent = Ranged("amplifier.", "bias-current", own, amplifier.BiasCurrent.Amperes, fromZero: true);
        OffsetVoltage = Ranged("amplifier.", "offset-voltage", own, amplifier.OffsetVoltage.Volts, fromZero: true);
        AddElectrodes(ranges);
        AddMains(ranges);
        ConverterNoise = Ranged("converter.", "noise", design.Converter.Ranges, design.Converter.NoiseVolts);
        FullScale = Ranged("converter.", "full-scale", design.Converter.Ranges, design.Converter.FullScale.Volts);

        // Behind all others, so that a seed gives these the values that it gave before there was one for each lead.
        AddReferenceLead();
        Place(SpreadPlace.Electrodes, [ActiveElectrode, ReferenceElectrode, GroundElectrode, .. Excess, ElectrodeOffset]);
        Place(SpreadPlace.Leads, [ActiveLeadToMains, ReferenceLeadToMains, LoopArea]);
        Place(SpreadPlace.Surroundings, [BodyToMains, BodyToEarth, AmplifierToEarth, AmplifierToMains, MainsVoltage, Field]);

        void Place(SpreadPlace place, IEnumerable<int> parts)
        {
            foreach (int part in parts.Where(part => 0 <= part))
            {
                _parts[part] = _parts[part] with { Place = place };
            }
        }

        void AddReferenceLead()
        {
            SpreadPart active = _parts[ActiveLeadToMains];
            _parts.Add(active with { Key = DesignKeys.Mains.LeadToMains + " (reference)" });
            ReferenceLeadToMains = _parts.Count - 1;
        }

        void AddElectrodes(SpreadRanges ranges)
        {
            ElectrodeSet set = design.Electrodes;
            double half = ranges.Electrodes ? set.EffectiveMismatch / 2 : 0;
            ActiveElectrode = Electrode("active", set.Active, half);
            ReferenceElectrode = Electrode("reference", set.Reference, half);
            GroundElectrode = set.Ground is { } ground ? Electrode("ground", ground, half) : -1;
            Excess = [Density("active", set.Active), Density("reference", set.Reference), set.Ground is { } third
                ? Density("ground", third)
                : -1];
            ElectrodeOffset = Ranged("electrodes.", "offset", set.Ranges, set.Offset.Volts, fromZero: true);
        }

        void AddMains(SpreadRanges ranges)
        {
            Mains mains = design.Mains;
            double factor = ranges.Surroundings;
            BodyToMains = Stray("body-to-mains", mains.BodyToMains);
            BodyToEarth = Stray("body-to-earth", mains.BodyToEarth);
            AmplifierToEarth = Stray("amplifier-to-earth", mains.AmplifierToEarth);
            AmplifierToMains = Stray("amplifier-to-mains", mains.AmplifierToMains);
            ActiveLeadToMains = Stray("lead-to-mains", mains.LeadToMains, " (active)");
            MainsVoltage = Ranged("mains.", "voltage", mains.Ranges, mains.Voltage.Volts,
                otherwise: new("", SpreadLaw.Uniform, 1 - ranges.MainsVoltage, 1 + ranges.MainsVoltage));
            Field = Ranged("mains.", "field", mains.Ranges, mains.Field.Teslas);
            LoopArea = Ranged("mains.", "loop-area", mains.Ranges, mains.LoopArea.SquareMetres);

            int Stray(string key, Capacitance nominal, string which = "") =>
                Ranged("mains.", key, mains.Ranges, nominal.Farads, otherwise: new("", SpreadLaw.LogUniform, 1 / factor, factor)) is var at
                && 0 <= at && which.Length > 0
                    ? Named(at, which)
                    : at;
        }

        int Named(int at, string which)
        {
            _parts[at] = _parts[at] with { Key = _parts[at].Key + which };
            return at;
        }

        int Electrode(string which, Electrode electrode, double half)
        {
            string key = $"electrodes.{which}";
            int ranged = Ranged(key + ".", "contact-resistance", electrode.Ranges, electrode.ContactResistance.Ohms);
            if (ranged < 0)
            {
                return Add(key, SpreadLaw.Uniform, 1 - half, 1 + half);
            }

            // An electrode of no impedance at all is a short circuit, not a division by zero.
            _parts[ranged] = _parts[ranged] with { Low = Math.Max(LeastElectrode, _parts[ranged].Low) };
            return ranged;
        }

        int Density(string which, Electrode electrode) =>
            Ranged($"electrodes.{which}.", "excess-density", electrode.Ranges, electrode.ExcessNoise.VoltsSquaredPerHertz);
    }

    /// <summary>Numbers of an op-amp's drawn values; −1 for what is not drawn.</summary>
    internal sealed record OpAmpParts(int VoltageNoise, int CurrentNoise, int OffsetVoltage, int BiasCurrent);

    /// <summary>Numbers of what is drawn of a buffer at an electrode.</summary>
    internal sealed record BufferParts(int SkinResistor, OpAmpParts OpAmp);

    public IReadOnlyList<SpreadPart> Parts => _parts;

    /// <summary>What is tied to what, a sentence each.</summary>
    public IReadOnlyList<string> Ties =>
    [
        "one draw scales each electrode's whole impedance: its resistances are multiplied and its capacitances divided by it, so that its time constants stay; more contact resistance goes with less contact capacitance",
        "each lead's coupling to the mains is drawn separately",
        .. OutputNoise == Noise ? (string[])["the amplifier's input and output noise share one draw"] : [],
        .. 0 <= FullScale && _design.Converter.Lsb is null ? (string[])["the converter's step follows its full scale"] : [],
        "all mains harmonics follow the draws of mains voltage, field and couplings; all channels share the draws of one",
        "everything else is drawn independently",
    ];

    /// <summary>Resistors and capacitors of the stages: the stage's number, the part's key and its number in <see cref="Parts"/>.</summary>
    public IReadOnlyList<(int Stage, string Part, int Index)> StageParts => _stageParts;

    /// <summary>The stages' op-amps; all −1 for a passive section.</summary>
    public IReadOnlyList<OpAmpParts> StageOpAmps => _stageOpAmps;

    /// <summary>The buffers that are there, active before reference.</summary>
    public IReadOnlyList<BufferParts> Buffers { get; }

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

    /// <summary>The same part as <see cref="Noise"/> unless it has a range of its own.</summary>
    public int OutputNoise { get; }

    public int CurrentNoise { get; }

    public int BiasCurrent { get; }

    public int OffsetVoltage { get; }

    public int ActiveElectrode { get; private set; }

    public int ReferenceElectrode { get; private set; }

    public int GroundElectrode { get; private set; } = -1;

    /// <summary>Excess noise power of the active, the reference and the ground electrode.</summary>
    public IReadOnlyList<int> Excess { get; private set; } = [];

    public int ElectrodeOffset { get; private set; }

    public int BodyToMains { get; private set; }

    public int BodyToEarth { get; private set; }

    public int AmplifierToEarth { get; private set; }

    public int AmplifierToMains { get; private set; }

    /// <summary>What the active lead couples to the mains; each lead is drawn by itself.</summary>
    public int ActiveLeadToMains { get; private set; }

    public int ReferenceLeadToMains { get; private set; }

    public int MainsVoltage { get; private set; }

    public int Field { get; private set; }

    public int LoopArea { get; private set; }

    public int ConverterNoise { get; }

    public int FullScale { get; }

    /// <summary>What the factor of a part that is nominally zero is multiplied by to give its value: the larger end of its range.</summary>
    public double FromZero(int part) => _fromZero[part];

    /// <summary>The number of a stage's resistor or capacitor, or of its op-amp's offset voltage or bias current; −1 for what is not
    /// drawn.</summary>
    public int OfStage(int stage, string part) => part switch
    {
        "opamp.offset-voltage" => _stageOpAmps[stage].OffsetVoltage,
        "opamp.bias-current" => _stageOpAmps[stage].BiasCurrent,
        _ => _stageParts.FindIndex(one => one.Stage == stage && string.Equals(one.Part, part, StringComparison.Ordinal)) is var at and >= 0
            ? _stageParts[at].Index
            : -1,
    };

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
            ActiveLeadFactor = At(factor, ActiveLeadToMains),
            ReferenceLeadFactor = At(factor, ReferenceLeadToMains),
        };
        DifferentialAmplifier amplifier = _design.Amplifier;
        Mains mains = _design.Mains;
        ElectrodeSet electrodes = _design.Electrodes;
        AnalogDigitalConverter converter = _design.Converter;
        int buffer = 0;
        Design design = _design with
        {
            GroundDrive = _design.GroundDrive with { SeriesResistor = Times(_design.GroundDrive.SeriesResistor,
                At(factor, GroundResistor)) },
            Stages = Stages(factor),
            Amplifier = amplifier with
            {
                Gain = amplifier.Gain * At(factor, Gain),
                Cmrr = Decibels.FromVoltageRatio(amplifier.Cmrr.VoltageRatio * At(factor, Cmrr)),
                InputNoise = VoltageNoiseDensity.FromVoltsPerRootHertz(amplifier.InputNoise.VoltsPerRootHertz * At(factor, Noise)),
                OutputNoise = VoltageNoiseDensity.FromVoltsPerRootHertz(amplifier.OutputNoise.VoltsPerRootHertz * At(factor, OutputNoise)),
                CurrentNoise = CurrentNoiseDensity.FromAmperesPerRootHertz(amplifier.CurrentNoise.AmperesPerRootHertz * At(factor,
                    CurrentNoise)),
                BiasCurrent = Current.FromAmperes(Value(factor, BiasCurrent, amplifier.BiasCurrent.Amperes)),
                OffsetVoltage = Voltage.FromVolts(Value(factor, OffsetVoltage, amplifier.OffsetVoltage.Volts)),
            },
            Electrodes = electrodes with
            {
                Active = Excessive(electrodes.Active, At(factor, Excess[0])),
                Reference = Excessive(electrodes.Reference, At(factor, Excess[1])),
                Ground = electrodes.Ground is { } ground ? Excessive(ground, At(factor, Excess[2])) : null,
                Offset = Voltage.FromVolts(Value(factor, ElectrodeOffset, electrodes.Offset.Volts)),
                ActiveBuffer = electrodes.ActiveBuffer is { } active ? Buffer(active, Buffers[buffer++], factor) : null,
                ReferenceBuffer = electrodes.ReferenceBuffer is { } reference ? Buffer(reference, Buffers[buffer], factor) : null,
            },
            Mains = mains with
            {
                Voltage = VoltageRms.FromVolts(mains.Voltage.Volts * At(factor, MainsVoltage)),
                BodyToMains = Times(mains.BodyToMains, At(factor, BodyToMains)),
                BodyToEarth = Times(mains.BodyToEarth, At(factor, BodyToEarth)),
                AmplifierToEarth = Times(mains.AmplifierToEarth, At(factor, AmplifierToEarth)),
                AmplifierToMains = Times(mains.AmplifierToMains, At(factor, AmplifierToMains)),
                Field = MagneticFluxDensity.FromTeslas(mains.Field.Teslas * At(factor, Field)),
                LoopArea = Area.FromSquareMetres(mains.LoopArea.SquareMetres * At(factor, LoopArea)),
            },
            Converter = converter with
            {
                Noise = VoltageRms.FromVolts(converter.NoiseVolts * At(factor, ConverterNoise)),
                FullScale = VoltagePeakToPeak.FromVolts(converter.FullScale.Volts * At(factor, FullScale)),
            },
        };
        return (design, built);
    }

    /// <summary>The stages with one build's parts.</summary>
    private Stage[] Stages(ReadOnlySpan<double> factor)
    {
        Stage[] stages = [.. _design.Stages];
        foreach ((int stage, string part, int index) in _stageParts)
        {
            stages[stage] = TopologyCatalogue.Times(stages[stage], part, factor[index]);
        }

        for (int i = 0; i < stages.Length; i++)
        {
            if (stages[i].FittedOpAmp is { } opAmp)
            {
                stages[i] = stages[i].WithOpAmp(OpAmp(opAmp, _stageOpAmps[i], factor));
            }
        }

        return stages;
    }

    private static double At(ReadOnlySpan<double> factor, int index) => index < 0 ? 1 : factor[index];

    private double Value(ReadOnlySpan<double> factor, int index, double nominal) =>
        index < 0 ? nominal : factor[index] * (nominal != 0 ? nominal : _fromZero[index]);

    private static Resistance Times(Resistance r, double factor) => Resistance.FromOhms(r.Ohms * factor);

    private static Capacitance Times(Capacitance c, double factor) => Capacitance.FromFarads(c.Farads * factor);

    private static Electrode Excessive(Electrode electrode, double factor) =>
        electrode with { ExcessNoise = ExcessNoise.FromVoltsSquaredPerHertz(electrode.ExcessNoise.VoltsSquaredPerHertz * factor) };

    private ElectrodeBuffer Buffer(ElectrodeBuffer buffer, BufferParts parts, ReadOnlySpan<double> factor) =>
        buffer with { SkinResistor = Times(buffer.SkinResistor, At(factor, parts.SkinResistor)),
            OpAmp = OpAmp(buffer.OpAmp, parts.OpAmp, factor) };

    private OpAmp OpAmp(OpAmp opAmp, OpAmpParts parts, ReadOnlySpan<double> factor) => opAmp with
    {
        VoltageNoise = VoltageNoiseDensity.FromVoltsPerRootHertz(opAmp.VoltageNoise.VoltsPerRootHertz * At(factor, parts.VoltageNoise)),
        CurrentNoise = CurrentNoiseDensity.FromAmperesPerRootHertz(opAmp.CurrentNoise.AmperesPerRootHertz * At(factor, parts.CurrentNoise)),
        OffsetVoltage = Voltage.FromVolts(Value(factor, parts.OffsetVoltage, opAmp.OffsetVoltage.Volts)),
        BiasCurrent = Current.FromAmperes(Value(factor, parts.BiasCurrent, opAmp.BiasCurrent.Amperes)),
    };

    private int Add(string key, SpreadLaw law, double low, double high, double? fromZero = null, bool ranged = false)
    {
        _parts.Add(new SpreadPart(key, law, low, high) { Nominal = fromZero is null ? 1 : 0, IsRanged = ranged });
        if (fromZero is { } scale)
        {
            _fromZero.Add(_parts.Count - 1, scale);
        }

        return _parts.Count - 1;
    }

    /// <summary>A value drawn within its range; without one as <paramref name="otherwise"/> says, or not at all (−1).</summary>
    private int Ranged(string owner, string field, PartRanges ranges, double nominal, bool fromZero = false, SpreadPart? otherwise = null)
    {
        if (ranges.Of(field) is { } range && (nominal != 0 || fromZero))
        {
            double scale = nominal != 0 ? nominal : Math.Max(Math.Abs(range.Low), Math.Abs(range.High));
            if (scale == 0)
            {
                return -1;
            }

            double low = Math.Min(range.Low / scale, range.High / scale), high = Math.Max(range.Low / scale, range.High / scale);
            return Add(owner + field, 0 < low && 2 * low <= high
                ? SpreadLaw.LogUniform
                : SpreadLaw.Uniform, low, high, nominal == 0
                ? scale
                : null, ranged: true);
        }

        return otherwise is null ? -1 : Add(owner + field, otherwise.Law, otherwise.Low, otherwise.High);
    }

    private BufferParts AddBuffer(string which, ElectrodeBuffer buffer, SpreadLaw law, double tolerance)
    {
        string key = $"electrodes.{which}-buffer";
        int skin = 0 < buffer.SkinResistor.Ohms ? Add(key + ".skin-resistor", law, 1 - tolerance, 1 + tolerance) : -1;
        return new BufferParts(skin, AddOpAmp(key + ".opamp.", buffer.OpAmp));
    }

    private OpAmpParts AddOpAmp(string owner, OpAmp opAmp) => new(
        Ranged(owner, "voltage-noise", opAmp.Ranges, opAmp.VoltageNoise.VoltsPerRootHertz),
        Ranged(owner, "current-noise", opAmp.Ranges, opAmp.CurrentNoise.AmperesPerRootHertz),
        Ranged(owner, "offset-voltage", opAmp.Ranges, opAmp.OffsetVoltage.Volts, fromZero: true),
        Ranged(owner, "bias-current", opAmp.Ranges, opAmp.BiasCurrent.Amperes, fromZero: true));

    /// <summary>Parts in the order in which the stage's circuit has them, then its op-amp's values.</summary>
    private OpAmpParts AddStage(int index, Stage stage, SpreadLaw law)
    {
        string owner = $"stages.{Slug.Of(stage.Name)}.";
        foreach (CircuitPart part in stage.Circuit().Parts)
        {
            _stageParts.Add((index, part.Role, Add(owner + part.Role, law, 1 - part.Tolerance, 1 + part.Tolerance)));
        }

        return stage.FittedOpAmp is { } opAmp ? AddOpAmp(owner + "opamp.", opAmp) : new OpAmpParts(-1, -1, -1, -1);
    }
}
