namespace FrontEnd.Designs;

/// <summary>Where the middle of the supply comes from.</summary>
public enum MidSupplyKind
{
    /// <summary>Two resistors and a follower.</summary>
    BufferedDivider,

    /// <summary>Two resistors and a large capacitor.</summary>
    Divider,
}

/// <summary>Where the converter's reference voltage comes from.</summary>
public enum ReferenceKind
{
    /// <summary>A part of its own where <c>converter.reference-voltage</c> is given, else the converter's own.</summary>
    Auto,

    /// <summary>The converter makes it; its pin is decoupled.</summary>
    Internal,

    /// <summary>The analogue supply over a resistor and a capacitor.</summary>
    Supply,

    /// <summary>A reference of its own.</summary>
    Part,
}

/// <summary>Diodes from each input to the rails, behind the protection resistor.</summary>
public enum ClampKind
{
    None,
    Diodes,
}

/// <summary>What keeps a battery that is put in the wrong way from the board.</summary>
public enum ReverseProtection
{
    /// <summary>A p-channel field-effect transistor in the positive lead, which costs millivolts.</summary>
    Transistor,

    /// <summary>Nothing on the board: the holder takes the battery one way only.</summary>
    None,
}

/// <summary>How the parts are mounted.</summary>
public enum Mounting
{
    Surface,
    ThroughHole,
}

/// <summary>Case of resistors and small capacitors in inches: 0805 is 2.0 mm × 1.25 mm.</summary>
public enum ChipCase
{
    Case0603,
    Case0805,
    Case1206,
}

/// <summary>What the electrodes' leads are plugged into.</summary>
public enum ElectrodeConnector
{
    /// <summary>Sockets of 1.5 mm that no finger and no mains socket can touch.</summary>
    TouchProof,

    /// <summary>Press studs on the electrode or its lead.</summary>
    PressStud,

    /// <summary>Leads soldered to the board.</summary>
    Soldered,
}

/// <summary>What a board needs beside the figures of the signal's path: everything here has a usual value, and none of it moves a computed
/// figure.</summary>
public sealed record BoardChoices
{
    public MidSupplyKind MidSupply { get; init; } = MidSupplyKind.BufferedDivider;

    /// <summary>The divider's resistor to common.</summary>
    public Resistance MidSupplyResistor { get; init; } = Resistance.FromKilohms(100);

    /// <summary>From the divider's tap to common.</summary>
    public Capacitance MidSupplyCapacitor { get; init; } = Capacitance.FromMicrofarads(1);

    /// <summary>At each supply pin.</summary>
    public Capacitance Decoupling { get; init; } = Capacitance.FromNanofarads(100);

    /// <summary>One for each supply and for the reference.</summary>
    public Capacitance Bulk { get; init; } = Capacitance.FromMicrofarads(10);

    /// <summary>From the analogue to the digital supply of the converter, and in front of a reference that is made of the supply.</summary>
    public Resistance SupplyResistor { get; init; } = Resistance.FromOhms(10);

    /// <summary>In each of the converter's data lines.</summary>
    public Resistance DataResistor { get; init; } = Resistance.FromOhms(47);

    /// <summary>Largest resistor across the driven ground's amplifier: it decides how small the averaging resistors get.</summary>
    public Resistance GroundFeedback { get; init; } = Resistance.FromMegohms(10);

    /// <summary>How many op-amps stand in one package: 1, 2 or 4.</summary>
    public int OpAmpsInPackage { get; init; } = 2;

    public ReferenceKind Reference { get; init; } = ReferenceKind.Auto;

    public ClampKind Clamps { get; init; } = ClampKind.None;

    public ReverseProtection ReverseProtection { get; init; } = ReverseProtection.Transistor;

    public Mounting Mounting { get; init; } = Mounting.Surface;

    public ChipCase Case { get; init; } = ChipCase.Case0805;

    public ElectrodeConnector Electrodes { get; init; } = ElectrodeConnector.TouchProof;
}
