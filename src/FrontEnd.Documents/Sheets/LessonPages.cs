using FrontEnd.Documents.Drawing;
using FrontEnd.Documents.Files;
using FrontEnd.Teaching;

namespace FrontEnd.Documents.Sheets;

/// <summary>A lesson to be printed: the prediction on the first page, what came of it on the second, so that a class can be given one and then
/// the other.</summary>
internal static class LessonPages
{
    /// <summary>The forms by the extension of the file.</summary>
    public static IReadOnlyList<string> Extensions { get; } = [".html", SheetFormats.Printed];

    /// <summary>Writes it in the form that the file's extension says.</summary>
    /// <param name="design">The user's file, where the lesson is on one; null where it is on its own design.</param>
    /// <returns>What went wrong; null for nothing.</returns>
    public static Finding? Write(string path, LessonOutcome outcome, string? design)
    {
        IReadOnlyList<SheetPage> pages = Of(outcome, design);
        string title = $"Lesson: {outcome.Lesson.Title}";
        return SheetFormats.Knows(path, [SheetFormats.Printed])
            ? TextFiles.WriteAtomically(path, PdfSheet.Of(title, pages))
            : TextFiles.WriteAtomically(path, HtmlSheet.Of(title, pages));
    }

    private static IReadOnlyList<SheetPage> Of(LessonOutcome outcome, string? design)
    {
        (Block? before, Block? both) = outcome.Lesson.HasPicture ? Pictures(outcome) : (null, null);
        return [new("question", [.. Question(outcome, before)]), new("answer", [.. Answer(outcome, both, design)])];
    }

    private static IEnumerable<Block> Question(LessonOutcome outcome, Block? picture)
    {
        foreach (string caution in FrontEnd.Results.Cautions.Own(outcome.Before.Design))
        {
            yield return new Block.Warning("Caution: " + caution);
        }

        if (outcome.IsOnItsDesign)
        {
            yield return new Block.Paragraph(outcome.Lesson.Setting);
        }

        yield return new Block.Heading(outcome.Before.Design.Name);
        yield return new Block.Table([new("key", true), new("value", true)], [.. LessonText.Values(outcome).Select(one => new Row([one.Key, one.Value]))]);
        yield return new Block.Paragraph($"Now: {LessonText.Now(outcome)}.");
        yield return new Block.Heading("The change");
        yield return new Block.Paragraph(LessonText.Change(outcome));
        yield return new Block.Heading("Predict first");
        yield return new Block.Paragraph(outcome.Question);
        yield return new Block.Table(
            [new("", true), new("", true), new("mine", true, IsBox: true)],
            [.. outcome.Choices.Select((choice, at) => new Row([$"{LessonText.Letter(at)}", choice.Text, ""]))]);
        yield return new Block.Paragraph("Because: ");
        if (picture is not null)
        {
            yield return picture;
        }
    }

    private static IEnumerable<Block> Answer(LessonOutcome outcome, Block? picture, string? design)
    {
        Lesson lesson = outcome.Lesson;
        yield return new Block.Heading($"What came of it: {LessonText.Change(outcome)}");
        yield return new Block.Table([new("figure", true), new("before"), new("after"), new("")], [.. outcome.Figures.Select(LessonText.Row)]);
        yield return new Block.Paragraph($"The figures say {LessonText.Verdict(outcome, null)}");
        yield return new Block.Items([.. LessonText.Sentences(outcome)]);
        if (picture is not null)
        {
            yield return picture;
        }

        if (LessonText.Thoughts(outcome).ToArray() is { Length: > 0 } thoughts)
        {
            yield return new Block.Heading("What one may have thought");
            yield return new Block.Items(thoughts, AsWritten: true);
        }

        yield return new Block.Heading("Why");
        yield return new Block.Paragraph(lesson.Why);
        yield return new Block.Table([new("", true, IsWhole: true), new("", true)], [.. LessonText.Reasons(outcome).Select(line => new Row([line.Label, line.Text]))], Small: true);
        yield return new Block.Heading("Next");
        yield return new Block.Paragraph($"{LessonText.Next(outcome, design)} {LessonText.Command(outcome, design)}");
        yield return new Block.Heading("Cautions");
        yield return new Block.Items(FrontEnd.Results.Cautions.All, Small: true);
    }

    /// <summary>Simulated samples of the design, and of both designs over each other; null where the design cannot be simulated.</summary>
    private static (Block? Before, Block? Both) Pictures(LessonOutcome outcome)
    {
        if (outcome.Samples(SamplesDrawing.Shown) is not var (before, after))
        {
            return (null, null);
        }

        string was = $"before, {outcome.From}", now = $"after, {outcome.To}";
        Picture first = SamplesDrawing.Charts(before, was, null), both = SamplesDrawing.Charts(after, now, (before, was));
        return (new Block.Drawing($"Simulated samples before the change. {SamplesDrawing.RecordedNobody}", first, null),
            new Block.Drawing($"Simulated samples, after and before. {SamplesDrawing.RecordedNobody}", both, null));
    }
}
