namespace FrontEnd.Fields;

/// <summary>How far some values of one part go from piece to piece, by the keys of the part's own fields. A spread run draws between the
/// ends; nothing else reads them.</summary>
/// <remarks>Equal where all ranges are.</remarks>
public sealed class PartRanges : IEquatable<PartRanges>
{
    /// <summary>No range is known.</summary>
    public static readonly PartRanges None = new([]);

    private readonly PartRange[] _all;

    public PartRanges(IEnumerable<PartRange> all) => _all = [.. all];

    /// <summary>Every range, in the order given.</summary>
    public IReadOnlyList<PartRange> All => _all;

    /// <summary>The range of a field; null where none is known.</summary>
    public PartRange? Of(string key) => Array.Find(_all, range => string.Equals(range.Key, key, StringComparison.Ordinal));

    /// <summary>These ranges, with others in the place of those of the same fields.</summary>
    public PartRanges With(PartRanges others) => new([.. _all.Where(range => others.Of(range.Key) is null), .. others._all]);

    /// <summary>These ranges without the one of a field.</summary>
    public PartRanges Without(string key) =>
        Of(key) is null ? this : new(_all.Where(range => !string.Equals(range.Key, key, StringComparison.Ordinal)));

    /// <summary>These ranges, both ends of the one of a field multiplied by what its value is multiplied by.</summary>
    /// <param name="key">The field.</param>
    /// <param name="factor">Above 0.</param>
    public PartRanges Scaled(string key, double factor) => Of(key) is null || factor == 1 ? this
        : new(_all.Select(range => string.Equals(range.Key, key, StringComparison.Ordinal)
            ? range with { Low = range.Low * factor, High = range.High * factor }
            : range));

    public bool Equals(PartRanges? other) => other is not null && _all.SequenceEqual(other._all);

    public override bool Equals(object? obj) => Equals(obj as PartRanges);

    public override int GetHashCode() => _all.Aggregate(0, (hash, range) => HashCode.Combine(hash, range));
}

/// <summary>The least and the greatest value of one field, in the field's SI unit.</summary>
public sealed record PartRange(string Key, double Low, double High);
