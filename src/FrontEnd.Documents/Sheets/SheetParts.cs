using FrontEnd.Building;

namespace FrontEnd.Documents.Sheets;

/// <summary>The sheet's list of parts to order, and what becomes of the design's values.</summary>
internal static class SheetParts
{
    public static IEnumerable<Block> Of(Sheet sheet)
    {
        if (sheet.Board is not { } answers)
        {
            yield break;
        }

        Design design = sheet.Design;
        bool priced = answers.Prices is not null;
        yield return new Block.Heading($"parts to order, for one device of {design.Channels} channel{(design.Channels == 1 ? "" : "s")}");
        yield return new Block.Table(
            [new("pieces"), new("what", true), new("tolerance"), new("make and rating", true), new("designators", true), new("remark", true), .. priced ? (Column[])[new("price")] : []],
            [.. answers.Order.Select(row => RowOf(answers, row, priced)), Sum(answers, priced)],
            Small: true);
        yield return new Block.Items(
            [
                .. OrderText.Cost(answers, sheet.Spread?.Yield), .. AsBuiltText.Of(answers.AsBuilt), .. answers.Board.Notes,
                "Letters of designators as in IEEE 315. Materials, ratings and cases: common practice, no source; the notes on dielectrics are from memory.",
            ],
            Small: true);
    }

    private static Row RowOf(BoardAnswers answers, OrderRow row, bool priced) => new(
        [
            $"{row.Quantity}", row.First.Value is null ? OrderText.Value(row.First) is { Length: > 0 } text ? text : OrderList.Word(row.First.Class)
                : $"{OrderList.Word(row.First.Class)} {OrderText.Value(row.First)}",
            OrderText.Tolerance(row.First),
            string.Join(", ", new[] { row.First.Card.Length == 0 ? "" : $"as card {row.First.Card}", row.Ratings.Technology, row.Ratings.Voltage, row.Ratings.Package }.Where(text => text.Length != 0)),
            row.Designators, OrderText.Remark(answers, row), .. priced ? (string[])[answers.Prices!.Of(row) is { } price ? OrderText.Price(price) : ""] : [],
        ]);

    private static Row Sum(BoardAnswers answers, bool priced) => new(
        [$"{answers.Order.Sum(row => row.Quantity)}", "all pieces", "", "", "", "", .. priced ? (string[])[OrderText.Price(answers.Prices!.Total(answers.Order).Total)] : []],
        IsSum: true);
}
