using System.Globalization;

namespace FrontEnd.Teaching;

/// <summary>A kind of problem whose numbers are drawn.</summary>
/// <param name="Id">Stable name; with secret, seed and student it fixes the numbers.</param>
/// <param name="Level">1 to 3, see <see cref="Problem.Level"/>; also the points.</param>
public sealed record Template(string Id, Topic Topic, int Level, string Title, Func<Draw, ProblemText> Write)
{
    /// <summary>Points of the problem: two for each level.</summary>
    public int Points => 2 * Level;

    /// <summary>The problem of one student without a secret.</summary>
    public Problem For(ulong seed, string student, int copy = 1) => For(new DrawSource(seed), student, copy);

    /// <summary>The problem of one student; "" for a sheet that all share.</summary>
    /// <param name="copy">1, or more where the same template is asked several times on a sheet.</param>
    public Problem For(DrawSource source, string student, int copy = 1) =>
        With(Draw.From(source.Stream(Id, copy.ToString(CultureInfo.InvariantCulture), student)));

    public Problem With(Draw draw)
    {
        ProblemText text = Write(draw);
        return new Problem
        {
            TemplateId = Id, Topic = Topic, Level = Level, Points = Points, Title = Title, Text = text.Question, Givens = draw.Givens,
            Steps = text.Steps, Answer = text.Answer, Slips = text.Slips,
        };
    }
}
