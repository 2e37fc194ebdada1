using System.Numerics;
using FrontEnd.AntiAlias;
using FrontEnd.Budgets;
using FrontEnd.Circuits;
using FrontEnd.Quantities;
using FrontEnd.Tests.Networks;
using FrontEnd.Textbook;
using FrontEnd.Topologies;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Tests.AntiAlias;

/// <summary>Sections and notches with an op-amp that has an output resistance: closed forms, the clever network and a dense matrix stamped element by element must say the same.</summary>
public class StageNetworkTests
{
    private static readonly double[] Hertz = [0.1, 10, 49, 70, 900, 30e3, 1e6, 3e7, 1e9];

    /// <summary>A stage as the plain network: its nodes by name, its op-amp behind Ro.</summary>
    private sealed class Plain
    {
        private readonly PlainNetwork _network = new();
        private readonly Dictionary<string, int> _nodes = new(StringComparer.Ordinal) { ["0"] = PlainNetwork.Common };
        private readonly List<(int From, int To, double Ohms)> _resistors = [];
        private readonly List<int> _inputs = [];
        private readonly int _source;
        private int _opAmp;

        public Plain(Stage stage)
        {
            _source = _network.Source(Node("in"));
            OpAmp = stage.FittedOpAmp!;
            switch (stage)
            {
                case SallenKeySection s:
                    R("in", "X", s.R1.Ohms);
                    R("X", "P", s.R2.Ohms);
                    C("X", "out", s.C1);
                    C("P", "0", s.C2);
                    Amplify("P", s.FeedbackResistor, s.GroundResistor);
                    break;
                case MultipleFeedbackSection s:
                    R("in", "X", s.R1.Ohms);
                    R("X", "minus", s.R2.Ohms);
                    R("X", "out", s.R3.Ohms);
                    C("X", "0", s.C1);
                    C("minus", "out", s.C2);
                    AddOpAmp("0", "minus");
                    break;
                case TwinTNotch s:
                    R("in", "R", s.R1.Ohms);
                    R("R", "P", s.R2.Ohms);
                    R("C", "out", s.R3.Ohms);
                    C("in", "C", s.C1);
                    C("C", "P", s.C2);
                    C("R", "0", s.C3);
                    Amplify("P", s.FeedbackResistor, s.GroundResistor);
                    break;
                case GainStage s:
                    Amplify("in", s.FeedbackResistor, s.GroundResistor);
                    break;
                default:
                    throw new InvalidOperationException(stage.GetType().Name);
            }
        }

        private OpAmp OpAmp { get; }

        public Complex Transfer(double hertz) => _network.Solve(new Complex(0, 2 * Math.PI * hertz), [], [], [(_source, 1)])[Node("out")];

        /// <summary>Density at the output [V²/Hz], every source by a forward solve of its own.</summary>
        public double Density(double hertz, double kelvins)
        {
            var s = new Complex(0, 2 * Math.PI * hertz);
            double sum = _resistors.Sum(r => 4 * PhysicalConstants.Boltzmann * kelvins / r.Ohms * Power(_network.Solve(s, [(r.From, -1), (r.To, 1)], [], [])));
            double en = OpAmp.VoltageNoise.VoltsPerRootHertz, i = OpAmp.CurrentNoise.AmperesPerRootHertz;
            sum += en * en * (1 + (OpAmp.NoiseCorner.Hertz / hertz)) * Power(_network.Solve(s, [], [(_opAmp, 1)], []));
            return sum + _inputs.Sum(node => i * i * (1 + (OpAmp.CurrentNoiseCorner.Hertz / hertz)) * Power(_network.Solve(s, [(node, 1)], [], [])));
        }

        private double Power(MathNet.Numerics.LinearAlgebra.Vector<Complex> v) => Complex.Abs(v[Node("out")]) * Complex.Abs(v[Node("out")]);

        private int Node(string name) => _nodes.TryGetValue(name, out int node) ? node : _nodes[name] = _network.Node();

        private void R(string from, string to, double ohms)
        {
            _network.Resistor(Node(from), Node(to), ohms);
            _resistors.Add((Node(from), Node(to), ohms));
        }

        private void C(string from, string to, Capacitance c) => _network.Capacitor(Node(from), Node(to), c.Farads);

        private void Amplify(string plus, Resistance feedback, Resistance? ground)
        {
            if (ground is { } rg)
            {
                R("out", "minus", Math.Max(1e-3, feedback.Ohms));
                R("minus", "0", rg.Ohms);
            }

            AddOpAmp(plus, ground is null ? "out" : "minus");
        }

        private void AddOpAmp(string plus, string minus)
        {
            string inner = "out";
            if (0 < OpAmp.OutputResistance.Ohms)
            {
                inner = "inner";
                _network.Resistor(Node("inner"), Node("out"), OpAmp.OutputResistance.Ohms);
            }

            _opAmp = _network.OpAmp(Node(inner), Node(plus), Node(minus), s => (1 / OpAmp.DcGain) + (s / (2 * Math.PI * OpAmp.GainBandwidth.Hertz)));
            _inputs.AddRange(new[] { plus, minus }.Where(name => name is not ("0" or "out")).Select(Node));
        }
    }

    private static Stage Stage(int kind, int r1, int r2, int r3, int c1, int c2, OpAmp amplifier)
    {
        Resistance R(int x) => Resistance.FromOhms(1000 + (x % 100 * 997));
        Capacitance C(int x) => Capacitance.FromNanofarads(1 + (x % 100 * 3.3));
        return (kind % 6) switch
        {
            0 => new SallenKeySection { R1 = R(r1), R2 = R(r2), C1 = C(c1), C2 = C(c2), OpAmp = amplifier },
            1 => new SallenKeySection { R1 = R(r1), R2 = R(r2), C1 = C(c1), C2 = C(c2), FeedbackResistor = Resistance.FromOhms(r3 % 100 * 100), GroundResistor = Resistance.FromKilohms(10), OpAmp = amplifier },
            2 => new MultipleFeedbackSection { R1 = R(r1), R2 = R(r2), R3 = R(r3), C1 = C(c1), C2 = C(c2), OpAmp = amplifier },
            3 => new TwinTNotch { R1 = R(r1), R2 = R(r2), R3 = R(r3), C1 = C(c1), C2 = C(c2), C3 = C(r1), FeedbackResistor = Resistance.FromOhms(r3 % 100 * 80), GroundResistor = Resistance.FromKilohms(10), OpAmp = amplifier },
            4 => new TwinTNotch { R1 = R(r1), R2 = R(r2), R3 = R(r3), C1 = C(c1), C2 = C(c2), C3 = C(r2), GroundResistor = null, OpAmp = amplifier },
            _ => new GainStage { FeedbackResistor = R(r1), GroundResistor = R(r2), OpAmp = amplifier },
        };
    }

    private static OpAmp OpAmp(int gbw, int output) => FrontEnd.Circuits.OpAmp.MicropowerCmos with
    {
        GainBandwidth = Frequency.FromHertz(2000 * (1 + (gbw % 500))), DcGain = 1e5, OutputResistance = Resistance.FromOhms(output % 8 == 0 ? 0 : output % 50 * 97),
        NoiseCorner = Frequency.FromHertz(5), CurrentNoise = CurrentNoiseDensity.FromFemtoamperesPerRootHertz(100), CurrentNoiseCorner = Frequency.FromHertz(3),
    };

    /// <summary>Three ways to one figure, up to 1 GHz, where a Sallen–Key's stop band lies on the floor that Ro makes.</summary>
    [Property]
    public void Response_AnyStageWithOutputResistance_ThreeWaysAgree(PositiveInt r1, PositiveInt r2, PositiveInt r3, PositiveInt c1, PositiveInt c2, NonNegativeInt kind, PositiveInt gbw, NonNegativeInt output)
    {
        Stage stage = Stage(kind.Get, r1.Get, r2.Get, r3.Get, c1.Get, c2.Get, OpAmp(gbw.Get, output.Get));
        var plain = new Plain(stage);
        var model = new StageModel(stage, Temperature.FromKelvins(298.15));
        NetworkSweep sweep = model.Program.CreateSweep(Hertz.Length);
        for (int i = 0; i < Hertz.Length; i++)
        {
            sweep.Omega[i] = 2 * Math.PI * Hertz[i];
        }

        sweep.SolveAdjoint(Hertz.Length, 1);
        for (int i = 0; i < Hertz.Length; i++)
        {
            Complex slow = plain.Transfer(Hertz[i]), clever = sweep.Transfer(0, model.SignalPort, i);
            Complex? closed = stage switch
            {
                TwinTNotch notch => notch.AsBuilt().Response(Hertz[i]),
                GainStage => null,
                _ => AsBuiltSection.Response(stage, Hertz[i]),
            };
            // Far down the stop band the forward solve is left with the rounding of the input: a share of 1 V.
            double tolerance = (1e-8 * Complex.Abs(slow)) + 1e-13;
            Assert.True(Complex.Abs(clever - slow) <= tolerance, $"{stage}: network {clever} against {slow} at {Hertz[i]} Hz");
            Assert.True(closed is not { } c || Complex.Abs(c - slow) <= tolerance, $"{stage}: closed form {closed} against {slow} at {Hertz[i]} Hz");
        }
    }

    /// <summary>Without an output resistance the closed forms are the ones of before, written out here again.</summary>
    [Property]
    public void Response_NoOutputResistance_IsThePlainForm(PositiveInt r1, PositiveInt r2, PositiveInt r3, PositiveInt c1, PositiveInt c2, bool feedback, PositiveInt gbw)
    {
        OpAmp amplifier = OpAmp(gbw.Get, 0);
        Stage stage = Stage(feedback ? 2 : 0, r1.Get, r2.Get, r3.Get, c1.Get, c2.Get, amplifier);
        foreach (double hertz in Hertz)
        {
            var s = new Complex(0, 2 * Math.PI * hertz);
            Complex inverse = (1 / amplifier.DcGain) + (s / (2 * Math.PI * amplifier.GainBandwidth.Hertz));
            Complex expected = stage switch
            {
                SallenKeySection k => 1 / (((((1 + (s * k.R1.Ohms * k.C1.Farads)) * (1 + (s * k.R2.Ohms * k.C2.Farads))) + (s * k.R1.Ohms * k.C2.Farads)) * (1 + inverse)) - (s * k.R1.Ohms * k.C1.Farads)),
                MultipleFeedbackSection m => -1 / (m.R1.Ohms * (((inverse + (s * m.R2.Ohms * m.C2.Farads * (1 + inverse))) * ((1 / m.R1.Ohms) + (1 / m.R2.Ohms) + (1 / m.R3.Ohms) + (s * m.C1.Farads))) + (1 / m.R3.Ohms) - (inverse / m.R2.Ohms))),
                _ => throw new InvalidOperationException(),
            };
            Complex built = AsBuiltSection.Response(stage, hertz);
            Assert.True(Complex.Abs(built - expected) <= 1e-12 * Complex.Abs(expected), $"{built} against {expected} at {hertz} Hz");
        }

        Assert.Null(StopBandRise.Of([stage]));
    }

    [Property(MaxTest = 40)]
    public void Noise_AnyStageWithOutputResistance_IsThePlainSum(PositiveInt r1, PositiveInt r2, PositiveInt r3, PositiveInt c1, PositiveInt c2, NonNegativeInt kind, PositiveInt gbw, NonNegativeInt output, PositiveInt at)
    {
        Stage stage = Stage(kind.Get, r1.Get, r2.Get, r3.Get, c1.Get, c2.Get, OpAmp(gbw.Get, output.Get));
        double hertz = 0.5 * Math.Pow(1.5, at.Get % 20), kelvins = 298.15;
        double width = 1e-4 * hertz;
        double sigma = FilterNoise.Over([stage], Frequency.FromHertz(hertz - width), Frequency.FromHertz(hertz + width), Temperature.FromKelvins(kelvins)).Volts;
        double density = new Plain(stage).Density(hertz, kelvins);
        // The integral takes 1e-6; a density that bends within the width, less.
        Assert.Equal(density, sigma * sigma / (2 * width), 1e-5 * density);
    }

    /// <summary>The floor of the application report (1 + R1/R2 + R1/Ro for a follower) and the place of the turn against the section as built.</summary>
    [Theory]
    [InlineData(1, 22, 22, 150, 68, 2000, 350e3)]
    [InlineData(1, 56.2, 4.99, 470, 120, 200, 1e6)]
    [InlineData(1.586, 22, 22, 100, 100, 1000, 350e3)]
    public void StopBand_SallenKey_IsTheFormulas(double gain, double r1, double r2, double c1, double c2, double output, double gbw)
    {
        var section = new SallenKeySection
        {
            R1 = Resistance.FromKilohms(r1), R2 = Resistance.FromKilohms(r2), C1 = Capacitance.FromNanofarads(c1), C2 = Capacitance.FromNanofarads(c2),
            FeedbackResistor = Resistance.FromMegohms(gain - 1), GroundResistor = gain == 1 ? null : Resistance.FromMegohms(1),
            OpAmp = FrontEnd.Circuits.OpAmp.MicropowerCmos with { OutputResistance = Resistance.FromOhms(output), GainBandwidth = Frequency.FromHertz(gbw) },
        };
        StopBandRise rise = StopBandRise.Of([section])!;
        double floor = FilterFormulas.SallenKeyFloor(section.R1, section.R2, section.OpAmp.OutputResistance, gain, section.GainLoad).Value;
        Assert.Equal(20 * Math.Log10(gain * (1 + (r1 / r2) + (1000 * r1 / output) + (gain == 1 ? 0 : r1 / (1000 * gain)))), floor, 1e-9);
        Assert.Equal(floor, rise.LeastLossBeyond, 0.1);
        double f0 = FilterFormulas.SallenKeyFrequency(section.R1, section.R2, section.C1, section.C2).Value;
        double turn = FilterFormulas.SallenKeyTurn(Frequency.FromHertz(f0), section.R1, section.OpAmp.OutputResistance, section.OpAmp.GainBandwidth).Value;
        Assert.Equal(turn, rise.TurnsAt.Hertz, 0.1 * turn);

        // It is the deepest point: a tenth to either side is less deep, and above the turn nothing is deeper than the ideal.
        double Loss(double f) => 10 * Math.Log10(AsBuiltSection.PowerResponse([section], 0) / AsBuiltSection.PowerResponse([section], f));
        Assert.Equal(Loss(rise.TurnsAt.Hertz), rise.LossAtTurn, 1e-9);
        Assert.True(Loss(0.9 * rise.TurnsAt.Hertz) < rise.LossAtTurn && Loss(1.1 * rise.TurnsAt.Hertz) < rise.LossAtTurn);
    }

    /// <summary>A multiple-feedback section of the same poles has C1 between its input and the output: its floor lies lower.</summary>
    [Fact]
    public void StopBand_MultipleFeedback_RisesLessThanSallenKey()
    {
        OpAmp opAmp = FrontEnd.Circuits.OpAmp.MicropowerCmos with { OutputResistance = Resistance.FromKilohms(2) };
        var sallenKey = new SallenKeySection { OpAmp = opAmp };
        var feedback = new MultipleFeedbackSection { OpAmp = opAmp };
        double least = StopBandRise.Of([feedback])?.LeastLossBeyond ?? double.PositiveInfinity;
        Assert.True(StopBandRise.Of([sallenKey])!.LeastLossBeyond + 20 < least, $"{least} dB");
    }

    /// <summary>Four op-amps in a dense matrix, every part of its own value.</summary>
    [Property(MaxTest = 40)]
    public void StateVariableNotch_AnyParts_IsThePlainNetwork(int seed)
    {
        var random = new Random(seed);
        Stage stage = new StateVariableNotch
        {
            R1 = Resistance.FromKilohms(16.5), R2 = Resistance.FromKilohms(475), OpAmp = FrontEnd.Circuits.OpAmp.MicropowerCmos with { DcGain = 1e5 },
        };
        stage = stage.Circuit().Parts.Aggregate(stage, (built, part) => TopologyCatalogue.Times(built, part.Role, 0.8 + (0.4 * random.NextDouble())));
        NotchCircuit circuit = ((StateVariableNotch)stage).AsBuilt();
        double[] x = [.. stage.Circuit().Parts.OrderBy(part => "ra rb ca cb r1 r2 r3 r4 r5 r6 r7 r8".IndexOf(part.Role, StringComparison.Ordinal)).Select(part => part.Value)];
        var model = new StageModel(stage, Temperature.FromKelvins(298.15));
        NetworkSweep sweep = model.Program.CreateSweep(1);
        var plain = new PlainNetwork();
        int input = plain.Node(), sum = plain.Node(), plus = plain.Node(), high = plain.Node(), a = plain.Node(), band = plain.Node(), b = plain.Node(), low = plain.Node(), add = plain.Node(), output = plain.Node();
        int source = plain.Source(input);
        void Amplifier(int outputNode, int plusNode, int minusNode) => plain.OpAmp(outputNode, plusNode, minusNode, s => 1e-5 + (s / (2 * Math.PI * 350e3)));
        plain.Resistor(input, sum, x[6]);
        plain.Resistor(low, sum, x[7]);
        plain.Resistor(high, sum, x[8]);
        plain.Resistor(plus, PlainNetwork.Common, x[4]);
        plain.Resistor(band, plus, x[5]);
        Amplifier(high, plus, sum);
        plain.Resistor(high, a, x[0]);
        plain.Capacitor(a, band, x[2]);
        Amplifier(band, PlainNetwork.Common, a);
        plain.Resistor(band, b, x[1]);
        plain.Capacitor(b, low, x[3]);
        Amplifier(low, PlainNetwork.Common, b);
        plain.Resistor(high, add, x[9]);
        plain.Resistor(low, add, x[10]);
        plain.Resistor(output, add, x[11]);
        Amplifier(output, PlainNetwork.Common, add);
        foreach (double hertz in (double[])[1, 30, 49, 50, 51, 300, 20e3])
        {
            MathNet.Numerics.LinearAlgebra.Vector<Complex> slow = plain.Solve(new Complex(0, 2 * Math.PI * hertz), [], [], [(source, 1)]);
            Complex closed = circuit.Response(hertz);
            Assert.True(Complex.Abs(closed - slow[output]) <= 1e-9 * Math.Max(1, Complex.Abs(slow[output])), $"{closed} against {slow[output]} at {hertz} Hz");
            sweep.Omega[0] = 2 * Math.PI * hertz;
            sweep.SolveAdjoint(1, 4);
            Assert.Equal(["high-pass", "band-pass", "low-pass"], model.InnerNodes);
            foreach ((int node, int number) in new[] { (output, 0), (high, 1), (band, 2), (low, 3) })
            {
                Complex clever = sweep.Transfer(number, model.SignalPort, 0);
                Assert.True(Complex.Abs(clever - slow[node]) <= 1e-8 * Math.Max(1, Complex.Abs(slow[node])), $"node {number}: {clever} against {slow[node]} at {hertz} Hz");
            }
        }
    }

    /// <summary>Half of the dc by hand: (1 mV + 1 nA·200 kΩ)·2 + 1 nA·10 kΩ = 2.41 mV; then a follower of gain 1 behind it adds 1 mV + 1 nA·10 kΩ.</summary>
    [Fact]
    public void Offset_EqualSectionAndFollower_IsTheHandSum()
    {
        OpAmp opAmp = FrontEnd.Circuits.OpAmp.MicropowerCmos with { OffsetVoltage = Voltage.FromMillivolts(-1), BiasCurrent = Current.FromNanoamperes(1) };
        var equal = new SallenKeySection
        {
            R1 = Resistance.FromKilohms(100), R2 = Resistance.FromKilohms(100), FeedbackResistor = Resistance.FromKilohms(10), GroundResistor = Resistance.FromKilohms(10), OpAmp = opAmp,
        };
        Assert.Equal(2.41e-3, FilterNoise.Offset([equal]).Volts, 1e-12);
        Assert.Equal(3.42e-3, FilterNoise.Offset([equal, new RcSection { R = Resistance.FromKilohms(10), OpAmp = opAmp }]).Volts, 1e-12);
    }

    /// <summary>A step through a notch: 1 at once, then the band-pass's ringing taken out, G·(1 − e^(−ζω0t)·(2ζ/√(1 − ζ²))·sin(ω0√(1 − ζ²)t)), ζ = 1/(2Q) (inverse transform by hand).</summary>
    [Fact]
    public void Step_TwinTNotch_IsTheInverseTransform()
    {
        TwinTNotch notch = SectionDesignTests.Twin(18);
        double w = 2 * Math.PI * notch.Centre.Hertz, zeta = 1 / (2 * notch.Q), dt = 1e-3;
        double[] step = TimeResponse.Of(notch).Step(dt, 100);
        double damped = w * Math.Sqrt(1 - (zeta * zeta));
        for (int i = 0; i < step.Length; i++)
        {
            double expected = notch.NominalGain * (1 - (Math.Exp(-zeta * w * i * dt) * 2 * zeta / Math.Sqrt(1 - (zeta * zeta)) * Math.Sin(damped * i * dt)));
            Assert.Equal(expected, step[i], 1e-9);
        }
    }

    /// <summary>Routh's criterion against the poles of the circuit with a fast op-amp, near the edge where G is 2.</summary>
    [Property]
    public void TwinT_IsStable_AgreesWithThePoles(int seed)
    {
        var random = new Random(seed);
        double Part(double value) => value * (0.9 + (0.2 * random.NextDouble()));
        TwinTNotch notch = new()
        {
            R1 = Resistance.FromOhms(Part(31800)), R2 = Resistance.FromOhms(Part(31800)), R3 = Resistance.FromOhms(Part(15900)),
            C1 = Capacitance.FromFarads(Part(100e-9)), C2 = Capacitance.FromFarads(Part(100e-9)), C3 = Capacitance.FromFarads(Part(200e-9)),
            FeedbackResistor = Resistance.FromOhms(Part(20000)), GroundResistor = Resistance.FromKilohms(20), OpAmp = new OpAmp { DcGain = 1e12, GainBandwidth = Frequency.FromHertz(1e15) },
        };
        double q = notch.AsBuilt().Poles(10).Q;
        Assert.Equal(0 < q, notch.IsStable);
    }
}
