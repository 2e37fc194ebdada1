namespace FrontEnd.Citations;

/// <summary>The equation behind a result and where it comes from.</summary>
/// <param name="Text">The equation as it is printed, in the symbols of the trade.</param>
/// <param name="Source">Where the equation or the fact is written down.</param>
public sealed record Equation(string Text, SourceRef Source);

/// <summary>A place in a source.</summary>
/// <param name="Key">A key of reference/sources.json, such as <c>metting-van-rijn-1990</c>, <c>common-practice</c>, <c>from-memory</c> or
/// <c>derived</c>.</param>
/// <param name="Place">Page, section or equation number in it; "" for the whole.</param>
public sealed record SourceRef(string Key, string Place = "");
