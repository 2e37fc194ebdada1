using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Teaching;
using FrontEnd.Text;

namespace FrontEnd.Documents.Teaching;

/// <summary>What is asked about the sites on one head, as it was typed.</summary>
public sealed record SitesRequest
{
    public string NasionInion { get; init; } = "36 cm";

    public string Preauricular { get; init; } = "37 cm";

    public string Circumference { get; init; } = "56 cm";

    /// <summary>Sites to measure a distance between; empty for none.</summary>
    public string From { get; init; } = "";

    public string To { get; init; } = "";

    /// <summary>A name of <see cref="Sites.Montages"/> or chains written out; empty for none.</summary>
    public string Montage { get; init; } = "";

    public SiteRule Rule { get; init; } = SiteRule.Row;

    public SiteSet Set { get; init; } = SiteSet.TenTwenty;

    /// <summary>The answer, or what is wrong with the question: one of the two is empty.</summary>
    public (SitesAnswer? Answer, IReadOnlyList<Finding> Findings) Work()
    {
        List<Finding> findings = [];
        HeadSize head = new(Read("--nasion-inion", NasionInion, findings), Read("--preauricular", Preauricular, findings),
            Read("--circumference", Circumference, findings));
        Site? first = Find(From, findings), second = Find(To, findings);
        string? unknown = null;
        IReadOnlyList<(Site First, Site Second)> pairs = Montage.Length == 0 ? [] : Sites.Pairs(Montage, out unknown);
        if (unknown is not null)
        {
            findings.Add(NoSite(unknown));
        }

        return findings.Count > 0
            ? (null, findings)
            : (new SitesAnswer(HeadSites.Of(head, Rule, Set, first is not null && second is not null ? (first, second) : null, pairs)), []);
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

    private static Site? Find(string name, List<Finding> findings)
    {
        Site? site = name.Length == 0 ? null : Sites.Find(name);
        if (name.Length > 0 && site is null)
        {
            findings.Add(NoSite(name));
        }

        return site;
    }

    private static Finding NoSite(string name) =>
        Messages.NoSite(name, Nearest.Of(name, Sites.All.SelectMany(site => new[] { site.Name, site.Alias }).Where(one => one.Length > 0)));
}

/// <summary>Sites, distance and montage of one head, and their text.</summary>
public sealed record SitesAnswer(HeadSites Sites)
{
    /// <summary>The page, 80 columns wide; kept, as the screens draw it at each key.</summary>
    public string Text { get; } = SitesText.Of(Sites);
}
