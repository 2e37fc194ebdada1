using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Reporting;
using FrontEnd.Results;

namespace FrontEnd.Sizing;

/// <summary>A candidate that was worked out in full.</summary>
internal sealed class Tried
{
    private readonly Dictionary<string, double> _reached = new(StringComparer.Ordinal);

    private Tried(SizingCandidate candidate, Dictionary<ResultId, Result> judged)
    {
        (Candidate, Judged) = (candidate, judged);
        foreach (Result result in judged.Values)
        {
            string key = result.Verdict.Requirement!;
            if (Limit.Find(key) is not { } limit)
            {
                FailsForGood |= result.Verdict.Kind == VerdictKind.Fail;
                continue;
            }

            // What has no bound is as bad, or as good, as can be.
            double value = result.State == ResultState.Number ? result.Si : double.PositiveInfinity;
            double old = _reached.GetValueOrDefault(key, value);
            _reached[key] = limit.IsGreatest ? Math.Max(old, value) : Math.Min(old, value);
        }

        _reached[Limit.Parts] = candidate.Parts;
        if (candidate.LifeSeconds is { } life)
        {
            _reached[Limit.BatteryLife] = life;
        }
    }

    public SizingCandidate Candidate { get; }

    public Design Design => Candidate.Design;

    /// <summary>Its judged results, by the limits of the request as it was asked.</summary>
    public Dictionary<ResultId, Result> Judged { get; }

    /// <summary>True where it fails what may not be relaxed.</summary>
    public bool FailsForGood { get; }

    /// <summary>Works a candidate out; null where it contradicts itself.</summary>
    public static Tried? Of(SizingCandidate candidate) => Evaluator.Judged(candidate.Design) is { } judged ? new(candidate, judged) : null;

    /// <summary>The worst value of those that a requirement judges [SI]; null where it judges none.</summary>
    public double? Reached(Limit limit) => _reached.TryGetValue(limit.Key, out double value) ? value : null;

    /// <summary>The limits of a request that it breaks.</summary>
    public IEnumerable<Limit> Broken(SizingRequest request) =>
        Limit.All.Where(limit => Reached(limit) is { } value && limit.IsBroken(request, value));
}
