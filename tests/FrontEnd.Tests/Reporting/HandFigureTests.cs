using System.Globalization;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Electrodes;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Text;
using FrontEnd.Topologies;
using Xunit;

namespace FrontEnd.Tests.Reporting;

/// <summary>Figures by hand: the numbers put into a formula give what is written behind it, and a reason for a difference is this design's.</summary>
public sealed class HandFigureTests
{
    private static readonly ElectrodeBuffer Buffer = new() { SkinResistor = Resistance.FromKilohms(47) };

    /// <summary>Nothing shapes the band: no digital filters, a low-pass far above, no decimator, electrodes of pure resistance and an input that loads next to nothing.</summary>
    private static readonly Design Flat = Designs.Dry with
    {
        Electrodes = new ElectrodeSet
        {
            Active = Resistive(90), Reference = Resistive(40), Mismatch = default,
        },
        Input = Designs.Dry.Input with { SeriesResistor = Resistance.FromKilohms(10), ResistorTolerance = default, CapacitorTolerance = default },
        Amplifier = Designs.Dry.Amplifier with
        {
            CurrentNoise = CurrentNoiseDensity.FromAmperesPerRootHertz(1e-12), CurrentNoiseCorner = Frequency.FromHertz(3), NoiseCorner = Frequency.FromHertz(5),
            CommonModeResistance = Resistance.FromOhms(1e13), DifferentialResistance = Resistance.FromOhms(1e13),
        },
        Stages =
        [
            new GainStage { Name = "gain 2", FeedbackResistor = Resistance.FromKilohms(90), GroundResistor = Resistance.FromKilohms(10) },
            new MultipleFeedbackSection { Name = "anti-alias 1", R1 = Resistance.FromKilohms(1), R2 = Resistance.FromKilohms(1), R3 = Resistance.FromKilohms(3), C1 = Capacitance.FromNanofarads(10), C2 = Capacitance.FromNanofarads(3.3) },
        ],
        Converter = Designs.Dry.Converter with { Rate = Frequency.FromHertz(2000) },
        Digital = [],
    };

    private static readonly (string Name, Design Design)[] Cases =
    [
        ("plain", Flat),
        ("bias resistors", Flat with { Input = Flat.Input with { BiasResistor = Resistance.FromMegohms(20) } }),
        ("active buffer", Flat with { Electrodes = Flat.Electrodes with { ActiveBuffer = Buffer } }),
        ("both buffers", Flat with { Electrodes = Flat.Electrodes with { ActiveBuffer = Buffer, ReferenceBuffer = Buffer with { SkinResistor = Resistance.FromKilohms(22) } } }),
        ("sixteen channels", Flat with { Channels = 16 }),
    ];

    public static IEnumerable<TheoryDataRow<string>> Names => Cases.Select(item => new TheoryDataRow<string>(item.Name));

    private static Electrode Resistive(double kilohms) =>
        new() { SeriesResistance = Resistance.FromKilohms(kilohms), ContactResistance = default, ContactCapacitance = default };

    /// <summary>In a design that is what the formulas take it for, every row that has a formula agrees with the network, buffers and all.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void NoiseByHand_OfAFlatDesign_IsTheNetworks(string name)
    {
        Assessment assessment = Evaluator.Evaluate(Cases.Single(item => item.Name == name).Design);
        string[] formulas = ["active-electrode", "reference-electrode", "protection-resistors", "amplifier-voltage", "amplifier-current", "gain-2-voltage", "anti-alias-1-voltage", "quantisation", "converter"];
        string[] more = name switch
        {
            "bias resistors" => ["bias-resistors"],
            "active buffer" or "both buffers" => ["buffer-voltage", "buffer-current", "skin-resistors"],
            _ => [],
        };
        foreach (string source in formulas.Concat(more))
        {
            Result row = assessment[$"noise.source.{source}"];
            Assert.True(row.Hand is not null, source);
            Assert.True(Math.Abs(row.Hand.Difference) < 0.03, $"{source}: {row.Hand.Value.SiValue} by hand, {row.Si}");
        }

        // The total by hand is the root of the squares of just these.
        double squares = assessment.Results.Where(result => result.Id.Text.StartsWith("noise.source.", StringComparison.Ordinal) && result.Hand is not null).Sum(result => result.Hand!.Value.SiValue * result.Hand.Value.SiValue);
        Assert.Equal(Math.Sqrt(squares), assessment["noise.total"].Hand!.Value.SiValue, 1e-12 * Math.Sqrt(squares));
    }

    [Fact]
    public void NoiseTotalByHand_BehindAFilter_SaysHowMuchTheFilterLeaves()
    {
        Design design = Flat with { Digital = [new DigitalLowPass { Name = "low-pass", Corner = Frequency.FromHertz(10) }] };
        HandFigure hand = Evaluator.Evaluate(design)["noise.total"].Hand!;
        double left = new Evaluation(design).Noise.SignalInBand(design.Band.Low.Hertz, design.Band.High.Hertz);
        Assert.Contains($"leave {QuantityText.FormatPercent(Ratio.FromFraction(left))} of the rms of white noise", hand.Assumption, StringComparison.Ordinal);
    }

    /// <summary>Resistors of a gain stage have no formula: where they are large, the reason says so and not that a filter shapes anything.</summary>
    [Fact]
    public void NoiseTotalByHand_WithLargeStageResistors_NamesThem()
    {
        Design design = Flat with
        {
            Stages = [new GainStage { Name = "gain 2", FeedbackResistor = Resistance.FromMegohms(90), GroundResistor = Resistance.FromMegohms(10) }, Flat.Stages[1]],
            Amplifier = Flat.Amplifier with { Gain = 1 },
        };
        string reason = Evaluator.Evaluate(design)["noise.total"].Hand!.Assumption!;
        Assert.Contains("gain 2 resistors (", reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Divider_BehindABuffer_HasNoFormulaForTwoBareElectrodes()
    {
        foreach (ElectrodeSet set in new[] { Flat.Electrodes with { ActiveBuffer = Buffer }, Flat.Electrodes with { ReferenceBuffer = Buffer } })
        {
            Assessment assessment = Evaluator.Evaluate(Flat with { Electrodes = set });
            Assert.Null(assessment["mains.divider"].Hand);
            Assert.Null(assessment["mains.leads"].Hand);
            Assert.Null(assessment["mains.system_cmrr"].Hand);
        }
    }

    /// <summary>A driven ground divides by 1 + f_u/(jf), a sum of quarter turns: at f_u = 300 Hz and 50 Hz by 6.1, not by 7.</summary>
    [Fact]
    public void BodyByHand_WithADrivenGround_AgreesWithTheNetwork()
    {
        foreach (double unityGain in new[] { 100, 300, 2000 })
        {
            Design design = Designs.Dry with { GroundDrive = Designs.Dry.GroundDrive with { UnityGainFrequency = Frequency.FromHertz(unityGain) } };
            HandFigure hand = Evaluator.Evaluate(design)["mains.body_common_mode"].Hand!;
            Assert.True(Math.Abs(hand.Difference) < 0.05, $"{unityGain} Hz: {hand.Difference}");
        }
    }

    private static readonly Stage[] Stages =
    [
        new GainStage { FeedbackResistor = Resistance.FromKilohms(90), GroundResistor = Resistance.FromKilohms(10) }, new GainStage { GroundResistor = null },
        new SallenKeySection(), new SallenKeySection { FeedbackResistor = Resistance.FromKilohms(5.9), GroundResistor = Resistance.FromKilohms(10) },
        new MultipleFeedbackSection { R1 = Resistance.FromKilohms(2), R3 = Resistance.FromKilohms(5) }, new RcSection(), new TwinTNotch(), new StateVariableNotch(),
    ];

    public static IEnumerable<TheoryDataRow<int>> StageNumbers => Enumerable.Range(0, Stages.Length).Select(i => new TheoryDataRow<int>(i));

    /// <summary>The gain as it stands in the product, worked out from its text: " · (1 + 90 kΩ/10 kΩ)" is 10.</summary>
    [Theory]
    [MemberData(nameof(StageNumbers))]
    public void GainText_OfEveryTopology_GivesTheGainAndFitsTheFormula(int number)
    {
        Stage stage = Stages[number];
        double product = 1;
        foreach (string factor in stage.GainText.Split(" · ", StringSplitOptions.RemoveEmptyEntries))
        {
            string bare = factor.Trim('(', ')');
            bool plusOne = bare.StartsWith("1 + ", StringComparison.Ordinal);
            double[] parts = [.. bare[(plusOne ? 4 : 0)..].Split('/').Select(Ohms)];
            product *= (plusOne ? 1 : 0) + parts.Aggregate((top, bottom) => top / bottom);
        }

        Assert.Equal(stage.NominalGain, product, 1e-9 * product);
        Assert.Equal(stage.GainText.Contains('/', StringComparison.Ordinal), stage.GainFormula.Length != 0);
        Assert.Equal(stage.GainText.Count(c => c == '/'), stage.GainFormula.Count(c => c == '/'));
    }

    private static double Ohms(string text) =>
        double.TryParse(text, CultureInfo.InvariantCulture, out double number) ? number
        : QuantityText.TryParse(QuantityKind.Of<Resistance>(), text, out IQuantity? value, out _) ? value!.SiValue : throw new FormatException(text);

    [Fact]
    public void GainByHand_WithMultipleFeedback_HasItsRatio()
    {
        HandFigure hand = Evaluator.Evaluate(Flat)["gain.mid"].Hand!;
        Assert.Equal("G1·(1 + Rf/Rg)·R3/R1", hand.Formula);
        Assert.Equal(Flat.Amplifier.Gain * 10 * 3, hand.Value.SiValue, 1e-9);
        Assert.Contains("3 kΩ/1 kΩ", hand.Substituted, StringComparison.Ordinal);
    }

    /// <summary>What stands behind the last equals sign of a figure's numbers is the figure.</summary>
    [Fact]
    public void NumbersPutIn_OfAllDesigns_GiveTheFigure()
    {
        int compared = 0;
        foreach (Result result in Designs.All.Concat(Cases.Select(item => item.Design)).SelectMany(design => Evaluator.Evaluate(design).Results).Where(result => result.State == ResultState.Number))
        {
            int at = result.Substituted.LastIndexOf(" = ", StringComparison.Ordinal);
            if (0 <= at && QuantityText.TryParse(QuantityKind.Of(result.Value!), result.Substituted[(at + 3)..], out IQuantity? written, out _))
            {
                compared++;
                Assert.True(Math.Abs(written!.SiValue - result.Si) <= 2e-3 * Math.Abs(result.Si), $"{result.Id}: {result.Substituted}, {result.Si}");
            }

            if (result.Hand is { } hand)
            {
                at = hand.Substituted.LastIndexOf(" = ", StringComparison.Ordinal);
                Assert.True(QuantityText.TryParse(QuantityKind.Of(hand.Value), hand.Substituted[(at + 3)..], out IQuantity? byHand, out _), hand.Substituted);
                Assert.True(Math.Abs(byHand!.SiValue - hand.Value.SiValue) <= (2e-3 * Math.Abs(hand.Value.SiValue)) + 1e-12, $"{result.Id}: {hand.Substituted}, {hand.Value.SiValue}");
            }
        }

        Assert.True(100 < compared, $"{compared} compared");
    }
}
