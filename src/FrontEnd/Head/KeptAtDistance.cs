namespace FrontEnd.Head;

/// <summary>How much of a patch right under the active site is kept with the reference so far away.</summary>
/// <param name="Distance">From the active site over the skin.</param>
internal readonly record struct KeptAtDistance(Length Distance, Share Kept);
