using FrontEnd.Documents.Teaching;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Terminal;

/// <summary>A problem sheet: topic, level, how many and seed are chosen, its questions or their solutions are shown, and its files are written. The open
/// design is neither read nor changed.</summary>
/// <param name="Topic">Which of <see cref="Topics.Words"/>; −1 for all.</param>
/// <param name="Level">1 to 3; 0 for all.</param>
/// <param name="Count">Questions.</param>
/// <param name="Seed">Fixes the numbers.</param>
internal sealed record ProblemsPage(int Topic = -1, int Level = 0, int Count = 5, int Seed = 1) : StudyPage
{
    /// <summary>The way to it.</summary>
    public static readonly Act Way = new(
        '\0', [], "problems: a sheet to work out, its solutions, its files", model => OpenStudy(model, new ProblemsPage(), needsDesign: false)) { Under = 'h' };

    private static readonly int[] Counts = [5, 10, 15, 20, 30];

    /// <summary>True for the worked solutions in the questions' place.</summary>
    public bool ShowsSolutions { get; init; }

    /// <inheritdoc/>
    public override string Title => "problems";

    /// <inheritdoc/>
    public override string Does => "Draws a sheet of problems.";

    /// <summary>What is asked.</summary>
    public HomeworkPlan Plan => new()
    {
        Topics = Topic < 0 ? [] : [Topics.Words[Topic]], Level = Level == 0 ? null : Level, Count = Count, Seed = Seed,
    };

    /// <inheritdoc/>
    public override (Model Model, Effect? Effect)? Press(Model model, Keystroke key) =>
        key is not { Key: KeyName.Letter, Letter: 'w' or 'W', Alt: false, Ctrl: false } ? base.Press(model, key)
        : Outcome is ProblemsStudy ? FileNamePage.Ask(model, new FileNamePage(FilePurpose.Problems, Line.Of("homework")) { Behind = this })
        : (model, null);

    /// <inheritdoc/>
    public override StudyOutcome Work(Design design, Action<double> progress, CancellationToken cancellation)
    {
        if (Plan.Check() is { Count: > 0 } findings)
        {
            return Refused(findings, "no problem fits");
        }

        ProblemSheet sheet = Homework.Make(Plan, new DrawSource((ulong)Seed), []).Sheets[0];
        return new ProblemsStudy(sheet);
    }

    /// <inheritdoc/>
    protected override IEnumerable<KeyHint> WishKeys =>
        [new("w", "write"), new("v", ShowsSolutions ? "questions" : "solutions"), new("t", "topic"), new("l", "level"), new("n", "number"), new("+-", "seed")];

    /// <inheritdoc/>
    protected override string Wish(Model model) =>
        $"{(ShowsSolutions ? "solutions, " : "")}{(Topic < 0 ? "all topics" : Topics.Words[Topic])}, {(Level == 0 ? "all levels" : $"level {Level}")}, {Count} questions, seed {Seed}";

    /// <inheritdoc/>
    protected override IReadOnlyList<string> TextIn(int width) =>
        ShowsSolutions && Progress is null && Outcome is ProblemsStudy study ? study.Solutions.In(width) : base.TextIn(width);

    /// <inheritdoc/>
    protected override StudyPage? Wished(char letter) => letter switch
    {
        't' => this with { Topic = Topic + 1 == Topics.Words.Count ? -1 : Topic + 1 },
        'l' => this with { Level = (Level + 1) % 4 },
        'n' => this with { Count = Counts[(Array.IndexOf(Counts, Count) + 1) % Counts.Length] },
        _ => StepOf(letter) is not 0 and var by && 0 <= Seed + by ? this with { Seed = Seed + by } : null,
    };

    /// <inheritdoc/>
    protected override StudyPage? Turned(char letter) => letter == 'v' ? this with { ShowsSolutions = !ShowsSolutions, Scroll = 0 } : null;
}

/// <summary>A sheet that was drawn; its text are the questions.</summary>
internal sealed record ProblemsStudy(ProblemSheet Sheet) : StudyOutcome(width => SheetText.Of(Sheet, width), [], 0)
{
    /// <summary>The way to every answer.</summary>
    public WrittenLines Solutions { get; } = new(width => SheetText.Solutions(Sheet, width));
}
