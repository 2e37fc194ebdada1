using FrontEnd.Documents.Sheets;
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

    /// <summary>File of the class; "" for one sheet that all share.</summary>
    public string Students { get; init; } = "";

    /// <summary>File of the secret that the numbers are drawn with; "" for none.</summary>
    public string Secret { get; init; } = "";

    /// <summary>The files that are read for it.</summary>
    public IEnumerable<string> Files => new[] { Students, Secret }.Where(file => file.Length > 0);

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
        Progress is not null || key is not { Key: KeyName.Letter, Alt: false, Ctrl: false } ? base.Press(model, key)
        : char.ToLowerInvariant(key.Letter) switch
        {
            'c' => FileNamePage.Ask(model, new FileNamePage(FilePurpose.Students, Line.Of(Students)) { Behind = this }),
            'k' => FileNamePage.Ask(model, new FileNamePage(FilePurpose.Secret, Line.Of(Secret)) { Behind = this }),
            'w' when Outcome is ProblemsStudy => FileNamePage.Ask(model, new FileNamePage(FilePurpose.Problems, Line.Of("homework")) { Behind = this }),
            'w' => (model, null),
            _ => base.Press(model, key),
        };

    /// <summary>Draws with another class or another secret.</summary>
    public (Model Model, Effect? Effect) Begin(Model model, FilePurpose purpose, string path) =>
        OpenStudy(model, purpose == FilePurpose.Students ? this with { Students = path } : this with { Secret = path }, needsDesign: false);

    /// <summary>The homework as the command draws it; null where the files cannot be used.</summary>
    /// <param name="folder">Where the sheets will be written; null where that is not known.</param>
    public Homework? Draw(string? folder, List<Finding> findings)
    {
        (IReadOnlyList<Student> students, DrawSource source) =
            HomeworkClass.Read(Students.Length == 0 ? null : Students, Secret.Length == 0 ? null : Secret, folder, (ulong)Seed, findings);
        return findings.Exists(finding => finding.Severity == Severity.Error) ? null : Homework.Make(Plan, source, students);
    }

    /// <inheritdoc/>
    public override StudyOutcome Work(Design design, Action<double> progress, CancellationToken cancellation)
    {
        List<Finding> findings = [.. Plan.Check()];
        if (findings.Count > 0 || Draw(null, findings) is not { } homework)
        {
            return Refused(findings, "no problem fits");
        }

        // Somebody who tries problems out needs no secret; a class does.
        ProblemSheet sheet = homework.Sheets[0];
        string whose = sheet.Student is { } student ? $"The sheet of {student.Name} ({student.Id}), the first of {homework.Sheets.Count}." : "";
        return new ProblemsStudy(sheet, whose, Files.Any() ? findings : []);
    }

    /// <inheritdoc/>
    protected override IEnumerable<KeyHint> WishKeys =>
        [new("w", "write"), new("v", ShowsSolutions ? "questions" : "solutions"), new("c", "class"), new("k", "secret"), new("t", "topic"), new("l", "level"), new("n", "number"), new("+-", "seed")];

    /// <inheritdoc/>
    protected override string Wish(Model model) =>
        $"{(ShowsSolutions ? "solutions, " : "")}{(Topic < 0 ? "all topics" : Topics.Words[Topic])}, {(Level == 0 ? "all levels" : $"level {Level}")}, {Count} questions, seed {Seed}{string.Concat(Files.Select(file => $", {Path.GetFileName(file)}"))}";

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
/// <param name="Whose">Which of a class's sheets it is; "" for one that all share.</param>
/// <param name="Told">What is to be said of class and secret.</param>
internal sealed record ProblemsStudy(ProblemSheet Sheet, string Whose, IReadOnlyList<Finding> Told) : StudyOutcome(
    width => (Whose.Length == 0 ? "" : string.Join('\n', Lettering.Wrap(Whose, width, ascii: false)) + "\n\n") + SheetText.Of(Sheet, width)
        + string.Concat(Told.Select(finding => "\n" + FindingText.Of(finding, width))), [], 0)
{
    /// <summary>The way to every answer.</summary>
    public WrittenLines Solutions { get; } = new(width => SheetText.Solutions(Sheet, width));
}
