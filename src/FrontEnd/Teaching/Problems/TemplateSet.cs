namespace FrontEnd.Teaching.Problems;

/// <summary>All templates, and the choice of those that stand on a sheet.</summary>
public static class TemplateSet
{
    /// <summary>Printed on keys; raised whenever a template draws or works out anything differently, or one is added.</summary>
    public const string Version = "3";

    public static IReadOnlyList<Template> All { get; } =
    [
        .. NoiseProblems.All, .. GainProblems.All, .. ConverterProblems.All, .. SamplingProblems.All, .. CmrrProblems.All,
        .. ElectrodeProblems.All, .. FilterProblems.All, .. DriveProblems.All, .. WholeChainProblems.All,
    ];

    /// <summary>The template of an id; null for none.</summary>
    public static Template? Find(string id) => All.FirstOrDefault(template => string.Equals(template.Id, id, StringComparison.Ordinal));

    /// <summary>The templates of some topics and of a level.</summary>
    /// <param name="topics">Topics to choose from; empty for all.</param>
    /// <param name="level">1 to 3; null for all levels.</param>
    public static IReadOnlyList<Template> Fitting(IReadOnlyCollection<Topic> topics, int? level) =>
        [.. All.Where(template => (topics.Count == 0 || topics.Contains(template.Topic)) && (level is null || template.Level == level))];

    /// <summary>The questions of a sheet, in its order; empty where no template fits.</summary>
    /// <param name="topics">Topics to choose from; empty for all.</param>
    /// <param name="level">1 to 3; null for all levels.</param>
    /// <remarks>
    /// The topics take turns, and within a topic seed and secret set the order, so that a longer sheet begins with the shorter one's questions.
    /// Where more are asked for than there are templates, they come again with other numbers.
    /// </remarks>
    public static IReadOnlyList<(Template Template, int Copy)> Choose(IReadOnlyCollection<Topic> topics, int? level, int count, DrawSource source)
    {
        IReadOnlyList<Template> fitting = Fitting(topics, level);
        (Template Template, int Turn)[] turns =
        [
            .. fitting.GroupBy(template => template.Topic)
            .SelectMany(group => group.OrderBy(template => source.Order("template", template.Id))
                .Select((template, turn) => (template, turn))),
        ];
        Template[] order = [.. turns.OrderBy(one => one.Turn)
            .ThenBy(one => source.Order("topic", Topics.Word(one.Template.Topic))).Select(one => one.Template)];
        return order.Length == 0 ? [] : [.. Enumerable.Range(0, count).Select(i => (order[i % order.Length], (i / order.Length) + 1))];
    }
}
