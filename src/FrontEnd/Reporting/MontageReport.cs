using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Findings;
using FrontEnd.Identity;
using FrontEnd.Quantities;
using FrontEnd.Text;

namespace FrontEnd.Reporting;

/// <summary>Derived channels: what weights do to the channels' own noise and to what a shared reference puts into all of them.</summary>
internal static class MontageReport
{
    public static void AddTo(ResultList list, List<Finding> findings, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        if (design.Montage.Sites.Count != 0 && design.Montage.Sites.Count != design.Channels)
        {
            findings.Add(Messages.SiteCount(design.Montage.Sites.Count, design.Channels));
        }

        (double own, double shared) = Split(evaluation.Noise);
        double total = own + shared;
        list.Number(ResultIds.Montage.Correlation, "correlation of noise between recorded channels, from the shared reference", "ρ",
            Ratio.FromFraction(total == 0 ? 0 : shared / total), Equations.Correlation);
        foreach ((string name,
            double[] weights) in design.Montage.ChannelNames(design.Channels).Zip(Weights(design.Montage.Kind, design.Channels)))
        {
            double squares = weights.Sum(c => c * c), sum = weights.Sum();
            sum = Math.Abs(sum) < 1e-12 ? 0 : sum;
            double noise = Math.Sqrt((own * squares) + (shared * sum * sum));
            MontageIds ids = ResultIds.Montage.Channel(name);
            list.Number(
                ids.Noise, $"noise of derived channel {name}, rms", "σ", VoltageRms.FromVolts(noise), Equations.MontageNoise,
                $"√({QuantityText.Format(Math.Sqrt(own), "V")}²·{QuantityText.FormatNumber(squares)} + {QuantityText.Format(Math.Sqrt(shared), "V")}²·{QuantityText.FormatNumber(sum)}²)");
            list.Number(
                ids.SharedReference, $"what the shared reference puts into {name}, rms", "",
                VoltageRms.FromVolts(Math.Sqrt(shared) * Math.Abs(sum)), Equations.SharedReference,
                text: sum == 0 ? "the reference cancels" : null);
        }
    }

    /// <summary>Weights of the recorded channels in each derived one, in the order of <see cref="Montage.ChannelNames"/>.</summary>
    public static IEnumerable<double[]> Weights(MontageKind kind, int channels)
    {
        int n = channels, rows = kind == MontageKind.Bipolar ? n - 1 : kind == MontageKind.MeanOfOthers && n < 2 ? 0 : n;
        for (int i = 0; i < rows; i++)
        {
            double others = kind switch
            {
                MontageKind.Average => -1.0 / n,
                MontageKind.MeanOfOthers => -1.0 / (n - 1),
                _ => 0,
            };
            double[] row = [.. Enumerable.Repeat(others, n)];
            row[i] = kind == MontageKind.Average ? 1 + others : 1;
            if (kind == MontageKind.Bipolar)
            {
                row[i + 1] = -1;
            }

            yield return row;
        }
    }

    /// <summary>Variances of a channel: its own, and that of the reference's lead, which every channel gets alike.</summary>
    /// <remarks>The reference's lead has the reference electrode and one of the two protection resistors; the amplifier's current noise
    /// there is counted with the channel's own.</remarks>
    private static (double Own, double Shared) Split(NoiseBudget noise)
    {
        double shared = 0, total = noise.Total * noise.Total;
        foreach (NoiseRow row in noise.Rows())
        {
            shared += row.Id == SourceId.ReferenceElectrode
                ? row.Rms * row.Rms
                : row.Id == SourceId.ProtectionResistors
                ? row.Rms * row.Rms / 2
                : 0;
        }

        return (Math.Max(0, total - shared), shared);
    }
}
