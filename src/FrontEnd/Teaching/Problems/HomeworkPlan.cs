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

    /// <summary>Course and date due as they stand above the questions; "" for neither.</summary>
    public string Heading => string.Join("; ", new[] { Course, Due.Length == 0 ? "" : $"due {Due}" }.Where(part => part.Length > 0));

    /// <summary>Questions on a sheet.</summary>
    public int Questions => Count ?? (Templates.Count > 0 && Topics.Count == 0 ? Templates.Count : Math.Max(UsualCount, Templates.Count));

    /// <summary>What cannot be asked: templates and topics that there are not, and more templates than questions.</summary>
    public IReadOnlyList<Finding> Check()
    {
        string[] known = [.. TemplateSet.All.Select(template => template.Id)];
        List<Finding> findings =
        [
            .. Templates.Where(id => TemplateSet.Find(id) is null).Select(id => Messages.NoTemplateOf(id, Nearest.Of(id, known))),
            .. Topics.Where(word => Teaching.Topics.Find(word) is null)
                .Select(word => Messages.NoTopic(word, Nearest.Of(word, Teaching.Topics.Words), Teaching.Topics.Words) with { Field = HomeworkFields.TopicsKey }),
        ];
        if (Questions < Templates.Count)
        {
            findings.Add(Messages.MoreTemplatesThanQuestions(Templates.Count, Questions));
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
        Template[] listed = [.. Templates.Select(id => TemplateSet.Find(id)!)];
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
        return [.. TemplateSet.Fitting(topics, Level).Where(template => !Templates.Contains(template.Id, StringComparer.Ordinal))];
    }
}
