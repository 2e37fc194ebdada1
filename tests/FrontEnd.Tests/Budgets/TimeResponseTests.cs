using FrontEnd.Budgets;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Filters;
using FrontEnd.Quantities;
using FrontEnd.Topologies;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Tests.Budgets;

public sealed class TimeResponseTests
{
    [Fact]
    public void Step_AcCoupledStage_DecaysAsItsTimeConstantSays()
    {
        var stage = new GainStage { CouplingCapacitor = Capacitance.FromNanofarads(100), CouplingResistor = Resistance.FromMegohms(10) };
        double[] step = TimeResponse.Of(stage).Step(0.01, 1200);

        // τ = 1 s; 300 mV takes 10.3 s to come down to 10 µV: RC·ln(V0/V).
        Assert.Equal(Math.Exp(-5), step[500], 1e-9);
    }

    /// <summary>An ac coupling of τ = 1 s settles when e^(−t) is a thousandth of the greatest value; what follows it raises that by its overshoot, which lasts microseconds.</summary>
    [Fact]
    public void Settle_AcCoupledAndFastSection_IsOfTheOvershootBetween()
    {
        var coupling = new GainStage { CouplingCapacitor = Capacitance.FromMicrofarads(1), CouplingResistor = Resistance.FromMegohms(1) };
        Settling alone = TimeResponse.Of(coupling).Settle()!.Value;
        Assert.True(alone.IsOfPeak);
        Assert.Equal(Math.Log(1000), alone.Seconds, 1e-9);

        Settling both = TimeResponse.Of(coupling, Butterworth(10e3)).Settle()!.Value;
        Assert.True(both.IsOfPeak);
        Assert.Equal(1 + Math.Exp(-Math.PI), both.Peak, 1e-4);
        Assert.Equal(Math.Log(1000 / (1 + Math.Exp(-Math.PI))), both.Seconds, 1e-4);
    }

    /// <summary>(1 + t/τ)·e^(−t/τ) of a double pole is a thousandth at 9.2334 τ (by hand, Newton's rule).</summary>
    [Fact]
    public void Settle_DoublePole_IsItsFormula()
    {
        RcSection rc = new() { R = Resistance.FromKilohms(10), C = Capacitance.FromMicrofarads(1) };
        Settling settling = TimeResponse.Of(rc, rc).Settle()!.Value;
        Assert.False(settling.IsOfPeak);
        Assert.Equal(1, settling.End, 1e-12);
        Assert.Equal(9.2334e-2, settling.Seconds, 1e-6);
    }

    /// <summary>Against plain small steps of the fourth order (Runge and Kutta's), for chains drawn at random.</summary>
    [Property(MaxTest = 20)]
    public void Settle_AnyChain_AgreesWithSmallSteps(int seed)
    {
        var random = new Random(seed);
        Resistance R() => Resistance.FromOhms(1e4 * Math.Pow(10, random.NextDouble()));
        Capacitance C() => Capacitance.FromFarads(1e-8 * Math.Pow(30, random.NextDouble()));
        Stage[] stages =
        [
            new GainStage { CouplingCapacitor = random.Next(2) == 0 ? C() : null, CouplingResistor = Resistance.FromKilohms(300), FeedbackResistor = R(), GroundResistor = R(), FeedbackCapacitor = C() },
            new SallenKeySection { R1 = R(), R2 = R(), C1 = C(), C2 = C() }, new MultipleFeedbackSection { R1 = R(), R2 = R(), R3 = R(), C1 = C(), C2 = C() },
        ];
        Settling found = TimeResponse.Of(stages).Settle()!.Value;
        StateSpace[] blocks = [.. stages.Select(stage => StateSpace.Ideal(stage.Circuit()))];
        double rate = blocks.Max(block => TimeSteps.Norm(block.A, block.Order)), dt = 0.05 / rate, last = 0, peak = 0, end = blocks.Aggregate(1.0, (gain, block) => gain * DcGain(block));
        end = Math.Abs(end) < 1e-9 ? 0 : end;
        int steps = (int)(1.5 * found.Seconds / dt);
        foreach (bool first in (bool[])[true, false])
        {
            double tolerance = 1e-3 * (end == 0 ? peak : Math.Abs(end));
            var plain = new PlainChain([.. blocks.Select(block => (block, double.PositiveInfinity))], 1);
            for (int i = 0; i < steps; i++)
            {
                double y = plain.Output();
                peak = Math.Max(peak, Math.Abs(y));
                last = !first && tolerance < Math.Abs(y - end) ? i * dt : last;
                plain.Step(dt);
            }
        }

        Assert.Equal(last, found.Seconds, (2 * dt) + (1e-5 * last));
    }

    private static double DcGain(StateSpace block) => block.D + block.C.Zip(block.Settled(), (c, x) => c * x).Sum();

    private static SallenKeySection Butterworth(double hertz)
    {
        double w = 2 * Math.PI * hertz, r = 10e3, q = Math.Sqrt(0.5);
        return new() { R1 = Resistance.FromOhms(r), R2 = Resistance.FromOhms(r), C1 = Capacitance.FromFarads(2 * q / (w * r)), C2 = Capacitance.FromFarads(1 / (2 * q * w * r)) };
    }

    [Fact]
    public void Step_SallenKeyButterworth_OvershootsByFourPercent()
    {
        // Second-order Butterworth: overshoot exp(−π) = 4.32 % (any control text; from memory).
        SallenKeySection section = Butterworth(10);
        double[] step = TimeResponse.Of(section).Step(1e-4, 4000);
        Assert.Equal(1 + Math.Exp(-Math.PI), step.Max(), 1e-4);
        Assert.Equal(1, step[^1], 1e-6);
    }

    [Fact]
    public void Step_Cascade_AgreesWithSmallStepsInTime()
    {
        Stage[] stages =
        [
            new GainStage { CouplingCapacitor = Capacitance.FromMicrofarads(1), CouplingResistor = Resistance.FromKilohms(100), FeedbackResistor = Resistance.FromKilohms(100), GroundResistor = Resistance.FromKilohms(10), FeedbackCapacitor = Capacitance.FromNanofarads(100) },
            new RcSection { R = Resistance.FromKilohms(10), C = Capacitance.FromNanofarads(470) }, new MultipleFeedbackSection(),
        ];
        double[] exact = TimeResponse.Of(stages).Step(1e-3, 200);

        // The plain way: forward Euler of the four blocks' differential equations at a thousandth of the step.
        double x1 = 0, x2 = 0, x3 = 0, v = 0, dv = 0;
        const double Dt = 1e-6;
        var mfb = (MultipleFeedbackSection)stages[2];
        double a2 = mfb.R2.Ohms * mfb.R3.Ohms * mfb.C1.Farads * mfb.C2.Farads, a1 = mfb.C2.Farads * (mfb.R2.Ohms + mfb.R3.Ohms + (mfb.R2.Ohms * mfb.R3.Ohms / mfb.R1.Ohms));
        for (int i = 0; i < 199_000; i++)
        {
            double coupled = 1 - x1, amplified = coupled + (10 * x2);
            x1 += Dt * coupled / 0.1;
            x2 += Dt * (coupled - x2) / 0.01;
            x3 += Dt * (amplified - x3) / 4.7e-3;
            double acceleration = ((-x3 * mfb.R3.Ohms / mfb.R1.Ohms) - v - (a1 * dv)) / a2;
            v += Dt * dv;
            dv += Dt * acceleration;
            if ((i + 1) % 20_000 == 0)
            {
                Assert.Equal(v, exact[(i + 1) / 1000], 3e-3);
            }
        }
    }

    [Fact]
    public void Step_WithDigitalHighPass_UndershootsAsComputedApart()
    {
        // Second-order Butterworth high-pass at 0.5 Hz, 250 S/s: undershoot 21 % after a step (computed with a general-purpose signal library).
        SecondOrderSections high = FrontEnd.Filters.Butterworth.HighPass(2, Frequency.FromHertz(0.5), Frequency.FromHertz(250)).Sections;
        double[] step = TimeResponse.Of().Step(1.0 / 250, 2000, high);
        Assert.Equal(-0.21, step.Min(), 0.005);
    }

    [Fact]
    public void StepResponse_LongAfter_AgreesWithTheNetworksDcGain()
    {
        // The final value of a dc-coupled path's step is its gain at 0 Hz: solved by the network at 1 mHz.
        Design design = Designs.Earthed;
        var path = new SignalPath(design);
        path.Sweep([1e-3]);
        double[] step = TimeResponse.Of(design.Stages).Step(1e-2, 100);
        Assert.Equal(path.Path(0).Magnitude, Math.Abs(step[^1]) * design.Amplifier.Gain * Math.Sqrt((path.FrontRe[0] * path.FrontRe[0]) + (path.FrontIm[0] * path.FrontIm[0])), 1e-3);
    }
}
