using System.Numerics;
using FrontEnd.Amplifier;
using FrontEnd.Budgets;
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
        int nodes = evaluation.Path.Nodes, sources = evaluation.Path.Sources.Count;
        double[] path = new double[Points], chain = new double[Points], filtered = new double[Points], phase = new double[Points];
        double[][] density = [.. Enumerable.Range(0, sources + 1).Select(_ => new double[Points])];
        var converter = new double[Points];
        var row = new double[SignalPath.Chunk];
        Complex before = Complex.Zero;
        for (int first = 0; first < Points; first += SignalPath.Chunk)
        {
            int n = Math.Min(SignalPath.Chunk, Points - first);
            evaluation.Path.Sweep(hertz.AsSpan(first, n));
            for (int i = 0; i < n; i++)
            {
                int at = first + i;
                Complex h = evaluation.Path.Path(i);
                double response = converter[at] = design.Converter.Response(hertz[at]);
                path[at] = Decibels(h.Magnitude);
                chain[at] = Decibels(h.Magnitude * response);
                filtered[at] = hertz[at] < fs / 2
                    ? Decibels(h.Magnitude * response * Math.Sqrt(evaluation.Digital.Power(hertz[at])))
                    : double.NaN;
                phase[at] = at == 0 ? h.Phase * 180 / Math.PI : phase[at - 1] + ((h / before).Phase * 180 / Math.PI);
                density[sources][at] = Math.Sqrt(evaluation.Path.NodeDensity[nodes - 1][i]) * response / evaluation.GainMid;
                before = h;
            }

            for (int source = 0; source < sources; source++)
            {
                evaluation.Path.SourceDensity(source, n, row);
                for (int i = 0; i < n; i++)
                {
                    density[source][first + i] = row[i];
                }
            }
        }

        double[][] delays = evaluation.Path.Delays(hertz);
        IReadOnlyList<Curve> filters = FilterCurves.Response(evaluation, hertz);
        return new Curves
        {
            Response =
            [
                new Curve("analogue path", "Hz", "dB", hertz, path), new Curve("path and converter", "Hz", "dB", hertz, chain),
                new Curve("with digital filters", "Hz", "dB", hertz, filtered),
            ],
            PhaseAndDelay = [new Curve("phase", "Hz", "°", hertz, phase), new Curve("group delay", "Hz", "s", hertz, [.. hertz.Select((_, i) => delays.Sum(block => block[i]))])],
            NoiseDensity = NoiseCurves(evaluation, hertz, density, converter),
            ElectrodeImpedance = ElectrodeCurves(design, hertz),
            DrivenGroundLoop = LoopCurves(evaluation),
            StepResponse = StepCurves(evaluation),
            FilterResponse = filters,
            FilterDifference = FilterCurves.Difference(filters),
            FilterDelay = FilterCurves.Delay(evaluation, hertz, delays),
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

    /// <summary>Parts of the same source are one line; densities referred to the input by the mid-band gain.</summary>
    private static List<Curve> NoiseCurves(Evaluation evaluation, double[] hertz, double[][] density, double[] response)
    {
        var curves = new List<Curve>();
        foreach (IGrouping<SourceId, int> group in Enumerable.Range(0, evaluation.Path.Sources.Count).GroupBy(i =>
            evaluation.Path.Sources[i].Id))
        {
            var y = new double[Points];
            foreach (int source in group)
            {
                for (int i = 0; i < Points; i++)
                {
                    y[i] += density[source][i];
                }
            }

            for (int i = 0; i < Points; i++)
            {
                y[i] = Math.Sqrt(y[i]) * response[i] / evaluation.GainMid;
            }

            curves.Add(new Curve(evaluation.Path.Sources[group.First()].Name, "Hz", "V/√Hz", hertz, y) { Source = group.Key });
        }

        curves.Add(new Curve("total", "Hz", "V/√Hz", hertz, density[^1]));
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
            new(name, "Hz", "Ω", hertz, [.. hertz.Select(f => electrode.Impedance(Frequency.FromHertz(f)).Magnitude)]);
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

        return [new Curve("loop gain", "Hz", "dB", hertz, [.. loop.Select(t => Decibels(t.Magnitude))]),
            new Curve("phase", "Hz", "°", hertz, phase)];
    }

    private static List<Curve> StepCurves(Evaluation evaluation)
    {
        (double[] seconds, double[] volts) = evaluation.Recovery.Curve();
        return [new Curve("recording after a step of the electrode offset, at the electrodes", "s", "V", seconds, volts)];
    }
}
