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
            "15: Oostendorp et al. 2000, 18.7: Zhang et al. 2006 (abstracts); 80 in older work", "how many times better the brain conducts than the skull",
            (HeadMeasures h) => h.SkullRatio, (h, v) => h with { SkullRatio = v }),
    ];

    public static readonly IReadOnlyList<Field<BackgroundActivity>> Background =
    [
        Value("density", "density", Above(0, 1e-6), "1 µV²/Hz", Memory, "power density of the background at 10 Hz at one site, without a rhythm's peak",
            (BackgroundActivity b) => b.Density, (b, v) => b with { Density = v }),
        Value("slope", "slope", Closed(0, 4), "1.5", "1 to 2 is usual; " + Memory, "χ of the background's density, which falls as f^-χ",
            (BackgroundActivity b) => b.Slope, (b, v) => b with { Slope = v }),
        Value("patch-area", "patch_area", Above(0, 0.02), "6 cm²", Practice, "how much cortex acts together in the background",
            (BackgroundActivity b) => b.PatchArea, (b, v) => b with { PatchArea = v }),
    ];
}
