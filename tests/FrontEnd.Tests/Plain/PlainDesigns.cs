using FrontEnd.Amplifier;
using FrontEnd.Circuits;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Electrodes;
using FrontEnd.Filters;
using FrontEnd.Interference;
using FrontEnd.Quantities;
using FrontEnd.Topologies;

namespace FrontEnd.Tests.Plain;

/// <summary>Legal designs drawn for the plain second way: every block with all its options and values over decades, but filters that filter and sections that do not oscillate.</summary>
internal sealed class PlainDesigns
{
    private readonly Random _random;

    private PlainDesigns(int seed) => _random = new Random(seed);

    public static Design Draw(int seed) => new PlainDesigns(seed).Draw($"drawn {seed}");

    private double Log(double low, double high) => low * Math.Pow(high / low, _random.NextDouble());

    private bool In(int share) => _random.Next(share) == 0;

    private T Any<T>(params T[] all) => all[_random.Next(all.Length)];

    private double OrZero(double value) => In(3) ? 0 : value;

    private Design Draw(string name)
    {
        double rate = Any(200.0, 250, 256, 500, 512, 1000, 2000), half = rate / 2, low = Any(0.1, 0.3, 0.5, 1, 3, 8), high = Math.Min(Any(30.0, 40, 70, 100, 200), half * 0.9);
        int channels = Any(1, 2, 3, 4, 8);
        double lowest = Any(2.7, 3.0, 3.3, 5.0);
        Design design = new()
        {
            Name = name,
            Channels = channels,
            Band = new Band("design", Frequency.FromHertz(low), Frequency.FromHertz(high)),
            SmallestSignal = VoltageRms.FromVolts(Log(1e-7, 2e-6)),
            LargestSignal = Voltage.FromVolts(Log(1e-4, 5e-3)),
            BoardTemperature = Temperature.FromKelvins(250 + (80 * _random.NextDouble())),
            SkinTemperature = Temperature.FromKelvins(290 + (25 * _random.NextDouble())),
            Mains = MainsAround(),
            Electrodes = Electrodes(),
            Amplifier = Amplifier(),
            GroundDrive = Ground(),
            Converter = Converter(rate, lowest),
            Supply = Supply(lowest),
            PacketTime = In(2) ? Duration.FromSeconds(0.02) : null,
            ContactCheck = In(2) ? null : new ContactCheck { Current = Current.FromAmperes(Log(1e-9, 3e-8)), Frequency = Frequency.FromHertz(Any(7.8125, 31.25, half / 4)), OnWhileRecording = In(2) },
            Interferers = [Interferer.Muscle, Tone()],
            Montage = new Montage { Kind = channels < 2 ? MontageKind.Referential : Any(Enum.GetValues<MontageKind>()), ReferenceBuffered = In(4) },
            Bands =
            [
                new Band("delta", Frequency.FromHertz(0.5), Frequency.FromHertz(4)) { EvokedAmplitude = In(2) ? Voltage.FromVolts(Log(1e-7, 5e-6)) : null },
                new Band("alpha", Frequency.FromHertz(8), Frequency.FromHertz(13)) { SmallestSignal = In(2) ? VoltageRms.FromVolts(Log(1e-7, 1e-5)) : null },
            ],
        };
        return design with { Input = Input(design), Stages = Stages(rate), Digital = Digital(rate, high) };
    }

    private Interferer Tone() => Frequency.FromHertz(Log(5, 5000)) is var at ? new Interferer("tone", at, at, VoltageRms.FromVolts(1e-4)) : Interferer.Muscle;

    private Mains MainsAround() => new()
    {
        Frequency = Frequency.FromHertz(Any(50.0, 60)),
        Voltage = VoltageRms.FromVolts(Any(100.0, 120, 230)),
        BodyToMains = Capacitance.FromFarads(Log(3e-14, 1e-11)),
        BodyToEarth = Capacitance.FromFarads(Log(5e-11, 1e-9)),
        AmplifierToEarth = Capacitance.FromFarads(In(4) ? 1e-6 : Log(1e-12, 2e-10)),
        AmplifierToMains = Capacitance.FromFarads(OrZero(Log(1e-14, 1e-12))),
        LeadToMains = Capacitance.FromFarads(OrZero(Log(1e-16, 1e-13))),
        Field = MagneticFluxDensity.FromTeslas(OrZero(Log(1e-8, 1e-6))),
        LoopArea = Area.FromSquareMetres(Log(1e-4, 1e-2)),
        Harmonics = Any<IReadOnlyList<double>>([1.0], [1, 0.01, 0.03], Mains.StandardHarmonics),
        FieldHarmonics = In(3) ? [1, 0.1, 0.3, 0.05] : null,
        Deviation = Ratio.FromFraction(Any(0, 0.001, 0.004, 0.01)),
    };

    private Electrode Electrode()
    {
        bool dry = In(2);
        double rd = dry ? Log(1e5, 2e6) : Log(1e3, 5e4), tau = Log(1e-4, 5e-3);
        Electrode one = new()
        {
            SeriesResistance = Resistance.FromOhms(OrZero(Log(50, 2000))),
            ContactResistance = Resistance.FromOhms(rd),
            ContactCapacitance = Capacitance.FromFarads(tau / rd),
            ExcessNoise = In(2) ? default : ExcessNoise.FromVoltsSquaredPerHertz(Log(1e-15, 1e-11)),
            ExcessSlope = Any(0.5, 1, 1.5, 2),
        };
        double second = Log(300, 2e4);
        return In(2) ? one : one with { SecondResistance = Resistance.FromOhms(second), SecondCapacitance = Capacitance.FromFarads(Log(1e-5, 1e-3) / second) };
    }

    private OpAmp OpAmp(double least = 3e4) => new()
    {
        DcGain = Log(3e4, 1e8),
        GainBandwidth = Frequency.FromHertz(Log(least, 1e7)),
        OutputResistance = Resistance.FromOhms(OrZero(Log(10, 1000))),
        VoltageNoise = VoltageNoiseDensity.FromVoltsPerRootHertz(Log(3e-9, 1e-7)),
        NoiseCorner = Frequency.FromHertz(OrZero(Log(0.1, 50))),
        CurrentNoise = CurrentNoiseDensity.FromAmperesPerRootHertz(Log(1e-16, 1e-12)),
        CurrentNoiseCorner = Frequency.FromHertz(OrZero(Log(0.1, 200))),
        OffsetVoltage = Voltage.FromVolts(OrZero(Log(1e-5, 1e-3))),
        BiasCurrent = Current.FromAmperes(OrZero(Log(1e-12, 1e-9))),
        OutputMargin = Voltage.FromVolts(Any(0.05, 0.1)),
        SupplyCurrent = Current.FromAmperes(Log(1e-6, 1e-3)),
    };

    private ElectrodeBuffer Buffer() => new()
    {
        InputResistance = Resistance.FromOhms(Log(1e10, 1e12)),
        InputCapacitance = Capacitance.FromFarads(Log(1e-12, 1e-11)),
        SkinResistor = Resistance.FromOhms(OrZero(Log(1e4, 2e5))),
        OutputResistance = Resistance.FromOhms(OrZero(100)),
        OpAmp = OpAmp(1e5),
    };

    private ElectrodeSet Electrodes() => new()
    {
        Active = Electrode(),
        Reference = Electrode(),
        Ground = In(5) ? null : Electrode(),
        Mismatch = In(3) ? null : Ratio.FromFraction(1.5 * _random.NextDouble()),
        Offset = Voltage.FromVolts(Any(0, 0.05, 0.15, 0.3)),
        ActiveBuffer = In(3) ? Buffer() : null,
        ReferenceBuffer = In(3) ? Buffer() : null,
    };

    private InputNetwork Input(Design design) => new()
    {
        LeadToCommon = Capacitance.FromFarads(OrZero(Log(1e-12, 2e-10))),
        DrivenShield = Ratio.FromFraction(In(3) ? 0.9 * _random.NextDouble() : 0),
        SeriesResistor = Resistance.FromOhms(OrZero(Log(1e3, 2e5))),
        ResistorTolerance = Ratio.FromFraction(Any(0, 0.01, 0.05)),
        ShuntCapacitor = Capacitance.FromFarads(OrZero(Log(1e-11, 1e-9))),
        CapacitorTolerance = Ratio.FromFraction(Any(0, 0.05, 0.1)),
        DifferentialCapacitor = Capacitance.FromFarads(OrZero(Log(1e-11, 1e-9))),
        BiasResistor = design.Electrodes.Ground is null || In(3) ? Resistance.FromOhms(Log(1e7, 1e9)) : null,
        ReferenceInputs = In(3) ? 1 + _random.Next(design.Channels) : null,
    };

    private DifferentialAmplifier Amplifier() => new()
    {
        Gain = Any(2, 3.5, 5, 12, 24),
        Bandwidth = Frequency.FromHertz(Log(1e3, 1e6)),
        InputNoise = VoltageNoiseDensity.FromVoltsPerRootHertz(Log(5e-9, 1e-7)),
        OutputNoise = VoltageNoiseDensity.FromVoltsPerRootHertz(Log(5e-8, 1e-6)),
        NoiseCorner = Frequency.FromHertz(OrZero(Log(0.1, 30))),
        CurrentNoise = CurrentNoiseDensity.FromAmperesPerRootHertz(Log(1e-15, 1e-12)),
        CurrentNoiseCorner = Frequency.FromHertz(OrZero(Log(0.1, 50))),
        CommonModeResistance = Resistance.FromOhms(Log(1e8, 1e12)),
        CommonModeCapacitance = Capacitance.FromFarads(Log(1e-12, 3e-11)),
        DifferentialResistance = Resistance.FromOhms(Log(1e8, 1e12)),
        DifferentialCapacitance = Capacitance.FromFarads(Log(1e-12, 1e-11)),
        Cmrr = Decibels.FromStated(80 + (50 * _random.NextDouble())),
        CmrrCorner = Frequency.FromHertz(Log(30, 1000)),
        BiasCurrent = Current.FromAmperes(OrZero(Log(1e-13, 1e-9))),
        OffsetVoltage = Voltage.FromVolts(OrZero(Log(1e-5, 1e-3))),
        OutputMargin = Voltage.FromVolts(0.1),
        InnerMargin = Voltage.FromVolts(Any(0.1, 0.15)),
        SupplyRejection = Decibels.FromStated(Any(60.0, 80, 100)),
        SupplyCurrent = Current.FromAmperes(Log(2e-5, 1e-3)),
    };

    private GroundDrive Ground() => new()
    {
        Kind = Any(Enum.GetValues<GroundKind>()),
        SeriesResistor = Resistance.FromOhms(In(4) ? 0 : Log(1e3, 1e6)),
        DcGain = Log(50, 1e6),
        UnityGainFrequency = Frequency.FromHertz(Log(300, 1e5)),
        AveragingBandwidth = In(3) ? Frequency.FromHertz(Log(3e3, 1e5)) : null,
        AveragingUnlimited = In(2),
    };

    private AnalogDigitalConverter Converter(double rate, double lowest)
    {
        bool deltaSigma = In(2);
        double full = Any(2.4, 3.0, 4.096, lowest, 9.0);
        return new()
        {
            Kind = deltaSigma ? ConverterKind.DeltaSigma : ConverterKind.SuccessiveApproximation,
            Rate = Frequency.FromHertz(rate),
            Bits = Any(12, 16, 24),
            Lsb = null,
            FullScale = VoltagePeakToPeak.FromVolts(full),
            Noise = In(3) ? null : VoltageRms.FromVolts(OrZero(Log(1e-6, 1e-3))),
            Oversampling = Any(16, 64, 256, 512),
            SincOrder = Any(2, 3, 4, 5),
            Skew = Duration.FromSeconds(OrZero(1e-5)),
            ReferenceNoise = In(2) ? VoltageRms.FromVolts(5e-6) : null,
            ReferenceVoltage = In(2) ? Voltage.FromVolts(2.5) : null,
        };
    }

    private Supply Supply(double lowest) => new()
    {
        Lowest = Voltage.FromVolts(lowest),
        Highest = Voltage.FromVolts(lowest + Any(0.3, 2, 4)),
        MidRail = In(4) ? Voltage.FromVolts(lowest * 0.45) : null,
        BatteryCapacity = In(2) ? Charge.FromCoulombs(1800) : null,
        Ripple = In(2) ? VoltageRms.FromVolts(0.02) : null,
        RippleFrequency = Frequency.FromHertz(Any(33.0, 80, 777)),
        MidRailNoise = In(2) ? VoltageRms.FromVolts(1e-5) : null,
    };

    private List<Stage> Stages(double rate)
    {
        List<Stage> stages = [];
        if (In(2))
        {
            stages.Add(Gain());
        }

        if (In(4))
        {
            stages.Add(Notch() with { Name = "analogue notch 1" });
        }

        int sections = _random.Next(3);
        for (int i = 1; i <= sections; i++)
        {
            stages.Add(Section(Log(rate / 8, rate), i == sections) with { Name = $"anti-alias {i}" });
        }

        return [.. stages];
    }

    private GainStage Gain()
    {
        bool follower = In(5);
        double rg = Log(300, 3e3), coupling = Log(3e-7, 5e-6);
        return new GainStage
        {
            Name = "gain 2",
            CouplingCapacitor = In(3) ? null : Capacitance.FromFarads(coupling),
            CouplingResistor = Resistance.FromOhms(Log(0.2, 3) / coupling),
            GroundResistor = follower ? null : Resistance.FromOhms(rg),
            FeedbackResistor = Resistance.FromOhms(follower ? 0 : rg * Log(2, 150)),
            FeedbackCapacitor = follower || In(2) ? null : Capacitance.FromFarads(Log(1e-11, 1e-9)),
            OpAmp = OpAmp(2e5),
        };
    }

    private Resistance Near(double ohms) => Resistance.FromOhms(ohms * (0.98 + (0.04 * _random.NextDouble())));

    private Capacitance NearFarads(double farads) => Capacitance.FromFarads(farads * (0.98 + (0.04 * _random.NextDouble())));

    private Stage Notch()
    {
        double f0 = Any(50.0, 60), c = Log(3e-8, 3e-7), r = 1 / (2 * Math.PI * f0 * c);
        if (In(2))
        {
            double gain = 20e3;
            return new StateVariableNotch { Ra = Near(r), Rb = Near(r), Ca = NearFarads(c), Cb = NearFarads(c), R2 = Near(Log(2e4, 2e5)), R3 = Near(gain), R4 = Near(gain), OpAmp = OpAmp(1e6) };
        }

        return new TwinTNotch
        {
            R1 = Near(r), R2 = Near(r), R3 = Near(r / 2), C1 = NearFarads(c), C2 = NearFarads(c), C3 = NearFarads(2 * c),
            FeedbackResistor = Resistance.FromOhms(Any(6e3, 9e3, 16e3)), GroundResistor = In(4) ? null : Resistance.FromKilohms(20), OpAmp = OpAmp(1e6),
        };
    }

    private Stage Section(double corner, bool last)
    {
        double q = 0.5 + (1.2 * _random.NextDouble()), r = Log(3e3, 1e5), w = 2 * Math.PI * corner, c = 1 / (w * r);
        switch (_random.Next(last ? 5 : 4))
        {
            case 0:
                return new RcSection { R = Near(r), C = NearFarads(c), OpAmp = OpAmp(1e5) };
            case 1:
                return new SallenKeySection { R1 = Near(r), R2 = Near(r * 1.3), C1 = NearFarads(2 * q * c), C2 = NearFarads(c / (2 * q)), OpAmp = OpAmp(1e5) };
            case 2:
                return new SallenKeySection { R1 = Near(r), R2 = Near(r), C1 = NearFarads(c), C2 = NearFarads(c), FeedbackResistor = Resistance.FromOhms(1e4 * (2 - (1 / q)) * 0.9), GroundResistor = Resistance.FromKilohms(10), OpAmp = OpAmp(1e5) };
            case 3:
                return new MultipleFeedbackSection { R1 = Near(r), R2 = Near(r / 3), R3 = Near(r * Any(1, 2.5)), C1 = NearFarads(3 * q * c), C2 = NearFarads(c / (3 * q)), OpAmp = OpAmp(1e5) };
            default:
                return new RcSection { R = Near(r), C = NearFarads(c), OpAmp = null };
        }
    }

    private List<DigitalStage> Digital(double rate, double high)
    {
        List<DigitalStage> filters = [];
        int count = _random.Next(4);
        for (int i = 1; i <= count; i++)
        {
            FilterFamily family = Any(Enum.GetValues<FilterFamily>());
            double f0 = Any(50.0, 60);
            Frequency low = Frequency.FromHertz(Log(0.2, 3)), upper = Frequency.FromHertz(Log(high * 0.7, rate * 0.45));
            DigitalStage filter = _random.Next(6) switch
            {
                0 => new DigitalHighPass { Corner = low, Order = 1 + _random.Next(4), Family = family },
                1 => new DigitalLowPass { Corner = upper, Order = 1 + _random.Next(6), Family = family },
                2 => new DigitalBandPass { Low = low, High = upper, Order = 1 + _random.Next(3), Family = family },
                3 => new DigitalBandStop { Low = Frequency.FromHertz(f0 * 0.9), High = Frequency.FromHertz(f0 * 1.1), Order = 1 + _random.Next(3), Family = family },
                4 => new DigitalSections { Rows = [Row()] },
                _ => new DigitalNotch { Centre = Frequency.FromHertz(f0), Q = Any(5.0, 10, 30, 100) },
            };
            filters.Add(filter with { Name = $"d{i}" });
        }

        return filters;
    }

    private double[] Row()
    {
        double radius = 0.1 + (0.8 * _random.NextDouble()), angle = Math.PI * _random.NextDouble(), a1 = -2 * radius * Math.Cos(angle), a2 = radius * radius;
        double[] b = Any<double[]>([1, 2, 1], [1, 0, 0.5], [1, -1, 0]);

        // Gain 1 at 0 Hz, or where it has none half of it.
        double at = b.Sum() == 0 ? 2 : b.Sum();
        return [.. b.Select(x => x * (1 + a1 + a2) / at), 1, a1, a2];
    }
}
