namespace FrontEnd.Documents.Sheets;

/// <summary>A line that bends instead of having corners at its points, and swings beyond none of them.</summary>
/// <remarks>Cubics between the points whose slopes there are the neighbours' harmonic mean, and level where the line turns round: F. N. Fritsch
/// and J. Butland, SIAM J. Sci. Stat. Comput. 5, 300, 1984 (from memory).</remarks>
internal static class SmoothLine
{
    /// <summary>So far apart are the points that are drawn at most, in the picture's units: finer than an eye tells.</summary>
    private const double Apart = 2.5;

    /// <param name="points">In rising x.</param>
    public static IReadOnlyList<(double X, double Y)> Through(IReadOnlyList<(double X, double Y)> points)
    {
        if (points.Count < 3)
        {
            return [.. points];
        }

        double[] slope = Slopes(points);
        List<(double X, double Y)> line = [points[0]];
        for (int i = 1; i < points.Count; i++)
        {
            ((double x0, double y0), (double x1, double y1)) = (points[i - 1], points[i]);
            double width = x1 - x0;
            int pieces = Math.Max(1, (int)Math.Ceiling(Math.Sqrt((width * width) + ((y1 - y0) * (y1 - y0))) / Apart));
            for (int piece = 1; piece < pieces; piece++)
            {
                double t = (double)piece / pieces, s = 1 - t;
                double height = (s * s * ((y0 * (1 + (2 * t))) + (slope[i - 1] * width * t))) + (t * t * ((y1 * (1 + (2 * s))) - (slope[i] * width * s)));
                line.Add((x0 + (t * width), height));
            }

            line.Add(points[i]);
        }

        return line;
    }

    private static double[] Slopes(IReadOnlyList<(double X, double Y)> points)
    {
        var slope = new double[points.Count];
        for (int i = 0; i < slope.Length; i++)
        {
            double before = i == 0 ? Secant(1) : Secant(i), after = i == slope.Length - 1 ? Secant(i) : Secant(i + 1);
            slope[i] = 0 < before * after ? 2 * before * after / (before + after) : 0;
        }

        return slope;

        double Secant(int to) => (points[to].Y - points[to - 1].Y) / Math.Max(1e-9, points[to].X - points[to - 1].X);
    }
}
