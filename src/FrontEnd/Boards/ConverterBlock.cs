using FrontEnd.Converter;
using FrontEnd.Designs;

namespace FrontEnd.Boards;

/// <summary>The converter with its reference, its supplies and the lines to the host; where it is in the microcontroller, the signals' way there.</summary>
internal static class ConverterBlock
{
    // Pins of the converter, and of the connector to the microcontroller.
    public const string ReferencePin = "VREF", OwnSupplyPin = "VC", Ground = "GND", Power = "VP";

    private static readonly BoardBlock Block = new(BlockKind.Converter);
    private static readonly Ratio Usual = BoardTolerances.Resistors;

    public static void AddTo(BoardDraft draft)
    {
        draft.In(Block);
        Design design = draft.Design;
        string analogue = design.Converter.OwnSupply is null ? Nets.Analogue : Nets.ConverterAnalogue;
        if (design.Converter.InController)
        {
            InController(draft, analogue);
            return;
        }

        draft.Add(PieceClass.Converter, BoardRoles.Converter, "converter", [.. Pins(draft, analogue)], DesignKeys.Converter.Card,
            Words(design), design.Converter.Card);
        draft.Decouple(BoardRoles.DecouplingOf(BoardRoles.Converter), "decoupling of the analogue supply", analogue, draft.Choices.Decoupling, DesignKeys.Board.Decoupling);
        draft.Resistor(BoardRoles.DigitalResistor, "ahead of the digital supply", analogue, Nets.Digital, draft.Choices.SupplyResistor, Usual,
            DesignKeys.Board.SupplyResistor);
        draft.Decouple(BoardRoles.DigitalBulk, "bulk capacitor of the digital supply", Nets.Digital, draft.Choices.Bulk, DesignKeys.Board.Bulk);
        draft.Decouple(BoardRoles.DigitalDecoupling, "decoupling of the digital supply", Nets.Digital, draft.Choices.Decoupling, DesignKeys.Board.Decoupling);
        Reference(draft, Kind(draft), analogue);
        Host(draft);
    }

    /// <summary>A converter in the microcontroller is no piece of this board: the signals go to its connector, and with them the reference where the
    /// board makes one. What that is made of is the analogue supply, or the converter's own, which then comes from there.</summary>
    private static void InController(BoardDraft draft, string analogue)
    {
        List<(string Name, string Net)> pins = [(Ground, Nets.Common), .. Inputs(draft.Design)];
        if (Kind(draft) is var kind && kind != ReferenceKind.Internal)
        {
            Reference(draft, kind, analogue);
            pins.Add((ReferencePin, Nets.ReferenceVoltage));
            if (analogue == Nets.ConverterAnalogue)
            {
                pins.Add((OwnSupplyPin, analogue));
            }
        }

        pins.Add((Power, Nets.Protected));
        draft.Add(PieceClass.Connector, BoardRoles.Host, "connector to the microcontroller", [.. Numbered(pins)], DesignKeys.Converter.InController,
            $"pin header, {pins.Count} pins, to the microcontroller with its {Words(draft.Design)}");
    }

    private static string Words(Design design) =>
        $"converter, {design.Converter.Bits:0.##} bit, {(ConverterSupply.IsDifferential(design.Converter) ? "differential" : "single-ended")}, {design.Channels} input{(design.Channels == 1 ? "" : "s")}, {QuantityText.FormatPart(design.Converter.Rate)} each";

    private static IEnumerable<BoardPin> Pins(BoardDraft draft, string analogue) => Numbered(
    [
        .. Inputs(draft.Design), (ReferencePin, Nets.ReferenceVoltage), ("AVDD", analogue), ("DVDD", Nets.Digital), ("AGND", Nets.Common), ("DGND", Nets.Common),
        .. Nets.DataLines.Select(line => (line, line)),
    ]);

    private static IEnumerable<BoardPin> Numbered(List<(string Name, string Net)> pins) => pins.Select((pin, index) => new BoardPin($"{index + 1}", pin.Name, pin.Net));

    private static List<(string Name, string Net)> Inputs(Design design)
    {
        List<(string Name, string Net)> pins = [];
        bool differential = ConverterSupply.IsDifferential(design.Converter);
        for (int channel = 1; channel <= design.Channels; channel++)
        {
            string number = design.Channels == 1 ? "" : $"{channel}", input = Board.NetOf(design.Channels == 1 ? 0 : channel, Nets.ConverterInput);
            pins.Add((differential ? $"AIN{number}+" : $"AIN{number}", input));
            if (differential)
            {
                pins.Add(($"AIN{number}−", Nets.Middle));
            }
        }

        return pins;
    }

    private static ReferenceKind Kind(BoardDraft draft) => draft.Choices.Reference switch
    {
        ReferenceKind.Auto => draft.Design.Converter.ReferenceVoltage is null ? ReferenceKind.Internal : ReferenceKind.Part,
        var chosen => chosen,
    };

    private static void Reference(BoardDraft draft, ReferenceKind kind, string analogue)
    {
        AnalogDigitalConverter converter = draft.Design.Converter;
        switch (kind)
        {
            case ReferenceKind.Part:
                draft.Add(PieceClass.VoltageReference, BoardRoles.VoltageReference, "reference",
                    [new("1", "IN", analogue), new("2", "GND", Nets.Common), new("3", "OUT", Nets.ReferenceVoltage)], DesignKeys.Board.Reference,
                    $"voltage reference, {(converter.ReferenceVoltage is { } volts ? QuantityText.FormatPart(volts) : "voltage not stated")}");
                draft.Decouple(BoardRoles.ReferenceInput, "decoupling of the reference", analogue, draft.Choices.Decoupling, DesignKeys.Board.Decoupling);
                if (converter.ReferenceVoltage is null)
                {
                    draft.Findings.Add(Finding.Warning(Messages.ReferencePartUnknown, DesignKeys.Board.Reference,
                        "the converter is to have its own reference, but its voltage is not stated", "the order list cannot specify it",
                        "set converter.reference-voltage"));
                }

                break;
            case ReferenceKind.Supply:
                draft.Resistor(BoardRoles.ReferenceResistor, "ahead of the reference", analogue, Nets.ReferenceVoltage, draft.Choices.SupplyResistor, Usual,
                    DesignKeys.Board.SupplyResistor);
                break;
        }

        draft.Decouple(BoardRoles.ReferenceBulk, "bulk capacitor of the reference", Nets.ReferenceVoltage, draft.Choices.Bulk, DesignKeys.Board.Bulk);
        draft.Decouple(BoardRoles.ReferenceDecoupling, "decoupling of the reference pin", Nets.ReferenceVoltage, draft.Choices.Decoupling, DesignKeys.Board.Decoupling);
        draft.TestPoint(Nets.ReferenceVoltage);
    }

    /// <summary>Data lines over resistors to the connector of whatever computes and sends.</summary>
    private static void Host(BoardDraft draft)
    {
        foreach (string line in Nets.DataLines)
        {
            draft.Resistor(BoardRoles.DataLine(line), $"in the data line {line}", line, Nets.AtHost(line), draft.Choices.DataResistor, Usual, DesignKeys.Board.DataResistor);
        }

        List<(string Name, string Net)> pins = [(Ground, Nets.Common), .. Nets.DataLines.Select(line => (line, Nets.AtHost(line))), (Power, Nets.Protected)];
        draft.Add(PieceClass.Connector, BoardRoles.Host, "connector to the microcontroller", [.. Numbered(pins)], description: $"pin header, {pins.Count} pins");
    }
}
