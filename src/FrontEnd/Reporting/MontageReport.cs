using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Identity;

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

        double total = Square(evaluation.Noise.Total), shared = Square(evaluation.Noise.Shared), own = Math.Max(0, total - shared);
        list.Number(ResultIds.Montage.Correlation, "correlation of noise between recorded channels, from the shared reference", "ρ",
            PlainNumber.FromNumber(total == 0 ? 0 : shared / total), Equations.Correlation,
            () => $"({QuantityText.Format(Math.Sqrt(shared), "V", 4)})²/({QuantityText.Format(Math.Sqrt(total), "V", 4)})²");
        (string Name, double[] Weights)[] rows =
            [.. design.Montage.ChannelNames(design.Channels).Zip(Montage.Weights(design.Montage.Kind, design.Channels))];
        MainsChoices[] choices = [.. Enumerable.Repeat(evaluation.Mains.Choices, design.Channels)];
        foreach ((string name, double[] weights) in rows)
        {
            double squares = weights.Sum(c => c * c), sum = Sum(weights), noise = Math.Sqrt(Covariance(own, shared, weights, weights));
            MontageIds ids = ResultIds.Montage.Channel(name);
            list.Number(
                ids.Noise, $"noise of derived channel {name}, rms", "σ", VoltageRms.FromVolts(noise), Equations.MontageNoise,
                () => $"√(({QuantityText.Format(Math.Sqrt(own), "V", 4)})²·{QuantityText.FormatNumber(squares)} + ({QuantityText.Format(Math.Sqrt(shared), "V", 4)})²·{QuantityText.FormatNumber(sum)}²)");
            list.Number(
                ids.Mains, $"mains at the electrodes in derived channel {name}, worst case, rms", "",
                VoltageRms.FromVolts(DerivedMains.Of(weights, choices)), Equations.MontageMains);
            list.Number(
                ids.SharedReference, $"what the shared reference puts into {name}, rms", "",
                VoltageRms.FromVolts(Math.Sqrt(shared) * Math.Abs(sum)), Equations.SharedReference,
                text: sum == 0 ? "the reference cancels" : null);
        }

        // Each row with the next: with what is alike for all channels, a pair further apart tells nothing more.
        for (int i = 1; i < rows.Length; i++)
        {
            AddPair(list, own, shared, rows[i - 1], rows[i]);
        }
    }

    private static void AddPair(ResultList list, double own, double shared, (string Name, double[] Weights) first,
        (string Name, double[] Weights) second)
    {
        double product = Covariance(own, shared, first.Weights, first.Weights) * Covariance(own, shared, second.Weights, second.Weights);
        list.Number(
            ResultIds.Montage.CorrelationOf(first.Name, second.Name), $"correlation of the noise of {first.Name} and {second.Name}", "ρ",
            PlainNumber.FromNumber(product == 0 ? 0 : Covariance(own, shared, first.Weights, second.Weights) / Math.Sqrt(product)),
            Equations.DerivedCorrelation);
    }

    /// <summary>Noise of a row of weights.</summary>
    /// <param name="total">Noise of a recorded channel [V].</param>
    /// <param name="shared">What the reference's side puts into every one of them [V].</param>
    public static VoltageRms Noise(IReadOnlyList<double> weights, double total, double shared)
    {
        double common = Square(shared), own = Math.Max(0, Square(total) - common);
        return VoltageRms.FromVolts(Math.Sqrt(Covariance(own, common, weights, weights)));
    }

    /// <summary>Covariance of the noise of two rows of weights [V²]: each channel's own part by the products of its weights, what all
    /// channels get alike by the product of the sums.</summary>
    public static double Covariance(double own, double shared, IReadOnlyList<double> first, IReadOnlyList<double> second) =>
        (own * first.Zip(second, (c, d) => c * d).Sum()) + (shared * Sum(first) * Sum(second));

    /// <summary>Sum of weights; what rounding leaves of a sum that is nothing is nothing.</summary>
    private static double Sum(IReadOnlyList<double> weights) => weights.Sum() is var sum && Math.Abs(sum) < 1e-12 ? 0 : sum;

    private static double Square(double x) => x * x;
}
