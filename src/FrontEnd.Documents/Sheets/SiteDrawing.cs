using FrontEnd.Documents.Drawing;
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
        Picture picture = new(2 * Middle, 260, "head from above, nose up, with the sites of the device");
        Pen ink = new("#333"), outline = new("#333", 1.2), dashed = ink with { Dash = [2, 1.5] };
        picture.Circle(Middle, Top, Radius, outline);
        picture.Path(new Outline().Move(Middle - 12, Top - 99.3).Line(Middle, Top - 116).Line(Middle + 12, Top - 99.3), outline);
        foreach (Site site in active.Concat(reference))
        {
            (double x, double y) = head.Sphere.Flat(head.Place(site));
            picture.Circle(Middle + (Radius * x), Top - (Radius * y), 10, reference.Contains(site) ? dashed : ink, Fill.White);
            picture.Text(Middle + (Radius * x), Top - (Radius * y) + 3, site.Name, Anchor.Middle, 8.5);
        }

        picture.Text(Middle, 255, "from above, nose up; dashed: the reference", Anchor.Middle, 9);
        return new Block.Drawing("", picture, new Block.Table([new("site", true), new("what it is", true)],
            [.. active.Select(site => new Row([site.Name, "active site"])), .. reference.Select(site => new Row([site.Name, "reference"]))]));
    }
}
