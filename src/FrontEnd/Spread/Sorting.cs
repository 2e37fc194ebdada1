namespace FrontEnd.Spread;

/// <summary>Sorts many values that lie about evenly: they are put into buckets by their size, and each bucket is sorted by itself. One
/// to a thread; what it holds serves one list after another.</summary>
internal sealed class Sorting(int most)
{
    /// <summary>Up to so many values of a bucket are put in order one by one.</summary>
    private const int Few = 16;

    private readonly double[] _sorted = new double[most];
    private readonly int[] _order = new int[most];
    private readonly int[] _starts = new int[(most / 2) + 2];
    private int _count;

    /// <summary>The values last sorted, in rising order.</summary>
    public ReadOnlySpan<double> Sorted => _sorted.AsSpan(0, _count);

    /// <summary>Sorts; there is no NaN among the values.</summary>
    public void Sort(ReadOnlySpan<double> values)
    {
        _count = values.Length;
        double low = double.PositiveInfinity, high = double.NegativeInfinity;
        foreach (double value in values)
        {
            (low, high) = (Math.Min(low, value), Math.Max(high, value));
        }

        int last = _starts.Length - 2;
        double scale = last / (high - low);
        if (double.IsFinite(scale) && 0 < scale)
        {
            Distribute(values, low, scale, last);
            return;
        }

        // All values alike, or one without a bound.
        values.CopyTo(_sorted);
        for (int i = 0; i < _count; i++)
        {
            _order[i] = i;
        }

        if (low != high)
        {
            _sorted.AsSpan(0, _count).Sort(_order.AsSpan(0, _count));
        }
    }

    /// <summary>The ranks of the values last sorted, in the values' order: about their mean and doubled, so that they are whole numbers;
    /// equal values share the mean of their ranks.</summary>
    public void Rank(Span<float> ranks)
    {
        for (int first = 0; first < _count;)
        {
            int end = first + 1;
            while (end < _count && _sorted[end] == _sorted[first])
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

    private void Distribute(ReadOnlySpan<double> values, double low, double scale, int last)
    {
        Span<int> starts = _starts;
        starts.Clear();
        foreach (double value in values)
        {
            starts[Math.Min(last, (int)((value - low) * scale)) + 1]++;
        }

        for (int bucket = 1; bucket < starts.Length; bucket++)
        {
            starts[bucket] += starts[bucket - 1];
        }

        // Each bucket's start moves up to its end as it fills.
        for (int i = 0; i < values.Length; i++)
        {
            int at = starts[Math.Min(last, (int)((values[i] - low) * scale))]++;
            (_sorted[at], _order[at]) = (values[i], i);
        }

        for (int bucket = 0, first = 0; bucket <= last; first = starts[bucket], bucket++)
        {
            SortBucket(first, starts[bucket]);
        }
    }

    private void SortBucket(int first, int end)
    {
        if (Few < end - first)
        {
            _sorted.AsSpan(first, end - first).Sort(_order.AsSpan(first, end - first));
            return;
        }

        for (int i = first + 1; i < end; i++)
        {
            (double value, int order) = (_sorted[i], _order[i]);
            int at = i;
            for (; first < at && value < _sorted[at - 1]; at--)
            {
                (_sorted[at], _order[at]) = (_sorted[at - 1], _order[at - 1]);
            }

            (_sorted[at], _order[at]) = (value, order);
        }
    }
}
