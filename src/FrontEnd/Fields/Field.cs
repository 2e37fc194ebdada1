using System.Diagnostics.CodeAnalysis;

namespace FrontEnd.Fields;

/// <summary>One field of a <typeparamref name="TOwner"/>: its description, and how to read and replace its value without changing the
/// owner.</summary>
/// <remarks>Values travel boxed: a quantity struct, <c>double</c> (number), <c>int</c> (count), <c>bool</c>, <c>string</c>, the enum value
/// of a choice, <see cref="FrequencyRange"/>
/// or a list; null where the field is optional and not set; the special word as a <c>string</c>.</remarks>
public sealed record Field<TOwner> : FieldDescription
{
    public Field()
    {
    }

    /// <summary>A field described as another one is, whatever that one's owner.</summary>
    [SetsRequiredMembers]
    internal Field(FieldDescription like)
        : base(like) => (Get, Set) = (null!, null!);

    /// <summary>Reads the value, boxed as the remarks say.</summary>
    public required Func<TOwner, object?> Get { get; init; }

    /// <summary>Returns the owner with the value replaced. Null is allowed where <see cref="FieldDescription.NullWord"/> is.</summary>
    public required Func<TOwner, object?, TOwner> Set { get; init; }

    /// <summary>The value in SI units; null where the field is not numeric, not set or holds its special word.</summary>
    public double? SiValue(TOwner owner) => FieldKinds.SiValue(Get(owner));

    /// <summary>The owner with the field set to a number in SI units. Only for numeric fields; counts are rounded.</summary>
    public TOwner WithSiValue(TOwner owner, double si) => Set(owner, FromSi(si));

    /// <summary>The same field seen from an outer record that holds this one's owner.</summary>
    /// <param name="get">The inner record; null where it is absent (no ground electrode): the field then reads as null.</param>
    /// <param name="set">The outer record with the inner one replaced.</param>
    /// <param name="create">Makes the inner record where it is absent and a field of it is set.</param>
    public Field<TOuter> Within<TOuter>(string prefix, string jsonPrefix, Func<TOuter, TOwner?> get, Func<TOuter, TOwner, TOuter> set,
        Func<TOwner> create)
    {
        Func<TOwner, object?> innerGet = Get;
        Func<TOwner, object?, TOwner> innerSet = Set;
        return Redirected<TOuter>(
            prefix + Key,
            jsonPrefix + JsonKey,
            outer => get(outer) is { } inner ? innerGet(inner) : null,
            (outer, value) => set(outer, innerSet(get(outer) ?? create(), value)));
    }

    /// <summary>The same description with other keys and another owner.</summary>
    internal Field<TOuter> Redirected<TOuter>(string key, string jsonKey, Func<TOuter, object?> get, Func<TOuter, object?, TOuter> set) =>
        new(this) { Key = key, JsonKey = jsonKey, Get = get, Set = set };
}
