using FrontEnd.Fields;
using static FrontEnd.Fields.FieldRange;
using static FrontEnd.Fields.Make;

namespace FrontEnd.Sizing;

/// <summary>What a requirements file asks besides the keys of a design.</summary>
internal static class SizingFields
{
    /// <summary>The table that they stand in.</summary>
    public const string Table = "sizing";

    /// <summary>In the order of the key table.</summary>
    public static readonly IReadOnlyList<Field<SizingRequest>> All =
    [
        Maybe("battery-life", "battery_life", Above(0, 1e10), "any", "any", ByDesign,
            "minimum battery life; needs supply.battery-capacity",
            (SizingRequest r) => r.BatteryLife, (r, v) => r with { BatteryLife = v }),
        Maybe("parts", "parts", Closed(1, 1e6), "any", "any", ByDesign,
            "maximum number of parts in the path of the signal: resistors, capacitors, amplifiers, op-amps, converters; the order list has more, such as decoupling and connectors",
            (SizingRequest r) => r.Parts, (r, v) => r with { Parts = v }),
    ];
}
