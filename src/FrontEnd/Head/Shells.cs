namespace FrontEnd.Head;

/// <summary>Concentric shells of a head from the brain to the scalp, each with its outer radius as a share of the head's and its
/// conductivity.</summary>
/// <remarks>
/// H_n is what the shells make of the n-th part of a source's potential at the scalp; (2n + 1)/n where all is brain. It is worked out inwards by the admittance Y = r·σ·V′/V, which is continuous through every boundary: no large powers and no
/// differences of alike numbers, as Y ≤ 0 keeps every term of one sign.
/// <para>Source: derived; baumann-1997 (fluid 1.79 S/m), mccann-2019 (means), oostendorp-2000 (1 : 1/15 : 1, and 1 : 1/80 : 1 in older work),
/// zhang-2006 (18.7 ± 2.1); the radii from memory of Nunez and Srinivasan 2006, Rush and Driscoll 1968, Stok 1987. Skull at 1/20 of the brain's
/// conductivity: common practice, no source.</para>
/// <para>Accuracy: 1e-9 against reference/head/potentials.dat; (2n + 1)/n to 1e-15 for equal shells.</para>
/// </remarks>
internal sealed class Shells
{
    /// <summary>Brain to skull, σ_brain/σ_skull, where none is given for the default set.</summary>
    public const double UsualSkullRatio = 20;

    /// <summary>The radius of which the usual layers lie 2 and 7 parts below the brain's surface: 9.2 cm.</summary>
    private const double Parts = 92;

    private static readonly double[] Published = [15, UsualSkullRatio, 80];

    private readonly double[] _radii;
    private readonly double[] _conductivities;

    private Shells(double[] radii, double[] conductivities) => (_radii, _conductivities) = (radii, conductivities);

    /// <summary>Brain-to-skull ratios that are found in print or used: the span over them is the largest error of all that is said here.</summary>
    public static IReadOnlyList<double> SkullRatios => Published;

    /// <summary>The conductivity of the brain, σ_1.</summary>
    public Conductivity Brain => Conductivity.FromSiemensPerMetre(_conductivities[0]);

    /// <summary>q = σ_brain/σ_skull; the skull is the last shell but one.</summary>
    public double SkullRatio => _conductivities.Length < 2 ? 1 : _conductivities[0] / _conductivities[^2];

    /// <summary>How many shells there are, the brain's among them.</summary>
    public int Count => _radii.Length;

    /// <summary>r_1/R: where the brain ends.</summary>
    public double BrainRadius => _radii[0];

    /// <summary>r_c/R of a patch on a gyrus: 2 mm under the brain's surface in a head of 9.2 cm (common practice, no source).</summary>
    public double PatchRadius => BrainRadius - (2 / Parts);

    /// <summary>Where the middle of a sulcus' wall lies: 7 mm under the surface (common practice, no source).</summary>
    public double WallRadius => BrainRadius - (7 / Parts);

    /// <summary>The largest f = b/R at which a source may lie: in the brain and not at its very surface.</summary>
    public double DeepestAllowed => 0.99 * BrainRadius;

    /// <summary>A published set, its skull's conductivity the brain's over a ratio where one is given.</summary>
    /// <param name="skullRatio">q = σ_brain/σ_skull, 5 to 200; null for the set's own.</param>
    public static Shells Of(ShellSet set, double? skullRatio = null)
    {
        (double[] radii, double[] conductivities) = set switch
        {
            ShellSet.Four => ((double[])[80 / Parts, 81 / Parts, 86 / Parts, 1], (double[])[0.33, 1.79, 0.33 / UsualSkullRatio, 0.33]),
            ShellSet.Means => ([80 / Parts, 81 / Parts, 86 / Parts, 1], [0.33, 1.71, 0.02, 0.41]),
            ShellSet.Three => ([80 / Parts, 85 / Parts, 1], [0.33, 0.33 / 80, 0.33]),
            ShellSet.Stok => ([0.84, 0.8667, 0.9467, 1], [0.33, 1.00, 0.0042, 0.33]),
            _ => throw new ArgumentOutOfRangeException(nameof(set), set, "Shell set is not handled."),
        };
        if (skullRatio is { } ratio)
        {
            conductivities[^2] = conductivities[0] / Require.Positive(ratio);
        }

        return new Shells(radii, conductivities);
    }

    /// <summary>Shells from radii, the last of them 1, and conductivities; null where the radii do not rise to 1 or a conductivity is not above
    /// zero.</summary>
    public static Shells? Of(IReadOnlyList<double> radii, IReadOnlyList<Conductivity> conductivities)
    {
        bool rise = radii.Count > 0 && radii.Count == conductivities.Count && 0 < radii[0] && radii[^1] == 1
            && radii.Zip(radii.Skip(1)).All(pair => pair.First < pair.Second);
        return rise && conductivities.All(one => 0 < one.SiemensPerMetre)
            ? new Shells([.. radii], [.. conductivities.Select(one => one.SiemensPerMetre)]) : null;
    }

    /// <summary>True where a source may lie at f = b/R.</summary>
    public bool Holds(double depth) => 0 < depth && depth <= DeepestAllowed * (1 + 1e-12);

    /// <summary>H_n.</summary>
    /// <remarks>Y = 0 in the air, H = 1; for every shell inwards s = (r_{k−1}/r_k)^(2n+1), a = (n + 1 + Y/σ_k)/(2n + 1),
    /// b = (n − Y/σ_k)/(2n + 1), d = a·s + b, H ← H/d, Y ← σ_k·(n·a·s − (n + 1)·b)/d; H_n = H·(2n + 1)/(n − Y/σ_1).</remarks>
    /// <param name="n">1 and more.</param>
    public double Transfer(int n)
    {
        double admittance = 0, transfer = 1, whole = (2 * n) + 1;
        for (int k = _radii.Length - 1; 0 < k; k--)
        {
            double sigma = _conductivities[k];
            double s = Math.Pow(_radii[k - 1] / _radii[k], whole);
            double a = (n + 1 + (admittance / sigma)) / whole, b = (n - (admittance / sigma)) / whole;
            double d = (a * s) + b;
            transfer /= d;
            admittance = sigma * ((n * a * s) - ((n + 1) * b)) / d;
        }

        return transfer * whole / (n - (admittance / _conductivities[0]));
    }

    /// <summary>How many terms a source at f = b/R needs for f^n to fall below 1e-16.</summary>
    internal static int Terms(double depth) => Math.Max(60, 40 + (int)Math.Ceiling(36.8 / -Math.Log(depth)));

    /// <summary>H_n·f^(n−1) for n = 1 to <see cref="Terms"/>.</summary>
    internal double[] Kernel(double depth)
    {
        if (!Holds(depth))
        {
            throw new ArgumentOutOfRangeException(nameof(depth), depth, $"The source must lie in the brain: above 0, up to {DeepestAllowed}.");
        }

        double[] kernel = new double[Terms(depth)];
        double power = 1;
        for (int n = 1; n <= kernel.Length; n++, power *= depth)
        {
            kernel[n - 1] = Transfer(n) * power;
        }

        return kernel;
    }
}
