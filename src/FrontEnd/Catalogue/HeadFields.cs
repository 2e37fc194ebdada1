using FrontEnd.Designs;
using FrontEnd.Fields;
using FrontEnd.Head;
using static FrontEnd.Fields.FieldRange;
using static FrontEnd.Fields.Make;

namespace FrontEnd.Catalogue;

/// <summary>The fields of the head, of the background and of the sources that are to be seen.</summary>
internal static class HeadFields
{
    public static readonly IReadOnlyList<Field<HeadMeasures>> Head =
    [
        Value("nasion-inion", "nasion_inion", Closed(0.15, 0.9), "36 cm", Practice, "nasion to inion over the vertex, along the skin",
            (HeadMeasures h) => h.NasionInion, (h, v) => h with { NasionInion = v }),
        Value("preauricular", "preauricular", Closed(0.15, 0.9), "37 cm", Practice, "preauricular point to preauricular point over the vertex",
            (HeadMeasures h) => h.Preauricular, (h, v) => h with { Preauricular = v }),
        Value("circumference", "circumference", Closed(0.15, 0.9), "56 cm", Practice, "around the head through Fpz, T7, Oz and T8",
            (HeadMeasures h) => h.Circumference, (h, v) => h with { Circumference = v }),
        Value("ear-lobe-down", "ear_lobe_down", Closed(0, 0.08), "2.5 cm", Practice, "ear lobes below the preauricular points along the skin",
            (HeadMeasures h) => h.EarLobeDown, (h, v) => h with { EarLobeDown = v }),
        Value("mastoid-down", "mastoid_down", Closed(0, 0.08), "1.5 cm", Practice, "mastoids below the preauricular points along the skin",
            (HeadMeasures h) => h.MastoidDown, (h, v) => h with { MastoidDown = v }),
        Value("mastoid-back", "mastoid_back", Closed(0, 0.08), "3.5 cm", Practice, "mastoids behind the preauricular points along the skin",
            (HeadMeasures h) => h.MastoidBack, (h, v) => h with { MastoidBack = v }),
        Word("shells", "shells", "four", "radii from memory of Nunez and Srinivasan 2006; fluid of Baumann et al. 1997 (abstract)",
            "radii and conductivities of brain, fluid, skull and scalp", [.. HeadWords.Shells.Select(pair => new ChoiceWord(pair.Key, pair.Value))],
            (HeadMeasures h) => h.Shells, (h, v) => h with { Shells = v }),
        Maybe("skull-ratio", "skull_ratio", Closed(HeadMeasures.LeastSkullRatio, HeadMeasures.GreatestSkullRatio), "auto", "the set's own, 20 for four",
            "15: Oostendorp et al. 2000, 18.7: Zhang et al. 2006 (abstracts); 80 in older work", "conductivity of the brain over that of the skull",
            (HeadMeasures h) => h.SkullRatio, (h, v) => h with { SkullRatio = v }),
    ];

    public static readonly IReadOnlyList<Field<BackgroundActivity>> Background =
    [
        Value("density", "density", Above(0, 1e-6), "1 µV²/Hz", Memory, "power density of the background at 10 Hz at one site, without a rhythm's peak",
            (BackgroundActivity b) => b.Density, (b, v) => b with { Density = v }),
        Value("slope", "slope", Closed(0, 4), "1.5", "1 to 2 is usual; " + Memory, "χ of the background's density, which falls as f^-χ",
            (BackgroundActivity b) => b.Slope, (b, v) => b with { Slope = v }),
        Value("patch-area", "patch_area", Above(0, 0.02), "6 cm²", Practice, "area of cortex that acts together in the background",
            (BackgroundActivity b) => b.PatchArea, (b, v) => b with { PatchArea = v }),
    ];

    public static readonly IReadOnlyList<Field<CortexPatch>> Patch =
    [
        Wording("name", "", "name of the source; results are named after it", (CortexPatch p) => p.Name, (p, v) => p with { Name = v }),
        Wording(SourceCheck.UnderKey, "", "the site that it lies under, such as O1", (CortexPatch p) => p.Under, (p, v) => p with { Under = v }),
        Value(SourceCheck.AreaKey, "area", Above(0, 0.2), "6 cm²", "6 cm² show on the scalp: from memory of Cooper 1965", "area of cortex that acts together",
            (CortexPatch p) => p.Area, (p, v) => p with { Area = v }),
        Wording(SourceCheck.WallTowardsKey, "", "site on the positive side of a sulcus' wall; empty for the crowns of gyri, which point outwards",
            (CortexPatch p) => p.WallTowards, (p, v) => p with { WallTowards = v }),
        Maybe(SourceCheck.AmplitudeKey, "amplitude", Above(0, 0.01), "none", "none", ByDesign,
            "amplitude of the rhythm in stated-in; without it only shares are computed",
            (CortexPatch p) => p.Amplitude, (p, v) => p with { Amplitude = v }),
        Word("amplitude-kind", "amplitude_kind", "pp", Practice, "kind of amplitude: pp from lowest to highest, rms",
            [.. HeadWords.Amplitudes.Select(pair => new ChoiceWord(pair.Key, pair.Value))],
            (CortexPatch p) => p.AmplitudeKind, (p, v) => p with { AmplitudeKind = v }),
        Wording(SourceCheck.StatedInKey, "", "pair in which the amplitude is stated, such as O1-ears; empty for its site against both ears",
            (CortexPatch p) => p.StatedIn, (p, v) => p with { StatedIn = v }),
        Wording(SourceCheck.BandKey, "", "name of the rhythm's band; empty for the design's band", (CortexPatch p) => p.Band, (p, v) => p with { Band = v }),
    ];

    public static readonly IReadOnlyList<Field<SeeRequirement>> See =
    [
        Wording("patch", "", "the source, by its name", (SeeRequirement s) => s.Patch, (s, v) => s with { Patch = v }),
        Wording("channel", "", "the channel or derived channel, such as O1-A1", (SeeRequirement s) => s.Channel, (s, v) => s with { Channel = v }),
        Maybe("ratio", "ratio", Closed(-100, 200), "none", "none", ByDesign, "minimum signal over background and front-end noise; without it nothing is judged",
            (SeeRequirement s) => s.Ratio, (s, v) => s with { Ratio = v }),
    ];
}
