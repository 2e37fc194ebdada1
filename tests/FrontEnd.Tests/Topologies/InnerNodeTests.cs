using System.Numerics;
using FrontEnd.Budgets;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Topologies;
using Xunit;
using static FrontEnd.Tests.Designs;

namespace FrontEnd.Tests.Topologies;

/// <summary>A stage with inner op-amps: its inner nodes are nodes of the levels.</summary>
public sealed class InnerNodeTests
{
    private static readonly string[] InnerNodes = ["trap-high-pass", "trap-band-pass", "trap-low-pass"];

    private static readonly OpAmp Real = OpAmp.MicropowerCmos with { OffsetVoltage = Voltage.FromMicrovolts(500), BiasCurrent = Current.FromNanoamperes(0.02) };

    private static Design With(Stage notch, double hertz = 50) =>
        Gel with { Stages = [notch with { Name = "trap" }, .. Gel.Stages], Mains = Gel.Mains with { Frequency = Frequency.FromHertz(hertz) } };

    [Fact]
    public void Levels_StateVariableNotch_HasItsInnerNodes()
    {
        Assessment assessment = Evaluator.Evaluate(With(new StateVariableNotch { OpAmp = Real }));
        Assert.All(["trap-high-pass", "trap-band-pass", "trap-low-pass", "trap"], node => Assert.Equal(ResultState.Number, assessment[$"levels.{node}.headroom"].State));
    }

    /// <summary>What stands at the band-pass output, worked out part by part: the mains there is Q times the amplifier's output, and the dc is the solved circuit's.</summary>
    [Fact]
    public void Levels_BandPassOutput_IsEachPartByHand()
    {
        var notch = new StateVariableNotch { OpAmp = Real, Ra = Resistance.FromOhms(1 / (2 * Math.PI * 50 * 100e-9)), Rb = Resistance.FromOhms(1 / (2 * Math.PI * 50 * 100e-9)) };
        Design design = With(notch);
        var evaluation = new Evaluation(design);
        (SignalPath path, MainsBudget mains) = (evaluation.Path, evaluation.Mains);
        NodeLevel[] nodes = [.. evaluation.Levels.Nodes];
        NodeLevel band = nodes.Single(node => node.Node == NodeId.Of("trap band-pass")), amplifier = nodes.Single(node => node.Node == NodeId.Amplifier);
        CircuitDc dc = new CircuitDc(notch.Circuit()).Solve(CircuitDc.Nominal);
        Assert.Equal((amplifier.OtherDc * dc.Gain("band-pass")[0]) + dc.Own("band-pass")[0], band.OtherDc, 1e-12);
        double sum = 0;
        var model = new StageModel(notch, design.BoardTemperature);
        foreach (MainsHarmonic harmonic in mains.Harmonics)
        {
            path.SweepTransfer([harmonic.Hertz]);
            NetworkSweep sweep = model.Program.CreateSweep(1);
            sweep.Omega[0] = 2 * Math.PI * harmonic.Hertz;
            sweep.SolveAdjoint(1, 1 + model.InnerNodes.Count);
            double gain = Complex.Abs(sweep.Transfer(2, model.SignalPort, 0));
            Assert.True(sum != 0 || Math.Abs(gain - notch.Q) < 0.03 * notch.Q, $"gain {gain} at the mains, not Q {notch.Q}");
            sum += Math.Sqrt(2) * harmonic.AtInput.Total * path.Size(0, 0) * gain;
        }

        Assert.Equal(sum, band.Mains, 1e-9 * sum);
        Assert.True(band.Noise > 0 && band.Signal > 0);
    }

    /// <summary>A sharp notch under strong mains clips inside, where the twin-T has no amplifier: at its centre all three outputs swing Q times the mains.</summary>
    [Fact]
    public void FirstToClip_SharpNotchUnderStrongMains_IsAnInnerNode()
    {
        Design quiet = With(new StateVariableNotch { R2 = Resistance.FromKilohms(890), Ra = Resistance.FromKilohms(31.83), Rb = Resistance.FromKilohms(31.83) });
        Design loud = quiet with { Electrodes = quiet.Electrodes with { Offset = default }, Mains = quiet.Mains with { Field = MagneticFluxDensity.FromTeslas(1e-4), LoopArea = Area.FromSquareMetres(0.1) } };
        Assert.Contains(Evaluator.Evaluate(loud)["levels.first_to_clip"].Text, InnerNodes);
    }
}
