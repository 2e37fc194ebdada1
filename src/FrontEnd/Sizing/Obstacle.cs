namespace FrontEnd.Sizing;

/// <summary>A requirement that stops designs, and the least relaxation that would let one through.</summary>
/// <param name="Requirement">The key that sets it, such as <c>requirements.noise</c>.</param>
/// <param name="Stopped">How many candidates it stopped.</param>
/// <param name="Text">What is asked and what the best candidate that it stopped reaches.</param>
/// <param name="Relaxation">What to change and to what, where no design was found: the least change of this requirement that lets a design
/// through, alone or together with others that it names; null where it need not or must not be relaxed.</param>
internal sealed record Obstacle(string Requirement, int Stopped, string Text, string? Relaxation)
{
    /// <summary>True where it stops some combinations only: a design that was found, or that a relaxation lets through, meets it.</summary>
    public bool IsMetByOthers { get; init; }
}
