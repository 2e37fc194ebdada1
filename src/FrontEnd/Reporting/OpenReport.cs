using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Identity;

namespace FrontEnd.Reporting;

/// <summary>What happens when an electrode comes off.</summary>
internal static class OpenReport
{
    public static void AddTo(ResultList list, Evaluation evaluation)
    {
        double[][] gains = OpenElectrode.Gains(evaluation.Path, evaluation.Mains);
        AddOpen(list, evaluation, gains, Lead.Active);
        AddOpen(list, evaluation, gains, Lead.Reference);
        if (evaluation.Design.Electrodes.Ground is not null)
        {
            AddOpen(list, evaluation, gains, Lead.Ground);
        }
    }

    /// <summary>What clips, where the open input goes, then every node of the path.</summary>
    private static void AddOpen(ResultList list, Evaluation evaluation, double[][] gains, Lead lead)
    {
        var open = new OpenElectrode(evaluation.Design, evaluation.Path, evaluation.Mains, gains, lead);
        string[] clipping = [.. open.Nodes.Where(node => node.Clips).Select(node => node.Node.Words)];
        string clips = clipping.Length == 0
            ? "nothing clips: the channel shows mains and drift that look like a signal"
            : $"{Together(clipping)} {(clipping.Length == 1 ? "clips" : "clip")}";
        ElectrodeBuffer? buffer = Buffer(evaluation.Design, lead);
        Current bias = buffer?.OpAmp.BiasCurrent ?? evaluation.Design.Amplifier.BiasCurrent;
        string what = lead == Lead.Ground ? "both inputs go" : buffer is not null ? "its buffer's output goes" : "the open input goes";
        list.Word(
            ResultIds.Open.Of(lead), $"with the {lead.Word()} electrode off",
            $"{clips}; {what} to {V(open.InputDc)} dc{(bias.Amperes == 0 ? " (no bias current is given)" : "")} and {V(open.InputMains)} of mains, peak{(open.InputAtRail ? ", held at the rail" : "")}",
            Equations.Open);
        foreach (OpenNode node in open.Nodes)
        {
            string limit = $"{(node.Clips ? "clips at" : "of")} ±{V(node.Swing)}";
            list.Number(
                ResultIds.Open.At(lead, node.Node), $"with the {lead.Word()} electrode off, farthest at {node.Node.Words}, ±", "",
                Voltage.FromVolts(node.Farthest), Equations.OpenNode, text: $"dc {V(node.Dc)}, mains {V(node.Mains)} peak; {limit}");
        }
    }

    /// <summary>The buffer at the electrode that is off; null without one.</summary>
    private static ElectrodeBuffer? Buffer(Design design, Lead lead) => lead switch
    {
        Lead.Active => design.Electrodes.ActiveBuffer,
        Lead.Reference => design.Electrodes.ReferenceBuffer,
        _ => null,
    };

    private static string Together(string[] words) =>
        words.Length == 1 ? words[0] : $"{string.Join(", ", words[..^1])} and {words[^1]}";

    private static string V(double volts) => QuantityText.Format(volts, "V");
}
