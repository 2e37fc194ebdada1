using System.Numerics;

namespace FrontEnd.Networks;

/// <summary>Complex elimination with scaled partial pivoting, for the lanes that the fixed order does not serve and for dc.</summary>
/// <remarks>An unknown whose row and column are empty (a node that only capacitors reach, at dc) is left out: its solution is 0.</remarks>
internal sealed class DenseSolver(int unknowns)
{
    private readonly Complex[] _a = new Complex[unknowns * unknowns];
    private readonly double[] _scale = new double[unknowns];

    public Complex[] RightSide { get; } = new Complex[unknowns];

    public Complex[] Solution => RightSide;

    public void Clear()
    {
        Array.Clear(_a);
        Array.Clear(RightSide);
    }

    public void Add(int row, int column, Complex value) => _a[(row * unknowns) + column] += value;

    /// <summary>Solves in place. A row without any entry is an unknown that nothing determines: it stays 0.</summary>
    /// <exception cref="NetworkHasNoAnswer">The matrix is singular beyond such rows, or has entries that are no numbers.</exception>
    public void Solve()
    {
        Scale();
        for (int k = 0; k < unknowns; k++)
        {
            int pivot = k;
            for (int i = k + 1; i < unknowns; i++)
            {
                if (Size(_a[(pivot * unknowns) + k]) * _scale[pivot] < Size(_a[(i * unknowns) + k]) * _scale[i])
                {
                    pivot = i;
                }
            }

            // A leak of picosiemens beside a short circuit of kilosiemens is a small pivot and no lack of an answer; nothing at all, or no
            // number, is.
            if (!(0 < Size(_a[(pivot * unknowns) + k])))
            {
                throw new NetworkHasNoAnswer();
            }

            Swap(k, pivot);
            Eliminate(k);
        }

        for (int k = unknowns - 1; 0 <= k; k--)
        {
            for (int j = k + 1; j < unknowns; j++)
            {
                RightSide[k] -= _a[(k * unknowns) + j] * RightSide[j];
            }

            RightSide[k] /= _a[(k * unknowns) + k];
        }
    }

    private void Scale()
    {
        for (int i = 0; i < unknowns; i++)
        {
            double largest = 0;
            for (int j = 0; j < unknowns; j++)
            {
                largest = Math.Max(largest, Size(_a[(i * unknowns) + j]));
            }

            if (largest == 0)
            {
                _a[(i * unknowns) + i] = 1;
                RightSide[i] = 0;
                largest = 1;
            }

            _scale[i] = 1 / largest;
        }
    }

    private void Eliminate(int k)
    {
        for (int i = k + 1; i < unknowns; i++)
        {
            Complex factor = _a[(i * unknowns) + k] / _a[(k * unknowns) + k];
            if (factor != 0)
            {
                for (int j = k + 1; j < unknowns; j++)
                {
                    _a[(i * unknowns) + j] -= factor * _a[(k * unknowns) + j];
                }

                RightSide[i] -= factor * RightSide[k];
            }
        }
    }

    private static double Size(Complex z) => Math.Abs(z.Real) + Math.Abs(z.Imaginary);

    private void Swap(int left, int right)
    {
        if (left == right)
        {
            return;
        }

        for (int j = 0; j < unknowns; j++)
        {
            (_a[(left * unknowns) + j], _a[(right * unknowns) + j]) = (_a[(right * unknowns) + j], _a[(left * unknowns) + j]);
        }

        (RightSide[left], RightSide[right]) = (RightSide[right], RightSide[left]);
        (_scale[left], _scale[right]) = (_scale[right], _scale[left]);
    }
}
