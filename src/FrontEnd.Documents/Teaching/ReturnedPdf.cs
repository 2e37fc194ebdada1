using FrontEnd.Documents.Sheets;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>Marked answers to hand back, as printed pages: each student begins a new one.</summary>
internal static class ReturnedPdf
{
    /// <param name="withSolutions">True for the worked solution of every question that did not earn all its points.</param>
    public static byte[] Of(Key key, Marks marks, bool withSolutions, SheetLook look) => PrintedSheet.Document(
        $"Marked answers: {PrintedPage.Subject}", FrontEnd.Numbers.InParallel.Map([.. ReturnedSheet.Of(key, marks)], sheet => Sheet(sheet, withSolutions, look)));

    internal static PrintedSheet Sheet(ReturnedSheet sheet, bool withSolutions, SheetLook look)
    {
        string name = $"{sheet.Student.Name} ({sheet.Student.Id})";
        PageFlow flow = new(look.Paper);
        flow.Begin(name, isLandscape: false, PrintedSheet.Head(sheet.Student, sheet.Code));
        double width = flow.Width;
        flow.Add([ProblemPdf.Beside("Marked answers", sheet.Total, look.Title, look, width)]);
        flow.Skip(4);
        DrawnTable.Add(flow, new KeyTable(["", "question", "your answer", "points", "right answer"], 0, [.. sheet.Answers.Select(answer => (IReadOnlyList<string>)
            [answer.Mark.Question, answer.Title, answer.Mark.Answer, answer.Points, answer.Question.Answer])]), look.Small with { Size = 8, Leading = 10.5 });
        foreach (ReturnedAnswer answer in sheet.Answers.Where(answer => answer.Mark.Remark.Length > 0 && !(withSolutions && sheet.ToExplain.Contains(answer))))
        {
            flow.Add([DrawnText.Entry($"{answer.Mark.Question}:", 24, answer.Mark.Remark, look.Body, width) with { Before = 2 }]);
        }

        foreach (ReturnedAnswer answer in withSolutions ? sheet.ToExplain : [])
        {
            flow.Add(ProblemPdf.Together(
                [
                    .. ProblemPdf.Asked(answer.View, look, width), DrawnText.Of(answer.Explained, look.Body with { IsBold = true }, width) with { Before = 4 },
                    .. KeyPdf.Solution(answer.View, look, width), DrawnText.Of($"Answer: {answer.Question.Answer}", look.Body with { IsBold = true }, width) with { Before = 4 },
                ], flow.Height));
        }

        return PrintedSheet.Of(name, flow, PrintedPage.Subject);
    }
}
