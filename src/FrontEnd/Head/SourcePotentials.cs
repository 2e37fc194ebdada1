namespace FrontEnd.Head;

/// <summary>What one source puts at any site, in several conductors at once (such as one head with three skulls), for a density of 1 A·m/m².</summary>
internal sealed class SourcePotentials
{
    private readonly CorticalSource _source;
    private readonly double[] _terms;
    private readonly double[] _scales;

    /// <summary>Along the skin from over a wall the way its moment points, of length 1; unused for a patch.</summary>
    private readonly SpherePoint _along;

    public SourcePotentials(CorticalSource source, IReadOnlyList<VolumeConductor> conductors)
    {
        _source = source;
        _scales = [.. conductors.Select(one => source.Extent.SquareMetres * one.PerMoment)];
        if (source is SulcalWall wall)
        {
            _along = Along(wall);
            _terms = Interleaved([.. conductors.Select(one => one.Shells.Kernel(one.Shells.WallRadius))]);
        }
        else
        {
            _terms = Interleaved([.. conductors.Select(one => PatchTerms(one, source.Extent))]);
        }
    }

    /// <summary>How many conductors there are.</summary>
    public int Count => _scales.Length;

    /// <summary>Potential at a site against far, for every conductor [V].</summary>
    public void At(SpherePoint site, Span<double> volts)
    {
        double x = Math.Clamp(site.Dot(_source.Centre), -1, 1), sideways = 1;
        if (_source is SulcalWall)
        {
            LegendreSeries.SlopeSums(_terms, x, volts);
            sideways = _along.Dot(site);
        }
        else
        {
            LegendreSeries.Sums(_terms, x, volts);
        }

        for (int k = 0; k < volts.Length; k++)
        {
            volts[k] *= sideways * _scales[k];
        }
    }

    /// <summary>V_0, by which a share of the peak is counted: on the skin over the middle of a patch; for a wall, which gives nothing there, the
    /// most anywhere on the skin [V].</summary>
    public void Peak(Span<double> volts)
    {
        if (_source is not SulcalWall)
        {
            At(_source.Centre, volts);
            return;
        }

        // Along the way that the moment points the potential has one top, which lies before 90°.
        double[] here = new double[volts.Length];
        for (int k = 0; k < volts.Length; k++)
        {
            int conductor = k;
            volts[k] = Filters.MathExtra.Greatest(
                angle =>
                {
                    At((Math.Cos(angle) * _source.Centre) + (Math.Sin(angle) * _along), here);
                    return here[conductor];
                }, 0, Math.PI / 2).Value;
        }
    }

    /// <summary>n·H_n·f^(n−1)·g_n of a patch.</summary>
    internal static double[] PatchTerms(VolumeConductor conductor, Area area)
    {
        double[] kernel = conductor.PatchKernel, terms = new double[kernel.Length];
        CapFactors(CapCosine(conductor, area), terms);
        for (int n = 1; n <= terms.Length; n++)
        {
            terms[n - 1] *= n * kernel[n - 1];
        }

        return terms;
    }

    /// <summary>g_n, what an even layer over a cap is to one dipole of the same moment over its middle.</summary>
    internal static void CapFactors(double cosine, Span<double> factors)
    {
        LegendreSeries.Slopes(cosine, factors);
        for (int n = 1; n <= factors.Length; n++)
        {
            factors[n - 1] *= (1 + cosine) / (n * (n + 1.0));
        }
    }

    /// <summary>c = 1 − A/(2πr_c²).</summary>
    internal static double CapCosine(VolumeConductor conductor, Area area) => area.SquareMetres <= conductor.Hemisphere.SquareMetres * (1 + 1e-12)
        ? Math.Max(0, 1 - (area.SquareMetres / conductor.Hemisphere.SquareMetres))
        : throw new ArgumentOutOfRangeException(nameof(area), area, "A patch is a hemisphere at most.");

    /// <summary>Series side by side: the first term of all, then the second of all; shorter ones end in zeros.</summary>
    internal static double[] Interleaved(double[][] series)
    {
        int count = series.Length;
        double[] all = new double[count * series.Max(one => one.Length)];
        for (int k = 0; k < count; k++)
        {
            for (int n = 0; n < series[k].Length; n++)
            {
                all[(n * count) + k] = series[k][n];
            }
        }

        return all;
    }

    private static SpherePoint Along(SulcalWall wall)
    {
        SpherePoint along = wall.Towards - (wall.Towards.Dot(wall.Centre) * wall.Centre);
        return (1 / Require.Positive(Math.Sqrt(along.Dot(along)))) * along;
    }
}
