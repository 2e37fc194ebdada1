using System.Numerics;
using FrontEnd.Circuits;
using FrontEnd.Topologies;

namespace FrontEnd.Tests.Plain;

/// <summary>What makes noise: its source's id, the density at its own place, where that is, and on which lead ("A", "R" or neither).</summary>
internal sealed record PlainNoise(string Source, Func<double, double> Density, Func<PlainSolution, Complex[]> Answer, string Side = "");

/// <summary>A stage of the path as a netlist with values and real op-amps; driven by the block before it.</summary>
internal sealed class PlainStage
{
    private readonly Stage _stage;
    private readonly bool _ideal;
    private readonly int _input;
    private readonly double _kelvins;

    public PlainStage(Stage stage, double kelvins, bool ideal = false)
    {
        (_stage, Name, _kelvins) = (stage, stage.Name, kelvins);
        Id = Slug(stage.Name);
        OpAmp = stage.FittedOpAmp;
        _ideal = ideal;
        _input = Circuit.Source("in", "C");
        Output = "out";
        Build(stage);
    }

    public string Name { get; }

    public string Id { get; }

    public PlainCircuit Circuit { get; } = new();

    public List<PlainNoise> Noise { get; } = [];

    /// <summary>Dc errors by what causes them: an op-amp's offset or bias current.</summary>
    public List<(double Size, Func<PlainSolution, Complex[]> Answer)> Errors { get; } = [];

    public OpAmp? OpAmp { get; }

    public string Output { get; private set; }

    /// <summary>Number of op-amps.</summary>
    public int OpAmps { get; private set; }

    /// <summary>Outputs of op-amps other than the stage's own, by name and node.</summary>
    public List<(string Name, string Node)> Inner { get; } = [];

    public static string Slug(string name) => string.Join('-', new string([.. name.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : ' ')]).Split(' ', StringSplitOptions.RemoveEmptyEntries));

    public Complex Transfer(double hertz) => Transfer(new Complex(0, 2 * Math.PI * hertz));

    public Complex Transfer(Complex s)
    {
        PlainSolution solution = Circuit.At(s);
        return solution.Volts(solution.OfSource(_input), Output);
    }

    /// <summary>Transfer and the stage's own noise at its output, by source [V²/Hz].</summary>
    public (Complex Transfer, List<(string Source, double Density)> Noise, (Complex Transfer, double Density)[] Inner) At(double hertz)
    {
        PlainSolution solution = Circuit.At(new Complex(0, 2 * Math.PI * hertz));
        Complex[] signal = solution.OfSource(_input);
        double[] inner = new double[Inner.Count];
        List<(string, double)> noise = [];
        foreach (PlainNoise one in Noise)
        {
            Complex[] answer = one.Answer(solution);
            double density = one.Density(hertz);
            noise.Add((one.Source, density * Square(solution.Volts(answer, Output))));
            for (int i = 0; i < inner.Length; i++)
            {
                inner[i] += density * Square(solution.Volts(answer, Inner[i].Node));
            }
        }

        return (solution.Volts(signal, Output), noise, [.. Inner.Select((one, i) => (solution.Volts(signal, one.Node), inner[i]))]);
    }

    /// <summary>Gain at dc with ideal op-amps to the output or to another node, and the dc errors there added by size.</summary>
    public (double Gain, double Own) Direct(string? node = null)
    {
        PlainStage ideal = _ideal ? this : new PlainStage(_stage, _kelvins, ideal: true);
        PlainSolution solution = ideal.Circuit.At(0);
        return (solution.Volts(solution.OfSource(ideal._input), node ?? Output).Real, ideal.Errors.Sum(e => e.Size * solution.Volts(e.Answer(solution), node ?? Output).Magnitude));
    }

    private static double Square(Complex z) => (z.Real * z.Real) + (z.Imaginary * z.Imaginary);

    private void R(string a, string b, double ohms)
    {
        Circuit.Resistor(a, b, ohms);
        if (0 < ohms)
        {
            Noise.Add(new($"{Id}-resistors", _ => 4 * PlainInput.Boltzmann * _kelvins / ohms, s => s.OfCurrent(a, b)));
        }
    }

    private void C(string a, string b, double farads) => Circuit.Capacitor(a, b, farads);

    private void Amp(string output, string plus, string minus, OpAmp model)
    {
        OpAmps++;
        int source = _ideal ? Circuit.Controlled(output, "C", _ => 0, (plus, 1), (minus, -1)) : Circuit.OpAmp(output, plus, minus, model);
        Noise.Add(new($"{Id}-voltage", f => Flicker(model.VoltageNoise.VoltsPerRootHertz, model.NoiseCorner.Hertz, f), s => s.OfSource(source)));
        Errors.Add((Math.Abs(model.OffsetVoltage.Volts), s => s.OfSource(source)));
        foreach (string pin in new[] { plus, minus }.Where(pin => pin != "C" && !Circuit.Same(pin, output)))
        {
            Noise.Add(new($"{Id}-current", f => Flicker(model.CurrentNoise.AmperesPerRootHertz, model.CurrentNoiseCorner.Hertz, f), s => s.OfCurrent(pin, "C")));
            Errors.Add((Math.Abs(model.BiasCurrent.Amperes), s => s.OfCurrent(pin, "C")));
        }
    }

    public static double Flicker(double white, double corner, double hertz) => white * white * (1 + (corner / hertz));

    /// <summary>The op-amp with 1 + Rf/Rg; without Rg, or without Rf, a follower.</summary>
    private void Gain(string plus, double rf, double? rg, double? cf, OpAmp model)
    {
        if (rg is not { } ground)
        {
            Circuit.Join("m", "out");
        }
        else
        {
            R("m", "C", ground);
            R("out", "m", rf);
            if (cf is { } farads && !Circuit.Same("m", "out"))
            {
                C("out", "m", farads);
            }
        }

        Amp("out", plus, "m", model);
    }

    private void Build(Stage stage)
    {
        switch (stage)
        {
            case GainStage g:
                string plus = "in";
                if (g.CouplingCapacitor is { } coupling)
                {
                    plus = "p";
                    C("in", "p", coupling.Farads);
                    R("p", "C", g.CouplingResistor.Ohms);
                }

                Gain(plus, g.FeedbackResistor.Ohms, g.GroundResistor?.Ohms, g.FeedbackCapacitor?.Farads, g.OpAmp);
                break;
            case RcSection rc:
                R("in", "p", rc.R.Ohms);
                C("p", "C", rc.C.Farads);
                if (rc.OpAmp is { } follower)
                {
                    Circuit.Join("m", "out");
                    Amp("out", "p", "out", follower);
                }
                else
                {
                    Output = "p";
                }

                break;
            case SallenKeySection sk:
                R("in", "x", sk.R1.Ohms);
                R("x", "p", sk.R2.Ohms);
                C("x", "out", sk.C1.Farads);
                C("p", "C", sk.C2.Farads);
                Gain("p", sk.FeedbackResistor.Ohms, sk.GroundResistor?.Ohms, null, sk.OpAmp);
                break;
            case MultipleFeedbackSection m:
                R("in", "x", m.R1.Ohms);
                R("x", "m", m.R2.Ohms);
                R("x", "out", m.R3.Ohms);
                C("x", "C", m.C1.Farads);
                C("m", "out", m.C2.Farads);
                Amp("out", "C", "m", m.OpAmp);
                break;
            case TwinTNotch t:
                R("in", "a", t.R1.Ohms);
                R("a", "p", t.R2.Ohms);
                R("b", "out", t.R3.Ohms);
                C("in", "b", t.C1.Farads);
                C("b", "p", t.C2.Farads);
                C("a", "C", t.C3.Farads);
                Gain("p", t.FeedbackResistor.Ohms, t.GroundResistor?.Ohms, null, t.OpAmp);
                break;
            case StateVariableNotch n:
                Build(n);
                break;
            default:
                throw new InvalidOperationException($"{stage.GetType()} is not handled.");
        }
    }

    private void Build(StateVariableNotch n)
    {
        R("high", "a", n.Ra.Ohms);
        R("band", "b", n.Rb.Ohms);
        C("a", "band", n.Ca.Farads);
        C("b", "low", n.Cb.Farads);
        R("p", "C", n.R1.Ohms);
        R("band", "p", n.R2.Ohms);
        R("in", "s", n.R3.Ohms);
        R("low", "s", n.R4.Ohms);
        R("high", "s", n.R5.Ohms);
        R("high", "t", n.R6.Ohms);
        R("low", "t", n.R7.Ohms);
        R("out", "t", n.R8.Ohms);
        Inner.AddRange([("high-pass", "high"), ("band-pass", "band"), ("low-pass", "low")]);
        Amp("high", "p", "s", n.OpAmp);
        Amp("band", "C", "a", n.OpAmp);
        Amp("low", "C", "b", n.OpAmp);
        Amp("out", "C", "t", n.OpAmp);
    }
}
