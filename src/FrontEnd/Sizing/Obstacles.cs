using FrontEnd.Results;

namespace FrontEnd.Sizing;

/// <summary>What stopped combinations, in words.</summary>
internal sealed class Obstacles
{
    private readonly SizingRequest _request;
    private readonly List<Obstacle> _all = [];

    /// <param name="walks">What the search met.</param>
    /// <param name="unstable">Groups whose driven ground is not stable enough; they were not walked.</param>
    public Obstacles(SizingRequest request, FittingParts parts, IReadOnlyList<Walk> walks, IEnumerable<SizingGroup> unstable)
    {
        _request = request;
        OfFailed([.. walks.SelectMany(walk => walk.Failed)]);
        foreach (IGrouping<Limit, (Limit Limit, int Count, double Best)> bound in walks.SelectMany(walk =>
            walk.Bounds.Select(pair => (pair.Key, pair.Value.Count, pair.Value.Best))).GroupBy(row => row.Key))
        {
            if (!_all.Exists(obstacle => obstacle.Requirement == bound.Key.Key))
            {
                double best = bound.Key.IsGreatest ? bound.Min(row => row.Best) : bound.Max(row => row.Best);
                _all.Add(new(bound.Key.Key, bound.Sum(row => row.Count), OfBound(bound.Key, best), null));
            }
        }

        double[] margins = [.. unstable.Select(group => group.PhaseMargin!.Value)];
        if (margins.Length != 0)
        {
            _all.Add(new(DesignKeys.Requirements.PhaseMargin, margins.Length,
                OfBound(Limit.Find(DesignKeys.Requirements.PhaseMargin)!, margins.Max()), null));
        }

        foreach (IGrouping<string, Finding> wrong in walks.SelectMany(walk => walk.Contradictions).GroupBy(finding => finding.Message, StringComparer.Ordinal))
        {
            _all.Add(new(wrong.First().Field, wrong.Count(), wrong.Key, null));
        }

        int slow = parts.Converters.Count(converter => SizingGrid.Rates(converter, request.Fixed).Count == 0);
        if (slow != 0)
        {
            _all.Add(new("band", slow, $"converters that are not fast enough for a band up to {QuantityText.FormatPart(request.Fixed.Band.High)}", null));
        }

        if (parts.LeftOut != 0)
        {
            _all.Add(new(DesignKeys.Supply.Lowest, parts.LeftOut, $"parts that the supply does not suit: {string.Join("; ", parts.WhyLeftOut)}",
                null));
        }
    }

    /// <summary>Most frequent first; where no design was found, what must be given up before them.</summary>
    public IReadOnlyList<Obstacle> List(bool isAnyFound, IReadOnlyList<Relaxation> relaxations)
    {
        List<Obstacle> first = [];
        foreach (Relaxation relaxation in relaxations)
        {
            foreach ((Limit limit, double value) in relaxation.Changes)
            {
                (string asked, string reached) = (limit.Text(limit.Get(_request)!.Value), limit.Text(value));
                string others = string.Join(" and ", relaxation.Changes.Where(change => change.Limit != limit)
                    .Select(change => $"{change.Limit.Key} = {change.Limit.Text(change.Value)}"));
                int stopped = _all.Where(obstacle => obstacle.Requirement == limit.Key).Sum(obstacle => obstacle.Stopped);
                first.Add(new(limit.Key, stopped,
                    $"{asked} required, {reached} reached {(others.Length == 0 ? "at best with everything else met" : "by the design nearest to all limits")}",
                    $"{limit.Key} = {reached} {(others.Length == 0 ? "alone" : $"together with {others}")} would let a design through"));
            }
        }

        bool isMet = isAnyFound || first.Count != 0;
        return
        [
            .. first.OrderByDescending(obstacle => obstacle.Stopped),
            .. _all.Where(obstacle => !first.Exists(one => one.Requirement == obstacle.Requirement))
                .Select(obstacle => obstacle with { IsMetByOthers = isMet }).OrderByDescending(obstacle => obstacle.Stopped),
        ];
    }

    private void OfFailed(Tried[] failed)
    {
        foreach (IGrouping<Limit, (Limit Limit, double Value)> group in failed.SelectMany(tried =>
            tried.Broken(_request).Select(limit => (limit, tried.Reached(limit)!.Value))).GroupBy(pair => pair.limit))
        {
            Limit limit = group.Key;
            double best = limit.IsGreatest ? group.Min(pair => pair.Value) : group.Max(pair => pair.Value);
            _all.Add(new(limit.Key, group.Count(), $"{NameOf(failed, limit.Key)}: {Asked(limit, best)}", null));
        }

        foreach (IGrouping<string, Result> group in failed.SelectMany(tried => tried.Judged.Values.Where(result =>
            result.Verdict.Kind == VerdictKind.Fail && Limit.Find(result.Verdict.Requirement!) is null))
            .GroupBy(result => result.Verdict.Requirement!, StringComparer.Ordinal))
        {
            Result nearest = group.MaxBy(result => result.Verdict.Margin ?? double.NegativeInfinity)!;
            _all.Add(new(group.Key, group.Count(), $"{nearest.Name}: {nearest.Verdict.Because}; the best of those stopped", null));
        }
    }

    private static string NameOf(Tried[] failed, string key) => failed.SelectMany(tried => tried.Judged.Values)
        .FirstOrDefault(result => result.Verdict.Requirement == key)?.Name ?? key;

    private string OfBound(Limit limit, double best) => limit.Key switch
    {
        DesignKeys.Requirements.Offset => $"the first stage clips: {Asked(limit, best)}",
        DesignKeys.Requirements.PhaseMargin => $"driven grounds that are not stable with all loads: {Asked(limit, best)}",
        DesignKeys.Requirements.Headroom =>
            $"the largest signal does not fit between the rails or into the converter with that much gain: {Asked(limit, best)}",
        DesignKeys.Requirements.Noise => $"the noise floor of parts and protection resistors: {Asked(limit, best)}",
        DesignKeys.Requirements.Fold => "no filter of that order that can be built reaches the attenuation at that rate",
        Limit.BatteryLife => $"battery life: {Asked(limit, best)}",
        _ => $"the number of parts: {Asked(limit, best)}",
    };

    private string Asked(Limit limit, double best)
    {
        (string asked, string reached) = Apart(limit, limit.Get(_request)!.Value, best);
        return double.IsFinite(best) ? $"{asked} required, {reached} the best of those stopped" : $"{asked} required";
    }

    /// <summary>A limit and what misses it, in as many digits as they need to differ.</summary>
    private static (string Asked, string Reached) Apart(Limit limit, double asked, double reached)
    {
        for (int digits = 3; ; digits++)
        {
            (string first, string second) = (limit.Text(asked, digits), limit.Text(reached, digits));
            if (first != second || digits == 9)
            {
                return (first, second);
            }
        }
    }
}
