using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Tests.Plain;
using FrontEnd.Topologies;
using Xunit;

namespace FrontEnd.Tests.Reporting;

/// <summary>Where a Sallen–Key's stop band turns up again behind an op-amp's output resistance, against its netlist solved plainly at many frequencies.</summary>
public sealed class StopBandTests
{
    private static Design With(double ohms) => Designs.Gel with
    {
        Stages = [new SallenKeySection { Name = "anti-alias 1", OpAmp = new OpAmp { OutputResistance = Resistance.FromOhms(ohms), GainBandwidth = Frequency.FromKilohertz(350) } }],
    };

    [Theory]
    [InlineData(50)]
    [InlineData(1000)]
    public void StopBand_WithAnOutputResistance_TurnsWhereTheNetlistSays(double ohms)
    {
        Design design = With(ohms);
        Assessment assessment = Evaluator.Evaluate(design);
        var stage = new PlainStage(design.Stages[0], 298.15);
        double Loss(double f) => -20 * Math.Log10(stage.Transfer(f).Magnitude / stage.Transfer(1e-3).Magnitude);
        double[] hertz = [.. Enumerable.Range(0, 4000).Select(i => 200 * Math.Pow(5e6, i / 3999.0))], loss = [.. hertz.Select(Loss)];
        int deepest = Array.FindIndex(loss, 1, value => value == loss.Max());
        Assert.Equal(hertz[deepest], assessment["filter.anti-alias-1.stop_band_turn"].Si, hertz[deepest] * 0.01);
        Assert.Equal(loss[deepest..].Min(), assessment["filter.anti-alias-1.stop_band_floor"].Si, 0.01);
    }

    [Fact]
    public void StopBand_OfAnIdealOutput_FallsAllTheWay() => Assert.Null(Evaluator.Evaluate(With(0)).Find("filter.anti-alias-1.stop_band_turn"));
}
