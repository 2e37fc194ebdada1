using System.Numerics;
using FrontEnd.Amplifier;
using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Tests.Networks;
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

    private sealed class Plain
    {
        private readonly PlainNetwork _network = new();
        private readonly int _a0;
        private readonly int _mainsSource;
        private readonly int _signalSource;

        public Plain(Design design, bool leads)
        {
            // Earth is the reference; C is a node like any other.
            int m = _network.Node();
            Body = _network.Node();
            Common = _network.Node();
            int a1 = _network.Node(), r1 = _network.Node();
            A2 = _network.Node();
            R2 = _network.Node();
            _a0 = _network.Node();
            var mains = design.Mains;
            double mismatch = design.Electrodes.EffectiveMismatch, shield = 1 - design.Input.DrivenShield.Fraction;
            _mainsSource = _network.Source(m);
            _signalSource = _network.Source(_a0, Body);
            _network.Capacitor(m, Body, mains.BodyToMains.Farads);
            _network.Capacitor(Body, -1, mains.BodyToEarth.Farads);
            _network.Capacitor(Common, -1, mains.AmplifierToEarth.Farads);
            _network.Capacitor(m, Common, mains.AmplifierToMains.Farads);
            foreach (int lead in new[] { a1, r1 })
            {
                _network.Capacitor(m, lead, leads ? mains.LeadToMains.Farads * shield : 0);

                // Without mains coupling the lead still has its capacitance to earth only through the mains node: nothing.
                _network.Capacitor(lead, Common, design.Input.LeadToCommon.Farads * shield);
            }

            Electrode(_a0, Top(design.Electrodes.ActiveBuffer, a1), design.Electrodes.Active, 1 + (mismatch / 2));
            Electrode(Body, Top(design.Electrodes.ReferenceBuffer, r1), design.Electrodes.Reference, 1 - (mismatch / 2));
            double r = design.Input.SeriesResistor.Ohms, c = design.Input.ShuntCapacitor.Farads, tr = design.Input.ResistorTolerance.Fraction, tc = design.Input.CapacitorTolerance.Fraction;
            _network.Resistor(a1, A2, r * (1 + tr));
            _network.Resistor(r1, R2, r * (1 - tr));
            _network.Capacitor(A2, Common, c * (1 + tc));
            _network.Capacitor(R2, Common, c * (1 - tc));
            int n = design.EffectiveReferenceInputs;
            for (int i = 0; i < 2; i++)
            {
                int pin = i == 0 ? A2 : R2, count = i == 0 ? 1 : n;
                if (design.Input.BiasResistor is { } bias)
                {
                    _network.Resistor(pin, Common, bias.Ohms);
                }

                _network.Resistor(pin, Common, design.Amplifier.CommonModeResistance.Ohms / count);
                _network.Capacitor(pin, Common, design.Amplifier.CommonModeCapacitance.Farads * count);
            }

            _network.Resistor(A2, R2, design.Amplifier.DifferentialResistance.Ohms);
            _network.Capacitor(A2, R2, design.Amplifier.DifferentialCapacitance.Farads + design.Input.DifferentialCapacitor.Farads);
            Ground(design);

            int Top(ElectrodeBuffer? buffer, int lead)
            {
                if (buffer is null)
                {
                    return lead;
                }

                int top = _network.Node(), plus = buffer.SkinResistor.Ohms > 0 ? _network.Node() : top, output = _network.Node();
                if (plus != top)
                {
                    _network.Resistor(top, plus, buffer.SkinResistor.Ohms);
                }

                _network.Resistor(plus, Common, buffer.InputResistance.Ohms);
                _network.Capacitor(plus, Common, buffer.InputCapacitance.Farads);

                // v(out) − v(C) = A·(v(plus) − v(out)), the output's current from C.
                double a0 = buffer.OpAmp.DcGain, gbw = buffer.OpAmp.GainBandwidth.Hertz;
                _network.OpAmp(output, Common, plus, output, s => (1 / a0) + (s / (2 * Math.PI * gbw)));
                _network.Resistor(output, lead, buffer.OutputResistance.Ohms);
                return top;
            }
        }

        public int Body { get; }

        public int Common { get; }

        public int A2 { get; }

        public int R2 { get; }

        public ComplexVector Solve(double hertz, Complex mainsVolts, Complex signalVolts) =>
            _network.Solve(new Complex(0, 2 * Math.PI * hertz), [], [], [(_mainsSource, mainsVolts), (_signalSource, signalVolts)]);

        private void Electrode(int from, int to, Electrode electrode, double factor) =>
            _network.Branch(from, to, s => 1 / (factor * electrode.Impedance(Frequency.FromHertz(s.Imaginary / (2 * Math.PI)))));

        private void Ground(Design design)
        {
            if (design.Electrodes.Ground is not { } ground)
            {
                return;
            }

            int g1 = _network.Node();
            Electrode(Body, g1, ground, 1);
            int end = Common;
            if (design.GroundDrive.Kind == GroundKind.Driven)
            {
                end = _network.Node();
                GroundDrive drive = design.GroundDrive;
                Complex Inverse(Complex s)
                {
                    Complex inverse = (1 + (s * drive.DcGain / (2 * Math.PI * drive.UnityGainFrequency.Hertz))) / drive.DcGain;
                    return design.EffectiveAveragingBandwidth is { } f2 ? inverse * (1 + (s / (2 * Math.PI * f2.Hertz))) : inverse;
                }

                // v(D) − v(C) = −K·[½(v(A2) + v(R2)) − v(C)]: the mean is taken from copies, so that forming it loads nothing.
                int mean = _network.Node();
                foreach (int pin in new[] { A2, R2 })
                {
                    int copy = _network.Node();
                    _network.OpAmp(copy, Common, pin, copy, _ => 0);
                    _network.Resistor(copy, mean, 1e3);
                }

                _network.OpAmp(end, Common, Common, mean, Inverse);
            }

            _network.Resistor(g1, end, design.GroundDrive.SeriesResistor.Ohms);
        }
    }

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
            var plain = new Plain(design, true);
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
        Plain with = new(design, true), without = new(design, false);
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
