using System.Numerics;
using FrontEnd.Designs;
using FrontEnd.Electrodes;

namespace FrontEnd.Tests.Plain;

/// <summary>Which way mismatch and tolerances lie: each +1 or −1.</summary>
internal readonly record struct PlainSigns(int Mismatch, int Resistor, int Capacitor, int? ReferenceMismatch = null, int? ReferenceResistor = null, int? ReferenceCapacitor = null);

/// <summary>Mains, body, electrodes, leads and the amplifier's inputs as one netlist, straight from the table of nodes.</summary>
internal sealed class PlainInput
{
    public const double Boltzmann = 1.380649e-23;

    private readonly Design _design;
    private string _side = "";

    /// <param name="design">The design.</param>
    /// <param name="signs">The built values; mismatch +1 makes the active electrode the larger one.</param>
    /// <param name="leads">False to leave lead-to-mains out.</param>
    /// <param name="direct">True for dc: mains and earth are left out.</param>
    /// <param name="bodyToEarth">In place of the design's; null for that.</param>
    /// <param name="amplifierToEarth">In place of the design's; null for that.</param>
    /// <param name="scale">Times all three electrodes.</param>
    /// <param name="hold">True to hold the driven output, for the loop's return ratio.</param>
    public PlainInput(Design design, PlainSigns signs, bool leads = true, bool direct = false, double? bodyToEarth = null, double? amplifierToEarth = null, double scale = 1, bool hold = false)
    {
        _design = design;
        double half = design.Electrodes.EffectiveMismatch / 2;
        double active = 1 + (signs.Mismatch * half);
        double reference = 1 - ((signs.ReferenceMismatch ?? signs.Mismatch) * half);
        Signal = Circuit.Source("A0", "B");
        if (!direct)
        {
            Surroundings(leads, bodyToEarth ?? design.Mains.BodyToEarth.Farads, amplifierToEarth ?? design.Mains.AmplifierToEarth.Farads);
        }

        _side = "A";
        Lead("A", design.Electrodes.Active, active * scale, design.Electrodes.ActiveBuffer, signs.Resistor, signs.Capacitor, 1);
        _side = "R";
        Lead("R", design.Electrodes.Reference, reference * scale, design.Electrodes.ReferenceBuffer, -(signs.ReferenceResistor ?? signs.Resistor), -(signs.ReferenceCapacitor ?? signs.Capacitor), design.EffectiveReferenceInputs);
        _side = "";
        Circuit.Capacitor("A2", "R2", design.Input.DifferentialCapacitor.Farads + design.Amplifier.DifferentialCapacitance.Farads);
        Circuit.Resistor("A2", "R2", design.Amplifier.DifferentialResistance.Ohms);
        if (design.Electrodes.Ground is { } ground)
        {
            Electrode("ground-electrode", ground, "B", "G1", scale);
            double series = design.GroundDrive.SeriesResistor.Ohms;
            string end = design.GroundIsDriven ? "D" : "C";
            Resistor("ground-resistor", "G1", end, series);
        }

        if (design.GroundIsDriven)
        {
            Drive = hold ? Circuit.Source("D", "C") : Circuit.Controlled("D", "C", InverseDrive, ("A2", -0.5), ("R2", -0.5));
        }
    }

    public PlainCircuit Circuit { get; } = new();

    public int Signal { get; }

    public int Mains { get; private set; }

    public int Drive { get; } = -1;

    public List<PlainNoise> Noise { get; } = [];

    /// <summary>Dc errors of the input, apart from the amplifier's own currents and offset.</summary>
    public List<(double Size, bool IsCurrent, Func<PlainSolution, Complex[]> Answer)> BufferErrors { get; } = [];

    /// <summary>K(s) of the driven ground.</summary>
    public Complex InverseDrive(Complex s)
    {
        Complex first = (1 / _design.GroundDrive.DcGain) + (s / (2 * Math.PI * _design.GroundDrive.UnityGainFrequency.Hertz));
        return _design.EffectiveAveragingBandwidth is { } f2 ? first * (1 + (s / (2 * Math.PI * f2.Hertz))) : first;
    }

    public PlainSolution At(double hertz) => Circuit.At(new Complex(0, 2 * Math.PI * hertz));

    public static Complex Ohms(Electrode e, Complex s, double factor)
    {
        Complex z = e.SeriesResistance.Ohms + (e.ContactResistance.Ohms / (1 + (s * e.ContactResistance.Ohms * e.ContactCapacitance.Farads)));
        return factor * (e.SecondResistance is { } r ? z + (r.Ohms / (1 + (s * r.Ohms * (e.SecondCapacitance?.Farads ?? 0)))) : z);
    }

    private void Surroundings(bool leads, double bodyToEarth, double amplifierToEarth)
    {
        Interference.Mains m = _design.Mains;
        double shielded = leads ? m.LeadToMains.Farads * (1 - _design.Input.DrivenShield.Fraction) : 0;
        bool any = 0 < m.BodyToMains.Farads + bodyToEarth + amplifierToEarth + m.AmplifierToMains.Farads + shielded;
        if (!any)
        {
            Circuit.Join("E", "C");
        }

        Mains = Circuit.Source("M", "E");
        Circuit.Capacitor("M", "B", m.BodyToMains.Farads);
        Circuit.Capacitor("B", "E", bodyToEarth);
        Circuit.Capacitor("C", "E", amplifierToEarth);
        Circuit.Capacitor("M", "C", m.AmplifierToMains.Farads);
        Circuit.Capacitor("M", "A1", shielded);
        Circuit.Capacitor("M", "R1", shielded);
    }

    private void Electrode(string source, Electrode electrode, string from, string to, double factor)
    {
        if (electrode.DcResistance.Ohms == 0)
        {
            Circuit.Join(from, to);
            return;
        }

        Circuit.Impedance(from, to, s => Ohms(electrode, s, factor));
        Complex S(double f) => new(0, 2 * Math.PI * f);
        double excess = electrode.ExcessNoise.VoltsSquaredPerHertz;
        Hiss(source + " thermal", f => 4 * Boltzmann * _design.SkinTemperature.Kelvins * Ohms(electrode, S(f), factor).Real / Square(Ohms(electrode, S(f), factor)), s => s.OfCurrent(from, to));
        if (0 < excess)
        {
            Hiss(source + " excess", f => excess / Math.Pow(f, electrode.ExcessSlope) / Square(Ohms(electrode, S(f), factor)), s => s.OfCurrent(from, to));
        }
    }

    private void Hiss(string source, Func<double, double> density, Func<PlainSolution, Complex[]> answer) => Noise.Add(new(source, density, answer, _side));

    private static double Square(Complex z) => (z.Real * z.Real) + (z.Imaginary * z.Imaginary);

    private void Resistor(string source, string from, string to, double ohms)
    {
        Circuit.Resistor(from, to, ohms);
        if (0 < ohms)
        {
            Hiss(source, _ => 4 * Boltzmann * _design.BoardTemperature.Kelvins / ohms, s => s.OfCurrent(from, to));
        }
    }

    private void Lead(string side, Electrode electrode, double factor, ElectrodeBuffer? buffer, int resistorSign, int capacitorSign, int inputs)
    {
        InputNetworkOf(out double series, out double tolerance, out double shunt, out double shuntTolerance);
        Amplifier.DifferentialAmplifier amplifier = _design.Amplifier;
        string name = side == "A" ? "active-electrode" : "reference-electrode", skin = side + "s";
        Electrode(name, electrode, side == "A" ? "A0" : "B", buffer is null ? side + "1" : skin, factor);
        if (buffer is not null)
        {
            Buffer(side, skin, buffer);
        }

        Circuit.Capacitor(side + "1", "C", _design.Input.LeadToCommon.Farads * (1 - _design.Input.DrivenShield.Fraction));
        Resistor("protection-resistors", side + "1", side + "2", series * (1 + (resistorSign * tolerance)));
        Circuit.Capacitor(side + "2", "C", (shunt * (1 + (capacitorSign * shuntTolerance))) + (inputs * amplifier.CommonModeCapacitance.Farads));
        Circuit.Resistor(side + "2", "C", amplifier.CommonModeResistance.Ohms / inputs);
        if (_design.Input.BiasResistor is { } bias)
        {
            Resistor("bias-resistors", side + "2", "C", bias.Ohms);
        }

        Hiss("amplifier-current", f => inputs * PlainStage.Flicker(amplifier.CurrentNoise.AmperesPerRootHertz, amplifier.CurrentNoiseCorner.Hertz, f), s => s.OfCurrent(side + "2", "C"));
    }

    private void Buffer(string side, string skin, ElectrodeBuffer buffer)
    {
        string plus = side + "p", output = side + "b";
        Resistor("skin-resistors", skin, plus, buffer.SkinResistor.Ohms);
        Circuit.Resistor(plus, "C", buffer.InputResistance.Ohms);
        Circuit.Capacitor(plus, "C", buffer.InputCapacitance.Farads);
        int source = Circuit.OpAmp(output, plus, output, buffer.OpAmp);
        Circuit.Resistor(output, side + "1", buffer.OutputResistance.Ohms);
        Circuits.OpAmp model = buffer.OpAmp;
        Hiss("buffer-voltage", f => PlainStage.Flicker(model.VoltageNoise.VoltsPerRootHertz, model.NoiseCorner.Hertz, f), s => s.OfSource(source));
        Hiss("buffer-current", f => PlainStage.Flicker(model.CurrentNoise.AmperesPerRootHertz, model.CurrentNoiseCorner.Hertz, f), s => s.OfCurrent(plus, "C"));
        BufferErrors.Add((Math.Abs(model.OffsetVoltage.Volts), false, s => s.OfSource(source)));
        BufferErrors.Add((Math.Abs(model.BiasCurrent.Amperes), true, s => s.OfCurrent(plus, "C")));
    }

    private void InputNetworkOf(out double series, out double tolerance, out double shunt, out double shuntTolerance) =>
        (series, tolerance, shunt, shuntTolerance) = (_design.Input.SeriesResistor.Ohms, _design.Input.ResistorTolerance.Fraction, _design.Input.ShuntCapacitor.Farads, _design.Input.CapacitorTolerance.Fraction);
}
