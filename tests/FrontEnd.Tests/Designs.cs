using FrontEnd.Amplifier;
using FrontEnd.Catalogue;
using FrontEnd.Circuits;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Electrodes;
using FrontEnd.Quantities;
using FrontEnd.Topologies;

namespace FrontEnd.Tests;

/// <summary>Designs for the tests of the core, which reads no files, and legal random variations of them.</summary>
internal static class Designs
{
    /// <summary>Dry electrodes, driven ground, ac-coupled second stage, Sallen–Key, successive approximation.</summary>
    public static Design Dry { get; } = new()
    {
        Name = "dry",
        Channels = 2,
        Electrodes = new ElectrodeSet
        {
            Active = new Electrode
            {
                SeriesResistance = Resistance.FromKilohms(1), ContactResistance = Resistance.FromKilohms(620), ContactCapacitance = Capacitance.FromNanofarads(4.7),
                ExcessNoise = ExcessNoise.FromVoltsSquaredPerHertz(2.5e-12),
            },
            Reference = new Electrode { SeriesResistance = Resistance.FromOhms(500), ExcessNoise = ExcessNoise.FromVoltsSquaredPerHertz(4e-13) },
            Mismatch = Ratio.FromFraction(0.2),
        },
        Input = new InputNetwork { SeriesResistor = Resistance.FromKilohms(100) },
        GroundDrive = new GroundDrive { Kind = GroundKind.Driven, SeriesResistor = Resistance.FromKilohms(390), AveragingUnlimited = true },
        Stages =
        [
            new GainStage
            {
                Name = "gain 2", CouplingCapacitor = Capacitance.FromMicrofarads(1), FeedbackResistor = Resistance.FromKilohms(100), GroundResistor = Resistance.FromKilohms(1),
                FeedbackCapacitor = Capacitance.FromNanofarads(10),
            },
            new SallenKeySection { Name = "anti-alias 1" },
        ],
        Converter = new AnalogDigitalConverter { Rate = Frequency.FromHertz(500) },
        Digital = [new DigitalHighPass { Name = "high-pass" }, new DigitalNotch { Name = "notch", Centre = Frequency.FromHertz(50) }],
    };

    /// <summary>Gel electrodes, passive ground, delta-sigma.</summary>
    public static Design Gel { get; } = new()
    {
        Name = "gel",
        Channels = 8,
        Electrodes = new ElectrodeSet
        {
            Active = new Electrode { ContactResistance = Resistance.FromKilohms(8), ContactCapacitance = Capacitance.FromNanofarads(100) },
            Reference = new Electrode { ContactResistance = Resistance.FromKilohms(8), ContactCapacitance = Capacitance.FromNanofarads(100) },
        },
        Input = new InputNetwork { SeriesResistor = Resistance.FromKilohms(68), ShuntCapacitor = Capacitance.FromPicofarads(100) },
        GroundDrive = new GroundDrive { SeriesResistor = Resistance.FromKilohms(100) },
        Amplifier = new DifferentialAmplifier { Gain = 4 },
        Stages = [new RcSection { Name = "anti-alias 1", R = Resistance.FromKilohms(5), C = Capacitance.FromNanofarads(4.7), OpAmp = null }],
        Converter = new AnalogDigitalConverter { Kind = ConverterKind.DeltaSigma, Rate = Frequency.FromHertz(250), Oversampling = 512, Bits = 24, FullScale = VoltagePeakToPeak.FromVolts(9), Noise = VoltageRms.FromMicrovolts(4.5) },
        Digital = [new DigitalHighPass { Name = "high-pass" }],
    };

    /// <summary>Saline, earthed, bias resistors, multiple feedback and a follower.</summary>
    public static Design Earthed { get; } = Dry with
    {
        Name = "earthed",
        Mains = new Interference.Mains { AmplifierToEarth = Capacitance.FromMicrofarads(1) },
        Input = Dry.Input with { BiasResistor = Resistance.FromMegohms(100) },
        Stages =
        [
            new MultipleFeedbackSection { Name = "anti-alias 1" },
            new RcSection { Name = "anti-alias 2", R = Resistance.FromKilohms(10), C = Capacitance.FromNanofarads(100) },
        ],
    };

    /// <summary>Every circuit that the others lack: an analogue notch, an equal-component section, op-amps with an output resistance.</summary>
    public static Design Shaped { get; } = Dry with
    {
        Name = "shaped",
        Stages =
        [
            new TwinTNotch { Name = "analogue notch 1", OpAmp = Resistive },
            new SallenKeySection
            {
                Name = "anti-alias 1", C1 = Capacitance.FromNanofarads(100), C2 = Capacitance.FromNanofarads(100), FeedbackResistor = Resistance.FromKilohms(5.9), GroundResistor = Resistance.FromKilohms(10), OpAmp = Resistive,
            },
            new MultipleFeedbackSection { Name = "anti-alias 2", OpAmp = Resistive },
        ],
    };

    private static OpAmp Resistive => OpAmp.MicropowerCmos with { OutputResistance = Resistance.FromKilohms(2), OffsetVoltage = Voltage.FromMillivolts(1), BiasCurrent = Current.FromNanoamperes(1) };

    public static IReadOnlyList<Design> All => [Dry, Gel, Earthed, Shaped];

    /// <summary>A design in which some numeric fields are multiplied by factors between 1/30 and 30, kept inside their legal ranges.</summary>
    public static Design Varied(int seed, int changes)
    {
        var random = new Random(seed);
        Design design = All[random.Next(All.Count)];
        for (int i = 0; i < changes; i++)
        {
            Fields.Field<Design>[] fields = [.. DesignFields.Numeric(design)];
            Fields.Field<Design> field = fields[random.Next(fields.Length)];
            double value = (field.SiValue(design) ?? 0) * Math.Pow(30, (2 * random.NextDouble()) - 1);
            if (field.Range is not { } range || range.Contains(value))
            {
                design = field.WithSiValue(design, value);
            }
        }

        return design;
    }
}
