namespace FrontEnd.Tests.Plain;

/// <summary>How near two ways of one figure have to be.</summary>
internal static class PlainComparison
{
    /// <summary>Below this there is nothing but rounding.</summary>
    private const double Zero = 1e-15;

    public static double Tolerance(string id) =>
        id.EndsWith("group_delay", StringComparison.Ordinal) || id.StartsWith("latency", StringComparison.Ordinal) ? 1e-3
        : id.EndsWith("settling", StringComparison.Ordinal) || id.EndsWith("recovery", StringComparison.Ordinal) ? 2e-2 : 1e-5;

    /// <param name="id">The figure's.</param>
    /// <param name="expected">A number, or how a word begins.</param>
    /// <param name="actual">What is held against it.</param>
    public static bool Agree(string id, object expected, object actual) => (expected, actual) switch
    {
        (double x, double y) => Math.Abs(x - y) <= Math.Max(Zero, Tolerance(id) * Math.Max(Math.Abs(x), Math.Abs(y))),
        (string x, string y) => y.StartsWith(x, StringComparison.Ordinal),
        _ => false,
    };
}
