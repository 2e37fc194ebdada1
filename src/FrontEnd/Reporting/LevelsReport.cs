using FrontEnd.Budgets;
using FrontEnd.Citations;
using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Textbook;

namespace FrontEnd.Reporting;

/// <summary>Levels, what clips first, and recovery.</summary>
internal static class LevelsReport
{
    public static void AddTo(ResultList list, Evaluation evaluation)
    {
        AddLimits(list, evaluation);
        AddGainLimit(list, evaluation.Design);
    }

    /// <summary>Headroom at every node and what the path survives.</summary>
    public static void AddLimits(ResultList list, Evaluation evaluation)
    {
        LevelsBudget levels = evaluation.Levels;
        foreach (NodeLevel node in levels.Nodes)
        {
            AddHeadroom(list, node);
        }

        if (levels.FirstToClip is { } first)
        {
            list.Word(ResultIds.Levels.FirstToClip, "what clips first", first.Node.Text, Equations.FirstToClip);
        }

        AddOffsetSurvived(list, levels);
        AddLimit(list, ResultIds.Levels.LargestSignal, "largest signal before anything clips, peak", levels.LargestSignal,
            Equations.LargestSignal, $"limited by {levels.SignalLimitedBy?.Node}", "no node sees the signal");
    }

    /// <summary>The headroom and the offset that are judged.</summary>
    public static void AddJudged(ResultList list, LevelsBudget levels)
    {
        if (levels.FirstToClip is { } first)
        {
            AddHeadroom(list, first);
        }

        AddOffsetSurvived(list, levels);
    }

    private static void AddHeadroom(ResultList list, NodeLevel node)
    {
        ResultId id = ResultIds.Levels.Headroom(node.Node);
        string name = $"headroom at {node.Node.Words}, lowest supply";
        string parts = $"swing ±{V(node.Swing)}; dc {V(node.Offset + node.OtherDc)}, signal {V(node.Signal)}, mains {V(node.Mains)}, noise {V(node.Noise)}";
        if (node.Headroom is { } headroom)
        {
            list.Number(
                id, name, "", Decibels.FromStated(headroom), Equations.Headroom,
                () => $"20·log10({V(node.Swing)}/({V(node.Offset)} + {V(node.OtherDc)} + {V(node.Signal)} + {V(node.Mains)} + {V(node.Noise)}))", text: parts);
        }
        else
        {
            list.Unbounded(id, name, "", "dB", Equations.Headroom, "no voltage at this node");
        }
    }

    private static void AddOffsetSurvived(ResultList list, LevelsBudget levels)
    {
        string whatever = levels.ClipsWhateverTheOffset is { } clipping ? $"; {clipping.Node} clips whatever the offset" : "";
        AddLimit(
            list, ResultIds.Levels.OffsetSurvived, "largest electrode offset before anything clips, ±", levels.OffsetSurvived,
            Equations.OffsetSurvived, $"limited by {levels.OffsetLimitedBy?.Node}{whatever}",
            $"no node sees the electrodes' offset{whatever}");
    }

    private static string V(double volts) => QuantityText.Format(volts, "V");

    private static void AddLimit(ResultList list, ResultId id, string name, double? volts, Equation equation, string? text,
        string unbounded)
    {
        if (volts is { } value)
        {
            list.Number(id, name, "", Voltage.FromVolts(value), equation, text: text);
        }
        else
        {
            list.Unbounded(id, name, "", "V", equation, unbounded);
        }
    }

    /// <summary>The gain that the first stage may have at most, by formula; the nodes' own levels decide the verdict.</summary>
    private static void AddGainLimit(ResultList list, Design design)
    {
        if (0 < design.Electrodes.Offset.Volts + design.LargestSignal.Volts)
        {
            Voltage offset = Voltage.FromVolts(Math.Max(Math.Abs(design.Electrodes.Offset.Volts), design.Requirements.Offset.Volts));
            TextbookFigure hand = AmplifierFormulas.FirstStageGainLimit(
                Voltage.FromVolts(2 * design.Supply.HalfRailVolts), design.Amplifier.OutputMargin, offset, design.LargestSignal);
            list.Number(
                ResultIds.Levels.FirstGainLimit, "largest first-stage gain for the required offset", "G1",
                Ratio.FromFraction(Math.Max(0, hand.Value)), Equations.GainLimit, () => hand.Substituted, hand,
                text: $"the design has {QuantityText.FormatNumber(design.Amplifier.Gain)}");
        }
    }

    /// <summary>How long a step of the electrodes' offset is seen, the limits of every node with it.</summary>
    public static void AddRecovery(ResultList list, List<Finding> findings, Evaluation evaluation)
    {
        const string Name = "recovery after a step of the electrode offset, to within 10 µV of its final value at the input";
        Recovery recovery = evaluation.Recovery;
        string step = V(recovery.StepVolts), end = recovery.FinalVolts < Recovery.Tolerance
            ? ""
            : $"ends at {V(recovery.FinalVolts)} at the electrodes: no high-pass removes the offset";
        if (recovery.HeldBy is var (block, volts))
        {
            string limit = $"{V(volts)} where only ±{V(block.Swing)} is possible";
            list.Unbounded(ResultIds.Levels.Recovery, Name, "t", "s", Equations.Recovery, $"{block.Node} stays at its limit: {limit}");
            findings.Add(Messages.StaysAtLimit(step, block.Node.Text, Where(evaluation.Design, block.Node), limit));
        }
        else if (recovery.Seconds is { } seconds)
        {
            list.Number(ResultIds.Levels.Recovery, Name, "t", Duration.FromSeconds(seconds), Equations.Recovery,
                () => $"step of {step}, sampled at {QuantityText.FormatPart(evaluation.Design.Converter.Rate)}", text: end);
        }
        else
        {
            list.Unbounded(ResultIds.Levels.Recovery, Name, "t", "s", Equations.Recovery, "the recording never settles");
            findings.Add(Messages.DoesNotSettle("a step of the electrode offset"));
        }
    }

    /// <summary>The field to look at for a node that stays at its limit.</summary>
    private static string Where(Design design, NodeId node)
    {
        int stage = design.Stages.ToList().FindIndex(one => NodeId.Of(one.Name) == node);
        return node == NodeId.Converter ? DesignKeys.Converter.FullScale : stage < 0 ? DesignKeys.Amplifier.Gain : $"stages[{stage + 1}]";
    }
}
