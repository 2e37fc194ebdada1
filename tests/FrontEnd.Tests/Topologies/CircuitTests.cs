using System.Numerics;
using FrontEnd.Circuits;
using FrontEnd.Quantities;
using FrontEnd.Topologies;
using FsCheck;
using FsCheck.Xunit;
using MathNet.Numerics.LinearAlgebra;
using Xunit;

namespace FrontEnd.Tests.Topologies;

/// <summary>What follows from a circuit's description.</summary>
public sealed class CircuitTests
{
    private static Stage[] Drawn(int seed)
    {
        var random = new Random(seed);
        Resistance R() => Resistance.FromOhms(1e3 * Math.Pow(100, random.NextDouble()));
        Capacitance C() => Capacitance.FromFarads(1e-9 * Math.Pow(1000, random.NextDouble()));
        return
        [
            new GainStage { CouplingCapacitor = C(), CouplingResistor = R(), FeedbackResistor = R(), GroundResistor = R(), FeedbackCapacitor = C() },
            new GainStage { FeedbackResistor = R(), GroundResistor = R() }, new GainStage(),
            new RcSection { R = R(), C = C() }, new RcSection { R = R(), C = C(), OpAmp = null },
            new SallenKeySection { R1 = R(), R2 = R(), C1 = C(), C2 = C() },
            new SallenKeySection { R1 = R(), R2 = R(), C1 = C(), C2 = C(), FeedbackResistor = R(), GroundResistor = R() },
            new MultipleFeedbackSection { R1 = R(), R2 = R(), R3 = R(), C1 = C(), C2 = C() },
            new TwinTNotch(),
            new StateVariableNotch { Ra = R(), Rb = R(), Ca = C(), Cb = C(), R1 = R(), R2 = R(), R3 = R(), R4 = R(), R5 = R(), R6 = R(), R7 = R(), R8 = R() },
        ];
    }

    /// <summary>The state space from the circuit has the transfer function of the closed form, at frequencies from far below to far above its poles.</summary>
    [Property(MaxTest = 50)]
    public void StateSpace_AnyStage_IsTheClosedForm(int seed)
    {
        foreach (Stage stage in Drawn(seed))
        {
            StateSpace found = StateSpace.Of(stage.Circuit());
            StateSpace[] closed = [.. stage.InTime()];
            foreach (double hertz in (double[])[0, 0.3, 10, 55, 700, 20e3])
            {
                var s = new Complex(0, 2 * Math.PI * hertz);
                Complex wanted = closed.Aggregate(Complex.One, (product, block) => product * Transfer(block, s)), got = Transfer(found, s);
                Assert.True(Complex.Abs(got - wanted) <= 1e-7 * (1e-4 + Complex.Abs(wanted)), $"{stage.Word} at {hertz} Hz: {got}, not {wanted}");
            }

            // A pole that a matched twin-T cancels lies at the notch, within the others.
            double slowest = closed.Max(block => block.SlowestSeconds), fastest = closed.Min(block => block.FastestSeconds);
            if (0 < slowest && double.IsFinite(fastest))
            {
                Assert.Equal(slowest, found.SlowestSeconds, 1e-7 * slowest);
                Assert.Equal(fastest, found.FastestSeconds, 1e-7 * fastest);
            }
        }
    }

    /// <summary>The worst-case rule written out for each topology: (|Vos| + |Ib|·R at the + input)·gain + |Ib|·Rf; multiple feedback by its own two loops.</summary>
    [Property(MaxTest = 50)]
    public void Dc_AnyStage_IsTheRuleWrittenOut(int seed, PositiveInt offset, PositiveInt bias)
    {
        double v = 1e-6 * offset.Get, i = 1e-12 * bias.Get;
        OpAmp opAmp = OpAmp.MicropowerCmos with { OffsetVoltage = Voltage.FromVolts(-v), BiasCurrent = Current.FromAmperes(i) };
        foreach (Stage stage in Drawn(seed).Where(stage => stage.Circuit().OpAmps.Count == 1).Select(stage => stage.WithOpAmp(opAmp)))
        {
            double NonInverting(double source, Resistance feedback, Resistance? ground) =>
                ground is { } rg ? ((v + (i * source)) * (1 + (feedback / rg))) + (i * feedback.Ohms) : v + (i * source);
            (double gain, double own) = stage switch
            {
                GainStage s => (s.CouplingCapacitor is null ? s.NominalGain : 0, NonInverting(s.CouplingCapacitor is null ? 0 : s.CouplingResistor.Ohms, s.FeedbackResistor, s.GroundResistor)),
                RcSection s => (1, NonInverting(s.R.Ohms, default, null)),
                SallenKeySection s => (s.NominalGain, NonInverting(s.R1.Ohms + s.R2.Ohms, s.FeedbackResistor, s.GroundResistor)),
                TwinTNotch s => (s.NominalGain, NonInverting(s.R1.Ohms + s.R2.Ohms, s.FeedbackResistor, s.GroundResistor)),
                MultipleFeedbackSection s => (s.NominalGain, (v * (1 + s.NominalGain)) + (i * (s.R3.Ohms + (s.R2.Ohms * (1 + s.NominalGain))))),
                _ => throw new InvalidOperationException(),
            };
            CircuitDc dc = new CircuitDc(stage.Circuit()).Solve(CircuitDc.Nominal);
            Assert.Equal(gain, dc.Gain(Circuit.Out)[0], 1e-12 * (1 + gain));
            Assert.Equal(own, dc.Own(Circuit.Out)[0], 1e-12 * own);
        }
    }

    /// <summary>What a spread draws is a field of the stage: each part's role reads and sets its value, and no other part's.</summary>
    [Fact]
    public void Times_EveryRole_ChangesThatPartAlone()
    {
        foreach (Stage stage in Drawn(1))
        {
            Circuit circuit = stage.Circuit();
            foreach (CircuitPart part in circuit.Parts)
            {
                Circuit changed = TopologyCatalogue.Times(stage, part.Role, 1.25).Circuit();
                Assert.Equal(circuit.Parts.Select(one => one == part ? one with { Value = part.Value * 1.25 } : one), changed.Parts);
            }
        }
    }

    private static Complex Transfer(StateSpace space, Complex s)
    {
        if (space.Order == 0)
        {
            return space.D;
        }

        Matrix<Complex> a = Matrix<Complex>.Build.Dense(space.Order, space.Order, (i, j) => (i == j ? s : 0) - space.A[i, j]);
        MathNet.Numerics.LinearAlgebra.Vector<Complex> x = a.Solve(MathNet.Numerics.LinearAlgebra.Vector<Complex>.Build.Dense(space.Order, i => space.B[i]));
        return space.D + Enumerable.Range(0, space.Order).Aggregate(Complex.Zero, (sum, i) => sum + (space.C[i] * x[i]));
    }
}
