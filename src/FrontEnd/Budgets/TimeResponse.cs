using FrontEnd.Circuits;
using FrontEnd.Filters;
using FrontEnd.Topologies;

namespace FrontEnd.Budgets;

/// <summary>Step responses in time: the stages' circuits with ideal op-amps, joined into one state space, and the digital filters behind
/// the sampler.</summary>
/// <remarks>
/// The input network and the amplifier settle within microseconds of what is shown here (milliseconds to seconds) and count as
/// instantaneous; the op-amps' finite bandwidth moves the poles used here by less than the parts' tolerance. Sampling the state space with
/// its matrix exponential is exact.
/// </remarks>
internal sealed class TimeResponse
{
    private readonly double[,] _a;
    private readonly double[] _b;
    private readonly double[] _c;
    private readonly double _d;

    private TimeResponse(double[,] a, double[] b, double[] c, double d, double slowest, double fastest)
    {
        (_a, _b, _c, _d) = (a, b, c, d);
        SlowestSeconds = slowest;
        FastestSeconds = fastest;
    }

    /// <summary>Longest time constant; 0 without any state.</summary>
    public double SlowestSeconds { get; }

    public double FastestSeconds { get; }

    /// <summary>One stage or several, in order.</summary>
    public static TimeResponse Of(params IEnumerable<Stage> stages)
    {
        StateSpace[] blocks = [.. stages.SelectMany(stage => stage.InTime())];
        int n = blocks.Sum(block => block.Order), at = 0;
        double[,] a = new double[n, n];
        double[] b = new double[n], c = new double[n];
        double d = 1, slowest = 0, fastest = double.PositiveInfinity;
        foreach (StateSpace block in blocks)
        {
            // The block sees u = c·x + d·input of everything before it.
            for (int i = 0; i < block.Order; i++)
            {
                for (int j = 0; j < at; j++)
                {
                    a[at + i, j] = block.B[i] * c[j];
                }

                for (int j = 0; j < block.Order; j++)
                {
                    a[at + i, at + j] = block.A[i, j];
                }

                b[at + i] = block.B[i] * d;
            }

            for (int j = 0; j < at; j++)
            {
                c[j] *= block.D;
            }

            block.C.CopyTo(c, at);
            d *= block.D;
            at += block.Order;
            (slowest, fastest) = (Math.Max(slowest, block.SlowestSeconds), Math.Min(fastest, block.FastestSeconds));
        }

        return new TimeResponse(a, b, c, d, slowest, fastest);
    }

    /// <summary>Response to a unit step at t = 0, dt, 2dt …: the analogue path alone, or sampled at dt and filtered.</summary>
    public double[] Step(double dt, int samples, SecondOrderSections? digital = null)
    {
        int n = _b.Length;
        var y = new double[samples];
        (double[,] phi, double[] gamma) = Discretise(dt);
        double[] x = new double[n], next = new double[n];
        double[] states = new double[2 * (digital?.Count ?? 0)];
        ReadOnlySpan<double> k = digital is null ? [] : digital.Coefficients;
        for (int i = 0; i < samples; i++)
        {
            double value = _d;
            for (int j = 0; j < n; j++)
            {
                value += _c[j] * x[j];
            }

            for (int s = 0; s < states.Length / 2; s++)
            {
                int p = 5 * s;
                double output = (k[p] * value) + states[2 * s];
                states[2 * s] = (k[p + 1] * value) - (k[p + 3] * output) + states[(2 * s) + 1];
                states[(2 * s) + 1] = (k[p + 2] * value) - (k[p + 4] * output);
                value = output;
            }

            y[i] = value;
            for (int row = 0; row < n; row++)
            {
                double sum = gamma[row];
                for (int column = 0; column < n; column++)
                {
                    sum += phi[row, column] * x[column];
                }

                next[row] = sum;
            }

            (x, next) = (next, x);
        }

        return y;
    }

    /// <summary>Last time at which the response is further than a tolerance from its end value; null where it has not settled by the
    /// end.</summary>
    public static double? Settled(double[] response, double dt, double end, double tolerance)
    {
        int last = response.Length - 1;
        while (0 <= last && Math.Abs(response[last] - end) <= tolerance)
        {
            last--;
        }

        if (response.Length - Math.Max(1, response.Length / 50) <= last)
        {
            return null;
        }

        if (last < 0)
        {
            return 0;
        }

        // Between the last sample outside and the first inside, straight in the size.
        double outside = Math.Abs(response[last] - end), inside = Math.Abs(response[last + 1] - end);
        return (last + ((outside - tolerance) / (outside - inside))) * dt;
    }

    /// <summary>x(t + dt) = Φx + Γ for a unit input: exp of the augmented matrix by scaling and squaring.</summary>
    private (double[,] Phi, double[] Gamma) Discretise(double dt)
    {
        int n = _b.Length, size = n + 1;
        var m = new double[size, size];
        double norm = 0;
        for (int i = 0; i < n; i++)
        {
            double row = Math.Abs(_b[i] * dt);
            for (int j = 0; j < n; j++)
            {
                m[i, j] = _a[i, j] * dt;
                row += Math.Abs(m[i, j]);
            }

            m[i, n] = _b[i] * dt;
            norm = Math.Max(norm, row);
        }

        int squarings = norm < 0.5 ? 0 : (int)Math.Ceiling(Math.Log2(norm / 0.5));
        double scale = Math.Pow(2, -squarings);
        var term = new double[size, size];
        var sum = new double[size, size];
        for (int i = 0; i < size; i++)
        {
            term[i, i] = sum[i, i] = 1;
            for (int j = 0; j < size; j++)
            {
                m[i, j] *= scale;
            }
        }

        for (int order = 1; order <= 16; order++)
        {
            term = Multiply(term, m, 1.0 / order);
            for (int i = 0; i < size; i++)
            {
                for (int j = 0; j < size; j++)
                {
                    sum[i, j] += term[i, j];
                }
            }
        }

        for (int i = 0; i < squarings; i++)
        {
            sum = Multiply(sum, sum, 1);
        }

        var gamma = new double[n];
        for (int i = 0; i < n; i++)
        {
            gamma[i] = sum[i, n];
        }

        return (sum, gamma);
    }

    private static double[,] Multiply(double[,] left, double[,] right, double scale)
    {
        int n = left.GetLength(0);
        var product = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k < n; k++)
            {
                double a = left[i, k] * scale;
                for (int j = 0; a != 0 && j < n; j++)
                {
                    product[i, j] += a * right[k, j];
                }
            }
        }

        return product;
    }
}
