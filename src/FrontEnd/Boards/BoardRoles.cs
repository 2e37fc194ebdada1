namespace FrontEnd.Boards;

/// <summary>Roles of pieces that no field of the path names; stages' pieces have the roles of their circuit.</summary>
internal static class BoardRoles
{
    // Electrodes and inputs. Where an electrode stands is a suffix: the channel's own, its minus electrode, the reference.
    public const string Active = "active", Minus = "minus", Reference = "reference";
    public const string Contact = "contact", Socket = "socket", Skin = "skin-resistor", Buffer = "buffer", BufferOutput = "buffer-output-resistor";
    public const string Series = "series-resistor", Shunt = "shunt-capacitor", Bias = "bias-resistor", Clamp = "clamp";
    public const string Differential = "differential-capacitor";

    // Differential amplifier.
    public const string Amplifier = "amplifier", GainResistor = "gain-resistor";

    // Converter.
    public const string Converter = "converter", VoltageReference = "voltage-reference", ReferenceResistor = "reference-resistor";
    public const string Host = "host", ReferenceBulk = "reference-bulk", ReferenceDecoupling = "reference-decoupling", DigitalDecoupling = "digital-decoupling";
    public const string DigitalBulk = "digital-bulk", DigitalResistor = "digital-resistor", ReferenceInput = "reference-input-decoupling";

    // Ground electrode.
    public const string Ground = "ground", GroundSeries = "ground-series-resistor", Drive = "drive", Feedback = "feedback-resistor";
    public const string FeedbackCapacitor = "feedback-capacitor", FollowActive = "follower-active", FollowReference = "follower-reference";
    public const string AverageActive = "average-active", AverageReference = "average-reference";

    // Supply.
    public const string Battery = "battery", Reverse = "reverse-protection", Regulator = "regulator";
    public const string RegulatorIn = "regulator-in", RegulatorOut = "regulator-out", ConverterRegulator = "converter-regulator";
    public const string ConverterRegulatorIn = "converter-regulator-in", ConverterRegulatorOut = "converter-regulator-out", Bulk = "bulk";
    public const string Upper = "divider-upper", Lower = "divider-lower", Tap = "divider-capacitor", Follower = "mid-supply-follower";
    public const string Isolating = "isolating-resistor", FollowerFeedback = "follower-feedback-resistor", FollowerCapacitor = "follower-feedback-capacitor";
    public const string MidBulk = "mid-supply-bulk";

    /// <summary>An op-amp of a package that nothing uses.</summary>
    public const string Unused = "unused";

    /// <summary>The capacitor at a package's supply pins.</summary>
    /// <param name="role">The package's role.</param>
    public static string DecouplingOf(string role) => $"{role}, decoupling";

    /// <summary>The package whose first op-amp has this role.</summary>
    public static string PackageOf(string role) => $"{role}, package";

    /// <summary>One of several equal pieces in parallel; the first keeps the role.</summary>
    public static string Piece(string role, int piece) => piece == 0 ? role : $"{role} ({piece + 1})";

    /// <summary>The role at one of the electrodes.</summary>
    public static string At(string role, string electrode) => $"{role}, {electrode}";

    /// <summary>The role at one of several joined electrodes, counted from 0.</summary>
    public static string At(string role, string electrode, int which) => which == 0 ? At(role, electrode) : $"{role}, {electrode} {which + 1}";

    /// <summary>The role of the test point on a net.</summary>
    public static string TestPointOn(string net) => $"test point {net}";

    /// <summary>A resistor in a data line.</summary>
    public static string DataLine(string net) => $"data line {net}";
}
