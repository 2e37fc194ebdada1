using System.Text;
using FrontEnd.Teaching.Problems;
using static FrontEnd.Documents.Teaching.PrintedPage;

namespace FrontEnd.Documents.Teaching;

/// <summary>Marked answers to hand back: a page for each student with what was answered, what it earned, why, and the right
/// answer.</summary>
public static class ReturnedHtml
{
    public static string Page(Key key, Marks marks)
    {
        ILookup<string, KeySheet> sheets = key.Sheets.ToLookup(sheet => sheet.Student, StringComparer.Ordinal);
        return PrintedPage.Of("Marked answers",
            marks.Rows.GroupBy(row =>
                row.Student, StringComparer.Ordinal).Select(student =>
                    Student(student, sheets[student.Key].FirstOrDefault() ?? key.Sheets[0])));
    }

    private static string Student(IGrouping<string, Mark> student, KeySheet sheet)
    {
        StringBuilder html = new();
        Mark first = student.First();
        html.Append($"<h1>Marked answers: {Subject} <span class=\"points\">{Points(student.Sum(mark => mark.Points))} of {Points(student.Sum(mark => mark.Possible))} points</span></h1>\n");
        html.Append("<table class=\"ruled\">\n<thead><tr><th></th><th>question</th><th>your answer</th><th>points</th><th>right answer</th><th>remark</th></tr></thead>\n");
        foreach (Mark mark in student)
        {
            KeyQuestion question = sheet.Questions.First(one => string.Equals(one.Id, mark.Question, StringComparison.Ordinal));
            html.Append($"<tr><td>{Safe(mark.Question)}</td><td>{Safe(question.Title.Length > 0 ? question.Title : TemplateSet.Find(question.Template)?.Title ?? "")}</td><td>{Safe(mark.Answer)}</td><td class=\"value\">{Points(mark.Points)} of {Points(mark.Possible)}</td><td>{Safe(question.Answer)}</td><td>{MathMl.OfSentence(mark.Remark)}</td></tr>\n");
        }

        return PrintedPage.Section(Whose(new Student(student.Key, first.Name), ""), html.Append("</table>\n").ToString());
    }

    private static string Points(double points) => QuantityText.FormatTrimmed(points, "1", 6);
}
