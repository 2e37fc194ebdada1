using FrontEnd.Boards;
using FrontEnd.Identity;
using FrontEnd.Reporting;
using FrontEnd.Results;

namespace FrontEnd.Compare;

/// <summary>A design against itself with values that can be bought.</summary>
/// <param name="Built">What can be bought, and what cannot be built as stated.</param>
/// <param name="Values">The fields that change, in the order of the catalogue.</param>
/// <param name="Moved">The figures that move by more than <see cref="Told"/>, those with a verdict first, then by how far.</param>
internal sealed record AsBuilt(BuildableDesign Built, IReadOnlyList<Differing> Values, IReadOnlyList<FigureChange> Moved)
{
    /// <summary>Share from which a figure's change is told.</summary>
    public const double Told = 0.01;

    /// <summary>Of a design that was evaluated.</summary>
    public static AsBuilt Of(Assessment stated) => Of(stated, BuildableDesign.Of(stated.Design));

    /// <summary>The same where it is known what can be bought.</summary>
    public static AsBuilt Of(Assessment stated, BuildableDesign built)
    {
        IReadOnlyList<Differing> values = Comparison.Differing(stated.Design, built.Design);
        if (values.Count == 0 || !stated.HasFigures || Evaluator.Evaluate(built.Design) is not { HasFigures: true } bought)
        {
            return new AsBuilt(built, values, []);
        }

        // The figures of single channels stand in those of the worst one.
        IEnumerable<FigureChange> moved = stated.Results.Where(before => !ResultIds.Channel.All.Has(before.Id))
            .Select(before => (Before: before, After: bought.Find(before.Id)))
            .Where(pair => pair.Before.State == ResultState.Number && pair.After is { State: ResultState.Number })
            .Select(pair => new FigureChange(ChangeKind.Unjudged, pair.Before, pair.After) { Size = Share(pair.Before, pair.After!) })
            .Where(change => Told < change.Size);
        return new AsBuilt(built, values,
            [.. moved.OrderBy(change => change.Before!.Verdict.Kind == VerdictKind.NotJudged).ThenByDescending(change => change.Size)]);
    }

    /// <summary>Decibels by the ratio that they stand for.</summary>
    private static double Share(Result before, Result after)
    {
        double from = before.Si, to = after.Si;
        return before.Unit == "dB" ? Math.Abs(Math.Pow(10, (to - from) / 20) - 1)
            : from == to ? 0
            : from == 0 ? double.PositiveInfinity
            : Math.Abs((to - from) / from);
    }
}
