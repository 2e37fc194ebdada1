using FrontEnd.Designs;

namespace FrontEnd.Sizing;

/// <summary>What is to be sized.</summary>
/// <param name="Fixed">Electrodes, band, signals, mains, supply, channels and requirements; whatever the search decides (amplifier, stages,
/// converter, ground drive, protection) is replaced.</param>
/// <param name="Shelf">The parts to choose from.</param>
internal sealed record SizingRequest(Design Fixed, PartShelf Shelf)
{
    /// <summary>Keys of the design that the requirements state themselves: a design's file states them too, be they at their default or
    /// not.</summary>
    public IReadOnlyCollection<string> Stated { get; init; } = [];

    /// <summary>How long the battery must last; null where nothing is asked. Needs <see cref="Supply.BatteryCapacity"/>.</summary>
    public Duration? BatteryLife { get; init; }

    /// <summary>Greatest number of parts of the whole device, electrodes and microcontroller not counted; null for any.</summary>
    public int? Parts { get; init; }
}
