using System.Numerics;

namespace FrontEnd.Budgets;

/// <summary>What the mains puts into one channel while its own side and the reference's side of the pair each stand at their larger or their
/// smaller values: rms RTI [V].</summary>
/// <param name="Phasor">(v(A2) − v(R2))/H_front: dividers and leads together.</param>
/// <param name="Rest">Amplifier and loop, whose phases are not known.</param>
internal readonly record struct MainsChoice(Complex Phasor, double Rest);

/// <summary>The choices of one channel.</summary>
/// <param name="ReferenceHigh">The reference's side at its larger values: first the channel's own side at its larger, then at its smaller.</param>
/// <param name="ReferenceLow">The same with the reference's side at its smaller values.</param>
internal sealed record MainsChoices((MainsChoice High, MainsChoice Low) ReferenceHigh, (MainsChoice High, MainsChoice Low) ReferenceLow);

/// <summary>The mains in a channel that is derived from others: |Σ c_i·x_i| + Σ|c_i|·(amplifier_i + loop_i), the largest that electrodes and
/// parts within their mismatch and tolerances can make.</summary>
/// <remarks>Every channel's own side may stand either way, the reference's side is one and the same for all of them.</remarks>
internal static class DerivedMains
{
    /// <summary>Up to so many channels every choice is looked at.</summary>
    private const int MostTriedAll = 4;

    /// <summary>Rms RTI [V].</summary>
    /// <param name="weights">c_i of every channel; those of 0 do not count.</param>
    /// <param name="channels">The same channels' choices.</param>
    public static double Of(IReadOnlyList<double> weights, IReadOnlyList<MainsChoices> channels)
    {
        var row = new List<(double Weight, MainsChoices Choices)>(weights.Count);
        for (int i = 0; i < weights.Count; i++)
        {
            if (weights[i] != 0)
            {
                row.Add((weights[i], channels[i]));
            }
        }

        return Math.Max(Largest([.. row.Select(one => Weighted(one.Weight, one.Choices.ReferenceHigh))]),
            Largest([.. row.Select(one => Weighted(one.Weight, one.Choices.ReferenceLow))]));
    }

    private static (MainsChoice High, MainsChoice Low) Weighted(double weight, (MainsChoice High, MainsChoice Low) choices) =>
        (new MainsChoice(weight * choices.High.Phasor, Math.Abs(weight) * choices.High.Rest),
            new MainsChoice(weight * choices.Low.Phasor, Math.Abs(weight) * choices.Low.Rest));

    private static double Largest((MainsChoice High, MainsChoice Low)[] row)
    {
        var isHigh = new bool[row.Length];
        if (row.Length <= MostTriedAll)
        {
            double most = 0;
            for (int choice = 0; choice < 1 << row.Length; choice++)
            {
                for (int i = 0; i < row.Length; i++)
                {
                    isHigh[i] = ((choice >> i) & 1) == 0;
                }

                most = Math.Max(most, Size(Sum(row, isHigh)));
            }

            return most;
        }

        // What a channel's choice moves, seen along the largest such move: with everything in one line this is the largest sum already.
        Complex along = row.Select(one => one.High.Phasor - one.Low.Phasor).MaxBy(move => move.Magnitude);
        bool[] toward = [.. row.Select(one => 0 <= ((one.High.Phasor - one.Low.Phasor) * Complex.Conjugate(along)).Real)];
        return Math.Max(Climb(row, toward), Climb(row, [.. toward.Select(one => !one)]));
    }

    /// <summary>Turns single channels over while the sum grows.</summary>
    private static double Climb((MainsChoice High, MainsChoice Low)[] row, bool[] isHigh)
    {
        MainsChoice sum = Sum(row, isHigh);
        double best = Size(sum);
        for (bool grows = true; grows;)
        {
            grows = false;
            for (int i = 0; i < row.Length; i++)
            {
                (MainsChoice now, MainsChoice other) = isHigh[i] ? (row[i].High, row[i].Low) : (row[i].Low, row[i].High);
                MainsChoice turned = new(sum.Phasor - now.Phasor + other.Phasor, sum.Rest - now.Rest + other.Rest);

                // More than rounding, which could turn a channel over and back for ever.
                if (best * (1 + 1e-12) < Size(turned))
                {
                    (sum, best, isHigh[i], grows) = (turned, Size(turned), !isHigh[i], true);
                }
            }
        }

        return Size(Sum(row, isHigh));
    }

    private static MainsChoice Sum((MainsChoice High, MainsChoice Low)[] row, bool[] isHigh)
    {
        Complex phasor = 0;
        double rest = 0;
        for (int i = 0; i < row.Length; i++)
        {
            MainsChoice one = isHigh[i] ? row[i].High : row[i].Low;
            (phasor, rest) = (phasor + one.Phasor, rest + one.Rest);
        }

        return new MainsChoice(phasor, rest);
    }

    private static double Size(MainsChoice sum) => sum.Phasor.Magnitude + sum.Rest;
}
