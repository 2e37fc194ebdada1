using FrontEnd.Circuits;

namespace FrontEnd.Boards;

/// <summary>What one orders a piece as.</summary>
internal enum PieceClass
{
    Resistor,
    Capacitor,

    /// <summary>One package with one, two or four op-amps.</summary>
    OpAmps,
    DifferentialAmplifier,
    Converter,
    VoltageReference,
    Regulator,
    Transistor,

    /// <summary>Two diodes in series, their middle at the node that they keep between the rails.</summary>
    ClampDiodes,
    Battery,
    Connector,
    TestPoint,
}

/// <summary>A piece of the board.</summary>
/// <param name="Designator">Letter and number as the drawing shows them: "R301". Letters as in IEEE 315.</param>
/// <param name="Assembly">The channel whose piece it is, counted from 1; 0 for a piece that all share, and for every piece of a board with one
/// channel.</param>
/// <param name="Block">Where it belongs.</param>
/// <param name="Role">What it is there; unique among the pieces of its block and assembly: "r1", "coupling-capacitor", <c>BoardRoles</c>.</param>
/// <param name="Class">What one orders it as.</param>
/// <param name="Pins">In the order of their numbers.</param>
internal sealed record BoardPart(string Designator, int Assembly, BoardBlock Block, string Role, PieceClass Class, IReadOnlyList<BoardPin> Pins)
{
    /// <summary>Block and purpose in words: "gain 2: coupling capacitor".</summary>
    public required string Where { get; init; }

    /// <summary>The design's field that sets it; "" for none.</summary>
    public string Key { get; init; } = "";

    /// <summary>Resistance or capacitance as it is soldered in; null for any other class, and for a resistor whose value the design's figures
    /// do not say.</summary>
    public IQuantity? Value { get; init; }

    /// <summary>± of <see cref="Value"/>; null where there is none.</summary>
    public Ratio? Tolerance { get; init; }

    /// <summary>Name of an active piece's part card; "" for none.</summary>
    public string Card { get; init; } = "";

    /// <summary>What an active piece or a connector is, in words: "converter, 24 bit, 8 inputs"; "" where class and value say all.</summary>
    public string Description { get; init; } = "";

    /// <summary>What whoever orders or solders it must know; "" for nothing.</summary>
    public string Remark { get; init; } = "";

    /// <summary>True where a smaller value endangers the wearer.</summary>
    public bool ProtectsWearer { get; init; }

    /// <summary>Name of the piece that must be of the same lot and tolerance, since only the difference counts; "" for none.</summary>
    public string PairedWith { get; init; } = "";

    /// <summary>The op-amps of a package; empty for any other class.</summary>
    public IReadOnlyList<BoardSection> Sections { get; init; } = [];

    /// <summary>Designator with its assembly's prefix, as the netlist and the order list name it: "A1R301".</summary>
    public string Name => Assembly == 0 ? Designator : $"A{Assembly}{Designator}";

    /// <summary>The net at a pin; "" where the pin is not connected.</summary>
    /// <param name="pin">Its number or its name.</param>
    public string Net(string pin) => Pins.First(one => one.Number == pin || one.Name == pin).Net;
}

/// <summary>A pin.</summary>
/// <param name="Number">As printed outside the symbol.</param>
/// <param name="Name">As printed inside a box; "" for a part of two pins.</param>
/// <param name="Net">The net that it is on, with its assembly's prefix; "" where it is not connected.</param>
internal sealed record BoardPin(string Number, string Name, string Net);

/// <summary>One op-amp of a package.</summary>
/// <param name="Letter">A, B …; "" where the package holds one.</param>
/// <param name="Block">The block that it works in; the package's where it is not used.</param>
/// <param name="Role">What it is there; <c>BoardRoles.Unused</c> where nothing uses it: then it is a follower on the middle of the supply.</param>
/// <param name="Model">Its values; null for an op-amp of no figures in the design, the driven ground's and the supply's.</param>
/// <param name="Plus">Its non-inverting input.</param>
/// <param name="Minus">Its inverting input.</param>
/// <param name="Output">Its output.</param>
internal sealed record BoardSection(string Letter, BoardBlock Block, string Role, OpAmp? Model, BoardPin Plus, BoardPin Minus, BoardPin Output);
