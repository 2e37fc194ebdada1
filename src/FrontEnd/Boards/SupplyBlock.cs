using FrontEnd.Designs;

namespace FrontEnd.Boards;

/// <summary>Battery, regulators and the middle of the supply.</summary>
internal static class SupplyBlock
{
    private static readonly BoardBlock Block = new(BlockKind.Supply);

    /// <summary>Thin film: thick film makes flicker noise where dc stands across it (IEC 60195, from memory).</summary>
    private static readonly Ratio Divider = Ratio.FromPercent(0.1);
    private static readonly Ratio Usual = BoardTolerances.Resistors, Capacitors = BoardTolerances.Capacitors;

    // A follower with a large capacitor behind it stands with these: 90° of phase margin with an op-amp of 350 kHz (worked out by nodal analysis).
    private static readonly Resistance Isolating = Resistance.FromOhms(100), Feedback = Resistance.FromKilohms(10);
    private static readonly Capacitance FeedbackCapacitor = Capacitance.FromNanofarads(100);

    public static void AddTo(BoardDraft draft)
    {
        draft.In(Block);
        Battery(draft);
        MidSupply(draft);
        draft.TestPoint(Nets.Analogue);
        draft.TestPoint(Nets.Middle);
        draft.TestPoint(Nets.Common);
        draft.Notes.Add("While worn, the device runs from its battery alone. If the battery is charged in the box, make wearing and charging exclude each other: let the charger's plug cover the electrodes' sockets.");
        draft.Notes.Add("Pin numbers are those that most makers use for that class of part; check them against the data sheet of the part that you buy.");
    }

    private static void Battery(BoardDraft draft)
    {
        Supply supply = draft.Design.Supply;
        string capacity = supply.BatteryCapacity is { } charge ? $", {QuantityText.FormatPart(charge)}" : "";
        draft.Add(PieceClass.Battery, BoardRoles.Battery, "battery", [new("1", "+", Nets.Battery), new("2", "−", Nets.Common)], DesignKeys.Supply.BatteryCapacity,
            $"battery, {QuantityText.FormatPart(supply.Lowest)} to {QuantityText.FormatPart(supply.Highest)}{capacity}, with a protection circuit if it is a lithium-ion cell");
        if (draft.Choices.ReverseProtection == ReverseProtection.Transistor)
        {
            draft.Add(PieceClass.Transistor, BoardRoles.Reverse, "protects against a reversed battery",
                [new("1", "G", Nets.Common), new("2", "S", Nets.Protected), new("3", "D", Nets.Battery)], DesignKeys.Board.ReverseProtection,
                "p-channel field-effect transistor, on at the lowest battery voltage");
        }
        else
        {
            draft.Join(Nets.Protected, Nets.Battery);
        }

        if (supply.RailsHighest is { } rails && rails.Volts < supply.Highest.Volts)
        {
            Regulator(draft, BoardRoles.Regulator, (BoardRoles.RegulatorIn, BoardRoles.RegulatorOut), "regulator", Nets.Analogue, rails, DesignKeys.Supply.RailsHighest);
        }
        else
        {
            draft.Join(Nets.Analogue, Nets.Protected);
            draft.Decouple(BoardRoles.Bulk, "bulk capacitor of the analogue supply", Nets.Analogue, draft.Choices.Bulk, DesignKeys.Board.Bulk);
        }

        if (draft.Design.Converter is { OwnSupply: { } own, InController: false })
        {
            Regulator(draft, BoardRoles.ConverterRegulator, (BoardRoles.ConverterRegulatorIn, BoardRoles.ConverterRegulatorOut), "converter's regulator",
                Nets.ConverterAnalogue, own, DesignKeys.Converter.OwnSupply);
        }
    }

    private static void Regulator(BoardDraft draft, string role, (string In, string Out) roles, string what, string net, Voltage volts, string key)
    {
        draft.Decouple(roles.In, $"ahead of the {what}", Nets.Protected, draft.Choices.Bulk, DesignKeys.Board.Bulk);
        draft.Add(PieceClass.Regulator, role, what, [new("1", "IN", Nets.Protected), new("2", "GND", Nets.Common), new("3", "OUT", net)], key,
            $"regulator, {QuantityText.FormatPart(volts)}, low dropout, low noise");
        draft.Decouple(roles.Out, $"after the {what}", net, draft.Choices.Bulk, DesignKeys.Board.Bulk);
    }

    private static void MidSupply(BoardDraft draft)
    {
        bool buffered = draft.Choices.MidSupply == MidSupplyKind.BufferedDivider;
        string tap = buffered ? Nets.Tap : Nets.Middle;
        draft.Resistor(BoardRoles.Upper, "divider, upper half", Nets.Analogue, tap, draft.Built.DividerUpper, Divider, DesignKeys.Board.MidSupplyResistor);
        draft.Resistor(BoardRoles.Lower, "divider, lower half", tap, Nets.Common, draft.Built.DividerLower, Divider, DesignKeys.Board.MidSupplyResistor);
        draft.Capacitor(BoardRoles.Tap, "capacitor of the divider", tap, Nets.Common, draft.Choices.MidSupplyCapacitor, Capacitors, DesignKeys.Board.MidSupplyCapacitor);
        if (!buffered)
        {
            draft.Decouple(BoardRoles.MidBulk, "bulk capacitor of mid-supply", Nets.Middle, draft.Choices.Bulk, DesignKeys.Board.Bulk);
            return;
        }

        draft.OpAmp(BoardRoles.Follower, "mid-supply follower", null, DesignKeys.Board.MidSupply, (Nets.Tap, Nets.FollowerMinus, Nets.FollowerOutput));
        draft.Resistor(BoardRoles.Isolating, "between the follower and its capacitor", Nets.FollowerOutput, Nets.Middle, Isolating, Usual, DesignKeys.Board.MidSupply);
        draft.Resistor(BoardRoles.FollowerFeedback, "the follower's feedback at dc", Nets.FollowerMinus, Nets.Middle, Feedback, Usual, DesignKeys.Board.MidSupply);
        draft.Capacitor(BoardRoles.FollowerCapacitor, "the follower's feedback at high frequencies", Nets.FollowerMinus, Nets.FollowerOutput, FeedbackCapacitor,
            Capacitors, DesignKeys.Board.MidSupply);
        draft.Decouple(BoardRoles.MidBulk, "bulk capacitor of mid-supply", Nets.Middle, draft.Choices.Bulk, DesignKeys.Board.Bulk);
    }
}
