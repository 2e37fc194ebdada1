namespace FrontEnd.Head;

/// <summary>How alike the background is at two sites of a head, in several conductors at once.</summary>
/// <remarks>
/// Independent patches of one size all over the sphere of <see cref="Shells.PatchRadius"/>: ρ(γ) = Σ c_n·P_n(cos γ)/Σ c_n,
/// c_n = (n·H_n·f^(n−1)·g_n)²/(2n + 1).
/// <para>Source: derived. ρ passes zero at 10.3 cm (four shells) and 12.0 cm (three): srinivasan-1998 (abstract) finds that sources that know nothing
/// of each other look alike within 10 to 12 cm.</para>
/// </remarks>
internal sealed class BackgroundCorrelation
{
    private readonly double[] _terms;
    private readonly int _count;

    public BackgroundCorrelation(Area patchArea, IReadOnlyList<VolumeConductor> conductors)
    {
        _count = conductors.Count;
        _terms = SourcePotentials.Interleaved([.. conductors.Select(one => Shares(one, patchArea))]);
    }

    /// <summary>ρ of two sites, for every conductor; 1 for a site and itself.</summary>
    public void Of(SpherePoint first, SpherePoint second, Span<double> correlations) =>
        LegendreSeries.Sums(_terms, Math.Clamp(first.Dot(second), -1, 1), correlations);

    /// <summary>ρ of all pairs of sites: conductor, row, column.</summary>
    public double[] Matrix(IReadOnlyList<SpherePoint> sites)
    {
        int n = sites.Count;
        double[] matrix = new double[_count * n * n];
        Span<double> here = stackalloc double[_count];
        for (int i = 0; i < n; i++)
        {
            for (int j = i; j < n; j++)
            {
                Of(sites[i], sites[j], here);
                for (int k = 0; k < _count; k++)
                {
                    matrix[(((k * n) + i) * n) + j] = matrix[(((k * n) + j) * n) + i] = i == j ? 1 : here[k];
                }
            }
        }

        return matrix;
    }

    /// <summary>c_n/Σ c_n.</summary>
    private static double[] Shares(VolumeConductor conductor, Area patchArea)
    {
        double[] terms = SourcePotentials.PatchTerms(conductor, patchArea);
        double sum = 0;
        for (int n = 1; n <= terms.Length; n++)
        {
            sum += terms[n - 1] = terms[n - 1] * terms[n - 1] / ((2 * n) + 1);
        }

        for (int i = 0; i < terms.Length; i++)
        {
            terms[i] /= sum;
        }

        return terms;
    }
}
