using FrontEnd.Documents.Sheets;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>A table of the key: a row for each student.</summary>
/// <param name="Heads">Of the columns; the first is the student's.</param>
/// <param name="Symbols">How many columns behind the first have the symbol of a given value as their head.</param>
internal sealed record KeyTable(IReadOnlyList<string> Heads, int Symbols, IReadOnlyList<IReadOnlyList<string>> Rows);

/// <summary>What the key tells of one question: how it is worked out, once, and every student's numbers.</summary>
internal sealed class KeyPart(Question question, Student? owner)
{
    private readonly List<Numbers> _rows = [];
    private readonly List<(SlipKind Kind, double Points)> _slips = [];

    /// <summary>The question of the first sheet, which is worked out in full.</summary>
    public Question Example => question;

    /// <summary>The same as pages show it.</summary>
    public QuestionView View { get; } = QuestionView.Of(question);

    /// <summary>Whose it is; null for the sheet that all share.</summary>
    public Student? Owner => owner;

    /// <summary>The slips that any student's numbers have, each with what it earns. In the table they are called by their place here.</summary>
    public IReadOnlyList<(SlipKind Kind, double Points)> Slips => _slips;

    public void Add(Student? student, Problem problem)
    {
        List<string> slips = [];
        foreach (Slip slip in problem.Answer is ChoiceAnswer ? [] : problem.Slips)
        {
            int place = _slips.FindIndex(one => one.Kind == slip.Kind);
            if (place < 0)
            {
                place = _slips.Count;
                _slips.Add((slip.Kind, slip.Share * problem.Points));
            }

            while (slips.Count <= place)
            {
                slips.Add("");
            }

            string value = ProblemMarkdown.SlipValue(problem, slip);
            slips[place] = slips[place].Length == 0 ? value : $"{slips[place]}, {value}";
        }

        _rows.Add(new Numbers(student?.Id ?? "all", [.. problem.Givens.Select(given => given.Text)],
            [.. problem.Steps.Where(step => step.Formula.Length > 0).Select(step => Result(step.Substituted))], problem.Answer.Text, Range(problem.Answer), slips));
    }

    /// <summary>Every student's numbers; null where there is one sheet, whose numbers the worked solution has.</summary>
    /// <remarks>Values that all share stand in the worked solution alone.</remarks>
    public KeyTable? Table()
    {
        if (_rows.Count < 2)
        {
            return null;
        }

        IReadOnlyList<Given> givens = Example.Problem.Givens;
        int[] drawn = [.. Enumerable.Range(0, givens.Count).Where(at => _rows.Exists(row => Get(row.Givens, at) != Get(_rows[0].Givens, at)))];
        int steps = _rows.Max(row => row.Steps.Count);

        // The last step mostly is the answer.
        steps -= steps > 0 && Example.Problem.Answer is QuantityAnswer ? 1 : 0;
        bool hasRange = _rows.Exists(row => row.Range.Length > 0);
        string[] heads =
        [
            "student", .. drawn.Select(at => givens[at].Symbol), .. Enumerable.Range(1, steps).Select(step => $"step {step}"), "answer", .. hasRange ? (string[])["accepted"] : [],
            .. _slips.Select((_, at) => $"slip {at + 1}"),
        ];
        return new KeyTable(heads, drawn.Length, [.. _rows.Select(row => (IReadOnlyList<string>)
        [
            row.Student, .. drawn.Select(at => Get(row.Givens, at)), .. Enumerable.Range(0, steps).Select(at => Get(row.Steps, at)), row.Answer, .. hasRange ? (string[])[row.Range] : [],
            .. _slips.Select((_, at) => Get(row.Slips, at)),
        ])]);
    }

    private static string Get(IReadOnlyList<string> texts, int at) => at < texts.Count ? texts[at] : "";

    /// <summary>The accepted range, its unit once where both ends have the same.</summary>
    private static string Range(Answer answer)
    {
        string[] ends = ProblemMarkdown.Range(answer).Split(" to ");
        if (ends.Length != 2)
        {
            return "";
        }

        int unit = ends[0].IndexOf(' ', StringComparison.Ordinal);
        return 0 <= unit && ends[1].EndsWith(ends[0][unit..], StringComparison.Ordinal) ? $"{ends[0][..unit]} to {ends[1]}" : $"{ends[0]} to {ends[1]}";
    }

    private static string Result(string substituted) => substituted[(substituted.LastIndexOf('=') + 1)..].Trim();

    private sealed record Numbers(string Student, IReadOnlyList<string> Givens, IReadOnlyList<string> Steps, string Answer, string Range, IReadOnlyList<string> Slips);
}

/// <summary>The key as it is printed: all answers, then each question worked out once with the numbers of all students.</summary>
internal sealed class KeyBook(Homework homework)
{
    private readonly List<KeyPart> _parts = [];
    private readonly List<IReadOnlyList<string>> _answers = [];
    private readonly List<string> _questions = [];

    public Homework Homework => homework;

    public IReadOnlyList<KeyPart> Parts => _parts;

    /// <summary>Where the worked steps come from, each source once with the questions that rest on it.</summary>
    public IReadOnlyList<(string Source, IReadOnlyList<string> Questions)> Sources =>
        [.. _parts.SelectMany(part => part.Example.Problem.Steps.Where(step => step.Formula.Length > 0).Select(step => (Text: SourceList.Of(step.Source), part.Example.Id)))
            .GroupBy(one => one.Text, StringComparer.Ordinal).Select(group => (group.Key, (IReadOnlyList<string>)[.. group.Select(one => one.Id).Distinct(StringComparer.Ordinal)]))];

    /// <summary>All answers, a row for each student.</summary>
    public KeyTable Glance => new(["student", .. _questions], 0, _answers);

    public void Add(ProblemSheet sheet)
    {
        for (int at = 0; at < sheet.Questions.Count; at++)
        {
            Question question = sheet.Questions[at];
            if (_questions.Count <= at)
            {
                _questions.Add(question.Id);
            }

            KeyPart? part = _parts.Find(one => one.Example.Id == question.Id && one.Example.Problem.TemplateId == question.Problem.TemplateId);
            if (part is null)
            {
                part = new KeyPart(question, sheet.Student);
                _parts.Add(part);
            }

            part.Add(sheet.Student, question.Problem);
        }

        _answers.Add([sheet.Student is { } student ? (student.Name.Length == 0 ? student.Id : $"{student.Id} {student.Name}") : "all", .. sheet.Questions.Select(question => Short(question.Problem.Answer))]);
    }

    /// <summary>An answer as short as it can be told: what kind of voltage it is, the question says.</summary>
    private static string Short(Answer answer) => answer is ChoiceAnswer choice
        ? ChoiceAnswer.Letter(choice.Right)
        : answer.Text.Replace(" rms", "", StringComparison.Ordinal).Replace(" p-p", "", StringComparison.Ordinal);
}
