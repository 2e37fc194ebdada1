using FrontEnd.Documents.Teaching;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Terminal;

/// <summary>A class's answers, marked by a key: what the class did and which slips it made; the marks, or pages to hand back, are written to a file. The
/// open design is neither read nor changed.</summary>
/// <param name="Key">File of the key.</param>
/// <param name="Answers">File of the answers.</param>
internal sealed record MarkingPage(string Key, string Answers) : StudyPage
{
    /// <summary>The way to it: first both files are asked for.</summary>
    public static readonly Act Way = new(
        '\0', [], "marking: a class's answers by a key, what it did and its slips",
        model => FileNamePage.Ask(model, new FileNamePage(FilePurpose.Key, Line.Of("homework/key/key.json")))) { Under = 'm' };

    /// <summary>False for right answers only, whatever the homework's file says.</summary>
    public bool HasPartPoints { get; init; } = true;

    /// <inheritdoc/>
    public override string Title => "marking";

    /// <inheritdoc/>
    public override string Does => "Marks a list of answers by a key.";

    /// <summary>Marks with the files at hand.</summary>
    public static (Model Model, Effect? Effect) Begin(Model model, string key, string answers) =>
        OpenStudy(model, new MarkingPage(key, answers), needsDesign: false);

    /// <summary>Marks with another key or other answers, the other file as it is.</summary>
    public (Model Model, Effect? Effect) Begin(Model model, FilePurpose purpose, string path) =>
        OpenStudy(model, purpose == FilePurpose.Key ? this with { Key = path } : this with { Answers = path }, needsDesign: false);

    /// <summary>What answers earn that are not simply right; null for what the key says.</summary>
    public Rubric? Rubric => HasPartPoints ? null : Rubric.RightOnly;

    /// <inheritdoc/>
    public override (Model Model, Effect? Effect)? Press(Model model, Keystroke key) =>
        Progress is not null || key is not { Key: KeyName.Letter, Alt: false, Ctrl: false } ? base.Press(model, key)
        : char.ToLowerInvariant(key.Letter) switch
        {
            'k' => FileNamePage.Ask(model, new FileNamePage(FilePurpose.Key, Line.Of(Key)) { Behind = this }),
            'a' => FileNamePage.Ask(model, new FileNamePage(FilePurpose.Answers, Line.Of(Answers)) { Behind = this }),
            'w' => AskForMarks(model),
            _ => base.Press(model, key),
        };

    private (Model Model, Effect? Effect) AskForMarks(Model model) =>
        Outcome is MarkingStudy ? FileNamePage.Ask(model, new FileNamePage(FilePurpose.Marks, Line.Of("marks.csv")) { Behind = this })
        : (model, null);

    /// <inheritdoc/>
    public override StudyOutcome Work(Design design, Action<double> progress, CancellationToken cancellation)
    {
        List<Finding> findings = [];
        return MarkedClass.Read(Key, Answers, trust: false, Rubric, findings) is { } marked
            ? new MarkingStudy(width => Told(marked.Marks, findings, width))
            : Refused(findings, "nothing is marked");
    }

    /// <summary>Whose answers these probably are stands before the marks, what cannot be read behind them.</summary>
    private static string Told(Marks marks, IEnumerable<Finding> findings, int width)
    {
        ILookup<bool, Finding> byPlace = findings.ToLookup(finding => finding.Code is Messages.AnotherHomework or Messages.SheetsExchanged);
        return string.Concat(byPlace[true].Select(finding => Found([finding], width) + "\n")) + MarksText.Of(marks, width) + Found(byPlace[false], width, "\n");
    }

    /// <inheritdoc/>
    protected override IEnumerable<KeyHint> WishKeys => [new("w", "write"), new("k", "key"), new("a", "answers"), new("p", HasPartPoints ? "no part points" : "part points")];

    /// <inheritdoc/>
    protected override string Wish(Model model) => $"{Path.GetFileName(Answers)} by {Path.GetFileName(Key)}{(HasPartPoints ? "" : ", right answers only")}";

    /// <inheritdoc/>
    protected override StudyPage? Wished(char letter) => letter == 'p' ? this with { HasPartPoints = !HasPartPoints } : null;
}

/// <summary>Answers that were marked.</summary>
internal sealed record MarkingStudy(Func<int, string> Write) : StudyOutcome(Write, [], 0);
