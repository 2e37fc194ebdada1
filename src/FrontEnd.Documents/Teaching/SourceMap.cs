using System.Net;
using System.Text;
using FrontEnd.Head;
using FrontEnd.Pairs;
using static FrontEnd.Documents.Teaching.HeadMap;

namespace FrontEnd.Documents.Teaching;

/// <summary>The head from above, nose up, with what is asked about: the source, the pairs as lines, and how much the best of the pairs would show of such a source elsewhere.</summary>
internal static class SourceMap
{
    private const string Line = "#0a58a8", Shade = "#e08a00";

    private const double LegendLine = 9;

    /// <summary>Each source's map in letters: the sites of the 10-20 system with what the best of the pairs shows of such a source under them, in per cent of its peak.</summary>
    public static string Text(PairsAnswer answer)
    {
        StringBuilder text = new();
        foreach (SourceTable table in answer.Sources)
        {
            HashSet<Site> measured = [.. table.Rows.SelectMany(row => row.Seen.Channel.Derivation.Weights).Select(one => one.Site)];
            Site? under = SiteWords.Site(table.Patch.Under);
            text.Append(table.SourceSentence).Append('\n');
            text.Append("[ ] the source; * a site of the pairs; number: what the best of them would show of\nsuch a source under that site, in per cent of its peak\n\n");
            Dictionary<Site, Share> seen = table.Sensitivity.ToDictionary(one => one.Site, one => one.Seen);
            IEnumerable<Site> shown = Sites.Of(SiteSet.TenTwenty).Where(site => site.Arc != SiteArc.Ear || measured.Contains(site)).Union(measured);
            text.Append(Letters(shown.Select(site => (Word(site, site == under, measured.Contains(site), seen), Flat(answer.Head, site))))).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>Each source's map as SVG, one below the other, with how much is kept at which distance of the reference.</summary>
    public static string Svg(PairsAnswer answer)
    {
        const double height = 352;
        int count = answer.Sources.Count;
        StringBuilder svg = new();
        svg.Append($"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"-122 -146 400 {N(height * count)}\" width=\"1000\" height=\"{N(2.5 * height * count)}\" font-family=\"Liberation Sans, DejaVu Sans, Arial, sans-serif\" role=\"img\" aria-label=\"Head from above: source, pairs of sites and what they see\">\n");
        svg.Append($"<rect x=\"-122\" y=\"-146\" width=\"400\" height=\"{N(height * count)}\" fill=\"#fff\"/>\n");
        for (int at = 0; at < count; at++)
        {
            svg.Append($"<g transform=\"translate(0 {N(height * at)})\">\n");
            One(svg, answer, answer.Sources[at]);
            svg.Append("</g>\n");
        }

        return svg.Append("</svg>\n").ToString();
    }

    private static void One(StringBuilder svg, PairsAnswer answer, SourceTable table)
    {
        double top = -138;
        foreach (string line in Sheets.TextPage.Wrap(table.SourceSentence, 92))
        {
            svg.Append($"<text x=\"-116\" y=\"{N(top)}\" font-size=\"7.5\" font-weight=\"bold\">{WebUtility.HtmlEncode(line)}</text>\n");
            top += LegendLine;
        }

        svg.Append("<g fill=\"none\" stroke=\"#333\" stroke-width=\"1.2\">\n<circle r=\"100\"/>\n<path d=\"M-12 -99.3 L0 -116 L12 -99.3\"/>\n</g>\n<circle r=\"80\" fill=\"none\" stroke=\"#aaa\" stroke-width=\".6\" stroke-dasharray=\"2 2\"/>\n");
        Discs(svg, answer, table);
        Lines(svg, answer, table);
        Marks(svg, answer, table);
        Chart(svg, table);
        Legend(svg, table);
    }

    /// <summary>A disc at each site of the 10-10 rows: the darker and larger, the more the best of the pairs shows of such a source under it.</summary>
    private static void Discs(StringBuilder svg, PairsAnswer answer, SourceTable table)
    {
        svg.Append($"<g fill=\"{Shade}\">\n");
        foreach ((Site site, Share seen) in table.Sensitivity)
        {
            double share = Math.Min(1, seen.Fraction);
            (double x, double y) = Flat(answer.Head, site);
            svg.Append($"<circle cx=\"{N(100 * x)}\" cy=\"{N(-100 * y)}\" r=\"{N(2 + (8 * Math.Sqrt(share)))}\" fill-opacity=\"{N(0.08 + (0.72 * share))}\"/>\n");
        }

        svg.Append("</g>\n");
    }

    /// <summary>A line for each pair, from what it is compared with to its active site; a share of a reference is dashed.</summary>
    private static void Lines(StringBuilder svg, PairsAnswer answer, SourceTable table)
    {
        svg.Append($"<g stroke=\"{Line}\" fill=\"none\">\n");
        for (int at = 0; at < table.Rows.Count; at++)
        {
            Derivation derivation = table.Rows[at].Seen.Channel.Derivation;
            (double x1, double y1) = Flat(answer.Head, derivation.Active);
            double width = table.Tried is not null && at == 0 ? 2.4 : 1.2;
            foreach (SiteWeight one in derivation.Weights.Where(one => one.Weight < 0))
            {
                (double x2, double y2) = Flat(answer.Head, one.Site);
                string dash = -1 < one.Weight ? " stroke-dasharray=\"3 2\"" : "";
                svg.Append($"<line x1=\"{N(100 * x1)}\" y1=\"{N(-100 * y1)}\" x2=\"{N(100 * x2)}\" y2=\"{N(-100 * y2)}\" stroke-width=\"{N(width)}\"{dash}/>\n");
            }
        }

        svg.Append("</g>\n");
    }

    private static void Marks(StringBuilder svg, PairsAnswer answer, SourceTable table)
    {
        HashSet<Site> measured = [.. table.Rows.SelectMany(row => row.Seen.Channel.Derivation.Weights).Select(one => one.Site)];
        HashSet<Site> active = [.. table.Rows.Select(row => row.Seen.Channel.Derivation.Active)];
        Site? under = SiteWords.Site(table.Patch.Under);
        svg.Append("<g text-anchor=\"middle\">\n");
        foreach (Site site in Sites.Of(SiteSet.TenTwenty).Where(site => site.Arc != SiteArc.Ear).Union(measured).Union(under is null ? [] : [under]))
        {
            (double x, double y) = Flat(answer.Head, site);
            bool isMeasured = measured.Contains(site);
            if (site == under)
            {
                svg.Append($"<circle cx=\"{N(100 * x)}\" cy=\"{N(-100 * y)}\" r=\"11\" fill=\"none\" stroke=\"{Shade}\" stroke-width=\"2\" stroke-dasharray=\"4 2\"/>\n");
            }

            string look = active.Contains(site) ? $"fill=\"{Line}\" stroke=\"{Line}\"" : isMeasured ? $"fill=\"#fff\" stroke=\"{Line}\" stroke-width=\"1.4\"" : "fill=\"none\" stroke=\"#999\" stroke-width=\".6\"";
            string ink = active.Contains(site) ? "#fff" : isMeasured ? "#000" : "#666";
            (double radius, double size) = isMeasured ? (7.4, 6) : (5.6, 4.6);
            svg.Append($"<circle cx=\"{N(100 * x)}\" cy=\"{N(-100 * y)}\" r=\"{N(radius)}\" {look}/><text x=\"{N(100 * x)}\" y=\"{N((-100 * y) + (size * 0.35))}\" font-size=\"{N(size)}\" fill=\"{ink}\">{WebUtility.HtmlEncode(site.Name)}</text>\n");
        }

        svg.Append("</g>\n");
    }

    /// <summary>Kept against the reference's distance, beside the head.</summary>
    private static void Chart(StringBuilder svg, SourceTable table)
    {
        const double left = 146, right = 266, bottom = 40, high = 100;
        if (table.ByDistance.Count == 0)
        {
            return;
        }

        double far = table.ByDistance[^1].Distance.Centimetres, most = Math.Max(1, table.ByDistance.Max(point => point.Kept.Fraction));
        double X(Length distance) => left + ((right - left) * distance.Centimetres / far);
        double Y(double kept) => bottom - (high * kept / most);
        svg.Append($"<g font-size=\"5.5\" fill=\"#333\">\n<text x=\"{N(left)}\" y=\"{N(bottom - high - 22)}\" font-size=\"6\">kept, the patch under the active site,</text>\n<text x=\"{N(left)}\" y=\"{N(bottom - high - 14)}\" font-size=\"6\">the reference so far away over the skin</text>\n");
        svg.Append($"<path d=\"M{N(left)} {N(bottom - high - 4)} V{N(bottom)} H{N(right)}\" fill=\"none\" stroke=\"#333\" stroke-width=\".8\"/>\n");
        foreach (double share in (double[])[0, 0.5, 1])
        {
            svg.Append($"<path d=\"M{N(left)} {N(Y(share))} H{N(right)}\" stroke=\"#ccc\" stroke-width=\".5\"/><text x=\"{N(left - 3)}\" y=\"{N(Y(share) + 2)}\" text-anchor=\"end\">{N(100 * share)} %</text>\n");
        }

        for (double cm = 0; cm <= far; cm += 5)
        {
            svg.Append($"<text x=\"{N(X(Length.FromCentimetres(cm)))}\" y=\"{N(bottom + 8)}\" text-anchor=\"middle\">{N(cm)}{(far < cm + 5 ? " cm" : "")}</text>\n");
        }

        string path = string.Join(" ", table.ByDistance.Select((point, at) => $"{(at == 0 ? "M" : "L")}{N(X(point.Distance))} {N(Y(point.Kept.Fraction))}"));
        svg.Append($"<path d=\"{path}\" fill=\"none\" stroke=\"{Line}\" stroke-width=\"1.4\"/>\n</g>\n");
    }

    private static void Legend(StringBuilder svg, SourceTable table)
    {
        double top = 128;
        svg.Append("<g font-size=\"6.2\" fill=\"#333\">\n");
        foreach (string line in Words(table).SelectMany(words => Sheets.TextPage.Wrap(words, 118)))
        {
            svg.Append($"<text x=\"-116\" y=\"{N(top)}\">{WebUtility.HtmlEncode(line)}</text>\n");
            top += LegendLine;
        }

        svg.Append("</g>\n");
    }

    private static IEnumerable<string> Words(SourceTable table)
    {
        yield return "Dashed ring: the source. Filled: active sites; outlined: what they are compared with; lines: the pairs, dashed where a site counts in part.";
        yield return "Shaded discs: how much the best of these pairs would show of such a source under each site; full at its peak and above.";
        foreach (string[] few in table.Rows.Take(12).Select(row =>
            $"{row.Seen.Channel.Derivation.Name} {(row.Seen.Kept is { } kept ? $"keeps {N(Math.Round(100 * kept.Fraction))} %" : "hardly sees it")}").Chunk(6))
        {
            yield return string.Join(", ", few);
        }

        yield return "A sphere, not a head: shares to a tenth or two.";
    }

    private static string Word(Site site, bool isSource, bool isMeasured, Dictionary<Site, Share> seen)
    {
        string word = (isMeasured ? "*" : "") + site.Name + (seen.TryGetValue(site, out Share share) ? FormattableString.Invariant($" {100 * share.Fraction:0}") : "");
        return isSource ? $"[{word}]" : word;
    }

    private static (double X, double Y) Flat(HeadModel head, Site site) => head.Sphere.Flat(head.Place(site));
}
