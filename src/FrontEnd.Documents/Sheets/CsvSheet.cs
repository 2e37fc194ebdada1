using System.Text;
using FrontEnd.Building;
using FrontEnd.Documents.Files;

namespace FrontEnd.Documents.Sheets;

/// <summary>The parts list as comma-separated values, RFC 4180: for a spreadsheet or an order.</summary>
public static class CsvSheet
{
    private const string End = "\r\n";

    /// <summary>The caution as a line of remark, then a row for each part.</summary>
    public static string Of(Sheet sheet)
    {
        StringBuilder text = new($"# {Cautions.OfFile(sheet.Assessment)}{End}");
        int channels = sheet.Design.Channels;
        text.Row(End, "part", "key", "value", "tolerance", "preferred value", "per channel", "once",
            $"for {channels} channel{(channels == 1 ? "" : "s")}");
        foreach (ListedPart part in PartsList.Of(sheet.Design))
        {
            text.Row(End, [part.Where, part.Key, .. PartText.Cells(part), $"{part.PerChannel}", $"{part.Once}", $"{part.For(channels)}"]);
        }

        return text.ToString();
    }
}
