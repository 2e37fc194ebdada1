using System.Globalization;
using FrontEnd.Amplifier;
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

/// <summary>An electrode that has come off: where the nodes go, held at the rails, and what clips.</summary>
public sealed class OpenElectrodeTests
{
    /// <summary>Gain 4 on 3 V, inputs of 10 GΩ to common and nothing between them; no mains, no offset.</summary>
    private static readonly Design Still = Tests.Designs.Gel with
    {
        Channels = 1,
        Mains = new Mains { Voltage = default, Field = default },
        Electrodes = Tests.Designs.Gel.Electrodes with { Offset = default },
        Amplifier = new DifferentialAmplifier { Gain = 4, CommonModeResistance = Resistance.FromOhms(10e9), DifferentialResistance = Resistance.FromOhms(1e16) },
        Supply = new Supply { Lowest = Voltage.FromVolts(3), Highest = Voltage.FromVolts(3.3) },
    };

    private static Design Biased(double amperes) => Still with { Amplifier = Still.Amplifier with { BiasCurrent = Current.FromAmperes(amperes) } };

    /// <summary>The common held at earth by 1 µF, the body by 100 pF; only the fundamental of 230 V.</summary>
    private static Design UnderMains(double leadFarads, double bodyFarads) => Still with
    {
        Caution = "for calculation only",
        Mains = new Mains
        {
            LeadToMains = Capacitance.FromFarads(leadFarads), BodyToMains = Capacitance.FromFarads(bodyFarads), BodyToEarth = Capacitance.FromPicofarads(100),
            AmplifierToMains = default, AmplifierToEarth = Capacitance.FromMicrofarads(1), Field = default, Harmonics = [1],
        },
        Input = new InputNetwork { SeriesResistor = Resistance.FromKilohms(68) },
    };

    /// <summary>By hand: 5 pA into 10 GΩ are 50 mV at the open input; 200 mV behind a gain of 4; 25 mV of mean and 100 mV
    /// of half the output at the one inner node, their difference at the other.</summary>
    [Fact]
    public void OpenInput_OfASmallBiasCurrent_GoesToItsDcResistance()
    {
        Assessment assessment = Evaluator.Evaluate(Biased(5e-12));
        foreach (string lead in (string[])["active", "reference"])
        {
            Assert.Equal(0.2, assessment[$"open.{lead}.amplifier"].Si, 1e-5);
            Assert.Equal(lead == "active" ? 0.125 : 0.075, assessment[$"open.{lead}.amplifier-inner-plus"].Si, 1e-5);
            Assert.Equal(lead == "active" ? 0.075 : 0.125, assessment[$"open.{lead}.amplifier-inner-minus"].Si, 1e-5);
            Assert.Equal(0.2, assessment[$"open.{lead}.converter"].Si, 1e-5);
            Assert.StartsWith("nothing clips", assessment[$"open.{lead}"].Text, StringComparison.Ordinal);
        }
    }

    /// <summary>Half-cells have either sign, and so have bias currents: what stands at a node is the sum by size, whichever way they lie.</summary>
    [Fact]
    public void OpenInput_OffsetAndBiasOfEitherSign_AddBySize()
    {
        Design Of(double volts, double amperes) => Biased(amperes) with
        {
            Electrodes = Still.Electrodes with { Offset = Voltage.FromVolts(volts) },
            Input = Still.Input with { BiasResistor = Resistance.FromMegohms(200) },
        };
        string[] nodes = ["open.active.amplifier", "open.active.converter", "open.reference.amplifier", "open.reference.converter"];
        Assessment both = Evaluator.Evaluate(Of(0.02, 1e-10)), other = Evaluator.Evaluate(Of(0.02, -1e-10)), offset = Evaluator.Evaluate(Of(0.02, 0)), bias = Evaluator.Evaluate(Of(0, 1e-10));
        Assert.Contains(nodes, node => 1e-3 < offset[node].Si && 1e-3 < bias[node].Si);
        Assert.All(nodes, node =>
        {
            Assert.Equal(offset[node].Si + bias[node].Si, both[node].Si, 1e-9);
            Assert.Equal(both[node].Si, other[node].Si, 1e-9);
        });
    }

    /// <summary>By hand: 2 nA into 10 GΩ would be 20 V; the rail holds the input at 1.5 V. The inner nodes are held at 1.4 V, the output at
    /// its 1.4 V too.</summary>
    [Fact]
    public void OpenInput_OfALargeBiasCurrent_IsHeldAtTheRail()
    {
        Assessment assessment = Evaluator.Evaluate(Biased(2e-9));
        Assert.Equal("amplifier inner plus, amplifier inner minus and amplifier clip; the open input goes to 1.50 V dc and 0 V of mains, peak, held at the rail", assessment["open.active"].Text);
        Assert.Equal(1.4, assessment["open.active.amplifier"].Si, 1e-9);
    }

    /// <summary>By hand: 50 mV at the open input are 200 mV behind the amplifier and 2 V behind a second stage of 10, which has 1.45 V.</summary>
    [Fact]
    public void OpenInput_WithASecondStageThatNeedsMore_NamesIt()
    {
        var second = new GainStage { Name = "gain 2", FeedbackResistor = Resistance.FromKilohms(90), GroundResistor = Resistance.FromKilohms(10) };
        Assessment assessment = Evaluator.Evaluate(Biased(5e-12) with { Stages = [second, .. Still.Stages] });
        Assert.StartsWith("gain 2 clips; the open input goes to 50.0 mV dc", assessment["open.active"].Text, StringComparison.Ordinal);
        Assert.Equal(1.45, assessment["open.active.gain-2"].Si, 1e-9);
        Assert.Contains("clips at ±1.45 V", assessment["open.active.gain-2"].Text, StringComparison.Ordinal);
    }

    /// <summary>By hand: with a buffer at the electrode its own 1 pA into its own 100 GΩ decide, 100 mV, and the amplifier's 2 nA flow through
    /// the buffer's output.</summary>
    [Fact]
    public void OpenInput_OfABuffer_IsTheBuffers()
    {
        var buffer = new ElectrodeBuffer { InputResistance = Resistance.FromOhms(100e9), OpAmp = new OpAmp { BiasCurrent = Current.FromAmperes(1e-12) } };
        Design buffered = Biased(2e-9) with { Electrodes = Still.Electrodes with { ActiveBuffer = buffer, ReferenceBuffer = buffer } };
        Assessment assessment = Evaluator.Evaluate(buffered);
        Assert.Equal(0.1, assessment["open.active.buffer-active"].Si, 1e-4);
        Assert.StartsWith("nothing clips", assessment["open.active"].Text, StringComparison.Ordinal);
        Assert.Contains("its buffer's output goes to 100 mV dc", assessment["open.active"].Text, StringComparison.Ordinal);

        // 100 pA would take the buffer to 10 V: its output stops at 1.45 V.
        buffer = buffer with { OpAmp = buffer.OpAmp with { BiasCurrent = Current.FromAmperes(1e-10) } };
        assessment = Evaluator.Evaluate(buffered with { Electrodes = Still.Electrodes with { ActiveBuffer = buffer, ReferenceBuffer = buffer } });
        Assert.Equal(1.45, assessment["open.active.buffer-active"].Si, 1e-9);
        Assert.StartsWith("buffer active, amplifier inner plus", assessment["open.active"].Text, StringComparison.Ordinal);
    }

    /// <summary>By hand: with the ground off, both inputs go where two bias currents take two inputs of 10 GΩ; the output sees nothing of
    /// it.</summary>
    [Fact]
    public void OpenGround_MovesBothInputs()
    {
        Assessment assessment = Evaluator.Evaluate(Biased(5e-12));
        Assert.Contains("both inputs go to 50.0 mV dc", assessment["open.ground"].Text, StringComparison.Ordinal);
        Assert.Equal(0, assessment["open.ground.amplifier"].Si, 1e-5);
        Assert.Equal(0.05, assessment["open.ground.amplifier-inner-plus"].Si, 1e-5);
    }

    /// <summary>By hand: 230 V over 10 fF into 10 + 22·1.05 + 5 + 3 pF are 55.96 mV rms, 79.1 mV peak, behind a gain of 4 317 mV; a floating
    /// lead of 1 pF picks up 5.4 V, which clips. The other lead's own pick-up and the electrodes are nothing beside it.</summary>
    [Theory]
    [InlineData(10e-15, 0.317)]
    [InlineData(1e-12, 1.4)]
    public void OpenInput_UnderMains_PicksThemUp(double leadFarads, double volts)
    {
        Assessment assessment = Evaluator.Evaluate(UnderMains(leadFarads, 0));
        Assert.Equal(volts, assessment["open.active.amplifier"].Si, 0.02 * volts);
        Assert.EndsWith(leadFarads > 1e-13 ? "and 1.50 V of mains, peak, held at the rail" : "of mains, peak", assessment["open.active"].Text, StringComparison.Ordinal);
        Assert.Equal(leadFarads > 1e-13, assessment["open.active.amplifier"].Text!.Contains("clips", StringComparison.Ordinal));
    }

    /// <summary>By hand: 1 pA into 10 GΩ are 10 mV; with 3 mV of the amplifier's own offset 52 mV stand behind the gain of 4, and 540 mV
    /// behind a second stage of 10 that is 2 mV off itself; errors add up by size whichever input is open.</summary>
    [Fact]
    public void OpenInput_WithOffsetVoltages_AddsThemBySize()
    {
        var second = new GainStage { Name = "gain 2", FeedbackResistor = Resistance.FromKilohms(90), GroundResistor = Resistance.FromKilohms(10), OpAmp = new OpAmp { OffsetVoltage = Voltage.FromMillivolts(2) } };
        Design off = Biased(1e-12) with { Stages = [second, .. Still.Stages] };
        Assessment assessment = Evaluator.Evaluate(off with { Amplifier = off.Amplifier with { OffsetVoltage = Voltage.FromMillivolts(-3) } });
        foreach (string lead in (string[])["active", "reference"])
        {
            Assert.Equal(52e-3, assessment[$"open.{lead}.amplifier"].Si, 1e-5);
            Assert.Equal(0.54, assessment[$"open.{lead}.gain-2"].Si, 1e-4);
            Assert.Equal(0.54, assessment[$"open.{lead}.converter"].Si, 1e-4);
        }
    }

    /// <summary>By hand: 230 V over 1 fF pick up a tenth of 10 fF's 79.1 mV; 31.7 mV behind the amplifier, 317 mV behind a second stage of
    /// 10.</summary>
    [Fact]
    public void OpenInput_UnderMains_PassesThemOnStageByStage()
    {
        var second = new GainStage { Name = "gain 2", FeedbackResistor = Resistance.FromKilohms(90), GroundResistor = Resistance.FromKilohms(10) };
        Design mains = UnderMains(1e-15, 0) with { Stages = [second, .. Still.Stages] };
        Assessment assessment = Evaluator.Evaluate(mains);
        Assert.Equal(31.7e-3, assessment["open.active.amplifier"].Si, 0.02 * 31.7e-3);
        Assert.Equal(0.317, assessment["open.active.gain-2"].Si, 0.02 * 0.317);
        Assert.Equal(assessment["open.active.gain-2"].Si, assessment["open.active.converter"].Si, 1e-3);
    }

    /// <summary>By hand: with the ground off, 230 V over 0.1 pF stand on the body's 100 pF to earth and on two inputs of 37 pF: 132.1 mV rms,
    /// 187 mV peak, at both inputs alike. 100 pF to the mains would be 76 V: the rails hold the inputs.</summary>
    [Fact]
    public void OpenGround_UnderMains_LiftsTheBody()
    {
        Assessment assessment = Evaluator.Evaluate(UnderMains(0, 0.1e-12));
        Assert.Equal(0.187, assessment["open.ground.amplifier-inner-plus"].Si, 0.02 * 0.187);
        Assert.Contains("both inputs go to 0 V dc (no bias current is given) and 18", assessment["open.ground"].Text, StringComparison.Ordinal);
        Assert.EndsWith("of mains, peak, held at the rail", Evaluator.Evaluate(UnderMains(0, 100e-12))["open.ground"].Text, StringComparison.Ordinal);
    }

    /// <summary>By hand: with the ground off and 200 mV between the electrodes the inputs lie 100 mV to either side of the 50 mV that the bias
    /// currents make of them. Of either sign: 50 mV + 4/2·200 mV at each inner node.</summary>
    [Fact]
    public void OpenGround_WithAnOffset_CountsBothSigns()
    {
        Assessment assessment = Evaluator.Evaluate(Biased(5e-12) with { Electrodes = Still.Electrodes with { Offset = Voltage.FromMillivolts(200) } });
        Assert.Contains("both inputs go to 150 mV dc", assessment["open.ground"].Text, StringComparison.Ordinal);
        Assert.Equal(0.45, assessment["open.ground.amplifier-inner-plus"].Si, 1e-4);
        Assert.Equal(0.45, assessment["open.ground.amplifier-inner-minus"].Si, 1e-4);
    }

    /// <summary>By hand: bias currents of 2 nA drive one input to the rail, 1.5 V, and the other follows it, 200 mV lower over the electrodes. The
    /// mean is 1.4 V: one inner node is held at its 1.4 V, the other stands at 1.4 V − 4/2·200 mV = 1 V, and 400 mV are left at the output, less what 2 nA make in the leads.</summary>
    [Fact]
    public void OpenGround_AtTheRail_KeepsTheOtherInputBesideIt()
    {
        Assessment assessment = Evaluator.Evaluate(Biased(2e-9) with { Electrodes = Still.Electrodes with { Offset = Voltage.FromMillivolts(200) } });
        Assert.Equal(0.4, assessment["open.ground.amplifier"].Si, 1e-3);
        Assert.StartsWith("amplifier inner plus and amplifier inner minus clip; both inputs go to 1.50 V dc", assessment["open.ground"].Text, StringComparison.Ordinal);
    }

    /// <summary>By hand: a buffer's own 5 mV of offset beside its 1 pA into 100 GΩ, whatever the two signs: 105 mV, 420 mV behind the gain of
    /// 4.</summary>
    [Theory]
    [InlineData(1e-12, 5e-3)]
    [InlineData(-1e-12, 5e-3)]
    public void OpenInput_OfABufferThatIsOff_AddsItsOffset(double amperes, double volts)
    {
        var buffer = new ElectrodeBuffer { InputResistance = Resistance.FromOhms(100e9), OpAmp = new OpAmp { BiasCurrent = Current.FromAmperes(amperes), OffsetVoltage = Voltage.FromVolts(volts) } };
        Assessment assessment = Evaluator.Evaluate(Still with { Electrodes = Still.Electrodes with { ActiveBuffer = buffer } });
        Assert.Equal(0.105, assessment["open.active.buffer-active"].Si, 1e-4);
        Assert.Equal(0.42, assessment["open.active.amplifier"].Si, 4e-4);
    }

    /// <summary>A driven ground follows the open input with the opposite sign until its own rail.</summary>
    [Fact]
    public void OpenInput_WithADrivenGround_StaysWithinTheSupply()
    {
        Design driven = Biased(2e-9) with { GroundDrive = Tests.Designs.Dry.GroundDrive };
        Assessment assessment = Evaluator.Evaluate(driven);
        Assert.Equal(1.45, assessment["open.active.drive"].Si, 1e-6);
        Assert.Contains("drive", assessment["open.active"].Text, StringComparison.Ordinal);
    }

    /// <summary>Nothing goes beyond the supply, whatever the design.</summary>
    [Property(MaxTest = 30)]
    public void OpenElectrode_OfAnyDesign_GoesNowhereBeyondTheSupply(int seed)
    {
        Design design = Tests.Designs.Varied(seed, 6);
        var random = new Random(seed);
        ElectrodeBuffer? One() => random.Next(2) == 0 ? null : new ElectrodeBuffer { OpAmp = new OpAmp { BiasCurrent = Current.FromAmperes(Math.Pow(10, -13 + (6 * random.NextDouble()))), OffsetVoltage = Voltage.FromMillivolts(5) } };
        design = design with
        {
            Electrodes = design.Electrodes with { ActiveBuffer = One(), ReferenceBuffer = One() },
            Amplifier = design.Amplifier with { BiasCurrent = Current.FromAmperes(Math.Pow(10, -13 + (6 * random.NextDouble()))) },
        };
        double supply = design.Supply.Lowest.Volts;
        foreach (Result result in Evaluator.Evaluate(design).Results.Where(result => result.Id.Text.StartsWith("open.", StringComparison.Ordinal) && result.State == ResultState.Number))
        {
            Assert.True(result.Si <= Math.Max(supply, design.Converter.FullScale.Volts / 2) * (1 + 1e-9), string.Create(CultureInfo.InvariantCulture, $"{result.Id} {result.Si} of {supply}"));
        }
    }
}
