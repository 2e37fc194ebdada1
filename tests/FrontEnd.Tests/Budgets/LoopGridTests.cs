using System.Numerics;
using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Inputs;
using Xunit;

namespace FrontEnd.Tests.Budgets;

/// <summary>The driven ground over its range of surroundings: one solve varied by two equations against a solve for each, and the least margin
/// against all of them.</summary>
public sealed class LoopGridTests
{
    private static readonly Design[] Driven = [.. Designs.All.Where(design => design.GroundIsDriven)];

    [Fact]
    public void LoopGrid_EverySurrounding_IsTheNetworkSolvedForIt()
    {
        Assert.NotEmpty(Driven);
        foreach (Design design in Driven)
        {
            (InputLanes input, BuildLanes builds) = Lanes(design);
            double[] hertz = [1e3, 2e4, 3e5, 1e6], body = [1e-10, 3e-10, 1e-9], common = [1e-12, 1e-6], factors = [0.01, 1, 50];
            var grid = new LoopGrid(input, builds, hertz, body, common, factors);
            Assert.Equal(body.Length * common.Length * factors.Length, grid.Count);
            for (int i = 0; i < grid.Count; i++)
            {
                for (int k = 0; k < hertz.Length; k++)
                {
                    Complex exact = Beta(input, builds, grid.At(i), hertz[k]), found = new(grid.Re[(i * hertz.Length) + k], grid.Im[(i * hertz.Length) + k]);
                    Assert.True((found - exact).Magnitude <= 1e-6 * exact.Magnitude, $"{grid.At(i)} at {hertz[k]} Hz: {found}, {exact}");
                }
            }
        }
    }

    /// <summary>All 162 surroundings one by one: the crossing by halving, the phase followed in small steps from far below.</summary>
    [Fact]
    public void WorstPhaseMargin_AllSurroundingsByHand_IsTheLeastOfThem()
    {
        foreach (Design design in Driven)
        {
            var path = new SignalPath(design);
            var drive = new DriveBudget(path.Model, BuiltParts.Worst(design));
            (InputLanes input, BuildLanes builds) = Lanes(design);
            var gain = new GroundDriveGain(design);
            double resistance = design.Electrodes.Ground!.DcResistance.Ohms;
            var margins = new List<double>();
            foreach (double common in new[] { design.Mains.AmplifierToEarth.Farads, DriveBudget.EarthedFarads })
            {
                for (int i = 0; i < 81; i++)
                {
                    var at = new LoopSurroundings(100e-12 * Math.Pow(10, i / 9 / 8.0), common, 1e3 * Math.Pow(1000, i % 9 / 8.0) / resistance);
                    if (Margin(f => Beta(input, builds, at, f) * gain.At(f), 2 * design.GroundDrive.UnityGainFrequency.Hertz) is { } margin)
                    {
                        margins.Add(margin);
                    }
                }
            }

            margins.Sort();
            Assert.Equal(margins[0], drive.WorstPhaseMargin!.Value, 1e-5);
            Assert.Equal(margins.Take(3), drive.LeastPoints(3).Select(point => point.MarginDegrees), (a, b) => Math.Abs(a - b) < 1e-5);
        }
    }

    private static double? Margin(Func<double, Complex> loop, double high)
    {
        const int Steps = 240;
        double phase = 0;
        Complex last = 0;
        (double Low, double High, double Phase)? crossing = null;
        for (int i = 0; i <= Steps; i++)
        {
            double f = high * Math.Pow(1e-4, 1 - ((double)i / Steps));
            Complex t = loop(f);
            phase = i == 0 ? t.Phase : phase + (t / last).Phase;
            if (i != 0 && 1 <= last.Magnitude && t.Magnitude < 1)
            {
                crossing = (high * Math.Pow(1e-4, 1 - ((i - 1.0) / Steps)), f, phase);
            }

            last = t;
        }

        if (crossing is not var (low, up, turned))
        {
            return null;
        }

        Complex end = loop(up);
        for (int i = 0; i < 60; i++)
        {
            double middle = Math.Sqrt(low * up);
            (low, up) = loop(middle).Magnitude < 1 ? (low, middle) : (middle, up);
        }

        return 180 + ((turned + (loop(low) / end).Phase) * 180 / Math.PI);
    }

    private static (InputLanes Input, BuildLanes Builds) Lanes(Design design)
    {
        var model = new PathModel(design, BuiltParts.Worst(design));
        var builds = new BuildLanes(model, BuiltParts.Worst(design));
        var input = new InputLanes(design, model.Input, isChecked: false, model.Input.BodyToEarthElement, model.Input.CommonToEarthElement);
        input.Set(builds);
        return (input, builds);
    }

    private static Complex Beta(InputLanes input, BuildLanes builds, LoopSurroundings at, double hertz)
    {
        input.Surround(new Vector<double>(at.BodyToEarth), new Vector<double>(at.CommonToEarth));
        var factor = new Vector<double>(at.ElectrodeFactor);
        input.SetElectrodes(factor * builds.ActiveFactor, factor * builds.ReferenceFactor, factor * builds.GroundFactor);
        input.Factor(new Vector<double>(hertz));
        var (mean, drive) = input.SolveDrive();
        return mean[0] / drive[0];
    }
}
