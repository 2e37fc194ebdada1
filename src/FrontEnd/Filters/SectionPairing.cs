using System.Numerics;

namespace FrontEnd.Filters;

/// <summary>Which poles and zeros share a section, and in which order the sections stand.</summary>
/// <remarks>The pole pair nearest the edge of stability chooses first and takes the complex zeros nearest to it, which keeps its peak low;
/// sections then run from the tamest to the most
/// peaked, so that early sections do not overload later ones. Real zeros are dealt out evenly, one from each end of their row: a band-pass
/// section gets one at 0 and one at ∞.
/// Common practice; L. B. Jackson, Digital Filters and Signal Processing, section 11.4 (from memory).</remarks>
internal static class SectionPairing
{
    /// <summary>At most two poles and two zeros.</summary>
    internal readonly record struct Group(Complex[] Poles, Complex[] Zeros);

    /// <param name="margin">How far a pole is from the edge of stability; smaller is more peaked.</param>
    internal static List<Group> Pair(ZeroPoleGain filter, Func<Complex, double> margin)
    {
        List<Complex[]> poles = PoleGroups(filter.Poles, margin);
        List<Complex> pairs = [.. filter.Zeros.Where(z => 0 < z.Imaginary)];
        List<double> reals = [.. filter.Zeros.Where(z => z.Imaginary == 0).Select(z => z.Real).Order()];
        if ((2 * pairs.Count) + reals.Count != filter.Zeros.Count || poles.Sum(p => p.Length) != filter.Poles.Count)
        {
            throw new InvalidOperationException("Complex roots must stand in exact conjugate pairs.");
        }

        var zeros = new Complex[poles.Count][];
        for (int i = 0; i < poles.Count; i++)
        {
            zeros[i] = [];
            if (poles[i].Length == 2 && 0 < pairs.Count)
            {
                Complex pole = poles[i][0];
                Complex nearest = pairs.MinBy(z => Complex.Abs(z - pole));
                pairs.Remove(nearest);
                zeros[i] = [nearest, Complex.Conjugate(nearest)];
            }
        }

        DealReals(reals, poles, zeros);
        var groups = new List<Group>();
        for (int i = poles.Count - 1; 0 <= i; i--)
        {
            groups.Add(new Group(poles[i], zeros[i]));
        }

        return groups;
    }

    private static List<Complex[]> PoleGroups(IReadOnlyList<Complex> poles, Func<Complex, double> margin)
    {
        var groups = poles.Where(p => 0 < p.Imaginary).Select(p => new[] { p, Complex.Conjugate(p) }).ToList();
        double[] reals = [.. poles.Where(p => p.Imaginary == 0).Select(p => p.Real).Order()];
        for (int i = 0; i + 1 < reals.Length; i += 2)
        {
            groups.Add([reals[i], reals[i + 1]]);
        }

        if (reals.Length % 2 == 1)
        {
            groups.Add([reals[^1]]);
        }

        // First-order section last here, hence first in the cascade.
        return [.. groups.OrderByDescending(g => g.Length).ThenBy(g => margin(g[0])).ThenBy(g => g[0].Imaginary)];
    }

    private static void DealReals(List<double> reals, List<Complex[]> poles, Complex[][] zeros)
    {
        int[] open = [.. Enumerable.Range(0, poles.Count).Where(i => zeros[i].Length == 0)];
        for (int k = 0; k < open.Length; k++)
        {
            int share = (reals.Count + open.Length - k - 1) / (open.Length - k);
            int take = Math.Min(share, poles[open[k]].Length);
            var taken = new List<Complex>();
            for (int j = 0; j < take; j++)
            {
                int at = j == 0 ? 0 : reals.Count - 1;
                taken.Add(reals[at]);
                reals.RemoveAt(at);
            }

            zeros[open[k]] = [.. taken];
        }

        if (0 < reals.Count)
        {
            throw new InvalidOperationException("There are more zeros than poles.");
        }
    }
}
