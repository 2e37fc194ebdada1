namespace FrontEnd.Textbook;

/// <summary>Direct current through an electrode by Ohm's law. A design aid and no safety assessment; the limits it is held against are
/// quoted and not read in the standard.</summary>
public static class SafetyFormulas
{
    /// <summary>Dc through one electrode with the highest voltage of the box at its lead, V/R [A]; infinite where no resistor is
    /// fitted.</summary>
    /// <param name="highest">V: highest voltage anywhere in the box.</param>
    /// <param name="series">R: resistors fitted in that one lead, at their lower tolerance; electrode, skin and body count as 0 Ω.</param>
    /// <remarks>Source: Ohm's law; the limits from IEC 60601-1 as reprinted in service manuals, the dc row from memory.</remarks>
    public static TextbookFigure FaultCurrent(Voltage highest, Resistance series) =>
        TextbookFigure.Of(series.Ohms == 0 ? double.PositiveInfinity : highest.Volts / series.Ohms, "A", "V/R",
            $"{Put.In(highest)}/{Put.In(series)}", Sources.FaultLimit);

    /// <summary>Series resistance that keeps the dc below a limit, V/I [Ω].</summary>
    /// <remarks>Source: Ohm's law; the limits as in <see cref="FaultCurrent"/>.</remarks>
    public static TextbookFigure SeriesResistanceNeeded(Voltage highest, Current limit) =>
        TextbookFigure.Of(limit.Amperes == 0 ? double.PositiveInfinity : highest.Volts / limit.Amperes, "Ω", "V/I_limit",
            $"{Put.In(highest)}/{Put.In(limit)}", Sources.FaultLimit);
}
