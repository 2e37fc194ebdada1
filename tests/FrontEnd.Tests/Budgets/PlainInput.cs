using System.Numerics;
using FrontEnd.Amplifier;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Quantities;
using FrontEnd.Tests.Networks;
using ComplexVector = MathNet.Numerics.LinearAlgebra.Vector<System.Numerics.Complex>;

namespace FrontEnd.Tests.Budgets;

/// <summary>The input network a second time: every node of the table explicit, the mains a source of its own, earth the reference node instead of common.</summary>
internal sealed class PlainInput
{
    private readonly PlainNetwork _network = new();
    private readonly int _a0;
    private readonly int _mainsSource;
    private readonly int _signalSource;

    public PlainInput(Design design, bool leads)
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

        (int activeTop, ActivePin, _) = Top(design.Electrodes.ActiveBuffer, a1, A2);
        (ReferenceTop, ReferencePin, ReferenceBuffer) = Top(design.Electrodes.ReferenceBuffer, r1, R2);
        R1 = r1;
        Electrode(_a0, activeTop, design.Electrodes.Active, 1 + (mismatch / 2));
        Electrode(Body, ReferenceTop, design.Electrodes.Reference, 1 - (mismatch / 2));
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

        (int Top, int Pin, int OpAmp) Top(ElectrodeBuffer? buffer, int lead, int pin)
        {
            if (buffer is null)
            {
                return (lead, pin, -1);
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
            int opAmp = _network.OpAmp(output, Common, plus, output, s => (1 / a0) + (s / (2 * Math.PI * gbw)));
            _network.Resistor(output, lead, buffer.OutputResistance.Ohms);
            return (top, plus, opAmp);
        }
    }

    public int Body { get; }

    public int Common { get; }

    public int A2 { get; }

    public int R2 { get; }

    /// <summary>What the active electrode's current passes to reach the electronics: the amplifier's input, or its buffer's.</summary>
    public int ActivePin { get; }

    /// <summary>The reference lead behind its electrode (or buffer).</summary>
    public int R1 { get; }

    public int ReferenceTop { get; }

    public int ReferencePin { get; }

    /// <summary>Op-amp of the reference's buffer; -1 for none.</summary>
    public int ReferenceBuffer { get; }

    public ComplexVector Solve(double hertz, Complex mainsVolts, Complex signalVolts) =>
        _network.Solve(new Complex(0, 2 * Math.PI * hertz), [], [], [(_mainsSource, mainsVolts), (_signalSource, signalVolts)]);

    /// <summary>|v(A2) - v(R2)| for a current of 1 A from one node into another.</summary>
    public double DifferenceOfCurrent(double hertz, int from, int to) =>
        Difference(_network.Solve(new Complex(0, 2 * Math.PI * hertz), [(from, -1), (to, 1)], [], [(_mainsSource, 0), (_signalSource, 0)]));

    /// <summary>|v(A2) - v(R2)| for 1 V at an op-amp's input.</summary>
    public double DifferenceOfVoltage(double hertz, int opAmp) =>
        Difference(_network.Solve(new Complex(0, 2 * Math.PI * hertz), [], [(opAmp, 1)], [(_mainsSource, 0), (_signalSource, 0)]));

    private double Difference(ComplexVector v) => (v[A2] - v[R2]).Magnitude;

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
