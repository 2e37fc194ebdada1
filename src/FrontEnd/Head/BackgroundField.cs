namespace FrontEnd.Head;

/// <summary>The background at every site of some derivations, in every conductor of a head: worked out once for all of them.</summary>
internal sealed class BackgroundField
{
    private readonly Dictionary<Site, int> _index = [];
    private readonly double[] _correlations;

    public BackgroundField(HeadModel head, BackgroundActivity activity, IEnumerable<Derivation> derivations)
    {
        List<SpherePoint> places = [];
        foreach (Site site in derivations.SelectMany(one => one.Weights).Select(one => one.Site))
        {
            if (_index.TryAdd(site, _index.Count))
            {
                places.Add(head.Place(site));
            }
        }

        Activity = activity;
        _correlations = new BackgroundCorrelation(activity.PatchArea, head.Conductors).Matrix(places);
    }

    /// <summary>What it is made of.</summary>
    public BackgroundActivity Activity { get; }

    /// <summary>B·√(wᵀρw): background of a derivation between two frequencies.</summary>
    public VoltageRms Of(Derivation derivation, Frequency low, Frequency high) =>
        VoltageRms.FromVolts(Activity.Rms(low, high).Volts * Math.Sqrt(Shared(derivation, derivation, 0)));

    /// <summary>How alike two derivations are in background and front-end noise: w_aᵀMw_b/√(w_aᵀMw_a·w_bᵀMw_b), M = B²ρ + e²·1. A site that both
    /// hold is in it.</summary>
    /// <param name="site">B: background at one site.</param>
    /// <param name="noise">e: noise of one electrode's path.</param>
    public double Correlation(Derivation first, Derivation second, VoltageRms site, VoltageRms noise)
    {
        double e = noise.Volts * noise.Volts;
        return Correlation(first, second, site, e * first.PowerSum, e * second.PowerSum, e * Products(first, second));
    }

    /// <summary>The same with the noise of either and what they share of it given as powers [V²].</summary>
    internal double Correlation(Derivation first, Derivation second, VoltageRms site, double firstNoise, double secondNoise, double shared)
    {
        double b = site.Volts * site.Volts;
        double own = (b * Shared(first, first, 0)) + firstNoise, other = (b * Shared(second, second, 0)) + secondNoise;
        return ((b * Shared(first, second, 0)) + shared) / Math.Sqrt(own * other);
    }

    /// <summary>w_aᵀρw_b, of which a rounding below zero is none.</summary>
    internal double Shared(Derivation first, Derivation second, int conductor)
    {
        int n = _index.Count, start = conductor * n * n;
        double sum = 0;
        foreach (SiteWeight one in first.Weights)
        {
            int row = start + (_index[one.Site] * n);
            foreach (SiteWeight other in second.Weights)
            {
                sum += one.Weight * other.Weight * _correlations[row + _index[other.Site]];
            }
        }

        return ReferenceEquals(first, second) ? Math.Max(0, sum) : sum;
    }

    private static double Products(Derivation first, Derivation second) =>
        first.Weights.Sum(one => second.Weights.Where(other => other.Site == one.Site).Sum(other => one.Weight * other.Weight));
}
