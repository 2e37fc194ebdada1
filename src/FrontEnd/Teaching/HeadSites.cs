using FrontEnd.Quantities;

namespace FrontEnd.Teaching;

/// <summary>Where the sites of the 10-20 system lie on one head.</summary>
/// <param name="Head">The three measures of the head.</param>
/// <param name="Rule">Where F3, F4, P3 and P4 are put.</param>
/// <param name="Set">Which sites are shown.</param>
/// <param name="Asked">Two sites whose distance was asked for; null for none.</param>
/// <param name="Pairs">What a montage compares, first minus second; empty for none.</param>
/// <param name="Arcs">The measured arcs with the sites on them.</param>
public sealed record HeadSites(HeadSize Head, SiteRule Rule, SiteSet Set, SiteDistance? Asked, IReadOnlyList<SiteDistance> Pairs,
    IReadOnlyList<MeasuredArc> Arcs)
{
    private const string TenTenNote =
        "The sites with 1, 2, 5 and 6, the AF and PO sites with 3 and 4 and the rows FC and CP lie on quarters or halves of the way from their midline site to their site on the ring; "
        + "the C row lies on the coronal arc itself. Those with 9 and 10 lie below the ring, at the height of nasion, ear and inion.";

    private static readonly SiteArc[] Measured = [SiteArc.Sagittal, SiteArc.Coronal, SiteArc.Ring];

    /// <summary>How far the two rules for F3 are apart over the skin, by the sphere model.</summary>
    public Length RulesApart => Sites.RulesApart(Head);

    /// <summary>From F3 to Fz over the skin, by the sphere model.</summary>
    public Length FromF3ToFz => Sites.Distance(Sites.Find("F3")!, Sites.Find("Fz")!, Head, Rule)!.Value;

    /// <summary>What must be known when reading the distances.</summary>
    public IReadOnlyList<string> Notes =>
    [
        .. Set == SiteSet.TenTen ? (string[])[TenTenNote] : [],
        "A1 and A2 are the ear lobes, M1 and M2 the mastoids behind them: no arc leads there, so no distance is given. T3, T4, T5, T6 are also called T7, T8, P7, P8. "
        + "The fractions of the arcs are those of the public article on the 10-20 system; the 10-10 rows and names are from memory.",
        "Sphere model: a sphere of the mean radius that the three measures give. No head is a sphere: what a tape reads along an arc counts.",
    ];

    /// <summary>An arc as it is called in a sentence.</summary>
    public static string Name(SiteArc arc) => arc switch
    {
        SiteArc.Sagittal => "nasion-inion arc",
        SiteArc.Coronal => "preauricular arc",
        SiteArc.Ring => "ring",
        _ => throw new ArgumentOutOfRangeException(nameof(arc), arc, "Arc is not measured."),
    };

    /// <summary>Works out every distance.</summary>
    public static HeadSites Of(
        HeadSize head, SiteRule rule, SiteSet set, (Site First, Site Second)? asked, IReadOnlyList<(Site First, Site Second)> pairs)
    {
        return new HeadSites(
            head, rule, set, asked is { } two
                ? Between(two)
                : null, [.. pairs.Select(Between)], [.. Measured.Select(arc => MeasuredArc.Of(arc, head, set))]);

        SiteDistance Between((Site First, Site Second) pair) => SiteDistance.Of(pair.First, pair.Second, head, rule);
    }
}

/// <summary>Two sites and how far they are apart; null for an ear lobe or mastoid, to which no arc leads.</summary>
/// <param name="Over">Over the skin, by the sphere model.</param>
/// <param name="Straight">Straight through the head, by the sphere model.</param>
/// <param name="Arc">The measured arc that both lie on; null where there is none.</param>
/// <param name="Along">Along that arc, as a tape reads it.</param>
public sealed record SiteDistance(Site First, Site Second, Length? Over, Length? Straight, SiteArc? Arc, Length? Along)
{
    public static SiteDistance Of(Site first, Site second, HeadSize head, SiteRule rule)
    {
        (SiteArc Arc, Length Distance)? shared = Sites.AlongSharedArc(first, second, head);
        return new(first, second, Sites.Distance(first, second, head, rule), Sites.Straight(first, second, head, rule), shared?.Arc,
            shared?.Distance);
    }
}

/// <summary>A measured arc and the sites on it, from its beginning.</summary>
/// <param name="Length">The whole arc.</param>
public sealed record MeasuredArc(SiteArc Arc, Length Length, IReadOnlyList<(Site Site, Length At)> Marks)
{
    public static MeasuredArc Of(SiteArc arc, HeadSize head, SiteSet set)
    {
        Length length = arc switch
        {
            SiteArc.Sagittal => head.NasionInion,
            SiteArc.Coronal => head.Preauricular,
            SiteArc.Ring => head.Circumference,
            _ => throw new ArgumentOutOfRangeException(nameof(arc), arc, "Arc is not measured."),
        };
        IEnumerable<(Site Site, Length At)> marks = Sites.Of(set).Select(site => (site, Sites.Along(site, arc, head)))
            .Where(one => one.Item2 is not null).Select(one => (one.site, one.Item2!.Value));
        return new MeasuredArc(arc, length, [.. marks.OrderBy(one => one.At.Metres)]);
    }
}
