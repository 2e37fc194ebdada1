using FrontEnd.Documents.Sheets;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;
using FrontEnd.Textbook;

namespace FrontEnd.Documents.Teaching;

/// <summary>The key as printed pages: all answers first, then every question worked out once with the numbers of the whole class.</summary>
internal static class KeyPdf
{
    private const double StepIndent = 14;

    public static PrintedSheet Of(KeyBook book, SheetLook look)
    {
        PageFlow flow = new(look.Paper);
        flow.Begin("All answers", isLandscape: false, Head(book.Homework));
        double width = flow.Width;
        flow.Add([
            DrawnText.Of("Key: all answers", look.Title, width),
            DrawnText.Of($"{ProblemMarkdown.MadeFrom(book.Homework)}. Behind this table every question is worked out once, with the numbers of all. Students do not get these pages. {FrontEnd.Results.Cautions.Exercise}", look.Quiet, width) with { Before = 2 },
        ]);
        flow.Skip(5);
        DrawnTable.Add(flow, book.Glance, look.Small);
        bool isFirst = true;
        foreach (KeyPart part in book.Parts)
        {
            if (isFirst)
            {
                flow.NextPage();
                isFirst = false;
            }

            flow.Add([.. Question(part, look, flow)]);
            if (part.Table() is { } table)
            {
                flow.Skip(4);
                DrawnTable.Add(flow, table, look.Small);
            }
        }

        flow.Skip(8);
        flow.Add([DrawnText.Of("Sources", look.Body with { IsBold = true }, width) with { KeepsNext = true },
            .. book.Sources.Select(one => DrawnText.Of($"{one.Source} ({string.Join(", ", one.Questions)})", look.Small, width) with { Before = 3 })]);
        return PrintedSheet.Of("Key", flow, $"Key: {PrintedPage.Subject}");
    }

    private static Func<double, Piece> Head(Homework homework) => PrintedSheet.Head(new Student(homework.Code, "Key, not for students"), "");

    private static IEnumerable<Piece> Question(KeyPart part, SheetLook look, PageFlow flow)
    {
        double width = flow.Width;
        Problem problem = part.Example.Problem;
        List<Piece> first = [.. ProblemPdf.Asked(part.View, look, width)];
        first.Add(DrawnText.Of(part.Owner is { } owner ? $"Worked out with the numbers of {owner.Id}" : "Worked out", look.Body with { IsBold = true }, width) with { Before = 5 });
        bool isHeading = true;
        foreach (Piece piece in ProblemPdf.Together(first, flow.Height))
        {
            yield return piece with { KeepsNext = true, Bookmark = isHeading ? $"{part.Example.Id}. {problem.Title}" : null };
            isHeading = false;
        }

        foreach (Piece piece in Solution(part.View, look, width))
        {
            yield return piece;
        }

        string answer = $"Answer: {problem.Answer.Text}{(ProblemMarkdown.Range(problem.Answer) is { Length: > 0 } range ? $" (accepted: {range})" : "")}";
        yield return DrawnText.Of(answer, look.Body with { IsBold = true }, width) with { Before = 4 };
        if (part.Slips.Count > 0)
        {
            yield return DrawnText.Of(SlipLegend(part), look.Quiet, width) with { Before = 2 };
        }
    }

    /// <summary>What the slips' numbers mean, and what each earns.</summary>
    public static string SlipLegend(KeyPart part) => "Slips: " + string.Join("; ", part.Slips.Select((slip, at) =>
        $"({at + 1}) {slip.Kind.Remark}, {SheetText.Points(slip.Points)}{(part.Table() is null ? $": {OwnValue(part, slip.Kind)}" : "")}")) + ".";

    private static string OwnValue(KeyPart part, SlipKind kind) =>
        string.Join(", ", part.Example.Problem.Slips.Where(slip => slip.Kind == kind).Select(slip => ProblemMarkdown.SlipValue(part.Example.Problem, slip)));

    /// <summary>The steps, each with its formula and the numbers put in.</summary>
    public static IEnumerable<Piece> Solution(QuestionView question, SheetLook look, double width)
    {
        int number = 1;
        foreach (KeyStep step in question.Steps)
        {
            List<Piece> pieces = [DrawnText.Entry($"{number++}.", StepIndent, step.Says + (step.Formula.Length > 0 ? ":" : ""), look.Body, width, question.Symbols) with { Before = 4 }];
            pieces.AddRange(new[] { step.Formula, step.Substituted }.Where(text => text.Length > 0).Select(text => Line(text, look, width)));
            yield return Pieces.Below(pieces);
        }
    }

    /// <summary>A formula in a line of its own.</summary>
    private static Piece Line(string text, SheetLook look, double width)
    {
        const double Within = 2 * StepIndent;
        if (FormulaReader.Find(text) is not { } formula)
        {
            return Pieces.Indented(DrawnText.Of(text, look.Body, width - Within), Within);
        }

        DrawnFormula drawn = DrawnFormula.Within(formula, look.Body.Size, width - Within);
        return new Piece(drawn.Above + drawn.Below, (page, x, y) => drawn.Draw(page, x + Within, y + drawn.Above)) { Before = 3.5 };
    }
}
