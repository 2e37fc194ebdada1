using FrontEnd.Amplifier;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using Xunit;

namespace FrontEnd.Tests.Reporting;

/// <summary>Where a verdict's words begin and end: fail beyond the limit, marginal up to a tenth of it, 3 dB or one bit on the right side,
/// then pass.</summary>
public sealed class VerdictTests
{
    /// <summary>With a headroom above 0 dB, and with the mains in the band so that some of it is recorded there.</summary>
    private static readonly Design Dry = Tests.Designs.Dry with
    {
        Electrodes = Tests.Designs.Dry.Electrodes with { Offset = Voltage.FromMillivolts(20) },
        LargestSignal = Voltage.FromMicrovolts(200),
        Band = new Band("design", Frequency.FromHertz(0.5), Frequency.FromHertz(60)),
    };

    private static readonly Assessment Now = Evaluator.Evaluate(Dry);

    private static double Value(string id) => Now[id].Si;

    private static VerdictKind Judged(string id, Requirements requirements) =>
        Evaluator.Evaluate(Dry with { Requirements = requirements })[id].Verdict.Kind;

    /// <summary>A value of 0.91 of the greatest limit leaves 9 % of it, one of 0.89 leaves 11 %.</summary>
    [Theory]
    [InlineData(1.001, VerdictKind.Fail)]
    [InlineData(1, VerdictKind.Marginal)]
    [InlineData(0.91, VerdictKind.Marginal)]
    [InlineData(0.89, VerdictKind.Pass)]
    public void AtMost_AShareOfTheLimit_IsTheWord(double share, VerdictKind word)
    {
        var asked = new Requirements();
        Current fault = Current.FromAmperes(Value("safety.fault_current") / share), shared = Current.FromAmperes(Value("safety.shared_fault_current") / share),
            ground = Current.FromAmperes(Value("safety.driven_ground_current") / share);
        Assert.Equal(word, Judged("safety.fault_current", asked with { FaultCurrent = fault }));
        Assert.Equal(word, Judged("safety.shared_fault_current", asked with { FaultCurrent = shared }));
        Assert.Equal(word, Judged("safety.driven_ground_current", asked with { DrivenGroundCurrent = ground }));
        Assert.Equal(word, Judged("noise.board_share", asked with { Noise = VoltagePeakToPeak.FromVolts(Value("noise.board_share") / share) }));
        Assert.Equal(word, Judged("mains.total", asked with { MainsAtElectrodes = VoltageRms.FromVolts(Value("mains.total") / share) }));
        Assert.Equal(word, Judged("mains.recorded", asked with { MainsRecorded = VoltageRms.FromVolts(Value("mains.recorded") / share) }));
    }

    /// <summary>A value of 1.09 of the least limit leaves 9 % of it, one of 1.11 leaves 11 %.</summary>
    [Theory]
    [InlineData(0.999, VerdictKind.Fail)]
    [InlineData(1, VerdictKind.Marginal)]
    [InlineData(1.09, VerdictKind.Marginal)]
    [InlineData(1.11, VerdictKind.Pass)]
    public void AtLeast_AShareOfTheLimit_IsTheWord(double share, VerdictKind word)
    {
        var asked = new Requirements();
        Assert.Equal(word, Judged("levels.offset_survived", asked with { Offset = Voltage.FromVolts(Value("levels.offset_survived") / share) }));
        Assert.Equal(word, Judged("drive.worst_phase_margin", asked with { PhaseMargin = Angle.FromDegrees(Value("drive.worst_phase_margin") / share) }));
    }

    /// <summary>Decibels count by difference, whatever the limit: 2.9 dB are barely met, 3.1 dB are met.</summary>
    [Theory]
    [InlineData(-0.01, VerdictKind.Fail)]
    [InlineData(0, VerdictKind.Marginal)]
    [InlineData(2.9, VerdictKind.Marginal)]
    [InlineData(3.1, VerdictKind.Pass)]
    public void AtLeast_SomeDecibelsToSpare_IsTheWord(double spare, VerdictKind word)
    {
        string node = Now["levels.first_to_clip"].Text!;
        Assert.Equal(word, Judged($"levels.{node}.headroom", new Requirements { Headroom = Decibels.FromStated(Value($"levels.{node}.headroom") - spare) }));
        Assert.Equal(word, Judged("alias.fold_attenuation", new Requirements { Fold = Decibels.FromStated(Value("alias.fold_attenuation") - spare) }));
    }

    /// <summary>As many bits as are needed are barely enough, one more is enough.</summary>
    [Theory]
    [InlineData(-1, VerdictKind.Fail)]
    [InlineData(0, VerdictKind.Marginal)]
    [InlineData(1, VerdictKind.Pass)]
    public void Bits_SomeToSpare_IsTheWord(int spare, VerdictKind word)
    {
        double needed = Value("converter.bits_needed");
        Assessment assessment = Evaluator.Evaluate(Dry with { Converter = Dry.Converter with { Bits = needed + spare } });
        Assert.Equal(needed, assessment["converter.bits_needed"].Si);
        Assert.Equal(word, assessment["converter.bits_needed"].Verdict.Kind);
    }

    /// <summary>Marginal counts as met, and the margin is what is left of the limit.</summary>
    [Fact]
    public void Margin_OfAVerdict_IsTheDistanceToItsLimit()
    {
        Verdict verdict = Now["safety.fault_current"].Verdict;
        Assert.Equal(50e-6 - (3.3 / 99e3), verdict.Margin!.Value, 1e-15);
        Assert.False(verdict.IsAboveLimit);
        Assert.Equal("requirements.fault-current", verdict.Requirement);
        Assert.Equal("requirements.fault-current", Now["safety.shared_fault_current"].Verdict.Requirement);
    }

    /// <summary>The sentence says on which side of the limit the figure lies, and what is over, short or spare.</summary>
    [Theory]
    [InlineData(1.25, " is above ", ", over by ", " required ", " to spare")]
    [InlineData(0.8, "; the limit is ", " to spare", " is below ", ", short by ")]
    public void Because_OnEitherSideOfTheLimit_SaysWhichAndByHowMuch(double share, string most, string over, string least, string under)
    {
        var asked = new Requirements
        {
            Noise = VoltagePeakToPeak.FromVolts(Value("noise.board_share") / share),
            Offset = Voltage.FromVolts(Value("levels.offset_survived") / share),
        };
        Assessment assessment = Evaluator.Evaluate(Dry with { Requirements = asked });
        string noise = assessment["noise.board_share"].Verdict.Because, offset = assessment["levels.offset_survived"].Verdict.Because;
        Assert.Contains(most, noise, StringComparison.Ordinal);
        Assert.Contains(over, noise, StringComparison.Ordinal);
        Assert.Contains(least, offset, StringComparison.Ordinal);
        Assert.Contains(under, offset, StringComparison.Ordinal);
    }

    /// <summary>A current without a bound stands against its limit, and nothing is spare.</summary>
    [Fact]
    public void Because_WithoutABound_NamesNoMargin()
    {
        Verdict verdict = Evaluator.Evaluate(Dry with { Input = Dry.Input with { SeriesResistor = default } })["safety.fault_current"].Verdict;
        Assert.Equal(VerdictKind.Fail, verdict.Kind);
        Assert.Contains("; the limit is 50.0 µA", verdict.Because, StringComparison.Ordinal);
        Assert.DoesNotContain("spare", verdict.Because, StringComparison.Ordinal);
    }

    /// <summary>The dividers' phasor is turned by the leads' one: the larger of them exceeds what both leave, and the verdict says so.</summary>
    [Fact]
    public void Dominates_PhasorsThatCancel_SaysWhatIsLeft()
    {
        Design design = new()
        {
            Electrodes = new ElectrodeSet { Active = new Electrode { SeriesResistance = default, ContactResistance = default }, Ground = null, ActiveBuffer = new ElectrodeBuffer() },
            Input = new InputNetwork { SeriesResistor = default, BiasResistor = Resistance.FromMegohms(100) },
        };
        Assessment assessment = Evaluator.Evaluate(design);
        Assert.True(assessment["mains.imbalance"].Si < assessment["mains.divider"].Si, "the case does not cancel");
        Assert.EndsWith(" is left", assessment["mains.total"].Verdict.Dominates, StringComparison.Ordinal);
        Assert.Contains("; the leads' pick-up cancels part of it, ", assessment["mains.total"].Verdict.Dominates, StringComparison.Ordinal);
        Assert.DoesNotContain(" is left", Now["mains.total"].Verdict.Dominates!, StringComparison.Ordinal);
    }
}
