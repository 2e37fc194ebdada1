using FrontEnd.Amplifier;
using FrontEnd.Budgets;
using FrontEnd.Circuits;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Electrodes;
using FrontEnd.Filters;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Text;
using FrontEnd.Topologies;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Tests.Budgets;

/// <summary>Recovery after a step of the electrodes' offset, against hand cases and against small steps in time.</summary>
public sealed class RecoveryTests
{
    /// <summary>An op-amp slow enough for small steps in time.</summary>
    private static readonly OpAmp Slow = OpAmp.MicropowerCmos with { GainBandwidth = Frequency.FromHertz(3000), DcGain = 1e5 };

    private static readonly GainStage Coupling = new() { Name = "gain 2", CouplingCapacitor = Capacitance.FromMicrofarads(1), CouplingResistor = Resistance.FromMegohms(1) };

    private static Design Bare { get; } = new()
    {
        Amplifier = new DifferentialAmplifier { Gain = 2 },
        Stages = [],
        Digital = [],
    };

    /// <summary>R·C·ln(V0·G/(10 µV·G_mid)): e^(−t) of the step, in the middle of the band the same gain but for the corners.</summary>
    [Fact]
    public void Recovery_AcCouplingAndFastSection_IsTheCouplingsDecay()
    {
        double w = 2 * Math.PI * 10e3, q = Math.Sqrt(0.5);
        var fast = new SallenKeySection { Name = "anti-alias 1", R1 = Resistance.FromKilohms(10), R2 = Resistance.FromKilohms(10), C1 = Capacitance.FromFarads(2 * q / (w * 10e3)), C2 = Capacitance.FromFarads(1 / (2 * q * w * 10e3)) };
        Assessment assessment = Evaluator.Evaluate(Bare with { Amplifier = Bare.Amplifier with { Bandwidth = Frequency.FromHertz(1e8) }, Stages = [Coupling, fast] });
        Result recovery = assessment["levels.recovery"];
        double gain = 2 / assessment["gain.mid"].Si;
        Assert.Equal(Math.Log(0.3 * gain / 10e-6), recovery.Si, 2.0 / 250);

        Result settling = assessment["filter.path.settling"];
        Assert.Equal(Math.Log(1000 / (1 + Math.Exp(-Math.PI))), settling.Si, 1e-4);
        Assert.Contains("largest value", settling.Name, StringComparison.Ordinal);
    }

    /// <summary>With gain 5 the amplifier is asked for 1.5 V and has 1.4 V: it holds, whatever is coupled behind it.</summary>
    [Fact]
    public void Recovery_AmplifierAtItsLimit_IsUnboundedAndNamesIt()
    {
        Assessment assessment = Evaluator.Evaluate(Bare with { Amplifier = new DifferentialAmplifier { Gain = 5 }, Stages = [Coupling] });
        Result recovery = assessment["levels.recovery"];
        Assert.Equal(ResultState.Unbounded, recovery.State);
        Assert.StartsWith("amplifier ", recovery.Text, StringComparison.Ordinal);
        Assert.Contains("  a step of 300 mV: amplifier stays at its limit", FrontEnd.Teaching.Diagrams.Of(assessment, new("levels.recovery"))!.Lines(assessment).Select(line => "  " + line.Trim()));
        Finding finding = Assert.Single(assessment.Findings, finding => finding.Code == Messages.NotSettled);
        Assert.Contains("`amplifier`", finding.Message, StringComparison.Ordinal);
    }

    /// <summary>The converter's half full scale is a limit like the others: 0.6 V of the offset against 0.5 V.</summary>
    [Fact]
    public void Recovery_ConverterAtItsLimit_IsUnboundedAndNamesIt()
    {
        Assessment assessment = Evaluator.Evaluate(Bare with { Converter = new AnalogDigitalConverter { FullScale = VoltagePeakToPeak.FromVolts(1) } });
        Assert.StartsWith("converter ", assessment["levels.recovery"].Text, StringComparison.Ordinal);
    }

    /// <summary>The inner nodes leave less than the output where the common mode, half of the 0.3 V, takes their room: ±(1.5 − 0.9 − 0.15) V, of which the difference may be twice.</summary>
    [Fact]
    public void Recovery_InnerNodesHaveLessRoom_TheyLimitTheAmplifier()
    {
        Design design = Bare with { Amplifier = new DifferentialAmplifier { Gain = 4.5, InnerMargin = Voltage.FromMillivolts(900) } };
        Recovery recovery = new Evaluation(design).Recovery;
        (LimitedBlock block, double volts) = recovery.HeldBy!.Value;
        Assert.Equal(0.3 * 4.5, volts, 1e-3);
        Assert.Equal(0.9, block.Swing, 1e-5);
    }

    /// <summary>Nothing removes the offset: the recording has its end value after the anti-alias filter has settled, and says that the offset stays.</summary>
    [Fact]
    public void Recovery_NoHighPassAnywhere_IsToItsEndValueAndSaysSo()
    {
        RcSection rc = new() { Name = "anti-alias 1", R = Resistance.FromKilohms(100), C = Capacitance.FromMicrofarads(1) };
        Assessment assessment = Evaluator.Evaluate(Bare with { Stages = [rc] });
        double ratio = 2 / assessment["gain.mid"].Si;
        Result recovery = assessment["levels.recovery"];

        // e^(−t/0.1 s) of 600 mV at the converter; the last sample before it falls below 10 µV.
        Assert.Equal(0.1 * Math.Log(0.3 * ratio / 10e-6), recovery.Si, 1.01 / 250);
        Assert.Contains("no high-pass removes the offset", recovery.Text, StringComparison.Ordinal);
    }

    /// <summary>Where the design's electrodes have no offset, the one asked for is the step.</summary>
    [Fact]
    public void Step_NoElectrodeOffset_IsTheOneAskedFor()
    {
        Design design = Bare with { Electrodes = new ElectrodeSet { Offset = default } };
        Assert.Equal(0.3, design.OffsetStep.Volts);
        Assert.Equal(0.2, (design with { Electrodes = new ElectrodeSet { Offset = Voltage.FromVolts(-0.2) } }).OffsetStep.Volts);
    }

    /// <summary>A notch whose op-amp is too slow for it swings up by itself: said, with no number.</summary>
    [Fact]
    public void Recovery_StageThatSwingsUp_NeverComesToRest()
    {
        var chain = new LimitedChain([new LimitedBlock(FrontEnd.Identity.NodeId.Amplifier, new StateSpace([0.1, 5, -5, 0.1], [1, 0], [1, 0], 0), 1)], 0.1, 1.0 / 250);
        Assert.Null(chain.Stretches());
    }

    /// <summary>A stage of gain 1e9 on an op-amp of gain 1e12 is no such one, however large its voltages per volt.</summary>
    [Fact]
    public void Recovery_StageOfHugeGain_ComesToRestAtItsLimit()
    {
        GainStage huge = new() { Name = "gain 2", FeedbackResistor = Resistance.FromOhms(1e10), GroundResistor = Resistance.FromOhms(10), OpAmp = OpAmp.MicropowerCmos with { DcGain = 1e12 } };
        Recovery recovery = new Evaluation(Bare with { Stages = [huge] }).Recovery;
        Assert.True(recovery.ComesToRest);
        Assert.Equal("gain-2", recovery.HeldBy!.Value.Block.Node.Text);
    }

    /// <summary>A step that is below 10 µV from the first sample on has recovered at once.</summary>
    [Fact]
    public void Recovery_StepBelowTheTolerance_IsZero()
    {
        Design design = Bare with { Electrodes = new ElectrodeSet { Offset = Voltage.FromMicrovolts(5) }, Digital = [new DigitalHighPass { Name = "high-pass" }] };
        Assert.Equal(0, Evaluator.Evaluate(design)["levels.recovery"].Si);
    }

    /// <summary>Poles that lie on one another: a critically damped high-pass of any order dies down, later the higher it is.</summary>
    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(6)]
    public void Recovery_CriticallyDampedHighPass_IsWhatTheSamplesSay(int order)
    {
        Design design = Bare with { Digital = [new DigitalHighPass { Name = "high-pass", Order = order, Family = FilterFamily.CriticallyDamped, Corner = Frequency.FromHertz(0.5) }] };
        var evaluation = new Evaluation(design);
        Assert.Equal(Plain(design, evaluation, 60), evaluation.Recovery.LastSample);
    }

    /// <summary>So many samples to the end that the changes from sample to sample, not the windows, say which of them stay within: slow and smooth, and slow
    /// and swinging.</summary>
    [Theory]
    [InlineData(2, FilterFamily.Butterworth)]
    [InlineData(5, FilterFamily.Butterworth)]
    [InlineData(4, FilterFamily.Chebyshev)]
    [InlineData(3, FilterFamily.CriticallyDamped)]
    public void Recovery_SlowHighPassAtAHighRate_IsWhatTheSamplesSay(int order, FilterFamily family)
    {
        Design design = Bare with
        {
            Converter = Bare.Converter with { Rate = Frequency.FromKilohertz(8) },
            Digital = [new DigitalHighPass { Name = "high-pass", Order = order, Family = family, Corner = Frequency.FromHertz(0.4) }],
        };
        var evaluation = new Evaluation(design);
        Assert.InRange(evaluation.Recovery.LastSample!.Value, 10_000, 400_000);
        Assert.Equal(Plain(design, evaluation, 60), evaluation.Recovery.LastSample.Value, 1.0);
    }

    /// <summary>Drawn chains with stages that clip for a while, against small steps in time and a plain loop over the samples.</summary>
    [Property(MaxTest = 8)]
    public void Recovery_AnyChain_AgreesWithSmallSteps(int seed)
    {
        var random = new Random(seed);
        double Draw(double low, double high) => low * Math.Pow(high / low, random.NextDouble());
        Resistance R(double low, double high) => Resistance.FromOhms(Draw(low, high));
        Capacitance C(double low, double high) => Capacitance.FromFarads(Draw(low, high));
        GainStage Gain(string name) => new()
        {
            Name = name, CouplingCapacitor = C(1e-7, 1e-6), CouplingResistor = R(1e5, 5e5), GroundResistor = Resistance.FromKilohms(1), FeedbackResistor = R(1e3, 3e4), OpAmp = Slow,
        };
        Design design = Bare with
        {
            Amplifier = new DifferentialAmplifier { Gain = Draw(1, 4), Bandwidth = Frequency.FromHertz(Draw(300, 3000)) },
            Stages =
            [
                Gain("gain 2"), .. random.Next(2) == 0 ? [Gain("gain 3")] : Array.Empty<Stage>(),
                new SallenKeySection { Name = "anti-alias 1", R1 = R(2e4, 1e5), R2 = R(2e4, 1e5), C1 = C(3e-8, 3e-7), C2 = C(3e-8, 3e-7), OpAmp = Slow },
            ],
            Converter = new AnalogDigitalConverter { Rate = Frequency.FromHertz(random.Next(2) == 0 ? 250 : 1000), FullScale = VoltagePeakToPeak.FromVolts(Draw(0.5, 3)) },
            Digital = random.Next(3) switch
            {
                0 => [],
                1 => [new DigitalHighPass { Name = "high-pass", Corner = Frequency.FromHertz(Draw(0.3, 3)), Order = 1 + random.Next(4) }],
                _ => [new DigitalNotch { Name = "notch", Centre = Frequency.FromHertz(50), Q = Draw(2, 60) }, new DigitalHighPass { Name = "high-pass", Corner = Frequency.FromHertz(1) }],
            },
        };
        var evaluation = new Evaluation(design);
        Recovery recovery = evaluation.Recovery;
        Assert.NotNull(recovery.LastSample);
        long plain = Plain(design, evaluation, (recovery.Seconds!.Value * 1.2) + 0.5);
        Assert.InRange(recovery.LastSample.Value, plain - 1 - (plain / 500), plain + 1 + (plain / 500));

        // The curve is the same recording.
        (double[] seconds, double[] volts) = recovery.Curve();
        Assert.Equal(0, seconds[0]);
        Assert.True(Math.Abs(volts[^1] - recovery.FinalVolts) <= Recovery.Tolerance);
    }

    /// <summary>Small steps through the analogue chain, the digital filters sample by sample in the direct form I.</summary>
    private static long Plain(Design design, Evaluation evaluation, double seconds)
    {
        double half = design.Supply.HalfRailVolts, rate = design.Converter.Rate.Hertz, step = evaluation.Levels.Direct.Difference.Offset[0] * 0.3;
        double inner = 2 * (half - design.Amplifier.InnerMargin.Volts - (evaluation.Levels.Direct.Mean.Offset[0] * 0.3));
        (StateSpace Block, double Swing)[] blocks =
        [
            (StateSpace.LowPass(design.Amplifier.Gain, design.Amplifier.Bandwidth.Hertz), Math.Min(half - design.Amplifier.OutputMargin.Volts, inner)),
            .. design.Stages.Select(stage => (StateSpace.Of(stage.Circuit()), half - (stage.FittedOpAmp?.OutputMargin.Volts ?? double.NegativeInfinity))),
            (new StateSpace([], [], [], 1), ConverterSupply.Swing(design.Converter, design.Supply.Lowest).Volts),
        ];
        double fastest = blocks.Max(one => TimeSteps.Norm(one.Block.A, one.Block.Order));
        int between = Math.Max(4, (int)Math.Ceiling(fastest * 0.5 / rate)), samples = (int)(seconds * rate);
        var chain = new PlainChain(blocks, step);
        Biquad[] sections = [.. evaluation.Digital.Sections.Sections];
        double[,] before = new double[sections.Length + 1, 2];
        var recorded = new double[samples];
        double final = blocks.Aggregate(step, (volts, one) =>
            Math.Clamp(volts * (one.Block.D + one.Block.C.Zip(one.Block.Settled(), (c, x) => c * x).Sum()), -one.Swing, one.Swing)) * evaluation.Digital.Sections.DcGain;
        for (int k = 0; k < samples; k++)
        {
            double value = chain.Output();
            for (int s = 0; s < sections.Length; s++)
            {
                double output = (sections[s].B0 * value) + (sections[s].B1 * before[s, 0]) + (sections[s].B2 * before[s, 1])
                    - (sections[s].A1 * before[s + 1, 0]) - (sections[s].A2 * before[s + 1, 1]);
                (before[s, 1], before[s, 0]) = (before[s, 0], value);
                if (s == sections.Length - 1)
                {
                    (before[s + 1, 1], before[s + 1, 0]) = (before[s + 1, 0], output);
                }

                value = output;
            }

            recorded[k] = value;
            for (int i = 0; i < between; i++)
            {
                chain.Step(1 / rate / between);
            }
        }

        int last = Array.FindLastIndex(recorded, value => 10e-6 * evaluation.GainMid < Math.Abs(value - final));
        return Math.Max(0, last);
    }
}
