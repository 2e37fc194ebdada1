namespace FrontEnd.Teaching;

/// <summary>All combinations of the values that a template may draw, one after the other, like the wheels of a counter.</summary>
internal sealed class Walk
{
    private readonly List<int> _chosen = [];
    private readonly List<int> _counts = [];
    private int _at;

    public Walk()
    {
    }

    /// <summary>A walk that stands at one combination, to draw it again.</summary>
    public Walk(IReadOnlyList<int> chosen)
    {
        _chosen.AddRange(chosen);
        _counts.AddRange(chosen.Select(one => one + 1));
    }

    /// <summary>True once every combination has been had.</summary>
    public bool IsOver { get; private set; }

    /// <summary>The combination that it stands at: for each value its place among those it is chosen from.</summary>
    public int[] Chosen => [.. _chosen[.._at]];

    /// <summary>The place of the next value among <paramref name="count"/>.</summary>
    public int Next(int count)
    {
        if (_at == _chosen.Count)
        {
            _chosen.Add(0);
            _counts.Add(count);
        }

        return _chosen[_at++];
    }

    /// <summary>Goes to the next combination; false where there is none.</summary>
    public bool Advance()
    {
        int last = _at - 1;
        while (0 <= last && _chosen[last] + 1 == _counts[last])
        {
            last--;
        }

        _at = 0;
        IsOver = last < 0;
        if (!IsOver)
        {
            _chosen[last]++;
            _chosen.RemoveRange(last + 1, _chosen.Count - last - 1);
            _counts.RemoveRange(last + 1, _counts.Count - last - 1);
        }

        return !IsOver;
    }
}
