namespace FrontEnd.Head;

/// <summary>One head for questions about what its sites see: its sphere, its shells, and the same with other skulls.</summary>
internal sealed class HeadModel
{
    private readonly Dictionary<Site, SpherePoint> _places = [];

    /// <param name="skullRatio">q = σ_brain/σ_skull; null for the set's own.</param>
    public HeadModel(HeadSphere sphere, ShellSet set = ShellSet.Four, double? skullRatio = null, SiteRule rule = SiteRule.Row)
    {
        (Sphere, Rule) = (sphere, rule);
        Conductors =
        [
            new VolumeConductor(sphere.Radius, Shells.Of(set, skullRatio)),
            .. Shells.SkullRatios.Select(ratio => new VolumeConductor(sphere.Radius, Shells.Of(set, ratio))),
        ];
    }

    public HeadSphere Sphere { get; }

    public SiteRule Rule { get; }

    /// <summary>The head as it is asked about.</summary>
    public VolumeConductor Conductor => Conductors[0];

    /// <summary>That head, then the same with each of <see cref="Shells.SkullRatios"/>.</summary>
    internal IReadOnlyList<VolumeConductor> Conductors { get; }

    /// <summary>Where a site lies.</summary>
    public SpherePoint Place(Site site)
    {
        if (!_places.TryGetValue(site, out SpherePoint place))
        {
            _places[site] = place = Sphere.Place(site, Rule);
        }

        return place;
    }

    /// <summary>Potential at a site, against far, that a source of a given density puts there.</summary>
    public Voltage Potential(CorticalSource source, DipoleDensity density, SpherePoint site)
    {
        Span<double> volts = stackalloc double[1];
        new SourcePotentials(source, [Conductor]).At(site, volts);
        return Voltage.FromVolts(density.AmperesPerMetre * volts[0]);
    }

    /// <summary>How alike the background is at two places, −1 to 1.</summary>
    public double Correlation(BackgroundActivity background, SpherePoint first, SpherePoint second)
    {
        Span<double> correlation = stackalloc double[1];
        new BackgroundCorrelation(background.PatchArea, [Conductor]).Of(first, second, correlation);
        return correlation[0];
    }

    /// <summary>θ_h: how far from the middle of a patch its far potential has halved.</summary>
    public Angle HalfAngle(Area area)
    {
        SourcePotentials potentials = new(new GyralPatch(SpherePoint.At(0, 0), area), [Conductor]);
        double At(double angle)
        {
            Span<double> volts = stackalloc double[1];
            potentials.At(SpherePoint.At(angle, 0), volts);
            return volts[0];
        }

        double half = At(0) / 2;
        return Angle.FromRadians(Filters.MathExtra.Bisect(angle => At(angle) - half, 0, Math.PI));
    }
}
