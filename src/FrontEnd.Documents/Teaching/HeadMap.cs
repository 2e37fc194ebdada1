using System.Globalization;
using System.Net;
using System.Text;
using FrontEnd.Head;
using FrontEnd.Teaching;

namespace FrontEnd.Documents.Teaching;

/// <summary>The head seen from above, nose up: as text and as SVG, flattened so that the way from the vertex stays in proportion along every direction.</summary>
internal static class HeadMap
{
    /// <summary>What a page of 80 columns has room for.</summary>
    private const int Columns = 79;
    private const int Rows = 29;

    /// <summary>Half the map's width over the radius of the head's outline: the ears stand beside it.</summary>
    private const double HalfWidth = 1.18;

    /// <summary>In letters, on a page of so many columns.</summary>
    public static string Text(HeadSites sites, int width) => Letters(Sites.Of(sites.Set).Select(site => (site.Name, Flat(sites, site))), Math.Min(Columns, (width - 2) | 1));

    /// <summary>The head with words on it.</summary>
    /// <param name="marks">Words and their places, 1 from the middle being the head's outline.</param>
    /// <param name="columns">An odd number: the middle has a column of its own. The rows stay as many, since the names of two would not fit into one.</param>
    internal static string Letters(IEnumerable<(string Word, (double X, double Y) Flat)> marks, int columns = Columns)
    {
        char[][] page = [.. Enumerable.Range(0, Rows + 1).Select(_ => new string(' ', columns).ToCharArray())];
        for (int step = 0; step < 360; step += 3)
        {
            double angle = step * Math.PI / 180;
            Write(page, Column(Math.Cos(angle), columns), RowOf(Math.Sin(angle)), ".");
        }

        Array.Fill(page[0], ' ');
        Write(page, (columns / 2) - 1, 0, "/\\");
        foreach (var row in marks.GroupBy(one => RowOf(one.Flat.Y)))
        {
            Write(page, row.Key, [.. row.Select(one => (one.Word, Column(one.Flat.X, columns)))]);
        }

        return string.Join("\n", page.Select(row => new string(row).TrimEnd())) + "\n";
    }

    /// <summary>As SVG, with lines for the pairs that a montage compares.</summary>
    public static string Svg(HeadSites sites)
    {
        SiteSet set = sites.Set;
        (Site First, Site Second)[] pairs = [.. sites.Pairs.Select(pair => (pair.First, pair.Second))];
        StringBuilder svg = new();
        svg.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"-125 -126 250 238\" width=\"750\" height=\"714\" font-family=\"Liberation Sans, DejaVu Sans, Arial, sans-serif\" role=\"img\" aria-label=\"Head from above with the sites of the 10-20 system\">\n");
        svg.Append("<rect x=\"-125\" y=\"-126\" width=\"250\" height=\"238\" fill=\"#fff\"/>\n<g fill=\"none\" stroke=\"#333\" stroke-width=\"1.2\">\n<circle r=\"100\"/>\n<path d=\"M-12 -99.3 L0 -116 L12 -99.3\"/>\n</g>\n");
        svg.Append("<g fill=\"none\" stroke=\"#aaa\" stroke-width=\".6\" stroke-dasharray=\"2 2\">\n<circle r=\"80\"/>\n<path d=\"M0 -100 V100 M-100 0 H100\"/>\n</g>\n<g stroke=\"#0a58a8\" stroke-width=\"1.6\">\n");
        foreach ((Site first, Site second) in pairs)
        {
            (double x1, double y1) = Flat(sites, first);
            (double x2, double y2) = Flat(sites, second);
            svg.Append($"<line x1=\"{N(100 * x1)}\" y1=\"{N(-100 * y1)}\" x2=\"{N(100 * x2)}\" y2=\"{N(-100 * y2)}\"/>\n");
        }

        // The 10-10 rows stand half as far apart, so that their marks are smaller; a pair may name a site outside the set.
        IEnumerable<Site> shown = Sites.Of(set).Union(pairs.SelectMany(pair => new[] { pair.First, pair.Second }));
        (double radius, double size) = set == SiteSet.TenTen ? (4.7, 3.7) : (8.6, 7);
        svg.Append("</g>\n<g text-anchor=\"middle\">\n");
        foreach (Site site in shown)
        {
            (double x, double y) = Flat(sites, site);
            string label = site.Alias.Length == 0 || set == SiteSet.TenTen ? site.Name : $"{site.Name}/{site.Alias}";
            string dash = site.Arc == SiteArc.Ear ? " stroke-dasharray=\"2 1.5\"" : "";
            double letters = label.Length > 3 ? size * (set == SiteSet.TenTen ? 0.85 : 0.74) : size;
            svg.Append($"<circle cx=\"{N(100 * x)}\" cy=\"{N(-100 * y)}\" r=\"{N(radius)}\" fill=\"#fff\" stroke=\"#333\"{dash}/><text x=\"{N(100 * x)}\" y=\"{N((-100 * y) + (letters * 0.35))}\" font-size=\"{N(letters)}\">{WebUtility.HtmlEncode(label)}</text>\n");
        }

        return svg.Append("</g>\n</svg>\n").ToString();
    }

    private static (double X, double Y) Flat(HeadSites sites, Site site) => sites.Sphere.Flat(sites.Sphere.Place(site, sites.Rule));

    private static int Column(double x, int columns) => (columns / 2) + (int)Math.Round(x / HalfWidth * (columns / 2));

    private static int RowOf(double y) => 1 + (int)Math.Round((1 - y) / 2 * (Rows - 1));

    /// <summary>The names of one line, from the middle outwards; one that would touch its neighbour gives way to the outside.</summary>
    private static void Write(char[][] page, int row, (string Name, int Column)[] names)
    {
        int middle = page[0].Length / 2;
        int right = middle, left = middle;
        foreach ((string name, int column) in names.OrderBy(one => Math.Abs(one.Column - middle)))
        {
            int start = column - (name.Length / 2);
            if (column == middle)
            {
                (left, right) = (start - 1, start + name.Length + 1);
            }
            else if (middle < column)
            {
                start = Math.Max(start, right);
                right = start + name.Length + 1;
            }
            else
            {
                start = Math.Min(start, left - name.Length);
                left = start - 1;
            }

            Write(page, start, row, name);
        }
    }

    private static void Write(char[][] page, int column, int row, string text)
    {
        column = Math.Clamp(column, 0, page[0].Length - text.Length);
        for (int i = 0; i < text.Length; i++)
        {
            page[Math.Clamp(row, 0, page.Length - 1)][column + i] = text[i];
        }
    }

    /// <summary>A coordinate of a drawing.</summary>
    internal static string N(double value) => (Math.Round(value, 2) + 0.0).ToString("0.##", CultureInfo.InvariantCulture);
}
