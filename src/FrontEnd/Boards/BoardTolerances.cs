namespace FrontEnd.Boards;

/// <summary>± of what stands on the board beside the signal's path (common practice, no source).</summary>
internal static class BoardTolerances
{
    public static readonly Ratio Resistors = Ratio.FromPercent(1);

    /// <summary>Of the middle of the supply.</summary>
    public static readonly Ratio Capacitors = Ratio.FromPercent(10);

    /// <summary>Ceramic capacitors for supplies.</summary>
    public static readonly Ratio Decoupling = Ratio.FromPercent(20);
}
