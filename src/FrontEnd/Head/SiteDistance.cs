namespace FrontEnd.Head;

/// <summary>Two sites and how far they are apart.</summary>
/// <param name="Over">Over the skin, by the sphere model.</param>
/// <param name="Straight">Straight through the head, by the sphere model.</param>
/// <param name="Arc">The measured arc that both lie on; null where there is none.</param>
/// <param name="Along">Along that arc, as a tape reads it.</param>
internal sealed record SiteDistance(Site First, Site Second, Length Over, Length Straight, SiteArc? Arc, Length? Along)
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
