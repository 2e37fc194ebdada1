using FrontEnd.Amplifier;
using FrontEnd.AntiAlias;
using FrontEnd.Budgets;
using FrontEnd.Circuits;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Electrodes;
using FrontEnd.Filters;
using FrontEnd.Rates;
using FrontEnd.Topologies;

namespace FrontEnd.Sizing;

/// <summary>The fixed grid that the search walks: it does not depend on any limit, so that a looser limit never takes a candidate
/// away.</summary>
internal sealed class SizingGrid
{
    /// <summary>Gains of the first stage, set by one resistor (common practice, no source).</summary>
    private static readonly double[] FirstGains = [1, 1.5, 2, 2.5, 3, 3.5, 4, 5, 6, 8, 10, 12, 15, 20, 24, 30, 50, 100];

    private static readonly double[] SecondGains = [10, 20, 50, 75, 100, 150, 200, 300, 500, 1000];

    private static readonly SectionKind[] Topologies = [SectionKind.SallenKey, SectionKind.MultipleFeedback];

    /// <summary>The least rate, and how many doublings from the first on that the band allows.</summary>
    private const double LeastRate = 250;

    private const int SarRates = 4, DeltaSigmaRates = 3;

    /// <summary>Below it a delta-sigma converter's noise is no longer that of its card at another rate (common practice, no
    /// source).</summary>
    private const int LeastOversampling = 8;

    /// <summary>What an op-amp's gain-bandwidth product must be above a filter's corner (common practice, no source).</summary>
    private const double BandwidthOverCorner = 200;

    /// <summary>Notches that are put at the mains' harmonics inside the band, where no digital filter is asked for.</summary>
    private const int MostNotches = 8;

    /// <summary>Loss at the band's upper edge that the anti-alias filter is given [dB] (common practice, no source).</summary>
    private const double Droop = 1;

    /// <summary>What rounding of parts may take from the attenuation [dB].</summary>
    private const double RoundingDecibels = 1.5;

    /// <summary>Greatest order tried.</summary>
    public const int MostOrder = 5;

    private readonly SizingRequest _request;
    private readonly Dictionary<int, IReadOnlyList<Stage>?> _filters = [];
    private readonly OpAmp _filterOpAmp;

    public SizingGrid(SizingRequest request)
    {
        _request = request;
        Parts = new FittingParts(request);
        _filterOpAmp = Parts.OpAmps.OrderBy(opAmp => opAmp.GainBandwidth.Hertz < BandwidthOverCorner * request.Fixed.Band.High.Hertz)
            .ThenBy(opAmp => opAmp.SupplyCurrent.Amperes).ThenBy(opAmp => opAmp.BiasCurrent.Amperes).FirstOrDefault() ?? OpAmp.MicropowerCmos;
        for (int order = 2; order <= MostOrder; order++)
        {
            _filters[order] = Realise(order);
        }
    }

    /// <summary>The parts that work on the supply.</summary>
    public FittingParts Parts { get; }

    /// <summary>Ways to tie the ground: passive, and driven slowly and fast. None without a ground electrode.</summary>
    public IReadOnlyList<GroundDrive> Grounds()
    {
        GroundDrive given = _request.Fixed.GroundDrive;
        double tolerance = 1 - given.ResistorTolerance.Fraction;
        Resistance Needed(double limit) =>
            Resistance.FromOhms(PreferredValues.AtLeast(Math.Max(1000, _request.Fixed.Supply.Highest.Volts / limit / tolerance),
                PreferredSeries.E24));
        GroundDrive passive = given with { Kind = GroundKind.Passive, SeriesResistor = Needed(FaultAmperes) };
        if (_request.Fixed.Electrodes.Ground is null)
        {
            return [passive];
        }

        GroundDrive driven = given with { Kind = GroundKind.Driven, SeriesResistor = Needed(DrivenAmperes), DcGain = 5000 };
        return [passive, driven with { UnityGainFrequency = Frequency.FromHertz(300) },
            driven with { UnityGainFrequency = Frequency.FromHertz(2000) }];
    }

    /// <summary>Safety limits are kept at the quoted ones or below: a request may tighten them and not raise them.</summary>
    private double FaultAmperes => Math.Min(TradeConstants.FaultAmperes, _request.Fixed.Requirements.FaultCurrent.Amperes);

    private double DrivenAmperes => Math.Min(TradeConstants.NormalAmperes, _request.Fixed.Requirements.DrivenGroundCurrent.Amperes);

    /// <summary>Everything but amplifier, stages, converter: protection that the fault limit needs, filters behind the converter.</summary>
    public Design Base(GroundDrive ground)
    {
        Design design = _request.Fixed;
        Resistance needed = Resistance.FromOhms(PreferredValues.AtLeast(Math.Max(1000,
            SafetyLanes.NeededInLead(design, FaultAmperes)), PreferredSeries.E24));
        (ElectrodeBuffer? active, ElectrodeBuffer? reference) = (design.Electrodes.ActiveBuffer, design.Electrodes.ReferenceBuffer);

        // Behind a buffer at the electrode its skin resistor protects; the other lead still needs its own. More than is needed stays.
        bool isBuffered = design.Leads.All(lead => lead.Buffer is not null);
        Resistance series = isBuffered ? design.Input.SeriesResistor : Larger(design.Input.SeriesResistor, needed);
        bool dry = design.SeenElectrodes.Any(set => set.Contact == ContactKind.Dry);
        Capacitance shunt = _request.Stated.Contains(DesignKeys.Input.ShuntCapacitor) ? design.Input.ShuntCapacitor
            : Capacitance.FromPicofarads(dry ? 10 : 22);
        return design with
        {
            Electrodes = design.Electrodes with { ActiveBuffer = Protected(active), ReferenceBuffer = Protected(reference) },
            ChannelList = design.ChannelList.Count == 0 ? design.ChannelList : [.. design.ChannelList.Select(channel => channel with
            {
                Buffer = Protected(channel.Buffer), Minus = channel.Minus is { } minus ? minus with { Buffer = Protected(minus.Buffer) } : null,
            })],
            Input = design.Input with { SeriesResistor = series, ShuntCapacitor = shunt },
            GroundDrive = ground,
            Requirements = design.Requirements with { FaultCurrent = Current.FromAmperes(FaultAmperes),
                DrivenGroundCurrent = Current.FromAmperes(DrivenAmperes) },
            Digital = design.Digital.Count != 0
                ? design.Digital
                : [new DigitalHighPass { Name = "high-pass", Corner = design.Band.Low, Order = 2 }, .. Notches(design)],
        };

        ElectrodeBuffer? Protected(ElectrodeBuffer? buffer) =>
            buffer is null ? null : buffer with { SkinResistor = Larger(buffer.SkinResistor, needed) };

        static Resistance Larger(Resistance one, Resistance other) => one.Ohms < other.Ohms ? other : one;
    }

    /// <summary>A notch at the mains and at each of its harmonics inside the band.</summary>
    private static IEnumerable<DigitalNotch> Notches(Design design)
    {
        double mains = design.Mains.Frequency.Hertz;
        int most = (int)Math.Clamp(Math.Floor(design.Band.High.Hertz / mains), 1, MostNotches);
        return Enumerable.Range(1, most).Select(h => new DigitalNotch
        {
            Name = h == 1 ? "notch" : $"notch {h}", Centre = Frequency.FromHertz(h * mains), Q = 10,
        });
    }

    /// <summary>The rates that a converter is tried at.</summary>
    /// <remarks>250 Hz and its doublings, from the first on that leaves room for a filter above the band.</remarks>
    public static IReadOnlyList<double> Rates(AnalogDigitalConverter card, Design design)
    {
        double first = LeastRate;
        while (first <= 2.2 * design.Band.High.Hertz)
        {
            first *= 2;
        }

        bool isDeltaSigma = card.Kind == ConverterKind.DeltaSigma;
        return
        [
            .. Enumerable.Range(0, isDeltaSigma ? DeltaSigmaRates : SarRates).Select(step => first * (1 << step))
                .Where(rate => !isDeltaSigma || LeastOversampling * rate <= card.ModulatorClock.Hertz),
        ];
    }

    /// <summary>Anti-alias filters that are tried in front of a converter: orders; or, for delta-sigma, the attenuation in decibels that R
    /// and C give at the modulator's clock.</summary>
    public static IReadOnlyList<int> Filters(AnalogDigitalConverter card) =>
        card.Kind == ConverterKind.DeltaSigma ? [40, 60] : [2, 3, 4, 5];

    /// <summary>True where a filter attenuates what folds enough.</summary>
    /// <param name="fold">Attenuation asked for [dB].</param>
    public bool Reaches(Design start, AnalogDigitalConverter card, double rate, int filter, double fold) =>
        fold <= Attenuation(start with { Converter = card with { Rate = Frequency.FromHertz(rate) } }, filter);

    /// <summary>All candidates of one amplifier, converter, rate and filter, least noise bound first; none where the filter cannot
    /// be built.</summary>
    public IReadOnlyList<SizingCandidate> At(Design start, DifferentialAmplifier amplifier, AnalogDigitalConverter card, double rate,
        int filter)
    {
        Design atRate = RateStudy.AtRate(start with { Converter = card, Digital = [] },
            Frequency.FromHertz(rate)) with { Digital = start.Digital };
        List<SizingCandidate> found = [];
        if (card.Kind == ConverterKind.DeltaSigma)
        {
            var passive = SizingStage.Of(Passive(atRate, filter));
            foreach (double gain in amplifier.Gains ?? FirstGains)
            {
                found.Add(Make(atRate with { Amplifier = amplifier with { Gain = gain } }, [passive]));
            }
        }
        else if (_filters[filter] is { } sections)
        {
            SizingStage[] filters = [.. sections.Select(SizingStage.Of)];
            foreach (OpAmp opAmp in Parts.OpAmps)
            {
                SizingStage[] seconds = [.. SecondGains.Select(second => SizingStage.Of(Second(second, opAmp, start.Band)))];
                foreach (double first in amplifier.Gains ?? FirstGains)
                {
                    Design atGain = atRate with { Amplifier = amplifier with { Gain = first } };
                    foreach (SizingStage second in seconds)
                    {
                        found.Add(Make(atGain, [second, .. filters]));
                    }
                }
            }
        }

        return [.. found.OrderBy(candidate => candidate.NoiseBound).ThenBy(candidate => candidate.Parts)];
    }

    /// <summary>Ideal attenuation at the fold, less the droop and what rounding of parts may take [dB].</summary>
    /// <remarks>Corner from the droop: f_c = f2/(10^(droop/10) − 1)^(1/2n).</remarks>
    private double Attenuation(Design design, int filter)
    {
        if (design.Converter.Kind == ConverterKind.DeltaSigma)
        {
            return filter;
        }

        double fold = design.Converter.Rate.Hertz - design.Band.High.Hertz;
        return (10 * Math.Log10(1 + Math.Pow(fold / Corner(filter), 2 * filter))) - RoundingDecibels;
    }

    private double Corner(int order) => _request.Fixed.Band.High.Hertz / Math.Pow(Math.Pow(10, Droop / 10) - 1, 1.0 / (2 * order));

    /// <summary>Both topologies are searched; the one nearer to the ideal response as built is taken, the one with fewer parts where they
    /// are alike.</summary>
    private IReadOnlyList<Stage>? Realise(int order)
    {
        AnalogFilter target = FilterDesign.Analog(new ButterworthPrototype(order), new LowPass(Frequency.FromHertz(Corner(order))));
        Realisation? best = null;
        foreach (SectionKind topology in Topologies)
        {
            (Realisation? found, _) = RealisationSearch.Find(new RealisationRequest
            {
                Target = target, OpAmp = _filterOpAmp, Topology = topology, ResistorSeries = PreferredSeries.E24,
                CapacitorSeries = PreferredSeries.E6,
            });
            if (found is not null && (best is null || found.LargestError < best.LargestError - 0.1))
            {
                best = found;
            }
        }

        return best is null ? null : [.. best.Stages.Select((stage, at) => stage with { Name = $"anti-alias {at + 1}" })];
    }

    /// <summary>R and C at a delta-sigma converter's pin, for an attenuation at the modulator's clock.</summary>
    private static RcSection Passive(Design design, double decibels)
    {
        double clock = design.Converter.ModulatorClock.Hertz - design.Band.High.Hertz;
        double corner = clock / Math.Pow(10, (decibels + RoundingDecibels) / 20);
        const double Ohms = 2200;
        return new RcSection { Name = "anti-alias 1", R = Resistance.FromOhms(Ohms),
            C = Capacitance.FromFarads(PreferredValues.AtLeast(1 / (2 * Math.PI * Ohms * corner), PreferredSeries.E6)), OpAmp = null };
    }

    /// <summary>The second gain behind a coupling of at most a third of the band's lower edge, so that it takes less than 0.5 dB
    /// there.</summary>
    private static GainStage Second(double gain, OpAmp opAmp, Band band)
    {
        Resistance ground = Resistance.FromKilohms(1),
            feedback = PreferredValues.Nearest(Resistance.FromOhms((gain - 1) * ground.Ohms), PreferredSeries.E24);
        double tau = 3 / (2 * Math.PI * band.Low.Hertz);
        Capacitance coupling = Capacitance.FromMicrofarads(1);
        return new GainStage
        {
            Name = "gain 2", CouplingCapacitor = coupling,
            CouplingResistor = PreferredValues.AtLeast(Resistance.FromOhms(tau / coupling.Farads), PreferredSeries.E24),
            FeedbackResistor = feedback, GroundResistor = ground, OpAmp = opAmp,
        };
    }

    private static SizingCandidate Make(Design design, SizingStage[] stages)
    {
        Design whole = design with { Stages = Array.ConvertAll(stages, one => one.Stage) };
        return new(whole, NoiseBound(whole, stages), PartCount(whole, stages.Sum(one => one.Pieces)), stages.Any(one => one.IsAcCoupled));
    }

    /// <summary>Densities that hold whatever the network does at most a little better: both protection resistors, the amplifier, the second
    /// stage's op-amp and Rg, the converter, over the band.</summary>
    private static double NoiseBound(Design design, SizingStage[] stages)
    {
        double kt4 = PhysicalConstants.ThermalPower(design.BoardTemperature), g1 = design.Amplifier.Gain;
        double density = (2 * kt4 * design.Input.SeriesResistor.Ohms) + Square(design.Amplifier.InputNoise.VoltsPerRootHertz)
            + Square(design.Amplifier.OutputNoise.VoltsPerRootHertz / g1);
        // The noise that is judged is the worst channel's.
        density += design.SeenElectrodes.Max(set => OfBuffer(set.ActiveBuffer) + OfBuffer(set.ReferenceBuffer));

        double total = g1;
        double width = design.Band.High.Hertz - design.Band.Low.Hertz, log = Math.Log(design.Band.High.Hertz / design.Band.Low.Hertz);
        double flicker = Square(design.Amplifier.InputNoise.VoltsPerRootHertz) * design.Amplifier.NoiseCorner.Hertz;
        foreach (SizingStage one in stages.Where(one => one.Stage.Role == StageRole.Gain))
        {
            Stage stage = one.Stage;
            OpAmp opAmp = stage.FittedOpAmp!;
            double en = Square(opAmp.VoltageNoise.VoltsPerRootHertz / g1);
            density += en + (kt4 * one.GroundOhms / (g1 * g1));
            flicker += en * opAmp.NoiseCorner.Hertz;
            total *= stage.NominalGain;
        }

        AnalogDigitalConverter converter = design.Converter;
        density += (Square(converter.NoiseVolts)
            + NoiseDensity.Quantisation(converter.LsbVolts)) / (converter.Rate.Hertz / 2) / (total * total);
        return Math.Sqrt((density * width) + (flicker * log));

        double OfBuffer(ElectrodeBuffer? buffer) => buffer is null ? 0 : (kt4 * buffer.SkinResistor.Ohms) + Square(buffer.OpAmp.VoltageNoise.VoltsPerRootHertz);
    }

    private static double Square(double x) => x * x;

    /// <summary>Pieces in the path of the signal: resistors, capacitors, amplifiers, op-amps, the converter; decoupling, connectors, electrodes,
    /// battery and microcontroller not counted.</summary>
    public static int PartCount(Design design) => PartCount(design, design.Stages.Sum(stage => stage.Circuit().Pieces));

    private static int PartCount(Design design, int inStages)
    {
        // The amplifier, the resistor that sets its gain, the resistor in the lead; an op-amp and the resistor at the skin for a buffer.
        bool hasGainResistor = design.Amplifier.HasGainResistor;
        int perChannel = 1 + (hasGainResistor ? 1 : 0) + 1 + (0 < design.Input.ShuntCapacitor.Farads ? 2 : 0)
            + (design.Input.BiasResistor is null ? 0 : 2);
        perChannel += inStages;

        // A delta-sigma converter of this class is one for each channel; the other kinds are shared, and one in the microcontroller is no piece.
        int converters = design.Converter.InController ? 0 : design.Converter.Kind == ConverterKind.DeltaSigma ? design.Channels : 1;
        int ground = design.Electrodes.Ground is null ? 0 : design.GroundDrive.Kind == GroundKind.Driven ? 5 : 1;
        int reference = design.Electrodes.ReferenceBuffer is null ? 1 : 3;
        if (design.ChannelList.Count == 0)
        {
            return (design.Channels * (perChannel + (design.Electrodes.ActiveBuffer is null ? 0 : 2))) + reference + converters + ground;
        }

        // Each channel's own buffer, and of what it is measured against, once for all that share it: a resistor in its lead, two parts more for a buffer.
        int leads = design.Leads.Sum(lead => lead.Channel is null || lead.IsMinus ? lead.Buffer is null ? 1 : 3 : lead.Buffer is null ? 0 : 2);
        return (design.Channels * perChannel) + leads + converters + ground;
    }
}

/// <summary>A stage with what the bounds ask of its circuit: thousands of candidates share one, which is made once.</summary>
/// <param name="Stage">The stage.</param>
/// <param name="Pieces">Of its circuit.</param>
/// <param name="GroundOhms">Its resistor to ground, 0 where it has none [Ω].</param>
/// <param name="IsAcCoupled">It passes no dc.</param>
internal sealed record SizingStage(Stage Stage, int Pieces, double GroundOhms, bool IsAcCoupled)
{
    public static SizingStage Of(Stage stage)
    {
        Circuit circuit = stage.Circuit();
        return new(stage, circuit.Pieces, circuit.Find("ground-resistor")?.Value ?? 0, circuit.IsAcCoupled);
    }
}
