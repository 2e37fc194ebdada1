using FrontEnd.Designs;
using FrontEnd.Head;

namespace FrontEnd.Pairs;

/// <summary>A derivation that may be asked about, and how the design makes it.</summary>
/// <param name="Weights">Of the design's recorded channels; empty for a pair of sites that is a channel of its own.</param>
internal sealed record CandidatePair(Derivation Derivation, IReadOnlyList<double> Weights);

/// <summary>The pairs of sites that a question is about: the channels as they are, and those that are tried for the best.</summary>
/// <param name="Channels">In their own order.</param>
/// <param name="Pairs">All of them that are ranked.</param>
/// <param name="Sites">The sites that the mean of all is made of.</param>
/// <param name="AreTried">True where there is no order of their own, as sites alone are given.</param>
internal sealed record PairCandidates(IReadOnlyList<CandidatePair> Channels, IReadOnlyList<CandidatePair> Pairs, IReadOnlyList<Site> Sites,
    bool AreTried)
{
    /// <summary>Channels and derived channels of a design; ranked are its channels and every difference of two.</summary>
    public static PairCandidates? OfDesign(Design design, List<Finding> findings)
    {
        IReadOnlyList<SiteChannel> channels = SiteChannels.Of(design, findings);
        if (channels.Count == 0)
        {
            findings.Add(Messages.NoSites(design.Name));
            return null;
        }

        CandidatePair[] all = [.. channels.Select(one => new CandidatePair(one.Derivation, one.Weights))];
        CandidatePair[] recorded = [.. channels.Where(one => one.IsRecorded).Select(one => new CandidatePair(one.Derivation, one.Weights))];
        List<CandidatePair> pairs = [.. recorded];
        for (int i = 0; i < recorded.Length; i++)
        {
            for (int j = i + 1; j < recorded.Length; j++)
            {
                (Derivation first, Derivation second) = (recorded[i].Derivation, recorded[j].Derivation);
                Derivation pair = Derivation.Sum($"{first.Active.Name}-{second.Active.Name}", first.Active, [(first, 1), (second, -1)]);
                pairs.Add(new CandidatePair(pair, [.. recorded[i].Weights.Zip(recorded[j].Weights, (a, b) => a - b)]));
            }
        }

        return new PairCandidates(all, pairs, [.. recorded.Select(one => one.Derivation.Active)], AreTried: false);
    }

    /// <summary>Pairs as they are written, or every pair of the sites that are named.</summary>
    public static PairCandidates? OfWords(IReadOnlyList<string> words, List<Finding> findings)
    {
        if (words.Count == 0)
        {
            return OfTenTwenty();
        }

        Site[] sites = [.. words.Select(SiteWords.Site).OfType<Site>().Distinct()];
        List<CandidatePair> written = [];
        foreach (string word in words.Where(word => SiteWords.Site(word) is null))
        {
            if (Derivation.Parse(word, sites, out string? unknown) is { } derivation)
            {
                written.Add(new CandidatePair(derivation, []));
            }
            else
            {
                bool isPair = word.Contains('-');
                findings.Add(isPair ? Messages.NoDerivation("--sites", word, unknown!, SiteWords.NearestReference(unknown!))
                    : Messages.NoSourceSite("--sites", word, SiteWords.NearestSite(word)));
            }
        }

        if (findings.Count == 0 && written.Count == 0 && sites.Length < 2)
        {
            findings.Add(Messages.OneSiteOnly(words[0]));
        }

        // Pairs that are written stand in their order; sites beside them are what their average is made of.
        CandidatePair[] pairs = written.Count > 0 ? [.. written] : AllPairs(sites);
        return new PairCandidates(pairs, pairs, sites, AreTried: written.Count == 0);
    }

    /// <summary>Every pair of the 10-20 system's sites, ears and mastoids among them.</summary>
    public static PairCandidates OfTenTwenty()
    {
        Site[] sites = [.. Head.Sites.Of(SiteSet.TenTwenty)];
        CandidatePair[] pairs = AllPairs(sites);
        return new PairCandidates(pairs, pairs, sites, AreTried: true);
    }

    private static CandidatePair[] AllPairs(Site[] sites) =>
        [.. sites.SelectMany((first, at) => sites.Skip(at + 1).Select(second =>
            new CandidatePair(Derivation.Of($"{first.Name}-{second.Name}", first, [new SiteWeight(second, 1)]), [])))];
}
