using System.Collections;
using FrontEnd.Numbers;

namespace FrontEnd.Teaching.Problems;

/// <summary>Someone who gets a sheet.</summary>
/// <param name="Id">What stands in the list of answers; with seed and template it fixes the numbers.</param>
public sealed record Student(string Id, string Name);

/// <summary>One question on a sheet.</summary>
/// <param name="Id">q1, q2, …: what the list of answers calls it.</param>
public sealed record Question(string Id, Problem Problem);

/// <summary>One sheet: a student's, or the one that all share.</summary>
/// <param name="Student">Null for the common sheet.</param>
public sealed record ProblemSheet(Student? Student, IReadOnlyList<Question> Questions)
{
    public int Points => Questions.Sum(question => question.Problem.Points);
}

/// <summary>A set of problem sheets with their solutions: everything that sheets and keys print.</summary>
/// <param name="Sheets">Drawn when they are asked for and not kept: a sheet of a large class that is needed twice is drawn twice, and is the
/// same.</param>
public sealed record Homework(ulong Seed, string TemplateVersion, IReadOnlyList<ProblemSheet> Sheets)
{
    /// <summary>What the numbers were drawn with.</summary>
    public static string Generator => SeededRandom.Name;

    /// <summary>Draws the sheets. The same call gives the same sheets for ever, as long as the version of the templates is the
    /// same.</summary>
    /// <param name="students">Who gets a sheet; empty for one sheet that all share.</param>
    /// <remarks>A student's numbers depend on the seed, the template and the student's id alone: another student or another question
    /// changes nothing there.</remarks>
    public static Homework Make(IReadOnlyCollection<Topic> topics, int? level, int count, ulong seed, IReadOnlyList<Student> students)
    {
        IReadOnlyList<(Template Template, int Copy)> chosen = TemplateSet.Choose(topics, level, count, seed);
        ProblemSheet Sheet(Student? student) =>
            new(student, [.. chosen.Select((one, i) => new Question($"q{i + 1}", one.Template.For(seed, student?.Id ?? "", one.Copy)))]);
        return new Homework(seed, TemplateSet.Version, students.Count == 0 ? [Sheet(null)] : new DrawnSheets(students, Sheet));
    }

    private sealed class DrawnSheets(IReadOnlyList<Student> students, Func<Student, ProblemSheet> draw) : IReadOnlyList<ProblemSheet>
    {
        public int Count => students.Count;

        public ProblemSheet this[int index] => draw(students[index]);

        public IEnumerator<ProblemSheet> GetEnumerator() => students.Select(draw).GetEnumerator();

        IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
    }
}
