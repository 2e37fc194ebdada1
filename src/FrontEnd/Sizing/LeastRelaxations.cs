using FrontEnd.Numbers;

namespace FrontEnd.Sizing;

/// <summary>Requirements whose change lets a design through, each with its new limit [SI].</summary>
internal sealed record Relaxation(IReadOnlyList<(Limit Limit, double Value)> Changes)
{
    public SizingRequest In(SizingRequest request) =>
        Changes.Aggregate(request, (changed, change) => change.Limit.With(changed, change.Value));
}

/// <summary>Where no design passes: the least that must be given up. Each requirement is lifted alone, and the best that a design reaches
/// of it while it meets all others is its relaxation; where none alone is enough, the design that is nearest to all limits tells what must
/// be given up together. What is offered has been searched with, and lets a design through.</summary>
internal static class LeastRelaxations
{
    /// <summary>Full evaluations for each requirement in a family and in a group, so that the search comes to an end.</summary>
    private const int MostInFamily = 12, MostInGroup = 120;

    /// <summary>Full evaluations of a family in the search for the design that is nearest to all limits.</summary>
    private const int MostNear = 4;

    /// <summary>How much looser a limit is tried where the search does not find its design again.</summary>
    private static readonly double[] Looser = [0, 0.02, 0.05, 0.1, 0.25];

    private sealed record Best(Tried Tried, double Value);

    public static IReadOnlyList<Relaxation> Of(SizingGrid grid, SizingRequest request, SizingGroup[] groups, CancellationToken cancellation)
    {
        Limit[] limits = [.. Limit.All.Where(limit => limit.Get(request) is { } asked && asked != limit.Lifted)];
        Dictionary<Limit, Best>[] found = InParallel.Map(groups, group => Alone(grid, request, group, limits, cancellation), cancellation);
        List<Relaxation> relaxations = [];
        foreach (Limit limit in limits)
        {
            (SizingGroup Group, Best Best)[] ones =
                [.. groups.Zip(found).Where(pair => pair.Second.ContainsKey(limit)).Select(pair => (pair.First, pair.Second[limit]))];
            if (ones.Length != 0)
            {
                (SizingGroup group, Best best) = limit.IsGreatest ? ones.MinBy(one => one.Best.Value) : ones.MaxBy(one => one.Best.Value);
                if (Confirmed(grid, request, group, [(limit, best.Value)], cancellation) is { } relaxation)
                {
                    relaxations.Add(relaxation);
                }
            }
        }

        return relaxations.Count != 0 ? relaxations
            : Together(grid, request, groups, cancellation) is { } together ? [together] : [];
    }

    /// <summary>The best that the designs of a group reach of each requirement while they meet all others.</summary>
    private static Dictionary<Limit, Best> Alone(SizingGrid grid, SizingRequest request, SizingGroup group, Limit[] limits,
        CancellationToken cancellation)
    {
        Dictionary<Limit, Best> best = [];
        Dictionary<Limit, (GainLimits Gains, int Evaluated)> states = limits.ToDictionary(limit => limit, _ => (new GainLimits(), 0));
        foreach (Family family in group.Families)
        {
            cancellation.ThrowIfCancellationRequested();
            IReadOnlyList<SizingCandidate>? candidates = null;
            Dictionary<int, Tried?> tried = [];
            foreach (Limit limit in limits)
            {
                SizingRequest lifted = Next(limit);
                (GainLimits gains, int evaluated) = states[limit];
                if (group.IsUnstable(lifted) || !group.Reaches(grid, family, lifted) || MostInGroup <= evaluated)
                {
                    continue;
                }

                candidates ??= group.Candidates(grid, family);
                int most = Math.Min(MostInGroup, evaluated + MostInFamily);
                for (int at = 0; at < candidates.Count && evaluated < most; at++)
                {
                    SizingCandidate candidate = candidates[at];
                    if (SizingGroup.RuledOut(candidate, lifted) is not null || gains.Exclude(candidate))
                    {
                        continue;
                    }

                    evaluated++;
                    if (!tried.TryGetValue(at, out Tried? one))
                    {
                        tried[at] = one = Tried.Of(candidate);
                    }

                    if (one is null)
                    {
                        break;
                    }

                    if (!one.FailsForGood && !one.Broken(lifted).Any() && one.Reached(limit) is { } value && limit.CanBe(value))
                    {
                        best[limit] = new(one, value);
                        lifted = Next(limit);
                    }
                    else if (SizingGroup.EndsFamily(one, lifted))
                    {
                        break;
                    }
                    else
                    {
                        gains.Learn(one, lifted);
                    }
                }

                states[limit] = (gains, evaluated);
            }
        }

        return best;

        SizingRequest Next(Limit limit) => best.TryGetValue(limit, out Best? old)
            ? limit.With(request, Math.Max(limit.IsGreatest ? double.Epsilon : 0, limit.Tighter(old.Value)))
            : limit.Lift(request);
    }

    /// <summary>What the design nearest to all limits breaks: of each family the nearest by the bounds that does not clip.</summary>
    private static Relaxation? Together(SizingGrid grid, SizingRequest request, SizingGroup[] groups, CancellationToken cancellation)
    {
        (SizingGroup Group, Tried Tried, double Far)[] nearest =
        [
            .. InParallel.Map(
                groups,
                group => group.Families.Select(family =>
                {
                    cancellation.ThrowIfCancellationRequested();
                    return Nearest(group.Candidates(grid, family), request);
                }).OfType<Tried>().Select(tried => (group, tried, Far(tried))).OrderBy(one => one.Item3).Take(1),
                cancellation).SelectMany(one => one),
        ];
        foreach ((SizingGroup group, Tried tried, _) in nearest.OrderBy(one => one.Far).Take(3))
        {
            (Limit, double)[] changes = [.. tried.Broken(request).Select(limit => (limit, tried.Reached(limit)!.Value))];
            if (changes.Length != 0 && Confirmed(grid, request, group, changes, cancellation) is { } relaxation)
            {
                return relaxation;
            }
        }

        return null;

        double Far(Tried tried) => Limit.All.Sum(limit => tried.Reached(limit) is { } value ? limit.Excess(request, value) : 0);
    }

    private static Tried? Nearest(IReadOnlyList<SizingCandidate> candidates, SizingRequest request)
    {
        SizingRequest lifted = Limit.All.Aggregate(request, (one, limit) => limit.Lift(one));
        var gains = new GainLimits();
        int evaluated = 0;
        foreach (SizingCandidate candidate in candidates.OrderBy(one => one.Bounds().Sum(bound => bound.Limit.Excess(request, bound.Best))))
        {
            if (SizingGroup.RuledOut(candidate, lifted) is not null || gains.Exclude(candidate))
            {
                continue;
            }

            if (MostNear <= evaluated++ || Tried.Of(candidate) is not { } tried || tried.FailsForGood)
            {
                return null;
            }

            if (tried.Broken(request).All(limit => limit.CanBe(tried.Reached(limit)!.Value)))
            {
                return tried;
            }

            gains.Learn(tried, lifted);
        }

        return null;
    }

    /// <summary>The limits with which the search itself finds a design; null where it finds none near them.</summary>
    private static Relaxation? Confirmed(SizingGrid grid, SizingRequest request, SizingGroup group,
        IReadOnlyList<(Limit Limit, double Value)> changes, CancellationToken cancellation)
    {
        foreach (double share in Looser)
        {
            var relaxation = new Relaxation([.. changes.Select(change => (change.Limit, change.Limit.Looser(change.Value, share)))]);
            SizingRequest relaxed = relaxation.In(request);
            if (!group.IsUnstable(relaxed) && Array.Exists(group.Walk(grid, relaxed, cancellation), walk => walk.Found is not null))
            {
                return relaxation;
            }
        }

        return null;
    }
}
