using FrontEnd.Reporting;

namespace FrontEnd.Results;

/// <summary>What must be said wherever a design is judged: on screens, in the command's output and on sheets.</summary>
public static class Cautions
{
    /// <summary>The sentences, in their order; each stands for itself.</summary>
    public static IReadOnlyList<string> All => SafetyReport.Cautions;
}
