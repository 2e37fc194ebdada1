using FrontEnd.Amplifier;
using FrontEnd.Designs;
using FrontEnd.Electrodes;

namespace FrontEnd.Boards;

/// <summary>From the electrodes to the amplifier's inputs.</summary>
internal static class InputBlock
{
    private static readonly BoardBlock Block = new(BlockKind.Input);

    /// <summary>The lead of a channel, and that of its minus electrode, if it has one.</summary>
    public static void AddChannel(BoardDraft draft, int channel)
    {
        draft.In(Block);
        MeasuringLead[] leads = [.. draft.Design.Leads.Where(lead => lead.Channel == channel)];
        Lead(draft, leads[0], BoardRoles.Active, Nets.Active, Nets.Positive, electrodes: 1);
        bool own = 1 < leads.Length;
        if (own)
        {
            Lead(draft, leads[1], BoardRoles.Minus, Nets.Minus, Nets.Negative, electrodes: 1);
        }

        string negative = own ? draft.Net(Nets.Negative) : Nets.Negative;
        InputNetworkAt(draft, BoardRoles.Active, draft.Net(Nets.Positive));
        if (own)
        {
            InputNetworkAt(draft, BoardRoles.Minus, negative);
        }

        draft.Capacitor(BoardRoles.Differential, "capacitor between the inputs", draft.Net(Nets.Positive), negative,
            draft.Design.Input.DifferentialCapacitor, draft.Design.Input.CapacitorTolerance, DesignKeys.Input.DifferentialCapacitor);
    }

    /// <summary>The lead of the reference that channels share; nothing where each has its own.</summary>
    public static void AddReference(BoardDraft draft)
    {
        draft.In(Block);
        if (draft.Design.Leads.FirstOrDefault(lead => lead.Channel is null) is { } reference)
        {
            Lead(draft, reference, BoardRoles.Reference, Nets.Reference, Nets.Negative, Math.Max(1, draft.Design.Electrodes.ReferenceSites.Count));
            InputNetworkAt(draft, BoardRoles.Reference, Nets.Negative);
        }
    }

    /// <summary>Electrode, buffer, socket and protection resistor.</summary>
    private static void Lead(BoardDraft draft, MeasuringLead lead, string electrode, string net, string input, int electrodes)
    {
        string socket = draft.Net(net), pin = draft.Net(input);
        for (int one = 0; one < electrodes; one++)
        {
            if (lead.Buffer is { } buffer)
            {
                Buffer(draft, buffer, lead.SkinResistorKey, electrode, net, one, electrodes);
            }

            draft.Add(PieceClass.Connector, BoardRoles.At(BoardRoles.Socket, electrode, one), $"socket of the {electrode} electrode",
                lead.Buffer is null ? [new("1", net, socket)] : [new("1", net, socket), new("2", Nets.Analogue, Nets.Analogue), new("3", Nets.Common, Nets.Common)],
                DesignKeys.Board.ElectrodeConnector, lead.Buffer is null ? Connectors.Words(draft.Choices.Electrodes) : "connector of three, for the cable of a buffered electrode");
        }

        InputNetworkPart(draft, electrode, socket, pin, protects: lead.Buffer is null);
    }

    private static void InputNetworkPart(BoardDraft draft, string electrode, string socket, string pin, bool protects)
    {
        string role = BoardRoles.At(BoardRoles.Series, electrode);
        BoardPart? resistor = draft.Resistor(role, $"protection resistor in the {electrode} lead", socket, pin,
            draft.Design.Input.SeriesResistor, draft.Design.Input.ResistorTolerance, DesignKeys.Input.SeriesResistor);
        draft.Change(resistor, part => part with { ProtectsWearer = protects });
        Pair(draft, resistor, BoardRoles.Series, electrode);
        if (draft.Choices.Clamps == ClampKind.Diodes)
        {
            draft.Add(PieceClass.ClampDiodes, BoardRoles.At(BoardRoles.Clamp, electrode), $"diodes to the rails after the {electrode} lead's resistor",
                [new("1", "A", Nets.Common), new("2", "K", Nets.Analogue), new("3", "AK", pin)], DesignKeys.Board.Clamps,
                "two diodes in series, low leakage");
        }
    }

    /// <summary>What stands in the two leads of a channel must be alike.</summary>
    private static void Pair(BoardDraft draft, BoardPart? part, string role, string electrode)
    {
        (int assembly, string other) = electrode switch
        {
            BoardRoles.Reference => (draft.FirstOnReference, BoardRoles.Active),
            BoardRoles.Minus => (draft.Assembly, BoardRoles.Active),
            _ => HasMinus(draft) ? (draft.Assembly, BoardRoles.Minus) : (0, BoardRoles.Reference),
        };
        draft.Pair(part, assembly, BoardRoles.At(role, other));
    }

    private static bool HasMinus(BoardDraft draft) => 0 < draft.Design.ChannelList.Count
        && draft.Design.ChannelList[Math.Max(0, draft.Assembly - 1)].Minus is not null;

    /// <summary>Capacitor and bias resistor at an input; the reference's input, which channels share, has one of each.</summary>
    private static void InputNetworkAt(BoardDraft draft, string side, string pin)
    {
        InputNetwork input = draft.Design.Input;
        BoardPart? shunt = draft.Capacitor(BoardRoles.At(BoardRoles.Shunt, side), $"capacitor from the {side} input to common", pin, Nets.Common,
            input.ShuntCapacitor, input.CapacitorTolerance, DesignKeys.Input.ShuntCapacitor);
        Pair(draft, shunt, BoardRoles.Shunt, side);
        if (input.BiasResistor is { } bias)
        {
            draft.Resistor(BoardRoles.At(BoardRoles.Bias, side), $"bias resistor of the {side} input", pin, Nets.Middle, bias, input.ResistorTolerance,
                DesignKeys.Input.BiasResistor);
        }
    }

    /// <summary>What stands at an electrode with a follower: metal, skin resistor, op-amp, resistor in front of the cable.</summary>
    private static void Buffer(BoardDraft draft, ElectrodeBuffer buffer, string key, string electrode, string net, int one, int electrodes)
    {
        string suffix = electrode == BoardRoles.Active ? "" : electrodes < 2 ? net[..1] : $"{net[..1]}{one + 1}";
        string skin = draft.Net(Nets.Skin + suffix), plus = draft.Net(Nets.BufferInput + suffix), output = draft.Net(Nets.BufferOutput + suffix);
        string card = key[..(key.LastIndexOf('.') + 1)] + "card";
        draft.Add(PieceClass.Connector, BoardRoles.At(BoardRoles.Contact, electrode, one), $"metal of the {electrode} electrode", [new("1", "", skin)],
            description: "pad that holds the electrode");
        BoardPart? resistor = draft.Resistor(BoardRoles.At(BoardRoles.Skin, electrode, one), $"resistor between skin and buffer of the {electrode} electrode",
            skin, plus, buffer.SkinResistor, draft.Design.Input.ResistorTolerance, key);
        draft.Change(resistor, part => part with { ProtectsWearer = true });
        draft.OpAmp(BoardRoles.At(BoardRoles.Buffer, electrode, one), $"follower at the {electrode} electrode",
            buffer.OpAmp with { Card = buffer.Card.Length == 0 ? buffer.OpAmp.Card : buffer.Card }, card, (plus, output, output), alone: true);
        draft.Resistor(BoardRoles.At(BoardRoles.BufferOutput, electrode, one), $"between the {electrode} electrode's follower and its cable", output,
            draft.Net(net), buffer.OutputResistance, draft.Design.Input.ResistorTolerance, key[..(key.LastIndexOf('.') + 1)] + "output-resistance");
    }




}
