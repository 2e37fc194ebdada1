using FrontEnd.Amplifier;
using FrontEnd.Catalogue;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Electrodes;
using FrontEnd.Fields;
using FrontEnd.Filters;
using FrontEnd.Head;
using FrontEnd.Interference;
using FrontEnd.Quantities;
using FrontEnd.Topologies;

namespace FrontEnd.Tests.Laws;

/// <summary>Designs of any shape: every list of any length with elements of every kind, parts that may be absent, names of all sorts, values far from the usual. Most of them are legal.</summary>
internal static class DrawnDesigns
{
    /// <summary>Names as people and programs give them; those that are built in and those of one slug are among them, as findings are to come of these.</summary>
    private static readonly string[] Names =
    [
        "gain", "anti-alias", "notch", "alpha", "muscle", "Ω", "İstanbul", "ǅ", "日本", "a.b", "\"quoted\"", "two\nlines", "tab\there", "x_y", "1", "stages[1]", "null", "*", "noise.total", "total", "headroom",
        "ratio", "ratio.ratio", "quantisation", "folded", "active electrode", "ground", "input", "amplifier voltage", "bias resistors", "first_to_clip", "offset_survived", "a", "A-B", "<b>&amp;</b>", "e\u0301", "ﬁ", "½", "²",
        "amplifier", "bias", "path", "h1", "low edge", "-", "", "\uD83D\uDE00", "\uD83D\uDE00 1", "\0z", new string('n', 300),
    ];

    public static Design Draw(int seed)
    {
        Random random = new(seed);
        Design design = Designs.All[random.Next(Designs.All.Count)] with { Channels = 1 + random.Next(9) };
        design = design with { Converter = AnyConverter(random, design.Converter), Electrodes = AnyElectrodes(random, design.Electrodes), GroundDrive = design.GroundDrive with { Kind = Any(random, Enum.GetValues<GroundKind>()) } };
        double half = design.Converter.Rate.Hertz / 2, low = LogUniform(random, 0.01, half / 4), high = LogUniform(random, low * 1.01, half * 0.999);
        design = design with
        {
            Band = new Band("design", Frequency.FromHertz(low), Frequency.FromHertz(high)),
            Mains = AnyMains(random, design.Mains),
            Input = design.Input with { ReferenceInputs = random.Next(3) == 0 ? 1 + random.Next(design.Channels) : null, BiasResistor = random.Next(3) == 0 ? Resistance.FromOhms(LogUniform(random, 1e5, 1e10)) : null },
            ContactCheck = random.Next(3) == 0 ? new ContactCheck { Frequency = Frequency.FromHertz(LogUniform(random, half / 1000, half * 0.999)), OnWhileRecording = random.Next(2) == 0 } : null,
            Arithmetic = new DigitalArithmetic { Word = Any(random, Enum.GetValues<DigitalWord>()), Form = Any(random, Enum.GetValues<FilterForm>()), StateFraction = random.Next(5) },
            Montage = AnyMontage(random, design.Channels),
            Supply = design.Supply with { Ripple = random.Next(2) == 0 ? VoltageRms.FromVolts(0.01) : null, MidRailNoise = random.Next(2) == 0 ? VoltageRms.FromMicrovolts(5) : null, BatteryCapacity = random.Next(2) == 0 ? Charge.FromMilliampereHours(250) : null },
        };
        foreach (DesignList list in DesignList.All.Where(list => list.Key is not (DesignList.ChannelsKey or "derived")))
        {
            design = list.With(design, Elements(random, list, design, half));
        }

        return WithChannels(new Random(seed ^ 0x5bd1e995), Varied(random, design, random.Next(8)));
    }

    /// <summary>A third with channels that have names, some of them unlike the others, and some with derived channels; the rest as it was.</summary>
    private static Design WithChannels(Random random, Design design)
    {
        if (random.Next(3) != 0 || design.Patches.Count > 0)
        {
            return design;
        }

        Site[] sites = [.. OverTheBrain.OrderBy(_ => random.Next()).Take(1 + random.Next(5))];
        design = design with
        {
            ChannelList = [.. sites.Select((site, i) => new Channel
            {
                Name = random.Next(8) == 0 ? Any(random, Names) : $"{site.Name} {i}", Site = site.Name, Electrode = random.Next(2) == 0 ? AnyElectrodes(random, design.Electrodes).Active : null,
                Buffer = random.Next(3) == 0 ? new ElectrodeBuffer { SkinResistor = Resistance.FromOhms(LogUniform(random, 1e3, 1e6)) } : null, IsUnbuffered = random.Next(4) == 0,
                Minus = random.Next(4) == 0 ? new MinusElectrode { Site = "left eyebrow" } : null,
            })],
            Montage = design.Montage with { Sites = [], Kind = sites.Length < 2 ? MontageKind.Referential : design.Montage.Kind },
            Electrodes = design.Electrodes with { ReferenceSites = random.Next(2) == 0 ? ["ear-left", "ear-right"] : [] },
            Input = design.Input with { ReferenceInputs = null },
        };
        return random.Next(2) == 0 ? design : design with
        {
            Derived = [new() { Name = "a sum", Weights = new NamedNumbers(design.ChannelList.Select((channel, i) => new NamedNumber(channel.Name, i - 0.25))) }],
        };
    }

    /// <summary>Up to four elements of any kind, defaults with their frequencies put where the design's rate allows them.</summary>
    private static List<object> Elements(Random random, DesignList list, Design design, double half)
    {
        List<object> elements = [];
        // What is asked to be seen needs sites that are known, which few designs have.
        int count = list.Key == DesignList.SeeKey && (design.Patches.Count == 0 || SiteChannels.Of(design, []).Count == 0) ? 0 : random.Next(5);
        for (int i = 0; i < count; i++)
        {
            Variant variant = list.Variants[random.Next(list.Variants.Count)];
            double low = LogUniform(random, half / 1e4, half * 0.9), high = LogUniform(random, low * 1.05, half * 0.99);
            (Frequency from, Frequency to) = (Frequency.FromHertz(low), Frequency.FromHertz(high));
            object element = variant.Create() switch
            {
                // Only the last may be passive.
                RcSection { OpAmp: null } when i + 1 < count => new RcSection(),
                DigitalHighPass stage => stage with { Corner = from, Order = 1 + random.Next(4), Family = Any(random, Enum.GetValues<FilterFamily>()) },
                DigitalLowPass stage => stage with { Corner = to, Order = 1 + random.Next(6), Family = Any(random, Enum.GetValues<FilterFamily>()) },
                DigitalBandPass stage => stage with { Low = from, High = to },
                DigitalBandStop stage => stage with { Low = from, High = to },
                DigitalNotch stage => stage with { Centre = from, Q = LogUniform(random, 0.6, 100) },
                DigitalSections stage => stage with { Rows = [.. Enumerable.Range(0, random.Next(4)).Select(_ => Row(random))] },
                Band band => band with
                {
                    Low = from, High = Frequency.FromHertz(random.Next(4) == 0 ? high * 3 : high), EvokedAmplitude = random.Next(2) == 0 ? Voltage.FromMicrovolts(1) : null,
                    SmallestSignal = random.Next(2) == 0 ? VoltageRms.FromMicrovolts(1) : null,
                },
                Interferer one => LogUniform(random, 0.1, 1e6) is var at && random.Next(2) == 0
                    ? one with { Low = Frequency.FromHertz(at), High = Frequency.FromHertz(at) }
                    : one with { Low = Frequency.FromHertz(at), High = Frequency.FromHertz(at * LogUniform(random, 1.01, 1e3)) },
                CortexPatch patch => patch with
                {
                    Under = Any(random, random.Next(20) == 0 ? AllSites : OverTheBrain).Name, Area = Area.FromSquareCentimetres(LogUniform(random, 0.1, 350)), WallTowards = random.Next(4) == 0 ? Any(random, AllSites).Name : "",
                    Amplitude = random.Next(2) == 0 ? Voltage.FromMicrovolts(LogUniform(random, 1, 200)) : null, AmplitudeKind = Any(random, Enum.GetValues<AmplitudeKind>()),
                    StatedIn = random.Next(2) == 0 ? $"{Any(random, OverTheBrain).Name}-{Any(random, (string[])["ears", "Cz", "far", "mastoid-left"])}" : "",
                    Band = random.Next(2) == 0 && design.Bands.Count > 0 ? Any(random, [.. design.Bands]).Name : "",
                },
                SeeRequirement see => see with
                {
                    Patch = Any(random, [.. design.Patches]).Name, Channel = Any(random, [.. SiteChannels.Of(design, [])]).Derivation.Name,
                    Ratio = random.Next(2) == 0 && design.Patches.All(patch => patch.Amplitude is not null) ? Decibels.FromStated(3) : null,
                },
                var other => other,
            };
            elements.Add(list.Renamed(element, random.Next(8) == 0 ? Any(random, Names) : $"{Any(random, Names)} {i + 1}{(char)('a' + random.Next(26))}"));
        }

        return elements;

        static double[] Row(Random random)
        {
            // Poles inside the unit circle, at any angle; a numerator that may be nothing at all.
            double radius = Math.Sqrt(random.NextDouble()) * 0.999, angle = Math.PI * random.NextDouble(), a0 = random.Next(2) == 0 ? 1 : LogUniform(random, 0.1, 10);
            return [random.Next(9) == 0 ? 0 : 1, random.Next(-2, 3), random.Next(-1, 2), a0, -2 * radius * Math.Cos(angle) * a0, radius * radius * a0];
        }
    }

    private static AnalogDigitalConverter AnyConverter(Random random, AnalogDigitalConverter converter)
    {
        bool deltaSigma = random.Next(2) == 0;
        return converter with
        {
            Kind = deltaSigma ? ConverterKind.DeltaSigma : ConverterKind.SuccessiveApproximation,
            Rate = Frequency.FromHertz(LogUniform(random, 60, 20_000)),
            Bits = 8 + random.Next(25),
            Noise = random.Next(4) switch { 0 => default(VoltageRms), 1 => null, _ => converter.Noise },
            ReferenceNoise = random.Next(3) == 0 ? VoltageRms.FromMicrovolts(10) : null,
        };
    }

    private static ElectrodeSet AnyElectrodes(Random random, ElectrodeSet electrodes) => electrodes with
    {
        Ground = random.Next(4) == 0 ? null : electrodes.Ground ?? new Electrode(),
        ActiveBuffer = random.Next(4) == 0 ? AnyBuffer(random) : null,
        ReferenceBuffer = random.Next(4) == 0 ? AnyBuffer(random) : null,
        Offset = Voltage.FromMillivolts(random.Next(3) == 0 ? 0 : random.Next(301)),
        Active = random.Next(6) == 0 ? new Electrode { ContactResistance = default, ContactCapacitance = default } : electrodes.Active,
    };

    private static ElectrodeBuffer AnyBuffer(Random random) => new()
    {
        SkinResistor = random.Next(2) == 0 ? default : Resistance.FromKilohms(100),
        OutputResistance = random.Next(2) == 0 ? default : Resistance.FromOhms(100),
    };

    private static Mains AnyMains(Random random, Mains mains) => mains with
    {
        Frequency = Frequency.FromHertz(random.Next(2) == 0 ? 50 : 60),
        Harmonics = [1, .. Enumerable.Range(0, random.Next(12)).Select(_ => random.Next(3) == 0 ? 0 : random.NextDouble() * 0.1)],
        FieldHarmonics = random.Next(3) == 0 ? [.. Enumerable.Range(0, random.Next(6)).Select(_ => random.NextDouble())] : null,
        Deviation = random.Next(4) == 0 ? default : mains.Deviation,
        Voltage = random.Next(9) == 0 ? default : mains.Voltage,
        Field = random.Next(5) == 0 ? default : mains.Field,
    };

    private static readonly Site[] AllSites = [.. Sites.All];

    private static readonly Site[] OverTheBrain = [.. Sites.All.Where(site => site.Arc != SiteArc.Ear && site.Name != "Nz")];

    /// <summary>Names of all sorts, or sites of the head, each once.</summary>
    private static Montage AnyMontage(Random random, int channels)
    {
        Montage montage = new() { Kind = channels < 2 ? MontageKind.Referential : Any(random, Enum.GetValues<MontageKind>()) };
        return random.Next(3) switch
        {
            0 => montage with { Reference = Any(random, Names) },
            1 => montage with { Reference = Any(random, Names), Sites = [.. Enumerable.Range(0, channels).Select(i => random.Next(6) == 0 ? Any(random, Names) : $"{Any(random, Names)}{(random.Next(2) == 0 ? "-" : " ")}{i}")] },
            _ => montage with { Reference = Any(random, (string[])["A1", "ears", "Cz", "linked mastoids"]), Sites = [.. AllSites.OrderBy(_ => random.Next()).Take(channels).Select(site => site.Name)] },
        };
    }

    /// <summary>Some numeric fields times 1/30 to 30, some at an end of their range, within it always.</summary>
    private static Design Varied(Random random, Design design, int changes)
    {
        for (int i = 0; i < changes; i++)
        {
            Field<Design>[] fields = [.. DesignFields.Numeric(design)];
            Field<Design> field = fields[random.Next(fields.Length)];
            double value = field.Range is { } ends && random.Next(6) == 0
                ? (random.Next(2) == 0 ? ends.Least : ends.Greatest)
                : (field.SiValue(design) ?? 0) * Math.Pow(30, (2 * random.NextDouble()) - 1);
            if (double.IsFinite(value) && field.Range?.Contains(value) != false)
            {
                design = field.WithSiValue(design, value);
            }
        }

        return design;
    }

    private static double LogUniform(Random random, double low, double high) => low * Math.Pow(high / low, random.NextDouble());

    private static T Any<T>(Random random, T[] all) => all[random.Next(all.Length)];
}
