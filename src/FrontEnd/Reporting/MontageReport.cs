using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Identity;

namespace FrontEnd.Reporting;

/// <summary>Derived channels: what weights do to the channels' own noise and mains, and to what a shared reference puts into all of them.</summary>
internal static class MontageReport
{
    public static void AddTo(ResultList list, List<Finding> findings, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        if (design.Montage.Sites.Count != 0 && design.Montage.Sites.Count != design.Channels)
        {
            findings.Add(Messages.SiteCount(design.Montage.Sites.Count, design.Channels));
        }

        if (evaluation.EveryKind.Count == 1)
        {
            AddCorrelation(list, evaluation.Noise);
        }

        var noise = DerivedNoise.Of(evaluation);
        IReadOnlyList<DerivedRow> rows = design.DerivedRows;
        MainsChoices[] choices = [.. Enumerable.Range(0, design.Channels).Select(channel => evaluation.Of(channel).Mains.Choices)];
        foreach (DerivedRow row in rows)
        {
            double common = noise.Common(row.Weights);
            MontageIds ids = ResultIds.Montage.Channel(row.Name);
            list.Number(ids.Noise, $"noise of derived channel {row.Name}, rms", "σ", VoltageRms.FromVolts(noise.Rms(row.Weights)), Equations.MontageNoise,
                evaluation.EveryKind.Count == 1 ? PutIn(evaluation.Noise, row.Weights) : null);
            list.Number(
                ids.Mains, $"mains at the electrodes in derived channel {row.Name}, worst case, rms", "",
                VoltageRms.FromVolts(DerivedMains.Of(row.Weights, choices)), Equations.MontageMains);
            list.Number(
                ids.SharedReference, $"noise from the shared reference in {row.Name}, rms", "",
                VoltageRms.FromVolts(Math.Abs(common)), Equations.SharedReference,
                text: common == 0 ? "the reference cancels" : null);
        }

        // Each row with the next: with what is alike for all channels, a pair further apart tells nothing more.
        for (int i = 1; i < rows.Count; i++)
        {
            AddPair(list, noise, rows[i - 1], rows[i]);
        }
    }

    private static void AddCorrelation(ResultList list, NoiseBudget noise)
    {
        double total = Square(noise.Total), shared = Square(noise.Shared);
        list.Number(ResultIds.Montage.Correlation, "correlation of noise between recorded channels, from the shared reference", "ρ",
            PlainNumber.FromNumber(total == 0 ? 0 : shared / total), Equations.Correlation,
            () => $"({QuantityText.Format(Math.Sqrt(shared), "V", 4)})²/({QuantityText.Format(Math.Sqrt(total), "V", 4)})²");
    }

    /// <summary>Of channels that are alike.</summary>
    private static Func<string> PutIn(NoiseBudget noise, IReadOnlyList<double> weights) => () =>
    {
        double shared = Square(noise.Shared), own = Math.Max(0, Square(noise.Total) - shared), sum = weights.Sum();
        return $"√(({QuantityText.Format(Math.Sqrt(own), "V", 4)})²·{QuantityText.FormatNumber(weights.Sum(Square))} + ({QuantityText.Format(Math.Sqrt(shared), "V", 4)})²·{QuantityText.FormatNumber(Math.Abs(sum) < 1e-12 ? 0 : sum)}²)";
    };

    private static void AddPair(ResultList list, DerivedNoise noise, DerivedRow first, DerivedRow second)
    {
        double product = noise.Covariance(first.Weights, first.Weights) * noise.Covariance(second.Weights, second.Weights);
        list.Number(
            ResultIds.Montage.CorrelationOf(first.Name, second.Name), $"correlation of the noise of {first.Name} and {second.Name}", "ρ",
            PlainNumber.FromNumber(product == 0 ? 0 : noise.Covariance(first.Weights, second.Weights) / Math.Sqrt(product)),
            Equations.DerivedCorrelation);
    }

    private static double Square(double x) => x * x;
}
