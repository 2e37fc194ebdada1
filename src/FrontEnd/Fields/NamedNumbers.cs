namespace FrontEnd.Fields;

/// <summary>Numbers by names that the user chose, in the order given.</summary>
/// <remarks>Equal where all names and numbers are.</remarks>
public sealed class NamedNumbers(IEnumerable<NamedNumber> all) : IEquatable<NamedNumbers>
{
    /// <summary>None.</summary>
    public static readonly NamedNumbers None = new([]);

    private readonly NamedNumber[] _all = [.. all];

    /// <summary>Every one, in the order given.</summary>
    public IReadOnlyList<NamedNumber> All => _all;

    public bool Equals(NamedNumbers? other) => other is not null && _all.SequenceEqual(other._all);

    public override bool Equals(object? obj) => Equals(obj as NamedNumbers);

    public override int GetHashCode() => _all.Aggregate(0, (hash, one) => HashCode.Combine(hash, one));
}

/// <summary>A number and its name.</summary>
public readonly record struct NamedNumber(string Name, double Value);
