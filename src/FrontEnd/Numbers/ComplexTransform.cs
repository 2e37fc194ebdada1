using System.Numerics;

namespace FrontEnd.Numbers;

/// <summary>Fourier transform of complex records of one length, planned once: Σ z(i)·exp(−2πi·ik/n).</summary>
internal abstract class ComplexTransform
{
    /// <summary>Largest prime factor that is taken as it is; a prime p costs p multiplications a sample.</summary>
    private const int LargestFactor = 64;

    /// <summary>In place. A transform holds its own working space: one thread at a time.</summary>
    public abstract void Forward(double[] real, double[] imaginary);

    /// <summary>The transform of a length: by the factors of it, or around a length that has small ones.</summary>
    public static ComplexTransform Of(int length)
    {
        int[] factors = Factors(length);
        return factors is [.., > LargestFactor] ? new AroundTransform(length) : new FactoredTransform(length, factors);
    }

    /// <summary>The first <paramref name="count"/> of the numbers exp(−2πi·k/n), each worked out by itself.</summary>
    internal static (double[] Cosines, double[] Sines) Roots(int length, int count)
    {
        (double[] cosines, double[] sines) = (new double[count], new double[count]);
        for (int k = 0; k < count; k++)
        {
            (double sine, double cosine) = Math.SinCos(2 * Math.PI * k / length);
            (cosines[k], sines[k]) = (cosine, -sine);
        }

        return (cosines, sines);
    }

    /// <summary>Fours first, then the prime factors in order.</summary>
    private static int[] Factors(int length)
    {
        List<int> factors = [];
        int rest = length;
        for (; rest % 4 == 0; rest /= 4)
        {
            factors.Add(4);
        }

        for (int prime = 2; 1 < rest; prime = rest < (long)prime * prime ? rest : prime + 1)
        {
            for (; rest % prime == 0; rest /= prime)
            {
                factors.Add(prime);
            }
        }

        return [.. factors];
    }
}

/// <summary>By the factors of the length, one after the other.</summary>
/// <remarks>For a factor r, s the product of the factors before and m = n/(r·s):
/// y(q + s·(r·p + t)) = exp(−2πi·p·t·s/n)·Σ x(q + s·(p + k·m))·exp(−2πi·k·t/r), q below s, p below m. The results come out in order
/// without swapping. Source: T. G. Stockham, High-speed convolution and correlation, AFIPS Conf. Proc. 28 (1966) 229 (from memory).</remarks>
file sealed class FactoredTransform : ComplexTransform
{
    private readonly int[] _factors;
    private readonly double[] _cosines, _sines, _realThere, _imaginaryThere, _partReal, _partImaginary;
    private double[] _real = [], _imaginary = [], _toReal = [], _toImaginary = [];

    public FactoredTransform(int length, int[] factors)
    {
        _factors = factors;
        (_cosines, _sines) = Roots(length, length);
        (_realThere, _imaginaryThere) = (new double[length], new double[length]);
        int largest = factors.Append(1).Max();
        (_partReal, _partImaginary) = (new double[largest], new double[largest]);
    }

    public override void Forward(double[] real, double[] imaginary)
    {
        (_real, _imaginary, _toReal, _toImaginary) = (real, imaginary, _realThere, _imaginaryThere);
        int stride = 1;
        foreach (int factor in _factors)
        {
            for (int group = 0; group < real.Length / (factor * stride); group++)
            {
                if (factor == 4)
                {
                    Four(stride, group);
                }
                else
                {
                    Any(factor, stride, group);
                }
            }

            stride *= factor;
            (_real, _imaginary, _toReal, _toImaginary) = (_toReal, _toImaginary, _real, _imaginary);
        }

        if (_real != real)
        {
            _real.CopyTo(real, 0);
            _imaginary.CopyTo(imaginary, 0);
        }
    }

    /// <summary>Sums of four need no multiplications: exp(−2πi/4) = −i.</summary>
    private void Four(int stride, int group)
    {
        (double[] real, double[] imaginary) = (_real, _imaginary);
        int apart = real.Length / 4, from = stride * group, to = 4 * from;
        for (int q = 0; q < stride; q++)
        {
            int at = from + q;
            double evenReal = real[at] + real[at + (2 * apart)], evenImaginary = imaginary[at] + imaginary[at + (2 * apart)];
            double lessReal = real[at] - real[at + (2 * apart)], lessImaginary = imaginary[at] - imaginary[at + (2 * apart)];
            double oddReal = real[at + apart] + real[at + (3 * apart)], oddImaginary = imaginary[at + apart] + imaginary[at + (3 * apart)];
            double sideReal = real[at + apart] - real[at + (3 * apart)], sideImaginary = imaginary[at + apart] - imaginary[at + (3 * apart)];
            Put(to + q, 0, evenReal + oddReal, evenImaginary + oddImaginary);
            Put(to + stride + q, from, lessReal + sideImaginary, lessImaginary - sideReal);
            Put(to + (2 * stride) + q, 2 * from, evenReal - oddReal, evenImaginary - oddImaginary);
            Put(to + (3 * stride) + q, 3 * from, lessReal - sideImaginary, lessImaginary + sideReal);
        }
    }

    private void Any(int factor, int stride, int group)
    {
        (double[] real, double[] imaginary, double[] partReal, double[] partImaginary) = (_real, _imaginary, _partReal, _partImaginary);
        int apart = real.Length / factor, from = stride * group, to = factor * from;
        for (int q = 0; q < stride; q++)
        {
            for (int k = 0; k < factor; k++)
            {
                (partReal[k], partImaginary[k]) = (real[from + q + (k * apart)], imaginary[from + q + (k * apart)]);
            }

            for (int t = 0; t < factor; t++)
            {
                double sumReal = partReal[0], sumImaginary = partImaginary[0];
                for (int k = 1, root = t * apart; k < factor; k++)
                {
                    sumReal += (partReal[k] * _cosines[root]) - (partImaginary[k] * _sines[root]);
                    sumImaginary += (partReal[k] * _sines[root]) + (partImaginary[k] * _cosines[root]);
                    root += t * apart;
                    root -= root < real.Length ? 0 : real.Length;
                }

                Put(to + (t * stride) + q, t * from, sumReal, sumImaginary);
            }
        }
    }

    private void Put(int at, int root, double real, double imaginary)
    {
        _toReal[at] = (real * _cosines[root]) - (imaginary * _sines[root]);
        _toImaginary[at] = (real * _sines[root]) + (imaginary * _cosines[root]);
    }
}

/// <summary>Lengths with a large prime factor, as a convolution of a length that is a power of two.</summary>
/// <remarks>i·k = (i² + k² − (k − i)²)/2, so that the transform is a product with c(i) = exp(−πi·i²/n), a convolution with its conjugate and
/// the product again. Source: L. I. Bluestein, A linear filtering approach to the computation of discrete Fourier transform, IEEE Trans.
/// Audio Electroacoust. 18 (1970) 451 (from memory).</remarks>
file sealed class AroundTransform : ComplexTransform
{
    private readonly int _length;
    private readonly ComplexTransform _inner;
    private readonly double[] _cosines, _sines, _chirpReal, _chirpImaginary, _real, _imaginary;

    public AroundTransform(int length)
    {
        _length = length;
        int around = (int)BitOperations.RoundUpToPowerOf2((uint)((2 * length) - 1));
        _inner = Of(around);
        (_real, _imaginary) = (new double[around], new double[around]);
        (_chirpReal, _chirpImaginary) = (new double[around], new double[around]);
        (_cosines, _sines) = (new double[length], new double[length]);
        (double[] cosines, double[] sines) = Roots(2 * length, 2 * length);
        for (int i = 0; i < length; i++)
        {
            int root = (int)((long)i * i % (2 * length));
            (_cosines[i], _sines[i]) = (cosines[root], sines[root]);
            _chirpReal[i] = _chirpReal[(around - i) % around] = cosines[root];
            _chirpImaginary[i] = _chirpImaginary[(around - i) % around] = -sines[root];
        }

        _inner.Forward(_chirpReal, _chirpImaginary);
    }

    public override void Forward(double[] real, double[] imaginary)
    {
        Array.Clear(_real);
        Array.Clear(_imaginary);
        for (int i = 0; i < _length; i++)
        {
            (_real[i], _imaginary[i]) = Product(real[i], imaginary[i], _cosines[i], _sines[i]);
        }

        _inner.Forward(_real, _imaginary);
        for (int i = 0; i < _real.Length; i++)
        {
            // With real and imaginary part exchanged before and after, the same transform goes back.
            (_imaginary[i], _real[i]) = Product(_real[i], _imaginary[i], _chirpReal[i], _chirpImaginary[i]);
        }

        _inner.Forward(_real, _imaginary);
        for (int k = 0; k < _length; k++)
        {
            (real[k], imaginary[k]) = Product(_imaginary[k] / _real.Length, _real[k] / _real.Length, _cosines[k], _sines[k]);
        }
    }

    private static (double Real, double Imaginary) Product(double real, double imaginary, double otherReal, double otherImaginary) =>
        ((real * otherReal) - (imaginary * otherImaginary), (real * otherImaginary) + (imaginary * otherReal));
}
