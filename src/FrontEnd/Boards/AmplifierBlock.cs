using FrontEnd.Designs;

namespace FrontEnd.Boards;

/// <summary>The differential amplifier of a channel with its gain resistor.</summary>
internal static class AmplifierBlock
{
    private static readonly BoardBlock Block = new(BlockKind.Amplifier);

    /// <summary>Thin film, so that the gain is known (common practice, no source).</summary>
    private static readonly Ratio GainTolerance = Ratio.FromPercent(1);

    public static void AddTo(BoardDraft draft, int channel)
    {
        draft.In(Block);
        Design design = draft.Design;
        bool own = 0 < design.ChannelList.Count && design.ChannelList[channel].Minus is not null;
        bool set = design.Amplifier.HasGainResistor;
        string a = set ? draft.Net(Nets.GainA) : "", b = set ? draft.Net(Nets.GainB) : "", output = draft.Net(Nets.AmplifierOf(design));
        draft.Add(PieceClass.DifferentialAmplifier, BoardRoles.Amplifier, "amplifier",
            [
                new("1", "RG", a), new("2", "−IN", own ? draft.Net(Nets.Negative) : Nets.Negative), new("3", "+IN", draft.Net(Nets.Positive)),
                new("4", "V−", Nets.Common), new("5", "REF", Nets.Middle), new("6", "OUT", output), new("7", "V+", Nets.Analogue), new("8", "RG", b),
            ],
            DesignKeys.Amplifier.Card, Words(design), design.Amplifier.Card);
        if (set)
        {
            BoardPart part = draft.Resistor(BoardRoles.GainResistor, "gain resistor, k/(G − 1)", a, b, draft.Built.GainResistor ?? Resistance.FromOhms(1), GainTolerance,
                DesignKeys.Amplifier.GainConstant)!;
            if (draft.Built.GainResistor is null)
            {
                draft.Change(part, one => one with { Value = null, Remark = "k/(G − 1); k is in the amplifier's data sheet" });
            }
        }

        draft.Decouple(BoardRoles.DecouplingOf(BoardRoles.Amplifier), "decoupling of the amplifier", Nets.Analogue, draft.Choices.Decoupling, DesignKeys.Board.Decoupling);
        draft.TestPoint(output);
    }

    private static string Words(Design design) => design.Amplifier.Gains is null
        ? "instrumentation amplifier, gain set by one resistor"
        : $"instrumentation amplifier, gain {QuantityText.FormatNumber(design.Amplifier.NearestGain ?? design.Amplifier.Gain)} set by pins or register";
}
