namespace FrontEnd.Circuits;

/// <summary>What a part of two pins is.</summary>
internal enum PartKind
{
    Resistor,
    Capacitor,
}

/// <summary>A resistor or a capacitor of a circuit.</summary>
/// <param name="Role">What it is there; the key of its value among the fields of what it belongs to: "r1", "coupling-capacitor". Unique in
/// its circuit.</param>
/// <param name="Label">Its name for a reader of a parts list: "R1, input to middle".</param>
/// <param name="From">Node of the one pin.</param>
/// <param name="To">Node of the other.</param>
/// <param name="Value">Nominal value [Ω or F].</param>
/// <param name="Tolerance">±, as a share.</param>
internal sealed record CircuitPart(string Role, string Label, PartKind Kind, string From, string To, double Value, double Tolerance)
{
    /// <summary>The key of its value in the design, where two parts share one; else the role.</summary>
    public string Key { get => field ?? Role; init; }

    /// <summary>True for a part that serves all channels together.</summary>
    public bool IsShared { get; init; }

    /// <summary>False for a property of another part, which nobody solders in: a buffer's input resistance.</summary>
    public bool IsFitted { get; init; } = true;

    /// <summary>Equal pieces in parallel that make up the value.</summary>
    public int Pieces { get; init; } = 1;

    /// <summary>The value as it stands in a network.</summary>
    public double NetworkValue => AsBuilt ?? Value;

    /// <summary>True for a resistance of zero: it joins its nodes and is no branch of a network.</summary>
    public bool IsJoint => Kind == PartKind.Resistor && NetworkValue == 0;

    /// <summary>The value that the part has in one device; null for the nominal one.</summary>
    public double? AsBuilt { get; init; }

    /// <summary>The value as a quantity, for printing.</summary>
    public IQuantity Quantity => Kind == PartKind.Resistor ? Resistance.FromOhms(Value) : Capacitance.FromFarads(Value);

    /// <summary>The value of one of its <see cref="Pieces"/>, which lie in parallel: what one orders.</summary>
    public IQuantity OnePiece => Kind == PartKind.Resistor ? Resistance.FromOhms(Value * Pieces) : Capacitance.FromFarads(Value / Pieces);
}

/// <summary>An op-amp of a circuit. Its output is a node that can clip.</summary>
/// <param name="Role">What it is there: "amplifier", "first integrator". Unique in its circuit.</param>
/// <param name="Key">Where its values stand among the fields of what it belongs to: "opamp". Op-amps of one package share them.</param>
/// <param name="Model">Its values.</param>
/// <param name="Output">Node of its output pin.</param>
internal sealed record CircuitOpAmp(string Role, string Key, OpAmp Model, string Output, string Plus, string Minus);
