using FrontEnd.Identity;
using FrontEnd.Results;

namespace FrontEnd.Advice;

/// <summary>A change to make next, and the figures that it helps.</summary>
/// <param name="Change">The change in words.</param>
/// <param name="Helps">Judged results whose single best change it is.</param>
internal sealed record NextStep(string Change, IReadOnlyList<Result> Helps)
{
    private const int Most = 3;

    /// <summary>
    /// The changes that help failing and marginal verdicts most: what protects the wearer first, then what helps several at once, then the
    /// worst.
    /// </summary>
    /// <param name="advised">With the changes that help.</param>
    public static IReadOnlyList<NextStep> Of(Assessment advised) =>
    [
        .. advised.Judged.Where(result => result.Verdict is { Kind: VerdictKind.Fail or VerdictKind.Marginal, Improvement: not null })
            .GroupBy(result => result.Verdict.Improvement!.Change, StringComparer.Ordinal)
            .OrderByDescending(group => group.Any(ProtectsTheWearer)).ThenByDescending(group => group.Count()).Take(Most)
            .Select(group => new NextStep(group.Key, [.. group])),
    ];

    private static bool ProtectsTheWearer(Result result) =>
        result.Verdict.Kind == VerdictKind.Fail && ResultIds.Safety.All.Has(result.Id);
}
