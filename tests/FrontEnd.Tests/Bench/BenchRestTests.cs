using FrontEnd.Bench;
using FrontEnd.Boards;
using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
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

    /// <summary>The reference that the microcontroller makes for its own converter is at no test point of the board.</summary>
    [Fact]
    public void Reference_MadeInTheController_IsReadAtItsPin()
    {
        Design apart = new() { Converter = new() { ReferenceVoltage = Voltage.FromVolts(2.5) }, Board = new() { Reference = ReferenceKind.Internal } };
        Design inside = apart with { Converter = apart.Converter with { InController = true } };
        Assert.NotNull(Plan(apart).Single(test => test.Name == "point-reference").At);
        BenchReading test = Plan(inside).Single(test => test.Name == "point-reference");
        Assert.Null(test.At);
        Assert.Contains("the microcontroller's reference pin", test.Setting, StringComparison.Ordinal);
    }

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

    /// <summary>Dividers of the board's two resistors, by the plain way: 1 % of them lie below the range's share of the divider and 1 % above.</summary>
    [Fact]
    public void MidSupply_RangeOfItsDivider_LeavesOutOneInAHundredOnEitherSide()
    {
        BenchReading mid = Plan(Designs.Gel).Single(test => test.Name == "point-mid");
        Board board = Board.Of(Designs.Gel);
        BoardPart upper = Of(BoardRoles.Upper), lower = Of(BoardRoles.Lower);
        double supply = Designs.Gel.Supply.Lowest.Volts, tolerance = upper.Tolerance!.Value.Fraction, expected = mid.Expected!.SiValue;
        Assert.Equal(supply * lower.Value!.SiValue / (upper.Value!.SiValue + lower.Value.SiValue), expected, 1e-12);

        // The range besides: the follower's 5 mV, the meter's 1 mV, 2 % of the supply.
        double width = mid.Greatest!.Value - expected - 6e-3 - (0.02 * expected);
        Assert.Equal("TP902", mid.At!.Name);
        var random = new Random(7);
        double[] drawn = [.. Enumerable.Range(0, 200_000).Select(_ =>
        {
            double above = upper.Value.SiValue * Drawn(), below = lower.Value.SiValue * Drawn();
            return supply * below / (above + below);
        })];
        Assert.Equal(0.01, drawn.Count(volts => expected + width < volts) / 200_000.0, 0.001);
        Assert.Equal(0.01, drawn.Count(volts => volts < expected - width) / 200_000.0, 0.001);

        BoardPart Of(string role) => board.Find(0, new BoardBlock(BlockKind.Supply), role)!;

        double Drawn() => 1 + (tolerance * ((2 * random.NextDouble()) - 1));
    }

    /// <summary>The probe is put where the drawing has a test point on the net that the result is named after.</summary>
    [Fact]
    public void RestingVoltages_AreReadAtTheBoardsTestPoints()
    {
        foreach (Design design in new[] { Designs.Gel, Designs.Dry, Designs.Gel with { Channels = 1 } })
        {
            Board board = Board.Of(design);
            foreach (BenchReading test in Plan(design).Where(test => test.At is not null))
            {
                BoardPart point = board.Parts.First(part => part.Class == PieceClass.TestPoint && part.Designator == test.At!.Name);
                Assert.Equal(test.At!.Net, Nets.Drawn(point.Pins[0].Net));
                Assert.Contains($"{test.At.Name} ({test.At.Net})", test.Setting, StringComparison.Ordinal);
                Assert.True(test.Node is null || Nets.Of(board.Design, test.Node.Value) == test.At.Net);
            }

            Assert.Equal(design.Stages.Count(stage => stage.FittedOpAmp is not null), Plan(design).Count(test => test.Node is { } node && design.Stages.Any(stage => NodeId.Of(stage.Name) == node)));
        }
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
        Assert.Equal("R101", test.Particular);
        Assert.Contains("across R101;", test.Setting, StringComparison.Ordinal);
        Assert.Equal(VerdictKind.Pass, BenchComparison.Reading(test, Resistance.FromOhms(ohms)).Result!.Verdict);
        Assert.Equal(VerdictKind.Fail, BenchComparison.Reading(test, Resistance.FromOhms(0.9 * ohms)).Result!.Verdict);
        Assert.Equal(VerdictKind.Fail, BenchComparison.Reading(test, Resistance.FromOhms(1.1 * ohms)).Result!.Verdict);
    }

    /// <summary>Names are those of the whole board: beside a channel that is bipolar in hardware the shared reference's resistor is R103, as R102 stands
    /// in that channel's minus lead; where that channel is the one that is probed, its own is meant.</summary>
    [Theory]
    [InlineData(100e3, "R103")]
    [InlineData(1e3, "R102")]
    public void Inspection_BesideABipolarChannel_NamesTheResistorsOfTheWholeBoard(double sharedOhms, string reference)
    {
        Electrode Contact(double ohms) => Designs.Gel.Electrodes.Active with { ContactResistance = Resistance.FromOhms(ohms) };
        Design design = Designs.Gel with
        {
            Electrodes = Designs.Gel.Electrodes with { Reference = Contact(20e3) },
            ChannelList = [new() { Name = "a", Electrode = Contact(sharedOhms) }, new() { Name = "b", Electrode = Contact(20e3), Minus = new() { Site = "T4" } }],
        };
        IReadOnlyList<BenchReading> plan = Plan(design);
        Assert.Equal(reference == "R103" ? "a" : "b", plan[0].Channel);
        Assert.Equal("R101", plan.Single(test => test.Name == "resistor-active").Particular);
        Assert.Equal(reference, plan.Single(test => test.Name == "resistor-reference").Particular);
    }

    private static FrontEnd.Fields.PartRanges PartRangesOf(double low, double high) => new([new FrontEnd.Fields.PartRange("offset-voltage", low, high)]);
}
