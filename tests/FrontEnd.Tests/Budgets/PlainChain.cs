using FrontEnd.Circuits;

namespace FrontEnd.Tests.Budgets;

/// <summary>Blocks with a limiter behind each, taken on by small steps of the fourth order (Runge and Kutta's): the plain second way.</summary>
internal sealed class PlainChain
{
    private readonly (StateSpace Block, double Swing)[] _blocks;
    private readonly double _step;
    private readonly double[] _x;

    public PlainChain((StateSpace Block, double Swing)[] blocks, double step)
    {
        (_blocks, _step) = (blocks, step);
        _x = new double[blocks.Sum(one => one.Block.Order)];
    }

    /// <summary>What stands behind the last limiter.</summary>
    public double Output() => Walk(_x, null);

    public void Step(double dt)
    {
        int n = _x.Length;
        double[] at = (double[])_x.Clone(), sum = new double[n];
        for (int stage = 0; stage < 4; stage++)
        {
            var slope = new double[n];
            Walk(at, slope);
            for (int i = 0; i < n; i++)
            {
                sum[i] += slope[i] * (stage is 0 or 3 ? 1 : 2) * dt / 6;
                at[i] = _x[i] + (slope[i] * dt * (stage == 2 ? 1 : 0.5));
            }
        }

        for (int i = 0; i < n; i++)
        {
            _x[i] += sum[i];
        }
    }

    private double Walk(double[] x, double[]? slope)
    {
        double u = _step;
        int at = 0;
        foreach ((StateSpace block, double swing) in _blocks)
        {
            int n = block.Order;
            double y = block.D * u;
            for (int i = 0; i < n; i++)
            {
                y += block.C[i] * x[at + i];
                for (int j = 0; slope is not null && j < n; j++)
                {
                    slope[at + i] += block.A[(i * n) + j] * x[at + j];
                }

                if (slope is not null)
                {
                    slope[at + i] += block.B[i] * u;
                }
            }

            u = Math.Clamp(y, -swing, swing);
            at += n;
        }

        return u;
    }
}
