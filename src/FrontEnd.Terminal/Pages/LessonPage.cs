using FrontEnd.Documents.Sheets;
using FrontEnd.Documents.Teaching;
using FrontEnd.Teaching;

namespace FrontEnd.Terminal;

/// <summary>Short guided experiments, each on a design of its own: the open design is neither read nor changed. The figures are worked out while
/// the question is read, and shown once a prediction is made.</summary>
/// <param name="Lesson">Which of <see cref="Lessons.All"/>.</param>
internal sealed record LessonPage(int Lesson = 0) : StudyPage
{
    /// <summary>The way to it.</summary>
    public static readonly Act Way = new(
        '\0', [], "lessons: experiments with a prediction, on designs of their own", model => OpenStudy(model, new LessonPage(), needsDesign: false)) { Under = 'l' };

    /// <summary>True once the answer is shown.</summary>
    public bool IsAnswered { get; init; }

    /// <summary>Which choice was predicted, from 0; null for none.</summary>
    public int? Said { get; init; }

    /// <summary>What the lesson's key is set to, as it is typed; null for the lesson's own value.</summary>
    public string? To { get; init; }

    /// <inheritdoc/>
    public override string Title => "lesson";

    /// <inheritdoc/>
    public override string Does => "Works out an experiment on a design of its own.";

    /// <inheritdoc/>
    public override IEnumerable<KeyHint> Keys(Model model) => Progress is not null || Outcome is null
        ? base.Keys(model)
        :
        [
            new("+-", "lesson"),
            .. IsAnswered ? (KeyHint[])[KeyHint.Of('r', "r", "predict again"), KeyHint.Of(Onward, $"{Onward}", "next step")]
                : [.. Choices.Select((_, at) => KeyHint.Of(LessonText.Letter(at), $"{LessonText.Letter(at)}", "predict")), KeyHint.Of(KeyName.Enter, "Enter", "answer")],
            new("up/dn Tab", "scroll"), KeyHint.Back,
        ];

    /// <inheritdoc/>
    public override (Model Model, Effect? Effect)? Press(Model model, Keystroke key) =>
        key.Key == KeyName.Enter && Outcome is not null && !IsAnswered ? Show(model, Answered(null))
        : IsAnswered && WordWatch.IsLetter(key) && IsChoice(char.ToLowerInvariant(key.Letter)) ? (model.Tell("already answered; r asks for a prediction again"), null)
        : base.Press(model, key);

    /// <inheritdoc/>
    public override StudyOutcome Work(Design design, Action<double> progress, CancellationToken cancellation)
    {
        List<Finding> findings = [];
        return LessonRun.Work(Lessons.All[Lesson], null, To, findings) is { } outcome ? new LessonStudy(outcome) : Refused(findings, "the lesson has no figures");
    }

    /// <inheritdoc/>
    protected override string Wish(Model model) => $"{Lesson + 1} of {Lessons.All.Count}: {Lessons.All[Lesson].Title}";

    /// <inheritdoc/>
    protected override IReadOnlyList<string> TextIn(int width) => Progress is null && IsAnswered && Outcome is LessonStudy study
        ? LessonText.Answer(study.Outcome, Said, width: width, way: WayOn(study.Outcome)).TrimEnd('\n').Split('\n')
        : base.TextIn(width);

    /// <inheritdoc/>
    protected override StudyPage? Wished(char letter) => StepOf(letter) is not 0 and var by
        ? new LessonPage((Lesson + by + Lessons.All.Count) % Lessons.All.Count)
        : letter == Onward && IsAnswered && Outcome is LessonStudy study ? NextStep(study.Outcome)
        : null;

    /// <inheritdoc/>
    protected override StudyPage? Turned(char letter) =>
        Outcome is null ? null
        : IsAnswered ? letter == 'r' ? this with { IsAnswered = false, Said = null, Scroll = 0 } : null
        : IsChoice(letter) ? Answered(letter - LessonText.Letter(0))
        : null;

    /// <summary>The key of the next step.</summary>
    private const char Onward = 'n';

    private bool IsChoice(char letter) => LessonText.Letter(0) <= letter && letter - LessonText.Letter(0) < Choices.Count;

    /// <summary>What the lesson proposes to look at next: another value, or another lesson; after a value that it proposed, the lesson behind it.</summary>
    private LessonPage NextStep(LessonOutcome outcome) =>
        !outcome.IsAsWritten ? new LessonPage((Lesson + 1) % Lessons.All.Count)
        : Lessons.All.ToList().FindIndex(one => one.Name == outcome.Lesson.NextLesson) is var at and >= 0 ? new LessonPage(at)
        : new LessonPage(Lesson) { To = outcome.Lesson.NextValue };

    private string WayOn(LessonOutcome outcome) => NextStep(outcome) is { To: { } value }
        ? $"{Onward} tries it: {outcome.Lesson.Key} {value}"
        : $"{Onward} opens it: {Lessons.All[NextStep(outcome).Lesson].Title}";

    private IReadOnlyList<LessonChoice> Choices => Outcome is LessonStudy study ? study.Outcome.Choices : [];

    private LessonPage Answered(int? said) => this with { IsAnswered = true, Said = said, Scroll = 0 };
}

/// <summary>A lesson that was worked out; its text is the question.</summary>
internal sealed record LessonStudy(LessonOutcome Outcome) : StudyOutcome(width => LessonText.QuestionInFewRows(Outcome, width), [], 0);
