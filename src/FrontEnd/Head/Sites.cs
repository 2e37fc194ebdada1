namespace FrontEnd.Head;

/// <summary>The sites of the 10-20 system and of the 10-10 rows: where they are measured and what a montage compares. Where they lie on a head:
/// <see cref="HeadSphere"/>.</summary>
/// <remarks>
/// Sagittal and coronal arcs in steps of 10, 20, 20, 20, 20, 10 %; the ring in steps of 10 %, beginning half a step beside Fpz. The 10-10
/// rows halve the steps. F3, F4, P3 and P4 have two rules in use, <see cref="SiteRule"/>; in practice both marks are drawn and the crossing
/// is used (common practice, no source). These rows have 73 sites; oostenveld-praamstra-2001 (abstract) counts 74 in the extended system, and which is the other is not
/// known here.
/// <para>Source: roth-10-20 for the fractions of the arcs; the 10-10 rows, their names and T7, T8, P7, P8 from memory.</para>
/// </remarks>
internal static class Sites
{
    /// <summary>Every site by rows from nose to inion, each row from left to right; ear lobes and mastoids last.</summary>
    public static IReadOnlyList<Site> All { get; } =
    [
        Ten("Nz", SiteArc.Sagittal, 0),
        new("Fp1", "", SiteArc.Ring, 0.05), new("Fpz", "", SiteArc.Sagittal, 0.1), new("Fp2", "", SiteArc.Ring, 0.95),
        Ten("AF7", SiteArc.Ring, 0.1), Ten("AF3", "AFz", "AF7", 0.5), Ten("AFz", SiteArc.Sagittal, 0.2), Ten("AF4", "AFz", "AF8", 0.5),
        Ten("AF8", SiteArc.Ring, 0.9),
        Ten("F9", SiteArc.Low, 0.15), new("F7", "", SiteArc.Ring, 0.15), Ten("F5", "Fz", "F7", 0.75),
        new("F3", "", SiteArc.Contour, 0.5, "Fz", "F7"), Ten("F1", "Fz", "F7", 0.25), new("Fz", "", SiteArc.Sagittal, 0.3),
        Ten("F2", "Fz", "F8", 0.25), new("F4", "", SiteArc.Contour, 0.5, "Fz", "F8"), Ten("F6", "Fz", "F8", 0.75),
        new("F8", "", SiteArc.Ring, 0.85), Ten("F10", SiteArc.Low, 0.85),
        .. Row("FT", "FC", 0.4, 0.2),
        Ten("T9", SiteArc.Coronal, 0), new("T3", "T7", SiteArc.Coronal, 0.1), Ten("C5", SiteArc.Coronal, 0.2),
        new("C3", "", SiteArc.Coronal, 0.3), Ten("C1", SiteArc.Coronal, 0.4), new("Cz", "", SiteArc.Sagittal, 0.5),
        Ten("C2", SiteArc.Coronal, 0.6), new("C4", "", SiteArc.Coronal, 0.7), Ten("C6", SiteArc.Coronal, 0.8),
        new("T4", "T8", SiteArc.Coronal, 0.9), Ten("T10", SiteArc.Coronal, 1),
        .. Row("TP", "CP", 0.6, 0.3),
        Ten("P9", SiteArc.Low, 0.35), new("T5", "P7", SiteArc.Ring, 0.35), Ten("P5", "Pz", "T5", 0.75),
        new("P3", "", SiteArc.Contour, 0.5, "Pz", "T5"), Ten("P1", "Pz", "T5", 0.25), new("Pz", "", SiteArc.Sagittal, 0.7),
        Ten("P2", "Pz", "T6", 0.25), new("P4", "", SiteArc.Contour, 0.5, "Pz", "T6"), Ten("P6", "Pz", "T6", 0.75),
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
        ShareOf(site, arc) is { } share ? Length.FromMetres(share * head.Of(arc).Metres) : null;

    /// <summary>The measured arc that two sites share and their distance along it, as a tape reads it, the shorter way around the ring;
    /// null where they share none.</summary>
    public static (SiteArc Arc, Length Distance)? AlongSharedArc(Site first, Site second, HeadSize head)
    {
        foreach (SiteArc arc in (ReadOnlySpan<SiteArc>)[SiteArc.Sagittal, SiteArc.Coronal, SiteArc.Ring])
        {
            if (ShareOf(first, arc) is { } a && ShareOf(second, arc) is { } b)
            {
                double share = Math.Abs(a - b);
                return (arc, Length.FromMetres((arc == SiteArc.Ring ? Math.Min(share, 1 - share) : share) * head.Of(arc).Metres));
            }
        }

        return null;
    }

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

    private static Site Ten(string name, SiteArc arc, double share) => new(name, "", arc, share, Set: SiteSet.TenTen);

    private static Site Ten(string name, string from, string to, double share) =>
        new(name, "", SiteArc.Contour, share, from, to, SiteSet.TenTen);

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

    /// <summary>The other rule's contour: its middle site, the site halfway to which this one lies, and its other end; null for a site that has
    /// one rule only.</summary>
    internal static (Site Middle, Site End, Site Other)? Column(Site site)
    {
        (string Middle, string End, string Other)? names = site.Name switch
        {
            "F3" => ("C3", "Fp1", "O1"),
            "F4" => ("C4", "Fp2", "O2"),
            "P3" => ("C3", "O1", "Fp1"),
            "P4" => ("C4", "O2", "Fp2"),
            _ => null,
        };
        return names is var (middle, end, other) ? (Find(middle)!, Find(end)!, Find(other)!) : null;
    }

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
}
