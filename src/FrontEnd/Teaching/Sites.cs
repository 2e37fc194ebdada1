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

/// <summary>Which sites are meant.</summary>
public enum SiteSet
{
    /// <summary>The 10-20 system, with Fpz and Oz, which it constructs only.</summary>
    TenTwenty,

    /// <summary>The 10-10 rows as well.</summary>
    TenTen,
}

/// <summary>A site of the 10-20 system or one of the 10-10 rows.</summary>
/// <param name="Alias">The newer name (T7 for T3) where there is one; "" for none.</param>
/// <param name="Arc">Where it lies.</param>
/// <param name="Share">Share of that arc from its start (nasion, left preauricular point, Fpz going left); between two sites, the way from
/// <paramref name="From"/> to <paramref name="To"/>.</param>
/// <param name="From">For a site between two others, the midline site; "" for none.</param>
/// <param name="To">For a site between two others, the one on the ring; "" for none.</param>
/// <param name="Set">The system that has it first.</param>
public sealed record Site(string Name, string Alias, SiteArc Arc, double Share, string From = "", string To = "",
    SiteSet Set = SiteSet.TenTwenty);

/// <summary>The measured line that a site lies on.</summary>
public enum SiteArc
{
    /// <summary>Nasion to inion over the vertex.</summary>
    Sagittal,

    /// <summary>Left to right preauricular point over the vertex.</summary>
    Coronal,

    /// <summary>Around the head through Fpz, T3, Oz and T4.</summary>
    Ring,

    /// <summary>Below the ring, at the height of nasion, preauricular points and inion.</summary>
    Low,

    /// <summary>Between two sites.</summary>
    Between,

    /// <summary>Ear lobe or mastoid: no arc leads there.</summary>
    Ear,
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
    public (double X, double Y) Flat =>
        (Inclination / 90 * Math.Cos(Azimuth * Math.PI / 180), Inclination / 90 * Math.Sin(Azimuth * Math.PI / 180));

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

    /// <summary>The point at a share of the great circle from one point to another, which must not be opposite.</summary>
    internal static SpherePoint Between(SpherePoint a, SpherePoint b, double share)
    {
        double angle = a.AngleTo(b);
        (double first, double second) = angle < 1e-12
            ? (1, 0)
            : (Math.Sin((1 - share) * angle) / Math.Sin(angle), Math.Sin(share * angle) / Math.Sin(angle));
        return new((first * a.X) + (second * b.X), (first * a.Y) + (second * b.Y), (first * a.Z) + (second * b.Z));
    }
}

/// <summary>Three measures of a head along the skin.</summary>
/// <param name="NasionInion">S: nasion to inion over the vertex.</param>
/// <param name="Preauricular">K: preauricular point to preauricular point over the vertex.</param>
/// <param name="Circumference">U: around the head through Fpz, T3, Oz and T4.</param>
public sealed record HeadSize(Length NasionInion, Length Preauricular, Length Circumference);

/// <summary>The sites of the 10-20 system and of the 10-10 rows: where they are measured, where they lie on a sphere, what a montage
/// compares.</summary>
/// <remarks>
/// Sagittal and coronal arcs in steps of 10, 20, 20, 20, 20, 10 %; the ring in steps of 10 %, beginning half a step beside Fpz. The 10-10
/// rows halve the steps. F3, F4, P3 and P4 have two rules in use, <see cref="SiteRule"/>; in practice both marks are drawn and the crossing
/// is used (common practice, no source). On the sphere 10 % of a half-arc is 18°, so the ring lies 72° from the vertex and the line below
/// it 90°. These rows have 73 sites; oostenveld-praamstra-2001 (abstract) counts 74 in the extended system, and which is the other is not
/// known here.
/// <para>Source: roth-10-20 for the fractions of the arcs; the 10-10 rows, their names and T7, T8, P7, P8 from memory. Sphere and
/// distances: derived.</para>
/// </remarks>
public static class Sites
{
    /// <summary>Every site by rows from nose to inion, each row from left to right; ear lobes and mastoids last.</summary>
    public static IReadOnlyList<Site> All { get; } =
    [
        Ten("Nz", SiteArc.Sagittal, 0),
        new("Fp1", "", SiteArc.Ring, 0.05), new("Fpz", "", SiteArc.Sagittal, 0.1), new("Fp2", "", SiteArc.Ring, 0.95),
        Ten("AF7", SiteArc.Ring, 0.1), Ten("AF3", "AFz", "AF7", 0.5), Ten("AFz", SiteArc.Sagittal, 0.2), Ten("AF4", "AFz", "AF8", 0.5),
        Ten("AF8", SiteArc.Ring, 0.9),
        Ten("F9", SiteArc.Low, 0.15), new("F7", "", SiteArc.Ring, 0.15), Ten("F5", "Fz", "F7", 0.75),
        new("F3", "", SiteArc.Between, 0.5, "Fz", "F7"), Ten("F1", "Fz", "F7", 0.25), new("Fz", "", SiteArc.Sagittal, 0.3),
        Ten("F2", "Fz", "F8", 0.25), new("F4", "", SiteArc.Between, 0.5, "Fz", "F8"), Ten("F6", "Fz", "F8", 0.75),
        new("F8", "", SiteArc.Ring, 0.85), Ten("F10", SiteArc.Low, 0.85),
        .. Row("FT", "FC", 0.4, 0.2),
        Ten("T9", SiteArc.Coronal, 0), new("T3", "T7", SiteArc.Coronal, 0.1), Ten("C5", SiteArc.Coronal, 0.2),
        new("C3", "", SiteArc.Coronal, 0.3), Ten("C1", SiteArc.Coronal, 0.4), new("Cz", "", SiteArc.Sagittal, 0.5),
        Ten("C2", SiteArc.Coronal, 0.6), new("C4", "", SiteArc.Coronal, 0.7), Ten("C6", SiteArc.Coronal, 0.8),
        new("T4", "T8", SiteArc.Coronal, 0.9), Ten("T10", SiteArc.Coronal, 1),
        .. Row("TP", "CP", 0.6, 0.3),
        Ten("P9", SiteArc.Low, 0.35), new("T5", "P7", SiteArc.Ring, 0.35), Ten("P5", "Pz", "T5", 0.75),
        new("P3", "", SiteArc.Between, 0.5, "Pz", "T5"), Ten("P1", "Pz", "T5", 0.25), new("Pz", "", SiteArc.Sagittal, 0.7),
        Ten("P2", "Pz", "T6", 0.25), new("P4", "", SiteArc.Between, 0.5, "Pz", "T6"), Ten("P6", "Pz", "T6", 0.75),
        new("T6", "P8", SiteArc.Ring, 0.65), Ten("P10", SiteArc.Low, 0.65),
        Ten("PO7", SiteArc.Ring, 0.4), Ten("PO3", "POz", "PO7", 0.5), Ten("POz", SiteArc.Sagittal, 0.8), Ten("PO4", "POz", "PO8", 0.5),
        Ten("PO8", SiteArc.Ring, 0.6),
        new("O1", "", SiteArc.Ring, 0.45), new("Oz", "", SiteArc.Sagittal, 0.9), new("O2", "", SiteArc.Ring, 0.55),
        Ten("Iz", SiteArc.Sagittal, 1),
        new("A1", "", SiteArc.Ear, 0), new("A2", "", SiteArc.Ear, 1), new("M1", "", SiteArc.Ear, 0), new("M2", "", SiteArc.Ear, 1),
    ];

    /// <summary>Montages by name: the pairs that each compares, first minus second.</summary>
    /// <remarks>Common practice, no source; against the ears the midline goes to the left one.</remarks>
    public static IReadOnlyDictionary<string, string> Montages { get; } = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase)
    {
        ["chains"] = "Fp1 F7 T3 T5 O1; Fp1 F3 C3 P3 O1; Fz Cz Pz; Fp2 F4 C4 P4 O2; Fp2 F8 T4 T6 O2",
        ["rows"] = "F7 F3 Fz F4 F8; T3 C3 Cz C4 T4; T5 P3 Pz P4 T6",
        ["vertex"] = Against("Cz", "Cz", "Cz"),
        ["ears"] = Against("A1", "A1", "A2"),
        ["mastoids"] = Against("M1", "M1", "M2"),
    };

    /// <summary>The sites of a system, ear lobes and mastoids among them.</summary>
    public static IEnumerable<Site> Of(SiteSet set) => All.Where(site => site.Set <= set);

    /// <summary>A site by name or alias, in any case; null for none.</summary>
    public static Site? Find(string name) =>
        All.FirstOrDefault(site =>
            string.Equals(site.Name, name, StringComparison.OrdinalIgnoreCase)
                || (site.Alias.Length > 0 && string.Equals(site.Alias, name, StringComparison.OrdinalIgnoreCase)));

    /// <summary>Distance from the start of a measured arc, along the skin; null where the site does not lie on it.</summary>
    public static Length? Along(Site site, SiteArc arc, HeadSize head) =>
        ShareOf(site, arc) is { } share ? Length.FromMetres(share * Measured(arc, head).Metres) : null;

    /// <summary>The site on the unit sphere. Ear lobes and mastoids are put where the map shows them, no more.</summary>
    public static SpherePoint OnSphere(Site site, SiteRule rule = SiteRule.Row) => site.Arc switch
    {
        SiteArc.Sagittal => site.Share <= 0.5
            ? SpherePoint.At((0.5 - site.Share) * 180, 90)
            : SpherePoint.At((site.Share - 0.5) * 180, 270),
        SiteArc.Coronal => site.Share <= 0.5 ? SpherePoint.At((0.5 - site.Share) * 180, 180) : SpherePoint.At((site.Share - 0.5) * 180, 0),
        SiteArc.Ring => SpherePoint.At(RingInclination, 90 + (360 * site.Share)),
        SiteArc.Low => SpherePoint.At(90, 90 + (360 * site.Share)),
        SiteArc.Between when rule == SiteRule.Column && Column(site.Name) is var (front, back) =>
            SpherePoint.Between(OnSphere(Find(front)!), OnSphere(Find(back)!), 0.5),
        SiteArc.Between => SpherePoint.Between(OnSphere(Find(site.From)!), OnSphere(Find(site.To)!), site.Share),
        SiteArc.Ear => site.Name[0] == 'A' ? SpherePoint.At(99, 180 * (1 - site.Share)) : SpherePoint.At(102, site.Share == 0 ? 193 : 347),
        _ => throw new ArgumentOutOfRangeException(nameof(site), site.Arc, "Arc is not handled."),
    };

    /// <summary>Distance of two sites over the skin by the sphere model: a sphere of the mean radius that the three measures give. Null for
    /// an ear lobe or mastoid.</summary>
    /// <remarks>Heads are no spheres: some per cent off (an estimate, no source). R = U/(2π·sin 72°). Source: derived.</remarks>
    public static Length? Distance(Site first, Site second, HeadSize head, SiteRule rule = SiteRule.Row) =>
        Angle(first, second, rule) is { } angle ? Length.FromMetres(Radius(head) * angle) : null;

    /// <summary>Distance of two sites straight through the head by the sphere model, 2R·sin(θ/2), as a caliper reads it; null for an ear
    /// lobe or mastoid.</summary>
    public static Length? Straight(Site first, Site second, HeadSize head, SiteRule rule = SiteRule.Row) =>
        Angle(first, second, rule) is { } angle ? Length.FromMetres(2 * Radius(head) * Math.Sin(angle / 2)) : null;

    /// <summary>The measured arc that two sites share and their distance along it, as a tape reads it, the shorter way around the ring;
    /// null where they share none.</summary>
    public static (SiteArc Arc, Length Distance)? AlongSharedArc(Site first, Site second, HeadSize head)
    {
        foreach (SiteArc arc in (ReadOnlySpan<SiteArc>)[SiteArc.Sagittal, SiteArc.Coronal, SiteArc.Ring])
        {
            if (ShareOf(first, arc) is { } a && ShareOf(second, arc) is { } b)
            {
                double share = Math.Abs(a - b);
                return (arc, Length.FromMetres((arc == SiteArc.Ring ? Math.Min(share, 1 - share) : share) * Measured(arc, head).Metres));
            }
        }

        return null;
    }

    /// <summary>How far the two rules for F3 are apart over the skin, by the sphere model.</summary>
    public static Length RulesApart(HeadSize head) =>
        Length.FromMetres(Radius(head) * OnSphere(Find("F3")!).AngleTo(OnSphere(Find("F3")!, SiteRule.Column)));

    /// <summary>The pairs of a montage; empty for an unknown name or chain.</summary>
    /// <param name="montage">A name of <see cref="Montages"/>, or chains written out: sites with blanks or commas, chains with
    /// semicolons.</param>
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

    private const double RingInclination = 72;

    private static Site Ten(string name, SiteArc arc, double share) => new(name, "", arc, share, Set: SiteSet.TenTen);

    private static Site Ten(string name, string from, string to, double share) =>
        new(name, "", SiteArc.Between, share, from, to, SiteSet.TenTen);

    /// <summary>A row of the 10-10 rows that the 10-20 system has no site of.</summary>
    private static Site[] Row(string outer, string inner, double sagittal, double ring) =>
    [
        Ten(outer + "9", SiteArc.Low, ring), Ten(outer + "7", SiteArc.Ring, ring), Ten(inner + "5", inner + "z", outer + "7", 0.75),
        Ten(inner + "3", inner + "z", outer + "7", 0.5), Ten(inner + "1", inner + "z", outer + "7", 0.25),
        Ten(inner + "z", SiteArc.Sagittal, sagittal),
        Ten(inner + "2", inner + "z", outer + "8", 0.25), Ten(inner + "4", inner + "z", outer + "8", 0.5),
        Ten(inner + "6", inner + "z", outer + "8", 0.75), Ten(outer + "8", SiteArc.Ring, 1 - ring),
        Ten(outer + "10", SiteArc.Low, 1 - ring),
    ];

    private static string Against(string middle, string left, string right)
    {
        string[] leftAndMiddle = ["Fp1", "F7", "F3", "T3", "C3", "T5", "P3", "O1", "Fz", "Cz", "Pz"];
        string[] onTheRight = ["Fp2", "F8", "F4", "T4", "C4", "T6", "P4", "O2"];
        return string.Join("; ",
            leftAndMiddle.Select(site =>
                $"{site} {(site[^1] == 'z' ? middle : left)}").Concat(onTheRight.Select(site => $"{site} {right}")));
    }

    /// <summary>The other rule's two sites; null for a site that has one rule only.</summary>
    private static (string Front, string Back)? Column(string name) => name switch
    {
        "F3" => ("Fp1", "C3"),
        "F4" => ("Fp2", "C4"),
        "P3" => ("O1", "C3"),
        "P4" => ("O2", "C4"),
        _ => null,
    };

    private static double? ShareOf(Site site, SiteArc arc) => (site.Name, arc) switch
    {
        _ when site.Arc == arc && (arc is SiteArc.Sagittal or SiteArc.Coronal or SiteArc.Ring) => site.Share,
        ("Cz", SiteArc.Coronal) => 0.5,
        ("Fpz", SiteArc.Ring) => 0,
        ("T3", SiteArc.Ring) => 0.25,
        ("Oz", SiteArc.Ring) => 0.5,
        ("T4", SiteArc.Ring) => 0.75,
        _ => null,
    };

    private static Length Measured(SiteArc arc, HeadSize head) => arc switch
    {
        SiteArc.Sagittal => head.NasionInion,
        SiteArc.Coronal => head.Preauricular,
        SiteArc.Ring => head.Circumference,
        _ => throw new ArgumentOutOfRangeException(nameof(arc), arc, "Arc is not measured."),
    };

    /// <summary>Mean of the radii that each measure gives alone: half a circle for both arcs, a circle at 72° for the ring. No head is a
    /// sphere; a tape along an arc counts.</summary>
    private static double Radius(HeadSize head) =>
        (head.NasionInion.Metres + head.Preauricular.Metres
            + (head.Circumference.Metres / (2 * Math.Sin(RingInclination * Math.PI / 180)))) / (3 * Math.PI);

    private static double? Angle(Site first, Site second, SiteRule rule) =>
        first.Arc == SiteArc.Ear || second.Arc == SiteArc.Ear ? null : OnSphere(first, rule).AngleTo(OnSphere(second, rule));
}
