namespace FrontEnd.Head;

/// <summary>Shell sets, kinds of amplitude and what a reference does, as files and people write them.</summary>
internal static class HeadWords
{
    /// <summary>Shell sets by their word.</summary>
    public static IReadOnlyDictionary<string, ShellSet> Shells { get; } = new Dictionary<string, ShellSet>(StringComparer.OrdinalIgnoreCase)
    {
        ["four"] = ShellSet.Four, ["means"] = ShellSet.Means, ["three"] = ShellSet.Three, ["stok"] = ShellSet.Stok,
    };

    /// <summary>Kinds of amplitude by their word.</summary>
    public static IReadOnlyDictionary<string, AmplitudeKind> Amplitudes { get; } =
        new Dictionary<string, AmplitudeKind>(StringComparer.OrdinalIgnoreCase) { ["pp"] = AmplitudeKind.PeakToPeak, ["rms"] = AmplitudeKind.Rms };

    /// <summary>An arc as it is called in a sentence.</summary>
    public static string Of(SiteArc arc) => arc switch
    {
        SiteArc.Sagittal => "nasion-inion arc",
        SiteArc.Coronal => "preauricular arc",
        SiteArc.Ring => "ring",
        _ => throw new ArgumentOutOfRangeException(nameof(arc), arc, "Arc is not measured."),
    };

    /// <summary>The word of a shell set.</summary>
    public static string Of(ShellSet set) => Shells.First(pair => pair.Value == set).Key;

    /// <summary>The word of a kind of amplitude.</summary>
    public static string Of(AmplitudeKind kind) => Amplitudes.First(pair => pair.Value == kind).Key;

    /// <summary>What the reference does to the source, in a word or two.</summary>
    public static string Of(ReferencePart part) => part switch
    {
        ReferencePart.Adds => "adds",
        ReferencePart.Quiet => "quiet",
        ReferencePart.TakesPart => "takes part",
        ReferencePart.CancelsMost => "cancels most",
        ReferencePart.TurnsOver => "inverts it",
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, "The part is not handled."),
    };

    /// <summary>The same in a sentence about a rhythm.</summary>
    public static string Sentence(ReferencePart part) => part switch
    {
        ReferencePart.Adds => "the reference sees the source with the opposite sign and adds to it",
        ReferencePart.Quiet => "the reference hardly sees the source",
        ReferencePart.TakesPart => "the reference sees part of the source and subtracts it",
        ReferencePart.CancelsMost => "the reference sees nearly as much as the active site and cancels most",
        ReferencePart.TurnsOver => "the reference sees more than the active site and inverts the rhythm",
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, "The part is not handled."),
    };
}
