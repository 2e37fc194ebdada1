using FrontEnd.Documents.Sheets;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>A problem sheet as text for a terminal, and how its questions are worked out.</summary>
internal static class SheetText
{
    /// <summary>The questions, without answers.</summary>
    public static string Of(ProblemSheet sheet, int width = TextPage.Width)
    {
        TextPage page = new(width);
        foreach (Question question in sheet.Questions)
        {
            Problem problem = question.Problem;
            page.Ends($"{question.Id}  {problem.Title}", Points(problem.Points));
            page.Paragraph(problem.Text, "    ");
            int symbols = problem.Givens.Select(given => given.Symbol.Length).DefaultIfEmpty().Max(), values = problem.Givens.Select(given => given.Text.Length).DefaultIfEmpty().Max();
            foreach (Given given in problem.Givens)
            {
                page.Paragraph(given.Name, $"    {given.Symbol.PadRight(symbols)}  {given.Text.PadRight(values)}  ");
            }

            if (problem.Answer is ChoiceAnswer choice)
            {
                for (int at = 0; at < choice.Options.Count; at++)
                {
                    page.Paragraph(choice.Options[at], $"    {ChoiceAnswer.Letter(at)}  ");
                }
            }

            page.Paragraph(AskedUnit.Label(problem.Answer), "    ");
            page.Blank();
        }

        page.Paragraph(FrontEnd.Results.Cautions.Exercise);
        return page.ToString();
    }

    /// <summary>The way to every answer, with what else still earns points.</summary>
    public static string Solutions(ProblemSheet sheet, int width = TextPage.Width)
    {
        TextPage page = new(width);
        foreach (Question question in sheet.Questions)
        {
            Problem problem = question.Problem;
            page.Ends($"{question.Id}  {problem.Title}", Points(problem.Points));
            foreach (Step step in problem.Steps)
            {
                page.Paragraph(step.Says, "    ");
                if (step.Formula.Length > 0)
                {
                    page.Paragraph(step.Formula, "      ");
                    page.Paragraph(step.Substituted, "      ");
                }
            }

            page.Paragraph(problem.Answer.Text + (ProblemMarkdown.Range(problem.Answer) is { Length: > 0 } range ? $" ({range} is right)" : ""), "    answer  ");
            foreach (Slip slip in problem.Slips)
            {
                page.Paragraph($"{ProblemMarkdown.SlipValue(problem, slip)}: {slip.Kind.Remark}; {Points(slip.Share * problem.Points)}", "    slip    ");
            }

            page.Blank();
        }

        page.Paragraph(FrontEnd.Results.Cautions.Exercise);
        return page.ToString();
    }

    /// <summary>"1 point", "2.5 points".</summary>
    public static string Points(double points) => $"{QuantityText.FormatTrimmed(points, "1", 3)} {(points == 1 ? "point" : "points")}";
}
