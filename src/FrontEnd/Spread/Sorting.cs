using System.Buffers;

namespace FrontEnd.Spread;

/// <summary>The order of many values that lie about evenly: they are put into buckets by their size, and each bucket is put in order by
/// itself. One to a thread; its memory is rented and serves one list after another.</summary>
internal sealed class Sorting : IDisposable
{
    /// <summary>Up to so many values of a bucket are put in order one by one.</summary>
    private const int Few = 16;

    private readonly int[] _order;
    private readonly int[] _starts;
    private readonly int _buckets;
    private double[] _values = [];
    private int _count;

    /// <param name="most">The longest list.</param>
    public Sorting(int most)
    {
        _buckets = (most / 2) + 1;
        _order = ArrayPool<int>.Shared.Rent(most);
        _starts = ArrayPool<int>.Shared.Rent(_buckets + 1);
    }

    /// <summary>The value at a place in rising order.</summary>
    public double this[int place] => _values[_order[place]];

    public void Dispose()
    {
        ArrayPool<int>.Shared.Return(_order);
        ArrayPool<int>.Shared.Return(_starts);
    }

    /// <summary>Puts the first values of a list in order; there is no NaN among them, and they stay where they are.</summary>
    public void Sort(double[] values, int count)
    {
        (_values, _count) = (values, count);
        double low = double.PositiveInfinity, high = double.NegativeInfinity;
        foreach (double value in values.AsSpan(0, count))
        {
            (low, high) = (Math.Min(low, value), Math.Max(high, value));
        }

        double scale = (_buckets - 1) / (high - low);
        if (double.IsFinite(scale) && 0 < scale)
        {
            Distribute(low, scale);
            return;
        }

        // All values alike, or one without a bound.
        for (int i = 0; i < count; i++)
        {
            _order[i] = i;
        }

        if (low != high)
        {
            SortAll(0, count);
        }
    }

    /// <summary>The ranks of the values last put in order: about their mean and doubled, so that they are whole numbers; equal values share
    /// the mean of their ranks.</summary>
    public void Rank(Span<float> ranks)
    {
        for (int first = 0; first < _count;)
        {
            int end = first + 1;
            while (end < _count && this[end] == this[first])
            {
                end++;
            }

            float rank = first + end - _count;
            foreach (int at in _order.AsSpan(first, end - first))
            {
                ranks[at] = rank;
            }

            first = end;
        }
    }

    private void Distribute(double low, double scale)
    {
        ReadOnlySpan<double> values = _values.AsSpan(0, _count);
        Span<int> starts = _starts.AsSpan(0, _buckets + 1);
        starts.Clear();
        foreach (double value in values)
        {
            starts[Bucket(value) + 1]++;
        }

        for (int bucket = 1; bucket < starts.Length; bucket++)
        {
            starts[bucket] += starts[bucket - 1];
        }

        // Each bucket's start moves up to its end as it fills.
        for (int i = 0; i < values.Length; i++)
        {
            _order[starts[Bucket(values[i])]++] = i;
        }

        for (int bucket = 0, first = 0; bucket < _buckets; first = starts[bucket], bucket++)
        {
            SortBucket(first, starts[bucket]);
        }

        int Bucket(double value) => Math.Min(_buckets - 1, (int)((value - low) * scale));
    }

    private void SortBucket(int first, int end)
    {
        if (Few < end - first)
        {
            // Stepped values are many alike.
            if (!AreAlike(first, end))
            {
                SortAll(first, end);
            }

            return;
        }

        for (int i = first + 1; i < end; i++)
        {
            int order = _order[i], at = i;
            double value = _values[order];
            for (; first < at && value < _values[_order[at - 1]]; at--)
            {
                _order[at] = _order[at - 1];
            }

            _order[at] = order;
        }
    }

    private bool AreAlike(int first, int end)
    {
        int at = first + 1;
        while (at < end && this[at] == this[first])
        {
            at++;
        }

        return at == end;
    }

    private void SortAll(int first, int end)
    {
        double[] values = _values;
        _order.AsSpan(first, end - first).Sort((a, b) => values[a].CompareTo(values[b]));
    }
}
