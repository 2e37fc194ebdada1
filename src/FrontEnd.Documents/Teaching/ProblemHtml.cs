using System.Text;
using FrontEnd.Documents.Drawing;
using FrontEnd.Teaching.Problems;
using FrontEnd.Textbook;
using static FrontEnd.Documents.Teaching.PrintedPage;

namespace FrontEnd.Documents.Teaching;

/// <summary>Problem sheets and the key as HTML pages to print.</summary>
internal static class ProblemHtml
{
    private const string Title = "Problems";

    // More given values than this stand in two columns.
    private const int Many = 8;

    // Columns of a table that a page is wide enough for.
    private const int ColumnsOfTable = 12;

    /// <summary>A page of sheets.</summary>
    public static string Page(IEnumerable<string> sheets, SheetLook? look = null) => PrintedPage.Of(Title, sheets, look?.Paper);

    /// <summary>The same up to its first sheet.</summary>
    internal static string Begin(SheetLook look) => PrintedPage.Begin(Title, look.Paper);

    /// <summary>One sheet, without answers.</summary>
    public static string Sheet(ProblemSheet sheet, SheetLook? look = null)
    {
        StringBuilder html = new();
        html.Append($"<h1>Problems: {Subject} <span class=\"points\">{SheetText.Points(sheet.Points)}</span></h1>\n");
        html.Append(look is { Under.Length: > 0 } ? $"<p>{Safe(look.Under)}</p>\n" : "");
        html.Append($"<p class=\"note\">{Safe(FrontEnd.Results.Cautions.Exercise)}</p>\n<p class=\"note\">{MathMl.OfSentence(ProblemMarkdown.HowToAnswer)}.</p>\n");
        foreach (Question question in sheet.Questions)
        {
            html.Append("<div class=\"question\">\n");
            AppendQuestion(html, QuestionView.Of(question));
            html.Append($"<p class=\"answer\">{Safe(AskedUnit.Label(question.Problem.Answer))}: <span class=\"line\"></span></p>\n</div>\n");
        }

        return PrintedPage.Section(Whose(sheet.Student, ProblemMarkdown.Footing(sheet), look?.Fields), html.ToString(), look?.RoomToWork == true ? "room" : "");
    }

    /// <summary>The key: all answers, then every question worked out once with the numbers of the whole class.</summary>
    internal static string Key(KeyBook book, SheetLook? look = null)
    {
        StringBuilder html = new();
        html.Append($"<h1>Key: all answers</h1>\n<p class=\"note\">{Safe(ProblemMarkdown.MadeFrom(book.Homework))}. Behind this table every question is worked out once, with the numbers of all. Students do not get these pages.</p>\n<p class=\"note\">{Safe(FrontEnd.Results.Cautions.Exercise)}</p>\n");
        AppendTable(html, book.Glance);
        foreach (KeyPart part in book.Parts)
        {
            html.Append("<div class=\"worked\">\n");
            AppendQuestion(html, part.View);
            html.Append($"<p class=\"right\">{Safe(part.Owner is { } owner ? $"Worked out with the numbers of {owner.Id}" : "Worked out")}</p>\n");
            AppendSolution(html, part.View, ProblemMarkdown.Range(part.Example.Problem.Answer));
            if (part.Slips.Count > 0)
            {
                html.Append("<p class=\"note\">").Append(MathMl.OfSentence(KeyPdf.SlipLegend(part))).Append("</p>\n");
            }

            if (part.Table() is { } table)
            {
                AppendTable(html, table);
            }

            html.Append("</div>\n");
        }

        html.Append("<div class=\"worked\">\n<h2>Sources</h2>\n<ul>\n").Append(string.Concat(book.Sources.Select(one => $"<li>{MathMl.OfSentence(one.Source)} <span class=\"note\">({string.Join(", ", one.Questions)})</span></li>\n"))).Append("</ul>\n</div>\n");
        return PrintedPage.Of("Key", [PrintedPage.Section(Whose(new Student(book.Homework.Code, "Key, not for students"), ""), html.ToString())], look?.Paper);
    }

    /// <summary>The steps of a worked solution and its answer.</summary>
    /// <param name="range">What is accepted, for a key; "" for nothing said of it.</param>
    internal static void AppendSolution(StringBuilder html, QuestionView question, string range = "")
    {
        html.Append("<ol class=\"steps\">\n");
        foreach (KeyStep step in question.Steps)
        {
            html.Append($"<li>{MathMl.OfSentence(step.Says, question.Symbols)}{(step.Formula.Length == 0 ? "" : $":\n{Line(step.Formula)}{Line(step.Substituted)}")}</li>\n");
        }

        html.Append($"</ol>\n<p><span class=\"right\">Answer: {Safe(question.Answer)}</span>{(range.Length > 0 ? $" (accepted: {Safe(range)})" : "")}</p>\n");
    }

    private static string Line(string formula) => FormulaReader.Find(formula) is { } tree ? MathMl.Of(tree, isDisplay: true) + "\n" : $"<p>{Safe(formula)}</p>\n";

    private static void AppendTable(StringBuilder html, KeyTable table)
    {
        for (int first = 1; first < table.Heads.Count; first += ColumnsOfTable)
        {
            int[] columns = [0, .. Enumerable.Range(first, Math.Min(ColumnsOfTable, table.Heads.Count - first))];
            html.Append("<table class=\"ruled glance\">\n<thead><tr>").Append(string.Concat(columns.Select(at =>
                $"<th>{(0 < at && at <= table.Symbols ? Symbol(table.Heads[at]) : Safe(table.Heads[at]))}</th>"))).Append("</tr></thead>\n");
            foreach (IReadOnlyList<string> row in table.Rows)
            {
                html.Append("<tr>").Append(string.Concat(columns.Select(at => $"<td>{Safe(row[at])}</td>"))).Append("</tr>\n");
            }

            html.Append("</table>\n");
        }
    }

    /// <summary>A question with its givens, its circuit and its choices.</summary>
    internal static void AppendQuestion(StringBuilder html, QuestionView question)
    {
        string circuit = QuestionPicture.Of(question) is { } picture ? Sized(picture) : "";
        bool isMany = Many < question.Givens.Count;
        html.Append($"<h2>{question.Id}. {Safe(question.Title)} <span class=\"points\">{SheetText.Points(question.Points)}</span></h2>\n<p>{MathMl.OfSentence(question.Text, question.Symbols)}</p>\n");
        if (question.Givens.Count > 0)
        {
            html.Append(isMany ? $"<div class=\"wide\">{circuit}</div>\n<div class=\"long\"><table>\n" : "<div class=\"given\">\n<table>\n");
            foreach (KeyGiven given in question.Givens)
            {
                html.Append($"<tr><th scope=\"row\">{Symbol(given.Symbol)}</th><td class=\"value\">{Safe(given.Value)}</td><td>{Safe(given.Name)}</td></tr>\n");
            }

            html.Append(isMany ? "</table></div>\n" : $"</table>\n{circuit}</div>\n");
        }

        if (question.Options.Count > 0)
        {
            html.Append("<ol class=\"choices\">\n").Append(string.Concat(question.Options.Select(option =>
                $"<li>{MathMl.OfSentence(option)}</li>\n"))).Append("</ol>\n");
        }
    }

    /// <summary>A circuit whose letters are as large as those around it.</summary>
    private static string Sized(Picture picture) =>
        Svg.Of(picture).Replace("<svg ", $"<svg width=\"{Svg.N(picture.Width * 0.08)}em\" font-family=\"DejaVu Sans, Verdana, sans-serif\" ", StringComparison.Ordinal);
}
