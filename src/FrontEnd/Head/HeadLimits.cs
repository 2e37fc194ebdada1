namespace FrontEnd.Head;

/// <summary>What must be said beside every figure of what sites see.</summary>
internal static class HeadLimits
{
    /// <summary>The sentences, in their order; each stands for itself.</summary>
    public static readonly IReadOnlyList<string> All =
    [
        "A sphere is not a head: no folds, no holes in the skull, no eyes, no neck, even thickness. Shares are good to a tenth or two, microvolts to a factor of two or three: the skull alone, conducting 15 to 80 times worse than the brain, accounts for a factor of 2.7.",
        "The patch is your assumption, not a finding: nothing here works back from a recording to a source, names a function, state or condition of a person, or calls an amplitude normal or not. The figures set the ranges of a circuit.",
        "Where channels are alike, geometry and a shared reference make them so: that is not a connection between places in the brain.",
        "Electrodes are points here: nothing is claimed below their size; a disc of 1 cm averages a little.",
        "Far, which shares are counted from, is the mean over the whole sphere. The background is from memory, without a rhythm's peak; above 20 Hz muscles dominate, which are not included.",
    ];

    /// <summary>The same in a remark on one figure.</summary>
    public const string EarsInShort = "an ear or mastoid reads noisier here than it is";

    /// <summary>Where an ear lobe or mastoid is among the sites.</summary>
    public const string Ears =
        "Ears and mastoids sit on the sphere's underside, where it is least like a head, and the background model surrounds them with cortex: an ear as reference reads noisier here than it is.";
}
