using FrontEnd.Quantities;

namespace FrontEnd.Teaching;

/// <summary>Which rule places F3, F4, P3 and P4.</summary>
public enum SiteRule
{
    /// <summary>F3 halfway between Fz and F7 (from memory); the rule of the head map.</summary>
    Row,

    /// <summary>F3 halfway between Fp1 and C3, as some instructions have it.</summary>
    Column,
}

/// <summary>A site of the 10-20 system.</summary>
/// <param name="Alias">The newer name (T7 for T3) where there is one; "" for none.</param>
/// <param name="Arc">Where it lies: sagittal, coronal, ring or between.</param>
/// <param name="Share">Share of that arc from its start (nasion, left preauricular point, Fpz going left); 0 for a site between.</param>
public sealed record Site(string Name, string Alias, SiteArc Arc, double Share);

/// <summary>The measured line that a site lies on.</summary>
public enum SiteArc
{
    /// <summary>Nasion to inion over the vertex.</summary>
    Sagittal,

    /// <summary>Left to right preauricular point over the vertex.</summary>
    Coronal,

    /// <summary>Around the head through Fpz, T3, Oz and T4.</summary>
    Ring,

    /// <summary>Halfway between two pairs of sites.</summary>
    Between,
}

/// <summary>A point on the unit sphere: x to the right ear, y to the nose, z to the vertex.</summary>
public readonly record struct SpherePoint(double X, double Y, double Z)
{
    /// <summary>Angle from the vertex [degrees].</summary>
    public double Inclination => Math.Atan2(Math.Sqrt((X * X) + (Y * Y)), Z) * 180 / Math.PI;

    /// <summary>Angle around the vertex from the right ear, positive towards the nose [degrees, 0 to below 360].</summary>
    public double Azimuth
    {
        get
        {
            double degrees = Math.Sqrt((X * X) + (Y * Y)) < 1e-12 ? 0 : Math.Atan2(Y, X) * 180 / Math.PI;
            return degrees < -1e-9 ? degrees + 360 : Math.Abs(degrees);
        }
    }

    /// <summary>Place on the flat head map: the distance from the middle is the inclination over 90°.</summary>
    public (double X, double Y) Flat => (Inclination / 90 * Math.Cos(Azimuth * Math.PI / 180), Inclination / 90 * Math.Sin(Azimuth * Math.PI / 180));

    /// <summary>Angle to another point along the great circle [radians].</summary>
    public double AngleTo(SpherePoint other)
    {
        (double x, double y, double z) = ((Y * other.Z) - (Z * other.Y), (Z * other.X) - (X * other.Z), (X * other.Y) - (Y * other.X));
        return Math.Atan2(Math.Sqrt((x * x) + (y * y) + (z * z)), (X * other.X) + (Y * other.Y) + (Z * other.Z));
    }

    internal static SpherePoint At(double inclination, double azimuth)
    {
        (double i, double a) = (inclination * Math.PI / 180, azimuth * Math.PI / 180);
        return new(Math.Sin(i) * Math.Cos(a), Math.Sin(i) * Math.Sin(a), Math.Cos(i));
    }

    internal static SpherePoint Halfway(SpherePoint a, SpherePoint b)
    {
        (double x, double y, double z) = (a.X + b.X, a.Y + b.Y, a.Z + b.Z);
        double size = Math.Sqrt((x * x) + (y * y) + (z * z));
        return new(x / size, y / size, z / size);
    }
}

/// <summary>Three measures of a head along the skin.</summary>
/// <param name="NasionInion">S: nasion to inion over the vertex.</param>
/// <param name="Preauricular">K: preauricular point to preauricular point over the vertex.</param>
/// <param name="Circumference">U: around the head through Fpz, T3, Oz and T4.</param>
public sealed record HeadSize(Length NasionInion, Length Preauricular, Length Circumference);

/// <summary>The sites of the 10-20 system: where they are measured, where they lie on a sphere, what a montage compares.</summary>
/// <remarks>
/// Sagittal and coronal arcs in steps of 10, 20, 20, 20, 20, 10 %; the ring in steps of 10 %, beginning half a step beside Fpz.
/// F3, F4, P3 and P4 have two rules in use, <see cref="SiteRule"/>; in practice both marks are drawn and the crossing is used (common practice, no source).
/// On the sphere 10 % of a half-arc is 18°, so the ring lies 72° from the vertex.
/// <para>Source: roth-10-20 for the fractions of the arcs; names T7, T8, P7, P8 from memory. Sphere and distances: derived.</para>
/// </remarks>
public static class Sites
{
    public static IReadOnlyList<Site> All { get; } =
    [
        new("Fp1", "", SiteArc.Ring, 0.05), new("Fpz", "", SiteArc.Sagittal, 0.1), new("Fp2", "", SiteArc.Ring, 0.95),
        new("F7", "", SiteArc.Ring, 0.15), new("F3", "", SiteArc.Between, 0), new("Fz", "", SiteArc.Sagittal, 0.3), new("F4", "", SiteArc.Between, 0), new("F8", "", SiteArc.Ring, 0.85),
        new("T3", "T7", SiteArc.Coronal, 0.1), new("C3", "", SiteArc.Coronal, 0.3), new("Cz", "", SiteArc.Sagittal, 0.5), new("C4", "", SiteArc.Coronal, 0.7), new("T4", "T8", SiteArc.Coronal, 0.9),
        new("T5", "P7", SiteArc.Ring, 0.35), new("P3", "", SiteArc.Between, 0), new("Pz", "", SiteArc.Sagittal, 0.7), new("P4", "", SiteArc.Between, 0), new("T6", "P8", SiteArc.Ring, 0.65),
        new("O1", "", SiteArc.Ring, 0.45), new("Oz", "", SiteArc.Sagittal, 0.9), new("O2", "", SiteArc.Ring, 0.55),
    ];

    /// <summary>Montages by name: the pairs that each compares, first minus second.</summary>
    public static IReadOnlyDictionary<string, string> Montages { get; } = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase)
    {
        ["chains"] = "Fp1 F7 T3 T5 O1; Fp1 F3 C3 P3 O1; Fz Cz Pz; Fp2 F4 C4 P4 O2; Fp2 F8 T4 T6 O2",
        ["rows"] = "F7 F3 Fz F4 F8; T3 C3 Cz C4 T4; T5 P3 Pz P4 T6",
    };

    /// <summary>A site by name or alias, in any case; null for none.</summary>
    public static Site? Find(string name) =>
        All.FirstOrDefault(site => string.Equals(site.Name, name, StringComparison.OrdinalIgnoreCase) || (site.Alias.Length > 0 && string.Equals(site.Alias, name, StringComparison.OrdinalIgnoreCase)));

    /// <summary>Distance from the start of the site's own arc, along the skin; null for a site between.</summary>
    public static Length? AlongArc(Site site, HeadSize head) => site.Arc switch
    {
        SiteArc.Sagittal => Length.FromMetres(site.Share * head.NasionInion.Metres),
        SiteArc.Coronal => Length.FromMetres(site.Share * head.Preauricular.Metres),
        SiteArc.Ring => Length.FromMetres(site.Share * head.Circumference.Metres),
        SiteArc.Between => null,
        _ => throw new ArgumentOutOfRangeException(nameof(site), site.Arc, "Arc is not handled."),
    };

    /// <summary>Where the ring meets a site of the two arcs (T3 and T4), so that both marks can be compared; null for the others.</summary>
    public static Length? AlongRing(Site site, HeadSize head) => site.Name switch
    {
        "T3" => Length.FromMetres(0.25 * head.Circumference.Metres),
        "T4" => Length.FromMetres(0.75 * head.Circumference.Metres),
        "Oz" => Length.FromMetres(0.5 * head.Circumference.Metres),
        _ => site.Arc == SiteArc.Ring ? AlongArc(site, head) : null,
    };

    /// <summary>The site on the unit sphere.</summary>
    public static SpherePoint OnSphere(Site site, SiteRule rule = SiteRule.Row) => site.Arc switch
    {
        SiteArc.Sagittal => site.Share <= 0.5 ? SpherePoint.At((0.5 - site.Share) * 180, 90) : SpherePoint.At((site.Share - 0.5) * 180, 270),
        SiteArc.Coronal => site.Share <= 0.5 ? SpherePoint.At((0.5 - site.Share) * 180, 180) : SpherePoint.At((site.Share - 0.5) * 180, 0),
        SiteArc.Ring => SpherePoint.At(72, 90 + (360 * site.Share)),
        SiteArc.Between => Between(site, rule),
        _ => throw new ArgumentOutOfRangeException(nameof(site), site.Arc, "Arc is not handled."),
    };

    /// <summary>Distance of two sites along the skin by the sphere model: a sphere whose ring, 72° from the vertex, is as long as the head's circumference.</summary>
    /// <remarks>Heads are no spheres: some per cent off (an estimate, no source). R = U/(2π·sin 72°). Source: derived.</remarks>
    public static Length Distance(Site first, Site second, HeadSize head, SiteRule rule = SiteRule.Row) =>
        Length.FromMetres(head.Circumference.Metres / (2 * Math.PI * Math.Sin(72 * Math.PI / 180)) * OnSphere(first, rule).AngleTo(OnSphere(second, rule)));

    /// <summary>The pairs of a montage; empty for an unknown name or chain.</summary>
    /// <param name="montage">A name of <see cref="Montages"/>, or chains written out: sites with blanks or commas, chains with semicolons.</param>
    /// <param name="unknown">The first word that is no site; null where all are.</param>
    public static IReadOnlyList<(Site First, Site Second)> Pairs(string montage, out string? unknown)
    {
        List<(Site, Site)> pairs = [];
        unknown = null;
        string chains = Montages.TryGetValue(montage.Trim(), out string? known) ? known : montage;
        foreach (string chain in chains.Split(';', StringSplitOptions.RemoveEmptyEntries))
        {
            Site? last = null;
            foreach (string word in chain.Split([' ', ',', '-', '–'], StringSplitOptions.RemoveEmptyEntries))
            {
                if (Find(word) is not { } site)
                {
                    unknown ??= word;
                    continue;
                }

                if (last is not null && last != site)
                {
                    pairs.Add((last, site));
                }

                last = site;
            }
        }

        return unknown is null ? pairs : [];
    }

    private static SpherePoint Between(Site site, SiteRule rule)
    {
        (string row, string otherRow, string column, string otherColumn) = site.Name switch
        {
            "F3" => ("Fz", "F7", "Fp1", "C3"),
            "F4" => ("Fz", "F8", "Fp2", "C4"),
            "P3" => ("Pz", "T5", "O1", "C3"),
            "P4" => ("Pz", "T6", "O2", "C4"),
            _ => throw new ArgumentOutOfRangeException(nameof(site), site.Name, "Site is not between others."),
        };
        (string a, string b) = rule == SiteRule.Row ? (row, otherRow) : (column, otherColumn);
        return SpherePoint.Halfway(OnSphere(Find(a)!), OnSphere(Find(b)!));
    }
}
