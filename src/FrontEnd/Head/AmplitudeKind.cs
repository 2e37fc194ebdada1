namespace FrontEnd.Head;

/// <summary>What a rhythm's stated amplitude is: the rhythm is taken as a sine.</summary>
public enum AmplitudeKind
{
    /// <summary>From its lowest to its highest point.</summary>
    PeakToPeak,

    /// <summary>Root mean square.</summary>
    Rms,
}
