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
    public double[] Of(ResultId id) => _known.GetOrAdd(id, one => Work(draw => draw.Number(one)));

    /// <summary>The same of the limit that the figure is held against: what moves the limit decides as what moves the figure.</summary>
    private double[] OfLimit(ResultId id) => Work(draw => draw.Of(id)?.Limit?.SiValue ?? double.NaN);

    /// <summary>The inputs with the largest of any of these figures and their limits, strongest first; those that move nothing are left out.</summary>
    public IReadOnlyList<int> Strongest(IEnumerable<ResultId> ids, int most)
    {
        var largest = new double[places[0].Length];
        foreach (double[] one in ids.SelectMany(id => new[] { Of(id), OfLimit(id) }))
        {
            for (int i = 0; i < largest.Length; i++)
            {
                largest[i] = Math.Max(largest[i], Math.Abs(one[i]));
            }
        }

        return [.. Enumerable.Range(0, largest.Length).Where(i => 0 < largest[i]).OrderByDescending(i => largest[i]).Take(most)];
    }

    private double[] Work(Func<DrawnFigures, double> of)
    {
        double[] values = Array.ConvertAll(drawn, one => one is null ? double.NaN : of(one));
        int[] with = [.. Enumerable.Range(0, drawn.Length).Where(draw => !double.IsNaN(values[draw]))];
        var correlations = new double[places[0].Length];
        if (with.Length < 2)
        {
            return correlations;
        }

        float[] figure = Statistics.Ranks([.. with.Select(draw => values[draw])]);
        for (int i = 0; i < correlations.Length; i++)
        {
            correlations[i] = Statistics.Correlation(
                with.Length == places.Length ? _inputs[i] : Statistics.Ranks([.. with.Select(draw => places[draw][i])]), figure);
        }

        return correlations;
    }
}
