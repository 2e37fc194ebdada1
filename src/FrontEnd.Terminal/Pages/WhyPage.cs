using FrontEnd.Advice;
using FrontEnd.Documents.Sheets;
using FrontEnd.Identity;

namespace FrontEnd.Terminal;

/// <summary>The reason of one figure.</summary>
/// <param name="ResultId">The figure.</param>
internal sealed record WhyPage(ResultId ResultId) : LinesPage
{
    private static readonly string[] ReadingOrder =
    [
        "verdict", "most of it", "helps most", "was", "why", "assumes", "equation", "numbers", "figure", "by hand", "source", "limit from",
        "further reading", "moves by", "cautions",
    ];

    /// <summary>What moves the figure; null until worked out.</summary>
    public IReadOnlyList<Sensitivity>? Sensitivities { get; init; }

    /// <summary>Opens the reason of the figure in hand.</summary>
    public static (Model Model, Effect? Effect) Open(Model model) =>
        Whereabouts.ResultInHand(model) is { } result && model.Here.Shown is { } shown
        ? (model with { Page = new WhyPage(result.Id) }, Errors.InTheWay(model.Here) is null ? new Effect.Move(model.Here.Slot, model.Here.Run, shown, result.Id) : null)
        : (model, null);

    /// <inheritdoc/>
    public override IEnumerable<KeyHint> Keys(Model model) =>
        [
            .. model.Here.Shown?.Find(ResultId) is { Verdict: { Requirement: not null, Kind: not VerdictKind.Pass } }
                ? [KeyHint.Of(Act.Apply, "h", "make the change that helps most")] : Array.Empty<KeyHint>(),
            .. Other(model) is { } other ? [KeyHint.Of(KeyName.Tab, "Tab", $"why {ResultText.Value(other)}")] : Array.Empty<KeyHint>(),
            KeyHint.Scroll, KeyHint.Back,
        ];

    /// <summary>The figure that stands in one row with this one; null for none.</summary>
    private Result? Other(Model model) => model.Here.Shown is { } shown && shown.Find(ResultId) is { } result
        ? ResultPairs.FrequencyOf(shown, result) ?? ResultPairs.FigureAt(shown, result) : null;

    /// <inheritdoc/>
    protected override (Model Model, Effect? Effect)? PressElse(Model model, Keystroke key) =>
        key.Key == KeyName.Tab && Other(model) is { } other
            ? (model with { Page = new WhyPage(other.Id) }, Errors.InTheWay(model.Here) is null ? new Effect.Move(model.Here.Slot, model.Here.Run, model.Here.Shown!, other.Id) : null)
            // The figure in hand is the page's.
            : KeyMap.Meaning(key) == Act.Apply ? Act.Apply.Perform(model)
            : null;

    /// <inheritdoc/>
    public override Page Hear(Model model, Message news) =>
        news is Message.Moved moved && moved.ResultId == ResultId && moved.Slot == model.Here.Slot && moved.Run == model.Here.Run
            ? this with { Sensitivities = moved.Sensitivities }
            : this;

    /// <inheritdoc/>
    protected override void PaintHeading(Canvas canvas, Model model, Frame frame)
    {
        if (model.Here.Shown?.Find(ResultId) is not { } result)
        {
            canvas.Put(1, frame.Top, "this design no longer has this figure; Esc goes back", Ink.Dim);
            return;
        }

        canvas.Put(1, frame.Top, canvas.Fit(result.Name, NameRoom(frame, result)), Ink.Title);
        canvas.PutRight(frame.Width - 1, frame.Top, canvas.Say($"{canvas.Fit(ResultText.Value(result), 24)}   {result.Id}"), Ink.Strong);
    }

    /// <inheritdoc/>
    protected override IReadOnlyList<Piece[]> Lines(Canvas canvas, Model model, Frame frame) =>
        model.Here.Shown?.Find(ResultId) is { } result
            ? [.. InReadingOrder([.. WholeName(canvas, frame, result), .. Parts(model, result)]).SelectMany(part => Labelled(canvas, frame, part.Label, part.Text, part.Ink))]
            : [];

    private static int NameRoom(Frame frame, Result result) => frame.Width - 2 - Lettering.Columns(result.Id.Text) - 22;

    private const string WithErrors = "not computed while the file has errors or unknown values";

    /// <summary>The figure's name where the heading has no room for it.</summary>
    private static IEnumerable<(string Label, string Text, Ink Ink)> WholeName(Canvas canvas, Frame frame, Result result) =>
        NameRoom(frame, result) < Lettering.Columns(canvas.Say(result.Name)) ? [("name", result.Name, Ink.Strong)] : [];

    private List<(string Label, string Text, Ink Ink)> Parts(Model model, Result result)
    {
        List<(string Label, string Text, Ink Ink)> parts = [];
        if (result.Verdict.Requirement is not null)
        {
            // The words are those of the command.
            foreach (ExplainLine line in ExplainText.Judgement(result.Verdict))
            {
                Ink ink = line.Label switch
                {
                    "verdict" => ResultText.Ink(result.Verdict.Kind),
                    "helps most" => Ink.Key,
                    "limit from" => Ink.Dim,
                    _ => Ink.Plain,
                };
                parts.Add((line.Label, line.Text + (line.Label == "helps most" ? "   (h makes the change)" : ""), ink));
            }

            if (result.Verdict.Improvement is null && result.Verdict.Kind is VerdictKind.Fail or VerdictKind.Marginal)
            {
                parts.Add(("helps most", Errors.InTheWay(model.Here) is not null ? WithErrors : model.Here.Advised ? "no single change found that helps" : "searching", Ink.Dim));
            }
        }

        const int most = 6;
        if (ResultText.Was(model.Here.Before?.Find(result.Id), result, most) is var (was, now))
        {
            parts.Add(("was", $"{was} before the last change{(now is null ? "" : $", now {now}")}", Ink.Changed));
        }

        foreach (ExplainLine line in ExplainText.Reasons(result))
        {
            parts.Add((
                line.Label, line.Text,
                line.Label switch { "equation" or "why" => Ink.Strong, "source" or "further reading" => Ink.Dim, _ => Ink.Plain }));
        }

        parts.Add(("moves by", Errors.InTheWay(model.Here) is not null ? WithErrors : Moves(result), Ink.Plain));
        parts.Add(("cautions", string.Join("\n", Cautions.All), Ink.Plain));
        return parts;
    }

    /// <summary>What to do and the plain words first, sources last: a screen of 24 rows shows the beginning only. A paragraph without a
    /// label stays with the one above it.</summary>
    private static IEnumerable<(string Label, string Text, Ink Ink)> InReadingOrder(List<(string Label, string Text, Ink Ink)> parts)
    {
        List<(int Rank, (string Label, string Text, Ink Ink) Part)> ranked = [];
        foreach ((string Label, string Text, Ink Ink) part in parts)
        {
            ranked.Add((part.Label.Length == 0 ? ranked[^1].Rank : Array.IndexOf(ReadingOrder, part.Label), part));
        }

        return ranked.OrderBy(one => one.Rank).Select(one => one.Part);
    }

    /// <summary>What each input's tenth does, the largest first.</summary>
    private string Moves(Result result) => Sensitivities switch
    {
        null => "being computed",
        { Count: 0 } => ExplainText.NoMoves(result),
        { } moves => string.Join("\n", moves.Take(ExplainText.Rows).Select(move => Told(result, move))),
    };

    private static string Told(Result result, Sensitivity move)
    {
        string after = ExplainText.After(move) ?? "no number";
        string change = $"{QuantityText.FormatTrimmed(move.From, 3)} -> {QuantityText.FormatTrimmed(move.To, 3)}";
        return $"{move.Key} {change}: {after} {ExplainText.Change(result, move)}".TrimEnd();
    }
}
