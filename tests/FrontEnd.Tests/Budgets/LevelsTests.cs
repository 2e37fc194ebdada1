using FrontEnd.Amplifier;
using FrontEnd.Budgets;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Interference;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Topologies;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Tests.Budgets;

/// <summary>Levels at the nodes: cases worked out by hand, with the arithmetic beside them, and what holds of every design.</summary>
public sealed class LevelsTests
{
    /// <summary>A contact of 8 kΩ, apart by half (10 kΩ and 6 kΩ), a passive ground of 8 kΩ and 100 kΩ, leads of 68 kΩ; no mains at all.
    /// 3 V, so 1.5 V to either rail; gain 4, margins 100 mV; white noise of 1 µV/√Hz at the amplifier drowns all other.</summary>
    private static readonly Design Quiet = Tests.Designs.Gel with
    {
        Channels = 1,
        Mains = new Mains { Voltage = default, Field = default },
        Electrodes = new ElectrodeSet { Active = Contact, Reference = Contact, Ground = Contact, Mismatch = Ratio.FromPercent(50), Offset = Voltage.FromMillivolts(200) },
        Amplifier = new DifferentialAmplifier
        {
            Gain = 4, InputNoise = VoltageNoiseDensity.FromVoltsPerRootHertz(1e-6), OutputNoise = default, OffsetVoltage = Voltage.FromMillivolts(-1),
            CommonModeResistance = Resistance.FromOhms(1e14), DifferentialResistance = Resistance.FromOhms(1e15),
        },
        Input = new InputNetwork { SeriesResistor = Resistance.FromKilohms(68), ResistorTolerance = default },
        GroundDrive = new GroundDrive { SeriesResistor = Resistance.FromKilohms(100) },
        Supply = new Supply { Lowest = Voltage.FromVolts(3), Highest = Voltage.FromVolts(3.3) },
    };

    private static Electrode Contact => new() { SeriesResistance = default, ContactResistance = Resistance.FromKilohms(8), ContactCapacitance = Capacitance.FromNanofarads(100) };

    private static NodeLevel Node(Design design, string node) => new Evaluation(design).Levels.Nodes.Single(one => one.Node.Text == node);

    private static void Is(double volts, double actual) => Assert.Equal(volts, actual, 2e-4 * Math.Max(Math.Abs(volts), 1e-6));

    /// <summary>By hand: offset 4·200 mV = 800 mV; the amplifier's own offset 4·1 mV = 4 mV, whatever its sign; signal 4·2 mV = 8 mV; noise
    /// 3.3·4·√((1e-12 + 2.51e-15) V²/Hz·(125 − 0.01) Hz) = 147.76 µV, the second part thermal of 136 kΩ and 16 kΩ; in all 812.15 mV of 1.4 V, 4.7297 dB. Without offset 12.148 mV stand there, so (1.4 V −
    /// 12.148 mV)/4 = 346.96 mV of offset are survived; without signal 804.15 mV, so (1.4 V − 804.15 mV)/4 = 148.96 mV of signal.</summary>
    [Fact]
    public void Amplifier_OfTheQuietDesign_IsByHand()
    {
        NodeLevel amplifier = Node(Quiet, "amplifier");
        Is(1.4, amplifier.Swing);
        Is(0.8, amplifier.Offset);
        Is(4e-3, amplifier.OtherDc);
        Is(8e-3, amplifier.Signal);
        Is(147.76e-6, amplifier.Noise);
        Assert.Equal(0, amplifier.Mains);
        Assert.Equal(4.7297, amplifier.Headroom!.Value, 1e-3);
        Is(0.34696, amplifier.OffsetSurvived!.Value);
        Is(0.14896, amplifier.LargestSignal!.Value);
    }

    /// <summary>By hand: with the ground electrode at common the active input carries the whole offset, the mean half of it: 100 mV + 4/2·200
    /// mV = 500 mV; own offset 4/2·1 mV; signal 8 mV/2 + 2 mV/2 = 5 mV; noise half of the output's, 73.9 µV; in all 507.07 mV of 1.4 V,
    /// 8.8212 dB.</summary>
    [Fact]
    public void InnerNodes_OfTheQuietDesign_CarryTheMeanAndHalfTheOutput()
    {
        foreach (string inner in (string[])["amplifier-inner-plus", "amplifier-inner-minus"])
        {
            NodeLevel node = Node(Quiet, inner);
            Is(0.5, node.Offset);
            Is(2e-3, node.OtherDc);
            Is(5e-3, node.Signal);
            Is(73.88e-6, node.Noise);
            Assert.Equal(8.8212, node.Headroom!.Value, 1e-3);
        }
    }

    /// <summary>By hand: a bias current of 1 nA into each input flows back through the ground's 108 kΩ together, and through 78 kΩ and 74 kΩ
    /// apart: difference 4 kΩ·1 nA = 4 µV; with four channels the reference pin draws 4 nA: 78 µV − 4·74 µV = −218 µV. The mean: 2·108 kΩ·1
    /// nA + 76 kΩ·1 nA = 292 µV, and the inner nodes 292 µV + 2·4 µV + 2 mV.</summary>
    [Fact]
    public void BiasCurrents_OfTheAmplifier_FlowThroughTheirLeads()
    {
        Design biased = Quiet with { Amplifier = Quiet.Amplifier with { BiasCurrent = Current.FromNanoamperes(1) } };
        Is(4e-3 + (4 * 4e-6), Node(biased, "amplifier").OtherDc);
        Is(2e-3 + 292e-6 + (2 * 4e-6), Node(biased, "amplifier-inner-plus").OtherDc);
        Is(4e-6, Evaluator.Evaluate(biased)["input.bias_offset"].Si);
        Is(218e-6, Evaluator.Evaluate(biased with { Channels = 4 })["input.bias_offset"].Si);
    }

    private static ElectrodeBuffer Buffer(double offsetVolts, double biasAmperes) => new()
    {
        SkinResistor = Resistance.FromKilohms(50), InputResistance = Resistance.FromOhms(1e15),
        OpAmp = new OpAmp { OffsetVoltage = Voltage.FromVolts(offsetVolts), BiasCurrent = Current.FromAmperes(biasAmperes), VoltageNoise = VoltageNoiseDensity.FromVoltsPerRootHertz(2e-6), OutputMargin = Voltage.FromMillivolts(50) },
    };

    /// <summary>By hand: a buffer with −3 mV of offset that draws 2 nA through its 50 kΩ and its electrode's 10 kΩ, and back through the
    /// ground's 108 kΩ. At its output: 200 mV of electrode offset, 3 mV + 2 nA·168 kΩ = 3.336 mV, signal 2 mV, noise 3.3·2 µV·√124.99 = 73.8
    /// µV, of 1.45 V: 205.41 mV, 16.975 dB. At the amplifier's input the ground's share cancels: 4·(1 mV + 3 mV + 2 nA·60 kΩ) = 16.48
    /// mV.</summary>
    [Fact]
    public void Buffer_AtTheActiveElectrode_IsAWholeOpAmp()
    {
        Design buffered = Quiet with { Electrodes = Quiet.Electrodes with { ActiveBuffer = Buffer(-3e-3, 2e-9) } };
        NodeLevel buffer = Node(buffered, "buffer-active");
        Is(1.45, buffer.Swing);
        Is(0.2, buffer.Offset);
        Is(3.336e-3, buffer.OtherDc);
        Is(2e-3, buffer.Signal);
        Assert.Equal(73.79e-6, buffer.Noise, 1e-7);
        Assert.Equal(16.975, buffer.Headroom!.Value, 1e-3);
        Is(16.48e-3, Node(buffered, "amplifier").OtherDc);
        Is(120e-6, Evaluator.Evaluate(buffered)["input.bias_offset"].Si);
    }

    /// <summary>By hand: the reference's buffer sees no electrode offset and no signal; 1 mV + 1 nA·(50 + 6 + 108) kΩ = 1.164 mV stand there.
    /// Both buffers' errors add up by size whatever their signs: 4·(1 mV + 3 mV + 120 µV + 1 mV + 56 µV) = 20.704 mV.</summary>
    [Fact]
    public void Buffers_AtBothElectrodes_AddUpBySize()
    {
        foreach (double sign in (double[])[1, -1])
        {
            Design buffered = Quiet with { Electrodes = Quiet.Electrodes with { ActiveBuffer = Buffer(-3e-3, 2e-9), ReferenceBuffer = Buffer(sign * 1e-3, sign * 1e-9) } };
            NodeLevel reference = Node(buffered, "buffer-reference");
            Assert.Equal(0, reference.Offset, 1e-9);
            Assert.Equal(0, reference.Signal, 1e-6);

            // The other buffer's bias current raises the body too: 2 nA through the ground's 108 kΩ.
            Is(1.164e-3 + 216e-6, reference.OtherDc);
            Is(20.704e-3, Node(buffered, "amplifier").OtherDc);
            Is(176e-6, Evaluator.Evaluate(buffered)["input.bias_offset"].Si);
        }
    }

    /// <summary>Every volt of a buffer's offset is a volt less of the electrodes'.</summary>
    [Fact]
    public void OffsetSurvived_WithABufferThatIsOff_FallsByItsOffset()
    {
        double Survived(double offset) => Evaluator.Evaluate(Quiet with { Electrodes = Quiet.Electrodes with { ActiveBuffer = Buffer(offset, 0) } })["levels.offset_survived"].Si;
        Assert.Equal(Survived(0) - 0.2, Survived(-0.2), 1e-6);
    }

    /// <summary>By hand: a second stage of 1 + 90/10 = 10 with 2 mV of offset and 1 nA of bias current, which flows through 9 kΩ beside 1 kΩ
    /// of what Rf and Rg are at − (90 kΩ·1 nA = 90 µV at the output) and through nothing at +: 10·4 mV + 10·2 mV + 90 µV = 60.09 mV; offset
    /// 8 V; signal 80 mV; its swing 1.5 V less its own 70 mV. The passive section behind it passes all of it on, and the converter's pin
    /// carries the same.</summary>
    [Fact]
    public void Stage_BehindTheAmplifier_AddsItsOwnErrors()
    {
        var opAmp = new OpAmp { OffsetVoltage = Voltage.FromMillivolts(2), BiasCurrent = Current.FromNanoamperes(-1), OutputMargin = Voltage.FromMillivolts(70) };
        var second = new GainStage { Name = "gain 2", FeedbackResistor = Resistance.FromKilohms(90), GroundResistor = Resistance.FromKilohms(10), OpAmp = opAmp };
        Design design = Quiet with { Stages = [second, .. Quiet.Stages] };
        foreach (string node in (string[])["gain-2", "converter"])
        {
            NodeLevel at = Node(design, node);
            Is(node == "gain-2" ? 1.43 : 3, at.Swing);
            Is(8, at.Offset);
            Is(60.09e-3, at.OtherDc);
            Assert.Equal(80e-3, at.Signal, 1e-4);
        }
    }

    /// <summary>By hand: a driven ground holds the mean of the inputs at common, to a part in 10,001. The active input carries half the
    /// offset, 100 mV, the reference the other half, and so the driven output stands at −100 mV. Half the signal's 2 mV besides, of 1.5 V less
    /// 60 mV: 101 mV. The inner nodes carry the amplified half alone.</summary>
    [Fact]
    public void Drive_OfTheQuietDesign_CarriesHalfTheOffsetAndHalfTheSignal()
    {
        Design driven = Quiet with { GroundDrive = Quiet.GroundDrive with { Kind = GroundKind.Driven, DcGain = 1e7, OutputMargin = Voltage.FromMillivolts(60) } };
        NodeLevel drive = Node(driven, "drive");
        Is(1.44, drive.Swing);
        Is(0.1, drive.Offset);
        Is(1e-3, drive.Signal);
        Assert.Equal(20 * Math.Log10(1.44 / 0.101), drive.Headroom!.Value, 1e-3);
        Is(0.4, Node(driven, "amplifier-inner-plus").Offset);
    }

    /// <summary>The mains at the inner nodes, at the driven output and at each stage, summed up plainly: √2 times the rms of every harmonic, by
    /// size.</summary>
    [Fact]
    public void Mains_AtEveryNode_IsTheSumOfItsPeaks()
    {
        Design design = Tests.Designs.Dry;
        var evaluation = new Evaluation(design);
        double common = 0, difference = 0, drive = 0, second = 0;
        foreach (MainsHarmonic harmonic in evaluation.Mains.Harmonics)
        {
            evaluation.Path.SweepTransfer([harmonic.Hertz]);
            common += Math.Sqrt(2) * harmonic.AtInput.CommonMode;
            difference += Math.Sqrt(2) * harmonic.AtInput.Difference;
            drive += Math.Sqrt(2) * harmonic.AtInput.Drive;
            second += Math.Sqrt(2) * harmonic.AtInput.Total * evaluation.Path.Size(1, 0);
        }

        NodeLevel[] nodes = [.. evaluation.Levels.Nodes];
        double Mains(string node) => nodes.Single(one => one.Node.Text == node).Mains;
        Assert.Equal(common + (design.Amplifier.Gain / 2 * difference), Mains("amplifier-inner-plus"), 1e-12);
        Assert.Equal(drive, Mains("drive"), 1e-12);
        Assert.Equal(second, Mains("gain-2"), 1e-12);
        Assert.True(0 < common && 0 < drive && 0 < second);
    }

    /// <summary>With a mid-rail of 1 V on 3 V the nearer rail decides: 1 V less each margin; the converter's pin keeps its ±3 V, and an open
    /// input may go the 2 V to the other rail.</summary>
    [Fact]
    public void Swing_OffTheMiddle_IsToTheNearerRail()
    {
        Design low = Quiet with
        {
            Supply = Quiet.Supply with { MidRail = Voltage.FromVolts(1) },
            Amplifier = Quiet.Amplifier with { InnerMargin = Voltage.FromMillivolts(150), BiasCurrent = Current.FromNanoamperes(1) },
        };
        Is(0.9, Node(low, "amplifier").Swing);
        Is(0.85, Node(low, "amplifier-inner-minus").Swing);
        Is(3, Node(low, "converter").Swing);
        Assert.Contains("goes to 2.00 V dc and 0 V of mains, peak, held at the rail", Evaluator.Evaluate(low)["open.active"].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Nodes_InTheirOrder_BeginWithTheBuffers()
    {
        Design both = Tests.Designs.Dry with { Electrodes = Tests.Designs.Dry.Electrodes with { ActiveBuffer = new(), ReferenceBuffer = new() } };
        Assert.Equal(
            ["buffer-active", "buffer-reference", "amplifier-inner-plus", "amplifier-inner-minus", "amplifier", "gain-2", "anti-alias-1", "converter", "drive"],
            new Evaluation(both).Levels.Nodes.Select(node => node.Node.Text));
        Design second = both with { Electrodes = both.Electrodes with { ActiveBuffer = null } };
        Assert.Equal(["buffer-reference", "amplifier-inner-plus"], new Evaluation(second).Levels.Nodes.Take(2).Select(node => node.Node.Text));
    }

    /// <summary>Noise and mains at every node a second time: 3.3 times the root of a plain sum over many frequencies, and √2 times the sum
    /// of the harmonics.</summary>
    [Fact]
    public void NoiseAndMains_AtTheNodes_ArePlainSums()
    {
        Design design = Tests.Designs.Dry with { Electrodes = Tests.Designs.Dry.Electrodes with { ActiveBuffer = new() { SkinResistor = Resistance.FromMegohms(1) } } };
        var evaluation = new Evaluation(design);
        SignalPath path = evaluation.Path;
        double high = design.Converter.Rate.Hertz / 2;
        const int Steps = 20_000;
        double ratio = Math.Pow(high / 0.01, 1.0 / Steps), amplifier = 0, buffer = 0;
        for (int i = 0; i < Steps; i++)
        {
            double low = 0.01 * Math.Pow(ratio, i), width = low * (ratio - 1), middle = low * Math.Sqrt(ratio);
            path.Sweep([middle]);
            path.SweepBuffers([middle]);
            (amplifier, buffer) = (amplifier + (path.NodeDensity[0][0] * width), buffer + (path.BufferDensity[0][0] * width));
        }

        NodeLevel[] nodes = [.. evaluation.Levels.Nodes];
        NodeLevel at = nodes.Single(node => node.Node.Text == "amplifier"), ahead = nodes.Single(node => node.Node.Text == "buffer-active");
        Assert.Equal(3.3 * Math.Sqrt(amplifier), at.Noise, 1e-5 * at.Noise);
        Assert.Equal(3.3 * Math.Sqrt(buffer), ahead.Noise, 1e-5 * ahead.Noise);
        double mains = 0;
        foreach (MainsHarmonic harmonic in evaluation.Mains.Harmonics)
        {
            path.SweepTransfer([harmonic.Hertz]);
            mains += Math.Sqrt(2) * harmonic.AtInput.Total * path.Size(0, 0);
        }

        Assert.Equal(mains, at.Mains, 1e-12);
        Assert.Equal(Math.Sqrt(2) * evaluation.Mains.Harmonics.Sum(harmonic => harmonic.AtInput.FirstBuffer), ahead.Mains, 1e-12);
        Assert.Equal(20 * Math.Log10(at.Swing / (at.Offset + at.OtherDc + at.Signal + at.Mains + at.Noise)), at.Headroom!.Value, 1e-9);
    }

    /// <summary>With the offset that is survived the first node just touches its limit, and so with the largest signal.</summary>
    [Property(MaxTest = 20)]
    public void OffsetAndSignal_AsLargeAsTheyMayBe_LeaveTheirNodeNothing(int seed)
    {
        Design design = Tests.Designs.Varied(seed, 3);
        if (Evaluator.Evaluate(design)["levels.offset_survived"] is not { State: ResultState.Number })
        {
            return;
        }

        LevelsBudget levels = new Evaluation(design).Levels;
        if (levels.OffsetSurvived is > 1e-6 and <= 2 and { } offset)
        {
            NodeLevel[] touching = [.. new Evaluation(design with { Electrodes = design.Electrodes with { Offset = Voltage.FromVolts(offset) } }).Levels.Nodes];
            Assert.Equal(0, touching.Single(node => node.Node == levels.OffsetLimitedBy!.Node).Headroom!.Value, 1e-6);
        }

        if (levels.LargestSignal is > 1e-6 and <= 1 and { } signal)
        {
            NodeLevel[] touching = [.. new Evaluation(design with { LargestSignal = Voltage.FromVolts(signal) }).Levels.Nodes];
            Assert.Equal(0, touching.Single(node => node.Node == levels.SignalLimitedBy!.Node).Headroom!.Value, 1e-6);
        }
    }

    /// <summary>A second stage of 101 behind ac coupling and 20 mV of signal behind a gain of 5: 10 V, whatever the offset.</summary>
    [Fact]
    public void OffsetSurvived_WhereAnotherNodeClipsWhateverTheOffset_NamesIt()
    {
        Design loud = Tests.Designs.Dry with { LargestSignal = Voltage.FromMillivolts(20), Electrodes = Tests.Designs.Dry.Electrodes with { Offset = Voltage.FromMillivolts(20) } };
        Assessment assessment = Evaluator.Evaluate(loud);
        Assert.Equal("limited by amplifier; gain-2 clips whatever the offset", assessment["levels.offset_survived"].Text);
        Assert.Equal("gain-2", assessment["levels.first_to_clip"].Text);
        Assert.Equal("limited by gain-2", assessment["levels.largest_signal"].Text);
        Assert.True(0.2 < assessment["levels.offset_survived"].Si);

        // 300 mV of offset behind a gain of 5 clip the amplifier, but less offset would not.
        Assessment far = Evaluator.Evaluate(Tests.Designs.Dry with { LargestSignal = Voltage.FromMillivolts(1) });
        Assert.True(far["levels.amplifier.headroom"].Si < 0);
        Assert.Equal("limited by amplifier", far["levels.offset_survived"].Text);
    }

    /// <summary>The buffer's 5 pF is 636.6 MΩ at 50 Hz; its own 1 TΩ beside it takes nothing away. The hand figure of the dc adds the
    /// buffer's term.</summary>
    [Fact]
    public void Input_WithABuffer_IsTheBuffers()
    {
        ElectrodeBuffer buffer = Buffer(0, 2e-9) with { InputResistance = Resistance.FromOhms(1e12), InputCapacitance = Capacitance.FromPicofarads(5) };
        Design buffered = Quiet with { Electrodes = Quiet.Electrodes with { ActiveBuffer = buffer }, Amplifier = Quiet.Amplifier with { BiasCurrent = Current.FromNanoamperes(1) } };
        Assessment assessment = Evaluator.Evaluate(buffered);
        Assert.Equal(636.6198e6, assessment["input.impedance_at_mains"].Si, 1e3);
        Result bias = assessment["input.bias_offset"];
        Assert.Equal("1 nA · 5.9 kΩ + 2 nA · 60 kΩ = 125.9 µV", bias.Hand!.Substituted);
        Assert.Equal(bias.Si, bias.Hand.Value.SiValue, 1e-4 * bias.Si);
    }
}
