using System.Numerics;
using FrontEnd.Amplifier;
using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using Xunit;
using ComplexVector = MathNet.Numerics.LinearAlgebra.Vector<System.Numerics.Complex>;

namespace FrontEnd.Tests.Budgets;

/// <summary>The input network a second time: every node of the table explicit, the mains a source of its own, earth the reference node instead of common.</summary>
public sealed class InputModelTests
{
    private static readonly (string Name, Design Design)[] Cases =
    [
        ("dry", Designs.Dry), ("gel", Designs.Gel), ("earthed", Designs.Earthed),
        ("shield", Designs.Dry with { Input = Designs.Dry.Input with { DrivenShield = Ratio.FromFraction(0.8) } }),
        ("shared reference", Designs.Gel with { Input = Designs.Gel.Input with { ReferenceInputs = 16 } }),
        ("slow averaging", Designs.Dry with { GroundDrive = Designs.Dry.GroundDrive with { AveragingUnlimited = false, AveragingBandwidth = Frequency.FromKilohertz(3) } }),
        ("buffers", Designs.Dry with { Electrodes = Designs.Dry.Electrodes with { ActiveBuffer = new ElectrodeBuffer { SkinResistor = Resistance.FromKilohms(68) }, ReferenceBuffer = new ElectrodeBuffer() } }),
        ("no ground electrode", Designs.Earthed with { Electrodes = Designs.Earthed.Electrodes with { Ground = null }, GroundDrive = new GroundDrive() }),
    ];

    public static IEnumerable<TheoryDataRow<string>> Names => Cases.Select(item => new TheoryDataRow<string>(item.Name));

    private static Design Of(string name) => Cases.Single(item => item.Name == name).Design;

    [Theory]
    [MemberData(nameof(Names))]
    public void Front_AgreesWithThePlainNetwork(string name)
    {
        Design design = Of(name);
        var path = new SignalPath(design);
        double[] hertz = [0.05, 1, 10, 50, 400, 5000];
        path.Sweep(hertz);
        for (int i = 0; i < hertz.Length; i++)
        {
            var plain = new PlainInput(design, true);
            ComplexVector v = plain.Solve(hertz[i], 0, 1);
            Complex expected = v[plain.A2] - v[plain.R2];
            var actual = new Complex(path.FrontRe[i], path.FrontIm[i]);
            Assert.True((expected - actual).Magnitude < 1e-7 * expected.Magnitude, $"{hertz[i]} Hz: {expected} against {actual}");
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Mains_AgreesWithThePlainNetwork(string name)
    {
        Design design = Of(name);
        var evaluation = new Evaluation(design);

        // The plain network is built with the built signs; compare where the worst case has them, else the total must not be below it.
        double f0 = design.Mains.Frequency.Hertz;
        PlainInput with = new(design, true), without = new(design, false);
        ComplexVector front = with.Solve(f0, 0, 1), leads = with.Solve(f0, design.Mains.Voltage.Volts, 0), bare = without.Solve(f0, design.Mains.Voltage.Volts, 0);
        double gain = (front[with.A2] - front[with.R2]).Magnitude, body = (bare[without.Body] - bare[without.Common]).Magnitude;
        double imbalance = (leads[with.A2] - leads[with.R2]).Magnitude / gain;
        MainsPartsAtInput at = evaluation.Mains.AtInput;
        if (evaluation.Mains.Signs == BuiltSigns.Built)
        {
            // The plain way takes differences of volts against earth: it is good to about 1e-9 of the body's voltage, not of the result.
            Assert.Equal(body, at.BodyCommonMode, 1e-5 * body);
            Assert.Equal(imbalance, at.Imbalance, (1e-5 * imbalance) + 1e-13);
        }
        else
        {
            Assert.True(imbalance <= at.Total * (1 + 1e-9));
        }
    }
}
