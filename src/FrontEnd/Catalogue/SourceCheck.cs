using FrontEnd.Designs;
using FrontEnd.Head;

namespace FrontEnd.Catalogue;

/// <summary>A patch of cortex as it is written: the source that it is on a head, or what is wrong with it.</summary>
internal static class SourceCheck
{
    /// <summary>Greatest amplitude of a rhythm on the scalp that is worked with [V] (common practice, no source).</summary>
    private const double MostVolts = 10e-3;

    /// <summary>Keys of a patch, and the words of the options that say the same of one patch.</summary>
    public const string AmplitudeKey = "amplitude", AreaKey = "area", BandKey = "band", StatedInKey = "stated-in", UnderKey = "under", WallTowardsKey = "wall-towards";

    /// <summary>The question that a patch puts; null where a finding says why there is none.</summary>
    /// <param name="bands">The bands that its rhythm may be in, by name.</param>
    /// <param name="whole">The band of a rhythm that names none.</param>
    /// <param name="average">The sites whose mean <c>average</c> stands for.</param>
    /// <param name="place">Where a word of the patch stands, by its key: <c>patches[1].under</c>.</param>
    public static SourceQuestion? Read(CortexPatch patch, HeadModel head, IReadOnlyList<Band> bands, Band whole,
        IReadOnlyList<Site> average, Func<string, string> place, List<Finding> findings)
    {
        int before = findings.Count;
        CorticalSource? source = Source(patch, head, place, findings);
        Band? band = patch.Band.Length == 0 ? whole : bands.FirstOrDefault(one => SameWord(one.Name, patch.Band));
        if (band is null)
        {
            findings.Add(Messages.NoRhythmBand(place(BandKey), patch.Band, Nearest.Of(patch.Band, bands.Select(one => one.Name)), bands.Select(one => one.Name)));
        }

        RhythmStatement? statement = Statement(patch, average, place, findings);
        return findings.Count > before ? null : new SourceQuestion(patch.Name, source!, statement, band!.Low, band.High)
        {
            BandName = band.Name,
        };
    }

    /// <summary>What is wrong with a brain-to-skull ratio; empty where it is worked with.</summary>
    public static IReadOnlyList<Finding> SkullRatio(double ratio, string field) =>
        HeadMeasures.LeastSkullRatio <= ratio && ratio <= HeadMeasures.GreatestSkullRatio ? []
            : [Messages.NoSkullRatio(field, ratio, HeadMeasures.LeastSkullRatio, HeadMeasures.GreatestSkullRatio)];

    /// <summary>A noise that is none.</summary>
    public static Finding NoNoise(string field, VoltageRms noise) => Messages.NoAmplitude(field, QuantityText.FormatPart(noise));

    /// <summary>Why three measures give no head.</summary>
    public static Finding NotOneHead(HeadMeasures measures)
    {
        static string Cm(Length length) => FormattableString.Invariant($"{length.Centimetres:0.#} cm");
        return Messages.NotOneHead(Cm(measures.Circumference),
            HeadSphere.Circumferences(measures.Size) is var (least, most) ? (Cm(least), Cm(most)) : null) with { Field = DesignKeys.Head.Circumference };
    }

    /// <summary>What is to be said of a source once its figures are there.</summary>
    public static void Warn(SourceView view, Func<string, string> place, List<Finding> findings)
    {
        const double ceiling = 2;
        if (view.StatedWhereHardlySeen)
        {
            findings.Add(Messages.HardlySeenWhereStated(place(StatedInKey), view.Question.Statement!.In.Name));
        }
        else if (view.Density is { } density && ceiling < density.NanoampereMetresPerSquareMillimetre)
        {
            findings.Add(Messages.TooDense(place(AmplitudeKey), QuantityText.Format(density, 2)));
        }
    }

    private static CorticalSource? Source(CortexPatch patch, HeadModel head, Func<string, string> place, List<Finding> findings)
    {
        Site? under = On(patch.Under, place(UnderKey), findings);
        Area hemisphere = head.Conductor.Hemisphere;
        if (patch.Area.SquareMetres <= 0 || hemisphere.SquareMetres < patch.Area.SquareMetres)
        {
            findings.Add(Messages.NoArea(place(AreaKey), QuantityText.FormatPart(patch.Area), QuantityText.Format(hemisphere)));
            under = null;
        }

        if (patch.WallTowards.Length == 0 || under is null)
        {
            return under is null ? null : new GyralPatch(head.Place(under), patch.Area);
        }

        string field = place(WallTowardsKey);
        if (SiteWords.Site(patch.WallTowards) is not { } towards)
        {
            findings.Add(Messages.NoSourceSite(field, patch.WallTowards, SiteWords.NearestSite(patch.WallTowards)));
            return null;
        }

        (SpherePoint centre, SpherePoint there) = (head.Place(under), head.Place(towards));
        const double least = 1e-6;
        if (Math.Sin(centre.AngleTo(there)) < least)
        {
            findings.Add(Messages.NoWall(field, under.Name, towards.Name));
            return null;
        }

        return new SulcalWall(centre, patch.Area, there);
    }

    /// <summary>A site with cortex under it; null where a finding says why not.</summary>
    private static Site? On(string word, string field, List<Finding> findings)
    {
        Site? site = SiteWords.Site(word);
        if (site is null)
        {
            findings.Add(Messages.NoSourceSite(field, word, SiteWords.NearestSite(word)));
        }
        else if (site.Arc == SiteArc.Ear || site is { Arc: SiteArc.Sagittal, Share: 0 })
        {
            findings.Add(Messages.OutsideBrain(field, site.Called(word)));
            return null;
        }

        return site;
    }

    private static RhythmStatement? Statement(CortexPatch patch, IReadOnlyList<Site> average, Func<string, string> place, List<Finding> findings)
    {
        if (patch.Amplitude is null && patch.StatedIn.Length == 0)
        {
            return null;
        }

        // Where the site is unknown, what is written with it is too: one cause, one message.
        string written = patch.EffectiveStatedIn;
        if (Derivation.Parse(written, average, out string? unknown) is not { } derivation)
        {
            if (patch.StatedIn.Length > 0)
            {
                findings.Add(Messages.NoDerivation(place(StatedInKey), written, unknown!, SiteWords.NearestReference(unknown!)));
            }

            return null;
        }

        if (patch.Amplitude is not { } amplitude)
        {
            return null;
        }

        if (amplitude.Volts <= 0 || MostVolts < amplitude.Volts)
        {
            findings.Add(Messages.NoAmplitude(place(AmplitudeKey), QuantityText.FormatPart(amplitude)));
            return null;
        }

        return new RhythmStatement(derivation, amplitude, patch.AmplitudeKind);
    }

    /// <summary>True where two names give the same ids.</summary>
    internal static bool SameWord(string first, string second) => string.Equals(Slug.Of(first), Slug.Of(second), StringComparison.Ordinal);
}
