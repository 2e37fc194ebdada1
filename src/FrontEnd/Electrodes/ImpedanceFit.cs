using System.Numerics;
using FrontEnd.Numbers;

namespace FrontEnd.Electrodes;

/// <summary>An electrode's one or two R ∥ C with a resistance in series, from a measured spectrum of its impedance: least squares of what is left of each
/// point, as a share of it.</summary>
/// <remarks>
/// With its time constants given the model is linear in its resistances, none of which is negative: the best over a grid of time constants is where the
/// damped steps begin, so that no local minimum is taken for the least. Shares, since a meter is wrong by a share, and the large impedances at low
/// frequencies would otherwise be all that counts.
/// <para>A second pair is taken, and a first one believed, where it halves the sum of squares and does it by more than its two parameters would by chance: 10 or more in Schwarz's
/// criterion, 2n ln(S1/S2) − 2 ln 2n for n points with two parts each; the criterion and the 10 from memory.</para>
/// </remarks>
internal sealed record ImpedanceFit
{
    /// <summary>Three parameters need three points of two parts each to be contradicted by.</summary>
    public const int LeastPoints = 3;

    /// <summary>A second pair needs as many points as it has parameters.</summary>
    public const int LeastPointsOfTwo = 5;

    private const double ClearlyBetter = 10;

    /// <summary>What is left counts as nothing below a millionth: no meter says more.</summary>
    private const double Unseen = 1e-6;

    /// <summary>Time constants tried in a decade.</summary>
    private const int GridOfOne = 20, GridOfTwo = 5;

    private ImpedanceFit()
    {
    }

    /// <summary>Rs, Rd, Cd and, where a second pair is clearly better, Rd2 and Cd2; all else as an electrode has it by default. The pair of the larger
    /// resistance is the first.</summary>
    public required Electrode Electrode { get; init; }

    /// <summary>The points in the order of their frequencies, with what the fit has there.</summary>
    public required IReadOnlyList<ImpedanceDeviation> Points { get; init; }

    /// <summary>Rms of what one pair leaves, as a share of each point.</summary>
    public required Ratio RmsOfOne { get; init; }

    /// <summary>The same of two; null where the points are too few to try.</summary>
    public required Ratio? RmsOfTwo { get; init; }

    /// <summary>The resistance that describes the points best by itself.</summary>
    public required Resistance Alone { get; init; }

    /// <summary>Rms of what it leaves.</summary>
    public required Ratio RmsOfAlone { get; init; }

    /// <summary>False where the pairs are not clearly better than a resistance alone: then they are the noise of the points.</summary>
    public required bool IsContactSeen { get; init; }

    /// <summary>1 or 2.</summary>
    public int Pairs => Electrode.SecondResistance is null ? 1 : 2;

    /// <summary>Rms of what the fit leaves.</summary>
    public Ratio Rms => Pairs == 1 ? RmsOfOne : RmsOfTwo!.Value;

    /// <summary>The point of which most is left.</summary>
    public ImpedanceDeviation Worst => Points.MaxBy(point => point.Left.Fraction);

    /// <summary>Where each pair's reactance and resistance are equal, 1/(2π·R·C); none for a pair without capacitance.</summary>
    public IReadOnlyList<Frequency> Corners =>
    [
        .. new[] { (Electrode.ContactResistance.Ohms, Electrode.ContactCapacitance.Farads), (Electrode.SecondResistance?.Ohms ?? 0, Electrode.SecondCapacitance?.Farads ?? 0) }
            .Where(pair => 0 < pair.Item1 * pair.Item2).Select(pair => Frequency.FromHertz(1 / (2 * Math.PI * pair.Item1 * pair.Item2))),
    ];

    /// <summary>False where a corner lies outside the points: resistance or capacitance of that pair is worked out beyond what was measured.</summary>
    public bool IsSeen => Corners.All(corner => Points[0].Frequency.Hertz <= corner.Hertz && corner.Hertz <= Points[^1].Frequency.Hertz);

    /// <param name="points">At least <see cref="LeastPoints"/>, at two frequencies or more, all above 0 and none without impedance.</param>
    public static ImpedanceFit Of(IReadOnlyList<ImpedancePoint> points)
    {
        ImpedancePoint[] sorted = [.. points.OrderBy(point => point.Frequency.Hertz)];
        if (sorted.Length < LeastPoints || sorted[0].Frequency == sorted[^1].Frequency || sorted[0].Frequency.Hertz <= 0 || Array.Exists(sorted, point => !(0 < Complex.Abs(point.Impedance))))
        {
            throw new ArgumentException("A fit takes three points or more above 0, at two frequencies or more.", nameof(points));
        }

        ImpedanceModel model = new(sorted);
        double[] one = model.Fit(Grid(sorted, GridOfOne).Select(tau => (double[])[tau]));
        double[]? two = null;
        if (LeastPointsOfTwo <= sorted.Length)
        {
            double[] taus = [.. Grid(sorted, GridOfTwo)];
            two = model.Fit(taus.SelectMany((first, at) => taus[(at + 1)..].Select(second => (double[])[first, second])));
        }

        double left = LeastSquares.Sum(model.Left(one)), rest = two is null ? left : LeastSquares.Sum(model.Left(two));
        bool isTwo = two is not null && IsClear(left, rest, sorted) && AreSeen(two, sorted);
        Electrode electrode = Made(isTwo ? two! : one, sorted);
        (double alone, double without) = OfAlone(sorted);
        return new ImpedanceFit
        {
            Electrode = electrode, RmsOfOne = Rms(left), RmsOfTwo = two is null ? null : Rms(rest),
            Alone = Resistance.FromOhms(alone), RmsOfAlone = Rms(without), IsContactSeen = IsClear(without, isTwo ? rest : left, sorted),
            Points = [.. sorted.Select(point => new ImpedanceDeviation(point.Frequency, point.Impedance, electrode.Impedance(point.Frequency)))],
        };

        Ratio Rms(double sum) => Ratio.FromFraction(Math.Sqrt(sum / sorted.Length));
    }

    /// <summary>R that leaves least of Σ|R − Z|²/|Z|², and what it leaves.</summary>
    private static (double Ohms, double Left) OfAlone(ImpedancePoint[] points)
    {
        double weights = points.Sum(point => 1 / Square(point.Impedance)), ohms = points.Sum(point => point.Impedance.Real / Square(point.Impedance)) / weights;
        return (ohms, points.Sum(point => Square(ohms - point.Impedance) / Square(point.Impedance)));

        static double Square(Complex z) => (z.Real * z.Real) + (z.Imaginary * z.Imaginary);
    }

    private static bool IsClear(double one, double two, ImpedancePoint[] points)
    {
        double parts = 2 * points.Length, unseen = parts * Unseen * Unseen, ratio = (one + unseen) / (two + unseen);
        return 2 < ratio && ClearlyBetter < (parts * Math.Log(ratio)) - (2 * Math.Log(parts));
    }

    /// <summary>True where neither pair is too small to be seen, and both change within a decade of what was measured.</summary>
    private static bool AreSeen(double[] two, ImpedancePoint[] points)
    {
        double largest = points.Max(point => Complex.Abs(point.Impedance)), least = 2 * Math.PI * points[0].Frequency.Hertz / 10, most = 2 * Math.PI * points[^1].Frequency.Hertz * 10;
        return new[] { (Math.Exp(two[1]), Math.Exp(-two[2])), (Math.Exp(two[3]), Math.Exp(-two[4])) }
            .All(pair => 0.005 * largest <= pair.Item1 && least <= pair.Item2 && pair.Item2 <= most);
    }

    /// <summary>Time constants from two decades below what the highest frequency shows to two above what the lowest does.</summary>
    private static IEnumerable<double> Grid(ImpedancePoint[] points, int aDecade)
    {
        double from = -Math.Log10(2 * Math.PI * points[^1].Frequency.Hertz) - 2, to = -Math.Log10(2 * Math.PI * points[0].Frequency.Hertz) + 2;
        for (double log = from; log <= to; log += 1.0 / aDecade)
        {
            yield return Math.Pow(10, log);
        }
    }

    /// <summary>The electrode of fitted logarithms: Rs, then R and R·C of each pair.</summary>
    private static Electrode Made(double[] logs, ImpedancePoint[] points)
    {
        double least = points.Min(point => Complex.Abs(point.Impedance)), series = Math.Exp(logs[0]);
        (double R, double Tau)[] pairs = [.. Enumerable.Range(0, (logs.Length - 1) / 2).Select(at => (Math.Exp(logs[1 + (2 * at)]), Math.Exp(logs[2 + (2 * at)]))).OrderByDescending(pair => pair.Item1)];
        return new Electrode
        {
            // Nothing, reached by logarithms.
            SeriesResistance = Resistance.FromOhms(series < Unseen * least ? 0 : series),
            ContactResistance = Resistance.FromOhms(pairs[0].R), ContactCapacitance = Capacitance.FromFarads(pairs[0].Tau / pairs[0].R),
            SecondResistance = pairs.Length < 2 ? null : Resistance.FromOhms(pairs[1].R), SecondCapacitance = pairs.Length < 2 ? null : Capacitance.FromFarads(pairs[1].Tau / pairs[1].R),
        };
    }
}

/// <summary>A point of a measured spectrum.</summary>
/// <param name="Frequency">Above 0.</param>
/// <param name="Impedance">Z [Ω], its imaginary part negative for a capacitance.</param>
internal readonly record struct ImpedancePoint(Frequency Frequency, Complex Impedance);

/// <summary>A point beside what the fit has there.</summary>
/// <param name="Measured">Z as measured [Ω].</param>
/// <param name="Fitted">Z of the fit [Ω].</param>
internal readonly record struct ImpedanceDeviation(Frequency Frequency, Complex Measured, Complex Fitted)
{
    /// <summary>|Z| measured over fitted, less one.</summary>
    public Ratio Magnitude => Ratio.FromFraction((Complex.Abs(Measured) / Complex.Abs(Fitted)) - 1);

    /// <summary>Phase measured less fitted.</summary>
    public Angle Phase => Angle.FromDegrees((Measured / Fitted).Phase * 180 / Math.PI);

    /// <summary>|fitted − measured| over |measured|: what is left.</summary>
    public Ratio Left => Ratio.FromFraction(Complex.Abs(Fitted - Measured) / Complex.Abs(Measured));
}
