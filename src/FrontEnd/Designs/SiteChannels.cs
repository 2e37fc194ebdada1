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
        Montage montage = design.Montage;
        if (montage.Sites.Count != design.Channels || SiteWords.Reference(montage.Reference, []) is not { } reference)
        {
            return [];
        }

        Derivation?[] recorded = new Derivation?[design.Channels];
        for (int i = 0; i < recorded.Length; i++)
        {
            string word = montage.Sites[i];
            recorded[i] = SiteWords.Site(word) is { } site ? Derivation.Of($"{word}-{montage.Reference}", site, reference) : null;
            if (recorded[i] is null)
            {
                findings.Add(Messages.UnknownSite(DesignKeys.Montage.Sites, word, SiteWords.NearestSite(word)));
            }
        }

        List<SiteChannel> channels = [];
        for (int i = 0; i < recorded.Length; i++)
        {
            if (recorded[i] is { } derivation)
            {
                channels.Add(new SiteChannel(derivation, [.. recorded.Select((_, j) => i == j ? 1.0 : 0.0)], IsRecorded: true));
            }
        }

        if (montage.Kind != MontageKind.Referential)
        {
            channels.AddRange(Derived(design, recorded));
        }

        return channels;
    }

    private static IEnumerable<SiteChannel> Derived(Design design, Derivation?[] recorded)
    {
        foreach ((string name, double[] weights) in design.Montage.ChannelNames(design.Channels)
            .Zip(Montage.Weights(design.Montage.Kind, design.Channels)))
        {
            int active = Array.IndexOf(weights, weights.Max());
            if (!weights.Select((weight, i) => weight != 0 && recorded[i] is null).Any(isUnknown => isUnknown))
            {
                yield return new SiteChannel(
                    Derivation.Sum(name, recorded[active]!.Active, weights.Select((weight, i) => (weight, i)).Where(one => one.weight != 0)
                        .Select(one => (recorded[one.i]!, one.weight))), weights, IsRecorded: false);
            }
        }
    }
}
