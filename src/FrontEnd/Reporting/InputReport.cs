using System.Numerics;
using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Textbook;

namespace FrontEnd.Reporting;

/// <summary>What the amplifier's inputs draw and load.</summary>
internal static class InputReport
{
    public static void AddTo(ResultList list, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        double bias = evaluation.Levels.Direct.BiasDifference[0];
        list.Number(
            ResultIds.Input.BiasOffset, "dc at the input from bias currents", "", Voltage.FromVolts(Math.Abs(bias)), Equations.BiasOffset,
            hand: AmplifierFormulas.BiasOffset(
                Current.FromAmperes(Math.Abs(design.Amplifier.BiasCurrent.Amperes)),
                Resistance.FromOhms(Math.Abs(
                    NoiseReport.Built(design, 0).DcResistance.Ohms + design.Input.SeriesResistor.Ohms
                    - (design.EffectiveReferenceInputs * (NoiseReport.Built(design, 1).DcResistance.Ohms
                        + design.Input.SeriesResistor.Ohms))))),
            assumption: design.Input.BiasResistor is null ? null : "the formula leaves out the bias resistors");
        double impedance = Impedance(design, design.Mains.Frequency.Hertz).Magnitude;
        list.Number(ResultIds.Input.ImpedanceAtMains, "impedance of one input to common at the mains frequency", "|Z_c|",
            Resistance.FromOhms(impedance), Equations.InputImpedance);
    }

    /// <summary>One input's impedance to common: bias, shunt, lead and amplifier.</summary>
    public static Complex Impedance(Design design, double hertz)
    {
        double shield = 1 - design.Input.DrivenShield.Fraction;
        double farads = (design.Input.LeadToCommon.Farads * shield) + design.Input.ShuntCapacitor.Farads
            + design.Amplifier.CommonModeCapacitance.Farads;
        double siemens = (1 / design.Amplifier.CommonModeResistance.Ohms) + (design.Input.BiasResistor is { } bias ? 1 / bias.Ohms : 0);
        return 1 / new Complex(siemens, 2 * Math.PI * hertz * farads);
    }
}
