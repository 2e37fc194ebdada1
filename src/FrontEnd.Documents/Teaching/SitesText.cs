using FrontEnd.Documents.Sheets;
using FrontEnd.Quantities;
using FrontEnd.Teaching;

namespace FrontEnd.Documents.Teaching;

/// <summary>Sites, distances and a montage as text of 80 columns.</summary>
public static class SitesText
{
    public static string Of(HeadSize head, SiteRule rule, SiteSet set, (Site First, Site Second)? distance, IReadOnlyList<(Site First, Site Second)> pairs)
    {
        TextPage page = new();
        if (distance is { } two)
        {
            Apart(page, two.First, two.Second, head, rule);
        }

        if (pairs.Count > 0)
        {
            page.Line("pairs, first minus second, and how far apart by the sphere model");
            page.Table(
                [new("pair", true), new("over the skin"), new("straight")],
                [.. pairs.Select(pair => new Row([$"{pair.First.Name}-{pair.Second.Name}", Cm(Sites.Distance(pair.First, pair.Second, head, rule)), Cm(Sites.Straight(pair.First, pair.Second, head, rule))]))]);
            page.Blank();
        }

        Arc(page, "nasion to inion", head.NasionInion, SiteArc.Sagittal, head, set);
        Arc(page, "left to right preauricular point", head.Preauricular, SiteArc.Coronal, head, set);
        Arc(page, "ring, from Fpz going left", head.Circumference, SiteArc.Ring, head, set);
        page.Blank();
        Rules(page, head, rule);
        if (set == SiteSet.TenTen)
        {
            page.Paragraph("The sites with 1, 2, 5 and 6, the AF and PO sites with 3 and 4 and the rows FC and CP lie on quarters or halves of the way from their midline site to their site on the ring; the C row lies on the coronal arc itself. Those with 9 and 10 lie below the ring, at the height of nasion, ear and inion.");
        }

        page.Paragraph("A1 and A2 are the ear lobes, M1 and M2 the mastoids behind them: no arc leads there, so no distance is given. T3, T4, T5, T6 are also called T7, T8, P7, P8. The fractions of the arcs are those of the public article on the 10-20 system; the 10-10 rows and names are from memory.");
        page.Paragraph("Sphere model: a sphere of the mean radius that the three measures give. No head is a sphere: what a tape reads along an arc counts.");
        page.Blank();
        return page + HeadMap.Text(rule, set);
    }

    private static void Apart(TextPage page, Site first, Site second, HeadSize head, SiteRule rule)
    {
        page.Line($"{Name(first)} to {Name(second)}");
        if (Sites.AlongSharedArc(first, second, head) is var (arc, along))
        {
            page.Line($"  along the {ArcName(arc)}, as a tape reads it   {Cm(along)}");
        }

        if (Sites.Distance(first, second, head, rule) is { } over)
        {
            page.Line($"  over the skin, sphere model   {Cm(over)}");
            page.Line($"  straight, as a caliper reads it, sphere model   {Cm(Sites.Straight(first, second, head, rule))}");
        }
        else
        {
            page.Line("  no arc leads to an ear lobe or mastoid: measure it on the wearer");
        }

        page.Blank();
    }

    private static void Rules(TextPage page, HeadSize head, SiteRule rule)
    {
        const string row = "halfway between Fz and F7, Fz and F8, Pz and T5, Pz and T6 (from memory)", column = "halfway between Fp1 and C3, Fp2 and C4, O1 and C3, O2 and C4";
        (string used, string other) = rule == SiteRule.Row ? (row, column) : (column, row);
        page.Paragraph($"F3, F4, P3, P4 have two rules. Used here: {used}. The other: {other}; its F3 is {Cm(Sites.RulesApart(head))} away. In practice both marks are drawn and the crossing is used.");
        page.Paragraph($"So F3 is {Cm(Sites.Distance(Sites.Find("F3")!, Sites.Find("Fz")!, head, rule))} from Fz.");
    }

    private static void Arc(TextPage page, string name, Length length, SiteArc arc, HeadSize head, SiteSet set)
    {
        page.Line($"{name}, {Cm(length)}");
        string[] marks = [.. Sites.Of(set).Select(site => (Site: site, At: Sites.Along(site, arc, head))).Where(one => one.At is not null).OrderBy(one => one.At!.Value.Metres).Select(one => $"{Name(one.Site)} {Cm(one.At)}")];

        // Four marks to a line, each in a field of its own.
        foreach (string[] line in marks.Chunk(4))
        {
            page.Line("  " + string.Concat(line.Select(mark => mark.PadRight(19))));
        }
    }

    private static string ArcName(SiteArc arc) => arc switch
    {
        SiteArc.Sagittal => "nasion-inion arc",
        SiteArc.Coronal => "preauricular arc",
        SiteArc.Ring => "ring",
        _ => throw new ArgumentOutOfRangeException(nameof(arc), arc, "Arc is not measured."),
    };

    private static string Name(Site site) => site.Alias.Length == 0 ? site.Name : $"{site.Name}/{site.Alias}";

    private static string Cm(Length? length) => length is { } known ? FormattableString.Invariant($"{known.Centimetres:0.00} cm") : "none";
}
