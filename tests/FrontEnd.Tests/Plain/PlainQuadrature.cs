namespace FrontEnd.Tests.Plain;

/// <summary>Integrals of many numbers at once over the logarithm of the frequency: ten-point Gauss panels, halved until each number is settled.</summary>
internal static class PlainQuadrature
{
    private static readonly double[] Nodes = [0.1488743389816312, 0.4333953941292472, 0.6794095682990244, 0.8650633666889845, 0.9739065285171717];
    private static readonly double[] Weights = [0.2955242247147529, 0.2692667193099963, 0.2190863625159820, 0.1494513491505806, 0.0666713443086881];

    public static double[] Over(Func<double, double[]> density, double from, double to, IEnumerable<double> breaks, double tolerance = 1e-6)
    {
        List<double> edges = [from, .. breaks.Where(f => from < f && f < to), to];
        edges = [.. edges.Distinct().Order()];
        List<(double A, double B)> panels = [];
        for (int i = 0; i + 1 < edges.Count; i++)
        {
            // No panel is longer than half a decade.
            int count = Math.Max(1, (int)Math.Ceiling(2 * Math.Log10(edges[i + 1] / edges[i])));
            double ratio = Math.Pow(edges[i + 1] / edges[i], 1.0 / count);
            panels.AddRange(Enumerable.Range(0, count).Select(k => (edges[i] * Math.Pow(ratio, k), k + 1 == count ? edges[i + 1] : edges[i] * Math.Pow(ratio, k + 1))));
        }

        double[][] first = [.. panels.Select(p => Panel(density, p.A, p.B))];
        double[] scale = new double[first[0].Length];
        foreach (double[] one in first)
        {
            Add(scale, one);
        }

        double[] total = new double[scale.Length];
        for (int i = 0; i < panels.Count; i++)
        {
            Add(total, Refined(density, panels[i].A, panels[i].B, first[i], scale, tolerance, 0));
        }

        return total;
    }

    private static double[] Refined(Func<double, double[]> density, double a, double b, double[] whole, double[] scale, double tolerance, int depth)
    {
        double middle = Math.Sqrt(a * b);
        double[] left = Panel(density, a, middle), right = Panel(density, middle, b);
        bool settled = depth == 12;
        if (!settled)
        {
            settled = true;
            for (int i = 0; i < whole.Length; i++)
            {
                settled &= Math.Abs(left[i] + right[i] - whole[i]) <= tolerance * Math.Abs(scale[i]);
            }
        }

        if (!settled)
        {
            left = Refined(density, a, middle, left, scale, tolerance, depth + 1);
            right = Refined(density, middle, b, right, scale, tolerance, depth + 1);
        }

        Add(left, right);
        return left;
    }

    private static double[] Panel(Func<double, double[]> density, double a, double b)
    {
        double centre = Math.Sqrt(a * b), half = Math.Log(b / a) / 2;
        double[]? sum = null;
        for (int i = 0; i < Nodes.Length; i++)
        {
            foreach (int sign in (ReadOnlySpan<int>)[-1, 1])
            {
                double f = centre * Math.Exp(sign * half * Nodes[i]);
                double[] value = density(f);
                sum ??= new double[value.Length];
                for (int k = 0; k < value.Length; k++)
                {
                    sum[k] += Weights[i] * half * f * value[k];
                }
            }
        }

        return sum!;
    }

    private static void Add(double[] total, double[] more)
    {
        for (int i = 0; i < total.Length; i++)
        {
            total[i] += more[i];
        }
    }
}
