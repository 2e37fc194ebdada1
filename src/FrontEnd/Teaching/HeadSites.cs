using FrontEnd.Head;
using FrontEnd.Reporting;
using FrontEnd.Results;

namespace FrontEnd.Teaching;

/// <summary>Where the sites of the 10-20 system lie on one head.</summary>
/// <param name="Sphere">The sphere that the head's three measures give.</param>
/// <param name="Rule">Where F3, F4, P3 and P4 are put.</param>
/// <param name="Set">Which sites are shown.</param>
/// <param name="Asked">Two sites whose distance was asked for; null for none.</param>
/// <param name="Pairs">What a montage compares, first minus second; empty for none.</param>
/// <param name="Arcs">The measured arcs with the sites on them.</param>
internal sealed record HeadSites(HeadSphere Sphere, SiteRule Rule, SiteSet Set, SiteDistance? Asked, IReadOnlyList<SiteDistance> Pairs,
    IReadOnlyList<MeasuredArc> Arcs)
{
    private const string TenTenNote =
        "The sites with 1, 2, 5 and 6, the AF and PO sites with 3 and 4 and the rows FC and CP lie on quarters or halves of the way from their midline site to their site on the ring, "
        + "along the curve through these two and the site opposite; the C row lies on the coronal arc itself. Those with 9 and 10 lie below the ring, level with nasion, ear and inion.";

    private static readonly SiteArc[] Measured = [SiteArc.Sagittal, SiteArc.Coronal, SiteArc.Ring];

    /// <summary>How far the two rules for F3 are apart over the skin.</summary>
    public Length RulesApart => Sphere.OverTheSkin(Sphere.Place(Sites.Find("F3")!), Sphere.Place(Sites.Find("F3")!, SiteRule.Column));

    /// <summary>From F3 to Fz over the skin.</summary>
    public Length FromF3ToFz => SiteDistance.Of(Sites.Find("F3")!, Sites.Find("Fz")!, Sphere, Rule).Over;

    /// <summary>The sphere and every distance, each once.</summary>
    public IReadOnlyList<Result> Results
    {
        get
        {
            ResultList list = new();
            HeadResults.AddSphere(list, Sphere);
            foreach (SiteDistance distance in Asked is null ? Pairs : [Asked, .. Pairs])
            {
                HeadResults.AddDistance(list, distance);
            }

            return list.Results;
        }
    }

    /// <summary>What must be known when reading the distances.</summary>
    public IReadOnlyList<string> Notes =>
    [
        .. Set == SiteSet.TenTen ? (string[])[TenTenNote] : [],
        "A1 and A2 are the ear lobes, M1 and M2 the mastoids behind them: no arc leads there, and a sphere has neither ear nor neck, so distances to them are rough (~). "
        + "T3, T4, T5, T6 are also called T7, T8, P7, P8. The fractions of the arcs are those of the public article on the 10-20 system; the 10-10 rows and names are from memory.",
        "Sphere model: the one sphere that matches all three measures. No head is a sphere: neighbours may be 5 % off, T7 to T8 14 %, so two figures are "
        + "printed; the tape's reading along an arc is what counts.",
    ];

    /// <summary>Works out every distance.</summary>
    public static HeadSites Of(
        HeadSphere sphere, SiteRule rule, SiteSet set, SiteDistance? asked, IReadOnlyList<(Site First, Site Second)> pairs) =>
        new(sphere, rule, set, asked, [.. pairs.Select(pair => SiteDistance.Of(pair.First, pair.Second, sphere, rule))],
            [.. Measured.Select(arc => MeasuredArc.Of(arc, sphere.Size, set))]);
}

/// <summary>A measured arc and the sites on it, from its beginning.</summary>
/// <param name="Length">The whole arc.</param>
internal sealed record MeasuredArc(SiteArc Arc, Length Length, IReadOnlyList<(Site Site, Length At)> Marks)
{
    public static MeasuredArc Of(SiteArc arc, HeadSize head, SiteSet set)
    {
        IEnumerable<(Site Site, Length At)> marks = Sites.Of(set).Select(site => (site, Sites.Along(site, arc, head)))
            .Where(one => one.Item2 is not null).Select(one => (one.site, one.Item2!.Value));
        return new MeasuredArc(arc, head.Of(arc), [.. marks.OrderBy(one => one.At.Metres)]);
    }
}
