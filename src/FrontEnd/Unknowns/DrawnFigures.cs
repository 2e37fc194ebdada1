using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Reporting;
using FrontEnd.Results;

namespace FrontEnd.Unknowns;

/// <summary>What one design of those that the unknown allows comes to: numbers alone, so that its budgets can be let go.</summary>
internal sealed class DrawnFigures
{
    /// <summary>One figure: its number, infinite for one without bound and not a number for a word or a missing one.</summary>
    /// <param name="Value">The number.</param>
    /// <param name="Word">The word; null for a number.</param>
    /// <param name="Verdict">What is said of it against its own limit.</param>
    /// <param name="Limit">That limit; null for none.</param>
    /// <param name="LimitIsGreatest">True where the figure must not be above it.</param>
    /// <param name="IsAsked">True where the figure is one that this design is judged by, whether a limit is set or not.</param>
    internal readonly record struct Figure(double Value, string? Word, VerdictKind Verdict, IQuantity? Limit, bool LimitIsGreatest, bool IsAsked);

    private readonly Dictionary<ResultId, Figure> _figures;

    private DrawnFigures(Design design, Dictionary<ResultId, Figure> figures, NodeId? worst, IReadOnlyList<Finding> findings) =>
        (Design, _figures, Worst, Findings) = (design, figures, worst, findings);

    /// <summary>The design; its budgets are gone.</summary>
    public Design Design { get; }

    /// <summary>The node that clips first; null where nothing stands at any.</summary>
    public NodeId? Worst { get; }

    /// <summary>What is to be said of this one design.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Every result that it has.</summary>
    public IReadOnlyCollection<ResultId> Ids => _figures.Keys;

    /// <summary>Null where it has no such result.</summary>
    public Figure? Of(ResultId id) => _figures.TryGetValue(id, out Figure figure) ? figure : null;

    /// <summary>Its number; not a number where it has none.</summary>
    public double Number(ResultId id) => _figures.TryGetValue(id, out Figure figure) ? figure.Value : double.NaN;

    /// <summary>Null where the design contradicts itself, so that there is no such device.</summary>
    public static DrawnFigures? Of(Design design, SharedSources? sources)
    {
        Assessment assessment = Evaluator.EvaluateWith(design, sources);
        return assessment.HasFigures
            ? new(design, WorstNode.Apart(assessment.Results).ToDictionary(result => result.Id, From), WorstNode.Of(assessment.Results) is { } worst ? WorstNode.NodeOf(worst) : null,
                assessment.Findings)
            : null;
    }

    private static Figure From(Result result) => new(
        result.State switch
        {
            ResultState.Number => result.Si,
            ResultState.Unbounded => result.IsBelowAll ? double.NegativeInfinity : double.PositiveInfinity,
            _ => double.NaN,
        },
        result.State == ResultState.Word ? result.Text : null, result.Verdict.Kind, result.Verdict.Limit, result.Verdict.LimitIsGreatest, result.Verdict.Requirement is not null);
}
