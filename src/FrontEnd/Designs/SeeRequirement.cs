namespace FrontEnd.Designs;

/// <summary>A source that a channel has to show: signal over background and front-end noise.</summary>
public sealed record SeeRequirement
{
    /// <summary>The patch, by its name.</summary>
    public string Patch { get; init; } = "";

    /// <summary>The channel or derived channel, by its name.</summary>
    public string Channel { get; init; } = "";

    /// <summary>Least signal over noise; null judges nothing.</summary>
    public Decibels? Ratio { get; init; }
}
