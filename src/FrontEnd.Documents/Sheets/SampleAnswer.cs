using FrontEnd.Documents.Recordings;
using FrontEnd.Simulation;

namespace FrontEnd.Documents.Sheets;

/// <summary>What <c>samples</c> answers: what the samples hold, and what was written of them.</summary>
/// <param name="First">The design that was asked for.</param>
/// <param name="Beside">Another one beside it; null for none.</param>
/// <param name="Files">Files of samples of the first; empty where none were asked for.</param>
internal sealed record SampleAnswer(SampledDesign First, SampledDesign? Beside, IReadOnlyList<WrittenSamples> Files)
{
    /// <summary>Both, or the one.</summary>
    public IEnumerable<SampledDesign> Designs => new[] { First, Beside }.OfType<SampledDesign>();
}

/// <summary>The simulated samples of one design.</summary>
/// <param name="Run">What was simulated.</param>
/// <param name="Summary">What it holds.</param>
internal sealed record SampledDesign(SampleRun Run, SampleSummary Summary)
{
    /// <summary>What it does not hold, and why.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>What happens in it and is known ahead, by its words.</summary>
    public IReadOnlyList<AlikeEvents> Events => AlikeEvents.Of(Run.Events);

    /// <summary>What was at its limit, by its words; only the first that the summary keeps.</summary>
    public IReadOnlyList<AlikeEvents> Clips => AlikeEvents.Of(Summary.Clips);
}

/// <summary>Events of the same words.</summary>
/// <param name="Text">The words.</param>
/// <param name="Number">How many.</param>
/// <param name="First">When the first begins.</param>
internal sealed record AlikeEvents(string Text, int Number, Duration First)
{
    public static IReadOnlyList<AlikeEvents> Of(IEnumerable<SampleEvent> events) =>
        [.. events.GroupBy(one => one.Text, StringComparer.Ordinal).Select(group => new AlikeEvents(group.Key, group.Count(), group.First().Start))];
}
