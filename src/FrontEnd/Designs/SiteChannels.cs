using FrontEnd.Head;

namespace FrontEnd.Designs;

/// <summary>One recorded or derived channel of a design whose sites are known.</summary>
/// <param name="Weights">Of the recorded channels, in their order.</param>
/// <param name="IsRecorded">True for a channel of the converter; false for one that is derived from others.</param>
public sealed record SiteChannel(Derivation Derivation, IReadOnlyList<double> Weights, bool IsRecorded);

/// <summary>The channels of a design as derivations on the head: the one place that turns a design's sites into weights of sites.</summary>
public static class SiteChannels
{
    /// <summary>Recorded channels, then derived ones; those with a site that is not known are left out. Empty where the reference's is
    /// not.</summary>
    /// <param name="findings">Told which words are no sites.</param>
    public static IReadOnlyList<SiteChannel> Of(Design design, List<Finding> findings)
    {
        Derivation?[] recorded = 0 < design.ChannelList.Count ? OfList(design, findings) : OfMontage(design, findings);
        List<SiteChannel> channels = [];
        for (int i = 0; i < recorded.Length; i++)
        {
            if (recorded[i] is { } derivation)
            {
                channels.Add(new SiteChannel(derivation, [.. recorded.Select((_, j) => i == j ? 1.0 : 0.0)], IsRecorded: true));
            }
        }

        if (channels.Count > 0)
        {
            channels.AddRange(Derived(design, recorded));
        }

        return channels;
    }

    private static Derivation?[] OfMontage(Design design, List<Finding> findings)
    {
        IReadOnlyList<string> sites = design.Montage.Sites;
        if (sites.Count != design.Channels || Reference(design) is not { } reference)
        {
            return [];
        }

        Derivation?[] recorded = new Derivation?[sites.Count];
        for (int i = 0; i < recorded.Length; i++)
        {
            recorded[i] = SiteWords.Site(sites[i]) is { } site ? Derivation.Of($"{sites[i]}-{design.ReferenceName}", site, reference) : null;
            if (recorded[i] is null)
            {
                findings.Add(Messages.UnknownSite(DesignKeys.Montage.Sites, sites[i], SiteWords.NearestSite(sites[i])));
            }
        }

        return recorded;
    }

    /// <summary>Channels at their sites, by their names; free words are no sites, and nothing is said of them.</summary>
    private static Derivation?[] OfList(Design design, List<Finding> findings)
    {
        IReadOnlyList<SiteWeight>? shared = Reference(design);
        Derivation?[] recorded = new Derivation?[design.ChannelList.Count];
        for (int i = 0; i < recorded.Length; i++)
        {
            Channel channel = design.ChannelList[i];
            IReadOnlyList<SiteWeight>? reference = channel.Minus is { } minus ? SiteWords.Reference(minus.Site, []) : shared;
            recorded[i] = SiteWords.Site(channel.EffectiveSite) is { } site && reference is not null ? Derivation.Of(channel.Name, site, reference) : null;
            if (recorded[i] is null && SiteWords.Site(channel.EffectiveSite) is null)
            {
                findings.Add(Messages.UnknownSite($"channels[{i + 1}].site", channel.EffectiveSite, SiteWords.NearestSite(channel.EffectiveSite)));
            }
        }

        return recorded;
    }

    /// <summary>Where the reference that all channels share stands; null where that is not known.</summary>
    private static IReadOnlyList<SiteWeight>? Reference(Design design)
    {
        IReadOnlyList<string> sites = design.Electrodes.ReferenceSites;
        if (sites.Count == 0)
        {
            return SiteWords.Reference(design.Montage.Reference, []);
        }

        IReadOnlyList<SiteWeight>?[] each = [.. sites.Select(site => SiteWords.Reference(site, []))];
        return each.Any(one => one is null) ? null : [.. each.SelectMany(one => one!.Select(weight => weight with { Weight = weight.Weight / sites.Count }))];
    }

    private static IEnumerable<SiteChannel> Derived(Design design, Derivation?[] recorded)
    {
        foreach (DerivedRow row in design.DerivedRows.Skip(design.Montage.Kind == MontageKind.Referential ? design.Channels : 0))
        {
            IReadOnlyList<double> weights = row.Weights;
            int active = weights.ToList().IndexOf(weights.Max());
            if (weights.Any(weight => weight != 0) && !weights.Select((weight, i) => weight != 0 && recorded[i] is null).Any(isUnknown => isUnknown))
            {
                yield return new SiteChannel(
                    Derivation.Sum(row.Name, recorded[active]!.Active, weights.Select((weight, i) => (weight, i)).Where(one => one.weight != 0)
                        .Select(one => (recorded[one.i]!, one.weight))), weights, IsRecorded: false);
            }
        }
    }
}
