using System.Collections;
using System.Globalization;
using FrontEnd.Numbers;

namespace FrontEnd.Teaching.Problems;

/// <summary>Someone who gets a sheet.</summary>
/// <param name="Id">What stands in the list of answers; with secret, seed and template it fixes the numbers.</param>
internal sealed record Student(string Id, string Name);

/// <summary>One question on a sheet.</summary>
/// <param name="Id">q1, q2, …: what the list of answers calls it.</param>
internal sealed record Question(string Id, Problem Problem)
{
    /// <summary>The id of a sheet's question, counted from 1.</summary>
    public static string IdOf(int number) => $"q{number.ToString(CultureInfo.InvariantCulture)}";
}

/// <summary>One sheet: a student's, or the one that all share.</summary>
/// <param name="Student">Null for the common sheet.</param>
/// <param name="Code">What the sheet prints to be told from every other, see <see cref="SheetCode"/>.</param>
internal sealed record ProblemSheet(Student? Student, IReadOnlyList<Question> Questions, string Code)
{
    public int Points => Questions.Sum(question => question.Problem.Points);
}

/// <summary>A set of problem sheets with their solutions: everything that sheets and keys print.</summary>
/// <param name="Seed">Stands in the key only.</param>
/// <param name="Code">From secret, seed, template set and questions; the sheets' codes follow from it.</param>
/// <param name="Sheets">Drawn when they are asked for and not kept: a sheet of a large class that is needed twice is drawn twice, and is the
/// same.</param>
internal sealed record Homework(ulong Seed, string TemplateVersion, string Code, IReadOnlyList<ProblemSheet> Sheets)
{
    /// <summary>What the numbers were drawn with.</summary>
    public static string Generator => SeededRandom.Name;

    /// <summary>True where a secret is needed to draw the sheets again.</summary>
    public bool HasSecret { get; init; }

    /// <summary>What stands on the sheets besides the questions.</summary>
    public HomeworkPlan Plan { get; init; } = new();

    /// <summary>Draws the sheets without a secret.</summary>
    public static Homework Make(IReadOnlyCollection<Topic> topics, int? level, int count, ulong seed, IReadOnlyList<Student> students) =>
        Make(topics, level, count, new DrawSource(seed), students);

    /// <summary>Draws the sheets. The same call gives the same sheets for ever, as long as the version of the templates is the
    /// same.</summary>
    /// <param name="students">Who gets a sheet; empty for one sheet that all share.</param>
    /// <param name="own">Templates that join the program's own; null for none.</param>
    /// <remarks>A student's numbers depend on the secret, the seed, the template and the student's id; on those before them in the list only
    /// where these have the same answer, see <see cref="ClassDraws"/>. Students added at the end, or another question, change nothing
    /// there.</remarks>
    public static Homework Make(
        IReadOnlyCollection<Topic> topics, int? level, int count, DrawSource source, IReadOnlyList<Student> students, IReadOnlyList<Template>? own = null) =>
        Make(TemplateSet.Choose(topics, level, count, source, own), source, students);

    /// <summary>Draws the sheets of a homework's file.</summary>
    /// <param name="plan">One without findings.</param>
    public static Homework Make(HomeworkPlan plan, DrawSource source, IReadOnlyList<Student> students) =>
        Make(plan.Choose(source), source, students, plan.Rubric) with { Plan = plan };

    private static Homework Make(
        IReadOnlyList<(Template Template, int Copy)> chosen, DrawSource source, IReadOnlyList<Student> students, Rubric? rubric = null)
    {
        Rubric earned = rubric ?? Rubric.Usual;
        string code = CodeOf(source, chosen);
        ClassDraws draws = new(source, chosen, students.Count == 0 ? [""] : [.. students.Select(student => student.Id)]);
        ProblemSheet Sheet(int at, Student? student) => new(
            student, [.. chosen.Select((_, i) => Question.IdOf(i + 1)).Select((id, i) => new Question(id, earned.Of(id).On(draws.Of(at, i))))], SheetCode.Of(code, student?.Id ?? ""));
        return new Homework(
            source.Seed, TemplateSet.Version, code,
            students.Count == 0 ? [Sheet(0, null)] : new DrawnSheets(students.Count, at => Sheet(at, students[at])))
        {
            HasSecret = source.HasSecret,
        };
    }

    private static string CodeOf(DrawSource source, IEnumerable<(Template Template, int Copy)> chosen) =>
        SheetCode.Of(source.Code([TemplateSet.Version,
            .. chosen.SelectMany(one => (string[])[one.Template.Id, one.Copy.ToString(CultureInfo.InvariantCulture), .. one.Template.Origin.Length == 0 ? (string[])[] : [one.Template.Origin]])]));

    private sealed class DrawnSheets(int count, Func<int, ProblemSheet> draw) : IReadOnlyList<ProblemSheet>
    {
        public int Count => count;

        public ProblemSheet this[int index] => draw(index);

        public IEnumerator<ProblemSheet> GetEnumerator() => Enumerable.Range(0, count).Select(draw).GetEnumerator();

        IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
    }
}
