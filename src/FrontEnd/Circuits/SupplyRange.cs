using FrontEnd.Fields;
using static FrontEnd.Fields.FieldRange;
using static FrontEnd.Fields.Make;

namespace FrontEnd.Circuits;

/// <summary>The supply that a part's figures hold on.</summary>
/// <param name="Lowest">Below it the part does not do what its card says; null where it is not known.</param>
/// <param name="Highest">Above it the part is destroyed; null where it is not known.</param>
public readonly record struct SupplyRange(Voltage? Lowest, Voltage? Highest)
{
    /// <summary>Nothing is known.</summary>
    public static readonly SupplyRange Any;

    /// <summary>True where a supply that moves between two voltages stays inside.</summary>
    public bool Holds(Voltage lowest, Voltage highest) =>
        (Lowest is not { } least || least.Volts <= lowest.Volts * Slack) && (Highest is not { } most || highest.Volts <= most.Volts * Slack);

    /// <summary>True where a voltage is above what the part stands.</summary>
    public bool IsExceededBy(Voltage volts) => Highest is { } most && most.Volts * Slack < volts.Volts;

    /// <summary>True where the part does not work as its card says any more.</summary>
    public bool IsMissedBy(Voltage volts) => Lowest is { } least && volts.Volts * Slack < least.Volts;

    /// <summary>For numbers that were written in decimal digits.</summary>
    private const double Slack = 1 + 1e-9;

    /// <summary>The two fields of a part that has such a range.</summary>
    internal static IEnumerable<Field<TOwner>> Fields<TOwner>(Func<TOwner, SupplyRange> get, Func<TOwner, SupplyRange, TOwner> set) =>
    [
        Maybe("supply-lowest", "supply_lowest", Above(0, 1000), "none", "none", ByDesign,
            "lowest supply at which the part's figures hold, both rails of a split supply together",
            (TOwner o) => get(o).Lowest, (o, v) => set(o, get(o) with { Lowest = v })),
        Maybe("supply-highest", "supply_highest", Above(0, 1000), "none", "none", ByDesign,
            "highest supply that the part withstands, both rails of a split supply together",
            (TOwner o) => get(o).Highest, (o, v) => set(o, get(o) with { Highest = v })),
    ];
}
