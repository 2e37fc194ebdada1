namespace FrontEnd.Documents.Recordings;

/// <summary>How files of samples are wished for.</summary>
internal sealed record SampleFileWish
{
    /// <summary>True for converter steps, false for volts at the electrodes.</summary>
    public bool InSteps { get; init; }

    /// <summary>Day that a file says it is of; null for one and the same, so that the same samples are the same file.</summary>
    public DateOnly? Day { get; init; }

    /// <summary>Version of the program that writes it.</summary>
    public required string Version { get; init; }
}
