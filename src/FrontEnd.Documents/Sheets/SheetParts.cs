using System.Globalization;
using FrontEnd.Building;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Documents.Reading;
using FrontEnd.Text;

namespace FrontEnd.Documents.Sheets;

/// <summary>The sheet's page for whoever builds and programs the device.</summary>
internal static class SheetParts
{
    /// <summary>Parts, converter, filters with their coefficients, settings.</summary>
    public static IEnumerable<Block> Of(Sheet sheet)
    {
        Design design = sheet.Design;
        yield return new Block.Heading($"parts, for {design.Channels} channel{(design.Channels == 1 ? "" : "s")}");
        yield return new Block.Table(
            [new("part", true), new("value"), new("tolerance"), new("preferred value", true), new("per channel"), new("once")],
            [.. PartsList.Of(design).Select(part =>
                new Row([part.Where, .. PartText.Cells(part), Count(part.PerChannel), Count(part.Once)]))],
            Small: true);
        ILookup<string, BudgetTable> tables = BudgetTables.Of(sheet.Assessment).ToLookup(table => table.Title, StringComparer.Ordinal);
        yield return new Block.Pair(
            [.. tables["converter"].SelectMany(SheetBody.Titled)],
                [.. tables["filters and delays"].SelectMany(SheetBody.Titled).Select(WithoutNames)]);
        if (design.Digital.Count > 0)
        {
            yield return new Block.Heading($"digital filters: second-order sections at {QuantityText.FormatPart(design.Converter.Rate)}, a0 = 1, in this order");
            yield return new Block.Paragraph($"y[n] = b0·x[n] + b1·x[n−1] + b2·x[n−2] − a1·y[n−1] − a2·y[n−2] for each section, {Arithmetic(design)}.");
            yield return new Block.Table([new("filter", true), new("b0"), new("b1"), new("b2"), new("a1"), new("a2")],
                [.. Sections(design)], Small: true);
        }

        yield return new Block.Heading("settings given");
        yield return new Block.Items([.. Settings(sheet)], Small: true);
    }

    /// <summary>The ids of filter figures say what they are; the names beside them would say it again.</summary>
    private static Block WithoutNames(Block block) => block is Block.Table table
        ? table with { Columns = [.. table.Columns.Take(2)],
            Rows = [.. table.Rows.Select(row => row with { Cells = [.. row.Cells.Take(2)] })] }
        : block;

    private static string Count(int pieces) => pieces == 0 ? "" : $"{pieces}";

    /// <summary>One line for each table of the design file.</summary>
    private static IEnumerable<string> Settings(Sheet sheet) => sheet.Document.Origins
        .Where(origin => origin.Kind != OriginKind.Default)
        .Where(origin => origin.Key is not ("name" or "purpose" or "caution") && !origin.Key.EndsWith(".rows", StringComparison.Ordinal))
        .GroupBy(origin => origin.Key.LastIndexOf('.') is var dot and > 0 ? origin.Key[..dot] : "design", StringComparer.Ordinal)
        .Select(group => (group.Key, Text: string.Join(", ", group.Select(Set))))
        .GroupBy(line => line.Text, StringComparer.Ordinal)
        .Select(same => string.Join(" and ", same.Select(line => line.Key)) + ": " + same.Key);

    private static string Set(FieldOrigin origin) =>
        $"{origin.Key[(origin.Key.LastIndexOf('.') + 1)..]} {origin.Text}{(origin.Kind == OriginKind.Card ? $" [{origin.Source}]" : "")}";

    private static string Arithmetic(Design design) => design.Arithmetic.Word switch
    {
        DigitalWord.Double => "in double precision",
        DigitalWord.Single => $"in single precision, {DigitalArithmetic.FormOf(design.Arithmetic.Form)}, coefficients as rounded",
        _ => $"in {DigitalArithmetic.WordOf(design.Arithmetic.Word)} words, {DigitalArithmetic.FormOf(design.Arithmetic.Form)}, "
            + $"{design.Arithmetic.StateFraction} bits below the LSB in the states, coefficients as rounded",
    };

    private static IEnumerable<Row> Sections(Design design)
    {
        foreach (ProgrammedFilter filter in ProgrammedFilter.AllOf(design))
        {
            foreach (Filters.Biquad section in filter.Sections)
            {
                double[] numbers = [section.B0, section.B1, section.B2, section.A1, section.A2];
                yield return new Row([filter.Name, .. numbers.Select(number => number.ToString("R", CultureInfo.InvariantCulture))]);
            }
        }
    }
}
