using System.Numerics;
using FrontEnd.Budgets;
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

    /// <summary>With real op-amps the state space has the transfer function of the circuit's network, at frequencies from far below to far above its poles.</summary>
    [Property(MaxTest = 50)]
    public void StateSpace_AnyStageWithRealOpAmps_IsItsNetwork(int seed, PositiveInt ohms)
    {
        foreach (Stage drawn in Drawn(seed))
        {
            OpAmp opAmp = OpAmp.MicropowerCmos with { DcGain = 1e4, OutputResistance = Resistance.FromOhms(ohms.Get % 3 * 500) };
            Stage stage = drawn.FittedOpAmp is null ? drawn : drawn.WithOpAmp(opAmp);
            StateSpace found = StateSpace.Of(stage.Circuit());
            var model = new StageModel(stage, Temperature.FromKelvins(298));
            var network = new StageLanes(model, isChecked: true);
            network.Set(new StageBuildLanes(model));
            foreach (double hertz in (double[])[1e-3, 0.3, 10, 55, 700, 20e3, 1e6])
            {
                network.Solve(new System.Numerics.Vector<double>(hertz));
                Complex wanted = network.Transfer[0], got = Transfer(found, new Complex(0, 2 * Math.PI * hertz));
                Assert.True(Complex.Abs(got - wanted) <= 1e-9 * (1e-3 + Complex.Abs(wanted)), $"{stage.Word} at {hertz} Hz: {got}, not {wanted}");
            }
        }
    }

    /// <summary>With ideal op-amps it has the transfer function that any book derives for the topology.</summary>
    [Property(MaxTest = 50)]
    public void StateSpace_AnyStageWithIdealOpAmps_IsTheClosedForm(int seed)
    {
        foreach (Stage stage in Drawn(seed))
        {
            StateSpace found = StateSpace.Ideal(stage.Circuit());
            foreach (double hertz in (double[])[0, 0.3, 10, 55, 700, 20e3])
            {
                var s = new Complex(0, 2 * Math.PI * hertz);
                if (ClosedForm(stage, s) is { } wanted)
                {
                    Complex got = Transfer(found, s);
                    Assert.True(Complex.Abs(got - wanted) <= 1e-9 * (1e-4 + Complex.Abs(wanted)), $"{stage.Word} at {hertz} Hz: {got}, not {wanted}");
                }
            }
        }
    }

    /// <summary>A loop of capacitors and an ideal output leaves no state: said, not divided by zero.</summary>
    [Fact]
    public void StateSpace_CapacitorAcrossAnOutput_HasNoAnswer()
    {
        Circuit circuit = new CircuitDraft(default, default)
            .Resistor("r", "R", Circuit.Input, "P", Resistance.FromKilohms(1))
            .Capacitor("c", "C", Circuit.Out, Circuit.Common, Capacitance.FromNanofarads(1))
            .OpAmp(OpAmp.MicropowerCmos, Circuit.Out, "P", Circuit.Out)
            .Finish();
        Assert.Throws<FrontEnd.Networks.NetworkHasNoAnswer>(() => StateSpace.Of(circuit));
    }

    private static Complex? ClosedForm(Stage stage, Complex s) => stage switch
    {
        GainStage g => (g.CouplingCapacitor is { } c ? s * c.Farads * g.CouplingResistor.Ohms / (1 + (s * c.Farads * g.CouplingResistor.Ohms)) : 1)
            * (g.FeedbackCapacitor is { } cf ? 1 + ((g.NominalGain - 1) / (1 + (s * cf.Farads * g.FeedbackResistor.Ohms))) : g.NominalGain),
        RcSection r => 1 / (1 + (s * r.R.Ohms * r.C.Farads)),
        SallenKeySection k => k.NominalGain
            / (1 + (s * ((k.C2.Farads * (k.R1.Ohms + k.R2.Ohms)) - ((k.NominalGain - 1) * k.R1.Ohms * k.C1.Farads))) + (s * s * k.R1.Ohms * k.R2.Ohms * k.C1.Farads * k.C2.Farads)),
        MultipleFeedbackSection m => -m.NominalGain
            / (1 + (s * m.C2.Farads * (m.R2.Ohms + m.R3.Ohms + (m.R2.Ohms * m.NominalGain))) + (s * s * m.R2.Ohms * m.R3.Ohms * m.C1.Farads * m.C2.Farads)),
        _ => null,
    };

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

        Matrix<Complex> a = Matrix<Complex>.Build.Dense(space.Order, space.Order, (i, j) => (i == j ? s : 0) - space.A[(i * space.Order) + j]);
        MathNet.Numerics.LinearAlgebra.Vector<Complex> x = a.Solve(MathNet.Numerics.LinearAlgebra.Vector<Complex>.Build.Dense(space.Order, i => space.B[i]));
        return space.D + Enumerable.Range(0, space.Order).Aggregate(Complex.Zero, (sum, i) => sum + (space.C[i] * x[i]));
    }
}
