using System.Numerics;

namespace FrontEnd.Filters;

/// <summary>Tops, valleys and crossings of a function of frequency: found on a grid, then sought to the last digit that counts.</summary>
internal static class ResponseExtremes
{
    // Between two points of a grid a top is higher than both by less than this share of the range: tops farther below the highest are no rivals.
    private const double Rivals = 0.3;

    /// <summary>The greatest value over a grid and between its points, and where.</summary>
    internal static (double At, double Value) Greatest(Func<double, double> function, ReadOnlySpan<double> grid)
    {
        double[] values = new double[grid.Length];
        for (int i = 0; i < grid.Length; i++)
        {
            values[i] = function(grid[i]);
        }

        double greatest = values.Max(), rival = greatest - (Rivals * (greatest - values.Min()));
        (double At, double Value) best = (grid[Array.IndexOf(values, greatest)], greatest);
        for (int i = 0; i < grid.Length; i++)
        {
            double low = grid[Math.Max(0, i - 1)], high = grid[Math.Min(grid.Length - 1, i + 1)];
            if (rival <= values[i] && values[Math.Max(0, i - 1)] <= values[i] && values[Math.Min(grid.Length - 1, i + 1)] <= values[i])
            {
                (double At, double Value) top = MathExtra.Greatest(function, low, high);
                best = best.Value < top.Value ? top : best;
            }
        }

        return best;
    }

    /// <summary>The least value over a grid and between its points, and where.</summary>
    internal static (double At, double Value) Least(Func<double, double> function, ReadOnlySpan<double> grid)
    {
        (double at, double value) = Greatest(x => -function(x), grid);
        return (at, -value);
    }

    /// <summary>Where a function passes through a level, lowest first: each change of side on the grid by bisection.</summary>
    internal static List<double> Crossings(Func<double, double> function, double level, ReadOnlySpan<double> grid)
    {
        List<double> crossings = [];
        bool below = function(grid[0]) < level;
        for (int i = 1; i < grid.Length; i++)
        {
            bool next = function(grid[i]) < level;
            if (next != below)
            {
                crossings.Add(MathExtra.Bisect(x => function(x) - level, grid[i - 1], grid[i]));
            }

            below = next;
        }

        return crossings;
    }

    /// <summary>How much of a range a function spends below a level.</summary>
    internal static double Below(Func<double, double> function, double level, ReadOnlySpan<double> grid)
    {
        double sum = 0;
        double[] edges = [grid[0], .. Crossings(function, level, grid), grid[^1]];
        for (int i = 1; i < edges.Length; i++)
        {
            sum += function((edges[i - 1] + edges[i]) / 2) < level ? edges[i] - edges[i - 1] : 0;
        }

        return sum;
    }

    /// <summary>Evenly spaced points from one end to the other, both included.</summary>
    internal static double[] Even(double low, double high, int steps) =>
        [.. Enumerable.Range(0, steps + 1).Select(i => i == steps ? high : low + ((high - low) * i / steps))];

    /// <summary>Logarithmically spaced points, and about every pole so many that its resonance is not missed, however narrow.</summary>
    /// <param name="rate">Sampling rate of a digital filter [Hz]; null for an analogue one.</param>
    internal static double[] AboutPoles(ZeroPoleGain filter, double low, double high, double? rate, int steps)
    {
        SortedSet<double> points = [.. Enumerable.Range(0, steps + 1).Select(
            i => i == steps ? high : low * Math.Exp(Math.Log(high / low) * i / steps))];
        foreach (Complex pole in filter.Poles)
        {
            (double middle, double width) = InHertz(pole, rate);
            for (int i = -40; i <= 40; i++)
            {
                // From a tenth of the width to a hundred widths on either side.
                double at = middle + (width * (i == 0 ? 0 : Math.Sign(i) * 0.1 * Math.Pow(10, (Math.Abs(i) - 1) * 3 / 39.0)));
                if (low < at && at < high)
                {
                    points.Add(at);
                }
            }
        }

        return [.. points];
    }

    /// <summary>Frequency and half width of a pole's resonance [Hz]; of a digital one those of s = fs·ln z.</summary>
    internal static (double Middle, double Width) InHertz(Complex pole, double? rate)
    {
        Complex s = rate is { } fs ? Complex.Log(pole) * fs : pole;
        return (Math.Abs(s.Imaginary) / (2 * Math.PI), Math.Abs(s.Real) / (2 * Math.PI));
    }
}
