using System.Text;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Sheets;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>All questions of a homework as a table, RFC 4180: a row for each question of each sheet, the first row naming the columns.</summary>
/// <remarks>Numbers have a point and stand in the row's unit. A choice has the unit <c>choice</c>, its options in the text and a letter as its answer.</remarks>
internal static class QuestionBank
{
    private static readonly string[] Columns = ["id", "text", "givens", "unit", "answer", "low", "high", "solution"];

    public static string Of(Homework homework)
    {
        StringBuilder text = new();
        text.Row(CsvSheet.End, Columns);
        foreach (BankItem item in BankItem.Of(homework))
        {
            Problem problem = item.Problem;
            string givens = string.Join("; ", problem.Givens.Select(given => $"{given.Symbol} = {given.Text} ({given.Name})"));
            string[] answer = problem.Answer switch
            {
                QuantityAnswer quantity when AskedUnit.Of(quantity) is var unit => [unit.Name, unit.Number(quantity.Value), unit.Number(quantity.Low), unit.Number(quantity.High)],
                ChoiceAnswer choice => ["choice", ChoiceAnswer.Letter(choice.Right), "", ""],
                _ => throw new ArgumentOutOfRangeException(nameof(homework), problem.Answer, "Answer is not handled."),
            };
            text.Row(CsvSheet.End, [item.Id, Asked(problem), givens, .. answer, Solution(problem)]);
        }

        return text.ToString();
    }

    private static string Asked(Problem problem) => problem.Answer is ChoiceAnswer choice
        ? $"{problem.Text} {string.Join("; ", choice.Options.Select((option, at) => $"{ChoiceAnswer.Letter(at)}: {option}"))}"
        : problem.Text;

    private static string Solution(Problem problem) => string.Join(" ", problem.Steps.Select((step, at) =>
        $"{at + 1}. {step.Says}{(step.Formula.Length == 0 ? "." : $": {step.Formula}: {step.Substituted}.")}"));
}

/// <summary>A question of a sheet under a name that no other question of the homework has.</summary>
/// <param name="Id">A name as XML has them: the question and its sheet's code, which tells nothing of the student.</param>
internal sealed record BankItem(string Id, string Question, Problem Problem)
{
    /// <summary>All of a homework, sheet by sheet.</summary>
    public static IEnumerable<BankItem> Of(Homework homework)
    {
        const int Batch = 64;
        HashSet<string> used = new(StringComparer.Ordinal);
        foreach (int[] batch in Enumerable.Range(0, homework.Sheets.Count).Chunk(Batch))
        {
            foreach (ProblemSheet sheet in FrontEnd.Numbers.InParallel.Map(batch, at => homework.Sheets[at]))
            {
                foreach (Question question in sheet.Questions)
                {
                    string id = $"{question.Id}-{sheet.Code}", own = id;
                    for (int number = 2; !used.Add(own); number++)
                    {
                        own = $"{id}-{number}";
                    }

                    yield return new BankItem(own, question.Id, question.Problem);
                }
            }
        }
    }
}
