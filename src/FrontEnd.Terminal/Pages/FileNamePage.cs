using FrontEnd.Documents.Coefficients;
using FrontEnd.Documents.Sheets;

namespace FrontEnd.Terminal;

/// <summary>A file to open or to write, typed or chosen.</summary>
/// <param name="Purpose">What the name is asked for.</param>
/// <param name="Line">What is typed.</param>
internal sealed record FileNamePage(FilePurpose Purpose, Line Line) : Page
{
    /// <summary>Folders and files that match; null until listed.</summary>
    public IReadOnlyList<string>? Entries { get; init; }

    /// <summary>Chosen entry; -1 while the typed line counts.</summary>
    public int Selected { get; init; } = -1;

    /// <summary>The page that asks and comes back afterwards; null for the form.</summary>
    public StudyPage? Behind { get; init; }

    /// <summary>The key that answers are asked for; "" for any other purpose.</summary>
    public string MarksBy { get; init; } = "";

    private bool IsRead => Purpose is FilePurpose.Open or FilePurpose.Key or FilePurpose.Answers or FilePurpose.Students or FilePurpose.Secret;

    /// <summary>Asks for a file.</summary>
    public static (Model Model, Effect? Effect) Ask(Model model, FileNamePage page) =>
        (model with { Page = page, Editing = null }, new Effect.List(page.Purpose, page.Line.Text));

    /// <inheritdoc/>
    public override bool TakesText => true;

    /// <inheritdoc/>
    public override IEnumerable<KeyHint> Keys(Model model) =>
    [
        KeyHint.Of(KeyName.Enter, "Enter", IsRead ? "open" : "write"), new("up/dn", "choose"),
        new("Tab", "complete the name"), KeyHint.Back,
    ];

    /// <inheritdoc/>
    public override Page Hear(Model model, Message news) =>
        news is Message.Listed listed && listed.Purpose == Purpose && listed.Typed == Line.Text
            ? this with { Entries = listed.Entries, Selected = -1 }
            : this;

    /// <inheritdoc/>
    public override (Model Model, Effect? Effect)? Paste(Model model, string line)
    {
        // A name that was dragged here comes in quotes.
        bool quoted = line.Length > 2 && line[0] == line[^1] && line[0] is '\'' or '"';
        Line typed = Line.Insert(quoted ? line[1..^1] : line);
        return (model with { Page = this with { Line = typed, Selected = -1 } }, new Effect.List(Purpose, typed.Text));
    }

    /// <inheritdoc/>
    public override (Model Model, Effect? Effect) Pick(Model model, int row) =>
        Entries is { } entries && 0 <= row && row < entries.Count ? Take(model, entries[row]) : (model, null);

    /// <inheritdoc/>
    public override (Model Model, Effect? Effect)? Press(Model model, Keystroke key)
    {
        switch (key.Key)
        {
            case KeyName.Escape:
                return (model with { Page = Behind }, null);
            case KeyName.Up or KeyName.Down when Entries is { Count: > 0 }:
                return Show(model, this with { Selected = Math.Clamp(Selected + (key.Key == KeyName.Up ? -1 : 1), -1, Entries.Count - 1) });
            case KeyName.Tab when Entries is { Count: > 0 }:
                string taken = Entries[Math.Max(0, Selected)];
                FileNamePage completed = this with { Line = new Line(taken, taken.Length, false), Selected = -1 };
                return (model with { Page = completed }, new Effect.List(Purpose, taken));
            case KeyName.Enter:
                return Take(model, Entries is { } listed && 0 <= Selected && Selected < listed.Count ? listed[Selected] : Line.Text.Trim());
            default:
                Line line = Line.Press(key);
                FileNamePage typed = this with { Line = line, Selected = -1 };
                return (model with { Page = typed }, line.Text == Line.Text ? null : new Effect.List(Purpose, line.Text));
        }
    }

    /// <inheritdoc/>
    public override void Paint(Canvas canvas, Model model, Frame frame)
    {
        canvas.Put(1, frame.Top, Title, Ink.Title);
        Drawing.TypedLine(canvas, 2, frame.Top + 1, frame.Width - 4, Line, Ink.Typed);
        IReadOnlyList<string> entries = Entries ?? [];
        string found = Entries is null ? "looking"
            : entries.Count == 0 ? IsRead ? "no file of that name" : ""
            : Line.Text.Length == 0 && Purpose == FilePurpose.Open ? "here, and recently opened" : "files";
        canvas.Put(1, frame.Top + 2, found, Ink.Dim);
        Drawing.Rows(
            canvas, frame with { Top = frame.Top + 2 }, entries.Count, Selected,
            (i, y, ink) => canvas.Put(2, y, canvas.Fit(entries[i], frame.Width - 4), ink));
    }

    private string Title => Purpose switch
    {
        FilePurpose.Open => "open which design?",
        FilePurpose.SaveAs => "save as",
        FilePurpose.Sheet => "write the sheet to (.html prints, .md, .csv the parts, .json)",
        FilePurpose.Problems => "write the sheets, their key and a list for answers into which folder?",
        FilePurpose.Students => "sheets for which class? (.csv, first row id,name; empty for one sheet that all share)",
        FilePurpose.Secret => "drawn with which secret? (a file of 16 or more letters; empty for none)",
        FilePurpose.Key => "mark by which key? (key.json)",
        FilePurpose.Answers => "which answers? (.csv)",
        FilePurpose.Marks => "write marks (.csv) or pages to hand back (.html, .pdf) to",
        FilePurpose.Coefficients => "write the digital filters to (.h with a self-test, .json, .csv)",
        _ => throw new InvalidOperationException($"Purpose {Purpose} is not handled."),
    };

    private (Model Model, Effect? Effect) Take(Model model, string path)
    {
        if (path.Length == 0)
        {
            return Purpose is FilePurpose.Students or FilePurpose.Secret ? ((ProblemsPage)Behind!).Begin(model, Purpose, path) : (model, null);
        }

        if (path[^1] == Path.DirectorySeparatorChar || path[^1] == '/')
        {
            return (model with { Page = this with { Line = new Line(path, path.Length, false), Entries = null, Selected = -1 } }, new Effect.List(Purpose, path));
        }

        Model closed = model with { Page = Behind };
        return Purpose switch
        {
            FilePurpose.Problems => (closed, new Effect.Problems(path, (ProblemsPage)Behind!)),
            FilePurpose.Students or FilePurpose.Secret => ((ProblemsPage)Behind!).Begin(closed, Purpose, path),
            FilePurpose.Key or FilePurpose.Answers when Behind is MarkingPage marking => marking.Begin(closed, Purpose, path),
            FilePurpose.Key => Ask(closed, new FileNamePage(FilePurpose.Answers, Line.Of(FolderOfHomework(path))) { MarksBy = path }),
            FilePurpose.Answers => MarkingPage.Begin(closed, MarksBy, path),
            FilePurpose.Marks => (closed, new Effect.Marks(Ending(path, ".csv"), (MarkingPage)Behind!, MayReplace: false)),
            FilePurpose.Open => (closed, new Effect.Open(path)),
            FilePurpose.SaveAs => Files.SaveAs(closed, Ending(path, ".toml")),
            FilePurpose.Coefficients => Files.WriteCoefficients(closed, Ending(path, CoefficientWriting.Extension), mayReplace: false),
            FilePurpose.Sheet => Files.WriteSheet(closed, Ending(path, SheetWriting.Extension), mayReplace: false),
            _ => throw new InvalidOperationException($"Purpose {Purpose} is not handled."),
        };
    }

    /// <summary>The folder that holds the key's folder, where the lists lie.</summary>
    private static string FolderOfHomework(string key) =>
        Path.GetDirectoryName(Path.GetDirectoryName(key)) is { Length: > 0 } folder ? folder + "/" : "";

    private static string Ending(string path, string extension) => Path.HasExtension(path) ? path : path + extension;
}

/// <summary>What a file name is asked for.</summary>
public enum FilePurpose
{
    Open,
    SaveAs,
    Sheet,
    Coefficients,
    Problems,
    Students,
    Secret,
    Key,
    Answers,
    Marks,
}
