namespace FrontEnd.Teaching.Problems;

/// <summary>What the sheets are printed on.</summary>
internal enum SheetPaper
{
    A4,
    Letter,
}

/// <summary>Where a question is worked out.</summary>
internal enum WorkingSpace
{
    /// <summary>A line for the answer alone.</summary>
    Line,

    /// <summary>A side of its own for each question.</summary>
    Side,
}

/// <summary>A homework as its file says it: what is asked, and what stands on the sheets.</summary>
internal sealed record HomeworkPlan
{
    /// <summary>Questions where nothing says how many.</summary>
    public const int UsualCount = 10;

    /// <summary>Printed above the questions; "" for none.</summary>
    public string Course { get; init; } = "";

    /// <summary>Until when it is handed in, as it is to be printed; "" for none.</summary>
    public string Due { get; init; } = "";

    /// <summary>Ids of templates that are asked first, in this order; one that is listed twice is asked twice.</summary>
    public IReadOnlyList<string> Templates { get; init; } = [];

    /// <summary>Topics that the other questions are chosen from, in their words; empty for all.</summary>
    public IReadOnlyList<string> Topics { get; init; } = [];

    /// <summary>1 to 3: the level of the questions that are chosen; null for all levels, mixed.</summary>
    public int? Level { get; init; }

    /// <summary>Questions on a sheet; null for as many as templates are listed, or <see cref="UsualCount"/> where none is or topics are given too.</summary>
    public int? Count { get; init; }

    public int Seed { get; init; } = 1;

    public SheetPaper Paper { get; init; }

    public WorkingSpace Space { get; init; }

    /// <summary>What is asked for at the top of a sheet; empty for name and number. The first is what the list of students calls their name, the
    /// second their id: both stand on a student's own sheet already.</summary>
    public IReadOnlyList<string> Fields { get; init; } = [];

    /// <summary>Files of own templates, as they are named in the homework's file; what they hold is <see cref="OwnTemplates"/>.</summary>
    public IReadOnlyList<string> Own { get; init; } = [];

    /// <summary>Templates that join the program's own, to be listed or chosen by topic like them.</summary>
    public IReadOnlyList<Template> OwnTemplates { get; init; } = [];

    /// <summary>Points by the ids of templates; what is not named has two for each level.</summary>
    public IReadOnlyDictionary<string, int> Points { get; init; } = new Dictionary<string, int>(StringComparer.Ordinal);

    /// <summary>What answers earn that are not simply right.</summary>
    public Rubric Rubric { get; init; } = Rubric.Usual;

    /// <summary>Course and date due as they stand above the questions; "" for neither.</summary>
    public string Heading => string.Join("; ", new[] { Course, Due.Length == 0 ? "" : $"due {Due}" }.Where(part => part.Length > 0));

    /// <summary>Questions on a sheet.</summary>
    public int Questions => Count ?? (Templates.Count > 0 && Topics.Count == 0 ? Templates.Count : Math.Max(UsualCount, Templates.Count));

    /// <summary>What cannot be asked: templates and topics that there are not, and more templates than questions.</summary>
    public IReadOnlyList<Finding> Check()
    {
        string[] known = [.. All().Select(template => template.Id)];
        List<Finding> findings =
        [
            .. Templates.Where(id => !known.Contains(id, StringComparer.Ordinal)).Select(id => Messages.NoTemplateOf(id, Nearest.Of(id, known))),
            .. Points.Keys.Where(id => !known.Contains(id, StringComparer.Ordinal))
                .Select(id => Messages.NoTemplateOf(id, Nearest.Of(id, known)) with { Field = $"{HomeworkFields.PointsKey}.{id}" }),
            .. Topics.Where(word => Teaching.Topics.Find(word) is null)
                .Select(word => Messages.NoTopic(word, Nearest.Of(word, Teaching.Topics.Words), Teaching.Topics.Words) with { Field = HomeworkFields.TopicsKey }),
        ];
        if (Questions < Templates.Count)
        {
            findings.Add(Messages.MoreTemplatesThanQuestions(Templates.Count, Questions));
        }

        string[] questions = [.. Enumerable.Range(1, Questions).Select(Question.IdOf)];
        findings.AddRange(Rubric.Questions.Keys.Where(id => !questions.Contains(id, StringComparer.OrdinalIgnoreCase))
            .Select(id => Messages.NoQuestionOf($"{HomeworkFields.RubricKey}.{id}", id, questions[^1])));
        if (HomeworkFields.MostFields < Fields.Count || Fields.Any(field => field.Trim().Length is 0 or > HomeworkFields.LongestField))
        {
            findings.Add(Messages.FieldsUnfit(Fields.Count, HomeworkFields.MostFields, HomeworkFields.LongestField));
        }

        if (findings.Count == 0 && Templates.Count < Questions && Rest().Count == 0)
        {
            findings.Add(Messages.NoTemplate() with { Field = HomeworkFields.TopicsKey });
        }

        return findings;
    }

    /// <summary>The questions of a sheet, in its order; only of a plan without findings.</summary>
    public IReadOnlyList<(Template Template, int Copy)> Choose(DrawSource source)
    {
        Dictionary<string, Template> known = All().ToDictionary(template => template.Id, StringComparer.Ordinal);
        Template[] listed = [.. Templates.Select(id => known[id])];
        List<(Template Template, int Copy)> chosen = [];
        foreach (Template template in listed)
        {
            chosen.Add((template, chosen.Count(one => one.Template == template) + 1));
        }

        chosen.AddRange(TemplateSet.Choose(Rest(), Questions - listed.Length, source, listed));
        return chosen;
    }

    /// <summary>What the questions that are not listed are chosen from.</summary>
    private IReadOnlyList<Template> Rest()
    {
        Topic[] topics = [.. Topics.Select(Teaching.Topics.Find).OfType<Topic>()];
        return [.. TemplateSet.Fitting(topics, Level, OwnTemplates).Where(template => !Templates.Contains(template.Id, StringComparer.Ordinal)).Select(Weighed)];
    }

    private IEnumerable<Template> All() => TemplateSet.All.Concat(OwnTemplates).Select(Weighed);

    private Template Weighed(Template template) => Points.TryGetValue(template.Id, out int points) ? template with { Points = points } : template;
}
