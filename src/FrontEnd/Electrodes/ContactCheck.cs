namespace FrontEnd.Electrodes;

/// <summary>A small known alternating current through two electrodes; the voltage tells how good the contact is.</summary>
public sealed record ContactCheck
{
    /// <summary>Peak current.</summary>
    public Current Current { get; init; } = Current.FromNanoamperes(6);

    /// <summary>Frequency of that current [Hz].</summary>
    public Frequency Frequency { get; init; } = Frequency.FromHertz(31.25);

    /// <summary>True where the current stays on while recording.</summary>
    public bool OnWhileRecording { get; init; }
}
