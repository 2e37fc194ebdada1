namespace FrontEnd.Boards;

/// <summary>Value of a resistor or a capacitor, and the preferred value that can be bought.</summary>
/// <param name="Nominal">As the design has it, above zero [Ω or F].</param>
/// <param name="Tolerance">±.</param>
/// <param name="Series">The coarsest series that has the value; where none has, the finest that fits the tolerance.</param>
/// <param name="Nearest">The nearest member of that series, in the nominal value's unit; null where the value is a member itself.</param>
internal sealed record PartValue(IQuantity Nominal, Ratio Tolerance, PreferredSeries Series, IQuantity? Nearest)
{
    /// <summary>Resistors of 1 % and better come in E96, of 5 % in E24; capacitors in E24 at best (common practice, no source).</summary>
    public static PartValue Of(IQuantity nominal, Ratio tolerance)
    {
        PreferredSeries[] offered = nominal is Resistance && tolerance.Fraction <= 0.02
            ? [PreferredSeries.E24, PreferredSeries.E96]
            : [PreferredSeries.E12, PreferredSeries.E24];
        foreach (PreferredSeries series in offered)
        {
            if (PreferredValues.IsMember(nominal.SiValue, series))
            {
                return new PartValue(nominal, tolerance, series, null);
            }
        }

        double nearest = PreferredValues.Nearest(nominal.SiValue, offered[^1]);
        return new PartValue(
            nominal, tolerance, offered[^1], nominal is Resistance ? Resistance.FromOhms(nearest) : Capacitance.FromFarads(nearest));
    }
}
