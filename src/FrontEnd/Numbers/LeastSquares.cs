using MathNet.Numerics.LinearAlgebra;

namespace FrontEnd.Numbers;

/// <summary>Parameters that make a sum of squares least, from a start that is near: Levenberg and Marquardt's damped steps.</summary>
/// <remarks>Each step solves the linearised problem, damped, by the library's QR. The library's own minimiser stops at an accuracy that it is given and
/// throws where a model leaves its range; this one goes on until a step changes nothing and takes such a step for a bad one.</remarks>
internal static class LeastSquares
{
    /// <summary>Steps that are tried; a fit from a near start takes ten to thirty, a resistance that runs to nothing some more.</summary>
    private const int MostSteps = 300;

    /// <summary>How far a parameter is moved to see what it does. They are logarithms: a millionth is a millionth of the value.</summary>
    private const double Probe = 1e-6;

    /// <summary>A step below this changes no digit that is shown.</summary>
    private const double Still = 1e-12;

    private const double LeastDamping = 1e-14, MostDamping = 1e14;

    /// <summary>The parameters at the least sum of squares that is reached from the start.</summary>
    /// <param name="residuals">What is left at each point, for parameters that are logarithms of what is sought.</param>
    public static double[] Minimise(Func<double[], double[]> residuals, double[] start)
    {
        double[] at = start, left = residuals(at);
        double cost = Sum(left), damping = 1e-3;
        for (int step = 0; step < MostSteps && damping < MostDamping && 0 < cost; step++)
        {
            double[] move = Step(residuals, at, left, damping);
            double[] next = [.. at.Select((value, index) => value + move[index])];
            double[] then = residuals(next);
            double reached = Sum(then);
            if (reached < cost)
            {
                bool isStill = Array.TrueForAll(move, one => Math.Abs(one) < Still);
                (at, left, cost, damping) = (next, then, reached, Math.Max(LeastDamping, damping / 10));
                if (isStill)
                {
                    break;
                }
            }
            else
            {
                damping *= 10;
            }
        }

        return at;
    }

    /// <summary>Sum of the squares; without bound where one is no number.</summary>
    public static double Sum(double[] residuals)
    {
        double sum = residuals.Sum(one => one * one);
        return double.IsFinite(sum) ? sum : double.PositiveInfinity;
    }

    /// <summary>The least of |J·move + left|² + damping·|move|².</summary>
    private static double[] Step(Func<double[], double[]> residuals, double[] at, double[] left, double damping)
    {
        int points = left.Length, count = at.Length;
        Matrix<double> slopes = Matrix<double>.Build.Dense(points + count, count);
        Vector<double> wanted = Vector<double>.Build.Dense(points + count);
        for (int index = 0; index < count; index++)
        {
            double[] above = [.. at], below = [.. at];
            above[index] += Probe;
            below[index] -= Probe;
            double[] high = residuals(above), low = residuals(below);
            for (int point = 0; point < points; point++)
            {
                slopes[point, index] = (high[point] - low[point]) / (2 * Probe);
            }

            slopes[points + index, index] = Math.Sqrt(damping);
        }

        for (int point = 0; point < points; point++)
        {
            wanted[point] = -left[point];
        }

        return slopes.QR().Solve(wanted).ToArray();
    }
}
