using FrontEnd.Identity;
using FrontEnd.Results;

namespace FrontEnd.Teaching;

/// <summary>A short guided experiment: a design, a prediction, one change, and the figures before and after. Holds no figure: they are worked
/// out when it is run (<see cref="LessonOutcome"/>).</summary>
/// <param name="Name">How it is called, and the name of its design.</param>
/// <param name="Title">What it is about, in a few words.</param>
internal sealed record Lesson(string Name, string Title)
{
    /// <summary>What is there, before anything is changed.</summary>
    public required string Setting { get; init; }

    /// <summary>What is to be predicted.</summary>
    public required string Question { get; init; }

    /// <summary>Keys of the design whose values are worth seeing beside the question.</summary>
    public required IReadOnlyList<string> Shown { get; init; }

    /// <summary>The key that is changed.</summary>
    public required string Key { get; init; }

    /// <summary>What it is set to, as it is typed.</summary>
    public required string Value { get; init; }

    /// <summary>What may come of it: three answers, of which the figures choose.</summary>
    public required IReadOnlyList<LessonChoice> Choices { get; init; }

    /// <summary>The figure that is predicted.</summary>
    public required ResultId Asked { get; init; }

    /// <summary>Figures beside it, some of which exist before the change or after it only.</summary>
    public required IReadOnlyList<ResultId> Others { get; init; }

    /// <summary>The figure whose equation says why.</summary>
    public required ResultId Reason { get; init; }

    /// <summary>Why it comes out so, in two to four sentences.</summary>
    public required string Why { get; init; }

    /// <summary>Another value to try next, as it is typed; "" where another lesson goes on from here.</summary>
    public string NextValue { get; init; } = "";

    /// <summary>The lesson that goes on from here; "" where another value does.</summary>
    public string NextLesson { get; init; } = "";

    /// <summary>What to look at when it is tried.</summary>
    public required string Next { get; init; }

    /// <summary>True where simulated samples show it.</summary>
    public bool HasPicture { get; init; }

    /// <summary>All figures of it, the one that is asked first.</summary>
    public IEnumerable<ResultId> Figures => Others.Prepend(Asked);
}

/// <summary>One answer to a lesson's question.</summary>
/// <param name="Text">The answer.</param>
/// <param name="Thought">What speaks for it, and what is wrong with that where it is wrong.</param>
/// <param name="Holds">Whether it is what the figures do.</param>
internal sealed record LessonChoice(string Text, string Thought, Func<LessonOutcome, bool> Holds);

/// <summary>A figure before and after a lesson's change.</summary>
/// <param name="Before">Null where the design without the change has no such figure.</param>
/// <param name="After">Null where the design with it has none.</param>
internal sealed record LessonFigure(ResultId Id, Result? Before, Result? After)
{
    private const double Still = 1.1, StillBy = 0.5;

    /// <summary>How many times as large it is afterwards; null where either is no number, the first is 0, or the kind is compared by
    /// differences.</summary>
    public double? Ratio =>
        this is { Before: { State: ResultState.Number } before, After: { State: ResultState.Number } after } && before.Si != 0
            && !QuantityKind.IsByDifference(before.Value)
            ? after.Si / before.Si
            : null;

    /// <summary>How much more it is afterwards, for decibels, degrees and bits; null for every other kind, and where either is no number.</summary>
    public double? Difference =>
        this is { Before: { State: ResultState.Number } before, After: { State: ResultState.Number } after }
            && QuantityKind.IsByDifference(before.Value)
            ? after.Si - before.Si
            : null;

    /// <summary>True where it is judged, and otherwise than before.</summary>
    public bool OtherVerdict => After is { } after && Before is { } before && after.Verdict.Kind != before.Verdict.Kind;

    /// <summary>True where it lies so many times as high as before, the ends counting.</summary>
    internal bool IsTimes(double least, double greatest) => Ratio is { } ratio && least <= ratio && ratio <= greatest;

    /// <summary>A figure within a tenth of what it was has not moved; of decibels, degrees and bits within a half of one.</summary>
    public bool Stays => IsTimes(1 / Still, Still) || (Difference is { } by && Math.Abs(by) <= StillBy) || this is { Before: { State: ResultState.Number, Si: 0 }, After: { State: ResultState.Number, Si: 0 } };

    /// <summary>True where it is larger by more than that.</summary>
    public bool Rises => !Stays && this is { Before: { State: ResultState.Number } before, After: { State: ResultState.Number } after } && before.Si < after.Si;

    /// <summary>True where it is smaller by more than that.</summary>
    public bool Falls => !Stays && this is { Before: { State: ResultState.Number } before, After: { State: ResultState.Number } after } && after.Si < before.Si;

    /// <summary>True where it is more than a tenth larger, but not beyond so many times.</summary>
    internal bool Grows(double atMost) => Ratio is { } ratio && Still < ratio && ratio <= atMost;
}
