using System.Globalization;

namespace FrontEnd.Teaching;

/// <summary>A kind of problem whose numbers are drawn.</summary>
/// <param name="Id">Stable name; with secret, seed and student it fixes the numbers.</param>
/// <param name="Level">1 to 3, see <see cref="Problem.Level"/>.</param>
internal sealed record Template(string Id, Topic Topic, int Level, string Title, Func<Draw, ProblemText> Write)
{
    /// <summary>Points of the problem: two for each level, where a homework's file does not say otherwise.</summary>
    public int Points { get; init; } = 2 * Level;

    /// <summary>What it was read from, where somebody else than this program has written it; "" for the program's own.</summary>
    public string Origin { get; init; } = "";

    /// <summary>Why a numeric template has fewer than 200 different answers: a preferred series, or whole numbers; null where it has as
    /// many.</summary>
    public string? FewAnswers { get; init; }

    /// <summary>The problem of one student without a secret.</summary>
    public Problem For(ulong seed, string student, int copy = 1) => For(new DrawSource(seed), student, copy);

    /// <summary>The problem of one student; "" for a sheet that all share.</summary>
    /// <param name="copy">1, or more where the same template is asked several times on a sheet.</param>
    /// <param name="turn">0, or how often the student's numbers were put back because another one has their answer.</param>
    public Problem For(DrawSource source, string student, int copy = 1, int turn = 0)
    {
        string number = copy.ToString(CultureInfo.InvariantCulture);
        return With(Draw.From(turn == 0
            ? source.Stream(Id, number, student)
            : source.Stream(Id, number, student, turn.ToString(CultureInfo.InvariantCulture))));
    }

    public Problem With(Draw draw)
    {
        ProblemText text = Write(draw);
        return new Problem
        {
            TemplateId = Id, Topic = Topic, Level = Level, Points = Points, Title = Title, Text = text.Question, Givens = draw.Givens,
            Steps = text.Steps, Answer = text.Answer, Slips = text.Slips,
        };
    }

    /// <summary>The problem at one combination of values, as <see cref="Answers"/> gives them.</summary>
    internal Problem At(IReadOnlyList<int> chosen) => With(Draw.From(new Walk(chosen)));

    /// <summary>The different answers, as printed, each with the first combination of values that leads to it; no more than so many
    /// combinations are looked at.</summary>
    internal IEnumerable<(string Answer, int[] Chosen)> Answers(int most)
    {
        HashSet<string> known = new(StringComparer.Ordinal);
        Walk walk = new();
        for (int looked = 0; looked < most; looked++)
        {
            Problem problem = With(Draw.From(walk));
            if (walk.IsOver)
            {
                yield break;   // the template drew again and found nothing
            }

            if (known.Add(problem.Answer.Text))
            {
                yield return (problem.Answer.Text, walk.Chosen);
            }

            if (!walk.Advance())
            {
                yield break;
            }
        }
    }
}
