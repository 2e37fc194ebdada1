using System.Runtime.InteropServices;

namespace FrontEnd.Bench;

/// <summary>What one reading of a recording leaves of its samples, in a memory that does not grow with it: mean and deviation, the extremes,
/// and how often each value occurs while there are not too many.</summary>
internal sealed class RecordingSums
{
    /// <summary>Most values that are counted one by one: four times those of a 16-bit converter.</summary>
    public const int MostValues = 1 << 18;

    private readonly Dictionary<double, long> _counts = [];
    private readonly int _mostValues;
    private KeyValuePair<double, long>[]? _sorted;
    private double _mean, _squares;
    private bool _areTooMany;

    /// <param name="mostValues">Fewer in tests.</param>
    public RecordingSums(int mostValues = MostValues) => _mostValues = mostValues;

    public long Count { get; private set; }

    /// <summary>Which sample, from 0, is the first that is no finite number; null for none. What follows it is not taken.</summary>
    public long? NotFinite { get; private set; }

    public double Mean => _mean;

    /// <summary>Mean square distance from the mean.</summary>
    public double Power => Count == 0 ? 0 : _squares / Count;

    public double Bottom { get; private set; } = double.PositiveInfinity;

    public double Top { get; private set; } = double.NegativeInfinity;

    /// <summary>How many samples have the least value.</summary>
    public long AtBottom { get; private set; }

    /// <summary>How many have the greatest.</summary>
    public long AtTop { get; private set; }

    /// <summary>Every value with how often it occurs, least first; null where there are too many. Asked for when all is taken.</summary>
    public KeyValuePair<double, long>[]? Values => _areTooMany ? null : _sorted ??= [.. _counts.OrderBy(pair => pair.Key)];

    public static RecordingSums Of(ISamples samples)
    {
        RecordingSums sums = new();
        samples.Read(sums.Take);
        return sums;
    }

    public void Take(ReadOnlySpan<double> piece)
    {
        const int Most = 4096;
        while (!piece.IsEmpty && NotFinite is null)
        {
            ReadOnlySpan<double> part = piece[..Math.Min(Most, piece.Length)];
            piece = piece[part.Length..];
            for (int i = 0; i < part.Length; i++)
            {
                if (!double.IsFinite(part[i]))
                {
                    NotFinite = Count + i;
                    return;
                }
            }

            AddPower(part);
            AddExtremes(part);
            AddValues(part);
            Count += part.Length;
        }
    }

    /// <summary>Mean and squares of a part by itself, then both together: a large offset takes no digits away (Chan, Golub and LeVeque 1979,
    /// from memory).</summary>
    private void AddPower(ReadOnlySpan<double> part)
    {
        double sum = 0, squares = 0;
        foreach (double sample in part)
        {
            sum += sample;
        }

        double mean = sum / part.Length;
        foreach (double sample in part)
        {
            squares += (sample - mean) * (sample - mean);
        }

        double whole = Count + part.Length, apart = mean - _mean;
        _squares += squares + (apart * apart * (Count * (part.Length / whole)));
        _mean += apart * (part.Length / whole);
    }

    private void AddExtremes(ReadOnlySpan<double> part)
    {
        foreach (double sample in part)
        {
            if (Top <= sample)
            {
                (Top, AtTop) = (sample, sample == Top ? AtTop + 1 : 1);
            }

            if (sample <= Bottom)
            {
                (Bottom, AtBottom) = (sample, sample == Bottom ? AtBottom + 1 : 1);
            }
        }
    }

    private void AddValues(ReadOnlySpan<double> part)
    {
        if (_areTooMany)
        {
            return;
        }

        foreach (double sample in part)
        {
            CollectionsMarshal.GetValueRefOrAddDefault(_counts, sample, out _)++;
        }

        if (_mostValues < _counts.Count)
        {
            _areTooMany = true;
            _counts.Clear();
            _counts.TrimExcess();
        }
    }
}
