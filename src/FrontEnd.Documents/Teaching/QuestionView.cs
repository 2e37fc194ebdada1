using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>A question as pages show it, whether it was just drawn or is read from a key.</summary>
/// <param name="Id">q1, q2, …</param>
/// <param name="Template">The template's id, by which its circuit is found.</param>
/// <param name="Options">The choices; empty where a value is asked for.</param>
internal sealed record QuestionView(
    string Id, string Title, int Points, string Template, string Text, IReadOnlyList<KeyGiven> Givens, IReadOnlyList<string> Options, IReadOnlyList<KeyStep> Steps)
{
    /// <summary>The right answer, as the key prints it.</summary>
    public required string Answer { get; init; }

    /// <summary>Symbols of what is given, which are set as formulas in the sentences about it.</summary>
    public string[] Symbols => [.. Givens.Select(given => given.Symbol)];

    public static QuestionView Of(Question question) => Of(Key.QuestionOf(question));

    public static QuestionView Of(KeyQuestion question) =>
        new(question.Id, question.Title, question.Points, question.Template, question.Text, question.Givens, question.Options, question.Steps) { Answer = question.Answer };
}
