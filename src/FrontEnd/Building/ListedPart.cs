using FrontEnd.Boards;

namespace FrontEnd.Building;

/// <summary>A part to buy.</summary>
/// <param name="Where">The block and what it does there.</param>
/// <param name="Key">The field of the design that sets it.</param>
/// <param name="PerChannel">Pieces for each channel.</param>
/// <param name="Once">Pieces for the device, whatever the number of channels.</param>
public sealed record ListedPart(string Where, string Key, int PerChannel, int Once)
{
    /// <summary>Of a resistor or a capacitor; null for an active part.</summary>
    public PartValue? Value { get; init; }

    /// <summary>Name of an active part's card; "" where none is given: a part of the class assumed.</summary>
    public string Card { get; init; } = "";

    /// <summary>Pieces for a device of so many channels.</summary>
    public int For(int channels) => (PerChannel * channels) + Once;
}
