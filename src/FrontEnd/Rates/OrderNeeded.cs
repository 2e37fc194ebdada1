namespace FrontEnd.Rates;

/// <summary>The order that a family of low-passes needs.</summary>
/// <param name="Order">0 where the converter alone does it; null where no order up to <see cref="AntiAliasOrder.Most"/> does.</param>
internal sealed record OrderNeeded(string Family, int? Order);
