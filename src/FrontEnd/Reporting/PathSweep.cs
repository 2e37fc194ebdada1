using System.Numerics;
using FrontEnd.AntiAlias;
using FrontEnd.Budgets;
using FrontEnd.Identity;

namespace FrontEnd.Reporting;

/// <summary>The path at the points of the plots: one sweep for every line that is drawn over frequency.</summary>
internal sealed class PathSweep
{
    /// <param name="evaluation">The design's.</param>
    /// <param name="hertz">Frequencies, rising [Hz].</param>
    public PathSweep(Evaluation evaluation, double[] hertz)
    {
        SignalPath path = evaluation.Path;
        int points = hertz.Length;
        Hertz = hertz;
        (Path, Chain, Filtered, Phase) = (new double[points], new double[points], new double[points], new double[points]);
        (Delay, SectionDelay, SectionPower, Density) = (new double[points], new double[points], new double[points], new double[points]);
        IReadOnlyList<NoiseSource> sources = path.Sources;
        var rows = new List<(SourceId Id, string Name)>();
        var rowOf = new int[sources.Count];
        for (int i = 0; i < rowOf.Length; i++)
        {
            rowOf[i] = rows.FindIndex(row => row.Id == sources[i].Id);
            if (rowOf[i] < 0)
            {
                rowOf[i] = rows.Count;
                rows.Add((sources[i].Id, sources[i].Name));
            }
        }

        Rows = rows;
        RowDensity = [.. rows.Select(_ => new double[points])];
        bool[] isSection = [false, .. evaluation.Design.Stages.Select(AsBuiltSection.Is)];
        var density = new double[SignalPath.Chunk];
        for (int first = 0; first < points; first += SignalPath.Chunk)
        {
            int n = Math.Min(SignalPath.Chunk, points - first);
            path.Sweep(hertz.AsSpan(first, n), withDelay: true);
            for (int source = 0; source < rowOf.Length; source++)
            {
                path.SourceDensity(source, n, density);
                double[] row = RowDensity[rowOf[source]];
                for (int i = 0; i < n; i++)
                {
                    row[first + i] += density[i];
                }
            }

            for (int i = 0; i < n; i++)
            {
                Density[first + i] = path.Density[i];
                SectionPower[first + i] = 1;
            }

            for (int block = 0; block < isSection.Length; block++)
            {
                for (int i = 0; i < n; i++)
                {
                    double delay = path.BlockDelay[block][i];
                    Delay[first + i] += delay;
                    SectionDelay[first + i] += isSection[block] ? delay : 0;
                    SectionPower[first + i] *= isSection[block] ? path.BlockPower[block][i] : 1;
                }
            }

            Refer(evaluation, first, n);
        }
    }

    /// <summary>Frequencies [Hz].</summary>
    public double[] Hertz { get; }

    /// <summary>Gain to the converter's pin, then with the converter's own response, then with the digital filters [dB]; no number from half
    /// the sampling rate on.</summary>
    public double[] Path { get; }

    public double[] Chain { get; }

    public double[] Filtered { get; }

    /// <summary>Of the path, followed from the first point [°].</summary>
    public double[] Phase { get; }

    /// <summary>Group delay of the path, and of its anti-alias sections alone [s].</summary>
    public double[] Delay { get; }

    public double[] SectionDelay { get; }

    /// <summary>|H|² of the anti-alias sections as built.</summary>
    public double[] SectionPower { get; }

    /// <summary>Sources of noise; parts of the same source are one row.</summary>
    public IReadOnlyList<(SourceId Id, string Name)> Rows { get; }

    /// <summary>Noise density of each row, referred to the input by the mid-band gain [V/√Hz].</summary>
    public double[][] RowDensity { get; }

    /// <summary>Of all together.</summary>
    public double[] Density { get; }

    /// <summary>Gains, phase and densities of one chunk as they are drawn.</summary>
    private void Refer(Evaluation evaluation, int first, int n)
    {
        double half = evaluation.Design.Converter.Rate.Hertz / 2;
        Complex before = first == 0 ? 1 : _last;
        for (int i = 0; i < n; i++)
        {
            int at = first + i;
            Complex h = evaluation.Path.Path(i);
            double gain = evaluation.Path.Size(evaluation.Path.Nodes - 1, i), response = evaluation.Design.Converter.Response(Hertz[at]);
            Path[at] = CurveMaker.Decibels(gain);
            Chain[at] = CurveMaker.Decibels(gain * response);
            Filtered[at] = Hertz[at] < half
                ? CurveMaker.Decibels(gain * response * Math.Sqrt(evaluation.Digital.Power(Hertz[at])))
                : double.NaN;

            // By less than half a turn from point to point.
            double turned = Math.Atan2((h.Imaginary * before.Real) - (h.Real * before.Imaginary),
                (h.Real * before.Real) + (h.Imaginary * before.Imaginary)) * 180 / Math.PI;
            Phase[at] = at == 0 ? turned : Phase[at - 1] + turned;
            double perGain = response / evaluation.GainMid;
            Density[at] = Math.Sqrt(Density[at]) * perGain;
            foreach (double[] row in RowDensity)
            {
                row[at] = Math.Sqrt(row[at]) * perGain;
            }

            before = h;
        }

        _last = before;
    }

    private Complex _last;
}
