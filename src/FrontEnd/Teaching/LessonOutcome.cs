using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Simulation;

namespace FrontEnd.Teaching;

/// <summary>What came of a lesson's change: both designs evaluated, and the answer that the figures choose.</summary>
/// <param name="Before">The design as it is.</param>
/// <param name="After">The design with the one change.</param>
/// <param name="From">The changed key's value before, as it is written.</param>
/// <param name="To">Its value afterwards.</param>
internal sealed record LessonOutcome(Lesson Lesson, Assessment Before, Assessment After, string From, string To)
{
    /// <summary>What may come of any change of any figure.</summary>
    private static readonly LessonChoice[] AnyChange =
    [
        new("it falls", "", outcome => outcome.Asked.Falls),
        new("it stays about the same, within a tenth", "", outcome => outcome.Asked.Stays),
        new("it rises", "", outcome => outcome.Asked.Rises),
    ];

    /// <summary>As long as the spectrum's mean needs.</summary>
    private static readonly Duration Simulated = Duration.FromSeconds(20);

    /// <summary>The figure that was predicted.</summary>
    public LessonFigure Asked => Of(Lesson.Asked);

    /// <summary>The figures that either design has, the predicted one first.</summary>
    public IReadOnlyList<LessonFigure> Figures =>
    [
        .. Lesson.Figures.Select(Of)
            .Where(figure => figure.Id == Lesson.Asked || figure.Before is not null || figure.After is not null),
    ];

    /// <summary>True for the lesson on its own design with its own change, of which its question and answers speak.</summary>
    public bool IsAsWritten { get; init; } = true;

    /// <summary>True for the lesson's own design, whatever is changed in it.</summary>
    public bool IsOnItsDesign { get; init; } = true;

    /// <summary>What is to be predicted.</summary>
    public string Question => IsAsWritten ? Lesson.Question : $"What does this figure do: {(Asked.Before ?? Asked.After)!.Name}?";

    /// <summary>What may come of it.</summary>
    public IReadOnlyList<LessonChoice> Choices => IsAsWritten ? Lesson.Choices : AnyChange;

    /// <summary>One figure before and after.</summary>
    public LessonFigure Of(ResultId id) => new(id, Before.Find(id), After.Find(id));

    /// <summary>Which choice the figures bear out, from 0; null where none of them describes what a user's own design does.</summary>
    public int? Right => Choices.Select((choice, at) => choice.Holds(this) ? at : -1).Where(at => 0 <= at).Cast<int?>().FirstOrDefault();

    /// <summary>What is to be said about the design with the change and was not before; errors first.</summary>
    public IReadOnlyList<Finding> NewFindings => [.. After.Findings.ExceptBy(Before.Findings.Select(finding => (finding.Code, finding.Field)), finding => (finding.Code, finding.Field)).OrderByDescending(finding => finding.Severity)];

    /// <summary>The figure whose equation says why, of the design with the change where it has it.</summary>
    public Result? Reason => After.Find(Lesson.Reason) ?? Before.Find(Lesson.Reason);

    /// <summary>Simulated samples of both designs, the same seed in both; null where one cannot be simulated.</summary>
    /// <param name="shown">How much of the beginning is kept for a picture.</param>
    public LessonSamples? Samples(Duration shown) =>
        Look(Before.Design, shown) is { } before && Look(After.Design, shown) is { } after ? new LessonSamples(before, after) : null;

    /// <summary>Evaluates both designs.</summary>
    public static LessonOutcome Of(Lesson lesson, Design before, Design after, string from, string to) =>
        new(lesson, Evaluator.Evaluate(before), Evaluator.Evaluate(after), from, to);

    private static SampleLook? Look(Design design, Duration shown) =>
        SampleRun.Prepare(design, new SampleWish { Length = Simulated }, []) is { } run ? SampleLook.Of(run, shown) : null;
}

/// <summary>Simulated samples of a lesson's design before and after its change.</summary>
internal sealed record LessonSamples(SampleLook Before, SampleLook After);
