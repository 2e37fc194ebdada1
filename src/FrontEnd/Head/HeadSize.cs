namespace FrontEnd.Head;

/// <summary>Three measures of a head along the skin, and where its ear lobes and mastoids are.</summary>
/// <param name="NasionInion">S: nasion to inion over the vertex.</param>
/// <param name="Preauricular">K: preauricular point to preauricular point over the vertex.</param>
/// <param name="Circumference">U: around the head through Fpz, T7, Oz and T8. A hat's size may stand in for it: on this sphere the widest
/// line is 0.2 % longer.</param>
public sealed record HeadSize(Length NasionInion, Length Preauricular, Length Circumference)
{
    /// <summary>A1, A2: below the preauricular point along the skin. 2.5 cm (common practice, no source).</summary>
    public Length EarLobeDown { get; init; } = Length.FromCentimetres(2.5);

    /// <summary>M1, M2: below the preauricular point along the skin. 1.5 cm (common practice, no source).</summary>
    public Length MastoidDown { get; init; } = Length.FromCentimetres(1.5);

    /// <summary>M1, M2: behind the preauricular point along the skin. 3.5 cm (common practice, no source).</summary>
    public Length MastoidBack { get; init; } = Length.FromCentimetres(3.5);

    /// <summary>The length of a measured arc.</summary>
    public Length Of(SiteArc arc) => arc switch
    {
        SiteArc.Sagittal => NasionInion,
        SiteArc.Coronal => Preauricular,
        SiteArc.Ring => Circumference,
        _ => throw new ArgumentOutOfRangeException(nameof(arc), arc, "Arc is not measured."),
    };
}
