using FrontEnd.Designs;
using FrontEnd.Fields;
using static FrontEnd.Fields.FieldRange;
using static FrontEnd.Fields.Make;

namespace FrontEnd.Catalogue;

/// <summary>The fields of the board, which schematic, order list and netlist read and no computed figure does.</summary>
internal static class BoardFields
{
    private const string Ceramics = "1 to 10 µF at a regulator and a reference; " + Practice;

    public static readonly IReadOnlyList<Field<BoardChoices>> All =
    [
        Word("mid-supply", "mid_supply", "buffered-divider", Practice, "source of mid-supply",
            [new("buffered-divider", MidSupplyKind.BufferedDivider), new("divider", MidSupplyKind.Divider)],
            (BoardChoices b) => b.MidSupply, (b, v) => b with { MidSupply = v }),
        Value("mid-supply-resistor", "mid_supply_R", Above(0, 1e8), "100 kΩ", Practice, "the divider's resistor to common",
            (BoardChoices b) => b.MidSupplyResistor, (b, v) => b with { MidSupplyResistor = v }),
        Value("mid-supply-capacitor", "mid_supply_C", Above(0, 1e-2), "1 µF", Practice, "from the divider's tap to common",
            (BoardChoices b) => b.MidSupplyCapacitor, (b, v) => b with { MidSupplyCapacitor = v }),
        Value("decoupling", "decoupling", Above(0, 1e-4), "100 nF", Practice, "capacitor at each supply pin",
            (BoardChoices b) => b.Decoupling, (b, v) => b with { Decoupling = v }),
        Value("bulk", "bulk", Above(0, 1e-2), "10 µF", Ceramics, "capacitor of each supply and of the reference",
            (BoardChoices b) => b.Bulk, (b, v) => b with { Bulk = v }),
        Value("supply-resistor", "supply_R", Above(0, 1e4), "10 Ω", Practice,
            "from the analogue to the converter's digital supply, and ahead of a reference derived from the supply",
            (BoardChoices b) => b.SupplyResistor, (b, v) => b with { SupplyResistor = v }),
        Value("data-resistor", "data_R", Above(0, 1e4), "47 Ω", "22 to 100 Ω; " + Practice, "in each of the converter's data lines",
            (BoardChoices b) => b.DataResistor, (b, v) => b with { DataResistor = v }),
        Value("ground-feedback", "ground_feedback", Closed(1e4, 1e9), "10 MΩ", "higher values leak and come in 5 % only; " + Practice,
            "largest resistor across the driven ground's amplifier",
            (BoardChoices b) => b.GroundFeedback, (b, v) => b with { GroundFeedback = v }),
        Value("op-amps-in-package", "op_amps_in_package", Closed(1, 4), "2", Practice, "op-amps in one package: 1, 2 or 4",
            (BoardChoices b) => b.OpAmpsInPackage, (b, v) => b with { OpAmpsInPackage = v }),
        Word("reference", "reference", "auto", Practice,
            "the converter's reference: internal, supply (filtered), part (a separate one); auto: part if converter.reference-voltage is given, otherwise internal",
            [new("auto", ReferenceKind.Auto), new("internal", ReferenceKind.Internal), new("supply", ReferenceKind.Supply), new("part", ReferenceKind.Part)],
            (BoardChoices b) => b.Reference, (b, v) => b with { Reference = v }),
        Word("clamps", "clamps", "none", Practice, "diodes from each input to the rails, after the protection resistor; their leakage counts as bias current",
            [new("none", ClampKind.None), new("diodes", ClampKind.Diodes)], (BoardChoices b) => b.Clamps, (b, v) => b with { Clamps = v }),
        Word("reverse-protection", "reverse_protection", "transistor", Practice, "what protects the board from a reversed battery",
            [new("transistor", ReverseProtection.Transistor), new("none", ReverseProtection.None)],
            (BoardChoices b) => b.ReverseProtection, (b, v) => b with { ReverseProtection = v }),
        Word("mounting", "mounting", "surface", Practice, "surface: surface-mount parts; through-hole: leaded parts",
            [new("surface", Mounting.Surface), new("through-hole", Mounting.ThroughHole)], (BoardChoices b) => b.Mounting, (b, v) => b with { Mounting = v }),
        Word("case", "case", "0805", "large enough for hand work; " + Practice, "case of chip resistors and small chip capacitors, in hundredths of an inch",
            [new("0603", ChipCase.Case0603), new("0805", ChipCase.Case0805), new("1206", ChipCase.Case1206)],
            (BoardChoices b) => b.Case, (b, v) => b with { Case = v }),
        Word("electrode-connector", "electrode_connector", "touch-proof", "1.5 mm sockets of DIN 42802, from memory", "connector for the electrodes' leads",
            [new("touch-proof", ElectrodeConnector.TouchProof), new("press-stud", ElectrodeConnector.PressStud), new("soldered", ElectrodeConnector.Soldered)],
            (BoardChoices b) => b.Electrodes, (b, v) => b with { Electrodes = v }),
    ];
}
