namespace FrontEnd.Teaching.Problems;

/// <summary>What marking needs: for every sheet its questions with accepted ranges, slips and points.</summary>
/// <param name="Sheets">By student; one sheet with the id "" where all share it.</param>
internal sealed record Key(ulong Seed, string TemplateVersion, IReadOnlyList<KeySheet> Sheets)
{
    /// <summary>The homework's code, from which its sheets' codes follow, see <see cref="SheetCode"/>; "" where it is not known.</summary>
    public string Code { get; init; } = "";

    /// <summary>What answers earn that are not simply right; slips have their points with them.</summary>
    public Rubric Rubric { get; init; } = Rubric.Usual;

    /// <summary>The key of a homework's sheets.</summary>
    public static Key Of(Homework homework) => Of(homework, [.. homework.Sheets.Select(Of)]);

    /// <summary>The same of sheets whose keys are there already.</summary>
    public static Key Of(Homework homework, IReadOnlyList<KeySheet> sheets) =>
        new(homework.Seed, homework.TemplateVersion, sheets) { Code = homework.Code, Rubric = homework.Plan.Rubric };

    /// <summary>The key of one sheet.</summary>
    public static KeySheet Of(ProblemSheet sheet) =>
        new(sheet.Student?.Id ?? "", sheet.Student?.Name ?? "", [.. sheet.Questions.Select(QuestionOf)]);

    /// <summary>The key of one question.</summary>
    public static KeyQuestion QuestionOf(Question question)
    {
        Problem problem = question.Problem;
        return Answered(question) with
        {
            Title = problem.Title, Text = problem.Text,
            Givens = [.. problem.Givens.Select(given => new KeyGiven(given.Symbol, given.Name, given.Text))],
            Steps = [.. problem.Steps.Select(step => new KeyStep(step.Says, step.Formula, step.Substituted))],
        };
    }

    private static KeyQuestion Answered(Question question)
    {
        Problem problem = question.Problem;
        KeySlip[] slips = [.. problem.Slips.Select(slip =>
            new KeySlip(slip.Kind.Code, slip.Kind.Remark, slip.Value, slip.Low, slip.High, slip.Share * problem.Points))];
        return problem.Answer switch
        {
            QuantityAnswer answer =>
                new KeyQuestion(question.Id, problem.TemplateId, problem.Points, answer.Text, slips) 
                {
                    Kind = answer.Kind,
                    Value = answer.Value, Low = answer.Low, High = answer.High, Unrounded = answer.Unrounded,
                    HasIntermediates = problem.Steps.Count(step => step.Substituted.Length > 0) > 1,
                },
            ChoiceAnswer answer => new KeyQuestion(question.Id, problem.TemplateId, problem.Points, answer.Text,
                slips) { Options = answer.Options, Value = answer.Right, Low = answer.Right, High = answer.Right },
            _ => throw new ArgumentOutOfRangeException(nameof(question), problem.Answer, "Answer is not handled."),
        };
    }
}

/// <summary>One student's questions.</summary>
internal sealed record KeySheet(string Student, string Name, IReadOnlyList<KeyQuestion> Questions);

/// <summary>One question's answer.</summary>
/// <param name="Answer">The right answer as text.</param>
internal sealed record KeyQuestion(string Id, string Template, int Points, string Answer, IReadOnlyList<KeySlip> Slips)
{
    /// <summary>What kind of quantity is asked for; null for a choice.</summary>
    public QuantityKind? Kind { get; init; }

    /// <summary>The choices; empty for a quantity.</summary>
    public IReadOnlyList<string> Options { get; init; } = [];

    /// <summary>The right value in the SI unit; for a choice its index.</summary>
    public double Value { get; init; }

    /// <summary>Least value taken as right, in the SI unit.</summary>
    public double Low { get; init; }

    /// <summary>Greatest value taken as right, in the SI unit.</summary>
    public double High { get; init; }

    /// <summary>The value before it was rounded to a whole number or a part of a series; null where nothing is to be rounded.</summary>
    public double? Unrounded { get; init; }

    /// <summary>True where values on the way are worked out, which somebody may round.</summary>
    public bool HasIntermediates { get; init; }

    /// <summary>The question's heading, its text and what it gives, for whoever reads the key; marking needs none of them.</summary>
    public string Title { get; init; } = "";

    public string Text { get; init; } = "";

    public IReadOnlyList<KeyGiven> Givens { get; init; } = [];

    /// <summary>How it is worked out, for the pages that students get back; empty in keys of before.</summary>
    public IReadOnlyList<KeyStep> Steps { get; init; } = [];
}

/// <summary>A value that a question gives, as it stands on the sheet.</summary>
internal sealed record KeyGiven(string Symbol, string Name, string Value);

/// <summary>A step of the worked solution, see <see cref="Step"/>.</summary>
internal sealed record KeyStep(string Says, string Formula, string Substituted);

/// <summary>A known slip: the range that gives it away, and what it still earns.</summary>
internal sealed record KeySlip(string Code, string Remark, double Value, double Low, double High, double Points);
