namespace FrontEnd.Fields;

/// <summary>One of the kinds of element that a list may hold.</summary>
public sealed class Variant
{
    private Variant(string kind, string? topology, string noun, Func<object> create, IReadOnlyList<Field<object>> fields,
        Func<object, bool> matches, bool isDefault, IReadOnlyList<ElementPart> parts) =>
        (Kind, Topology, Noun, Create, Fields, Matches, IsDefault, Parts) = (kind, topology, noun, create, fields, matches, isDefault, parts);

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

    /// <summary>Parts that an element may be without.</summary>
    public IReadOnlyList<ElementPart> Parts { get; }

    /// <summary>False for a field of a part that an element does not have.</summary>
    public bool IsPresent(object element, Field<object> field)
    {
        if (Parts.Count == 0)
        {
            return true;
        }

        foreach (ElementPart part in PartsOf[field.Key])
        {
            if (!part.IsThere(element))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The parts that each field belongs to, by its key.</summary>
    private Dictionary<string, ElementPart[]> PartsOf =>
        field ??= Fields.ToDictionary(one => one.Key, one => Parts.Where(part => part.Has(one.Key)).ToArray(), StringComparer.Ordinal);

    internal static Variant Make<TElement>(string kind, string? topology, string noun, Func<TElement> create,
        IReadOnlyList<Field<TElement>> fields, Func<object, bool> matches, bool isDefault = false,
        IReadOnlyList<ElementPart>? parts = null)
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
            isDefault,
            parts ?? []);
}
