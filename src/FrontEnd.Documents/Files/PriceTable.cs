using System.Globalization;
using FrontEnd.Building;

namespace FrontEnd.Documents.Files;

/// <summary>Reads a table of prices: a piece and the price of one, comma-separated.</summary>
internal static class PriceTable
{
    /// <summary>The prices of a file, or what is wrong with it. A first row without a number names the columns; a line that begins with <c>#</c> is a
    /// remark.</summary>
    public static (Prices? Prices, IReadOnlyList<Finding> Findings) Read(string path)
    {
        return TextFiles.Read(path, out Finding? problem) is { } text ? Parse(text, path) : (null, [problem!]);
    }

    /// <summary>The same of a text.</summary>
    public static (Prices? Prices, IReadOnlyList<Finding> Findings) Parse(string text, string path)
    {
        List<(string, double)> rows = [];
        List<Finding> findings = [];
        bool first = true;
        foreach (CsvRow row in CsvText.Rows(text, remarks: true).Where(row => row.Remark is null))
        {
            string price = row.Cells.Count < 2 ? "" : row.Cells[1].Trim();
            if (double.TryParse(price.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number))
            {
                rows.Add((row.Cells[0].Trim(), number));
            }
            else if (!first)
            {
                findings.Add(Finding.Error(Messages.PriceUnreadable, "", $"`{price}` is not a price for `{row.Cells[0].Trim()}`", "a row is a piece and the price of one, such as `resistor 68 kΩ, 0.02`",
                    "write a number of 0 or more, without a currency") with { File = path, Line = row.Line });
            }

            first = false;
        }

        if (rows.Count == 0 && findings.Count == 0)
        {
            findings.Add(Finding.Error(Messages.NoPrices, "", "there is no price in the table", "a row is a piece and the price of one, such as `resistor 68 kΩ, 0.02`",
                "name a designator, a class with its value, a card or a class, and a price") with { File = path });
        }

        return (findings.Count == 0 ? new Prices(rows) : null, findings);
    }
}
