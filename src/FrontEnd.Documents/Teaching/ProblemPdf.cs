using FrontEnd.Documents.Drawing;
using FrontEnd.Documents.Sheets;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;
using FrontEnd.Textbook;

namespace FrontEnd.Documents.Teaching;

/// <summary>Problem sheets as printed pages. Lengths in points.</summary>
internal static class ProblemPdf
{
    // More given values than this stand in two columns.
    private const int Many = 8;

    private const double Gap = 12, Indent = 8, AnswerRoom = 26, AnswerLine = 190;

    // A circuit's letters are not larger than those of the text, and it takes half of the page's width at most.
    private const double LargestScale = 0.82, LargestShare = 0.5;

    /// <summary>A student's sheet, without answers.</summary>
    public static PrintedSheet Sheet(ProblemSheet sheet, SheetLook look)
    {
        string name = sheet.Student is { } student ? $"{student.Name} ({student.Id})" : "Problems";
        PageFlow flow = new(look.Paper);
        flow.Begin(name, isLandscape: false, PrintedSheet.Head(sheet.Student, ProblemMarkdown.Footing(sheet), look.Fields));
        double width = flow.Width;
        flow.Add([
            Beside($"Problems: {PrintedPage.Subject}", SheetText.Points(sheet.Points), look.Title, look, width),
            .. look.Under.Length == 0 ? [] : new[] { DrawnText.Of(look.Under, look.Body, width) with { Before = 3 } },
            DrawnText.Of(FrontEnd.Results.Cautions.Exercise, look.Quiet, width) with { Before = 3 },
            DrawnText.Of($"{ProblemMarkdown.HowToAnswer}.", look.Quiet, width) with { Before = 3 },
        ]);
        foreach (Question question in sheet.Questions)
        {
            if (look.RoomToWork && question != sheet.Questions[0])
            {
                flow.NextPage();
            }

            flow.Add(Together([.. Asked(QuestionView.Of(question), look, width), Answer($"{AskedUnit.Label(question.Problem.Answer)}:", look)], flow.Height));
        }

        return PrintedSheet.Of(name, flow, PrintedPage.Subject);
    }

    /// <summary>A heading with something at the right side.</summary>
    public static Piece Beside(string text, string right, PrintStyle style, SheetLook look, double width)
    {
        double room = look.Body.Width(right) + Gap;
        IReadOnlyList<string> lines = PrintLines.Of(text, width - room, style);
        return new Piece(lines.Count * style.Leading, (page, x, y) =>
        {
            style.Draw(page, lines, x, y);
            look.Body.Draw(page, [right], x + width, y + ((style.Leading - look.Body.Leading) / 2), Anchor.End);
        });
    }

    /// <summary>A question with its givens, its circuit and its choices.</summary>
    public static IReadOnlyList<Piece> Asked(QuestionView question, SheetLook look, double width)
    {
        List<Piece> pieces =
        [
            Beside($"{question.Id}. {question.Title}", SheetText.Points(question.Points), look.Heading, look, width) with { Before = 13, KeepsNext = true },
            DrawnText.Of(question.Text, look.Body, width, question.Symbols) with { Before = 2 },
        ];
        Picture? picture = QuestionPicture.Of(question);
        Piece? circuit = picture is null ? null : Circuit(picture, width);
        double beside = picture is null ? 0 : (picture.Width * Scale(picture, width)) + Gap;
        if (question.Givens.Count > Many)
        {
            double half = (width - Gap) / 2;
            int first = (question.Givens.Count + 1) / 2;
            pieces.AddRange(circuit is null ? [] : [circuit with { Before = 5 }]);
            pieces.Add(Pieces.Beside([Givens([.. question.Givens.Take(first)], look, half), Givens([.. question.Givens.Skip(first)], look, half)], [0, half + Gap]) with { Before = 5 });
        }
        else if (question.Givens.Count > 0)
        {
            Piece givens = Givens(question.Givens, look, width - beside);
            pieces.Add((circuit is null ? givens : Pieces.Beside([givens, circuit], [0, width - beside + Gap])) with { Before = 4 });
        }

        if (question.Options.Count > 0)
        {
            pieces.AddRange(question.Options.Select((option, at) => Pieces.Indented(
                DrawnText.Entry(ChoiceAnswer.Letter(at), 16, option, look.Body, width - Indent), Indent) with { Before = at == 0 ? 4 : 1 }));
        }

        return pieces;
    }

    /// <summary>Pieces that stand on one page, where one holds them.</summary>
    public static IReadOnlyList<Piece> Together(IReadOnlyList<Piece> pieces, double most)
    {
        Piece whole = Pieces.Below(pieces);
        return whole.Height <= most ? [whole] : pieces;
    }

    private static Piece Answer(string label, SheetLook look) => new(AnswerRoom, (page, x, y) =>
    {
        look.Body.Draw(page, [label], x, y + AnswerRoom - look.Body.Leading);
        double from = x + look.Body.Width(label) + 6;
        page.Line(from, y + AnswerRoom - 1.5, from + AnswerLine, y + AnswerRoom - 1.5, new Pen("#333", 0.6));
    });

    private static double Scale(Picture picture, double width) => Math.Min(LargestScale, LargestShare * width / picture.Width);

    private static Piece Circuit(Picture picture, double width) =>
        new(picture.Height * Scale(picture, width), (page, x, y) => page.Place(picture, x, y, Scale(picture, width)));

    private static Piece Givens(IReadOnlyList<KeyGiven> givens, SheetLook look, double width)
    {
        DrawnFormula[] symbols = [.. givens.Select(given => FormulaReader.Find(given.Symbol) is { } formula
            ? DrawnFormula.Of(formula, look.Body.Size)
            : DrawnFormula.Letters(given.Symbol, look.Body.Size))];
        double value = Indent + symbols.Max(symbol => symbol.Width) + 9, name = value + givens.Max(given => look.Body.Width(given.Value)) + 10;
        return Pieces.Below([.. givens.Select((given, at) =>
        {
            Piece text = DrawnText.Of(given.Name, look.Body, width - name);
            double line = ((look.Body.Leading - look.Body.Size) / 2) + (0.79 * look.Body.Size), down = Math.Max(0, symbols[at].Above + 1 - line);
            return new Piece(Math.Max(text.Height, line + symbols[at].Below + 1) + down, (page, x, y) =>
            {
                symbols[at].Draw(page, x + Indent, y + down + line);
                look.Body.Draw(page, [given.Value], x + value, y + down);
                text.Draw(page, x + name, y + down);
            });
        })]);
    }
}
