using System.Text;

namespace FrontEnd.Documents.Sheets;

/// <summary>The parts list as comma-separated values, RFC 4180: for a spreadsheet or an order.</summary>
public static class CsvSheet
{
    public static string Of(Sheet sheet)
    {
        StringBuilder text = new();
        Line(text, "part", "key", "value", "tolerance", "preferred value", "per channel", "once", $"for {sheet.Design.Channels} channel{(sheet.Design.Channels == 1 ? "" : "s")}");
        foreach (Part part in PartsList.Of(sheet.Design))
        {
            Line(text, part.Where, part.Key, part.Value, part.Tolerance, part.Preferred, $"{part.PerChannel}", $"{part.Once}", $"{(part.PerChannel * sheet.Design.Channels) + part.Once}");
        }

        return text.ToString();
    }

    private static void Line(StringBuilder text, params string[] cells) => text.AppendJoin(',', cells.Select(Cell)).Append("\r\n");

    /// <summary>Quoted where needed. A text that a spreadsheet would take for a formula gets an apostrophe in front, as names come from a file that anyone may have written.</summary>
    private static string Cell(string text)
    {
        string safe = text is ['=' or '+' or '-' or '@' or '\t' or '\r', ..] ? "'" + text : text;
        return safe.AsSpan().IndexOfAny("\",\r\n") < 0 ? safe : $"\"{safe.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }
}
