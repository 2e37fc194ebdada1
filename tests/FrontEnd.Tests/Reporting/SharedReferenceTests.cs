using FrontEnd.Amplifier;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Tests.Budgets;
using Xunit;

namespace FrontEnd.Tests.Reporting;

/// <summary>What the reference's side puts into every channel, and what the contact check adds, by the plain network and Simpson's rule.</summary>
public sealed class SharedReferenceTests
{
    private static readonly ElectrodeBuffer Buffer = new() { SkinResistor = Resistance.FromKilohms(68) };

    private static readonly ContactCheck Check = new() { Current = Current.FromNanoamperes(6), Frequency = Frequency.FromHertz(17), OnWhileRecording = true };

    private static readonly (string Name, Design Design)[] Cases =
    [
        ("dry, two channels", Designs.Dry), ("gel, eight channels", Designs.Gel), ("bias resistors", Designs.Earthed),
        ("reference buffered", Designs.Gel with { Electrodes = Designs.Gel.Electrodes with { ReferenceBuffer = Buffer } }),
        ("active buffered", Designs.Dry with { Electrodes = Designs.Dry.Electrodes with { ActiveBuffer = Buffer } }),
        ("current noise", Designs.Gel with { Amplifier = Designs.Gel.Amplifier with { CurrentNoise = CurrentNoiseDensity.FromAmperesPerRootHertz(4e-13), CurrentNoiseCorner = Frequency.FromHertz(7) } }),
    ];

    public static IEnumerable<TheoryDataRow<string>> Names => Cases.Select(item => new TheoryDataRow<string>(item.Name));

    private static Design Of(string name) => Cases.Single(item => item.Name == name).Design with { ContactCheck = Check };

    private static double Square(double x) => x * x;

    /// <summary>Density of everything in the reference's lead at the amplifier's input [V²/Hz].</summary>
    private static double SharedDensity(Design design, PlainInput plain, double f)
    {
        double board = 4 * 1.380649e-23 * design.BoardTemperature.Kelvins, skin = 4 * 1.380649e-23 * design.SkinTemperature.Kelvins;
        double factor = 1 - (design.Electrodes.EffectiveMismatch / 2);
        var z = factor * design.Electrodes.Reference.Impedance(Frequency.FromHertz(f));
        double electrode = ((skin * z.Real) + (design.Electrodes.Reference.ExcessNoise.VoltsSquaredPerHertz / Math.Pow(f, design.Electrodes.Reference.ExcessSlope))) / Square(z.Magnitude);
        DifferentialAmplifier amplifier = design.Amplifier;
        double lead = design.Input.SeriesResistor.Ohms * (1 - design.Input.ResistorTolerance.Fraction);
        double current = design.EffectiveReferenceInputs * Square(amplifier.CurrentNoise.AmperesPerRootHertz) * (1 + (amplifier.CurrentNoiseCorner.Hertz / f));
        double sum = (electrode * Square(plain.DifferenceOfCurrent(f, plain.Body, plain.ReferenceTop)))
            + (board / lead * Square(plain.DifferenceOfCurrent(f, plain.R1, plain.R2)))
            + ((current + (design.Input.BiasResistor is { } bias ? board / bias.Ohms : 0)) * Square(plain.DifferenceOfCurrent(f, plain.Common, plain.R2)));
        if (design.Electrodes.ReferenceBuffer is { } buffer)
        {
            OpAmp opAmp = buffer.OpAmp;
            sum += (Square(opAmp.CurrentNoise.AmperesPerRootHertz) * (1 + (opAmp.CurrentNoiseCorner.Hertz / f)) * Square(plain.DifferenceOfCurrent(f, plain.Common, plain.ReferencePin)))
                + (Square(opAmp.VoltageNoise.VoltsPerRootHertz) * (1 + (opAmp.NoiseCorner.Hertz / f)) * Square(plain.DifferenceOfVoltage(f, plain.ReferenceBuffer)))
                + (board / buffer.SkinResistor.Ohms * Square(plain.DifferenceOfCurrent(f, plain.ReferenceTop, plain.ReferencePin)));
        }

        return sum;
    }

    /// <summary>|H_path·H_adc·H_dig|/G_mid/|H_front|: from the amplifier's input to the recording.</summary>
    private static double Behind(Evaluation evaluation, double f)
    {
        evaluation.Path.SweepTransfer([f]);
        double front = Math.Sqrt(Square(evaluation.Path.FrontRe[0]) + Square(evaluation.Path.FrontIm[0]));
        return evaluation.Path.Path(0).Magnitude * evaluation.Design.Converter.Response(f) / front / evaluation.GainMid * Math.Sqrt(evaluation.Digital.Power(f));
    }

    private static double Shared(Design design)
    {
        var evaluation = new Evaluation(design);
        var plain = new PlainInput(design, true);
        const int Steps = 400;
        double low = Math.Log(design.Band.Low.Hertz), width = Math.Log(design.Band.High.Hertz) - low, sum = 0;
        for (int i = 0; i <= Steps; i++)
        {
            double f = Math.Exp(low + (width * i / Steps));
            sum += (i is 0 or Steps ? 1 : i % 2 == 1 ? 4 : 2) * f * SharedDensity(design, plain, f) * Square(Behind(evaluation, f));
        }

        return Math.Sqrt(sum * width / Steps / 3);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void SharedReference_AnyDesign_IsEverythingInTheReferencesLead(string name)
    {
        Design design = Of(name);
        Assessment assessment = Evaluator.Evaluate(design);
        double expected = Shared(design), actual = assessment["montage.1-ref.shared_reference"].Si, total = assessment["noise.total"].Si;
        Assert.Equal(expected, actual, 1e-4 * expected);
        Assert.Equal(Square(expected / total), assessment["montage.correlation"].Si, 3e-4 * Square(expected / total));
        Assert.Equal(total, assessment["montage.1-ref.noise"].Si, 1e-12 * total);
        Assert.Equal(assessment["montage.correlation"].Si, assessment["montage.1-ref.2-ref.correlation"].Si, 1e-9);
    }

    /// <summary>Own part o and shared part s of a channel's variance: the rows' variances and covariances in closed form.</summary>
    [Theory]
    [InlineData(MontageKind.Bipolar)]
    [InlineData(MontageKind.Average)]
    [InlineData(MontageKind.MeanOfOthers)]
    public void DerivedChannels_OfEightChannels_AreTheClosedForms(MontageKind kind)
    {
        Assessment plain = Evaluator.Evaluate(Designs.Gel), derived = Evaluator.Evaluate(Designs.Gel with { Montage = new Montage { Kind = kind } });
        double s = Square(plain["montage.1-ref.shared_reference"].Si), o = Square(plain["noise.total"].Si) - s;
        (string first, string second, double variance, double covariance) = kind switch
        {
            MontageKind.Bipolar => ("1-2", "2-3", 2 * o, -o),
            MontageKind.Average => ("1-average", "2-average", 7 * o / 8, -o / 8),
            _ => ("1-others", "2-others", 8 * o / 7, (-2 * o / 7) + (6 * o / 49)),
        };
        Assert.Equal(Math.Sqrt(variance), derived[$"montage.{first}.noise"].Si, 1e-9 * Math.Sqrt(variance));
        Assert.Equal(0, derived[$"montage.{first}.shared_reference"].Si);
        Assert.Equal(covariance / variance, derived[$"montage.{first}.{second}.correlation"].Si, 1e-9);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void ContactCheck_InTheBand_AddsWhatItsCurrentMakesBetweenTheInputs(string name)
    {
        Design design = Of(name);
        var plain = new PlainInput(design, true);
        double f = Check.Frequency.Hertz;
        double expected = Check.Current.Amperes / Math.Sqrt(2) * plain.DifferenceOfCurrent(f, plain.Common, plain.ActivePin) * Behind(new Evaluation(design), f);
        Assert.Equal(expected, Evaluator.Evaluate(design)["contact.adds_in_band"].Si, 1e-6 * expected);
    }

    /// <summary>A ground electrode ten times as large changes the reading's path and nothing between the inputs.</summary>
    [Fact]
    public void ContactCheck_AnotherGroundElectrode_AddsTheSame()
    {
        Design design = Of("gel, eight channels");
        double small = Added(design), large = Added(design with { GroundDrive = design.GroundDrive with { SeriesResistor = Resistance.FromMegohms(1) } });
        Assert.Equal(small, large, 0.01 * small);

        static double Added(Design one) => Evaluator.Evaluate(one)["contact.adds_in_band"].Si;
    }

    [Theory]
    [InlineData(100, true)]
    [InlineData(17, false)]
    public void ContactCheck_OutsideTheBandOrOff_AddsNothing(double hertz, bool isOn)
    {
        Design design = Designs.Gel with { ContactCheck = Check with { Frequency = Frequency.FromHertz(hertz), OnWhileRecording = isOn } };
        Assert.Equal(0, Evaluator.Evaluate(design)["contact.adds_in_band"].Si);
    }
}
