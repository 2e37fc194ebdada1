using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>One answer that goes back: its mark and the question's key.</summary>
internal sealed record ReturnedAnswer(Mark Mark, KeyQuestion Question)
{
    public string Title => Question.Title.Length > 0 ? Question.Title : TemplateSet.Find(Question.Template)?.Title ?? "";

    public string Points => $"{ReturnedSheet.Number(Mark.Points)} of {ReturnedSheet.Number(Mark.Possible)}";

    public QuestionView View => QuestionView.Of(Question with { Title = Title });

    /// <summary>What was answered and what went wrong, in one sentence or two.</summary>
    public string Explained => (Mark.Answer.Trim().Length == 0 ? "No answer was given." : $"Your answer: {Mark.Answer.Trim()}.")
        + (Mark.Remark.Length == 0 ? "" : $" {char.ToUpperInvariant(Mark.Remark[0])}{Mark.Remark[1..].TrimEnd('.')}.");

    /// <summary>A text of a page with what a message quotes in quotes: only then, as a formula is not looked for between the signs of a message.</summary>
    public static string Quoted(string text) => string.Concat(text.Split('`').Select((piece, at) => at == 0 ? piece : (at % 2 == 1 ? "“" : "”") + piece));
}

/// <summary>What goes back to one student.</summary>
internal sealed record ReturnedSheet(Student Student, string Code, IReadOnlyList<ReturnedAnswer> Answers)
{
    public string Total => $"{Number(Answers.Sum(one => one.Mark.Points))} of {Number(Answers.Sum(one => one.Mark.Possible))} points";

    /// <summary>What did not earn all its points and can be worked out: a key of before has no solutions.</summary>
    public IEnumerable<ReturnedAnswer> ToExplain => Answers.Where(one => one.Mark.Points < one.Mark.Possible && one.Question.Steps.Count > 0);

    public static IEnumerable<ReturnedSheet> Of(Key key, Marks marks)
    {
        ILookup<string, KeySheet> sheets = key.Sheets.ToLookup(sheet => sheet.Student, StringComparer.Ordinal);
        foreach (IGrouping<string, Mark> student in marks.Rows.GroupBy(row => row.Student, StringComparer.Ordinal))
        {
            KeySheet sheet = sheets[student.Key].FirstOrDefault() ?? key.Sheets[0];
            yield return new ReturnedSheet(
                new Student(student.Key, student.First().Name), key.Code.Length == 0 ? "" : $"Sheet {SheetCode.Of(key.Code, sheet.Student)}",
                [.. student.Select(mark => new ReturnedAnswer(mark, sheet.Questions.First(one => string.Equals(one.Id, mark.Question, StringComparison.Ordinal))))]);
        }
    }

    internal static string Number(double points) => QuantityText.FormatTrimmed(points, "1", 6);
}
