using FrontEnd.Amplifier;
using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Topologies;
using Xunit;

namespace FrontEnd.Tests.Budgets;

/// <summary>A resistance of 0 Ω is the limit of small ones, to all digits; and delays are derivatives.</summary>
public sealed class ZeroOhmTests
{
    private static Design Default { get; } = new() { Amplifier = new DifferentialAmplifier { Gain = 2 } };

    private static Design With(string what, double ohms)
    {
        Resistance r = Resistance.FromOhms(ohms);
        ElectrodeBuffer buffer = new() { OutputResistance = r, SkinResistor = Resistance.FromKilohms(100) };
        ElectrodeSet electrodes = Default.Electrodes;
        return what switch
        {
            "protection" => Default with { Input = Default.Input with { SeriesResistor = r } },
            "ground" => Default with { GroundDrive = Default.GroundDrive with { SeriesResistor = r }, Input = Default.Input with { SeriesResistor = Resistance.FromKilohms(100) } },
            "driven ground" => Default with { GroundDrive = new GroundDrive { Kind = GroundKind.Driven, SeriesResistor = r } },
            "buffer" => Default with { Electrodes = electrodes with { ActiveBuffer = buffer }, Input = Default.Input with { SeriesResistor = default } },
            _ => Default with { Electrodes = electrodes with { ActiveBuffer = buffer, ReferenceBuffer = buffer }, Input = Default.Input with { SeriesResistor = r } },
        };
    }

    /// <summary>Every figure at 0 Ω is that of 1 Ω and 2 Ω drawn out to 0 in a straight line. The resistor's own noise goes with the root, currents of a fault without bound, the loop's worst case from one surrounding to another; an input that nothing holds has lost its digits at 1 Ω.</summary>
    [Theory]
    [InlineData("protection")]
    [InlineData("ground")]
    [InlineData("driven ground")]
    [InlineData("buffer")]
    [InlineData("both buffers and protection")]
    public void Figures_AtZeroOhms_AreTheLimit(string what)
    {
        Assessment zero = Evaluator.Evaluate(With(what, 0)), one = Evaluator.Evaluate(With(what, 1)), two = Evaluator.Evaluate(With(what, 2));
        int compared = 0;
        foreach (Result result in zero.Results.Where(result => result.State == ResultState.Number
            && !result.Id.Text.StartsWith("safety.", StringComparison.Ordinal) && !result.Id.Text.StartsWith("noise.source.", StringComparison.Ordinal)
            && !result.Id.Text.StartsWith("drive.", StringComparison.Ordinal) && !result.Id.Text.StartsWith("open.", StringComparison.Ordinal) && !result.Id.Text.Contains("recovery", StringComparison.Ordinal)))
        {
            double limit = (2 * one[result.Id.Text].Si) - two[result.Id.Text].Si;
            Assert.True(Math.Abs(result.Si - limit) <= (5e-6 * Math.Abs(limit)) + 1e-15, $"{result.Id}: {result.Si:R} at 0 Ω, {limit:R} towards it");
            compared++;
        }

        Assert.True(80 < compared);
    }

    /// <summary>A gain stage with 0 Ω from its output to its − input is a follower, the noise current of that input with it.</summary>
    [Fact]
    public void Stage_WithoutFeedbackResistance_IsAFollower()
    {
        OpAmpNoise(new GainStage { GroundResistor = Resistance.FromKilohms(1) }, out double with, out double current);
        OpAmpNoise(new GainStage(), out double follower, out double none);
        Assert.Equal(follower, with, 1e-12 * follower);
        Assert.Equal(none, current, 1e-12);

        static void OpAmpNoise(GainStage stage, out double voltage, out double current)
        {
            var model = new StageModel(stage, Temperature.FromKelvins(298));
            var lanes = new StageLanes(model, isChecked: true);
            lanes.Set(new StageBuildLanes(model));
            System.Numerics.Vector<double> hertz = new(100.0);
            lanes.Solve(hertz);
            lanes.SolveNoise(hertz);
            (voltage, current) = (lanes.VoltageNoise[0], lanes.CurrentNoise[0]);
        }
    }

    public static IEnumerable<TheoryDataRow<int>> All => Enumerable.Range(0, Designs.All.Count).Select(i => new TheoryDataRow<int>(i));

    /// <summary>−dφ/dω of every block against differences of its phase, two steps of them combined so that their own error falls out (Richardson).</summary>
    [Theory]
    [MemberData(nameof(All))]
    public void Delays_OfEveryBlock_AreTheSlopeOfThePhase(int which)
    {
        Design design = Designs.All[which];
        var path = new SignalPath(design);
        foreach (double hertz in (double[])[0.7, 4.5, 30, 170])
        {
            double[] exact = path.Delays(hertz), coarse = Differences(hertz, 2e-3), fine = Differences(hertz, 1e-3);
            for (int block = 0; block < exact.Length; block++)
            {
                double wanted = ((4 * fine[block]) - coarse[block]) / 3;
                Assert.Equal(wanted, exact[block], (1e-7 * Math.Abs(wanted)) + (1e-10 / hertz));
            }
        }

        double[] Differences(double hertz, double share)
        {
            path.Sweep([hertz * (1 - share), hertz * (1 + share)]);
            double[] phases = [.. Enumerable.Range(0, path.Nodes).Select(node =>
                (new System.Numerics.Complex(path.NodeRe[node][1], path.NodeIm[node][1]) / new System.Numerics.Complex(path.NodeRe[node][0], path.NodeIm[node][0])).Phase)];
            return [.. phases.Select((phase, node) => -(phase - (node == 0 ? 0 : phases[node - 1])) / (4 * Math.PI * share * hertz))];
        }
    }

    /// <summary>An electrode of 0 Ω times what a mismatch of nearly 2 leaves, 5e-10: a short circuit, and no conductance beyond all bounds.</summary>
    [Fact]
    public void Electrode_OfNoResistanceAtTheGreatestMismatch_HasFigures()
    {
        Design drawn = FrontEnd.Tests.Laws.DrawnDesigns.Draw(20261136);
        Assert.Equal(0, drawn.Electrodes.Active.DcResistance.Ohms);
        Design design = drawn with { Electrodes = drawn.Electrodes with { Mismatch = Ratio.FromFraction(1.9999999989655795) } };
        Assessment assessment = Evaluator.Evaluate(design);
        Assert.True(assessment.HasFigures, string.Join('\n', assessment.Findings.Select(finding => finding.Message)));
        Assert.All(assessment.Results.Where(result => result.State == ResultState.Number), result => Assert.True(double.IsFinite(result.Si), result.Id.Text));
    }
}
