using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Identity;

namespace FrontEnd.Results;

/// <summary>Everything that follows from a design. Views print it; they never calculate.</summary>
public sealed record Assessment
{
    private readonly Dictionary<ResultId, int> _index;
    private readonly Lazy<Curves> _curves;

    public Assessment(Design design, IReadOnlyList<Result> results, IReadOnlyList<Finding> findings, Curves curves)
        : this(design, results, findings, new Lazy<Curves>(curves), IndexOf(results))
    {
    }

    /// <param name="design">The design that was evaluated.</param>
    /// <param name="results">All results.</param>
    /// <param name="findings">What is to be said about it.</param>
    /// <param name="curves">What the plots show.</param>
    /// <param name="index">Where each result stands.</param>
    internal Assessment(Design design, IReadOnlyList<Result> results, IReadOnlyList<Finding> findings, Lazy<Curves> curves,
        Dictionary<ResultId, int> index)
    {
        Design = design;
        Results = results;
        Findings = findings;
        _curves = curves;
        _index = index;
    }

    /// <summary>The design that was evaluated.</summary>
    public Design Design { get; }

    /// <summary>The design with what is not known of it; null where all is. Then the results are intervals, and <see cref="Design"/> stands in
    /// the middle of what is unknown.</summary>
    public PartlyKnownDesign? PartlyKnown { get; init; }

    /// <summary>All results, in the order of the signal's path and the budgets. Ids are unique.</summary>
    public IReadOnlyList<Result> Results { get; }

    /// <summary>A short name for each result, no two alike; see <see cref="Results.ShortNames"/>.</summary>
    public IReadOnlyDictionary<ResultId, string> ShortNames => field ??= FrontEnd.Results.ShortNames.Of(Results);

    /// <summary>What is to be said about the design, errors and warnings.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>What the plots show; worked out when it is first asked for, by whichever thread asks.</summary>
    public Curves Curves => _curves.Value;

    /// <summary>The judged results and those with a requirement that was not set, worst first.</summary>
    public IReadOnlyList<Result> Judged =>
        [.. Results.Where(result => result.Verdict.Requirement is not null).OrderByDescending(result => Rank(result.Verdict.Kind))];

    /// <summary>True where no requirement fails; marginal counts as met, not judged and open do not count. False where there are no figures: nothing is
    /// met then.</summary>
    public bool AllRequirementsMet => HasFigures && Results.All(result => result.Verdict.Kind != VerdictKind.Fail);

    /// <summary>False where the design contradicts itself or its network has no answer: then the headlines are missing, nothing
    /// else is there, and an error says why.</summary>
    public bool HasFigures => Find(ResultIds.Gain.Mid) is { State: not ResultState.Missing };

    /// <summary>The result with this id; throws where the design has none.</summary>
    public Result this[ResultId id] => Results[_index[id]];

    /// <summary>The same by the id as a user writes it.</summary>
    public Result this[string id] => this[new ResultId(id)];

    /// <summary>The result with this id; null where the design has none.</summary>
    public Result? Find(ResultId id) => _index.TryGetValue(id, out int at) ? Results[at] : null;

    /// <summary>The same by the id as a user writes it.</summary>
    public Result? Find(string id) => Find(new ResultId(id));

    /// <summary>The same design's assessment with other results, its findings and curves as they are.</summary>
    internal Assessment With(IReadOnlyList<Result> results) => new(Design, results, Findings, _curves, IndexOf(results));

    private static Dictionary<ResultId, int> IndexOf(IReadOnlyList<Result> results)
    {
        var index = new Dictionary<ResultId, int>(results.Count);
        for (int i = 0; i < results.Count; i++)
        {
            index.Add(results[i].Id, i);
        }

        return index;
    }

    private static int Rank(VerdictKind kind) => kind switch
    {
        VerdictKind.Fail => 4,
        VerdictKind.Marginal => 3,
        VerdictKind.Open => 2,
        VerdictKind.Pass => 1,
        VerdictKind.NotJudged => 0,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Verdict is not handled."),
    };
}
