using FrontEnd.Building;

namespace FrontEnd.Documents.Sheets;

/// <summary>The order list, the netlist and what the values that can be bought move.</summary>
internal sealed record OrderJson(IReadOnlyList<OrderRowJson> Rows, IReadOnlyList<NetlistRow> Netlist, BoughtDesignJson AsBuilt, double? Cost)
{
    public static OrderJson From(BoardAnswers answers) => new(
        [.. answers.Order.Select(row => OrderRowJson.From(answers, row))], Building.Netlist.Of(answers.Board), BoughtDesignJson.From(answers.AsBuilt),
        answers.Prices?.Total(answers.Order).Total);
}

/// <summary>Pieces that one buys as one.</summary>
internal sealed record OrderRowJson(IReadOnlyList<string> Designators, int Quantity, string Class, IQuantity? Value, string Code, double? Tolerance)
{
    public required string Description { get; init; }

    public required string Technology { get; init; }

    public required string TemperatureCoefficient { get; init; }

    public required string VoltageRating { get; init; }

    public required string PowerRating { get; init; }

    public required string Package { get; init; }

    public required string Where { get; init; }

    public required string Key { get; init; }

    public required string Remark { get; init; }

    public required string Card { get; init; }

    public double? Price { get; init; }

    public static OrderRowJson From(BoardAnswers answers, OrderRow row) => new(
        [.. row.Parts.Select(part => part.Name)], row.Quantity, OrderList.Word(row.First.Class), row.First.Value, PartCode.Of(row.First.Value), row.First.Tolerance?.Fraction)
    {
        Description = row.First.Description, Technology = row.Ratings.Technology, TemperatureCoefficient = row.Ratings.TemperatureCoefficient,
        VoltageRating = row.Ratings.Voltage, PowerRating = row.Ratings.Power, Package = row.Ratings.Package, Where = row.Where, Key = row.Keys,
        Remark = OrderText.Remark(answers, row), Card = row.First.Card, Price = answers.Prices?.Of(row),
    };
}
