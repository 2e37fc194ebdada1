using System.Text;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;
using static FrontEnd.Documents.Teaching.PrintedPage;

namespace FrontEnd.Documents.Teaching;

/// <summary>Problem sheets and the key as HTML pages to print.</summary>
public static class ProblemHtml
{
    private const string Title = "Problems";

    // More given values than this stand in two columns.
    private const int Many = 8;

    // Columns of the table of answers that a page is wide enough for.
    private const int QuestionsInTable = 12;

    /// <summary>A page of sheets.</summary>
    public static string Page(IEnumerable<string> sheets) => PrintedPage.Of(Title, sheets);

    /// <summary>The same up to its first sheet.</summary>
    internal static string Begin() => PrintedPage.Begin(Title);

    /// <summary>The key up to its first section: all answers at a glance, then every sheet with worked solutions.</summary>
    internal static string BeginKey() => PrintedPage.Begin("Key");

    /// <summary>One sheet, without answers.</summary>
    public static string Sheet(Homework homework, ProblemSheet sheet)
    {
        StringBuilder html = new();
        html.Append($"<h1>Problems: {Subject}</h1>\n<p class=\"who\">");
        html.Append(sheet.Student is { } student ? $"{Safe(student.Name)} ({Safe(student.Id)})" : "Name: <span class=\"line\"></span>");
        html.Append($" <span class=\"points\">{sheet.Points} points</span></p>\n");
        html.Append($"<p class=\"note\">{Safe(FrontEnd.Results.Cautions.Exercise)}</p>\n<p class=\"note\">{Safe(ProblemMarkdown.HowToAnswer)}.</p>\n");
        foreach (Question question in sheet.Questions)
        {
            html.Append("<div class=\"question\">\n");
            AppendQuestion(html, question);
            html.Append("<p class=\"answer\">Answer: <span class=\"line\"></span></p>\n</div>\n");
        }

        return html.Append($"<p class=\"made\">{Safe(ProblemMarkdown.Footing(sheet))}.</p>\n").ToString();
    }

    /// <summary>All answers of the class as tables.</summary>
    internal static string Glance(Homework homework, Key key)
    {
        StringBuilder html = new();
        html.Append($"<h1>Key: all answers</h1>\n<p class=\"note\">{Safe(ProblemMarkdown.MadeFrom(homework))}. The worked solutions follow, one sheet after another. Students do not get these pages.</p>\n<p class=\"note\">{Safe(FrontEnd.Results.Cautions.Exercise)}</p>\n");
        int questions = key.Sheets.Max(sheet => sheet.Questions.Count);
        for (int first = 0; first < questions; first += QuestionsInTable)
        {
            KeyQuestion[] shown = [.. key.Sheets[0].Questions.Skip(first).Take(QuestionsInTable)];
            html.Append("<table class=\"ruled glance\">\n<thead><tr><th></th>").Append(string.Concat(shown.Select(question =>
                $"<th>{question.Id}</th>"))).Append("</tr></thead>\n");
            foreach (KeySheet sheet in key.Sheets)
            {
                html.Append($"<tr><td>{Safe(sheet.Student.Length == 0 ? "all" : sheet.Student)}</td>");
                html.Append(string.Concat(sheet.Questions.Skip(first).Take(QuestionsInTable).Select(question =>
                    $"<td>{Safe(Short(question))}</td>"))).Append("</tr>\n");
            }

            html.Append("</table>\n");
        }

        return html.ToString();
    }

    private static string Short(KeyQuestion question) =>
        question.Options.Count == 0 ? question.Answer : ChoiceAnswer.Letter((int)question.Value);

    /// <summary>One sheet with worked solutions.</summary>
    internal static string Solutions(ProblemSheet sheet)
    {
        StringBuilder html = new();
        html.Append($"<h1>Key: {Safe(sheet.Student is { } student ? $"{student.Name} ({student.Id})" : "common sheet")} <span class=\"points\">{sheet.Points} points</span></h1>\n");
        foreach (Question question in sheet.Questions)
        {
            Problem problem = question.Problem;
            html.Append("<div class=\"question\">\n");
            AppendQuestion(html, question);
            html.Append("<ol class=\"steps\">\n");
            foreach (Step step in problem.Steps)
            {
                html.Append($"<li>{Safe(step.Says)}{(step.Formula.Length == 0 ? "" : $":<br><code>{Safe(step.Formula)}</code><br><code>{Safe(step.Substituted)}</code>")}</li>\n");
            }

            html.Append($"</ol>\n<p><span class=\"right\">Answer: {Safe(problem.Answer.Text)}</span>");
            html.Append(ProblemMarkdown.Range(problem.Answer) is { Length: > 0 } range ? $" (accepted: {Safe(range)})</p>\n" : "</p>\n");
            if (problem.Answer is QuantityAnswer && problem.Slips.Count > 0)
            {
                html.Append("<p class=\"note\">Slips: ").Append(Safe(string.Join("; ",
                    problem.Slips.Select(slip =>
                        $"{ProblemMarkdown.SlipValue(problem, slip)}: {slip.Kind.Remark}, {QuantityText.FormatTrimmed(slip.Share * problem.Points, "1", 3)} points")))).Append(".</p>\n");
            }

            html.Append("</div>\n");
        }

        return html.ToString();
    }

    private static void AppendQuestion(StringBuilder html, Question question)
    {
        Problem problem = question.Problem;
        html.Append($"<h2>{question.Id}. {Safe(problem.Title)} <span class=\"points\">{problem.Points} points</span></h2>\n<p>{Safe(problem.Text)}</p>\n");
        if (problem.Givens.Count > 0)
        {
            html.Append(problem.Givens.Count <= Many ? "<table>\n" : "<div class=\"long\"><table>\n");
            foreach (Given given in problem.Givens)
            {
                html.Append($"<tr><th scope=\"row\">{Symbol(given.Symbol)}</th><td class=\"value\">{Safe(given.Text)}</td><td>{Safe(given.Name)}</td></tr>\n");
            }

            html.Append(problem.Givens.Count <= Many ? "</table>\n" : "</table></div>\n");
        }

        if (problem.Answer is ChoiceAnswer choice)
        {
            html.Append("<ol class=\"choices\">\n").Append(string.Concat(choice.Options.Select(option =>
                $"<li>{Safe(option)}</li>\n"))).Append("</ol>\n");
        }
    }
}
