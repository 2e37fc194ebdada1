using FrontEnd.Head;

namespace FrontEnd.Designs;

/// <summary>A piece of cortex whose rhythm is to be seen: the user's assumption, never something found in a recording.</summary>
public sealed record CortexPatch
{
    /// <summary>What it is called; results carry it.</summary>
    public string Name { get; init; } = "";

    /// <summary>The site that it lies under.</summary>
    public string Under { get; init; } = "";

    /// <summary>How large it is.</summary>
    public Area Area { get; init; } = Area.FromSquareCentimetres(6);

    /// <summary>The site towards which the wall of a sulcus points; "" for the crown of a gyrus, which points outwards.</summary>
    public string WallTowards { get; init; } = "";

    /// <summary>How large the rhythm is where it is stated; null where nobody said, and then shares alone are given.</summary>
    public Voltage? Amplitude { get; init; }

    /// <summary>What that amplitude is.</summary>
    public AmplitudeKind AmplitudeKind { get; init; } = AmplitudeKind.PeakToPeak;

    /// <summary>The derivation that the rhythm is so large in, such as <c>O1-ears</c>; "" for the site that it lies under against both
    /// ears.</summary>
    public string StatedIn { get; init; } = "";

    /// <summary>The band that the rhythm is in, by its name; "" for the design's band.</summary>
    public string Band { get; init; } = "";

    /// <summary>The derivation as it is written, or what stands for it.</summary>
    public string EffectiveStatedIn => StatedIn.Length > 0 ? StatedIn : $"{Under}-{SiteWords.Ears}";
}
