using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Topologies;

namespace FrontEnd.Budgets;

/// <summary>How far the nodes of the path swing about their middle at the lowest supply [V]: what is left of the nearer rail by the margin
/// of the output there. Below zero where the margin is wider than the rails. The converter's pin is
/// <see cref="Converter.ConverterSupply"/>'s.</summary>
internal static class NodeSwing
{
    public static double Amplifier(Design design) => Left(design, design.Amplifier.OutputMargin);

    /// <summary>Each of the amplifier's two inner nodes.</summary>
    public static double AmplifierInner(Design design) => Left(design, design.Amplifier.InnerMargin);

    /// <summary>A stage's output and its inner nodes; the whole way to the rail where it has no op-amp.</summary>
    public static double Of(Design design, Stage stage) => Left(design, stage.FittedOpAmp?.OutputMargin ?? default);

    /// <summary>The output of an electrode's buffer.</summary>
    public static double Of(Design design, OpAmp buffer) => Left(design, buffer.OutputMargin);

    /// <summary>The driven ground's output.</summary>
    public static double Drive(Design design) => Left(design, design.GroundDrive.OutputMargin);

    private static double Left(Design design, Voltage margin) => design.Supply.HalfRailVolts - margin.Volts;
}
