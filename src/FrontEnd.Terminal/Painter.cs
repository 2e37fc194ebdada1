using FrontEnd.Documents.Sheets;

namespace FrontEnd.Terminal;

/// <summary>From a model to the picture of the screen. Pure: the same model gives the same picture.</summary>
internal static class Painter
{
    /// <summary>The picture of a model.</summary>
    /// <param name="ascii">True where only ASCII characters can be shown.</param>
    public static Canvas Paint(Model model, bool ascii)
    {
        Canvas canvas = new(Math.Max(1, model.Width), Math.Max(1, model.Height), ascii);
        if (model.TooSmall)
        {
            TooSmall(canvas, model.Page as QuestionPage);
            return canvas;
        }

        Frame frame = Frame.Of(canvas, model);
        Title(canvas, model);
        IReadOnlyList<string> caution = Frame.Head(canvas, model);
        for (int i = 0; i < caution.Count; i++)
        {
            canvas.Put(1, 1 + i, caution[i], Ink.Fail);
        }

        StripPainter.Strip(canvas, model, 1 + caution.Count);
        canvas.Rule(frame.Top - 1);
        canvas.Rule(frame.Bottom);
        if (model.Page is null or { IsOverTheForm: true })
        {
            FormPainter.Body(canvas, model, frame);
        }

        model.Page?.Paint(canvas, model, frame);
        FootPainter.Foot(canvas, model, frame);
        return canvas;
    }

    /// <param name="ask">A question that waits for its answer; null for none.</param>
    private static void TooSmall(Canvas canvas, QuestionPage? ask)
    {
        string text = ask is null
            ? $"The terminal is {canvas.Width} x {canvas.Height}. It needs 60 x 15: make it larger, nothing is lost. q quits."
            : ask.InFewRows;
        int row = ask is null ? Math.Max(0, (canvas.Height / 2) - 1) : 0;
        foreach (string line in canvas.Wrap(text, Math.Max(4, canvas.Width - 1)))
        {
            canvas.Put(0, row++, line, Ink.Strong);
        }
    }

    private static void Title(Canvas canvas, Model model)
    {
        OpenDesign here = model.Here;
        int right = here.Shown is null ? canvas.PutRight(canvas.Width - 1, 0, "computing", Ink.Dim) : Counts(canvas, here, here.Shown);
        string many = model.Designs.Count > 1 && model.Tour is null ? $"{model.Current + 1}/{model.Designs.Count} " : "";
        string disk = string.Join(' ', (string[])
        [
            .. here.IsGone ? ["!gone"] : Disk.News(here) is null ? Array.Empty<string>() : ["!disk"],
            .. here.Elsewhere is null ? Array.Empty<string>() : ["open twice"],
        ]);
        if (Errors.Counted(here) is { } errors)
        {
            errors = $"{Wording.Sign(VerdictKind.Fail)} {errors}";
            canvas.PutRight(right, 0, errors, Ink.Fail);
            canvas.Zone(right - errors.Length, 0, errors.Length, 1, new Message.Do(Errors.Way));
            right -= errors.Length + 2;
        }

        int room = right - 2 - (here.IsChanged ? 9 : 0) - (disk.Length > 0 ? disk.Length + 1 : 0);
        int at = canvas.Put(1, 0, canvas.Fit(many + here.Title, Math.Max(4, room)), Ink.Title);
        if (here.IsChanged)
        {
            at = canvas.Put(at + 1, 0, "*changed", Ink.Changed);
        }

        if (disk.Length > 0)
        {
            canvas.Put(at + 1, 0, disk, Ink.Changed);
            canvas.Zone(at + 1, 0, disk.Length, 1, new Message.Do(Act.TakeFromDisk));
        }
    }

    /// <summary>How many requirements stand how; returns the first column taken.</summary>
    private static int Counts(Canvas canvas, OpenDesign here, Assessment shown)
    {
        int right = canvas.Width - 1;
        foreach (VerdictKind kind in (VerdictKind[])[VerdictKind.NotJudged, VerdictKind.Pass, VerdictKind.Marginal, VerdictKind.Open, VerdictKind.Fail])
        {
            int count = shown.Judged.Count(result => result.Verdict.Kind == kind);
            string text = $"{Wording.Sign(kind)} {count} {Wording.Word(kind)}";
            if (count == 0)
            {
                continue;
            }

            canvas.PutRight(right, 0, text, ResultText.Ink(kind));
            canvas.Zone(right - text.Length, 0, text.Length, 1, new Message.Do(Act.ViewVerdicts));
            right -= text.Length + 2;
        }

        if (!here.IsFresh)
        {
            canvas.PutRight(right, 0, "...", Ink.Changed);
        }

        return right - 4;
    }
}
