using System.Numerics;
using FrontEnd.Amplifier;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Identity;
using FrontEnd.Results;

namespace FrontEnd.Reporting;

/// <summary>The lines of the plots: 400 logarithmic points.</summary>
internal static class CurveMaker
{
    private const int Points = 400;

    public static Curves Make(Evaluation evaluation)
    {
        Design design = evaluation.Design;
        double fs = design.Converter.Rate.Hertz;
        double[] hertz = Grid(Math.Min(0.05, design.Band.Low.Hertz / 5), Math.Max(5 * fs, design.Band.High.Hertz * 10));
        var sweep = new PathSweep(evaluation, hertz);
        IReadOnlyList<Curve> filters = FilterCurves.Response(evaluation, sweep);
        return new Curves
        {
            Response =
            [
                new Curve("analogue path", "Hz", "dB", hertz, sweep.Path), new Curve("path and converter", "Hz", "dB", hertz, sweep.Chain),
                new Curve("with digital filters", "Hz", "dB", hertz, sweep.Filtered),
            ],
            PhaseAndDelay = [new Curve("phase", "Hz", "°", hertz, sweep.Phase), new Curve("group delay", "Hz", "s", hertz, sweep.Delay)],
            NoiseDensity = NoiseCurves(sweep),
            ElectrodeImpedance = ElectrodeCurves(design, hertz),
            DrivenGroundLoop = LoopCurves(evaluation),
            StepResponse = StepCurves(evaluation),
            FilterResponse = filters,
            FilterDifference = FilterCurves.Difference(filters),
            FilterDelay = FilterCurves.Delay(evaluation, sweep),
            FilterStep = FilterCurves.Step(evaluation),
        };
    }

    private static double[] Grid(double low, double high)
    {
        var grid = new double[Points];
        for (int i = 0; i < Points; i++)
        {
            grid[i] = low * Math.Pow(high / low, i / (Points - 1.0));
        }

        return grid;
    }

    internal static double Decibels(double ratio) => 0 < ratio ? Math.Max(-400, 20 * Math.Log10(ratio)) : -400;

    private static List<Curve> NoiseCurves(PathSweep sweep)
    {
        List<Curve> curves = [];
        for (int row = 0; row < sweep.Rows.Count; row++)
        {
            (SourceId id, string name) = sweep.Rows[row];
            curves.Add(new Curve(name, "Hz", "V/√Hz", sweep.Hertz, sweep.RowDensity[row]) { Source = id });
        }

        curves.Add(new Curve("total", "Hz", "V/√Hz", sweep.Hertz, sweep.Density));
        return curves;
    }

    private static List<Curve> ElectrodeCurves(Design design, double[] hertz)
    {
        var curves = new List<Curve> { Line("active", NoiseReport.Built(design, 0)), Line("reference", NoiseReport.Built(design, 1)) };
        if (design.Electrodes.Ground is { } ground)
        {
            curves.Add(Line("ground", ground));
        }

        return curves;

        Curve Line(string name, Electrode electrode) =>
            new(name, "Hz", "Ω", hertz, Array.ConvertAll(hertz, f => electrode.Impedance(Frequency.FromHertz(f)).Magnitude));
    }

    private static List<Curve> LoopCurves(Evaluation evaluation)
    {
        if (evaluation.Drive is not { } drive)
        {
            return [];
        }

        GroundDrive ground = evaluation.Design.GroundDrive;
        double[] hertz = Grid(Math.Max(1e-3, ground.UnityGainFrequency.Hertz / ground.DcGain / 10), ground.UnityGainFrequency.Hertz * 30);
        Complex[] loop = drive.LoopAt(hertz);
        var phase = new double[Points];
        for (int i = 0; i < Points; i++)
        {
            phase[i] = i == 0 ? loop[0].Phase * 180 / Math.PI : phase[i - 1] + ((loop[i] / loop[i - 1]).Phase * 180 / Math.PI);
        }

        return [new Curve("loop gain", "Hz", "dB", hertz, Array.ConvertAll(loop, t => Decibels(t.Magnitude))),
            new Curve("phase", "Hz", "°", hertz, phase)];
    }

    private static List<Curve> StepCurves(Evaluation evaluation)
    {
        (double[] seconds, double[] volts) = evaluation.Recovery.Curve();
        return [new Curve("recording after a step of the electrode offset, at the electrodes", "s", "V", seconds, volts)];
    }
}
