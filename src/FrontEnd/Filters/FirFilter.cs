using System.Numerics;

namespace FrontEnd.Filters;

/// <summary>A filter without feedback, given by its taps.</summary>
public sealed class FirFilter : IFrequencyResponse
{
    private readonly double[] taps;

    /// <summary>The filter of some taps, the first meets the newest sample.</summary>
    public FirFilter(ReadOnlySpan<double> taps, Frequency rate)
    {
        foreach (double tap in taps)
        {
            Require.Finite(tap);
        }

        Require.InRange(taps.Length, 1, int.MaxValue);
        this.taps = taps.ToArray();
        Rate = rate;
    }

    /// <summary>The impulse response.</summary>
    public ReadOnlySpan<double> Taps => taps;

    /// <summary>Sampling rate.</summary>
    public Frequency Rate { get; }

    /// <summary>Number of taps.</summary>
    public int Length => taps.Length;

    /// <summary>True where the taps are symmetric about their middle, to the last bit: the phase is linear.</summary>
    public bool IsSymmetric => !Enumerable.Range(0, taps.Length / 2).Any(i => taps[i] != taps[^(i + 1)]);

    /// <summary>Delay of a symmetric filter, (L − 1)/2 samples.</summary>
    public Duration Delay => Duration.FromSeconds((Length - 1) / 2.0 / Rate.Hertz);

    /// <summary>Multiplications per output sample; symmetric taps are added before they are multiplied.</summary>
    public int Multiplies => IsSymmetric ? (Length + 1) / 2 : Length;

    /// <summary>Multiplications per second [1/s].</summary>
    public double MultipliesPerSecond => Multiplies * Rate.Hertz;

    /// <inheritdoc/>
    public Complex Response(double hertz) => Sum(hertz, weighted: false);

    /// <inheritdoc/>
    public double PowerResponse(double hertz)
    {
        Complex h = Response(hertz);
        return (h.Real * h.Real) + (h.Imaginary * h.Imaginary);
    }

    /// <summary>Re(Σ k·h_k·v^k/Σ h_k·v^k) samples; (L − 1)/2 everywhere for symmetric taps.</summary>
    public double GroupDelay(double hertz)
    {
        if (IsSymmetric)
        {
            return Delay.Seconds;
        }

        Complex h = Response(hertz);
        return h == 0 ? 0 : (Sum(hertz, weighted: true) / h).Real / Rate.Hertz;
    }

    private Complex Sum(double hertz, bool weighted)
    {
        // One sine and cosine for 64 taps, a product for each: 8 times as fast, and no rounding grows through more than 64 products.
        double w = 2 * Math.PI * hertz / Rate.Hertz;
        Complex step = Complex.FromPolarCoordinates(1, -w), sum = 0, turned = 1;
        for (int k = 0; k < taps.Length; k++)
        {
            turned = k % 64 == 0 ? Complex.FromPolarCoordinates(1, -k * w) : turned * step;
            sum += (weighted ? k * taps[k] : taps[k]) * turned;
        }

        return sum;
    }
}
