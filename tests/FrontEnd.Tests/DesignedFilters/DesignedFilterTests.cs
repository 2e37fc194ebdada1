using System.Numerics;
using FrontEnd.AntiAlias;
using FrontEnd.Circuits;
using FrontEnd.DesignedFilters;
using FrontEnd.Digital;
using FrontEnd.Filters;
using FrontEnd.Quantities;
using FrontEnd.Topologies;
using Xunit;

namespace FrontEnd.Tests.DesignedFilters;

/// <summary>What is said of a designed filter, against closed forms and the parts themselves.</summary>
public class DesignedFilterTests
{
    private static readonly OpAmp Real = OpAmp.MicropowerCmos with { OutputResistance = Resistance.FromOhms(500), OffsetVoltage = Voltage.FromMillivolts(2) };

    private static DesignedSections LowPass(OpAmp opAmp, int order = 4) => DesignedSections.Of(
        new FilterWish { Family = FilterFamily.Butterworth, Shape = FilterShape.LowPass, Order = order, Corners = [Frequency.FromHertz(70)] }.Design(), new FilterParts { OpAmp = opAmp });

    /// <summary>Ideal column: −10·log10(1 + x⁸); built column: the sections' own response against that at 0 Hz; the largest difference is nowhere exceeded up to twice the corner.</summary>
    [Fact]
    public void LowPass_ComparedWithTheIdeal_IsTheClosedForm()
    {
        BuiltLowPass built = LowPass(Real).LowPass!;
        Stage[] stages = [.. built.Sections.Select(one => one.Section.Stage)];
        double zero = AsBuiltSection.PowerResponse(stages, 0);
        double Built(double f) => 10 * Math.Log10(AsBuiltSection.PowerResponse(stages, f) / zero);
        static double Ideal(double f) => -10 * Math.Log10(1 + Math.Pow(f / 70, 8));
        Assert.Equal(12, built.Response.Count);
        foreach (ResponseComparison at in built.Response)
        {
            Assert.Equal(Ideal(at.At.Hertz), at.Ideal.Value, 1e-6);
            Assert.Equal(Built(at.At.Hertz), at.Built.Value, 1e-4);
        }

        double worst = Enumerable.Range(1, 2000).Max(i => Math.Abs(Built(1.4 * 70 * i / 1400) - Ideal(1.4 * 70 * i / 1400)));
        Assert.InRange(built.LargestError.Loss!.Value.Value, worst * 0.95, worst * 1.01 + 1e-6);
        Assert.Equal(10 * Math.Log10(0.5), Built(built.HalfPower!.Value.Hertz), 1e-5);
        Assert.Equal(1, built.Gain, 1e-12);

        // Behind Ro the stop band turns up again; the ideal falls on.
        RiseAgainstIdeal rise = built.Rise!;
        Assert.Equal(-Ideal(rise.Built.TurnsAt.Hertz), rise.IdealAtTurn.Value, 1e-6);
        Assert.Equal(-Ideal(rise.Built.LeastAt.Hertz), rise.IdealAtLeast.Value, 1e-6);
        Assert.Equal(-Built(rise.Built.TurnsAt.Hertz), rise.Built.LossAtTurn, 1e-6);
        double[] above = [.. Enumerable.Range(0, 4001).Select(i => rise.Built.TurnsAt.Hertz * Math.Pow(1e9 / rise.Built.TurnsAt.Hertz, i / 4000.0))];
        Assert.InRange(rise.Built.LeastLossBeyond, above.Min(f => -Built(f)) - 1e-3, above.Min(f => -Built(f)) + 1e-6);
        Assert.Null(LowPass(OpAmp.MicropowerCmos).LowPass!.Rise);
    }

    /// <summary>Own noise from a hundredth of the corner to ten times it: the op-amps' and resistors' own, as summed for the stages in a design (StageNetworkTests has the plain sum). What the card does not say is not zero.</summary>
    [Fact]
    public void OwnNoise_OfALowPass_IsOverTheBandThatItNames()
    {
        OwnNoise noise = LowPass(Real).LowPass!.Noise, silent = LowPass(OpAmp.MicropowerCmos with { OffsetVoltage = default, BiasCurrent = default }).LowPass!.Noise;
        Assert.Equal((0.7, 700.0), (Math.Round(noise.From.Hertz, 9), Math.Round(noise.To.Hertz, 9)));
        Assert.True(noise.HasOffset && !silent.HasOffset && !silent.HasBias);
        Assert.Null(silent.DcError);
        // Two followers: at least both offsets.
        Assert.True(4e-3 <= noise.DcError!.Value.Volts && noise.DcError.Value.Volts < 10e-3);
        // White noise of both op-amps alone over the low-pass's noise bandwidth, 70 Hz·1.026, is the least it can be.
        double least = Math.Sqrt(Math.Pow(Real.VoltageNoise.VoltsPerRootHertz, 2) * 70);
        Assert.InRange(noise.Noise.Volts, least, 20 * least);
    }

    /// <summary>Depth, flanks, gain and what a part does, each from the circuit's response.</summary>
    [Theory]
    [InlineData(NotchKind.TwinT)]
    [InlineData(NotchKind.StateVariable)]
    public void Notch_Built_SaysWhatItsCircuitDoes(NotchKind kind)
    {
        BuiltNotch notch = DesignedSections.Of(new NotchWish { Q = 5 }.DesignAnalog(), new FilterParts { OpAmp = Real, Notch = kind }).Notch!;
        NotchCircuit circuit = notch.Circuit.Circuit;
        double far = Complex.Abs(circuit.Response(0.005));
        double Loss(NotchCircuit of, double f) => -20 * Math.Log10(Complex.Abs(of.Response(f)) / Complex.Abs(of.Response(0.0005)));
        Assert.Equal(0.004, notch.Deviation.Fraction, 1e-12);
        Assert.Equal(Math.Min(Loss(circuit, 49.8), Loss(circuit, 50.2)), notch.DepthAtDeviation!.Value.Value, 1e-3);
        Assert.Equal(Loss(circuit, 50), notch.Depth!.Value.Value, 1e-3);
        Assert.Equal(far, notch.Gain, 1e-6);
        double[] sweep = [.. Enumerable.Range(0, 20_001).Select(i => 49 + (i / 10_000.0))];
        Assert.Equal(sweep.MinBy(f => Complex.Abs(circuit.Response(f))), notch.DeepestAt.Hertz, 2e-4);
        Assert.Equal(circuit.Names.Count, notch.Parts.Count);
        for (int part = 0; part < circuit.Names.Count; part++)
        {
            Assert.Equal(Loss(circuit.With(part, 1.01), 50), notch.Sensitivities[part].DepthWithOnePerCent!.Value.Value, 1e-3);
        }

        Assert.Equal([0.01, 0.001], notch.Corners.Select(corner => corner.Tolerance));
        Assert.True(notch.Corners[0].LeastLoss < notch.Corners[1].LeastLoss && notch.Corners[1].LeastLoss < notch.Depth.Value.Value);
        Assert.Equal(circuit.Names.Count == notch.Parts.Count && kind == NotchKind.TwinT ? notch.Circuit.Stage.Circuit().OpAmps.Count : 4, notch.OpAmps);
    }

    [Fact]
    public void Words_OfADigitalFilter_AreAllFourInBothForms()
    {
        WordStudy words = DesignedSections.Of(
            new FilterWish { Family = FilterFamily.Butterworth, Shape = FilterShape.HighPass, Order = 2, Corners = [Frequency.FromHertz(0.5)], Rate = Frequency.FromHertz(250) }.Design(), new FilterParts()).Words!;
        Assert.Equal(Enum.GetValues<DigitalWord>(), words.Words.Select(one => one.Word));
        Assert.All(words.Words, one => Assert.Equal([FilterForm.DirectI, FilterForm.TransposedDirectII], one.Forms.Select(form => form.Form)));
        Assert.All(words.Words, one => Assert.Equal(one.Word is DigitalWord.Q31 or DigitalWord.Q15, one.LimitCycles is not null));
        Assert.All(words.Words, one => Assert.Equal(DcZero.Kept, one.DcZero));
        Assert.All(words.Words.Where(one => one.LimitCycles is not null), one => Assert.InRange(one.LimitCycles!.Largest!.Amplitude, 1, one.Coefficients.DeadBand!.Value));
        Assert.Equal(words.Remedies.Distinct().Count(), words.Remedies.Count);
        Assert.Equal(words.Growth, RoundOff.Overflow(Butterworth.HighPass(2, Frequency.FromHertz(0.5), Frequency.FromHertz(250)).Sections));
    }

    /// <summary>Σ|rounded − h| of taps rounded to the nearest word by hand, and half the multiplications for symmetric taps.</summary>
    [Fact]
    public void Cost_OfTaps_IsFoldedAndRounded()
    {
        FirAnswer answer = new FirWish { Shape = FilterShape.LowPass, PassEdges = [Frequency.FromHertz(30)], StopEdges = [Frequency.FromHertz(45)], Rate = Frequency.FromHertz(250), Taps = 31 }.Design();
        FirCost cost = DesignedFir.Of(answer).Cost;
        double[] taps = answer.Filter!.Taps.ToArray();
        Assert.Equal((16, 4000.0, 31), (cost.Multiplies, cost.MultipliesPerSecond, cost.Samples));
        // The largest tap is between ¼ and ½: sixteen fraction bits in a word of 16 and one more than its bits less the sign.
        Assert.InRange(taps.Max(Math.Abs), 0.25, 0.5);
        foreach (RoundedTaps word in cost.Words)
        {
            double unit = Math.Pow(2, word.Word == DigitalWord.Q31 ? 31 : 15);
            Assert.Equal(taps.Sum(h => Math.Abs((Math.Round(h * unit, MidpointRounding.AwayFromZero) / unit) - h)), word.LargestChange, 1e-15);
        }

        Assert.Equal(30 / 250.0, DesignedFir.Of(answer).Settled.Seconds, 1e-12);
        DesignedSinc sinc = DesignedSinc.Of(new SincWish { Rate = Frequency.FromHertz(250), Order = 3, Ratio = 64, Taps = 9 }.Design());
        Assert.Equal((16_000.0, 3 + 8), (sinc.InputRate.Hertz, sinc.SettlingWithTaps));
        Assert.Equal(3, DesignedComb.Of(new CombWish { Rate = Frequency.FromHertz(250) }.Design()).TapMultiplies);
    }
}
