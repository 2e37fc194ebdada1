using System.Text;
using FrontEnd.Documents.Sheets;
using FrontEnd.Teaching.Problems;
using static FrontEnd.Documents.Teaching.PrintedPage;

namespace FrontEnd.Documents.Teaching;

/// <summary>Marked answers to hand back: a page for each student with what was answered, what it earned, why, and the right
/// answer.</summary>
internal static class ReturnedHtml
{
    /// <param name="withSolutions">True for the worked solution of every question that did not earn all its points.</param>
    public static string Page(Key key, Marks marks, bool withSolutions = false, Paper? paper = null) =>
        PrintedPage.Of("Marked answers", ReturnedSheet.Of(key, marks).Select(sheet => Student(sheet, withSolutions)), paper);

    private static string Student(ReturnedSheet sheet, bool withSolutions)
    {
        StringBuilder html = new();
        html.Append($"<h1>Marked answers: {Subject} <span class=\"points\">{sheet.Total}</span></h1>\n");
        html.Append("<table class=\"ruled\">\n<thead><tr><th></th><th>question</th><th>your answer</th><th>points</th><th>right answer</th><th>remark</th></tr></thead>\n");
        foreach (ReturnedAnswer answer in sheet.Answers)
        {
            html.Append($"<tr><td>{Safe(answer.Mark.Question)}</td><td>{Safe(answer.Title)}</td><td>{Safe(answer.Mark.Answer)}</td><td class=\"value\">{answer.Points}</td><td>{Safe(answer.Question.Answer)}</td><td>{ReturnedAnswer.Quoted(MathMl.OfSentence(answer.Mark.Remark))}</td></tr>\n");
        }

        html.Append("</table>\n");
        foreach (ReturnedAnswer answer in withSolutions ? sheet.ToExplain : [])
        {
            html.Append("<div class=\"question\">\n");
            ProblemHtml.AppendQuestion(html, answer.View);
            html.Append($"<p>{ReturnedAnswer.Quoted(MathMl.OfSentence(answer.Explained))}</p>\n");
            ProblemHtml.AppendSolution(html, answer.View);
            html.Append("</div>\n");
        }

        return PrintedPage.Section(Whose(sheet.Student, sheet.Code), html.ToString());
    }
}
