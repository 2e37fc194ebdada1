using System.Numerics;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Identity;
using FrontEnd.Textbook;

namespace FrontEnd.Reporting;

/// <summary>What the amplifier's inputs draw and load.</summary>
internal static class InputReport
{
    public static void AddTo(ResultList list, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        list.Number(
            ResultIds.Input.BiasOffset, "dc at the input from bias currents", "", Voltage.FromVolts(evaluation.Levels.Direct.Difference.Bias[0]),
            Equations.BiasOffset, hand: BiasHand(design),
            assumption: design.Input.BiasResistor is null ? "the formula leaves out the inputs' own resistances" : "the formula leaves out the bias resistors");
        bool isBuffered = design.Electrodes.ActiveBuffer is not null;
        double impedance = Impedance(design, design.Mains.Frequency.Hertz).Magnitude;
        list.Number(
            ResultIds.Input.ImpedanceAtMains,
            isBuffered
                ? "input impedance of the active electrode's buffer at the mains frequency"
                : "impedance of one input to common at the mains frequency", isBuffered ? "|Z_buffer|" : "|Z_c|",
            Resistance.FromOhms(impedance), isBuffered ? Equations.BufferImpedance : Equations.InputImpedance);
    }

    /// <summary>Each bias current times what it flows through: the amplifier's two inputs through what stands in front of them, a buffer's
    /// through its electrode and skin resistor.</summary>
    private static TextbookFigure BiasHand(Design design)
    {
        ElectrodeSet set = design.Electrodes;
        double active = NoiseReport.Built(design, 0).DcResistance.Ohms, reference = NoiseReport.Built(design, 1).DcResistance.Ohms;
        double ahead = (set.ActiveBuffer?.OutputResistance.Ohms ?? active) + design.Input.SeriesResistor.Ohms,
            behind = (set.ReferenceBuffer?.OutputResistance.Ohms ?? reference) + design.Input.SeriesResistor.Ohms;
        return AmplifierFormulas.BiasOffset(
            Size(design.Amplifier.BiasCurrent), Resistance.FromOhms(Math.Abs(ahead - (design.EffectiveReferenceInputs * behind))),
            Size(set.ActiveBuffer?.OpAmp.BiasCurrent ?? default), Source(set.ActiveBuffer, active),
            Size(set.ReferenceBuffer?.OpAmp.BiasCurrent ?? default), Source(set.ReferenceBuffer, reference));

        static Current Size(Current current) => Current.FromAmperes(Math.Abs(current.Amperes));

        static Resistance Source(ElectrodeBuffer? buffer, double electrode) =>
            buffer is null ? default : Resistance.FromOhms(electrode + buffer.SkinResistor.Ohms);
    }

    /// <summary>What one measuring electrode is loaded with: its input's bias, shunt, lead and amplifier to common, or the input of the
    /// active electrode's buffer.</summary>
    public static Complex Impedance(Design design, double hertz)
    {
        if (design.Electrodes.ActiveBuffer is { } buffer)
        {
            return 1 / new Complex(1 / buffer.InputResistance.Ohms, 2 * Math.PI * hertz * buffer.InputCapacitance.Farads);
        }

        double shield = 1 - design.Input.DrivenShield.Fraction;
        double farads = (design.Input.LeadToCommon.Farads * shield) + design.Input.ShuntCapacitor.Farads
            + design.Amplifier.CommonModeCapacitance.Farads;
        double siemens = (1 / design.Amplifier.CommonModeResistance.Ohms) + (design.Input.BiasResistor is { } bias ? 1 / bias.Ohms : 0);
        return 1 / new Complex(siemens, 2 * Math.PI * hertz * farads);
    }
}
