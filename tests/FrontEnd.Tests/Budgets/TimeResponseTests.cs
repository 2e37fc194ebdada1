using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Filters;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Topologies;
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
        Assert.Equal(10.31, TimeResponse.Settled(step, 0.01, 0, 10e-6 / 0.3)!.Value, 0.01);
    }

    [Fact]
    public void Step_SallenKeyButterworth_OvershootsByFourPercent()
    {
        // Second-order Butterworth: overshoot exp(−π) = 4.32 % (any control text; from memory).
        double w = 2 * Math.PI * 10, r = 10e3, q = Math.Sqrt(0.5);
        var section = new SallenKeySection { R1 = Resistance.FromOhms(r), R2 = Resistance.FromOhms(r), C1 = Capacitance.FromFarads(2 * q / (w * r)), C2 = Capacitance.FromFarads(1 / (2 * q * w * r)) };
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
        SecondOrderSections high = Butterworth.HighPass(2, Frequency.FromHertz(0.5), Frequency.FromHertz(250)).Sections;
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

    [Fact]
    public void Recovery_NoHighPassAnywhere_IsUnboundedAndSaysWhatToDo()
    {
        Assessment assessment = Evaluator.Evaluate(Designs.Gel with { Digital = [] });
        Assert.Equal(ResultState.Unbounded, assessment["levels.recovery"].State);
        Assert.Contains(assessment.Findings, finding => finding.Code == FrontEnd.Text.Messages.NotSettled && finding.Help is not null);
    }

    [Fact]
    public void Settled_NeverSettles_IsNull() => Assert.Null(TimeResponse.Settled([1, 1, 1, 1], 1, 0, 0.1));
}
