using FrontEnd.Identity;
using FrontEnd.Numbers;
using FrontEnd.Reporting;
using FrontEnd.Results;

namespace FrontEnd.Advice;

/// <summary>Looks, for every judged result, for the single change that helps most, and works out its effect by evaluating the changed
/// design.</summary>
/// <remarks>
/// A change is dropped where it makes a safety figure that was met exceed its limit or one that was not met worse. Among the rest, those
/// that leave every other requirement where it was go before those that spoil one.
/// <para>Then a change of values, parts, gains, rates or filters with which the requirement is met goes before any change of kind
/// (<see cref="Candidate.IsOfKind"/>): whoever chose dry electrodes or a passive ground had reasons that no figure knows, so that another kind is
/// proposed where keeping it does not do. Where no change of a value meets it, what helps most is named, of whatever kind. Among equals the
/// largest gain in margin wins.</para>
/// </remarks>
public static class Advisor
{
    private const double WorthMentioning = 0.02;

    /// <summary>The same assessment with <see cref="Verdict.Improvement"/> filled in where a change helps.</summary>
    /// <remarks>And with the limits of use behind its results: they are looked for in the same way, by evaluating changed
    /// designs.</remarks>
    public static Assessment Advise(Assessment assessment, CancellationToken cancellation = default)
    {
        Evaluation? evaluation = Evaluator.Whole(assessment.Design);
        return LimitsOfUse.Add(
            Advise(assessment, Candidates.For(assessment.Design, assessment), evaluation, null, cancellation), null, evaluation, cancellation);
    }

    /// <summary>The same for one result alone, without the limits of use: as it is where that one is not judged.</summary>
    public static Assessment Advise(Assessment assessment, ResultId only, CancellationToken cancellation = default) =>
        assessment.Find(only) is { } result && result.Verdict.Kind != VerdictKind.NotJudged
            ? Advise(assessment, Candidates.For(assessment.Design, assessment), Evaluator.Whole(assessment.Design), only, cancellation)
            : assessment;

    /// <summary>The same with the changes to try given, and the design's budgets where they are at hand.</summary>
    internal static Assessment Advise(Assessment assessment, IEnumerable<Candidate> candidates, Evaluation? evaluation = null,
        ResultId? only = null, CancellationToken cancellation = default)
    {
        Result[] judged = [.. assessment.Results.Where(result => result.Verdict.Kind != VerdictKind.NotJudged)];
        if (judged.Length == 0)
        {
            return assessment;
        }

        (Candidate Candidate, Dictionary<ResultId, Result> Judged)[] tried =
        [
            .. InParallel.Map([.. candidates], candidate =>
                (candidate, Evaluator.Judged(candidate.Design, evaluation)), cancellation)
                .Where(pair => pair.Item2 is not null && !WorsensSafety(judged, pair.Item2))
                .Select(pair => (pair.candidate, pair.Item2!)),
        ];
        var improved = new Dictionary<ResultId, Result>();
        foreach (Result result in judged.Where(result => only is null || result.Id == only))
        {
            if (Best(result, judged, tried) is { } improvement)
            {
                improved[result.Id] = result with { Verdict = result.Verdict with { Improvement = improvement } };
            }
        }

        return assessment.With([.. assessment.Results.Select(result => improved.GetValueOrDefault(result.Id, result))]);
    }

    private static bool WorsensSafety(Result[] before, Dictionary<ResultId, Result> after)
    {
        foreach (Result result in before)
        {
            if (!ResultIds.Safety.All.Has(result.Id))
            {
                continue;
            }

            // A driven ground that is given up takes its own figure with it; every lead's fault current is still judged.
            if (after.TryGetValue(result.Id, out Result? changed) && changed.Verdict.Kind == VerdictKind.Fail
                && (result.Verdict.Kind != VerdictKind.Fail || Margin(changed) < Margin(result) - (1e-9 * Math.Abs(Margin(result)))))
            {
                return true;
            }
        }

        // A safety figure that the design did not have before must not begin with a fail.
        return after.Values.Any(result =>
            ResultIds.Safety.All.Has(result.Id) && result.Verdict.Kind == VerdictKind.Fail && !before.Any(old => old.Id == result.Id));
    }

    private static Improvement? Best(Result result, Result[] judged, (Candidate Candidate, Dictionary<ResultId, Result> Judged)[] tried)
    {
        Improvement? best = null;
        (bool Clean, bool KeepsKind, double Margin) bestKey = default;
        double now = Margin(result);
        foreach ((Candidate candidate, Dictionary<ResultId, Result> after) in tried)
        {
            if (!Counterpart(result, after, out Result? changed))
            {
                continue;
            }

            double margin = Margin(changed), scale = Math.Abs(result.Verdict.Limit?.SiValue ?? 1);
            if (!(now + (WorthMentioning * scale) < margin))
            {
                continue;
            }

            string? spoilt = Spoilt(result, judged, after);
            bool keepsKind = !candidate.IsOfKind && changed.Verdict.Kind != VerdictKind.Fail;
            (bool, bool, double) key = (spoilt is null, keepsKind, margin);
            if (best is null || bestKey.CompareTo(key) < 0)
            {
                bestKey = key;
                best = new Improvement(candidate.Change, candidate.Design, result.Value, changed.Value, changed.Verdict.Kind, spoilt)
                {
                    AfterInWords = changed.State == ResultState.Unbounded ? UnboundedWords.Of(changed) : null,
                };
            }
        }

        return best;
    }

    /// <summary>The result of the same requirement; headroom may have moved to another node.</summary>
    internal static bool Counterpart(Result result, Dictionary<ResultId, Result> after,
        [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out Result? changed)
    {
        if (result.Verdict.Requirement == DesignKeys.Requirements.Headroom)
        {
            changed = after.Values.FirstOrDefault(other => other.Verdict.Requirement == DesignKeys.Requirements.Headroom);
            return changed is not null;
        }

        return after.TryGetValue(result.Id, out changed) && changed.Verdict.Kind != VerdictKind.NotJudged;
    }

    /// <summary>Another requirement that was met and would fail, in words; null for none.</summary>
    private static string? Spoilt(Result result, Result[] judged, Dictionary<ResultId, Result> after)
    {
        foreach (Result other in judged)
        {
            if (other.Id != result.Id && other.Verdict.Kind != VerdictKind.Fail && Counterpart(other, after, out Result? changed)
                && changed.Verdict.Kind == VerdictKind.Fail)
            {
                return $"{changed.Name}: {changed.Verdict.Because}";
            }
        }

        return null;
    }

    private static double Margin(Result result) => result.State switch
    {
        ResultState.Number => result.Verdict.Margin ?? double.NaN,
        ResultState.Unbounded => result.Verdict.Kind == VerdictKind.Pass ? double.PositiveInfinity : double.NegativeInfinity,
        _ => double.NaN,
    };
}
