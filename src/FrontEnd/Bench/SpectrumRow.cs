using FrontEnd.Results;

namespace FrontEnd.Bench;

/// <summary>A measured and a predicted spectrum over a range of frequencies, both as the rms of the densities in it.</summary>
/// <param name="From">Where the range begins; the next row's beginning ends it.</param>
/// <param name="Measured">Amplitude density of the recording.</param>
/// <param name="Predicted">Amplitude density that the design should give.</param>
internal sealed record SpectrumRow(Frequency From, VoltageNoiseDensity Measured, VoltageNoiseDensity Predicted)
{
    private const int Most = 16;

    /// <summary>Measured over predicted [dB]; null where one of them is 0.</summary>
    public Decibels? Difference => 0 < Measured.VoltsPerRootHertz && 0 < Predicted.VoltsPerRootHertz
        ? Decibels.FromVoltageRatio(Measured.VoltsPerRootHertz / Predicted.VoltsPerRootHertz)
        : null;

    /// <summary>Both spectra of a recording in rows of equal ratio, those without a line of the spectrum left out; empty for a reading
    /// alone.</summary>
    public static IReadOnlyList<SpectrumRow> Of(BenchResult result)
    {
        if (result.Spectra is not [{ } measured, { } predicted] || measured.X.Length < 2)
        {
            return [];
        }

        double[] hertz = measured.X;
        double low = hertz[0], step = Math.Pow(hertz[^1] / low, 1.0 / Most);
        List<SpectrumRow> rows = [];
        for (int row = 0; row < Most; row++)
        {
            double from = low * Math.Pow(step, row), to = row == Most - 1 ? double.PositiveInfinity : from * step;
            int[] bins = [.. Enumerable.Range(0, hertz.Length).Where(k => from <= hertz[k] && hertz[k] < to)];
            if (bins.Length != 0)
            {
                rows.Add(new SpectrumRow(Frequency.FromHertz(from), Rms(measured, bins), Rms(predicted, bins)));
            }
        }

        return rows;
    }

    private static VoltageNoiseDensity Rms(Curve curve, int[] bins) =>
        VoltageNoiseDensity.FromVoltsPerRootHertz(Math.Sqrt(bins.Average(k => curve.Y[k] * curve.Y[k])));
}
