using System.Net;
using System.Text;
using FrontEnd.Documents.Sheets;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>The frame of every page that a class prints: every section begins on a new page. No scripts, nothing loaded from
/// elsewhere.</summary>
internal static class PrintedPage
{
    public const string Subject = "small scalp-biopotential front ends";

    private const string Style =
        """
        body { font: 11pt/1.4 "Liberation Sans", "DejaVu Sans", Arial, sans-serif; color: #111; background: #fff; max-width: 48em; margin: 1.5em auto; padding: 0 1em; overflow-wrap: break-word; }
        h1 { font-size: 1.35em; margin: 0 0 .3em; } h2 { font-size: 1.05em; margin: 1.2em 0 .2em; break-after: avoid; } h1, h2 { display: flex; justify-content: space-between; gap: 1em; } h2 + p { break-after: avoid; } p { margin: .4em 0; }
        .sheet + .sheet { break-before: page; margin-top: 4em; }
        .running { font-weight: bold; border-bottom: .5pt solid #999; margin-bottom: .8em; padding-bottom: .2em; } .running p { margin: 0; } .running .code { font-weight: normal; float: right; } .running .line { width: 14em; font-weight: normal; }
        .who { font-size: 1.1em; margin: .4em 0; } .note { color: #444; font-size: .85em; margin: .2em 0 .6em; } .made { color: #444; font-size: .75em; margin-top: 1.6em; }
        .points { font-weight: normal; color: #444; white-space: nowrap; }
        .question { break-inside: avoid; }
        table { border-collapse: collapse; margin: .4em 0; } td, th { padding: .1em .9em .1em 0; text-align: left; vertical-align: top; font-weight: normal; }
        .value { white-space: nowrap; font-variant-numeric: tabular-nums; } th { white-space: nowrap; font-style: italic; }
        .given { display: flex; gap: .4em 2em; align-items: flex-start; justify-content: space-between; break-inside: avoid; } .given table { flex: 0 1 auto; max-width: 30em; } .given svg { flex: 0 0 auto; max-width: 24em; } @media screen and (max-width: 40em) { .given { flex-wrap: wrap; } .given svg { flex-shrink: 1; } } .wide svg { max-width: 30em; }
        math[display="block"] { display: block math; width: fit-content; max-width: 100%; margin: .35em 0 .35em 1em; overflow-x: auto; overflow-y: hidden; } .steps math { font-size: 1.08em; }
        .long { columns: 2; column-gap: 2em; } .long table { margin: 0; } .long td { font-size: .9em; }
        ol.choices { list-style: upper-alpha; margin: .3em 0; } .answer { margin-top: .9em; } .line { display: inline-block; width: 16em; max-width: 50vw; border-bottom: 1px solid #111; height: 1.2em; }
        ol.steps { margin: .3em 0; padding-left: 1.6em; font-size: .92em; } .steps li { break-inside: avoid; } .steps li:last-child { break-after: avoid; } .right { font-weight: bold; }
        .ruled { width: 100%; font-size: .9em; } .ruled th, .ruled td { border-bottom: .5pt solid #bbb; padding-top: .2em; padding-bottom: .2em; } .ruled th { font-style: normal; color: #444; } .ruled tr { break-inside: avoid; } .ruled thead { display: table-header-group; }
        .glance { font-size: .72em; width: auto; } .glance th, .glance td { padding-right: 1.1em; } .worked { margin-top: 2em; } .worked > .right { break-after: avoid; } .steps li:first-child { break-before: avoid; }
        @media screen and (max-width: 40em) { h1 { flex-wrap: wrap; } .glance { display: block; overflow-x: auto; } h1 + .ruled, h1 + .ruled tbody { display: block; } h1 + .ruled thead { display: none; }
        h1 + .ruled tr { display: grid; grid-template-columns: 2.4em 1fr auto; border-bottom: .5pt solid #bbb; padding: .3em 0; } h1 + .ruled td { border: 0; padding: 0 .5em 0 0; } h1 + .ruled td:nth-child(4) { grid-area: 1 / 3; padding: 0; } h1 + .ruled td:nth-child(3) { grid-area: 2 / 2 / 3 / -1; } h1 + .ruled td:nth-child(5) { grid-area: 3 / 2 / 4 / -1; } h1 + .ruled td:nth-child(6) { grid-area: 4 / 2 / 5 / -1; color: #444; }
        h1 + .ruled td:nth-child(3)::before { content: "your answer: "; color: #444; } h1 + .ruled td:nth-child(5)::before { content: "right: "; color: #444; } }
        @media print { body { max-width: none; margin: 0; padding: 0; font-size: 9.5pt; line-height: 1.32; } .sheet + .sheet { margin-top: 0; }
        .sheet { display: table; width: 100%; } .running { display: table-header-group; break-inside: avoid; } .rest { display: table-row-group; } .room .question + .question { break-before: page; } .question { break-inside: avoid; } .worked { break-before: page; margin-top: 0; } .worked + .worked { break-before: auto; margin-top: 1.4em; } @page { size: PAPER; margin: 15mm 16mm; } }
        """;

    /// <summary>What ends a page.</summary>
    public const string End = "</body>\n</html>\n";

    /// <summary>The whole page around its sections, see <see cref="Section"/>.</summary>
    public static string Of(string title, IEnumerable<string> sections, Paper? paper = null)
    {
        StringWriter html = new();
        html.Write(Begin(title, paper));
        foreach (string section in sections)
        {
            html.Write(section);
        }

        html.Write(End);
        return html.ToString();
    }

    /// <summary>What begins a page of paper, with whose it is at the top of every page that it runs on to.</summary>
    /// <param name="running">HTML of one line.</param>
    /// <param name="looks">More classes; "" for none.</param>
    public static string Section(string running, string html, string looks = "") =>
        $"<section class=\"sheet{(looks.Length == 0 ? "" : " " + looks)}\">\n<div class=\"running\"><p>{running}</p></div>\n<div class=\"rest\">\n{html}</div>\n</section>\n";

    /// <summary>Whose a page is: the student's name and number, or room to write them.</summary>
    /// <param name="fields">What is asked for in place of name and number; empty for these.</param>
    public static string Whose(Student? student, string code, IReadOnlyList<string>? fields = null) => $"<span class=\"code\">{Safe(code)}</span>" + (SheetField.Of(student, fields) switch
    {
        [] => Safe(student!.Name.Length == 0 ? student.Id : $"{student.Name} ({student.Id})"),
        var asked => string.Join("&emsp;", asked.Select(field => $"{Safe(field.Label)}: {(field.Value is { } value ? Safe(value) : "<span class=\"line\"></span>")}")),
    });

    /// <summary>A page up to its first section.</summary>
    public static string Begin(string title, Paper? paper = null)
    {
        StringBuilder html = new();
        html.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width\">\n");
        html.Append($"<title>{title}: {Subject}</title>\n<style>\n").Append(Style.ReplaceLineEndings("\n").Replace("PAPER", (paper ?? Paper.A4).Css, StringComparison.Ordinal)).Append("\n</style>\n</head>\n<body>\n");
        return html.ToString();
    }

    /// <summary>The symbol of a value, set as one.</summary>
    public static string Symbol(string symbol) => MathMl.OfText(symbol);

    public static string Safe(string text) => WebUtility.HtmlEncode(text);
}
