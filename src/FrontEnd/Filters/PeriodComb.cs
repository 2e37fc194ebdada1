using System.Numerics;

namespace FrontEnd.Filters;

/// <summary>Comb that removes a periodic interference and all its harmonics by averaging over whole periods.</summary>
/// <remarks>
/// Mean form: the mean of the last M samples, one period, D(z) = (1/M)·Σ z⁻ᵏ. Nulls every harmonic and is itself a low-pass: its droop has
/// to be shown.
/// <para>Signal less periodic part: H = 1 − A(z)·(1 − D(z)), A = (1/K)·Σ z^(−kM), k = 0…K−1: what repeats over K periods, less its mean, is
/// taken away. Nulls every harmonic, gain 1 at 0 Hz,
/// and the band between stays flat the better the larger K. K = 1 is the mean form. Derived.</para>
/// <para>The rate must be a whole multiple of the mains frequency: 250/50 and 480/60 are, 250/60 is not.</para>
/// </remarks>
public sealed class PeriodComb : IFrequencyResponse
{
    private readonly double rate;

    /// <param name="period">M, samples per period, at least 2.</param>
    /// <param name="periods">K, periods averaged; 1 for the mean form.</param>
    public PeriodComb(int period, int periods, Frequency rate)
    {
        Period = Require.InRange(period, 2, 1_000_000);
        Periods = Require.InRange(periods, 1, 100_000);
        this.rate = Require.Positive(rate.Hertz);
        Rate = rate;
    }

    /// <summary>Sampling rate.</summary>
    public Frequency Rate { get; }

    /// <summary>Samples of one mains period.</summary>
    public int Period { get; }

    /// <summary>Samples of one mains period.</summary>
    public int Periods { get; }

    /// <summary>Samples per period, or null where the rate is not a whole multiple of the mains frequency (1e-9 relative).</summary>
    public static int? PeriodOf(Frequency mains, Frequency rate)
    {
        double exact = rate / mains;
        double whole = Math.Round(exact);
        return 2 <= whole && Math.Abs(exact - whole) <= 1e-9 * whole ? (int)whole : null;
    }

    /// <summary>Length of the impulse response in samples, K·M: after that nothing rings.</summary>
    public int Length => Periods * Period;

    /// <summary>How long the filter needs to forget an artefact.</summary>
    public Duration RingTime => Duration.FromSeconds(Length / rate);

    /// <summary>The impulse response; sum 1.</summary>
    public double[] Taps()
    {
        double[] taps = new double[Length];
        taps[0] = 1;
        for (int k = 0; k < Periods; k++)
        {
            taps[k * Period] -= 1.0 / Periods;
            for (int i = 0; i < Period; i++)
            {
                taps[(k * Period) + i] += 1.0 / Periods / Period;
            }
        }

        return taps;
    }

    /// <inheritdoc/>
    public Complex Response(double hertz)
    {
        double w = 2 * Math.PI * hertz / rate;
        return 1 - (Mean(w * Period, Periods) * (1 - Mean(w, Period)));
    }

    /// <inheritdoc/>
    public double PowerResponse(double hertz)
    {
        Complex h = Response(hertz);
        return (h.Real * h.Real) + (h.Imaginary * h.Imaginary);
    }

    /// <summary>−Im(H'/H), H' summed term by term; the mean form's is (M − 1)/2 samples everywhere.</summary>
    public double GroupDelay(double hertz)
    {
        if (Periods == 1)
        {
            return (Period - 1) / 2.0 / rate;
        }

        double w = 2 * Math.PI * hertz / rate;
        Complex slope = (-Slope(w * Period, Periods) * Period * (1 - Mean(w, Period))) + (Mean(w * Period, Periods) * Slope(w, Period));
        Complex h = Response(hertz);
        return h == 0 ? 0 : -(slope / h).Imaginary / rate;
    }

    /// <summary>(1/n)·Σ e^(−jkw).</summary>
    private static Complex Mean(double w, int n)
    {
        double half = Math.IEEERemainder(w, 2 * Math.PI) / 2;
        if (Math.Abs(half) < 1e-9)
        {
            return Complex.FromPolarCoordinates(1, -half * (n - 1));
        }

        return Complex.FromPolarCoordinates(1, -half * (n - 1)) * (Math.Sin(n * half) / (n * Math.Sin(half)));
    }

    /// <summary>d/dw of the mean: (1/n)·Σ −jk·e^(−jkw).</summary>
    private static Complex Slope(double w, int n)
    {
        Complex sum = 0;
        for (int k = 1; k < n; k++)
        {
            sum += new Complex(0, -k) * Complex.FromPolarCoordinates(1, -k * w);
        }

        return sum / n;
    }
}
