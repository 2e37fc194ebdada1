namespace FrontEnd.Head;

/// <summary>One site of a derivation and how much of its potential goes in.</summary>
public readonly record struct SiteWeight(Site Site, double Weight);

/// <summary>What a channel shows: a weighted sum of the potentials of sites.</summary>
/// <param name="Name">As it is printed: <c>O1-ears</c>.</param>
/// <param name="Active">The site that the channel is about.</param>
/// <param name="Weights">Every site once; +1 for the active one of a plain channel, in all −1 for what it is compared with. Against an average
/// of N sites that it belongs to the active one has 1 − 1/N.</param>
public sealed record Derivation(string Name, Site Active, IReadOnlyList<SiteWeight> Weights)
{
    /// <summary>True where an ear lobe or mastoid is in it: a sphere has neither, and its background surrounds them with cortex.</summary>
    public bool HasEars => Weights.Any(one => one.Site.Arc == SiteArc.Ear && one.Weight != 0);

    /// <summary>Σw²: what equal noise of every electrode's path adds up to, in power.</summary>
    public double PowerSum => Weights.Sum(one => one.Weight * one.Weight);

    /// <summary>Of two sites the other minus this one; null for a derivation of more or fewer.</summary>
    public Derivation? Turned => Weights is [{ Weight: 1 } plus, { Weight: -1 } minus]
        ? new Derivation($"{minus.Site.Name}-{plus.Site.Name}", minus.Site, [new SiteWeight(minus.Site, 1), new SiteWeight(plus.Site, -1)]) : null;

    /// <summary>A site against what a reference's word stands for.</summary>
    public static Derivation Of(string name, Site active, IReadOnlyList<SiteWeight> reference) =>
        new(name, active, Merged([new SiteWeight(active, 1), .. reference.Select(one => one with { Weight = -one.Weight })]));

    /// <summary>A site against the mean of sites, itself included where it is among them.</summary>
    public static Derivation AgainstAverage(string name, Site active, IReadOnlyList<Site> sites) =>
        Of(name, active, [.. sites.Select(site => new SiteWeight(site, 1.0 / sites.Count))]);

    /// <summary>A sum of derivations: <paramref name="active"/> is the one whose site it is about.</summary>
    public static Derivation Sum(string name, Site active, IEnumerable<(Derivation Part, double Weight)> parts) =>
        new(name, active, Merged(parts.SelectMany(part => part.Part.Weights.Select(one => one with { Weight = part.Weight * one.Weight }))));

    /// <summary>A derivation as it is written, <c>O1-ears</c>, <c>Cz-A1</c>, <c>T5-ear-left</c>, <c>O1-average</c>: a site, a hyphen, a site or a
    /// word of <see cref="SiteWords"/>.</summary>
    /// <param name="average">The sites whose mean <c>average</c> is.</param>
    /// <param name="unknown">What is neither; null where all is known.</param>
    public static Derivation? Parse(string text, IReadOnlyList<Site> average, out string? unknown)
    {
        string word = text.Trim();
        unknown = word;
        for (int at = word.IndexOfAny(['-', '–']); 0 < at; at = word.IndexOfAny(['-', '–'], at + 1))
        {
            (string first, string second) = (word[..at].Trim(), word[(at + 1)..].Trim());
            if (SiteWords.Site(first) is not { } active)
            {
                unknown = first;
                continue;
            }

            if (SiteWords.Reference(second, average) is not { } reference)
            {
                unknown = second;
                continue;
            }

            unknown = null;
            return Of(word.Replace('–', '-'), active, reference);
        }

        return null;
    }

    private static List<SiteWeight> Merged(IEnumerable<SiteWeight> weights)
    {
        List<SiteWeight> merged = [];
        foreach (SiteWeight one in weights)
        {
            int at = merged.FindIndex(other => other.Site == one.Site);
            if (at < 0)
            {
                merged.Add(one);
            }
            else
            {
                merged[at] = one with { Weight = merged[at].Weight + one.Weight };
            }
        }

        merged.RemoveAll(one => one.Weight == 0);
        return merged;
    }
}
