using FrontEnd.Numbers;

namespace FrontEnd.Teaching.Problems;

/// <summary>Which draw of a question's template each student gets, so that no two have the same answer while there are others.</summary>
/// <remarks>
/// The students come in the order of the list. Each draws from a stream of their own, and puts the numbers back and draws again where
/// someone before them has the answer, as it is printed, or they themselves in another copy of the template. Where that finds nothing, all
/// answers of the template are gone through. Once every answer is taken, a new round begins, in which each may be taken once more.
/// <para>So a student's numbers depend on those before them only where two draws meet, and on nobody behind them: a list that grows at its
/// end changes no sheet. Choices of a few letters are drawn freely.</para>
/// </remarks>
internal sealed class ClassDraws
{
    /// <summary>Draws of one student before all answers are gone through.</summary>
    private const int MostTurns = 200;

    /// <summary>Combinations of values that are gone through.</summary>
    private const int MostWalked = 20_000;

    private readonly DrawSource _source;
    private readonly IReadOnlyList<(Template Template, int Copy)> _questions;
    private readonly IReadOnlyList<string> _students;
    private readonly Lazy<Place[][]> _places;

    /// <param name="students">Their ids; one id "" for a sheet that all share.</param>
    public ClassDraws(DrawSource source, IReadOnlyList<(Template Template, int Copy)> questions, IReadOnlyList<string> students)
    {
        (_source, _questions, _students) = (source, questions, students);
        _places = new Lazy<Place[][]>(Take);
    }

    /// <summary>A student's problem, both counted from 0.</summary>
    public Problem Of(int student, int question)
    {
        (Template template, int copy) = _questions[question];
        Place place = _places.Value[question][student];
        return place.Chosen is { } chosen ? template.At(chosen) : template.For(_source, _students[student], copy, place.Turn);
    }

    private Place[][] Take()
    {
        Place[][] places = new Place[_questions.Count][];
        int[][] groups = [.. Enumerable.Range(0, _questions.Count).GroupBy(at => _questions[at].Template.Id, StringComparer.Ordinal)
            .Select(group => group.OrderBy(at => _questions[at].Copy).ToArray())];
        foreach ((int[] group, Place[][] taken) in groups.Zip(InParallel.Map(groups, Take)))
        {
            for (int i = 0; i < group.Length; i++)
            {
                places[group[i]] = taken[i];
            }
        }

        return places;
    }

    /// <summary>The places of all copies of one template.</summary>
    private Place[][] Take(int[] group)
    {
        HashSet<string>[] own = [.. _students.Select(_ => new HashSet<string>(StringComparer.Ordinal))];
        Template template = _questions[group[0]].Template;
        return template.For(_source, "").Answer is ChoiceAnswer
            ? [.. group.Select(_ => new Place[_students.Count])]
            : [.. group.Select(at => new Round(_source, template, _questions[at].Copy)).Select(round =>
                _students.Select((student, i) => round.Take(student, own[i])).ToArray())];
    }

    /// <summary>Where a student's numbers are: at a turn of their own stream, or at a combination that was looked for.</summary>
    private readonly record struct Place(int Turn, int[]? Chosen);

    /// <summary>One question's answers as they are taken.</summary>
    private sealed class Round(DrawSource source, Template template, int copy)
    {
        private readonly Dictionary<string, int> _taken = new(StringComparer.Ordinal);
        private (string Answer, int[] Chosen)[]? _all;
        private int _times;

        /// <param name="own">The student's answers in other copies; the one taken is added.</param>
        public Place Take(string student, HashSet<string> own)
        {
            (string answer, Place place) = Find(student, own);
            _taken[answer] = _taken.GetValueOrDefault(answer) + 1;
            own.Add(answer);
            return place;
        }

        private (string Answer, Place Place) Find(string student, HashSet<string> own)
        {
            for (int rounds = 0; ; rounds++, _times++)
            {
                // A template of one answer must give it again.
                bool Free(string answer) => _taken.GetValueOrDefault(answer) <= _times && (1 < rounds || !own.Contains(answer));
                for (int turn = 0; turn < MostTurns; turn++)
                {
                    string answer = template.For(source, student, copy, turn).Answer.Text;
                    if (Free(answer))
                    {
                        return (answer, new Place(turn, null));
                    }
                }

                _all ??= [.. template.Answers(MostWalked)];
                (string Answer, int[] Chosen)[] left = [.. _all.Where(one => Free(one.Answer))];
                if (0 < left.Length)
                {
                    (string answer, int[] chosen) = left[source.Stream(template.Id, $"{copy}", student, "left").NextBelow(left.Length)];
                    return (answer, new Place(0, chosen));
                }
            }
        }
    }
}
