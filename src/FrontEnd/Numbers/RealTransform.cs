namespace FrontEnd.Numbers;

/// <summary>Fourier transform of real records of one even length, planned once: Σ x(i)·exp(−2πi·ik/n).</summary>
/// <remarks>Neighbours are taken as one complex number, so that a transform of half the length does, and its two interleaved halves are
/// parted afterwards (the usual way, derived). The library's transform makes its plan at each call and takes a length that is no power of
/// two to one of four times the length: forty times the time for a window of 3,000 samples.</remarks>
internal sealed class RealTransform
{
    private readonly ComplexTransform _half;
    private readonly double[] _cosines, _sines, _real, _imaginary;

    /// <param name="length">Samples of a record, even.</param>
    public RealTransform(int length)
    {
        if (length % 2 != 0)
        {
            throw new ArgumentOutOfRangeException(nameof(length), length, "A length must be even.");
        }

        Length = length;
        int half = length / 2;
        _half = ComplexTransform.Of(half);
        (_real, _imaginary) = (new double[half], new double[half]);
        (_cosines, _sines) = ComplexTransform.Roots(length, (half / 2) + 1);
    }

    public int Length { get; }

    /// <summary>Adds |X(k)|² of a record to sums at k = 0 … n/2.</summary>
    public void AddPowers(ReadOnlySpan<double> record, Span<double> sums)
    {
        int half = _real.Length;
        for (int i = 0; i < half; i++)
        {
            (_real[i], _imaginary[i]) = (record[2 * i], record[(2 * i) + 1]);
        }

        _half.Forward(_real, _imaginary);
        double zero = _real[0] + _imaginary[0], last = _real[0] - _imaginary[0];
        sums[0] += zero * zero;
        sums[half] += last * last;
        for (int k = 1; k <= half / 2; k++)
        {
            // Even samples' transform E and odd ones' O at k, from Z(k) and Z(n/2 − k); X(k) = E + w·O, X(n/2 − k) = conj(E − w·O).
            int mirror = half - k;
            double evenReal = (_real[k] + _real[mirror]) / 2, evenImaginary = (_imaginary[k] - _imaginary[mirror]) / 2;
            double oddReal = (_imaginary[k] + _imaginary[mirror]) / 2, oddImaginary = (_real[mirror] - _real[k]) / 2;
            double turnedReal = (oddReal * _cosines[k]) - (oddImaginary * _sines[k]);
            double turnedImaginary = (oddReal * _sines[k]) + (oddImaginary * _cosines[k]);
            sums[k] += Square(evenReal + turnedReal, evenImaginary + turnedImaginary);
            if (mirror != k)
            {
                sums[mirror] += Square(evenReal - turnedReal, evenImaginary - turnedImaginary);
            }
        }
    }

    private static double Square(double real, double imaginary) => (real * real) + (imaginary * imaginary);
}
