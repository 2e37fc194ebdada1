using System.Text;
using FrontEnd.Documents.Sheets;
using FrontEnd.Quantities;
using FrontEnd.Teaching;

namespace FrontEnd.Documents.Teaching;

/// <summary>Sites, distances and a montage as text.</summary>
public static class SitesText
{
    public static string Of(HeadSize head, SiteRule rule, (Site First, Site Second)? distance, IReadOnlyList<(Site First, Site Second)> pairs)
    {
        StringBuilder text = new();
        if (distance is { } two)
        {
            text.Append($"{Name(two.First)} to {Name(two.Second)}: {Cm(Sites.Distance(two.First, two.Second, head, rule))} along the skin, by the sphere model\n\n");
        }

        if (pairs.Count > 0)
        {
            text.Append("pairs, first minus second, with their distance by the sphere model\n");
            foreach ((Site first, Site second) in pairs)
            {
                text.Append($"  {first.Name + "-" + second.Name,-9} {Cm(Sites.Distance(first, second, head, rule)),8}\n");
            }

            text.Append('\n');
        }

        Arc(text, "nasion to inion", head.NasionInion, SiteArc.Sagittal, head);
        Arc(text, "left to right preauricular point", head.Preauricular, SiteArc.Coronal, head);
        Arc(text, "ring, from Fpz going left", head.Circumference, SiteArc.Ring, head);
        Length wide = Sites.Distance(Sites.Find("F3")!, Sites.Find("Fz")!, head, rule);
        TextPage notes = new();
        notes.Paragraph(rule == SiteRule.Row
            ? "F3, F4, P3, P4: halfway between Fz and F7, Fz and F8, Pz and T5, Pz and T6 (from memory)"
            : "F3, F4, P3, P4: halfway between Fp1 and C3, Fp2 and C4, O1 and C3, O2 and C4");
        notes.Paragraph($"so F3 is {Cm(wide)} from Fz; the other rule is {Cm(Apart(head))} away. In practice both marks are drawn and the crossing is used", "  ");
        notes.Line("T3, T4, T5, T6 are also called T7, T8, P7, P8");
        notes.Paragraph("sphere model: a sphere whose ring is as long as the circumference; heads are none, so distances are approximate");
        text.Append(notes).Append('\n');
        return text.Append(HeadMap.Text(rule)).ToString();
    }

    /// <summary>How far the two rules for F3 are apart.</summary>
    private static Length Apart(HeadSize head) => Length.FromMetres(
        head.Circumference.Metres / (2 * Math.PI * Math.Sin(72 * Math.PI / 180)) * Sites.OnSphere(Sites.Find("F3")!).AngleTo(Sites.OnSphere(Sites.Find("F3")!, SiteRule.Column)));

    private static void Arc(StringBuilder text, string name, Length length, SiteArc arc, HeadSize head)
    {
        text.Append($"{name}, {Cm(length)}\n");
        IEnumerable<(Site Site, Length At)> sites = Sites.All
            .Select(site => (Site: site, At: arc == SiteArc.Ring ? Sites.AlongRing(site, head) : site.Arc == arc || (arc == SiteArc.Coronal && site.Name == "Cz") ? Along(site, arc, head) : null))
            .Where(one => one.At is not null).Select(one => (one.Site, one.At!.Value)).OrderBy(one => one.Value.Metres);
        foreach ((Site site, Length at) in sites)
        {
            text.Append($"  {Name(site),-6} {Cm(at),8}\n");
        }
    }

    private static Length? Along(Site site, SiteArc arc, HeadSize head) =>
        arc == SiteArc.Coronal && site.Name == "Cz" ? Length.FromMetres(head.Preauricular.Metres / 2) : Sites.AlongArc(site, head);

    private static string Name(Site site) => site.Alias.Length == 0 ? site.Name : $"{site.Name}/{site.Alias}";

    private static string Cm(Length length) => FormattableString.Invariant($"{length.Centimetres:0.00} cm");
}
