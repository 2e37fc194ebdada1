namespace FrontEnd.Findings;

/// <summary>The keys of a design that the sources name: places of findings, requirements, fields that a page goes to. Whoever needs another
/// adds it here.</summary>
internal static class DesignKeys
{
    /// <summary>How large a source is, counted from 1.</summary>
    public static string AmplitudeOf(int patch) => $"patches[{patch}].amplitude";

    /// <summary>Bits that the states of fixed-point filters keep below the sample's last place.</summary>
    public const string DigitalStateFraction = "digital-state-fraction";

    /// <summary>What is to be recorded.</summary>
    public const string Band = "band";

    /// <summary>Numbers that the digital filters are computed with.</summary>
    public const string DigitalWord = "digital-word";

    /// <summary>Of the table <c>[amplifier]</c>.</summary>
    public static class Amplifier
    {
        public const string Card = "amplifier.card";
        public const string Cmrr = "amplifier.cmrr";
        public const string CurrentNoise = "amplifier.current-noise";
        public const string Gain = "amplifier.gain";
        public const string GainConstant = "amplifier.gain-constant";
        public const string Gains = "amplifier.gains";
        public const string InputNoise = "amplifier.input-noise";
    }

    /// <summary>Of the table <c>[board]</c>.</summary>
    public static class Board
    {
        public const string Bulk = "board.bulk";
        public const string Clamps = "board.clamps";
        public const string DataResistor = "board.data-resistor";
        public const string Decoupling = "board.decoupling";
        public const string ElectrodeConnector = "board.electrode-connector";
        public const string GroundFeedback = "board.ground-feedback";
        public const string MidSupply = "board.mid-supply";
        public const string MidSupplyCapacitor = "board.mid-supply-capacitor";
        public const string MidSupplyResistor = "board.mid-supply-resistor";
        public const string OpAmpsInPackage = "board.op-amps-in-package";
        public const string Reference = "board.reference";
        public const string ReverseProtection = "board.reverse-protection";
        public const string SupplyResistor = "board.supply-resistor";
    }

    /// <summary>Of the table <c>[contact-check]</c>.</summary>
    public static class ContactCheck
    {
        public const string Frequency = "contact-check.frequency";
    }

    /// <summary>Of the table <c>[converter]</c>.</summary>
    public static class Converter
    {
        public const string Bits = "converter.bits";
        public const string Card = "converter.card";
        public const string FullScale = "converter.full-scale";
        public const string OwnSupply = "converter.own-supply";
        public const string InController = "converter.in-controller";
        public const string Rate = "converter.rate";
    }

    /// <summary>Of the table <c>[electrodes]</c>.</summary>
    public static class Electrodes
    {
        public const string ActiveBufferSkinResistor = "electrodes.active-buffer.skin-resistor";
        public const string ActiveContactResistance = "electrodes.active.contact-resistance";
        public const string ActiveCard = "electrodes.active.card";
        public const string GroundElectrode = "electrodes.ground-electrode";
        public const string GroundSite = "electrodes.ground-site";
        public const string ReferenceSites = "electrodes.reference-sites";
        public const string GroundCard = "electrodes.ground.card";
        public const string Mismatch = "electrodes.mismatch";
        public const string Offset = "electrodes.offset";
        public const string ReferenceBufferSkinResistor = "electrodes.reference-buffer.skin-resistor";
        public const string ReferenceCard = "electrodes.reference.card";
        public const string ReferenceContactResistance = "electrodes.reference.contact-resistance";
    }

    /// <summary>Of the table <c>[ground-drive]</c>.</summary>
    public static class GroundDrive
    {
        public const string AveragingBandwidth = "ground-drive.averaging-bandwidth";
        public const string DcGain = "ground-drive.dc-gain";
        public const string Kind = "ground-drive.kind";
        public const string ResistorTolerance = "ground-drive.resistor-tolerance";
        public const string SeriesResistor = "ground-drive.series-resistor";
        public const string UnityGainFrequency = "ground-drive.unity-gain-frequency";
    }

    /// <summary>Of the table <c>[head]</c>.</summary>
    public static class Head
    {
        public const string Circumference = "head.circumference";
    }

    /// <summary>Of the table <c>[input]</c>.</summary>
    public static class Input
    {
        public const string BiasResistor = "input.bias-resistor";
        public const string DifferentialCapacitor = "input.differential-capacitor";
        public const string ResistorTolerance = "input.resistor-tolerance";
        public const string SeriesResistor = "input.series-resistor";
        public const string ShuntCapacitor = "input.shunt-capacitor";
    }

    /// <summary>Of the table <c>[mains]</c>.</summary>
    public static class Mains
    {
        public const string AmplifierToEarth = "mains.amplifier-to-earth";
        public const string Frequency = "mains.frequency";
        public const string LeadToMains = "mains.lead-to-mains";
        public const string LoopArea = "mains.loop-area";
    }

    /// <summary>Of the table <c>[montage]</c>.</summary>
    public static class Montage
    {
        public const string Reference = "montage.reference";
        public const string Sites = "montage.sites";
    }

    /// <summary>Of the table <c>[requirements]</c>.</summary>
    public static class Requirements
    {
        public const string DrivenGroundCurrent = "requirements.driven-ground-current";
        public const string FaultCurrent = "requirements.fault-current";
        public const string Fold = "requirements.fold";
        public const string Headroom = "requirements.headroom";
        public const string MainsAtElectrodes = "requirements.mains-at-electrodes";
        public const string MainsRecorded = "requirements.mains-recorded";
        public const string Noise = "requirements.noise";
        public const string Offset = "requirements.offset";
        public const string PhaseMargin = "requirements.phase-margin";
    }

    /// <summary>Of the table <c>[signal]</c>.</summary>
    public static class Signal
    {
        public const string Largest = "signal.largest";
        public const string Smallest = "signal.smallest";
    }

    /// <summary>Of the table <c>[supply]</c>.</summary>
    public static class Supply
    {
        public const string BatteryCapacity = "supply.battery-capacity";
        public const string Highest = "supply.highest";
        public const string Lowest = "supply.lowest";
        public const string MidRail = "supply.mid-rail";
        public const string RailsHighest = "supply.rails-highest";
    }
}
