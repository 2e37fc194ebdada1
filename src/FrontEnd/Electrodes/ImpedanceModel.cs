using System.Numerics;
using FrontEnd.Numbers;

namespace FrontEnd.Electrodes;

/// <summary>Rs + Σ R/(1 + jωRC) beside measured points. Parameters are logarithms: Rs, then R and R·C of each pair.</summary>
internal sealed class ImpedanceModel(IReadOnlyList<ImpedancePoint> points)
{
    /// <summary>A resistance that the grid finds best at nothing starts at this share of the largest impedance.</summary>
    private const double Almost = 1e-6;

    private readonly double _largest = points.Max(point => Complex.Abs(point.Impedance));

    /// <summary>Real and imaginary part of what is left of each point, as a share of it.</summary>
    public double[] Left(double[] logs)
    {
        double[] left = new double[2 * points.Count];
        for (int at = 0; at < points.Count; at++)
        {
            double w = 2 * Math.PI * points[at].Frequency.Hertz;
            Complex z = Math.Exp(logs[0]);
            for (int pair = 1; pair + 1 < logs.Length; pair += 2)
            {
                z += Math.Exp(logs[pair]) / new Complex(1, w * Math.Exp(logs[pair + 1]));
            }

            Complex share = (z - points[at].Impedance) / Complex.Abs(points[at].Impedance);
            (left[2 * at], left[(2 * at) + 1]) = (share.Real, share.Imaginary);
        }

        return left;
    }

    /// <summary>The best parameters, begun at the best of these sets of time constants.</summary>
    public double[] Fit(IEnumerable<double[]> grid)
    {
        (double Cost, double[] Logs)? best = null;
        foreach (double[] taus in grid)
        {
            double[] ohms = Resistances(taus, out double cost);
            if (best is not { } known || cost < known.Cost)
            {
                best = (cost, Logs(ohms, taus));
            }
        }

        return LeastSquares.Minimise(Left, best!.Value.Logs);
    }

    private double[] Logs(double[] ohms, double[] taus)
    {
        double[] logs = new double[1 + (2 * taus.Length)];
        logs[0] = Log(ohms[0]);
        for (int at = 0; at < taus.Length; at++)
        {
            (logs[1 + (2 * at)], logs[2 + (2 * at)]) = (Log(ohms[1 + at]), Math.Log(taus[at]));
        }

        return logs;

        double Log(double value) => Math.Log(Math.Max(value, Almost * _largest));
    }

    /// <summary>Rs and the pairs' resistances, none negative, that leave least with these time constants: the best of all choices of which are
    /// nothing.</summary>
    private double[] Resistances(double[] taus, out double cost)
    {
        (double[] products, double[] wanted) = Normal(taus);
        int count = wanted.Length;
        (cost, double[] best) = (0, new double[count]);
        for (int taken = 1; taken < 1 << count; taken++)
        {
            int[] kept = [.. Enumerable.Range(0, count).Where(at => (taken & (1 << at)) != 0)];
            double[]? some = Solved(products, wanted, kept);
            if (some is null || Array.Exists(some, one => one < 0))
            {
                continue;
            }

            // The sum of squares less the constant part of it.
            double sum = -some.Select((one, at) => one * wanted[kept[at]]).Sum();
            if (sum < cost)
            {
                cost = sum;
                Array.Clear(best);
                for (int at = 0; at < kept.Length; at++)
                {
                    best[kept[at]] = some[at];
                }
            }
        }

        return best;
    }

    /// <summary>Products of the model's columns with each other, and with the points.</summary>
    private (double[] Products, double[] Wanted) Normal(double[] taus)
    {
        int count = taus.Length + 1;
        double[] products = new double[count * count], wanted = new double[count];
        var columns = new Complex[count];
        foreach (ImpedancePoint point in points)
        {
            double w = 2 * Math.PI * point.Frequency.Hertz, size = Complex.Abs(point.Impedance);
            for (int at = 0; at < count; at++)
            {
                columns[at] = at == 0 ? 1 / size : 1 / (size * new Complex(1, w * taus[at - 1]));
            }

            for (int row = 0; row < count; row++)
            {
                wanted[row] += (columns[row].Real * point.Impedance.Real / size) + (columns[row].Imaginary * point.Impedance.Imaginary / size);
                for (int column = 0; column < count; column++)
                {
                    products[(row * count) + column] += (columns[row].Real * columns[column].Real) + (columns[row].Imaginary * columns[column].Imaginary);
                }
            }
        }

        return (products, wanted);
    }

    /// <summary>Elimination without pivoting: a matrix of products needs none. Null where two columns are alike.</summary>
    private static double[]? Solved(double[] products, double[] wanted, int[] kept)
    {
        int all = wanted.Length, count = kept.Length;
        double[] matrix = [.. kept.SelectMany(row => kept.Select(column => products[(row * all) + column]))], right = [.. kept.Select(row => wanted[row])];
        for (int pivot = 0; pivot < count; pivot++)
        {
            double size = matrix[(pivot * count) + pivot];
            if (!(1e-13 * products[(kept[pivot] * all) + kept[pivot]] < size))
            {
                return null;
            }

            for (int row = pivot + 1; row < count; row++)
            {
                double factor = matrix[(row * count) + pivot] / size;
                right[row] -= factor * right[pivot];
                for (int column = pivot; column < count; column++)
                {
                    matrix[(row * count) + column] -= factor * matrix[(pivot * count) + column];
                }
            }
        }

        for (int row = count - 1; 0 <= row; row--)
        {
            for (int column = row + 1; column < count; column++)
            {
                right[row] -= matrix[(row * count) + column] * right[column];
            }

            right[row] /= matrix[(row * count) + row];
        }

        return right;
    }
}
