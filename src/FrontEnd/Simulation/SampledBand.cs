using FrontEnd.Bench;
using FrontEnd.Budgets;
using FrontEnd.Designs;
using MathNet.Numerics.Distributions;

namespace FrontEnd.Simulation;

/// <summary>Noise of simulated samples in a band, against the budget.</summary>
/// <param name="Band">Which.</param>
/// <param name="Share">The samples' rms over the budget's, both as the windows of one spectrum show them, without the bins of large lines of the mains.</param>
/// <param name="Budget">By the budget's integral.</param>
/// <param name="Least">The samples' share of the budget, as rms, that a sound record is not below but for half of <see cref="SampleSummary.Significance"/>.</param>
/// <param name="Greatest">Likewise not above.</param>
/// <param name="Freedom">ν: degrees of freedom of the measured power.</param>
internal sealed record SampledBand(Band Band, double Share, VoltageRms Budget, double Least, double Greatest, double Freedom)
{
    /// <summary>In the samples.</summary>
    public VoltageRms Measured => VoltageRms.FromVolts(Share * Budget.Volts);

    public bool IsInside => Least <= Share && Share <= Greatest;

    /// <summary>Lines of less than this share of the noise stay in: all of them add less than a four-hundredth to its power.</summary>
    private const double SmallLine = 0.01;

    /// <summary>A line reaches this many bins to either side.</summary>
    private const double Reach = 3;

    /// <summary>Products of neighbouring windows that are looked at, by the distance of their bins.</summary>
    private const int Neighbours = 5;

    /// <summary>Null where lines of the mains leave no bin of the band.</summary>
    /// <param name="band">Which.</param>
    /// <param name="whole">Noise in it by the budget, rms [V].</param>
    /// <param name="spectrum">Of the samples.</param>
    /// <param name="predicted">The budget's density at its bins from the first on.</param>
    /// <param name="lines">The mains.</param>
    /// <remarks>ν = 2P²/var P, var P = ΣΣ a_j·a_k·S_j·S_k·(ρ_|j−k| + 2(1 − 1/K)·r_|j−k|)/K, a the bins' widths, ρ and r what Hann windows of one stretch and of
    /// half overlapped ones have in common. ν·P̂/P is χ² with ν degrees of freedom. Source: F. E. Satterthwaite, An approximate distribution of
    /// estimates of variance components, Biometrics Bull. 2 (1946) 110; P. D. Welch 1967 (both from memory); ρ and r derived.</remarks>
    internal static SampledBand? Of(Band band, double whole, WelchSpectrum spectrum, double[] predicted, IReadOnlyList<MainsHarmonic> lines)
    {
        double step = spectrum.Step;
        MainsHarmonic[] large = [.. lines.Where(line => SmallLine * whole < line.Recorded)];
        var widths = new double[predicted.Length + 1];
        for (int k = 1; k < widths.Length; k++)
        {
            double low = Math.Max(band.Low.Hertz, (k - 0.5) * step), high = Math.Min(band.High.Hertz, (k + 0.5) * step);
            bool isTaken = large.Any(line => line.LandsLow - (Reach * step) <= k * step && k * step <= line.LandsHigh + (Reach * step));
            widths[k] = isTaken ? 0 : Math.Max(0, high - low);
        }

        double budget = 0, measured = 0, variance = 0;
        for (int k = 1; k < widths.Length; k++)
        {
            budget += widths[k] * predicted[k - 1];
            measured += widths[k] * spectrum.Density[k];
            for (int j = Math.Max(1, k - Neighbours + 1); j < Math.Min(widths.Length, k + Neighbours); j++)
            {
                variance += widths[k] * predicted[k - 1] * widths[j] * predicted[j - 1]
                    * (InCommon[Math.Abs(j - k)].Same + (2 * (1 - (1.0 / spectrum.Windows)) * InCommon[Math.Abs(j - k)].Overlapped)) / spectrum.Windows;
            }
        }

        if (budget <= 0)
        {
            return null;
        }

        double freedom = 2 * budget * budget / variance, half = SampleSummary.Significance / 2;
        return new SampledBand(band, Math.Sqrt(measured / budget), VoltageRms.FromVolts(whole),
            Math.Sqrt(ChiSquared.InvCDF(freedom, half) / freedom), Math.Sqrt(ChiSquared.InvCDF(freedom, 1 - half) / freedom), freedom);
    }

    /// <summary>|Σ w(t)·w(t + m)·exp(2πi·dt/n)|²/(Σw²)² for m = 0 and n/2, d = 0, 1 ….</summary>
    private static readonly (double Same, double Overlapped)[] InCommon = [.. Enumerable.Range(0, Neighbours).Select(d => (Product(d, 0), Product(d, Fine / 2)))];

    private const int Fine = 256;

    private static double Product(int bins, int shift)
    {
        double real = 0, imaginary = 0, power = 0;
        for (int t = 0; t < Fine; t++)
        {
            double product = Hann(t) * (t + shift < Fine ? Hann(t + shift) : 0);
            real += product * Math.Cos(2 * Math.PI * bins * t / Fine);
            imaginary += product * Math.Sin(2 * Math.PI * bins * t / Fine);
            power += Hann(t) * Hann(t);
        }

        return ((real * real) + (imaginary * imaginary)) / (power * power);

        static double Hann(int t) => 0.5 - (0.5 * Math.Cos(2 * Math.PI * t / Fine));
    }
}
