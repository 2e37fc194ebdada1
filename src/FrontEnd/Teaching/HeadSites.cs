using FrontEnd.Citations;
using FrontEnd.Head;
using FrontEnd.Identity;
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
public sealed record HeadSites(HeadSphere Sphere, SiteRule Rule, SiteSet Set, SiteDistance? Asked, IReadOnlyList<SiteDistance> Pairs,
    IReadOnlyList<MeasuredArc> Arcs)
{
    private const string TenTenNote =
        "The sites with 1, 2, 5 and 6, the AF and PO sites with 3 and 4 and the rows FC and CP lie on quarters or halves of the way from their midline site to their site on the ring, "
        + "along the curve through these two and the site opposite; the C row lies on the coronal arc itself. Those with 9 and 10 lie below the ring, at the height of nasion, ear and inion.";

    private static readonly SiteArc[] Measured = [SiteArc.Sagittal, SiteArc.Coronal, SiteArc.Ring];

    /// <summary>How far the two rules for F3 are apart over the skin.</summary>
    public Length RulesApart => Sphere.OverTheSkin(Sphere.Place(Sites.Find("F3")!), Sphere.Place(Sites.Find("F3")!, SiteRule.Column));

    /// <summary>From F3 to Fz over the skin.</summary>
    public Length FromF3ToFz => SiteDistance.Of(Sites.Find("F3")!, Sites.Find("Fz")!, Sphere, Rule).Over;

    /// <summary>The sphere and every distance, each once.</summary>
    public IReadOnlyList<Result> Results =>
    [
        One(ResultIds.Head.Radius, "radius of the sphere on which all three measures are as long as the tape says", "R", Sphere.Radius, Equations.HeadRadius),
        One(ResultIds.Head.RingFront, "from the vertex to the ring in front, at Fpz", "a_S", Angle.FromRadians(Sphere.FrontRing), Equations.HeadRingFront),
        One(ResultIds.Head.RingSide, "from the vertex to the ring at the side, at T7", "a_K", Angle.FromRadians(Sphere.SideRing), Equations.HeadRingSide),
        .. (Asked is null ? Pairs : [Asked, .. Pairs]).SelectMany(DistanceResults).DistinctBy(result => result.Id),
    ];

    /// <summary>What must be known when reading the distances.</summary>
    public IReadOnlyList<string> Notes =>
    [
        .. Set == SiteSet.TenTen ? (string[])[TenTenNote] : [],
        "A1 and A2 are the ear lobes, M1 and M2 the mastoids behind them: no arc leads there, and a sphere has neither ear nor neck, so that distances to them are rough (~). "
        + "T3, T4, T5, T6 are also called T7, T8, P7, P8. The fractions of the arcs are those of the public article on the 10-20 system; the 10-10 rows and names are from memory.",
        "Sphere model: the one sphere on which all three measures are as long as the tape says. No head is a sphere: neighbours may be 5 % off, T7 to T8 14 %, so that two figures are "
        + "printed; what a tape reads along an arc counts.",
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
        HeadSphere sphere, SiteRule rule, SiteSet set, SiteDistance? asked, IReadOnlyList<(Site First, Site Second)> pairs) =>
        new(sphere, rule, set, asked, [.. pairs.Select(pair => SiteDistance.Of(pair.First, pair.Second, sphere, rule))],
            [.. Measured.Select(arc => MeasuredArc.Of(arc, sphere.Size, set))]);

    private static IEnumerable<Result> DistanceResults(SiteDistance distance)
    {
        DistanceIds ids = ResultIds.Head.Distance(distance.FirstCalled, distance.SecondCalled);
        string pair = $"{distance.FirstCalled} to {distance.SecondCalled}";
        if (distance.Along is { } along)
        {
            yield return One(ids.Tape, $"{pair} along the {Name(distance.Arc!.Value)}", "d", along, Equations.HeadTape);
        }

        string? rough = distance.IsRough ? "rough: a sphere has neither ear nor neck" : null;
        yield return One(ids.Skin, $"{pair} over the skin", "d", distance.Over, Equations.HeadSkin, rough);
        yield return One(ids.Straight, $"{pair} straight through the head", "d", distance.Straight, Equations.HeadStraight, rough);
    }

    private static Result One(ResultId id, string name, string symbol, IQuantity value, Equation equation, string? text = null) =>
        new() { Id = id, Name = name, Symbol = symbol, Value = value, Unit = value.SiUnit, Equation = equation, Text = text };
}

/// <summary>Two sites and how far they are apart.</summary>
/// <param name="Over">Over the skin, by the sphere model.</param>
/// <param name="Straight">Straight through the head, by the sphere model.</param>
/// <param name="Arc">The measured arc that both lie on; null where there is none.</param>
/// <param name="Along">Along that arc, as a tape reads it.</param>
public sealed record SiteDistance(Site First, Site Second, Length Over, Length Straight, SiteArc? Arc, Length? Along)
{
    /// <summary>The name that was asked for, old or new.</summary>
    public string FirstCalled { get; init; } = First.Name;

    public string SecondCalled { get; init; } = Second.Name;

    /// <summary>True where one of the two is an ear lobe or mastoid, which a sphere does not have.</summary>
    public bool IsRough => First.Arc == SiteArc.Ear || Second.Arc == SiteArc.Ear;

    public static SiteDistance Of(Site first, Site second, HeadSphere sphere, SiteRule rule)
    {
        (SiteArc Arc, Length Distance)? shared = Sites.AlongSharedArc(first, second, sphere.Size);
        (SpherePoint a, SpherePoint b) = (sphere.Place(first, rule), sphere.Place(second, rule));
        return new(first, second, sphere.OverTheSkin(a, b), sphere.Straight(a, b), shared?.Arc, shared?.Distance);
    }
}

/// <summary>A measured arc and the sites on it, from its beginning.</summary>
/// <param name="Length">The whole arc.</param>
public sealed record MeasuredArc(SiteArc Arc, Length Length, IReadOnlyList<(Site Site, Length At)> Marks)
{
    public static MeasuredArc Of(SiteArc arc, HeadSize head, SiteSet set)
    {
        IEnumerable<(Site Site, Length At)> marks = Sites.Of(set).Select(site => (site, Sites.Along(site, arc, head)))
            .Where(one => one.Item2 is not null).Select(one => (one.site, one.Item2!.Value));
        return new MeasuredArc(arc, head.Of(arc), [.. marks.OrderBy(one => one.At.Metres)]);
    }
}
