using System.Collections.Concurrent;
using FrontEnd.Identity;
using FrontEnd.Spread;

namespace FrontEnd.Unknowns;

/// <summary>How strongly each unknown input moves each figure: correlation of ranks over the draws.</summary>
internal sealed class Correlations(double[][] places, DrawnFigures?[] drawn)
{
    // Ranks of the inputs over all draws, which all figures have in common that every draw has.
    private readonly float[][] _inputs = [.. Enumerable.Range(0, places[0].Length).Select(i => Statistics.Ranks([.. places.Select(one => one[i])]))];
    private readonly ConcurrentDictionary<ResultId, double[]> _known = new();

    /// <summary>One correlation an input; 0 where the figure does not vary.</summary>
    public double[] Of(ResultId id) => _known.GetOrAdd(id, Work);

    /// <summary>The inputs with the largest of any of these figures, strongest first; those that move nothing are left out.</summary>
    public IReadOnlyList<int> Strongest(IEnumerable<ResultId> ids, int most)
    {
        var largest = new double[places[0].Length];
        foreach (double[] one in ids.Select(Of))
        {
            for (int i = 0; i < largest.Length; i++)
            {
                largest[i] = Math.Max(largest[i], Math.Abs(one[i]));
            }
        }

        return [.. Enumerable.Range(0, largest.Length).Where(i => 0 < largest[i]).OrderByDescending(i => largest[i]).Take(most)];
    }

    private double[] Work(ResultId id)
    {
        int[] with = [.. Enumerable.Range(0, drawn.Length).Where(draw => drawn[draw]?.Of(id) is { Value: not double.NaN })];
        var correlations = new double[places[0].Length];
        if (with.Length < 2)
        {
            return correlations;
        }

        float[] figure = Statistics.Ranks([.. with.Select(draw => drawn[draw]!.Of(id)!.Value.Value)]);
        for (int i = 0; i < correlations.Length; i++)
        {
            correlations[i] = Statistics.Correlation(
                with.Length == places.Length ? _inputs[i] : Statistics.Ranks([.. with.Select(draw => places[draw][i])]), figure);
        }

        return correlations;
    }
}
