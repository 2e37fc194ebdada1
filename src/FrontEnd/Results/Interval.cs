namespace FrontEnd.Results;

/// <summary>Where a figure lies that rests on values nobody knows, in its SI unit.</summary>
/// <param name="Least">Least of all that was tried, corners included.</param>
/// <param name="Greatest">Greatest of all; infinite where some had no bound.</param>
/// <param name="P05">Below this lie 5 % of the draws.</param>
/// <param name="P95">Above this lie 5 % of the draws.</param>
public sealed record Interval(double Least, double Greatest, double P05, double P95);
