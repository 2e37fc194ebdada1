namespace FrontEnd.Text;

/// <summary>Messages of sources, sites and what they show: FE0930 to FE0949.</summary>
public static partial class Messages
{
    public const string NoSitesNamed = "FE0930";
    public const string SourceSiteUnknown = "FE0931";
    public const string DerivationUnknown = "FE0932";
    public const string PatchArea = "FE0933";
    public const string SourceOutsideBrain = "FE0934";
    public const string WallDirection = "FE0935";
    public const string SkullRatioRange = "FE0936";
    public const string RhythmBandUnknown = "FE0937";
    public const string StatedWhereHardlySeen = "FE0938";
    public const string RhythmAmplitude = "FE0939";
    public const string DensityAboveCeiling = "FE0940";
    public const string SeeUnknown = "FE0941";
    public const string SiteNotKnown = "FE0942";
    public const string NoSourceGiven = "FE0943";
    public const string BandNotRecorded = "FE0944";
    public const string OneSite = "FE0945";
    public const string RhythmNotStated = "FE0946";

    internal static Finding NoSites(string design) =>
        new(NoSitesNamed, Severity.Error, DesignKeys.Montage.Sites, $"{design} names no site of the head that is known",
            "which pair of sites sees a source depends on where they are",
            "name them in montage.sites and montage.reference, or give --sites \"O1 O2 Cz A1\"");

    internal static Finding NoSource() =>
        new(NoSourceGiven, Severity.Error, "--under", "no source is given", "nothing here guesses where a rhythm comes from",
            "give --under and a site, such as --under O1, or a design with [[patches]]");

    internal static Finding NoSourceSite(string field, string word, string? nearest) =>
        new(SourceSiteUnknown, Severity.Error, field, word.Length == 0 ? "there is no site that the source lies under" : $"there is no site `{word}`",
            nearest is null ? null : $"the nearest is `{nearest}`", "`frontend sites --ten-ten` lists the sites");

    internal static Finding NoDerivation(string field, string derivation, string unknown, string? nearest) =>
        new(DerivationUnknown, Severity.Error, field, $"`{derivation}` is no pair of sites: `{unknown}` is not known",
            nearest is null ? null : $"the nearest is `{nearest}`", "write a site, a hyphen and a site, `ears`, `mastoids`, `average` or `far`, such as `O1-ears`");

    internal static Finding NoArea(string field, string area, string hemisphere) =>
        new(PatchArea, Severity.Error, field, $"a patch of {area} is no part of this head's cortex",
            $"it is a cap of the sphere 2 mm under the brain's surface, a hemisphere of {hemisphere} at most", $"give an area above 0 cm² and up to {hemisphere}");

    internal static Finding OutsideBrain(string field, string site) =>
        new(SourceOutsideBrain, Severity.Error, field, $"there is no cortex under {site}: the source would lie outside the brain",
            "ear lobes, mastoids and the nasion are no places over the brain; eyes, muscles and the heart are no sources of this model",
            "name a site on the scalp");

    internal static Finding NoWall(string field, string under, string towards) =>
        new(WallDirection, Severity.Error, field, $"a wall under {under} cannot point towards {towards}",
            "both lie on one line through the middle of the head", "name a site beside it");

    internal static Finding NoSkullRatio(string field, double ratio, double least, double greatest) =>
        new(SkullRatioRange, Severity.Error, field, $"a brain that conducts {QuantityText.FormatNumber(ratio, 4)} times as well as the skull is not worked with",
            "15 and 80 are found in print", FormattableString.Invariant($"give a ratio from {least} to {greatest}"));

    internal static Finding NoRhythmBand(string field, string band, string? nearest, IEnumerable<string> known) =>
        new(RhythmBandUnknown, Severity.Error, field, $"there is no band `{band}`", nearest is null ? null : $"the nearest is `{nearest}`",
            $"use one of {string.Join(", ", known)}");

    internal static Finding HardlySeenWhereStated(string field, string derivation) =>
        new(StatedWhereHardlySeen, Severity.Warning, field, $"{derivation} hardly sees this source, and the rhythm is stated there",
            "less than a twentieth of its peak is left in that pair, so a small error of the model becomes a large one of the figures",
            "state the rhythm in a pair that sees it");

    internal static Finding NoAmplitude(string field, string amplitude) =>
        new(RhythmAmplitude, Severity.Error, field, $"{amplitude} is no amplitude of a rhythm", null, "give a voltage above zero, up to 10 mV");

    internal static Finding TooDense(string field, string density) =>
        new(DensityAboveCeiling, Severity.Warning, field, $"such a rhythm needs a density of {density}",
            "cortex has 1 to 2 nA·m/mm² at most (from memory of Murakami and Okada 2015)", "check amplitude, area and where it is stated");

    internal static Finding NotToBeSeen(string field, string what, string word, string? nearest) =>
        new(SeeUnknown, Severity.Error, field, $"there is no {what} `{word}`", nearest is null ? null : $"the nearest is `{nearest}`",
            $"name a {what} of this design");

    internal static Finding NotStated(string field, string patch) =>
        new(RhythmNotStated, Severity.Error, field, $"a ratio is asked of `{patch}`, and how large it is has not been said",
            "nothing here guesses an amplitude", "give the source an amplitude and stated-in, or leave the ratio out");

    internal static Finding UnknownSite(string field, string word, string? nearest) =>
        new(SiteNotKnown, Severity.Warning, field, $"`{word}` is no site of the 10-20 system or the 10-10 rows",
            "where it lies is not known, so nothing is said of what it sees", nearest is null ? "leave it, or name a known site" : $"write `{nearest}` if that is meant");

    internal static Finding OneSiteOnly(string site) =>
        new(OneSite, Severity.Error, "--sites", $"`{site}` alone is no pair", null, "name two sites at least, or a pair such as `O1-ears`");

    internal static Finding NotRecorded(string field, string band) =>
        new(BandNotRecorded, Severity.Warning, field, $"next to nothing of {band} gets through this design's filters",
            "less than a tenth of a signal's amplitude is left", "change the filters, or look at another band");
}
