namespace FrontEnd.Textbook;

/// <summary>Direct current through an electrode by Ohm's law. A design aid and no safety assessment; the limits it is held against are
/// quoted and not read in the standard.</summary>
internal static class SafetyFormulas
{
    /// <summary>Dc through one electrode with the highest voltage of the box at its lead, V/R [A]; infinite where no resistor is
    /// fitted.</summary>
    /// <param name="highest">V: highest voltage anywhere in the box.</param>
    /// <param name="series">R: resistors fitted in that one lead, at their lower tolerance; electrode, skin and body count as 0 Ω.</param>
    /// <remarks>Source: Ohm's law; the limits from IEC 60601-1 as reprinted in service manuals, the dc row from memory.</remarks>
    public static TextbookFigure FaultCurrent(Voltage highest, Resistance series) =>
        TextbookFigure.Of(series.Ohms == 0 ? double.PositiveInfinity : highest.Volts / series.Ohms, "A", "V/R",
            () => $"{Put.In(highest)}/{Put.In(series)}", Sources.FaultLimit);

    /// <summary>Dc through the wearer with all measuring leads at the highest voltage: in a box that floats it returns through the ground
    /// lead, V/(R_leads in parallel + R_ground); where the common is earthed it returns through the earth, V·Σ 1/R_lead [A]. Infinite where
    /// nothing limits it.</summary>
    /// <param name="highest">V: highest voltage anywhere in the box.</param>
    /// <param name="channels">n: active leads.</param>
    /// <param name="active">R_active: resistors fitted in one active lead, at their lower tolerance.</param>
    /// <param name="reference">R_reference: the same in the reference lead.</param>
    /// <param name="ground">R_ground: the same in the ground lead; null for the way through the earth.</param>
    /// <remarks>Source: Ohm's law; the limits as in <see cref="FaultCurrent"/>.</remarks>
    public static TextbookFigure SharedFault(Voltage highest, int channels, Resistance active, Resistance reference, Resistance? ground)
    {
        string v = Put.In(highest), n = Put.In(channels), a = Put.In(active), r = Put.In(reference);
        double siemens = (channels / active.Ohms) + (1 / reference.Ohms);
        if (ground is not { } back)
        {
            return TextbookFigure.Of(highest.Volts * siemens, "A", "V·(n/R_active + 1/R_reference)", () => $"{v} · ({n}/{a} + 1/{r})",
                Sources.FaultLimit);
        }

        // A lead without a resistor shorts the others.
        string leads = double.IsFinite(siemens) ? $"1/({n}/{a} + 1/{r})" : "0 Ω";
        return TextbookFigure.Of(highest.Volts / ((1 / siemens) + back.Ohms), "A", "V/(1/(n/R_active + 1/R_reference) + R_ground)",
            () => $"{v}/({leads} + {Put.In(back)})", Sources.FaultLimit);
    }

    /// <summary>Series resistance that keeps the dc below a limit, V/I [Ω].</summary>
    /// <remarks>Source: Ohm's law; the limits as in <see cref="FaultCurrent"/>.</remarks>
    public static TextbookFigure SeriesResistanceNeeded(Voltage highest, Current limit) =>
        TextbookFigure.Of(limit.Amperes == 0 ? double.PositiveInfinity : highest.Volts / limit.Amperes, "Ω", "V/I_limit",
            () => $"{Put.In(highest)}/{Put.In(limit)}", Sources.FaultLimit);
}
