namespace FrontEnd.Text;

/// <summary>Messages of sources, sites and what they show: FE0930 to FE0949.</summary>
internal static partial class Messages
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
        new(NoSitesNamed, Severity.Error, DesignKeys.Montage.Sites, $"{design} names no known site of the head",
            "which pair of sites sees a source depends on where the sites are",
            "name them in montage.sites and montage.reference, such as \"O1, O2, Cz\" and \"A1\"");

    /// <summary>The same for the command that takes sites in place of a design.</summary>
    internal static Finding NoSitesInCommand(Finding noSites) => noSites with { Help = noSites.Help + ", or give --sites \"O1 O2 Cz A1\"" };

    /// <summary>The same on the screens.</summary>
    /// <param name="key">The key that leads to the fields.</param>
    internal static Finding NoSitesOnScreens(Finding noSites, string key) => noSites with { Help = $"name them: Esc, then {key}, shows the fields `sites` and `reference` of the montage" };

    internal static Finding NoSource() =>
        new(NoSourceGiven, Severity.Error, "--under", "no source is given", "the program does not guess where a rhythm comes from",
            "give --under and a site, such as --under O1, or a design with [[patches]]");

    internal static Finding NoSourceSite(string field, string word, string? nearest) =>
        new(SourceSiteUnknown, Severity.Error, field, word.Length == 0 ? "the site above the source is not given" : $"there is no site `{word}`",
            nearest is null ? null : $"the nearest is `{nearest}`", "`frontend sites --ten-ten` lists the sites");

    internal static Finding NoDerivation(string field, string derivation, string unknown, string? nearest) =>
        new(DerivationUnknown, Severity.Error, field, $"`{derivation}` is not a pair of sites: `{unknown}` is not known",
            nearest is null ? null : $"the nearest is `{nearest}`", "write a site, a hyphen and a site, `ears`, `mastoids`, `average` or `far`, such as `O1-ears`");

    internal static Finding NoArea(string field, string area, string hemisphere) =>
        new(PatchArea, Severity.Error, field, $"a patch of {area} does not fit this head's cortex",
            $"a patch is a cap of the sphere 2 mm under the brain's surface: at most a hemisphere, {hemisphere}", $"give an area above 0 cm² and up to {hemisphere}");

    internal static Finding OutsideBrain(string field, string site) =>
        new(SourceOutsideBrain, Severity.Error, field, $"there is no cortex under {site}: the source would lie outside the brain",
            "ear lobes, mastoids and the nasion are not over the brain; eyes, muscles and the heart are not sources in this model",
            "name a site on the scalp");

    internal static Finding NoWall(string field, string under, string towards) =>
        new(WallDirection, Severity.Error, field, $"a wall under {under} cannot point towards {towards}",
            "both lie on a line through the middle of the head", "name a site to one side of it");

    internal static Finding NoSkullRatio(string field, double ratio, double least, double greatest) =>
        new(SkullRatioRange, Severity.Error, field, $"a brain that conducts {QuantityText.FormatNumber(ratio, 4)} times as well as the skull is out of range",
            "published values lie between 15 and 80", FormattableString.Invariant($"give a ratio from {least} to {greatest}"));

    internal static Finding NoRhythmBand(string field, string band, string? nearest, IEnumerable<string> known) =>
        new(RhythmBandUnknown, Severity.Error, field, $"there is no band `{band}`", nearest is null ? null : $"the nearest is `{nearest}`",
            $"use one of {string.Join(", ", known)}");

    internal static Finding HardlySeenWhereStated(string field, string derivation) =>
        new(StatedWhereHardlySeen, Severity.Warning, field, $"the rhythm is stated in {derivation}, which hardly sees this source",
            "less than a twentieth of its peak is left in that pair, so a small error in the model becomes a large one in the figures",
            "state the rhythm in a pair that sees it");

    internal static Finding NoAmplitude(string field, string amplitude) =>
        new(RhythmAmplitude, Severity.Error, field, $"{amplitude} is not an amplitude for a rhythm", null, "give a voltage above zero, up to 10 mV");

    internal static Finding TooDense(string field, string density) =>
        new(DensityAboveCeiling, Severity.Warning, field, $"such a rhythm needs a density of {density}",
            "cortex has 1 to 2 nA·m/mm² at most (from memory of Murakami and Okada 2015)", "check the amplitude, the area and the pair in which it is stated");

    internal static Finding NotToBeSeen(string field, string what, string word, string? nearest) =>
        new(SeeUnknown, Severity.Error, field, $"there is no {what} `{word}`", nearest is null ? null : $"the nearest is `{nearest}`",
            $"name a {what} of this design");

    internal static Finding NotStated(string field, string patch) =>
        new(RhythmNotStated, Severity.Error, field, $"a ratio is required for `{patch}`, but its amplitude is not given",
            "the program does not guess an amplitude", "give the source an amplitude and stated-in, or leave the ratio out");

    internal static Finding UnknownSite(string field, string word, string? nearest) =>
        new(SiteNotKnown, Severity.Warning, field, $"`{word}` is not a site of the 10-20 system or the 10-10 rows",
            "its place is not known, so what it sees cannot be computed", nearest is null ? "leave it, or name a known site" : $"write `{nearest}` if that is intended");

    internal static Finding OneSiteOnly(string site) =>
        new(OneSite, Severity.Error, "--sites", $"`{site}` alone is not a pair", null, "name at least two sites, or a pair such as `O1-ears`");

    internal static Finding NotRecorded(string field, string band) =>
        new(BandNotRecorded, Severity.Warning, field, $"almost nothing of {band} gets through this design's filters",
            "less than a tenth of a signal's amplitude is left", "change the filters, or choose another band");
}
