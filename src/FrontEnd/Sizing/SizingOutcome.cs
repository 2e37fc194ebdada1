namespace FrontEnd.Sizing;

/// <summary>What a search found.</summary>
/// <param name="Front">Designs of which none is as good as another in noise, current, parts and mains margin at once, differences below
/// half a per cent aside; least noise first. Empty where nothing passes.</param>
/// <param name="Obstacles">What stopped the others, most frequent first; where no design was found, what stops all combinations that were
/// left stands before it.</param>
/// <param name="Candidates">Combinations of the grid.</param>
/// <param name="Evaluated">Those that were evaluated in full; bounds decided on the rest.</param>
/// <param name="Findings">What keeps the search from starting.</param>
internal sealed record SizingOutcome(IReadOnlyList<SizedDesign> Front, IReadOnlyList<Obstacle> Obstacles, int Candidates, int Evaluated,
    IReadOnlyList<Finding> Findings);
