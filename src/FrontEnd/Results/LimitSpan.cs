namespace FrontEnd.Results;

/// <summary>Where a limit lies that rests on values nobody knows.</summary>
/// <param name="Least">Least of all that was tried.</param>
/// <param name="Greatest">Greatest of all.</param>
/// <param name="OrNone">True where some of the designs that the unknown values allow have no such limit.</param>
public sealed record LimitSpan(IQuantity Least, IQuantity Greatest, bool OrNone);
