using System.Numerics;
using FrontEnd.Citations;
using FrontEnd.Electrodes;

namespace FrontEnd.Textbook;

/// <summary>Electrodes by the formulas of the textbooks.</summary>
internal static class ElectrodeFormulas
{
    /// <summary>Size of an electrode's impedance, |Rs + Rd/(1 + jωRdCd)| [Ω].</summary>
    /// <remarks>Source: skin-electrode circuit of the open article of 2018, Fig. 9.</remarks>
    public static TextbookFigure Impedance(Electrode electrode, Frequency frequency)
    {
        Complex z = electrode.Impedance(frequency);
        string second = electrode.SecondResistance is { } r && electrode.SecondCapacitance is { } c
            ? $" + {Put.In(r)}/(1 + j2π · {Put.In(frequency)} · {Put.In(r)} · {Put.In(c)})"
            : "";
        return TextbookFigure.Of(
            z.Magnitude,
            "Ω",
            "|Rs + Rd/(1 + jωRdCd)|",
            () => $"|{Put.In(electrode.SeriesResistance)} + {Put.In(electrode.ContactResistance)}/(1 + j2π · {Put.In(frequency)} · {Put.In(electrode.ContactResistance)} · {Put.In(electrode.ContactCapacitance)}){second}|",
            new SourceRef("skin-electrode-2018", "Fig. 9"));
    }

    /// <summary>Capacitance of an electrode that does not touch, ε0·εr·A/d [F].</summary>
    /// <remarks>ε0 = 8.8541878128e-12 F/m, CODATA 2018; plate capacitor, edges left out.</remarks>
    public static TextbookFigure PlateCapacitance(Area area, Length distance, double relativePermittivity) =>
        TextbookFigure.Of(
            8.8541878128e-12 * relativePermittivity * area.SquareMetres / distance.Metres,
            "F",
            "ε0·εr·A/d",
            () => $"ε0 · {Put.In(relativePermittivity)} · {Put.In(area)}/{Put.In(distance)}",
            new SourceRef("codata-2018", "vacuum electric permittivity"));

    /// <summary>Reading of a contact check, I·|Z1 + Z2| [V]: a path is always two electrodes.</summary>
    /// <remarks>Source: Ohm's law.</remarks>
    public static TextbookFigure ContactReading(Current test, Complex first, Complex second) =>
        TextbookFigure.Of(
            test.Amperes * (first + second).Magnitude,
            "V",
            "I·|Z1 + Z2|",
            () => $"{Put.In(test)} · |{Put.In(first)} + {Put.In(second)}|",
            Sources.Derived);
}
