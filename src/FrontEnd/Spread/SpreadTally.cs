namespace FrontEnd.Spread;

/// <summary>What is kept of the builds: the figures' values as drawn, and how many builds meet their limits in each of the
/// surroundings.</summary>
/// <remarks>A thread counts in one of its own; numbers of builds add up to the same in any order.</remarks>
internal sealed class SpreadTally
{
    private readonly SpreadLimit[] _limits;

    public SpreadTally(SpreadLimit[] limits)
    {
        _limits = limits;
        Met = new int[SpreadKernel.Surroundings][];
        for (int i = 0; i < Met.Length; i++)
        {
            Met[i] = new int[limits.Length];
        }
    }

    /// <summary>Builds that meet each of the limits, by surrounding.</summary>
    public int[][] Met { get; }

    /// <summary>Builds that meet all of them, by surrounding.</summary>
    public int[] MetAll { get; } = new int[SpreadKernel.Surroundings];

    /// <summary>The builds with the least and the most bits needed before they are rounded up, the first of equal ones.</summary>
    public (double Value, int Build) Least { get; private set; } = (double.NaN, int.MaxValue);

    public (double Value, int Build) Most { get; private set; } = (double.NaN, int.MaxValue);

    /// <summary>Counts the first <paramref name="live"/> lanes of the builds last evaluated.</summary>
    public void Count(SpreadKernel kernel, int first, int live)
    {
        for (int surrounding = 0; surrounding < SpreadKernel.Surroundings; surrounding++)
        {
            for (int lane = 0; lane < live; lane++)
            {
                bool all = true;
                for (int i = 0; i < _limits.Length; i++)
                {
                    double value = kernel.Figure(surrounding, _limits[i].Figure)[lane];
                    bool met = _limits[i].IsMet(value);
                    Met[surrounding][i] += met ? 1 : 0;

                    // What a device has none of (NaN) it does not fail.
                    all &= met || double.IsNaN(value);
                }

                MetAll[surrounding] += all ? 1 : 0;
            }
        }

        for (int lane = 0; lane < live; lane++)
        {
            double bits = kernel.Figure(SpreadKernel.Drawn, SpreadKernel.BitsUnrounded)[lane];
            Extremes((bits, first + lane), (bits, first + lane));
        }
    }

    /// <summary>Adds what another thread counted.</summary>
    public void Add(SpreadTally other)
    {
        for (int surrounding = 0; surrounding < SpreadKernel.Surroundings; surrounding++)
        {
            MetAll[surrounding] += other.MetAll[surrounding];
            for (int i = 0; i < _limits.Length; i++)
            {
                Met[surrounding][i] += other.Met[surrounding][i];
            }
        }

        Extremes(other.Least, other.Most);
    }

    private void Extremes((double Value, int Build) least, (double Value, int Build) most)
    {
        Least = IsAhead(least, Least, least.Value < Least.Value) ? least : Least;
        Most = IsAhead(most, Most, Most.Value < most.Value) ? most : Most;
    }

    private static bool IsAhead((double Value, int Build) one, (double Value, int Build) best, bool isBeyond) =>
        isBeyond || (!double.IsNaN(one.Value) && double.IsNaN(best.Value)) || (one.Value == best.Value && one.Build < best.Build);
}
