using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Topologies;

namespace FrontEnd.Boards;

/// <summary>Names of the board's nets. Those of a channel carry its assembly's prefix, "A1.G2", where the board has more than one
/// channel.</summary>
internal static class Nets
{
    // Each electrode: what touches the skin, the lead at the board, the amplifier's input.
    public const string Active = "ACT", Minus = "MIN", Reference = "REF", GroundElectrode = "GNDE";
    public const string Positive = "INP", Negative = "INN";

    /// <summary>In front of an electrode's buffer: the metal, and behind the skin resistor.</summary>
    public const string Skin = "SK", BufferInput = "BI", BufferOutput = "BO";

    // Differential amplifier.
    public const string GainA = "RGA", GainB = "RGB", Amplifier = "A1";

    /// <summary>What the converter's input is on, whichever block makes it.</summary>
    public const string ConverterInput = "AIN";

    public const string ReferenceVoltage = "VREF", Analogue = "VA", Digital = "VD", ConverterAnalogue = "VC", Middle = "MID", Common = "GND";
    public const string Battery = "VB", Protected = "VP", Tap = "MD", FollowerMinus = "MF", FollowerOutput = "MO";
    public const string DriveInput = "DN", Drive = "DRV", FollowerActive = "FA", FollowerReference = "FR";

    /// <summary>The converter's data lines; behind their resistor they carry an H, for the host.</summary>
    public static readonly IReadOnlyList<string> DataLines = ["CS", "SCLK", "DIN", "DOUT"];

    /// <summary>What a data line is called at the host.</summary>
    public static string AtHost(string line) => line + "H";

    /// <summary>The supplies and commons, which the drawing shows as symbols and not as lines.</summary>
    public static bool IsRail(string net) => net is Analogue or Digital or ConverterAnalogue or Middle or Common or Battery or Protected;

    /// <summary>A net without its assembly's prefix, as the drawing names it.</summary>
    public static string Drawn(string net) => net.IndexOf('.') is var dot and >= 0 ? net[(dot + 1)..] : net;

    /// <summary>The output net of a stage: G2, G3 … for gain stages (the differential amplifier is the first gain), F1 … for sections of the
    /// anti-alias filter, N1 … for notches; AIN for the last.</summary>
    /// <param name="design">Whose stage.</param>
    /// <param name="stage">Counted from 0.</param>
    public static string Stage(Design design, int stage) => stage == design.Stages.Count - 1 ? ConverterInput : Short(design, stage);

    /// <summary>A stage's letter and number, by which its inner nets begin.</summary>
    internal static string Short(Design design, int stage)
    {
        StageRole role = design.Stages[stage].Role;
        int before = design.Stages.Take(stage).Count(one => one.Role == role);
        return role switch
        {
            StageRole.Gain => $"G{before + 2}",
            StageRole.LowPass => $"F{before + 1}",
            _ => $"N{before + 1}",
        };
    }

    /// <summary>The net of the differential amplifier's output.</summary>
    public static string AmplifierOf(Design design) => design.Stages.Count == 0 ? ConverterInput : Amplifier;

    /// <summary>The net, without prefix, at which a node of the results stands; null where a node is no net of the board, such as the inner
    /// ones of the amplifier.</summary>
    public static string? Of(Design design, NodeId node)
    {
        if (node == NodeId.Amplifier)
        {
            return AmplifierOf(design);
        }

        if (node == NodeId.Converter)
        {
            return ConverterInput;
        }

        if (node == NodeId.Drive)
        {
            return Drive;
        }

        if (node == NodeId.ActiveBuffer)
        {
            return BufferOutput;
        }

        for (int stage = 0; stage < design.Stages.Count; stage++)
        {
            if (node == NodeId.Of(design.Stages[stage].Name))
            {
                return Stage(design, stage);
            }
        }

        return null;
    }
}
