using FrontEnd.Head;

namespace FrontEnd.Documents.Sheets;

/// <summary>The head from above, nose up, with the sites of a device.</summary>
internal static class SiteDrawing
{
    private const double Radius = 100, Middle = 130, Top = 135;

    /// <summary>Null where no site is known.</summary>
    public static Block.Drawing? Of(Design design, IReadOnlyList<SiteChannel> channels)
    {
        if (channels.Count == 0 || (design.Head ?? new()).Model is not { } head)
        {
            return null;
        }

        Site[] active = [.. channels.Select(channel => channel.Derivation.Active).Distinct()];
        Site[] reference = [.. channels.SelectMany(channel => channel.Derivation.Weights).Where(weight => weight.Weight < 0).Select(weight => weight.Site).Distinct().Except(active)];
        Svg svg = new(2 * Middle, 260, "head from above, nose up, with the sites of the device");
        svg.Circle(Middle, Top, Radius, "fill=\"none\" stroke=\"#333\" stroke-width=\"1.2\"");
        svg.Path($"M{Svg.N(Middle - 12)} {Svg.N(Top - 99.3)} L{Svg.N(Middle)} {Svg.N(Top - 116)} L{Svg.N(Middle + 12)} {Svg.N(Top - 99.3)}", "fill=\"none\" stroke=\"#333\" stroke-width=\"1.2\"");
        foreach (Site site in active.Concat(reference))
        {
            (double x, double y) = head.Sphere.Flat(head.Place(site));
            string dash = reference.Contains(site) ? " stroke-dasharray=\"2 1.5\"" : "";
            svg.Circle(Middle + (Radius * x), Top - (Radius * y), 10, $"fill=\"#fff\" stroke=\"#333\"{dash}");
            svg.Text(Middle + (Radius * x), Top - (Radius * y) + 3, site.Name, "middle", 8.5);
        }

        svg.Text(Middle, 255, "from above, nose up; dashed: the reference", "middle", 9);
        return new Block.Drawing("", svg.Close(), new Block.Table([new("site", true), new("what it is", true)],
            [.. active.Select(site => new Row([site.Name, "active site"])), .. reference.Select(site => new Row([site.Name, "reference"]))]));
    }
}
