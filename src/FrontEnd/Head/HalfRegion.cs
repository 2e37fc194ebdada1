using System.Numerics;

namespace FrontEnd.Head;

/// <summary>Where a patch may lie for a derivation to see at least half of what it sees at best: the patch is put at 10,000 even places of its
/// sphere.</summary>
/// <remarks>z_i = 1 − (2i + 1)/N, azimuth 2π·frac(i·(√5 − 1)/2) from x to y, i from 0; area 4πr_c²·count/N, good to about 0.3 cm².</remarks>
internal sealed class HalfRegion
{
    /// <summary>A multiple of two vectors' length, whatever the machine's.</summary>
    public const int Places = 10_000;

    private static readonly double[][] Lattice = Make();

    private readonly VolumeConductor _conductor;
    private readonly double[] _terms;
    private readonly Dictionary<SpherePoint, double[]> _maps = [];

    public HalfRegion(VolumeConductor conductor, Area patch) => (_conductor, _terms) = (conductor, SourcePotentials.PatchTerms(conductor, patch));

    /// <summary>How many of the places leave at least half of the most.</summary>
    public int Count(IReadOnlyList<(SpherePoint Site, double Weight)> weights)
    {
        double[] sum = new double[Places];
        foreach ((SpherePoint site, double weight) in weights)
        {
            double[] map = Map(site);
            for (int at = 0; at < Places; at += Vector<double>.Count)
            {
                (new Vector<double>(sum, at) + (weight * new Vector<double>(map, at))).CopyTo(sum, at);
            }
        }

        double most = sum.Max(Math.Abs);
        return sum.Count(one => most / 2 <= Math.Abs(one));
    }

    /// <summary>The same as an area of the patches' sphere.</summary>
    public Area Of(IReadOnlyList<(SpherePoint Site, double Weight)> weights) =>
        Area.FromSquareMetres(2 * _conductor.Hemisphere.SquareMetres * Count(weights) / Places);

    /// <summary>What a patch at each place puts at a site, without the factors that all have.</summary>
    private double[] Map(SpherePoint site)
    {
        if (!_maps.TryGetValue(site, out double[]? map))
        {
            double[] cosines = new double[Places];
            (double[] x, double[] y, double[] z) = (Lattice[0], Lattice[1], Lattice[2]);
            for (int i = 0; i < Places; i++)
            {
                cosines[i] = (site.X * x[i]) + (site.Y * y[i]) + (site.Z * z[i]);
            }

            _maps[site] = map = new double[Places];
            LegendreSeries.Values(_terms, cosines, map);
        }

        return map;
    }

    private static double[][] Make()
    {
        double[][] lattice = [new double[Places], new double[Places], new double[Places]];
        double golden = (Math.Sqrt(5) - 1) / 2;
        for (int i = 0; i < Places; i++)
        {
            double z = 1 - (((2 * i) + 1) / (double)Places), level = Math.Sqrt(1 - (z * z)), turn = i * golden;
            (double sin, double cos) = Math.SinCos(2 * Math.PI * (turn - Math.Floor(turn)));
            (lattice[0][i], lattice[1][i], lattice[2][i]) = (level * cos, level * sin, z);
        }

        return lattice;
    }
}
