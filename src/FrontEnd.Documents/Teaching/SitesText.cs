using FrontEnd.Documents.Sheets;
using FrontEnd.Head;
using FrontEnd.Teaching;

namespace FrontEnd.Documents.Teaching;

/// <summary>Sites, distances and a montage as text.</summary>
internal static class SitesText
{
    /// <summary>Columns that a site's mark on an arc takes.</summary>
    private const int Field = 19;

    public static string Of(HeadSites sites, int width = TextPage.Width)
    {
        TextPage page = new(width);
        if (sites.Asked is { } asked)
        {
            Apart(page, asked);
        }

        if (sites.Pairs.Count > 0)
        {
            page.Line("pairs, first minus second, and how far apart by the sphere model");
            page.Table(
                [new("pair", true), new("tape along an arc"), new("over the skin"), new("straight")],
                [.. sites.Pairs.Select(pair => new Row([$"{pair.First.Name}-{pair.Second.Name}", Cm(pair.Along), Model(pair, pair.Over), Model(pair, pair.Straight)]))]);
            page.Blank();
        }

        foreach (MeasuredArc arc in sites.Arcs)
        {
            Arc(page, arc, width);
        }

        page.Blank();
        page.Paragraph($"The sphere of this head has a radius of {Cm(sites.Sphere.Radius)}; the ring lies {Degrees(sites.Sphere.FrontRing)} from the vertex in front and behind, {Degrees(sites.Sphere.SideRing)} at the sides.");
        Rules(page, sites);
        foreach (string note in sites.Notes)
        {
            page.Paragraph(note);
        }

        page.Blank();
        return page + HeadMap.Text(sites, width);
    }

    private static void Apart(TextPage page, SiteDistance asked)
    {
        page.Line($"{Name(asked.First)} to {Name(asked.Second)}");
        if (asked.Arc is { } arc)
        {
            page.Line($"  along the {HeadWords.Of(arc)}, as a tape reads it   {Cm(asked.Along)}");
        }

        page.Line($"  over the skin, sphere model   {Model(asked, asked.Over)}");
        page.Line($"  straight, as a caliper reads it, sphere model   {Model(asked, asked.Straight)}");
        if (asked.IsRough)
        {
            page.Line("  rough (~): no arc leads to an ear lobe or mastoid; measure it on the wearer");
        }

        page.Blank();
    }

    private static void Rules(TextPage page, HeadSites sites)
    {
        const string row = "halfway between Fz and F7, Fz and F8, Pz and T5, Pz and T6 along their row (from memory)",
            column = "halfway between C3 and Fp1 or O1, C4 and Fp2 or O2 along the curve through these three";
        (string used, string other) = sites.Rule == SiteRule.Row ? (row, column) : (column, row);
        page.Paragraph(
            $"F3, F4, P3, P4 have two rules. Used here: {used}. The other: {other}; its F3 is {Two(sites.RulesApart)} away. In practice both marks are drawn and the crossing is used.");
        page.Paragraph($"So F3 is {Two(sites.FromF3ToFz)} from Fz over the skin.");
    }

    private static void Arc(TextPage page, MeasuredArc arc, int width)
    {
        page.Line($"{ArcTitle(arc.Arc)}, {Cm(arc.Length)}");

        // Each mark in a field of its own, four to a line of 80 columns.
        foreach (string[] line in arc.Marks.Select(mark => $"{Name(mark.Site)} {Cm(mark.At)}").Chunk((width - 1) / Field))
        {
            page.Line("  " + string.Concat(line.Select(mark => mark.PadRight(Field))));
        }
    }

    private static string ArcTitle(SiteArc arc) => arc switch
    {
        SiteArc.Sagittal => "nasion to inion",
        SiteArc.Coronal => "left to right preauricular point",
        SiteArc.Ring => "ring, from Fpz going left",
        _ => throw new ArgumentOutOfRangeException(nameof(arc), arc, "Arc is not measured."),
    };

    private static string Name(Site site) => site.Alias.Length == 0 ? site.Name : $"{site.Name}/{site.Alias}";

    /// <summary>Two figures: a head is no sphere.</summary>
    private static string Two(Length length) => QuantityText.FormatNumber(length.Centimetres, 2) + " cm";

    private static string Model(SiteDistance distance, Length length) => (distance.IsRough ? "~" : "") + Two(length);

    private static string Degrees(double radians) => FormattableString.Invariant($"{radians * 180 / Math.PI:0.0}°");

    private static string Cm(Length? length) => length is { } known ? FormattableString.Invariant($"{known.Centimetres:0.00} cm") : "none";
}
