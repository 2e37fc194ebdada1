using System.Net;
using System.Text;

namespace FrontEnd.Documents.Teaching;

/// <summary>The frame of every page that a class prints: every section begins on a new page. No scripts, nothing loaded from
/// elsewhere.</summary>
internal static class PrintedPage
{
    public const string Subject = "small scalp-biopotential front ends";

    private const string Style =
        """
        body { font: 11pt/1.4 "Liberation Sans", "DejaVu Sans", Arial, sans-serif; color: #111; background: #fff; max-width: 48em; margin: 1.5em auto; padding: 0 1em; overflow-wrap: break-word; }
        h1 { font-size: 1.35em; margin: 0 0 .3em; } h2 { font-size: 1.05em; margin: 1.2em 0 .2em; break-after: avoid; } p { margin: .4em 0; }
        .sheet + .sheet { break-before: page; margin-top: 4em; }
        .who { font-size: 1.1em; margin: .4em 0; } .note { color: #444; font-size: .85em; margin: .2em 0 .6em; } .made { color: #444; font-size: .75em; margin-top: 1.6em; }
        .points { font-weight: normal; color: #444; float: right; }
        .question { break-inside: avoid; }
        table { border-collapse: collapse; margin: .4em 0; } td, th { padding: .1em .9em .1em 0; text-align: left; vertical-align: top; font-weight: normal; }
        .value { white-space: nowrap; font-variant-numeric: tabular-nums; } th { white-space: nowrap; font-style: italic; }
        .long { columns: 2; column-gap: 2em; } .long table { margin: 0; } .long td { font-size: .9em; }
        ol.choices { list-style: upper-alpha; margin: .3em 0; } .answer { margin-top: .9em; } .line { display: inline-block; width: 16em; border-bottom: 1px solid #111; height: 1.2em; }
        ol.steps { margin: .3em 0; padding-left: 1.6em; font-size: .92em; } code { font-family: "Liberation Mono", "DejaVu Sans Mono", monospace; font-size: .88em; } .right { font-weight: bold; }
        .ruled { width: 100%; font-size: .9em; } .ruled th, .ruled td { border-bottom: .5pt solid #bbb; padding-top: .2em; padding-bottom: .2em; } .ruled th { font-style: normal; color: #444; } .ruled tr { break-inside: avoid; } .ruled thead { display: table-header-group; }
        .glance { font-size: .72em; } .glance th, .glance td { padding-right: .5em; }
        @media print { body { max-width: none; margin: 0; padding: 0; font-size: 9.5pt; line-height: 1.32; } .sheet + .sheet { margin-top: 0; } @page { size: A4; margin: 15mm 16mm; } }
        """;

    /// <summary>What ends a page.</summary>
    public const string End = "</body>\n</html>\n";

    /// <summary>The whole page around its sections.</summary>
    public static string Of(string title, IEnumerable<string> sections)
    {
        StringWriter html = new();
        html.Write(Begin(title));
        foreach (string section in sections)
        {
            Section(html, section);
        }

        html.Write(End);
        return html.ToString();
    }

    /// <summary>Adds a section.</summary>
    public static void Section(TextWriter html, string section)
    {
        html.Write("<section class=\"sheet\">\n");
        html.Write(section);
        html.Write("</section>\n");
    }

    /// <summary>A page up to its first section.</summary>
    public static string Begin(string title)
    {
        StringBuilder html = new();
        html.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width\">\n");
        html.Append($"<title>{title}: {Subject}</title>\n<style>\n").Append(Style.ReplaceLineEndings("\n")).Append("\n</style>\n</head>\n<body>\n");
        return html.ToString();
    }

    /// <summary>f_c with its index set low.</summary>
    public static string Symbol(string symbol)
    {
        int low = symbol.IndexOf('_', StringComparison.Ordinal);
        return low < 0 ? Safe(symbol) : $"{Safe(symbol[..low])}<sub>{Safe(symbol[(low + 1)..])}</sub>";
    }

    public static string Safe(string text) => WebUtility.HtmlEncode(text);
}
