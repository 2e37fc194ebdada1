using FrontEnd.Documents.Sheets;
using FrontEnd.Quantities;
using FrontEnd.Teaching;

namespace FrontEnd.Documents.Teaching;

/// <summary>Sites, distances and a montage as text of 80 columns.</summary>
public static class SitesText
{
    public static string Of(HeadSites sites)
    {
        TextPage page = new();
        if (sites.Asked is { } asked)
        {
            Apart(page, asked);
        }

        if (sites.Pairs.Count > 0)
        {
            page.Line("pairs, first minus second, and how far apart by the sphere model");
            page.Table(
                [new("pair", true), new("over the skin"), new("straight")],
                [.. sites.Pairs.Select(pair => new Row([$"{pair.First.Name}-{pair.Second.Name}", Cm(pair.Over), Cm(pair.Straight)]))]);
            page.Blank();
        }

        foreach (MeasuredArc arc in sites.Arcs)
        {
            Arc(page, arc);
        }

        page.Blank();
        Rules(page, sites);
        foreach (string note in sites.Notes)
        {
            page.Paragraph(note);
        }

        page.Blank();
        return page + HeadMap.Text(sites.Rule, sites.Set);
    }

    private static void Apart(TextPage page, SiteDistance asked)
    {
        page.Line($"{Name(asked.First)} to {Name(asked.Second)}");
        if (asked.Arc is { } arc)
        {
            page.Line($"  along the {HeadSites.Name(arc)}, as a tape reads it   {Cm(asked.Along)}");
        }

        if (asked.Over is { } over)
        {
            page.Line($"  over the skin, sphere model   {Cm(over)}");
            page.Line($"  straight, as a caliper reads it, sphere model   {Cm(asked.Straight)}");
        }
        else
        {
            page.Line("  no arc leads to an ear lobe or mastoid: measure it on the wearer");
        }

        page.Blank();
    }

    private static void Rules(TextPage page, HeadSites sites)
    {
        const string row = "halfway between Fz and F7, Fz and F8, Pz and T5, Pz and T6 (from memory)",
            column = "halfway between Fp1 and C3, Fp2 and C4, O1 and C3, O2 and C4";
        (string used, string other) = sites.Rule == SiteRule.Row ? (row, column) : (column, row);
        page.Paragraph(
            $"F3, F4, P3, P4 have two rules. Used here: {used}. The other: {other}; its F3 is {Cm(sites.RulesApart)} away. In practice both marks are drawn and the crossing is used.");
        page.Paragraph($"So F3 is {Cm(sites.FromF3ToFz)} from Fz.");
    }

    private static void Arc(TextPage page, MeasuredArc arc)
    {
        page.Line($"{ArcTitle(arc.Arc)}, {Cm(arc.Length)}");

        // Four marks to a line, each in a field of its own.
        foreach (string[] line in arc.Marks.Select(mark => $"{Name(mark.Site)} {Cm(mark.At)}").Chunk(4))
        {
            page.Line("  " + string.Concat(line.Select(mark => mark.PadRight(19))));
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

    private static string Cm(Length? length) => length is { } known ? FormattableString.Invariant($"{known.Centimetres:0.00} cm") : "none";
}
