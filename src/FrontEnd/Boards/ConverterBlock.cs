using FrontEnd.Converter;
using FrontEnd.Designs;

namespace FrontEnd.Boards;

/// <summary>The converter with its reference, its supplies and the lines to the host.</summary>
internal static class ConverterBlock
{
    private static readonly BoardBlock Block = new(BlockKind.Converter);
    private static readonly Ratio Usual = BoardTolerances.Resistors;

    public static void AddTo(BoardDraft draft)
    {
        draft.In(Block);
        Design design = draft.Design;
        string analogue = design.Converter.OwnSupply is null ? Nets.Analogue : Nets.ConverterAnalogue;
        draft.Add(PieceClass.Converter, BoardRoles.Converter, "converter", [.. Pins(draft, analogue)], DesignKeys.Converter.Card,
            $"converter, {design.Converter.Bits:0.##} bit, {(ConverterSupply.IsDifferential(design.Converter) ? "differential" : "single-ended")}, {design.Channels} input{(design.Channels == 1 ? "" : "s")}, {QuantityText.FormatPart(design.Converter.Rate)} each",
            design.Converter.Card);
        draft.Decouple(BoardRoles.DecouplingOf(BoardRoles.Converter), "decoupling of the analogue supply", analogue, draft.Choices.Decoupling, DesignKeys.Board.Decoupling);
        draft.Resistor(BoardRoles.DigitalResistor, "ahead of the digital supply", analogue, Nets.Digital, draft.Choices.SupplyResistor, Usual,
            DesignKeys.Board.SupplyResistor);
        draft.Decouple(BoardRoles.DigitalBulk, "bulk capacitor of the digital supply", Nets.Digital, draft.Choices.Bulk, DesignKeys.Board.Bulk);
        draft.Decouple(BoardRoles.DigitalDecoupling, "decoupling of the digital supply", Nets.Digital, draft.Choices.Decoupling, DesignKeys.Board.Decoupling);
        Reference(draft, analogue);
        Host(draft);
        draft.TestPoint(Nets.ReferenceVoltage);
    }

    private static IEnumerable<BoardPin> Pins(BoardDraft draft, string analogue)
    {
        Design design = draft.Design;
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

        pins.AddRange([("VREF", Nets.ReferenceVoltage), ("AVDD", analogue), ("DVDD", Nets.Digital), ("AGND", Nets.Common), ("DGND", Nets.Common)]);
        pins.AddRange(Nets.DataLines.Select(line => (line, line)));
        return pins.Select((pin, index) => new BoardPin($"{index + 1}", pin.Name, pin.Net));
    }

    private static void Reference(BoardDraft draft, string analogue)
    {
        AnalogDigitalConverter converter = draft.Design.Converter;
        ReferenceKind kind = draft.Choices.Reference switch
        {
            ReferenceKind.Auto => converter.ReferenceVoltage is null ? ReferenceKind.Internal : ReferenceKind.Part,
            var chosen => chosen,
        };
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
    }

    /// <summary>Data lines over resistors to the connector of whatever computes and sends.</summary>
    private static void Host(BoardDraft draft)
    {
        foreach (string line in Nets.DataLines)
        {
            draft.Resistor(BoardRoles.DataLine(line), $"in the data line {line}", line, Nets.AtHost(line), draft.Choices.DataResistor, Usual, DesignKeys.Board.DataResistor);
        }

        draft.Add(PieceClass.Connector, BoardRoles.Host, "connector to the microcontroller",
            [
                new("1", "GND", Nets.Common), .. Nets.DataLines.Select((line, index) => new BoardPin($"{index + 2}", line, Nets.AtHost(line))),
                new($"{Nets.DataLines.Count + 2}", "VP", Nets.Protected),
            ],
            description: $"pin header, {Nets.DataLines.Count + 2} pins");
    }
}
