using System.CommandLine;
using FrontEnd.Documents;
using FrontEnd.Documents.Teaching;
using FrontEnd.Quantities;
using FrontEnd.Teaching;
using FrontEnd.Text;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend sites</c>: where the sites of the 10-20 system lie on one head.</summary>
internal static class SitesCommand
{
    public static Command Make(Outlet outlet)
    {
        Option<string> sagittal = new("--nasion-inion") { Description = "nasion to inion over the vertex, along the skin; default: 36 cm", HelpName = "length", DefaultValueFactory = _ => "36 cm" };
        Option<string> coronal = new("--preauricular") { Description = "preauricular point to preauricular point over the vertex; default: 37 cm", HelpName = "length", DefaultValueFactory = _ => "37 cm" };
        Option<string> ring = new("--circumference") { Description = "around the head through Fpz, T3, Oz and T4; default: 56 cm", HelpName = "length", DefaultValueFactory = _ => "56 cm" };
        Option<string?> from = new("--from") { Description = "site to measure a distance from", HelpName = "site" };
        Option<string?> to = new("--to") { Description = "site to measure a distance to", HelpName = "site" };
        Option<string?> montage = new("--montage") { Description = $"which pairs it compares: {string.Join(", ", Sites.Montages.Keys)}, or chains written out as \"Fp1 F3 C3; Fz Cz\"", HelpName = "montage" };
        Option<bool> column = new("--halfway-fp-c") { Description = "place F3, F4, P3, P4 halfway between Fp and C or O and C; default: halfway between Fz and F7 and so on" };
        Option<bool> rows = new("--ten-ten") { Description = "the 10-10 rows as well; default: the sites of the 10-20 system" };
        Option<string?> svg = new("--svg") { Description = "file for the head map; a file that is there is replaced", HelpName = "file" };
        Command command = new("sites", "Shows where the sites of the 10-20 system are measured on a head, how far apart two of them are, and what a montage compares.") { sagittal, coronal, ring, from, to, montage, rows, column, svg };
        command.SetAction(call => Run(
            [("--nasion-inion", call.GetRequiredValue(sagittal)), ("--preauricular", call.GetRequiredValue(coronal)), ("--circumference", call.GetRequiredValue(ring))],
            call.GetValue(from), call.GetValue(to), call.GetValue(montage), call.GetValue(column) ? SiteRule.Column : SiteRule.Row, call.GetValue(rows) ? SiteSet.TenTen : SiteSet.TenTwenty, call.GetValue(svg), outlet));
        return command;
    }

    private static int Run((string Option, string Text)[] measures, string? from, string? to, string? montage, SiteRule rule, SiteSet set, string? svg, Outlet outlet)
    {
        List<Finding> findings = [];
        Length[] lengths = [.. measures.Select(measure => Read(measure.Option, measure.Text, findings))];
        Site? first = Find(from, findings), second = Find(to, findings);
        string? unknown = null;
        IReadOnlyList<(Site First, Site Second)> pairs = montage is null ? [] : Sites.Pairs(montage, out unknown);
        if (unknown is not null)
        {
            findings.Add(NoSite(unknown));
        }

        if (findings.Count > 0)
        {
            outlet.Tell(findings);
            return ExitCode.Unusable;
        }

        HeadSize head = new(lengths[0], lengths[1], lengths[2]);
        outlet.Results.Write(SitesText.Of(head, rule, set, first is not null && second is not null ? (first, second) : null, pairs));
        if (svg is null)
        {
            return ExitCode.Met;
        }

        if (TextFiles.WriteAtomically(svg, HeadMap.Svg(rule, set, pairs)) is { } problem)
        {
            outlet.Tell(problem);
            return ExitCode.Unusable;
        }

        outlet.Messages.WriteLine($"wrote {svg}");
        return ExitCode.Met;
    }

    private static Length Read(string option, string text, List<Finding> findings)
    {
        if (!QuantityText.TryParse(text, out Length length, out ParseProblem? problem))
        {
            findings.Add(problem!.ToFinding(option, text));
            return default;
        }

        if (length.Metres is < 0.15 or > 0.9)
        {
            findings.Add(Messages.HeadSize(option, QuantityText.FormatPart(length), "15 cm to 90 cm"));
        }

        return length;
    }

    private static Site? Find(string? name, List<Finding> findings)
    {
        Site? site = name is null ? null : Sites.Find(name);
        if (name is not null && site is null)
        {
            findings.Add(NoSite(name));
        }

        return site;
    }

    private static Finding NoSite(string name) => Messages.NoSite(name, Nearest.Of(name, Sites.All.SelectMany(site => new[] { site.Name, site.Alias }).Where(one => one.Length > 0)));
}
