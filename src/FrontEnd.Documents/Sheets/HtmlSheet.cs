using System.Text.RegularExpressions;
using System.Text;
using FrontEnd.Documents.Drawing;

namespace FrontEnd.Documents.Sheets;

/// <summary>The sheet as one HTML file that needs nothing else: prints on A4, vector drawings, no script.</summary>
internal static partial class HtmlSheet
{
    private const string Style = """
        body { font-family: sans-serif; font-size: 10.5pt; line-height: 1.35; color: #111; background: #fff; margin: 0 auto; max-width: 190mm; padding: 8mm; }
        h1 { font-size: 17pt; margin: 0 0 2mm; } h2 { font-size: 12pt; margin: 5mm 0 1.5mm; break-after: avoid; white-space: pre-wrap; } h3 { font-size: 10pt; font-weight: normal; margin: 3mm 0 0; break-after: avoid; }
        p { margin: 1mm 0; } ul, ol { margin: 1mm 0; padding-left: 6mm; } .small { font-size: 8.5pt; line-height: 1.25; } .small .number { padding-right: 2.5mm; }
        .warning { border: 1.5pt solid #111; border-left-width: 6pt; padding: 1.5mm 3mm; font-weight: bold; margin: 2mm 0; }
        table { border-collapse: collapse; width: 100%; break-inside: auto; } tr, thead { break-inside: avoid; }
        th { text-align: left; font-weight: normal; color: #444; border-bottom: 0.8pt solid #333; } th, td { padding: 0.6mm 2.5mm 0.6mm 0; vertical-align: top; }
        td { border-bottom: 0.4pt solid #ddd; } .whole { white-space: nowrap; } .box { min-width: 14mm; } td.box { border: 0.6pt solid #333; } .number { text-align: right; white-space: nowrap; padding-right: 4mm; } tr.sum td { border-top: 0.8pt solid #333; font-weight: bold; } tr.head th { color: #111; font-weight: bold; padding-top: 1mm; } tr.head { break-after: avoid; }
        td.word { white-space: nowrap; font-weight: bold; } td.word.fail, td.word.marginal { border-left: 4pt solid #d55e00; padding-left: 1.5mm; } td.word.pass { border-left: 4pt solid #0072b2; padding-left: 1.5mm; }
        td.word.marginal { border-left-style: double; } td.word.open { border-left: 4pt dotted #444; padding-left: 1.5mm; } td.word.none { border-left: 4pt solid #bbb; padding-left: 1.5mm; } .quiet { color: #444; font-size: 9pt; }
        .many { columns: 2; column-gap: 8mm; }
        .pair { display: flex; gap: 8mm; align-items: flex-start; } .pair > div { flex: 1 1 0; min-width: 0; } .pair > div + div { flex-grow: 1.15; } .pair table { font-size: 0.83em; } .pair .number { padding-right: 1.7mm; } .pair .number:last-child { padding-right: 0; } .pair td:first-child, .pair th:first-child { white-space: nowrap; }
        svg { width: 100%; height: auto; display: block; font-family: sans-serif; break-inside: avoid; margin: 1mm 0; }
        .figures { columns: 2; column-gap: 8mm; } figure { margin: 0 0 2.5mm; break-inside: avoid; } figure h3 { margin-top: 1mm; }
        .page + .page { break-before: page; } .landscape { page: landscape; } .stamp { border: 2pt solid #d55e00; color: #111; font-size: 14pt; font-weight: bold; text-align: center; text-transform: uppercase; letter-spacing: 0.1em; padding: 0.5mm; margin: 0 0 2mm; }
        .page + .page { border-top: 1pt solid #999; margin-top: 8mm; padding-top: 2mm; }
        @media (max-width: 700px) { body { padding: 4mm; overflow-wrap: break-word; } .pair { display: block; } .many, .figures { columns: 1; } th, td { padding-right: 1.5mm; } .number { padding-right: 1.5mm; } table { display: block; overflow-x: auto; } .page { overflow-x: auto; } .page > svg { width: 640px; }
        .verdicts tbody, .verdicts thead { display: block; } .verdicts tr { display: grid; grid-template-columns: 1fr 1.5fr 0.9fr; border-bottom: 0.4pt solid #ddd; padding: 1mm 0; } .verdicts td, .verdicts th { border: 0; } .verdicts th:nth-child(-n+2) { display: none; } .verdicts td:nth-child(-n+2), .verdicts th:nth-child(-n+2) { grid-column: 1 / -1; } .verdicts .number { white-space: normal; text-align: left; padding-left: 1.5mm; } .verdicts td:nth-child(2), .verdicts th { padding-left: 1.5mm; } }
        @page { size: A4; margin: 9mm 11mm; } @page landscape { size: A4 landscape; margin: 9mm 11mm; } @media print { body { padding: 0; max-width: none; font-size: 8.5pt; } .small { font-size: 6.6pt; line-height: 1.12; } .many { columns: 3; column-gap: 5mm; } h1 { font-size: 14pt; } h2 { margin: 2.5mm 0 1mm; font-size: 10pt; } h3 { margin-top: 1.5mm; font-size: 8.5pt; } .quiet { font-size: 7.5pt; } th, td { padding-top: 0.3mm; padding-bottom: 0.3mm; } .page + .page { border: 0; margin: 0; padding: 0; } .page > svg { max-height: 80mm; } .landscape > svg { max-height: 178mm; } .landscape > .stamp ~ svg { max-height: 164mm; } }
        """;

    /// <summary>Lists of so many small items stand in two columns.</summary>
    internal const int Many = 8;

    public static string Of(Sheet sheet) => Of(sheet.Design.Name, SheetBody.Pages(sheet));

    /// <summary>Pages under a title, as one file.</summary>
    internal static string Of(string title, IReadOnlyList<SheetPage> pages)
    {
        StringBuilder html = new();
        string name = Svg.Escape(title);
        html.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>").Append(name).Append("</title>\n<style>\n").Append(Style.ReplaceLineEndings("\n"));
        if (pages.Select(page => page.Stamp).FirstOrDefault(text => text is not null) is { } margin)
        {
            // A page may run on to a second sheet of paper: the margin is stamped too, where the browser prints margins.
            html.Append("\n@page { @top-center { content: \"").Append(margin.ToUpperInvariant()).Append("\"; font: bold 12pt sans-serif; } }");
        }

        html.Append("\n</style>\n</head>\n<body>\n");
        bool first = true;
        foreach (SheetPage page in pages)
        {
            html.Append(page.IsLandscape ? "<section class=\"page landscape\">\n" : "<section class=\"page\">\n");
            if (page.Stamp is { } stamp)
            {
                html.Append("<p class=\"stamp\">").Append(Svg.Escape(stamp)).Append("</p>\n");
            }

            if (first)
            {
                html.Append("<h1>").Append(name).Append("</h1>\n");
                first = false;
            }

            Write(html, page.Blocks);
            html.Append("</section>\n");
        }

        return html.Append("</body>\n</html>\n").ToString();
    }

    private static void Write(StringBuilder html, IEnumerable<Block> blocks)
    {
        foreach (Block block in blocks)
        {
            Write(html, block);
        }
    }

    private static void Write(StringBuilder html, Block block)
    {
        switch (block)
        {
            case Block.Heading heading:
                html.Append("<h2>").Append(Together(Svg.Escape(Capital(heading.Text)))).Append("</h2>\n");
                break;
            case Block.Paragraph paragraph:
                html.Append("<p>").Append(Svg.Escape(Value(Capital(paragraph.Text)))).Append("</p>\n");
                break;
            case Block.Warning warning:
                html.Append("<p class=\"warning\">").Append(Svg.Escape(warning.Text)).Append("</p>\n");
                break;
            case Block.Items items:
                Write(html, items);
                break;
            case Block.Table table:
                Write(html, table);
                break;
            case Block.Verdicts verdicts:
                Write(html, verdicts);
                break;
            case Block.Pair pair:
                html.Append("<div class=\"pair\"><div>\n");
                Write(html, pair.Left);
                html.Append("</div><div>\n");
                Write(html, pair.Right);
                html.Append("</div></div>\n");
                break;
            case Block.Drawing drawing:
                html.Append(drawing.Title.Length == 0 ? "" : $"<h3>{Svg.Escape(Capital(drawing.Title))}</h3>\n").Append(Svg.Of(drawing.Picture));
                break;
            case Block.Drawings drawings:
                html.Append("<h2>").Append(Block.Drawings.Title).Append("</h2>\n<div class=\"figures\">\n");
                foreach (Block.Drawing one in drawings.All)
                {
                    html.Append("<figure>\n");
                    Write(html, one);
                    html.Append("</figure>\n");
                }

                html.Append("</div>\n");
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block), block, "Block is not handled.");
        }
    }

    private static void Write(StringBuilder html, Block.Items items)
    {
        string tag = items.Numbered ? "ol" : "ul";
        html.Append('<').Append(tag).Append(!items.Small
            ? ">\n"
            : items.Texts.Count < Many
            ? " class=\"small\">\n"
            : " class=\"small many\">\n");
        foreach (string text in items.Texts)
        {
            html.Append("<li>").Append(Svg.Escape(Value(items.AsWritten ? text : Capital(text)))).Append("</li>\n");
        }

        html.Append("</").Append(tag).Append(">\n");
    }

    private static void Write(StringBuilder html, Block.Table table)
    {
        html.Append(table.Small ? "<table class=\"small\">\n" : "<table>\n");
        if (table.Columns.Any(column => column.Head.Length > 0))
        {
            html.Append("<thead><tr>");
            foreach (Column column in table.Columns)
            {
                html.Append(column.IsBox ? "<th class=\"box\">" : column.IsText ? "<th>" : "<th class=\"number\">").Append(Svg.Escape(column.Head)).Append("</th>");
            }

            html.Append("</tr></thead>\n");
        }

        foreach (Row row in table.Rows)
        {
            if (row.IsHeading)
            {
                html.Append("<tr class=\"head\"><th colspan=\"").Append(table.Columns.Count).Append("\">").Append(Svg.Escape(Capital(row.Cells[0]))).Append("</th></tr>\n");
                continue;
            }

            // A label with nothing beside it may run on over the empty cells.
            int wide = row.Cells.Count == 0 || !table.Columns[0].IsText ? 1 : 1 + row.Cells.Skip(1).TakeWhile((cell, at) => cell.Length == 0 && !table.Columns[at + 1].IsBox).Count();
            html.Append(row.IsSum ? "<tr class=\"sum\">" : "<tr>");
            if (1 < wide)
            {
                html.Append("<td colspan=\"").Append(wide).Append("\">").Append(Svg.Escape(row.Cells[0]).Replace("\n", "<br>", StringComparison.Ordinal)).Append("</td>");
            }

            for (int at = wide == 1 ? 0 : wide; at < row.Cells.Count; at++)
            {
                Column column = table.Columns[at];
                html.Append(column.IsBox ? "<td class=\"box\">" : column.IsWhole ? "<td class=\"whole\">" : column.IsText ? "<td>" : "<td class=\"number\">")
                    .Append(Svg.Escape(Value(row.Cells[at])).Replace("\n", "<br>", StringComparison.Ordinal)).Append("</td>");
            }

            html.Append("</tr>\n");
        }

        html.Append("</table>\n");
    }

    private static void Write(StringBuilder html, Block.Verdicts verdicts)
    {
        html.Append("<table class=\"verdicts\">\n<thead><tr><th>verdict</th><th>what is judged</th><th class=\"number\">value</th><th class=\"number\">limit</th><th class=\"number\">margin</th></tr></thead>\n");
        foreach (Result result in verdicts.Results)
        {
            Verdict verdict = result.Verdict;
            string tint = verdict.Kind == VerdictKind.NotJudged ? "none" : Wording.Word(verdict.Kind);
            html.Append("<tr><td class=\"word ").Append(tint).Append("\">").Append(Wording.Sign(verdict.Kind)).Append(' ').Append(Wording.Word(verdict.Kind)).Append("</td><td>").Append(Svg.Escape(Capital(result.Name)));
            if (verdict.Dominates is { Length: > 0 } dominates)
            {
                html.Append("<br><span class=\"quiet\">most of it: ").Append(Svg.Escape(dominates)).Append("</span>");
            }

            html.Append("</td><td class=\"number\">").Append(Svg.Escape(Value(Wording.Value(result)))).Append("</td><td class=\"number\">").Append(Svg.Escape(Value(Wording.Limit(verdict))))
                .Append("</td><td class=\"number\">").Append(Svg.Escape(Value(Wording.Margin(result)))).Append("</td></tr>\n");
        }

        html.Append("</table>\n");
    }

    /// <summary>Every negative value with its unit has a minus sign, as wide as a digit, also where a value stands in a sentence or is one of two ends; a
    /// bare number, which may be copied, keeps what programs read.</summary>
    private static string Value(string text) => Negative().Replace(text, "−");

    [GeneratedRegex(@"(?<=^|[ (])-(?=[0-9]+(\.[0-9]+)?([°%]| [\p{L}°%]))", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Negative();

    /// <summary>A verdict's sign and its count stay on one line.</summary>
    private static string Together(string heading)
    {
        foreach (VerdictKind kind in Enum.GetValues<VerdictKind>())
        {
            heading = heading.Replace($"  {Wording.Sign(kind)} ", $"  {Wording.Sign(kind)}\u00A0", StringComparison.Ordinal);
        }

        return heading;
    }

    /// <summary>A sentence begins with a capital; a key of the design or a formula keeps its letters.</summary>
    internal static string Capital(string text)
    {
        ReadOnlySpan<char> word = text.AsSpan(0, text.IndexOf(' ') is var blank and > 0 ? blank : text.Length);
        return (word.Length > 1 || word is "a") && char.IsAsciiLetterLower(word[0]) && word.IndexOfAny(".[-:_") < 0
            ? char.ToUpperInvariant(text[0]) + text[1..]
            : text;
    }
}
