namespace FrontEnd.Fields;

/// <summary>One of the kinds of element that a list may hold.</summary>
public sealed class Variant
{
    private Variant(string kind, string? topology, string noun, Func<object> create, IReadOnlyList<Field<object>> fields,
        Func<object, bool> matches, bool isDefault) =>
        (Kind, Topology, Noun, Create, Fields, Matches, IsDefault) = (kind, topology, noun, create, fields, matches, isDefault);

    /// <summary>The word of <c>kind</c>; "" where the list has one kind only.</summary>
    public string Kind { get; }

    /// <summary>The word of <c>topology</c>; null where the kind says all.</summary>
    public string? Topology { get; }

    /// <summary>True for the topology that is meant where a design names none; it is not written either.</summary>
    public bool IsDefault { get; }

    /// <summary>"a gain stage".</summary>
    public string Noun { get; }

    /// <summary>A new element with every field at its default and no name.</summary>
    public Func<object> Create { get; }

    public IReadOnlyList<Field<object>> Fields { get; }

    public Func<object, bool> Matches { get; }

    internal static Variant Make<TElement>(string kind, string? topology, string noun, Func<TElement> create,
        IReadOnlyList<Field<TElement>> fields, Func<object, bool> matches, bool isDefault = false)
        where TElement : class =>
        new(
            kind,
            topology,
            noun,
            create,
            [.. fields.Select(field =>
                field.Redirected<object>(field.Key, field.JsonKey, owner => field.Get((TElement)owner),
                (owner, value) => field.Set((TElement)owner, value)))],
            matches,
            isDefault);
}
