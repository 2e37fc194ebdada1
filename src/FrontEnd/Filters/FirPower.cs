using System.Numerics;
using MathNet.Numerics.IntegralTransforms;

namespace FrontEnd.Filters;

/// <summary>|H|² of a filter without feedback at any frequency, from one transform of its taps.</summary>
/// <remarks>A sum over all taps for each of some ten thousand frequencies is what a search for the shortest filter would wait for. |H|² of L taps
/// holds no faster ripple than L − 1 in the rate, so that 32 points a ripple and a polynomial through the ten about a place give it to 2e-11 of
/// the ripple. Derived, from the remainder of the polynomial.</remarks>
internal sealed class FirPower
{
    private const int PointsPerRipple = 32;
    private const int Neighbours = 10;

    // (−1)^j·C(9, j): the barycentric weights of ten evenly spaced points.
    private static readonly double[] Weights = [1, -9, 36, -84, 126, -126, 84, -36, 9, -1];

    // From five points below 0 Hz to five above half the rate: |H|² goes on evenly beyond both.
    private readonly double[] _powers;
    private readonly double _perHertz;

    private FirPower(double[] powers, double perHertz) => (_powers, _perHertz) = (powers, perHertz);

    internal static FirPower Of(FirFilter filter)
    {
        int points = (int)BitOperations.RoundUpToPowerOf2((uint)(PointsPerRipple * Math.Max(filter.Length, 2)));
        Complex[] buffer = new Complex[points];
        for (int k = 0; k < filter.Length; k++)
        {
            buffer[k] = filter.Taps[k];
        }

        Fourier.Forward(buffer, FourierOptions.NoScaling);
        double[] powers = new double[(points / 2) + 1 + Neighbours];
        for (int i = 0; i < powers.Length; i++)
        {
            Complex h = buffer[(i - (Neighbours / 2) + points) % points];
            powers[i] = (h.Real * h.Real) + (h.Imaginary * h.Imaginary);
        }

        return new FirPower(powers, points / filter.Rate.Hertz);
    }

    /// <param name="hertz">0 Hz to half the rate.</param>
    internal double At(double hertz)
    {
        double place = hertz * _perHertz;
        int first = Math.Clamp((int)place + 1, 0, _powers.Length - Neighbours);
        double t = place + (Neighbours / 2) - first, above = 0, below = 0;
        for (int j = 0; j < Neighbours; j++)
        {
            double distance = t - j;
            if (distance == 0)
            {
                return _powers[first + j];
            }

            double share = Weights[j] / distance;
            above += share * _powers[first + j];
            below += share;
        }

        return Math.Max(0, above / below);
    }
}
