namespace FrontEnd.Designs;

/// <summary>How the recorded channels are made from the electrodes.</summary>
public enum MontageKind
{
    /// <summary>Each site against the reference electrode.</summary>
    Referential,

    /// <summary>Each site against the next, computed from the recorded channels.</summary>
    Bipolar,

    /// <summary>Each site against the mean of all recorded sites, itself included.</summary>
    Average,

    /// <summary>Each site against the mean of the others.</summary>
    MeanOfOthers,
}

/// <summary>Which derived channels are computed from the recorded ones.</summary>
public sealed record Montage
{
    public MontageKind Kind { get; init; } = MontageKind.Referential;

    /// <summary>Names of the recorded sites, one a channel; empty for "1", "2", ….</summary>
    public IReadOnlyList<string> Sites { get; init; } = [];

    public string Reference { get; init; } = "ref";

    /// <summary>True where one buffer stands between the reference electrode and all channels' inputs.</summary>
    public bool ReferenceBuffered { get; init; }
}
