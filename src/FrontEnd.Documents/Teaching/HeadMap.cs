using System.Globalization;
using System.Net;
using System.Text;
using FrontEnd.Teaching;

namespace FrontEnd.Documents.Teaching;

/// <summary>The head seen from above, nose up: as text and as SVG.</summary>
public static class HeadMap
{
    private const int Columns = 61;
    private const int Rows = 25;

    /// <summary>In letters, 61 columns wide.</summary>
    public static string Text(SiteRule rule)
    {
        char[][] page = [.. Enumerable.Range(0, Rows + 1).Select(_ => new string(' ', Columns).ToCharArray())];
        for (int step = 0; step < 360; step += 3)
        {
            double angle = step * Math.PI / 180;
            Put(page, Math.Cos(angle), Math.Sin(angle), ".");
        }

        Array.Fill(page[0], ' ');
        Write(page, (Columns / 2) - 1, 0, "/\\");
        foreach (Site site in Sites.All)
        {
            (double x, double y) = Sites.OnSphere(site, rule).Flat;
            Put(page, x, y, site.Name);
        }

        return string.Join("\n", page.Select(row => new string(row).TrimEnd())) + "\n";
    }

    /// <summary>As SVG, with lines for the pairs that a montage compares.</summary>
    public static string Svg(SiteRule rule, IReadOnlyList<(Site First, Site Second)> pairs)
    {
        StringBuilder svg = new();
        svg.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"-120 -132 240 258\" width=\"720\" height=\"774\" font-family=\"Liberation Sans, DejaVu Sans, Arial, sans-serif\" role=\"img\" aria-label=\"Head from above with the sites of the 10-20 system\">\n");
        svg.Append("<rect x=\"-120\" y=\"-132\" width=\"240\" height=\"258\" fill=\"#fff\"/>\n<g fill=\"none\" stroke=\"#333\" stroke-width=\"1.2\">\n<circle r=\"100\"/>\n<path d=\"M-12 -99.3 L0 -116 L12 -99.3\"/>\n<path d=\"M-100 -12 q-10 -4 -10 12 q0 16 10 12\"/>\n<path d=\"M100 -12 q10 -4 10 12 q0 16 -10 12\"/>\n</g>\n");
        svg.Append("<g fill=\"none\" stroke=\"#aaa\" stroke-width=\".6\" stroke-dasharray=\"2 2\">\n<circle r=\"80\"/>\n<path d=\"M0 -100 V100 M-100 0 H100\"/>\n</g>\n<g stroke=\"#0a58a8\" stroke-width=\"1.6\">\n");
        foreach ((Site first, Site second) in pairs)
        {
            (double x1, double y1) = Sites.OnSphere(first, rule).Flat;
            (double x2, double y2) = Sites.OnSphere(second, rule).Flat;
            svg.Append($"<line x1=\"{N(100 * x1)}\" y1=\"{N(-100 * y1)}\" x2=\"{N(100 * x2)}\" y2=\"{N(-100 * y2)}\"/>\n");
        }

        svg.Append("</g>\n<g font-size=\"7\" text-anchor=\"middle\">\n");
        foreach (Site site in Sites.All)
        {
            (double x, double y) = Sites.OnSphere(site, rule).Flat;
            string label = site.Alias.Length == 0 ? site.Name : $"{site.Name}/{site.Alias}";
            svg.Append($"<circle cx=\"{N(100 * x)}\" cy=\"{N(-100 * y)}\" r=\"8.6\" fill=\"#fff\" stroke=\"#333\"/><text x=\"{N(100 * x)}\" y=\"{N((-100 * y) + 2.4)}\"{(site.Alias.Length == 0 ? "" : " font-size=\"5.2\"")}>{WebUtility.HtmlEncode(label)}</text>\n");
        }

        return svg.Append("</g>\n</svg>\n").ToString();
    }

    private static void Put(char[][] page, double x, double y, string text) =>
        Write(page, (int)Math.Round((x + 1) / 2 * (Columns - 3)) + 1 - (text.Length / 2), 1 + (int)Math.Round((1 - y) / 2 * (Rows - 1)), text);

    private static void Write(char[][] page, int column, int row, string text)
    {
        for (int i = 0; i < text.Length; i++)
        {
            page[Math.Clamp(row, 0, page.Length - 1)][Math.Clamp(column + i, 0, Columns - 1)] = text[i];
        }
    }

    private static string N(double value) => Math.Round(value, 2).ToString("0.##", CultureInfo.InvariantCulture);
}
