namespace FrontEnd.Documents.Reading;

/// <summary>Where a field's value comes from.</summary>
public enum OriginKind
{
    /// <summary>Stands in the design file.</summary>
    Given,

    /// <summary>Stands in a part card that the design file names.</summary>
    Card,

    /// <summary>The catalogue's default.</summary>
    Default,
}

/// <summary>A field's value in words and where it comes from; the sheet lists them.</summary>
/// <param name="Key">Concrete key: <c>stages[1].r1</c>.</param>
/// <param name="Text">The value as text; for a default that depends on other fields, the rule in words.</param>
/// <param name="Source">The source of a card's figure or of a default.</param>
public sealed record FieldOrigin(string Key, OriginKind Kind, string Text, string Source);
