using FrontEnd.Numbers;

namespace FrontEnd.Circuits;

/// <summary>White noise and corner that a part's card states, from points read off a plot of its noise density: e²(f) = e0²·(1 + fc/f), by least
/// squares of the logarithm.</summary>
/// <remarks>The model is the one that every amplifier and op-amp here has. Logarithms, since a plot is read off to the same share of each value.</remarks>
internal sealed record NoiseFit
{
    /// <summary>Two values need three points to be contradicted by.</summary>
    public const int LeastPoints = 3;

    /// <summary>A corner below this share of the lowest frequency raises no point by more than half a per cent: none is seen.</summary>
    private const double NoCorner = 0.01;

    private NoiseFit()
    {
    }

    /// <summary>e0: white noise density, a voltage's or a current's as the points are.</summary>
    public required IQuantity White { get; init; }

    /// <summary>fc: where flicker and white noise are equal; 0 where the points show no flicker.</summary>
    public required Frequency Corner { get; init; }

    /// <summary>The points in the order of their frequencies, with what the fit has there.</summary>
    public required IReadOnlyList<NoiseDeviation> Points { get; init; }

    /// <summary>Root mean square of the deviations, which the fit makes least.</summary>
    public Decibels Rms => Decibels.FromStated(Math.Sqrt(Points.Sum(point => point.Deviation.Value * point.Deviation.Value) / Points.Count));

    /// <summary>The point that deviates most.</summary>
    public NoiseDeviation Worst => Points.MaxBy(point => Math.Abs(point.Deviation.Value));

    /// <summary>False where the corner lies above the points: flicker is still larger at the highest of them, and the white level is worked out beyond.</summary>
    public bool IsWhiteSeen => Corner.Hertz <= Points[^1].Frequency.Hertz;

    /// <summary>False where there is a corner below the points: it is worked out from how little the lowest of them rise.</summary>
    public bool IsCornerSeen => Corner.Hertz == 0 || Points[0].Frequency.Hertz <= Corner.Hertz;

    /// <param name="points">At least <see cref="LeastPoints"/>, at two frequencies or more; frequencies and densities above 0, densities of one
    /// kind.</param>
    public static NoiseFit Of(IReadOnlyList<NoisePoint> points)
    {
        NoisePoint[] sorted = [.. points.OrderBy(point => point.Frequency.Hertz)];
        if (sorted.Length < LeastPoints || sorted[0].Frequency == sorted[^1].Frequency || sorted[0].Frequency.Hertz <= 0 || Array.Exists(sorted, point => !(0 < point.Density.SiValue)))
        {
            throw new ArgumentException("A fit takes three points or more above 0, at two frequencies or more.", nameof(points));
        }

        double[] f = [.. sorted.Select(point => point.Frequency.Hertz)], logs = [.. sorted.Select(point => Math.Log(point.Density.SiValue))];
        double corner = Math.Exp(LeastSquares.Minimise(at => Left(f, logs, at), Start(f, logs))[1]);
        corner = corner < NoCorner * f[0] ? 0 : corner;
        double white = Math.Exp(MeanAbove(f, logs, corner));
        QuantityKind kind = QuantityKind.Of(sorted[0].Density);
        return new NoiseFit
        {
            White = kind.FromSi(white), Corner = Frequency.FromHertz(corner),
            Points = [.. sorted.Select(point => new NoiseDeviation(point.Frequency, point.Density, kind.FromSi(white * Rise(point.Frequency.Hertz, corner))))],
        };
    }

    /// <summary>Density over white density.</summary>
    private static double Rise(double f, double corner) => Math.Sqrt(1 + (corner / f));

    private static double[] Left(double[] f, double[] logs, double[] at) =>
        [.. f.Select((one, index) => logs[index] - at[0] - Math.Log(Rise(one, Math.Exp(at[1]))))];

    /// <summary>ln e0 that is best with a corner: the mean of what the corner leaves.</summary>
    private static double MeanAbove(double[] f, double[] logs, double corner) =>
        logs.Select((log, index) => log - Math.Log(Rise(f[index], corner))).Average();

    /// <summary>The best of corners ten a decade, from far below the points to far above.</summary>
    private static double[] Start(double[] f, double[] logs)
    {
        (double, double[])? best = null;
        for (double b = Math.Log(f[0] * NoCorner / 10); b <= Math.Log(f[^1] * 100); b += Math.Log(10) / 10)
        {
            double[] at = [MeanAbove(f, logs, Math.Exp(b)), b];
            double cost = LeastSquares.Sum(Left(f, logs, at));
            if (best is not { } known || cost < known.Item1)
            {
                best = (cost, at);
            }
        }

        return best!.Value.Item2;
    }
}

/// <summary>A point of a plot of noise.</summary>
/// <param name="Frequency">Above 0.</param>
/// <param name="Density">A <see cref="VoltageNoiseDensity"/> or a <see cref="CurrentNoiseDensity"/>, above 0.</param>
internal readonly record struct NoisePoint(Frequency Frequency, IQuantity Density);

/// <summary>A point beside what the fit has there.</summary>
internal readonly record struct NoiseDeviation(Frequency Frequency, IQuantity Measured, IQuantity Fitted)
{
    /// <summary>Measured over fitted.</summary>
    public Decibels Deviation => Decibels.FromVoltageRatio(Measured.SiValue / Fitted.SiValue);
}
