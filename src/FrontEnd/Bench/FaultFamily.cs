namespace FrontEnd.Bench;

/// <summary>One kind of fault in every size that it may have, as what it does to the predicted spectrum in the rows of a recording.</summary>
/// <param name="Kind">What it would be.</param>
/// <param name="Words">What is off, for the reader; "{0}" stands for how much.</param>
internal abstract record FaultFamily(SuspectKind Kind, string Words)
{
    /// <summary>What a model of the board is off by in a row that stands by itself, and, of what a fault changes there, a share of it: cards give typical
    /// figures, and neighbouring rows share one [dB] (chosen).</summary>
    private const double RowDecibels = 0.5, ChangeShare = 0.05;

    /// <summary>The same of all rows alike: a third of what noise may be off by, 1.2 [dB].</summary>
    private const double LevelDecibels = 0.5;

    /// <summary>True where the size is how many times more than stated something is: a factor of ten is unlikely, one of a hundred four times so.</summary>
    public bool IsTimes { get; init; }

    /// <summary>The size that fits a recording best.</summary>
    public abstract FaultFit Fit(SpectrumRows rows);

    /// <summary>−2·ln of what is thought of a size beforehand: a factor is as likely as its logarithm in a normal distribution with a deviation of ten times (chosen).</summary>
    protected double Beforehand(double size) => IsTimes ? Math.Pow(Math.Log10(Math.Max(1e-30, size)), 2) : 0;

    /// <summary>The fault as the recording shows it: its size in words.</summary>
    public string Told(double size) => Words.Replace("{0}", QuantityText.FormatNumber(size, 2), StringComparison.Ordinal);

    /// <summary>−2·ln of the likelihood of what is left in the rows when a change is taken off: Gaussian with the variance of chance and of the model, the level of
    /// all rows free within its own.</summary>
    /// <remarks>A row counts no more than a distance of three deviations: what no fault explains, such as a smeared line, decides nothing.</remarks>
    /// <param name="rows">The recording's.</param>
    /// <param name="change">What the fault makes of each row [dB].</param>
    internal static double Misfit(SpectrumRows rows, ReadOnlySpan<double> change)
    {
        double weights = 0, first = 0, level = 0, sum = 0;
        for (int pass = 0; pass < 2; pass++)
        {
            (weights, first, sum) = (0, 0, 0);
            for (int i = 0; i < rows.Count; i++)
            {
                double model = RowDecibels + (ChangeShare * Math.Abs(change[i])), variance = rows.Variance[i] + (model * model), left = rows.Difference[i] - change[i];
                weights += 1 / variance;
                first += left / variance;
                double off = left - level;
                sum += Capped(off * off / variance) + Math.Log(variance);
            }

            if (pass == 0)
            {
                level = first / (weights + (1 / (LevelDecibels * LevelDecibels)));
            }
        }

        return sum + (level * level / (LevelDecibels * LevelDecibels));
    }

    /// <summary>True where the rows are the predicted ones, but for chance and what a model may be off by: the sum of squares is within what one record in some thousands
    /// goes beyond (χ² of as many degrees as rows).</summary>
    internal static bool IsAlike(SpectrumRows rows)
    {
        const double Sigmas = 3;
        double sum = Misfit(rows, new double[rows.Count]) - rows.Variance.Sum(variance => Math.Log(variance + (RowDecibels * RowDecibels)));
        return sum < rows.Count + (Sigmas * Math.Sqrt(2 * rows.Count));
    }

    /// <summary>Grows as it is up to 9 and then with its logarithm.</summary>
    private static double Capped(double square) => square <= 9 ? square : 9 * (1 + Math.Log(square / 9));
}

/// <summary>How well a fault explains a recording.</summary>
/// <param name="Misfit">Less is better; see <see cref="FaultFamily.Misfit"/>.</param>
/// <param name="Size">The size that fits best.</param>
internal readonly record struct FaultFit(double Misfit, double Size);

/// <summary>Something that is added to what stays, in any amount: P = kept + a·added, both as shares of the predicted density.</summary>
/// <param name="Kept">What stays.</param>
/// <param name="Added">What is added.</param>
/// <param name="Least">Least a.</param>
/// <param name="Most">Greatest a.</param>
/// <param name="Size">From a to the size that is told.</param>
internal sealed record MixedFaults(SuspectKind Kind, string Words, double[] Kept, double[] Added, double Least, double Most, Func<double, double> Size)
    : FaultFamily(Kind, Words)
{
    private const int Tried = 24, Halvings = 18;

    public override FaultFit Fit(SpectrumRows rows)
    {
        // A search over the logarithm: a coarse one first, as there may be more than one valley.
        double low = Math.Log(Math.Max(1e-12, Least)), high = Math.Log(Most), step = (high - low) / Tried;
        var change = new double[rows.Count];
        int best = Enumerable.Range(0, Tried + 1).MinBy(i => At(low + (i * step)));
        (double from, double to) = (Math.Max(low, low + ((best - 1) * step)), Math.Min(high, low + ((best + 1) * step)));
        double golden = (Math.Sqrt(5) - 1) / 2;
        for (int i = 0; i < Halvings; i++)
        {
            double left = to - (golden * (to - from)), right = from + (golden * (to - from));
            (from, to) = At(left) < At(right) ? (from, right) : (left, to);
        }

        double found = (from + to) / 2;
        double size = Size(Math.Exp(found));
        return new FaultFit(At(found) + Beforehand(size), size);

        double At(double logarithm)
        {
            double amount = Math.Exp(logarithm);
            for (int i = 0; i < change.Length; i++)
            {
                change[i] = 10 * Math.Log10(Math.Max(1e-30, Kept[i] + (amount * Added[i])));
            }

            return Misfit(rows, change);
        }
    }
}

/// <summary>Faults that were worked out one by one.</summary>
/// <param name="Changes">What each makes of each row [dB].</param>
/// <param name="Sizes">How large each is, as it is told.</param>
internal sealed record ListedFaults(SuspectKind Kind, string Words, IReadOnlyList<double[]> Changes, IReadOnlyList<double> Sizes) : FaultFamily(Kind, Words)
{
    /// <summary>True where sizes between neighbours are possible too: what they make is drawn straight over the logarithm of the size.</summary>
    public bool IsSmooth { get; init; }

    private const int Between = 8;

    public override FaultFit Fit(SpectrumRows rows)
    {
        FaultFit best = new(double.PositiveInfinity, 0);
        for (int i = 0; i < Changes.Count; i++)
        {
            Try(Changes[i], Sizes[i]);
            for (int part = 1; IsSmooth && part < Between && i + 1 < Changes.Count; part++)
            {
                double share = (double)part / Between;
                Try([.. Changes[i].Zip(Changes[i + 1], (one, next) => one + (share * (next - one)))], Sizes[i] * Math.Pow(Sizes[i + 1] / Sizes[i], share));
            }
        }

        return best;

        void Try(double[] change, double size)
        {
            double misfit = Misfit(rows, change) + Beforehand(size);
            best = misfit < best.Misfit ? new FaultFit(misfit, size) : best;
        }
    }
}
