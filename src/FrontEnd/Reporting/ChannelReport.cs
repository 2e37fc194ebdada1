using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Identity;

namespace FrontEnd.Reporting;

/// <summary>What is judged, for each channel of a design that names its channels.</summary>
internal static class ChannelReport
{
    public static void AddTo(ResultList list, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        for (int channel = 0; channel < design.ChannelList.Count; channel++)
        {
            AddTo(list, design.ChannelList[channel], evaluation.Of(channel));
        }
    }

    private static void AddTo(ResultList list, Channel channel, ChannelBudgets budgets)
    {
        string name = channel.Name;
        Number(ResultIds.Noise.Total, $"noise of channel {name} at the electrodes, rms", "σ", VoltageRms.FromVolts(budgets.Noise.Total), Equations.Noise);
        Number(ResultIds.Noise.BoardShare, $"noise of channel {name} without the electrodes' excess noise, peak-to-peak",
            $"{TradeConstants.NoisePeakToPeak}·σ_board", VoltagePeakToPeak.FromVolts(TradeConstants.NoisePeakToPeak * budgets.Noise.WithoutExcess), Equations.Noise);
        MainsPartsAtInput mains = budgets.Mains.AtInput;
        Number(ResultIds.Mains.Total, $"mains at the electrodes of channel {name}, worst case, rms", "", VoltageRms.FromVolts(mains.Total), Equations.MainsTotal);
        Number(ResultIds.Mains.Recorded, $"mains recorded in channel {name} in the band, worst-case sum, rms", "", VoltageRms.FromVolts(budgets.Mains.Recorded),
            Equations.Recorded);
        list.Decibel(Id(ResultIds.Mains.SystemCmrr), $"rejection of the body's common mode in channel {name}", "CMRR",
            mains.BodyCommonMode / (mains.Divider + mains.Amplifier), Equations.SystemCmrr,
            mains.BodyCommonMode == 0 ? "no common mode to reject" : "electrodes and amplifier are perfectly balanced");
        AddLevels(list, name, budgets.Levels, budgets.Design.Requirements.Offset);
        double ohms = LeastOhms(budgets.Design);
        if (0 < ohms)
        {
            Number(ResultIds.Safety.FaultCurrent, $"dc through an electrode of channel {name} after a single fault", "I",
                Current.FromAmperes(SafetyLanes.Current(budgets.Design.Supply.Highest.Volts, new(ohms))[0]), Equations.FaultCurrent);
        }
        else
        {
            list.Unbounded(Id(ResultIds.Safety.FaultCurrent), $"dc through an electrode of channel {name} after a single fault", "I", "A", Equations.FaultCurrent,
                SafetyReport.NotLimited(budgets.Design));
        }

        ResultId Id(ResultId figure) => ResultIds.Channel.Of(name, figure);

        void Number(ResultId figure, string words, string symbol, IQuantity value, Citations.Equation equation) =>
            list.Number(Id(figure), words, symbol, value, equation);
    }

    private static void AddLevels(ResultList list, string name, LevelsBudget levels, Voltage wanted)
    {
        ResultId offset = ResultIds.Channel.Of(name, ResultIds.Levels.OffsetSurvived), least = ResultIds.Channel.Of(name, ResultIds.Levels.LeastHeadroom);
        string offsetWords = $"largest electrode offset before anything clips in channel {name}, ±", leastWords = $"least headroom in channel {name}, lowest supply";
        if (levels.OffsetSurvived is { } volts)
        {
            list.Number(offset, offsetWords, "", Voltage.FromVolts(volts), Equations.OffsetSurvived, text: $"limited by {levels.OffsetLimitedBy?.Node}");
            list.Number(ResultIds.Channel.OffsetToSpare(name), $"electrode offset that channel {name} survives beyond the required one", "",
                Voltage.FromVolts(volts - wanted.Volts), Equations.OffsetToSpare, () => $"{QuantityText.Format(volts, "V")} − {QuantityText.Format(wanted)}");
        }
        else
        {
            list.Unbounded(offset, offsetWords, "", "V", Equations.OffsetSurvived, "no node sees the electrodes' offset");
        }

        if (levels.FirstToClip is { Headroom: { } headroom } node)
        {
            list.Number(least, leastWords, "", Decibels.FromStated(headroom), Equations.Headroom, text: $"at {node.Node.Words}");
        }
        else
        {
            list.Unbounded(least, leastWords, "", "dB", Equations.Headroom, "no voltage at any node");
        }
    }

    /// <summary>The least resistance fitted in a measuring lead of the channel, its reference's or minus electrode's among them, and in the ground's,
    /// which every channel has [Ω].</summary>
    private static double LeastOhms(Design design)
    {
        var fitted = SafetyLanes.Least(design);
        return Math.Min(Math.Min(fitted.Active[0], fitted.Reference[0]), fitted.Ground?[0] ?? double.PositiveInfinity);
    }
}
