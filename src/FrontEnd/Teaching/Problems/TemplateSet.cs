namespace FrontEnd.Teaching.Problems;

/// <summary>All templates, and the choice of those that stand on a sheet.</summary>
internal static class TemplateSet
{
    /// <summary>Printed on keys; raised whenever a template draws or works out anything differently, or one is added.</summary>
    public const string Version = "3";

    public static IReadOnlyList<Template> All { get; } =
    [
        .. NoiseProblems.All, .. GainProblems.All, .. ConverterProblems.All, .. SamplingProblems.All, .. CmrrProblems.All,
        .. ElectrodeProblems.All, .. FilterProblems.All, .. DriveProblems.All, .. WholeChainProblems.All,
        .. JudgementProblems.All,
    ];

    /// <summary>The template of an id; null for none.</summary>
    public static Template? Find(string id) => All.FirstOrDefault(template => string.Equals(template.Id, id, StringComparison.Ordinal));

    /// <summary>The templates of some topics and of a level.</summary>
    /// <param name="topics">Topics to choose from; empty for all.</param>
    /// <param name="level">1 to 3; null for all levels.</param>
    /// <param name="own">Templates that join the program's own; null for none.</param>
    public static IReadOnlyList<Template> Fitting(IReadOnlyCollection<Topic> topics, int? level, IReadOnlyList<Template>? own = null) =>
        [.. All.Concat(own ?? []).Where(template => (topics.Count == 0 || topics.Contains(template.Topic)) && (level is null || template.Level == level))];

    /// <summary>The questions of a sheet, in its order; empty where no template fits.</summary>
    /// <param name="topics">Topics to choose from; empty for all.</param>
    /// <param name="level">1 to 3; null for all levels.</param>
    /// <remarks>
    /// The topics take turns, and within a topic seed and secret set the order, so that a longer sheet begins with the shorter one's
    /// questions. Levels are mixed so that the points stay within one question of the average: whatever the seed, a sheet weighs nearly
    /// the same. Where more are asked for than there are templates, they come again with other numbers.
    /// </remarks>
    public static IReadOnlyList<(Template Template, int Copy)> Choose(IReadOnlyCollection<Topic> topics, int? level, int count, DrawSource source,
        IReadOnlyList<Template>? own = null) =>
        Choose(Fitting(topics, level, own), count, source);

    /// <summary>The same out of a list of templates.</summary>
    /// <param name="before">Templates that stand before them on the sheet and weigh too; none of <paramref name="fitting"/>.</param>
    public static IReadOnlyList<(Template Template, int Copy)> Choose(
        IReadOnlyList<Template> fitting, int count, DrawSource source, IReadOnlyList<Template>? before = null)
    {
        List<Template> order = new Mix(fitting, source, before ?? []).Order();
        return order.Count == 0 ? [] : [.. Enumerable.Range(0, count).Select(i => (order[i % order.Count], (i / order.Count) + 1))];
    }

    /// <summary>Puts templates in order, their topics taking turns.</summary>
    private sealed class Mix(IReadOnlyList<Template> templates, DrawSource source, IReadOnlyList<Template> before)
    {
        // Half the difference between an easy and a hard question: a sheet may be one question's weight off the average.
        private const int Off = 2;

        private readonly List<Template>[] _topics = [.. templates.GroupBy(template => template.Topic)
            .OrderBy(group => source.Order("topic", Topics.Word(group.Key)))
            .Select(group => group.OrderBy(template => source.Order("template", template.Id)).ToList())];

        private readonly List<Template> _order = [.. before];

        // Of topics, not of templates: each topic weighs the same.
        private double Average { get; } = templates.Count == 0 ? 0 : templates.GroupBy(template => template.Topic).Average(group => group.Average(template => template.Points));

        public List<Template> Order()
        {
            while (_order.Count < before.Count + templates.Count)
            {
                List<List<Template>> round = [.. _topics.Where(topic => topic.Count > 0)];
                while (round.Count > 0)
                {
                    // The first topic that keeps the balance, or the one that comes nearest to it.
                    List<Template> topic = round.Find(one => one.Exists(IsBalanced)) ?? round.MinBy(one => one.Min(Distance))!;
                    Template next = Best(topic);
                    _order.Add(next);
                    topic.Remove(next);
                    round.Remove(topic);
                }
            }

            return _order[before.Count..];
        }

        /// <summary>Of the balanced ones the level that is there least often, and of several the first.</summary>
        private Template Best(List<Template> topic) => topic.OrderBy(one => IsBalanced(one) ? 0 : Distance(one))
            .ThenBy(one => _order.Count(chosen => chosen.Level == one.Level)).ThenBy(Distance).First();

        private bool IsBalanced(Template next) => Distance(next) <= Off;

        private double Distance(Template next) => Math.Abs(_order.Sum(one => one.Points) + next.Points - ((_order.Count + 1) * Average));
    }
}
