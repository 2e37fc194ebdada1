using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Identity;

namespace FrontEnd.Reporting;

/// <summary>What happens when an electrode comes off.</summary>
internal static class OpenReport
{
    public static void AddTo(ResultList list, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        MainsAtInput[] open = evaluation.Mains.WithOpenElectrodes();
        AddOpen(list, evaluation, Lead.Active, open[0]);
        AddOpen(list, evaluation, Lead.Reference, open[1]);
        if (design.Electrodes.Ground is not null)
        {
            AddOpen(list, evaluation, Lead.Ground, open[2]);
        }
    }

    /// <summary>Where the amplifier goes with one electrode off: dc by bias current, mains by everything that couples.</summary>
    private static void AddOpen(ResultList list, Evaluation evaluation, Lead lead, MainsAtInput mains)
    {
        Design design = evaluation.Design;
        DirectLanes direct = DirectLanes.Of(design, evaluation.Path.Model.Input, evaluation.Path.Built, (int)lead);
        double gain = design.Amplifier.Gain, swing = design.Supply.HalfRailVolts;
        double dc = Math.Abs(direct.BiasDifference[0])
            + (lead == Lead.Ground ? Math.Abs(direct.OffsetDifference[0] * design.Electrodes.Offset.Volts) : 0);
        double peak = Math.Sqrt(2) * mains.Difference, common = (Math.Sqrt(2) * mains.CommonMode) + Math.Abs(direct.BiasMean[0]);
        double atOutput = gain * (dc + peak);
        string clips = swing < common
            ? "the inputs leave the amplifier's range"
            : swing < atOutput
            ? "the amplifier clips"
            : "nothing clips: the channel shows mains and drift that look like a signal";
        list.Word(
            ResultIds.Open.Of(lead), $"with the {lead.Word()} electrode off",
            $"{clips}; difference {QuantityText.Format(dc, "V")} dc and {QuantityText.Format(peak, "V")} mains peak at the input, common mode {QuantityText.Format(common, "V")}", Equations.Open);
    }
}
