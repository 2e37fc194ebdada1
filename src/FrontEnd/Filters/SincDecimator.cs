using MathNet.Numerics.LinearAlgebra;

namespace FrontEnd.Filters;

/// <summary>The sinc decimator of a delta-sigma converter: K running means over M modulator samples, then every M-th kept.</summary>
/// <remarks>|H| = |sin(π·f·M/f_mod)/(M·sin(π·f/f_mod))|^K, f_mod = M·fs; nulls at every multiple of fs. Group delay K·(M − 1)/2 modulator
/// clocks.
/// Source: E. B. Hogenauer, An economical class of digital filters for decimation and interpolation, IEEE Trans. ASSP-29 (1981) 155 (from
/// memory).</remarks>
public sealed record SincDecimator(int Order, int Ratio, Frequency OutputRate)
{
    /// <summary>|H| before folding.</summary>
    public double Gain(double hertz)
    {
        double x = Math.PI * hertz / (OutputRate.Hertz * Ratio);
        double sine = Ratio * Math.Sin(x);
        return Math.Abs(sine) < 1e-12 * Ratio ? 1 : Math.Pow(Math.Abs(Math.Sin(Ratio * x) / sine), Order);
    }

    /// <summary>Loss at a frequency against 0 Hz [dB].</summary>
    public double Droop(Frequency frequency) => 20 * Math.Log10(1 / Math.Max(Gain(frequency.Hertz), 1e-300));

    /// <summary>Delay, the same at every frequency: k·(M − 1)/2 input samples.</summary>
    public Duration Delay => Duration.FromSeconds(Order * (Ratio - 1) / 2.0 / (OutputRate.Hertz * Ratio));

    /// <summary>Output samples after which a step that begins behind one of them has settled entirely, ⌈(K·(M − 1) + 1)/M⌉: K where M is at
    /// least K.</summary>
    public int SettlingSamples => ((Order * (Ratio - 1)) + Ratio) / Ratio;

    /// <summary>Symmetric FIR at the output rate that makes the band flat again: the least mean square of gain × sinc − 1 from 0 Hz to the
    /// edge, gain 1 at 0 Hz not forced.</summary>
    /// <param name="length">Taps, odd.</param>
    /// <param name="edge">Upper edge of the band that is made flat; below half the output rate.</param>
    /// <remarks>Above the edge the filter goes on rising: it lifts what is there, noise included. Derived (normal equations over 400
    /// points).</remarks>
    public FirFilter Compensation(int length, Frequency edge)
    {
        if (length % 2 == 0)
        {
            throw new ArgumentOutOfRangeException(nameof(length), length, "The length must be odd.");
        }

        const int Points = 400;
        int terms = (length + 1) / 2;
        Matrix<double> a = Matrix<double>.Build.Dense(Points + 1, terms);
        Vector<double> wanted = Vector<double>.Build.Dense(Points + 1, 1);
        for (int i = 0; i <= Points; i++)
        {
            double f = edge.Hertz * i / Points;
            double sinc = Gain(f);
            for (int m = 0; m < terms; m++)
            {
                a[i, m] = sinc * (m == 0 ? 1 : 2 * Math.Cos(2 * Math.PI * m * f / OutputRate.Hertz));
            }
        }

        Vector<double> half = a.QR().Solve(wanted);
        double[] taps = new double[length];
        for (int m = 0; m < terms; m++)
        {
            taps[terms - 1 - m] = half[m];
            taps[terms - 1 + m] = half[m];
        }

        return new FirFilter(taps, OutputRate);
    }
}
