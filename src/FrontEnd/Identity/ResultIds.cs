namespace FrontEnd.Identity;

/// <summary>The catalogue of all result ids: what stands once is a member, what stands once for each source, node, filter … is made by a
/// method. No other file spells an id.</summary>
public static class ResultIds
{
    /// <summary>Gains from the electrodes on.</summary>
    public static class Gain
    {
        public static readonly ResultFamily All = new("gain.");
        public static readonly ResultId Mid = All.Of("mid");
        public static readonly ResultId MidFrequency = All.Of("mid_frequency");
        public static readonly ResultId TotalAnalog = All.Of("total_analog");
    }

    /// <summary>Noise at the electrodes: sums, by source, in the named bands.</summary>
    public static class Noise
    {
        public static readonly ResultFamily All = new("noise.");
        public static readonly ResultFamily Sources = new("noise.source.");
        public static readonly ResultFamily Bands = new("noise.band.");
        public static readonly ResultId Total = All.Of("total");
        public static readonly ResultId PeakToPeak = All.Of("peak_to_peak");
        public static readonly ResultId BoardShare = All.Of("board_share");
        public static readonly ResultId Shorted = All.Of("shorted");
        public static readonly ResultId ThermalFloor = All.Of("thermal_floor");
        public static readonly ResultId OverThermalFloor = All.Of("over_thermal_floor");
        public static readonly ResultId Electrodes = All.Of("electrodes");
        public static readonly ResultId Figure = All.Of("figure");

        public static readonly ResultPattern AnyElectrode = new(Sources.Any.Text + "-electrode");
        public static readonly ResultPattern AnyCurrent = new(Sources.Any.Text + "-current");
        public static readonly ResultPattern AnyVoltage = new(Sources.Any.Text + "-voltage");
        public static readonly ResultPattern AnyResistors = new(Sources.Any.Text + "-resistors");

        public static ResultId Source(SourceId source) => Sources.Of(source.Text);

        public static BandIds Band(string name) => new(Bands.Of(Slug.Of(name)));
    }

    /// <summary>What the converter makes of the signal.</summary>
    public static class Converter
    {
        public static readonly ResultFamily All = new("converter.");
        public static readonly ResultId Lsb = All.Of("lsb");
        public static readonly ResultId FullScale = All.Of("full_scale");
        public static readonly ResultId DynamicRange = All.Of("dynamic_range");
        public static readonly ResultId Enob = All.Of("enob");
        public static readonly ResultId EnobShorted = All.Of("enob_shorted");
        public static readonly ResultId NoiseFreeBits = All.Of("noise_free_bits");
        public static readonly ResultId BitsNeeded = All.Of("bits_needed");
        public static readonly ResultId FitsSupply = All.Of("fits_supply");
    }

    /// <summary>The mains at the input, harmonic by harmonic, and in the recording.</summary>
    public static class Mains
    {
        public static readonly ResultFamily All = new("mains.");
        public static readonly ResultFamily Harmonics = new("mains.harmonic.");
        public static readonly ResultId BodyCommonMode = All.Of("body_common_mode");
        public static readonly ResultId Divider = All.Of("divider");
        public static readonly ResultId Leads = All.Of("leads");
        public static readonly ResultId Imbalance = All.Of("imbalance");
        public static readonly ResultId Amplifier = All.Of("amplifier");
        public static readonly ResultId Loop = All.Of("loop");
        public static readonly ResultId Total = All.Of("total");
        public static readonly ResultId Rss = All.Of("rss");
        public static readonly ResultId SystemCmrr = All.Of("system_cmrr");
        public static readonly ResultId CmrrNeeded = All.Of("cmrr_needed");
        public static readonly ResultId Signs = All.Of("signs");
        public static readonly ResultId Recorded = All.Of("recorded");
        public static readonly ResultId RecordedEverywhere = All.Of("recorded_everywhere");

        /// <summary>The figures of every harmonic, as patterns.</summary>
        public static readonly HarmonicIds AnyHarmonic = new(Harmonics.Of("*"));

        /// <param name="order">1 for the mains frequency itself.</param>
        public static HarmonicIds Harmonic(int order) => new(Harmonics.Of($"{order}"));
    }

    /// <summary>The driven ground's loop.</summary>
    public static class Drive
    {
        public static readonly ResultFamily All = new("drive.");
        public static readonly ResultId UnityGainFrequency = All.Of("unity_gain_frequency");
        public static readonly ResultId PhaseMargin = All.Of("phase_margin");
        public static readonly ResultId WorstPhaseMargin = All.Of("worst_phase_margin");
        public static readonly ResultId GainAtMains = All.Of("gain_at_mains");
        public static readonly ResultId SwingNeeded = All.Of("swing_needed");
    }

    /// <summary>Levels at the nodes, and what the path survives.</summary>
    public static class Levels
    {
        private const string HeadroomFigure = "headroom";

        public static readonly ResultFamily All = new("levels.");
        public static readonly ResultId FirstToClip = All.Of("first_to_clip");
        public static readonly ResultId OffsetSurvived = All.Of("offset_survived");
        public static readonly ResultId LargestSignal = All.Of("largest_signal");
        public static readonly ResultId FirstGainLimit = All.Of("first_gain_limit");
        public static readonly ResultId Recovery = All.Of("recovery");

        /// <summary>The least headroom of all nodes: of a spread, of a channel, and of a design with unknown values, where it is at one node or another.</summary>
        public static readonly ResultId LeastHeadroom = All.Of("least_headroom");

        /// <summary>The headroom of every node, as a pattern.</summary>
        public static readonly ResultPattern AnyHeadroom = new($"{All}*.{HeadroomFigure}");

        public static ResultId Headroom(NodeId node) => At(node).Of(HeadroomFigure);

        /// <summary>Everything about one node.</summary>
        public static ResultFamily At(NodeId node) => new($"{All}{node}.");

        /// <summary>True for the headroom of a node.</summary>
        public static bool IsHeadroom(ResultId id) => All.Has(id) && id.Figure == HeadroomFigure;
    }

    /// <summary>The amplifier's inputs.</summary>
    public static class Input
    {
        public static readonly ResultFamily All = new("input.");
        public static readonly ResultId BiasOffset = All.Of("bias_offset");
        public static readonly ResultId ImpedanceAtMains = All.Of("impedance_at_mains");
    }

    /// <summary>Where frequencies land after sampling, and what is left of them.</summary>
    public static class Alias
    {
        public static readonly ResultFamily All = new("alias.");
        public static readonly ResultId FoldFrequency = All.Of("fold_frequency");
        public static readonly ResultId FoldAttenuation = All.Of("fold_attenuation");
        public static readonly ResultId ModulatorFoldFrequency = All.Of("modulator_fold_frequency");
        public static readonly ResultId ModulatorFoldAttenuation = All.Of("modulator_fold_attenuation");
        public static readonly ResultPattern AnyModulatorFold = new($"{All}modulator_fold*");

        /// <summary>The figures of everything that folds, as patterns.</summary>
        public static readonly AliasIds Any = new(All.Of("*"));
        public static readonly AliasIds LowEdge = new(All.Of("low-edge"));
        public static readonly AliasIds HighEdge = new(All.Of("high-edge"));

        /// <param name="order">1 for the mains frequency itself.</param>
        public static AliasIds Harmonic(int order) => new(All.Of($"h{order}"));

        public static AliasIds Interferer(string name) => new(All.Of(Slug.Of(name)));
    }

    /// <summary>The blocks of the analogue path.</summary>
    public static class Filter
    {
        public static readonly ResultFamily All = new("filter.");
        public static readonly FilterIds Path = Of(NodeId.Path);

        /// <summary>The figures of every block, as patterns.</summary>
        public static readonly FilterIds Any = new(All.Of("*"));

        public static FilterIds Of(NodeId block) => new(All.Of(block.Text));

        /// <summary>Everything about one block.</summary>
        public static ResultFamily Figures(NodeId block) => new($"{All}{block}.");
    }

    /// <summary>The digital filters.</summary>
    public static class Digital
    {
        public static readonly ResultFamily All = new("digital.");

        /// <summary>The figures of every filter, as patterns.</summary>
        public static readonly DigitalIds Any = new(All.Of("*"));

        public static DigitalIds Of(string name) => new(All.Of(Slug.Of(name)));
    }

    /// <summary>Delays.</summary>
    public static class Latency
    {
        public static readonly ResultFamily All = new("latency.");
        public static readonly ResultFamily Bands = new("latency.band.");
        public static readonly ResultId Total = All.Of("total");

        public static ResultId Band(string name) => Bands.Of(Slug.Of(name));
    }

    /// <summary>What unequal sampling times do.</summary>
    public static class Skew
    {
        public static readonly ResultFamily All = new("skew.");
        public static readonly ResultId Leak = All.Of("leak");
    }

    /// <summary>Dc through the wearer in a fault.</summary>
    public static class Safety
    {
        public static readonly ResultFamily All = new("safety.");
        public static readonly ResultId FaultCurrent = All.Of("fault_current");
        public static readonly ResultId DrivenGroundCurrent = All.Of("driven_ground_current");
        public static readonly ResultId SeriesResistanceNeeded = All.Of("series_resistance_needed");
        public static readonly ResultId SharedFaultCurrent = All.Of("shared_fault_current");
        public static readonly ResultId ContactCheckCurrent = All.Of("contact_check_current");

        public static ResultId FaultCurrentOf(Lead lead) => FaultCurrent.With(lead.Source().Text);
    }

    /// <summary>Derived channels.</summary>
    public static class Montage
    {
        public static readonly ResultFamily All = new("montage.");
        public static readonly ResultId Correlation = All.Of("correlation");

        /// <summary>The figures of every channel, as patterns.</summary>
        public static readonly MontageIds Any = new(All.Of("*"));

        public static MontageIds Channel(string name) => new(All.Of(Slug.Of(name)));

        /// <summary>The correlation of two derived channels.</summary>
        public static ResultId CorrelationOf(string first, string second) =>
            All.Of(Slug.Of(first)).With(Slug.Of(second)).With("correlation");
    }

    /// <summary>Figures of channels that have names.</summary>
    public static class Channel
    {
        public static readonly ResultFamily All = new("channel.");

        /// <summary>A channel's own figure of what the design has for its worst channel.</summary>
        public static ResultId Of(string name, ResultId figure) => All.Of(Slug.Of(name)).With(figure.Text);

        /// <summary>The offset that a channel survives beyond the one asked for.</summary>
        public static ResultId OffsetToSpare(string name) => All.Of(Slug.Of(name)).With("levels.offset_to_spare");

        /// <summary>The worst of a channel's verdicts, and what it is about.</summary>
        public static ResultId Verdict(string name) => All.Of(Slug.Of(name)).With("verdict");

        /// <summary>All figures of one channel.</summary>
        public static ResultFamily OfChannel(string name) => new($"{All.Start}{Slug.Of(name)}.");
    }

    /// <summary>The sphere that three measures of a head give, and distances on it.</summary>
    public static class Head
    {
        public static readonly ResultFamily All = new("head.");
        public static readonly ResultId Radius = All.Of("radius");
        public static readonly ResultId RingFront = All.Of("ring.front");
        public static readonly ResultId RingSide = All.Of("ring.side");

        public static readonly ResultFamily Distances = new("head.distance.");

        public static DistanceIds Distance(string first, string second) => new(Distances.Of($"{Slug.Of(first)}.{Slug.Of(second)}"));
    }

    /// <summary>What channels at sites show of sources.</summary>
    public static class See
    {
        public static readonly ResultFamily All = new("see.");

        /// <summary>What every channel shows of every source, as patterns.</summary>
        public static readonly SeeIds Any = new(All.Of("*"));

        public static SeeIds Of(string patch, string channel) => new(All.Of(Slug.Of(patch)).With(Slug.Of(channel)));

        /// <summary>Background of a channel in the design's band.</summary>
        public static ResultId Background(string channel) => All.Of(Slug.Of(channel)).With("background");

        /// <summary>How alike two channels are.</summary>
        public static ResultId CorrelationOf(string first, string second) =>
            All.Of(Slug.Of(first)).With(Slug.Of(second)).With("correlation");
    }

    /// <summary>The contact check.</summary>
    public static class Contact
    {
        public static readonly ResultFamily All = new("contact.");
        public static readonly ResultId Beat = All.Of("beat");
        public static readonly ResultId AddsInBand = All.Of("adds_in_band");

        /// <summary>The readings of every electrode, as patterns.</summary>
        public static readonly ContactIds Any = new(All.Of("*"));

        /// <summary>The contact at times after the electrodes were put on.</summary>
        public static readonly ResultFamily Times = new("contact.after.");

        public static ContactIds Of(Lead lead) => new(All.Of(lead.Word()));

        /// <param name="time">The time in words, such as "10 min".</param>
        public static ContactTimeIds After(string time) => new(Times.Of(Slug.Of(time)));
    }

    /// <summary>An electrode that has come off.</summary>
    public static class Open
    {
        public static readonly ResultFamily All = new("open.");

        public static ResultId Of(Lead lead) => All.Of(lead.Word());

        /// <summary>Where a node goes with that electrode off.</summary>
        public static ResultId At(Lead lead, NodeId node) => new ResultFamily($"{All}{lead.Word()}.").Of(node.Text);
    }

    /// <summary>What the supply adds.</summary>
    public static class Supply
    {
        public static readonly ResultFamily All = new("supply.");
        public static readonly ResultId ReferenceNoise = All.Of("reference_noise");
        public static readonly ResultId RippleResidue = All.Of("ripple_residue");
        public static readonly ResultId MidRailNoise = All.Of("mid_rail_noise");
    }

    /// <summary>What the parts draw.</summary>
    public static class Power
    {
        public static readonly ResultFamily All = new("power.");
        public static readonly ResultId SupplyCurrent = All.Of("supply_current");
        public static readonly ResultId BatteryLife = All.Of("battery_life");
    }

    /// <summary>How far what differs from recording to recording may go before a verdict fails.</summary>
    public static class Limit
    {
        public static readonly ResultFamily All = new("limit.");
        public static readonly ResultId Contact = All.Of("contact");
        public static readonly ResultId Mismatch = All.Of("mismatch");
        public static readonly ResultId Offset = All.Of("offset");
        public static readonly ResultId Leads = All.Of("leads");
        public static readonly ResultId Field = All.Of("field");
        public static readonly ResultId Battery = All.Of("battery");
    }

    /// <summary>What has to be sent.</summary>
    public static class Data
    {
        public static readonly ResultFamily All = new("data.");
        public static readonly ResultId BitRate = All.Of("bit_rate");
    }
}
