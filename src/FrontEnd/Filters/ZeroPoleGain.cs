using System.Numerics;

namespace FrontEnd.Filters;

/// <summary>A transfer function by its roots: H(x) = gain · Π(x − zeros)/Π(x − poles). The form of record of every filter.</summary>
/// <remarks>x is s [rad/s] for an analogue filter and z for a digital one. Zeros at infinity are left out. Complex roots stand in exact
/// conjugate pairs.
/// High orders are never multiplied out into polynomials: the work is done by second-order sections.</remarks>
public sealed class ZeroPoleGain
{
    /// <summary>Roots in pairs of conjugates, and the factor before the products.</summary>
    public ZeroPoleGain(IReadOnlyList<Complex> zeros, IReadOnlyList<Complex> poles, double gain)
    {
        Zeros = zeros;
        Poles = poles;
        Gain = gain;
    }

    /// <summary>Finite zeros.</summary>
    public IReadOnlyList<Complex> Zeros { get; }

    /// <summary>Poles.</summary>
    public IReadOnlyList<Complex> Poles { get; }

    /// <summary>The factor before the products; not the gain at any frequency.</summary>
    public double Gain { get; }

    /// <summary>Order of the filter: the number of poles.</summary>
    public int Order => Poles.Count;

    /// <summary>True where every number is finite, complex roots stand in pairs and every pole is stable: what double precision has left
    /// intact.</summary>
    internal bool IsSound(bool isDigital) =>
        double.IsFinite(Gain) && Gain != 0 && IsPaired(Zeros) && IsPaired(Poles)
            && Poles.All(p => isDigital ? Complex.Abs(p) < 1 : p.Real < 0);

    /// <summary>H at a point of the plane. One zero is divided by one pole at a time so that no product overflows.</summary>
    public Complex At(Complex point)
    {
        Complex value = Gain;
        for (int i = 0; i < Math.Max(Zeros.Count, Poles.Count); i++)
        {
            if (i < Zeros.Count)
            {
                value *= point - Zeros[i];
            }

            if (i < Poles.Count)
            {
                value /= point - Poles[i];
            }
        }

        return value;
    }

    /// <summary>Analogue filter to digital by s = 2·fs·(z − 1)/(z + 1). Zeros at infinity become zeros at half the rate, z = −1.</summary>
    /// <remarks>Keeps stability: the left half plane maps into the unit circle. It bends the frequency axis, f_analogue =
    /// (fs/π)·tan(π·f/fs), so that every
    /// stated corner has to be prewarped before (see <see cref="FilterDesign"/>). Source: A. V. Oppenheim, R. W. Schafer, Discrete-Time
    /// Signal Processing, section 7.1.2 (from memory).</remarks>
    /// <param name="rate">Sampling rate fs [Hz].</param>
    public ZeroPoleGain Bilinear(double rate)
    {
        double k = 2 * rate;
        var zeros = new List<Complex>(Poles.Count);
        foreach (Complex zero in Zeros)
        {
            zeros.Add(ToDisc(zero, k));
        }

        while (zeros.Count < Poles.Count)
        {
            zeros.Add(-1);
        }

        var poles = new List<Complex>(Poles.Count);
        Complex gain = Gain;
        for (int i = 0; i < Poles.Count; i++)
        {
            poles.Add(ToDisc(Poles[i], k));
            gain /= k - Poles[i];
            if (i < Zeros.Count)
            {
                gain *= k - Zeros[i];
            }
        }

        return new ZeroPoleGain(zeros, poles, gain.Real);
    }

    private static bool IsPaired(IReadOnlyList<Complex> roots) =>
        roots.All(Complex.IsFinite) && roots.Count(r => 0 < r.Imaginary) == roots.Count(r => r.Imaginary < 0);

    private static Complex ToDisc(Complex s, double k)
    {
        // A zero on the imaginary axis must land on the unit circle exactly, or a notch loses its depth.
        if (s.Real == 0)
        {
            return s.Imaginary == 0 ? Complex.One : Complex.FromPolarCoordinates(1, 2 * Math.Atan2(s.Imaginary, k));
        }

        return (k + s) / (k - s);
    }
}
