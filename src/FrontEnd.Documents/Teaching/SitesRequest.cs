using FrontEnd.Head;
using FrontEnd.Teaching;

namespace FrontEnd.Documents.Teaching;

/// <summary>What is asked about the sites on one head, as it was typed.</summary>
internal sealed record SitesRequest
{
    public string NasionInion { get; init; } = "36 cm";

    public string Preauricular { get; init; } = "37 cm";

    public string Circumference { get; init; } = "56 cm";

    /// <summary>A1, A2 below the preauricular points.</summary>
    public string EarLobeDown { get; init; } = "2.5 cm";

    /// <summary>M1, M2 below the preauricular points.</summary>
    public string MastoidDown { get; init; } = "1.5 cm";

    /// <summary>M1, M2 behind the preauricular points.</summary>
    public string MastoidBack { get; init; } = "3.5 cm";

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
            Read("--circumference", Circumference, findings))
        {
            EarLobeDown = ReadShort("--ear-lobe-down", EarLobeDown, findings), MastoidDown = ReadShort("--mastoid-down", MastoidDown, findings),
            MastoidBack = ReadShort("--mastoid-back", MastoidBack, findings),
        };
        Site? first = Find(From, findings), second = Find(To, findings);
        string? unknown = null;
        IReadOnlyList<(Site First, Site Second)> pairs = Montage.Length == 0 ? [] : Sites.Pairs(Montage, out unknown);
        if (unknown is not null)
        {
            findings.Add(NoSite(unknown));
        }

        if (findings.Count == 0 && HeadSphere.Of(head) is { } sphere)
        {
            SiteDistance? asked = first is null || second is null ? null
                : SiteDistance.Of(first, second, sphere, Rule) with { FirstCalled = first.Called(From), SecondCalled = second.Called(To) };
            return (new SitesAnswer(HeadSites.Of(sphere, Rule, Set, asked, pairs)), []);
        }

        if (findings.Count == 0)
        {
            findings.Add(Messages.NotOneHead(Cm(head.Circumference), HeadSphere.Circumferences(head) is var (least, most) ? (Cm(least), Cm(most)) : null));
        }

        return (null, findings);
    }

    private static string Cm(Length length) => FormattableString.Invariant($"{length.Centimetres:0.#} cm");

    private static Length Read(string option, string text, List<Finding> findings) => Read(option, text, 0.15, 0.9, findings);

    private static Length ReadShort(string option, string text, List<Finding> findings) => Read(option, text, 0, 0.08, findings);

    private static Length Read(string option, string text, double least, double most, List<Finding> findings)
    {
        if (!QuantityText.TryParse(text, out Length length, out ParseProblem? problem))
        {
            findings.Add(problem!.ToFinding(option, text));
            return default;
        }

        if (length.Metres < least || most < length.Metres)
        {
            findings.Add(Messages.HeadSize(option, QuantityText.FormatPart(length),
                FormattableString.Invariant($"{100 * least:0.##} cm to {100 * most:0.##} cm")));
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
internal sealed record SitesAnswer(HeadSites Sites)
{
    /// <summary>The page, 80 columns wide; kept, as the screens draw it at each key.</summary>
    public string Text { get; } = SitesText.Of(Sites);

    /// <summary>The page in this many columns.</summary>
    public string TextIn(int width) => width == Sheets.TextPage.Width ? Text : SitesText.Of(Sites, width);
}
