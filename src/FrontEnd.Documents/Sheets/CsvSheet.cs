using System.Text;
using FrontEnd.Building;
using FrontEnd.Documents.Files;

namespace FrontEnd.Documents.Sheets;

/// <summary>The order list as comma-separated values, RFC 4180: for a spreadsheet or an order.</summary>
/// <remarks>The first row names the columns; the caution is the last row, whose first cell begins with <c>#</c>, so that programs that read
/// by columns find them.</remarks>
internal static class CsvSheet
{
    /// <summary>What ends a row of every table that leaves the program.</summary>
    internal const string End = "\r\n";

    /// <summary>A row for each distinct piece.</summary>
    public static string Of(Sheet sheet)
    {
        BoardAnswers answers = sheet.Board ?? throw new InvalidOperationException("The sheet was not given its board.");
        StringBuilder text = new();
        bool priced = answers.Prices is not null;
        text.Row(End, [.. OrderText.Columns, .. priced ? (string[])["price"] : []]);
        foreach (OrderRow row in answers.Order)
        {
            text.Row(End, [.. OrderText.Cells(answers, row),
                .. priced ? (string[])[answers.Prices!.Of(row) is { } price ? OrderText.Price(price) : ""] : []]);
        }

        return Caution(text, sheet.Assessment, OrderText.Columns.Count + (priced ? 1 : 0)).ToString();
    }

    /// <summary>Ends a table with the row of the caution.</summary>
    internal static StringBuilder Caution(StringBuilder text, Assessment assessment, int columns) =>
        text.Row(End, [$"# {Cautions.OfFile(assessment)}", .. Enumerable.Repeat("", columns - 1)]);
}
