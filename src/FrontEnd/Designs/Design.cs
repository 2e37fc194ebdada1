using FrontEnd.Amplifier;
using FrontEnd.Converter;
using FrontEnd.Digital;
using FrontEnd.Electrodes;
using FrontEnd.Head;
using FrontEnd.Interference;
using FrontEnd.Topologies;

namespace FrontEnd.Designs;

/// <summary>What the user chose: the chain from scalp to samples and what is asked of it. Immutable.</summary>
/// <remarks>Every property has a default; where it depends on other choices it is null here and the block's <c>Effective…</c> property
/// resolves it. Meaning, unit, range, default and source of each field stand in the catalogue of fields (FrontEnd.Fields).
/// <para>As with every record, lists count as equal where they are one and the same: two readings of one file are not equal.</para></remarks>
public sealed record Design
{
    /// <summary>What the band of the whole design is called where bands are named.</summary>
    public const string WholeBand = "design";

    /// <summary>What the design is called.</summary>
    public string Name { get; init; } = "unnamed design";

    /// <summary>What the device is for, in the builder's words; printed on the sheet.</summary>
    public string Purpose { get; init; } = "";

    /// <summary>A sentence that must stand on the sheet's first lines, such as "for calculation only"; "" for none.</summary>
    public string Caution { get; init; } = "";

    /// <summary>Number of recorded channels, one converter input each: those of <see cref="ChannelList"/>, where it names them.</summary>
    public int Channels
    {
        get => 0 < ChannelList.Count ? ChannelList.Count : field;
        init;
    } = 1;

    /// <summary>The recorded channels where they are named one by one; empty where all are alike and <see cref="Channels"/> counts them.</summary>
    public IReadOnlyList<Channel> ChannelList { get; init; } = [];

    /// <summary>Channels that are computed from the recorded ones, besides those of the montage.</summary>
    public IReadOnlyList<DerivedChannel> Derived { get; init; } = [];

    /// <summary>The band that noise and mains are worked out in.</summary>
    public Band Band { get; init; } = new(WholeBand, Frequency.FromHertz(0.5), Frequency.FromHertz(40));

    /// <summary>Smallest signal that must still be seen.</summary>
    public VoltageRms SmallestSignal { get; init; } = VoltageRms.FromMicrovolts(0.5);

    /// <summary>Largest signal that must pass without clipping, peak.</summary>
    public Voltage LargestSignal { get; init; } = Voltage.FromMillivolts(2);

    /// <summary>The step of the electrodes' offset that recovery is worked out for: the offset between them, or the one that is asked for
    /// where they have none.</summary>
    public Voltage OffsetStep => Electrodes.Offset.Volts == 0 ? Requirements.Offset : Voltage.FromVolts(Math.Abs(Electrodes.Offset.Volts));

    /// <summary>Temperature of the resistors on the board [K].</summary>
    public Temperature BoardTemperature { get; init; } = Temperature.FromKelvins(298.15);

    /// <summary>Temperature of the electrodes' contact [K].</summary>
    public Temperature SkinTemperature { get; init; } = Temperature.FromKelvins(306.15);

    /// <summary>The mains around the wearer.</summary>
    public Mains Mains { get; init; } = new();

    /// <summary>Electrodes and their buffers.</summary>
    public ElectrodeSet Electrodes { get; init; } = new();

    /// <summary>Protection and bias between leads and amplifier.</summary>
    public InputNetwork Input { get; init; } = new();

    /// <summary>The first amplifier.</summary>
    public DifferentialAmplifier Amplifier { get; init; } = new();

    /// <summary>What the ground electrode is tied to.</summary>
    public GroundDrive GroundDrive { get; init; } = new();

    /// <summary>Gain stages and anti-alias sections between the amplifier and the converter, in the order of the path.</summary>
    public IReadOnlyList<Stage> Stages { get; init; } = [];

    /// <summary>The converter.</summary>
    public AnalogDigitalConverter Converter { get; init; } = new();

    /// <summary>Digital filters behind the converter, in order.</summary>
    public IReadOnlyList<DigitalStage> Digital { get; init; } = [];

    /// <summary>Word and form in which the digital filters are computed; the chain uses them as rounded.</summary>
    public DigitalArithmetic Arithmetic { get; init; } = new();

    /// <summary>Battery and rails.</summary>
    public Supply Supply { get; init; } = new();

    /// <summary>Sites and how channels are formed from them.</summary>
    public Montage Montage { get; init; } = new();

    /// <summary>Bands that are reported besides the design band.</summary>
    public IReadOnlyList<Band> Bands { get; init; } = Band.Conventional;

    /// <summary>The head that sites and sources are placed on; null for the usual one.</summary>
    public HeadMeasures? Head { get; init; }

    /// <summary>Pieces of cortex whose rhythms are to be seen.</summary>
    public IReadOnlyList<CortexPatch> Patches { get; init; } = [];

    /// <summary>What the rest of the brain does beside them; null for the usual.</summary>
    public BackgroundActivity? Background { get; init; }

    /// <summary>Interference besides the mains, each with a band.</summary>
    public IReadOnlyList<Interferer> Interferers { get; init; } = [Interferer.Muscle];

    /// <summary>The check of the electrodes' contact; null for none.</summary>
    public ContactCheck? ContactCheck { get; init; }

    /// <summary>What the board needs beside the path's own parts; no figure reads it.</summary>
    public BoardChoices Board { get; init; } = new();

    /// <summary>What is asked of the figures.</summary>
    public Requirements Requirements { get; init; } = new();

    /// <summary>Delay of radio or cable packets that adds to the latency; null where not given.</summary>
    public Duration? PacketTime { get; init; }

    /// <summary>N: how many channel inputs hang on the reference electrode's lead; 1 where it is buffered. A channel with a minus electrode of its
    /// own hangs on that one alone.</summary>
    public int EffectiveReferenceInputs => Input.ReferenceInputs
        ?? (Montage.ReferenceBuffered ? 1 : Math.Max(1, Channels - ChannelList.Count(channel => channel.Minus is not null)));

    /// <summary>What the recorded channels are called: their names, or the sites' of the montage.</summary>
    public IReadOnlyList<string> ChannelNames =>
        0 < ChannelList.Count ? [.. ChannelList.Select(channel => channel.Name)] : Montage.SitesOf(Channels);

    /// <summary>The derived channels in their order: those of the montage, then those of <see cref="Derived"/>. A name that is no recorded channel's
    /// counts for nothing.</summary>
    public IReadOnlyList<DerivedRow> DerivedRows
    {
        get
        {
            Montage named = 0 < ChannelList.Count ? Montage with { Sites = ChannelNames, Reference = ReferenceName } : Montage with { Reference = ReferenceName };
            string[] slugs = [.. ChannelNames.Select(Slug.Of)];
            return
            [
                .. named.ChannelNames(Channels).Zip(Montage.Weights(Montage.Kind, Channels), (name, row) => new DerivedRow(name, row)),
                .. Derived.Select(one => new DerivedRow(one.Name,
                    [.. slugs.Select(slug => one.Weights.All.Where(weight => Slug.Of(weight.Name) == slug).Sum(weight => weight.Value))])),
            ];
        }
    }

    /// <summary>Every measuring lead: those of the channels, each with its minus electrode's behind it, and the reference's at the end, where any
    /// channel is measured against it.</summary>
    public IReadOnlyList<MeasuringLead> Leads
    {
        get
        {
            List<MeasuringLead> leads = [];
            for (int channel = 0; channel < Channels; channel++)
            {
                ElectrodeSet set = AsSeenBy(channel).Electrodes;
                Channel? named = 0 < ChannelList.Count ? ChannelList[channel] : null;
                string key = named?.Buffer is null ? DesignKeys.Electrodes.ActiveBufferSkinResistor : $"channels[{channel + 1}].buffer.skin-resistor";
                leads.Add(new MeasuringLead(channel, IsMinus: false, set.Active, set.ActiveBuffer, key));
                if (named?.Minus is { } minus)
                {
                    leads.Add(new MeasuringLead(channel, IsMinus: true, set.Reference, set.ReferenceBuffer,
                        minus.Buffer is null ? key : $"channels[{channel + 1}].minus.buffer.skin-resistor"));
                }
            }

            if (ChannelList.Count == 0 || ChannelList.Any(channel => channel.Minus is null))
            {
                leads.Add(new MeasuringLead(null, IsMinus: false, Electrodes.Reference, Electrodes.ReferenceBuffer, DesignKeys.Electrodes.ReferenceBufferSkinResistor));
            }

            return leads;
        }
    }

    /// <summary>What the reference is called: by its sites, or as the montage names it.</summary>
    public string ReferenceName => Electrodes.ReferenceSites.Count == 0 ? Montage.Reference : SiteWords.Joined(Electrodes.ReferenceSites);

    /// <summary>As the channel of this name sees it; as the first where there is none.</summary>
    public Design AsSeenBy(string? channel) =>
        AsSeenBy(Math.Max(0, channel is null ? 0 : ChannelList.ToList().FindIndex(one => string.Equals(one.Name, channel, StringComparison.Ordinal))));

    /// <summary>What each channel has at its leads, as it sees it; one for channels that have no names.</summary>
    public IEnumerable<ElectrodeSet> SeenElectrodes =>
        ChannelList.Count == 0 ? [Electrodes] : Enumerable.Range(0, ChannelList.Count).Select(channel => AsSeenBy(channel).Electrodes);

    /// <summary>The design with one kind of channel, as one of its channels sees it: that channel's own electrode and buffer as the active ones, its
    /// minus electrode, if it has one, as the reference, and electrodes that are joined as one.</summary>
    /// <param name="channel">Counted from 0; of no meaning where the channels are not named.</param>
    public Design AsSeenBy(int channel)
    {
        if (ChannelList.Count == 0 && Electrodes.ReferenceSites.Count < 2)
        {
            return this;
        }

        ElectrodeSet set = Electrodes with { Reference = Electrodes.JoinedReference, ReferenceSites = [] };
        InputNetwork input = Input with { ReferenceInputs = EffectiveReferenceInputs };
        if (0 < ChannelList.Count)
        {
            Channel one = ChannelList[channel];
            ElectrodeBuffer? buffer = one.IsUnbuffered ? null : one.Buffer ?? set.ActiveBuffer;
            set = set with { Active = one.Electrode ?? set.Active, ActiveBuffer = buffer };
            if (one.Minus is { } minus)
            {
                set = set with { Reference = minus.Electrode ?? set.Active, ReferenceBuffer = minus.IsUnbuffered ? null : minus.Buffer ?? buffer };
                input = input with { ReferenceInputs = 1 };
            }
        }

        // The names stand in results of the whole design alone.
        return this with
        {
            Channels = Channels, ChannelList = [], Derived = [], Electrodes = set, Input = input,
            Montage = Montage with { Sites = 0 < ChannelList.Count ? [] : Montage.Sites },
        };
    }

    /// <summary>The times at which any electrode says how its contact is, rising; empty where none does.</summary>
    public IReadOnlyList<Duration> ContactTimes =>
        [.. Worn.SelectMany(one => one.OverTime.All).Select(one => one.After).Distinct().OrderBy(time => time.Seconds)];

    /// <summary>The design with every electrode's contact as it is at a time after it was put on.</summary>
    public Design AfterContact(Duration time) => WithElectrodes(one => one.After(time));

    /// <summary>The design with each of its electrodes changed: the shared ones and those of single channels.</summary>
    public Design WithElectrodes(Func<Electrode, Electrode> change) => this with
    {
        Electrodes = Electrodes with
        {
            Active = change(Electrodes.Active), Reference = change(Electrodes.Reference), Ground = Electrodes.Ground is { } ground ? change(ground) : null,
        },
        ChannelList = ChannelList.Count == 0 ? ChannelList : [.. ChannelList.Select(channel => channel with
        {
            Electrode = channel.Electrode is { } own ? change(own) : null,
            Minus = channel.Minus is { Electrode: { } other } minus ? minus with { Electrode = change(other) } : channel.Minus,
        })],
    };

    /// <summary>The electrodes that anything hangs on, each as often as the design speaks of it.</summary>
    public IEnumerable<Electrode> Worn
    {
        get
        {
            bool named = 0 < ChannelList.Count;
            Electrode?[] own = [.. ChannelList.SelectMany(channel => new[] { channel.Electrode, channel.Minus?.Electrode })];
            Electrode?[] shared =
            [
                !named || ChannelList.Any(channel => channel.Electrode is null) ? Electrodes.Active : null,
                !named || ChannelList.Any(channel => channel.Minus is null) ? Electrodes.Reference : null,
                Electrodes.Ground,
            ];
            return shared.Concat(own).OfType<Electrode>();
        }
    }

    /// <summary>True where a ground electrode is there and driven; without the electrode the drive has no effect.</summary>
    public bool GroundIsDriven => GroundDrive.Kind == GroundKind.Driven && Electrodes.Ground is not null;

    /// <summary>The amplifier's averaging bandwidth for the driven ground, f2; null where it is taken as unlimited.</summary>
    public Frequency? EffectiveAveragingBandwidth =>
        GroundDrive.AveragingUnlimited ? null : GroundDrive.AveragingBandwidth ?? Amplifier.Bandwidth;
}
