using System.Net;
using System.Text;
using FrontEnd.Teaching;

namespace FrontEnd.Documents.Teaching;

/// <summary>Problem sheets as one HTML page to print: every student begins on a new page. No scripts, nothing loaded from elsewhere.</summary>
public static class ProblemHtml
{
    private const string Style =
        """
        body { font: 11pt/1.4 "Liberation Sans", "DejaVu Sans", Arial, sans-serif; color: #111; background: #fff; max-width: 48em; margin: 1.5em auto; padding: 0 1em; }
        h1 { font-size: 1.35em; margin: 0 0 .3em; } h2 { font-size: 1.05em; margin: 1.4em 0 .3em; }
        .sheet + .sheet { break-before: page; margin-top: 4em; }
        .who { font-size: 1.1em; margin: .4em 0; } .note { color: #444; font-size: .85em; margin: .2em 0 1em; }
        .points { font-weight: normal; color: #444; float: right; }
        .question { break-inside: avoid; }
        table { border-collapse: collapse; margin: .4em 0; } td, th { padding: .1em .9em .1em 0; text-align: left; vertical-align: top; font-weight: normal; }
        td.value { white-space: nowrap; font-variant-numeric: tabular-nums; } th { white-space: nowrap; font-style: italic; }
        ol.choices { list-style: upper-alpha; margin: .3em 0; } .answer { margin-top: .9em; } .line { display: inline-block; width: 16em; border-bottom: 1px solid #111; height: 1.2em; }
        @media print { body { max-width: none; margin: 0; padding: 0; } .sheet + .sheet { margin-top: 0; } @page { size: A4; margin: 18mm; } }
        """;

    public static string Page(Homework homework, IReadOnlyList<ProblemSheet> sheets)
    {
        StringBuilder html = new();
        html.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width\">\n");
        html.Append("<title>Problems: small scalp-biopotential front ends</title>\n<style>\n").Append(Style).Append("\n</style>\n</head>\n<body>\n");
        foreach (ProblemSheet sheet in sheets)
        {
            AppendSheet(html, homework, sheet);
        }

        return html.Append("</body>\n</html>\n").ToString();
    }

    private static void AppendSheet(StringBuilder html, Homework homework, ProblemSheet sheet)
    {
        html.Append("<section class=\"sheet\">\n<h1>Problems: small scalp-biopotential front ends</h1>\n<p class=\"who\">");
        html.Append(sheet.Student is { } student ? $"{Safe(student.Name)} ({Safe(student.Id)})" : "Name: <span class=\"line\"></span>");
        html.Append($" <span class=\"points\">{sheet.Points} points</span></p>\n");
        html.Append($"<p class=\"note\">{Safe(ProblemMarkdown.Footing(homework))}.<br>{Safe(ProblemMarkdown.HowToAnswer)}.</p>\n");
        foreach (Question question in sheet.Questions)
        {
            AppendQuestion(html, question);
        }

        html.Append("</section>\n");
    }

    private static void AppendQuestion(StringBuilder html, Question question)
    {
        Problem problem = question.Problem;
        html.Append("<div class=\"question\">\n");
        html.Append($"<h2>{question.Id}. {Safe(problem.Title)} <span class=\"points\">{problem.Points} points</span></h2>\n<p>{Safe(problem.Text)}</p>\n");
        if (problem.Givens.Count > 0)
        {
            html.Append("<table>\n");
            foreach (Given given in problem.Givens)
            {
                html.Append($"<tr><th scope=\"row\">{Symbol(given.Symbol)}</th><td class=\"value\">{Safe(given.Text)}</td><td>{Safe(given.Name)}</td></tr>\n");
            }

            html.Append("</table>\n");
        }

        if (problem.Answer is ChoiceAnswer choice)
        {
            html.Append("<ol class=\"choices\">\n").Append(string.Concat(choice.Options.Select(option => $"<li>{Safe(option)}</li>\n"))).Append("</ol>\n");
        }

        html.Append("<p class=\"answer\">Answer: <span class=\"line\"></span></p>\n</div>\n");
    }

    /// <summary>f_c with its index set low.</summary>
    private static string Symbol(string symbol)
    {
        int low = symbol.IndexOf('_', StringComparison.Ordinal);
        return low < 0 ? Safe(symbol) : $"{Safe(symbol[..low])}<sub>{Safe(symbol[(low + 1)..])}</sub>";
    }

    private static string Safe(string text) => WebUtility.HtmlEncode(text);
}
