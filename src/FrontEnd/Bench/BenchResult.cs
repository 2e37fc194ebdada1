using FrontEnd.Results;

namespace FrontEnd.Bench;

/// <summary>A measured reading against the one that the design should give.</summary>
/// <param name="Reading">The test.</param>
/// <param name="Measured">The reading in the test's own unit.</param>
/// <param name="Verdict">Pass inside the tolerance, fail outside; not judged where nothing is predicted.</param>
/// <param name="Because">One sentence with both numbers.</param>
/// <param name="Spread">Relative standard deviation of the measured reading; 0 where it is not statistical.</param>
/// <param name="Suspects">In order. A pass has some only where chance and the parts do not explain what is inside its tolerances.</param>
internal sealed record BenchResult(BenchReading Reading, IQuantity Measured, VerdictKind Verdict, string Because, double Spread,
    IReadOnlyList<Suspect> Suspects)
{
    /// <summary>Lines found in the recording, largest first.</summary>
    public IReadOnlyList<FoundLine> Lines { get; init; } = [];

    /// <summary>Measured and predicted amplitude density [V/√Hz] against frequency [Hz]; empty where a reading alone was given.</summary>
    public IReadOnlyList<Curve> Spectra { get; init; } = [];

    /// <summary>What was taken from the recording, channel and unit; null for a reading alone.</summary>
    public string? Taken { get; init; }

    /// <summary>Length of the recording; zero for a reading alone.</summary>
    public Duration Length { get; init; }
}
