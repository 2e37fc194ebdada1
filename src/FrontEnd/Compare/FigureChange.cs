using FrontEnd.Identity;
using FrontEnd.Results;

namespace FrontEnd.Compare;

/// <summary>What becomes of one figure between two assessments.</summary>
/// <param name="Kind">How it is to be read.</param>
/// <param name="Before">In the first assessment; null where it has none.</param>
/// <param name="After">In the second; its id is another one where the same requirement is judged on another figure there, such as the
/// headroom of the node that clips first.</param>
internal sealed record FigureChange(ChangeKind Kind, Result? Before, Result? After)
{
    /// <summary>Which figure: the second assessment's, where both differ.</summary>
    public ResultId Id => (After ?? Before)!.Id;

    /// <summary>How far it moved for the worse, or moved at all, as a share of its limit or of its value; decibels and bits as the ratios
    /// they stand for. Orders changes of one kind.</summary>
    internal double Size { get; init; }
}

/// <summary>How a change of a figure is to be read, worst first.</summary>
internal enum ChangeKind
{
    /// <summary>Its verdict is a fail, and was none.</summary>
    NewlyFails,

    /// <summary>It failed, and fails by more.</summary>
    FailsByMore,

    /// <summary>Its verdict is a worse word than before, or it is no longer judged.</summary>
    WorseVerdict,

    /// <summary>It moved towards its limit or further beyond it, with the same word.</summary>
    Worse,

    /// <summary>The limit that it is held against is another one; the figure is not worse.</summary>
    OtherLimit,

    /// <summary>It is judged on a limit that is not set, or newly judged and met: neither better nor worse.</summary>
    Moved,

    /// <summary>It moved away from its limit, or its verdict is a better word.</summary>
    Better,

    /// <summary>No limit stands against it, and it moved by more than a tenth, appeared or went.</summary>
    Unjudged,
}

/// <summary>Two assessments of designs held against each other, figure by figure.</summary>
internal static class FigureChanges
{
    /// <summary>Share of a judged figure below which it stands where it stood: what integrals leave open.</summary>
    public const double SameShare = 1e-6;

    /// <summary>Share by which a figure that is not judged must move to be told.</summary>
    public const double ToldShare = 0.1;

    /// <summary>Below this two sizes are both nothing: rounding in a network of volts [SI].</summary>
    private const double Nothing = 1e-18;

    /// <summary>Every verdict that changed, every judged figure that moved, and every other one that moved by more than a tenth: worst
    /// first.</summary>
    /// <remarks>Nothing where either design has no figures at all: its findings say why.</remarks>
    public static IReadOnlyList<FigureChange> Between(Assessment before, Assessment after)
    {
        if (!before.HasFigures || !after.HasFigures)
        {
            return [];
        }

        List<FigureChange> changes = [];
        HashSet<ResultId> paired = [];
        foreach ((Result? from, Result? to) in Judged(before, after))
        {
            paired.UnionWith(new[] { from, to }.OfType<Result>().Select(result => result.Id));
            if (OfJudged(from, to) is { } change)
            {
                changes.Add(change);
            }
        }

        IEnumerable<ResultId> others = before.Results.Concat(after.Results).Select(result => result.Id).Distinct()
            .Where(id => !paired.Contains(id));
        changes.AddRange(others.Select(id => OfUnjudged(before.Find(id), after.Find(id))).OfType<FigureChange>());
        return [.. changes.OrderBy(change => change.Kind).ThenByDescending(change => change.Size)];
    }

    /// <summary>The judged figures of both, each beside its own; where the same requirement is judged on another figure in the second,
    /// that one stands beside it.</summary>
    private static IEnumerable<(Result? From, Result? To)> Judged(Assessment before, Assessment after)
    {
        Result[] from = [.. before.Judged], to = [.. after.Judged];
        List<Result> left = [.. to.Where(result => !from.Any(one => one.Id == result.Id))];
        foreach (Result result in from)
        {
            Result? same = to.FirstOrDefault(one => one.Id == result.Id);
            Result? instead = same is null ? left.Find(one => one.Verdict.Requirement == result.Verdict.Requirement) : null;
            _ = instead is not null && left.Remove(instead);
            yield return (result, same ?? instead ?? after.Find(result.Id));
        }

        foreach (Result result in left)
        {
            yield return (before.Find(result.Id), result);
        }
    }

    private static FigureChange? OfJudged(Result? from, Result? to)
    {
        VerdictKind before = from?.Verdict.Kind ?? VerdictKind.NotJudged, after = to?.Verdict.Kind ?? VerdictKind.NotJudged;
        Verdict verdict = (to?.Verdict.Limit is null ? from ?? to : to)!.Verdict;
        double moved = from is null || to is null ? 0 : Worsened(from, to, verdict.LimitIsGreatest);
        bool stands = from is not null && to is not null && IsSame(from, to, SameShare);
        bool sameLimit = from is not null && to is not null && IsSameLimit(from.Verdict, to.Verdict);
        if (before == after && stands && sameLimit)
        {
            return null;
        }

        ChangeKind kind = (before, after) switch
        {
            (not VerdictKind.Fail, VerdictKind.Fail) => ChangeKind.NewlyFails,
            (VerdictKind.Pass, VerdictKind.Marginal) or (not VerdictKind.NotJudged, VerdictKind.NotJudged) => ChangeKind.WorseVerdict,
            (VerdictKind.NotJudged, _) => ChangeKind.Moved,
            (VerdictKind.Fail, VerdictKind.Fail) when !stands && 0 < moved => ChangeKind.FailsByMore,
            _ when before == after && !stands && 0 < moved => ChangeKind.Worse,
            _ when before == after && !sameLimit => ChangeKind.OtherLimit,
            _ => ChangeKind.Better,
        };
        return new FigureChange(kind, from, to) { Size = Math.Abs(moved) };
    }

    private static FigureChange? OfUnjudged(Result? from, Result? to)
    {
        if (from is not null && to is not null && IsSame(from, to, ToldShare))
        {
            return null;
        }

        double size = from is { State: ResultState.Number } && to is { State: ResultState.Number }
            ? Math.Abs(Share(from.Value!, to.Value!))
            : double.PositiveInfinity;
        return new FigureChange(ChangeKind.Unjudged, from, to) { Size = size };
    }

    /// <summary>True where both are the same word or state, or numbers within a share of each other.</summary>
    private static bool IsSame(Result from, Result to, double share) => from.State == to.State && from.Id == to.Id && from.State switch
    {
        ResultState.Number => (Math.Abs(from.Si) <= Nothing && Math.Abs(to.Si) <= Nothing)
            || (from.Unit == to.Unit && Math.Abs(Share(from.Value!, to.Value!)) <= share),
        ResultState.Word => string.Equals(from.Text, to.Text, StringComparison.Ordinal),
        _ => true,
    };

    private static bool IsSameLimit(Verdict from, Verdict to) => (from.Limit, to.Limit) switch
    {
        (null, null) => true,
        ({ } a, { } b) => Math.Abs(a.SiValue - b.SiValue) <= SameShare * Math.Max(Math.Abs(a.SiValue), Math.Abs(b.SiValue)),
        _ => false,
    };

    /// <summary>How far a figure moved to the wrong side, as a share; negative for the right side. Without bound counts as above
    /// everything.</summary>
    private static double Worsened(Result from, Result to, bool limitIsGreatest)
    {
        double share = (from.State, to.State) switch
        {
            (ResultState.Number, ResultState.Number) => Share(from.Value!, to.Value!),
            (ResultState.Unbounded, ResultState.Number) => double.NegativeInfinity,
            (ResultState.Number, ResultState.Unbounded) => double.PositiveInfinity,
            _ => 0,
        };
        return limitIsGreatest ? share : -share;
    }

    /// <summary>How far a value moved as a share of what it was.</summary>
    private static double Share(IQuantity from, IQuantity to) => (from, to) switch
    {
        (Decibels a, Decibels b) => Math.Pow(10, (b.Value - a.Value) / 20) is var ratio && 1 <= ratio ? ratio - 1 : 1 - (1 / ratio),
        (BitCount a, BitCount b) => Math.Pow(2, b.Bits - a.Bits) is var ratio && 1 <= ratio ? ratio - 1 : 1 - (1 / ratio),
        _ when from.SiValue == to.SiValue => 0,
        _ => (to.SiValue - from.SiValue) / Math.Abs(from.SiValue),
    };
}
