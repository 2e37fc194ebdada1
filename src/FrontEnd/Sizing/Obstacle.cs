namespace FrontEnd.Sizing;

/// <summary>A requirement that stops designs, and the least relaxation that would let one through.</summary>
/// <param name="Requirement">The key that sets it, such as <c>requirements.noise</c>.</param>
/// <param name="Stopped">How many candidates it stopped.</param>
/// <param name="Text">What is asked and what the best candidate that it stopped reaches.</param>
/// <param name="Relaxation">What to change and to what, where no design was found and relaxing this one requirement lets combinations
/// through that nothing before it stopped; null where some combination meets it, where others fail too, or where it must not be
/// relaxed.</param>
public sealed record Obstacle(string Requirement, int Stopped, string Text, string? Relaxation);
