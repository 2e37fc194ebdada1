namespace FrontEnd.Fields;

/// <summary>A part of a list's element that may be absent, such as a channel's own electrode.</summary>
public sealed class ElementPart
{
    private ElementPart(string key, Func<object, bool> isThere, Func<object, bool, object> with, Func<object, bool> isRefused, bool isWhole) =>
        (Key, IsThere, With, IsRefused, IsWhole) = (key, isThere, with, isRefused, isWhole);

    /// <summary>The prefix of its fields' keys, without the last dot.</summary>
    public string Key { get; }

    public Func<object, bool> IsThere { get; }

    /// <summary>The element with the part, or said to have none.</summary>
    public Func<object, bool, object> With { get; }

    /// <summary>True where the element says that it has none, which is more than saying nothing.</summary>
    public Func<object, bool> IsRefused { get; }

    /// <summary>True for a part whose values are all written, as one left out is taken from elsewhere and not the field's own default.</summary>
    public bool IsWhole { get; }

    /// <summary>True for a key of one of its fields.</summary>
    public bool Has(string key) => key.Length > Key.Length && key[Key.Length] == '.' && key.StartsWith(Key, StringComparison.Ordinal);

    internal static ElementPart Of<TElement>(string key, Func<TElement, bool> isThere, Func<TElement, bool, TElement> with,
        Func<TElement, bool>? isRefused = null, bool isWhole = false)
        where TElement : class =>
        new(key, element => isThere((TElement)element), (element, there) => with((TElement)element, there),
            element => isRefused?.Invoke((TElement)element) == true, isWhole);
}
