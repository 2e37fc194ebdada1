using FrontEnd.Bench;
using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Spread;
using Xunit;

namespace FrontEnd.Tests.Bench;

/// <summary>What is looked at before power, and dc at the test points of a board at rest.</summary>
public sealed class BenchRestTests
{
    private static IReadOnlyList<BenchReading> Plan(Design design) => BenchPlan.Of(design).Readings;

    /// <summary>The levels budget has the same dc, with the signal and the noise besides; a spread's nominal build is the design.</summary>
    [Fact]
    public void DirectSpread_NominalBuild_IsTheLevelsBudgetsDc()
    {
        foreach (Design design in new[] { Designs.Gel, Designs.Dry })
        {
            Design fixture = Fixture.With(design, Fixture.Short);
            IReadOnlyList<NodeDc> nodes = DirectSpread.Of(fixture);
            IReadOnlyList<NodeLevel> levels = new Evaluation(fixture).Levels.Nodes;
            Assert.Equal(levels.Select(node => node.Node), nodes.Select(node => node.Node));
            foreach ((NodeLevel level, NodeDc node) in levels.Zip(nodes))
            {
                // Rounding alone: the leads are short circuits of 0.1 Ω beside leaks of 1 TΩ.
                Assert.Equal(level.OtherDc, node.Nominal.Volts, 1e-9 + (1e-6 * level.OtherDc));
                Assert.True(node.Low.Volts <= node.High.Volts);
            }
        }
    }

    /// <summary>An offset voltage that is drawn within ±2 mV gives the amplifier's output |v|·G, of which 1 % lie below 20 µV·G and 1 % above 1.98 mV·G.</summary>
    [Fact]
    public void DirectSpread_OfADrawnOffset_HasItsPercentiles()
    {
        Design design = Designs.Dry;
        design = design with
        {
            Amplifier = design.Amplifier with
            {
                BiasCurrent = default, OffsetVoltage = Voltage.FromMillivolts(1),
                Ranges = PartRangesOf(-2e-3, 2e-3),
            },
            Electrodes = design.Electrodes with { ActiveBuffer = null, ReferenceBuffer = null },
        };
        NodeDc amplifier = DirectSpread.Of(Fixture.With(design, Fixture.Short)).Single(node => node.Node == NodeId.Amplifier);
        double gain = design.Amplifier.Gain;

        // 512 builds: the 1 % lie about the fifth build from either end, give or take two; the gain is drawn within 0.5 %.
        Assert.Equal(1e-3 * gain, amplifier.Nominal.Volts, 1e-6 * gain);
        Assert.InRange(amplifier.High.Volts, 1.94e-3 * gain, 2.01e-3 * gain);
        Assert.InRange(amplifier.Low.Volts, 0, 0.06e-3 * gain);
    }

    [Fact]
    public void DirectSpread_Twice_IsTheSame() =>
        Assert.Equal(DirectSpread.Of(Fixture.With(Designs.Gel, Fixture.Short)), DirectSpread.Of(Fixture.With(Designs.Gel, Fixture.Short)));

    /// <summary>Dividers of two resistors drawn within 1 %, by the plain way: 1 % of them lie below the range's share of the divider and 1 % above.</summary>
    [Fact]
    public void MidSupply_RangeOfItsDivider_LeavesOutOneInAHundredOnEitherSide()
    {
        BenchReading mid = Plan(Designs.Gel).Single(test => test.Name == "point-mid");
        double expected = mid.Expected!.SiValue, supply = Designs.Gel.Supply.Lowest.Volts, follower = 6e-3, width = mid.Greatest!.Value - expected - follower;
        var random = new Random(7);
        double[] drawn = [.. Enumerable.Range(0, 200_000).Select(_ =>
        {
            double upper = (supply - expected) * (1 + (0.01 * ((2 * random.NextDouble()) - 1))), lower = expected * (1 + (0.01 * ((2 * random.NextDouble()) - 1)));
            return supply * lower / (upper + lower);
        })];
        Assert.Equal(0.01, drawn.Count(volts => expected + width < volts) / 200_000.0, 0.001);
        Assert.Equal(0.01, drawn.Count(volts => volts < expected - width) / 200_000.0, 0.001);
    }

    /// <summary>Inspection, power, dc, faults, noise, gain, hum, the rest: what could be harmed by a fault comes behind what would find it.</summary>
    [Fact]
    public void Plan_OfAnyDesign_IsInTheOrderOfPoweringUp()
    {
        foreach (Design design in new[] { Designs.Gel, Designs.Dry })
        {
            IReadOnlyList<BenchReading> plan = Plan(design);
            Assert.True(plan.Zip(plan.Skip(1)).All(pair => pair.First.Step <= pair.Second.Step));
            Assert.Equal(plan.Count, plan.Select(test => test.Name).Distinct(StringComparer.Ordinal).Count());
            Assert.Equal(Enum.GetValues<BenchStep>(), plan.Select(test => test.Step).Distinct());
            Assert.Equal(5, plan.Count(test => test.Step == BenchStep.Gain && test.Line is not null));
            Assert.All(plan.Where(test => test.Step != BenchStep.Further && (test.Expected is not null || test.Step == BenchStep.BeforePower)), test => Assert.NotEmpty(test.IfOff));
        }
    }

    /// <summary>A reading where nothing is expected is no multiple of it, and its unit is not suspected.</summary>
    [Fact]
    public void Reading_WhereNothingIsExpected_IsSaidInVolts()
    {
        BenchReading test = Plan(Designs.Gel).Single(one => one.Name == "point-amplifier");
        Assert.Equal(VerdictKind.Pass, BenchComparison.Reading(test, Voltage.FromMicrovolts(-10)).Result!.Verdict);
        BenchResult off = BenchComparison.Reading(test, Voltage.FromVolts(1.2)).Result!;
        Assert.Equal(VerdictKind.Fail, off.Verdict);
        Assert.DoesNotContain(off.Suspects, suspect => suspect.Kind == SuspectKind.Unit);
        Assert.All(off.Suspects, suspect => Assert.Equal("1.20 V where 0 V is expected", suspect.Evidence));
    }

    /// <summary>A resistor that protects the wearer agrees within its tolerance alone, and a smaller one fails.</summary>
    [Fact]
    public void ProtectionResistor_OfASmallerValue_Fails()
    {
        Design design = Designs.Gel;
        double ohms = design.Input.SeriesResistor.Ohms;
        BenchReading test = Plan(design).Single(one => one.Name == "resistor-active");
        Assert.Equal(ohms, test.Expected!.SiValue);
        Assert.Equal(VerdictKind.Pass, BenchComparison.Reading(test, Resistance.FromOhms(ohms)).Result!.Verdict);
        Assert.Equal(VerdictKind.Fail, BenchComparison.Reading(test, Resistance.FromOhms(0.9 * ohms)).Result!.Verdict);
        Assert.Equal(VerdictKind.Fail, BenchComparison.Reading(test, Resistance.FromOhms(1.1 * ohms)).Result!.Verdict);
    }

    private static FrontEnd.Fields.PartRanges PartRangesOf(double low, double high) => new([new FrontEnd.Fields.PartRange("offset-voltage", low, high)]);
}
