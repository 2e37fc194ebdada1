using System.Numerics;
using FrontEnd.Filters;

namespace FrontEnd.AntiAlias;

/// <summary>Which candidates go together, and in which order the signal meets them.</summary>
internal static class SectionArrangement
{
    /// <summary>One candidate of each section, so that the errors of the whole cancel best: each in turn is exchanged until nothing
    /// improves, from every best start.</summary>
    internal static SectionCandidate[] Nearest(IReadOnlyList<SectionCandidate[]> kept, int points)
    {
        SectionCandidate[]? best = null;
        double bestError = double.PositiveInfinity;
        for (int start = 0; start < kept[0].Length; start++)
        {
            SectionCandidate[] choice = [.. kept.Select((list, i) => list[i == 0 ? start : 0])];
            double error = Worst(choice, points);
            bool improved = true;
            while (improved)
            {
                improved = false;
                for (int section = 0; section < kept.Count; section++)
                {
                    foreach (SectionCandidate other in kept[section])
                    {
                        SectionCandidate before = choice[section];
                        choice[section] = other;
                        double changed = Worst(choice, points);
                        if (changed < error - 1e-12)
                        {
                            (error, improved) = (changed, true);
                        }
                        else
                        {
                            choice[section] = before;
                        }
                    }
                }
            }

            if (error < bestError)
            {
                (best, bestError) = (choice, error);
            }
        }

        return best!;
    }

    private static double Worst(SectionCandidate[] choice, int points)
    {
        double worst = 0;
        for (int i = 0; i < points; i++)
        {
            double sum = 0;
            foreach (SectionCandidate candidate in choice)
            {
                sum += candidate.Errors[i];
            }

            worst = Math.Max(worst, Math.Abs(sum));
        }

        return worst;
    }

    /// <summary>The order whose largest swing anywhere inside is least.</summary>
    internal static SectionCandidate[] Tamest(SectionCandidate[] sections)
    {
        SectionCandidate[] tamestFirst = [.. sections.OrderBy(c => c.Wanted.Q ?? 0)];
        // Five sections have 120 orders; more sections stay tamest first, which is never far off.
        if (5 < sections.Length)
        {
            return tamestFirst;
        }

        SectionCandidate[] best = tamestFirst;
        double least = LargestPeak(best);
        foreach (SectionCandidate[] order in Permutations(tamestFirst))
        {
            double peak = LargestPeak(order);
            if (peak < least - 1e-9)
            {
                (best, least) = (order, peak);
            }
        }

        return best;
    }

    private static double LargestPeak(SectionCandidate[] order) => Enumerable.Range(1, order.Length).Max(n => Peak(order.Take(n)));

    /// <summary>Largest gain from the first input to the last output, from 0 Hz to three times the highest pole.</summary>
    internal static double Peak(IEnumerable<SectionCandidate> sections)
    {
        SectionCandidate[] all = [.. sections];
        double low = all.Min(c => c.Wanted.PoleHertz) / 10;
        double high = all.Max(c => c.Wanted.PoleHertz) * 3;
        double[] grid = [0, .. Enumerable.Range(0, 101).Select(i => low * Math.Pow(high / low, i / 100.0))];
        return ResponseExtremes.Greatest(Gain, grid).Value;

        double Gain(double hertz)
        {
            var s = new Complex(0, 2 * Math.PI * hertz);
            double gain = 1;
            foreach (SectionCandidate c in all)
            {
                gain *= Complex.Abs(c.Parts.Numerator(s) / c.Parts.Denominator(s));
            }

            return gain;
        }
    }

    private static IEnumerable<SectionCandidate[]> Permutations(SectionCandidate[] items)
    {
        if (items.Length < 2)
        {
            yield return items;
            yield break;
        }

        for (int i = 0; i < items.Length; i++)
        {
            foreach (SectionCandidate[] rest in Permutations([.. items[..i], .. items[(i + 1)..]]))
            {
                yield return [items[i], .. rest];
            }
        }
    }
}
