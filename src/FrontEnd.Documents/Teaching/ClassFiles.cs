using System.Text;
using FrontEnd.Documents.Files;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>The lists an instructor keeps: students and their answers in, marks out. Bad rows are findings.</summary>
internal static class ClassFiles
{
    private const int LongestId = 100;

    /// <summary>Students from lines of <c>id,name</c>; empty where the list cannot be used.</summary>
    public static IReadOnlyList<Student> Students(string text, string path, List<Finding> findings)
    {
        List<Student> students = [];
        HashSet<string> ids = new(StringComparer.Ordinal);
        foreach ((string[] fields, int line) in CsvTable.Read(text, path, ["id", "name"], findings) ?? [])
        {
            if (fields[0].Length is 0 or > LongestId)
            {
                findings.Add(Messages.BadStudent(path, line, fields[0].Length == 0
                    ? "a student has no id"
                    : "an id is longer than 100 letters"));
            }
            else if (!ids.Add(fields[0]))
            {
                findings.Add(Messages.BadStudent(path, line, $"the id `{fields[0]}` is there already"));
            }
            else
            {
                students.Add(new Student(fields[0], fields[1]));
            }
        }

        return students;
    }

    /// <summary>Answers from lines of <c>student,question,answer</c>, and <c>sheet</c> where that column is there; null where the list cannot be
    /// used.</summary>
    public static IReadOnlyList<GivenAnswer>? Answers(string text, string path, List<Finding> findings) =>
        CsvTable.Read(text, path, ["student", "question", "answer"], findings, "sheet")?.Select(row =>
            new GivenAnswer(row.Fields[0], row.Fields[1], row.Fields[2], row.Line) { Sheet = row.Fields[3] }).ToList();

    /// <summary>The list of answers to fill in: a line for each student and question, its last field empty. A sheet that all share has
    /// lines for one student, to be copied.</summary>
    public static string AnswersTable(Homework homework) => string.Concat(homework.Sheets.Select(AnswerRows).Prepend(AnswersHead));

    internal const string AnswersHead = "student,name,sheet,question,asked,answer\n";

    /// <summary>One sheet's lines of it.</summary>
    internal static string AnswerRows(ProblemSheet sheet)
    {
        StringBuilder text = new();
        foreach (Question question in sheet.Questions)
        {
            text.Row("\n", sheet.Student?.Id ?? "", sheet.Student?.Name ?? "", sheet.Code, question.Id, Asked(question.Problem), "");
        }

        return text.ToString();
    }

    /// <summary>What is asked, and the unit in which a number without one is read.</summary>
    private static string Asked(Problem problem) => problem.Answer is QuantityAnswer answer && AskedUnit.Of(answer) is { Name.Length: > 0 } unit
        ? $"{problem.Title} ({unit.Name})"
        : problem.Title;

    /// <summary>Marks as lines of <c>student,name,question,answer,points,of,slip,remark</c>, and a line of totals for each student, without
    /// points for who is absent.</summary>
    public static string MarksTable(Marks marks)
    {
        StringBuilder text = new("student,name,question,answer,points,of,slip,remark\n");
        foreach (IGrouping<string, Mark> student in marks.Rows.GroupBy(row => row.Student, StringComparer.Ordinal))
        {
            foreach (Mark mark in student)
            {
                text.Row("\n", mark.Student, mark.Name, mark.Question, mark.Answer, Number(mark.Points), Number(mark.Possible), mark.Slip,
                    mark.Remark);
            }

            text.Row("\n", student.Key, student.First().Name, "total", "", Number(student.Sum(mark => mark.Points)),
                Number(student.Sum(mark => mark.Possible)), "", "");
        }

        // Without points, so that no spreadsheet's mean counts them.
        foreach (Student absent in marks.Absent)
        {
            text.Row("\n", absent.Id, absent.Name, "total", "", "", "", "", "no answers");
        }

        return text.ToString();
    }

    private static string Number(double points) => QuantityText.FormatTrimmed(points, "1", 6);
}
