using System.Numerics;
using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Interference;
using FrontEnd.Textbook;

namespace FrontEnd.Reporting;

/// <summary>The mains at the input and its harmonics through the chain.</summary>
internal static class MainsReport
{
    public static void AddTo(ResultList list, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        MainsBudget mains = evaluation.Mains;
        MainsPartsAtInput at = mains.AtInput;
        list.Number(
            ResultIds.Mains.BodyCommonMode, "common-mode voltage, body to the amplifier's common, rms", "V_cm", VoltageRms.FromVolts(at.BodyCommonMode),
            Equations.BodyCommonMode,
            hand: BodyHand(evaluation), assumption: design.GroundDrive.Kind == Amplifier.GroundKind.Driven
                ? "the formula divides the ground electrode's impedance by 1 + f_u/(jf); the input's load and everything else that shifts the loop's phase are left out"
                : "the formula leaves out the leads' capacitance to common and the input's load");
        list.Number(
            ResultIds.Mains.Divider, "mains from the unequal electrodes' dividers, rms", "", VoltageRms.FromVolts(at.Divider),
            Equations.Divider,
            hand: DividerHand(evaluation),
                assumption: "the formula assumes one input capacitance for both sides and leaves out tolerances and the differential capacitor");
        list.Number(ResultIds.Mains.Leads, "mains that the leads pick up, rms", "", VoltageRms.FromVolts(at.Leads), Equations.Leads,
            hand: LeadHand(evaluation), assumption: "the formula leaves out the leads' effect on the common mode");
        list.Number(ResultIds.Mains.Imbalance, "divider and leads together as phasors, rms", "", VoltageRms.FromVolts(at.Imbalance),
            Equations.Imbalance);
        list.Number(ResultIds.Mains.Amplifier, "mains through the amplifier's finite CMRR, rms", "", VoltageRms.FromVolts(at.Amplifier),
            Equations.AmplifierRejection);
        list.Number(
            ResultIds.Mains.Loop, "mains induced in the leads' loop, rms", "", VoltageRms.FromVolts(at.Loop), Equations.Loop,
            hand: MainsFormulas.LoopVoltage(design.Mains.Frequency,
                MagneticFluxDensity.FromTeslas(design.Mains.Field.Teslas * Fundamental(design)), design.Mains.LoopArea));
        AddTotal(list, mains);
        list.Number(ResultIds.Mains.Rss, "mains at the electrodes, root sum of squares, rms", "",
            VoltageRms.FromVolts(at.RootSumOfSquares), Equations.MainsRss,
            () => $"√(({QuantityText.Format(at.Imbalance, "V")})² + ({QuantityText.Format(at.Amplifier, "V")})² + ({QuantityText.Format(at.Loop, "V")})²)");
        list.Decibel(
            ResultIds.Mains.SystemCmrr, "rejection of the body's common mode by electrodes and amplifier together", "CMRR",
            at.BodyCommonMode / (at.Divider + at.Amplifier), Equations.SystemCmrr,
            at.BodyCommonMode == 0
                ? "no common mode to reject"
                : "electrodes and amplifier are perfectly balanced", DividerRejectionHand(evaluation),
                    "the formula is for the divider alone: the electrodes' difference against one input's impedance, without tolerances");
        AddNeeded(list, design, at);
        list.Word(ResultIds.Mains.Signs, "signs of electrode mismatch, resistor and capacitor tolerance in the worst case",
            $"{Sign(mains.Signs.Mismatch)}, {Sign(mains.Signs.Resistors)}, {Sign(mains.Signs.Capacitors)}", Equations.Signs);
        foreach (MainsHarmonic harmonic in mains.Harmonics)
        {
            HarmonicIds ids = ResultIds.Mains.Harmonic(harmonic.Order);
            string name = $"mains harmonic {harmonic.Order} ({QuantityText.FormatPart(Frequency.FromHertz(harmonic.Hertz))})";
            list.Number(ids.Input, name + " at the electrodes, rms", "", VoltageRms.FromVolts(harmonic.AtInput.Total),
                Equations.HarmonicInput);
            list.Number(ids.Converter, name + " as the converter sees it, at the electrodes, rms", "",
                VoltageRms.FromVolts(harmonic.Converter), Equations.HarmonicConverter);
            list.Number(ids.Recorded, name + " in the recording, at the electrodes, rms", "", VoltageRms.FromVolts(harmonic.Recorded),
                Equations.HarmonicRecorded);
            list.Number(
                ids.LandsAt, name + " lands at", "", Frequency.FromHertz(harmonic.LandsAt), Equations.LandsAt,
                hand: ConverterLanding(harmonic.Hertz, design),
                    text: $"{QuantityText.Format(harmonic.LandsLow, "Hz")} to {QuantityText.Format(harmonic.LandsHigh, "Hz")} with the mains' deviation{(harmonic.InBand ? "; in the band" : "")}");
            list.Lands(ids.LandsAt, harmonic.InBand);
        }

        AddRecorded(list, evaluation);
        list.Number(
            ResultIds.Mains.RecordedEverywhere, $"mains recorded anywhere, {design.Mains.LookedAt}, worst-case sum, rms", "",
                VoltageRms.FromVolts(mains.RecordedEverywhere), Equations.RecordedEverywhere, text: Everywhere(design, mains));
    }

    /// <summary>What is judged at the input.</summary>
    public static void AddTotal(ResultList list, MainsBudget mains)
    {
        MainsPartsAtInput at = mains.AtInput;
        list.Number(
            ResultIds.Mains.Total, "mains at the electrodes, worst case, rms", "", VoltageRms.FromVolts(at.Total), Equations.MainsTotal,
            () => $"{QuantityText.Format(at.Imbalance, "V")} + {QuantityText.Format(at.Amplifier, "V")} + {QuantityText.Format(at.Loop, "V")}");
    }

    /// <summary>What is judged in the recording.</summary>
    public static void AddRecorded(ResultList list, Evaluation evaluation) => list.Number(
        ResultIds.Mains.Recorded, $"mains recorded in the band, {evaluation.Design.Mains.LookedAt}, worst-case sum, rms", "",
        VoltageRms.FromVolts(evaluation.Mains.Recorded), Equations.Recorded);

    /// <summary>What to say where the recording holds more mains than the smallest signal, in the band or out of it.</summary>
    public static string? Everywhere(Design design, MainsBudget mains)
    {
        if (mains.Harmonics.Count == 0 || mains.RecordedEverywhere <= design.SmallestSignal.Volts)
        {
            return null;
        }

        MainsHarmonic worst = mains.Harmonics.MaxBy(harmonic => harmonic.Recorded)!;
        return $"above the smallest signal {QuantityText.Format(design.SmallestSignal)}: harmonic {worst.Order} leaves {QuantityText.Format(worst.Recorded, "V")} at {QuantityText.Format(worst.LandsAt, "Hz")}; "
            + $"a notch there, or a low-pass below it, removes it";
    }

    private static string Sign(int sign) => sign < 0 ? "-1" : "+1";

    private static double Fundamental(Design design)
    {
        IReadOnlyList<double> shares = design.Mains.FieldHarmonics ?? design.Mains.Harmonics;
        return shares.Count == 0 ? 0 : shares[0];
    }

    private static TextbookFigure ConverterLanding(double hertz, Design design) =>
        FilterFormulas.LandsAt(Frequency.FromHertz(hertz), design.Converter.Rate);

    private static void AddNeeded(ResultList list, Design design, MainsPartsAtInput at)
    {
        VoltageRms residue = design.Requirements.MainsResidue ?? design.SmallestSignal;
        if (residue.Volts <= at.Leads + at.Loop)
        {
            list.Unbounded(
                ResultIds.Mains.CmrrNeeded, "rejection needed for the required residue", "", "dB", Equations.CmrrNeeded,
                $"no CMRR is enough: leads and loop alone leave {QuantityText.Format(at.Leads + at.Loop, "V")}, above {QuantityText.Format(residue)}");
        }
        else
        {
            list.Decibel(
                ResultIds.Mains.CmrrNeeded, "rejection needed for the required residue", "", at.BodyCommonMode / residue.Volts,
                Equations.CmrrNeeded, "no common mode to reject",
                0 < at.BodyCommonMode ? MainsFormulas.RejectionNeeded(VoltageRms.FromVolts(at.BodyCommonMode), residue) : null);
        }
    }

    private static Complex GroundImpedance(Design design) =>
        (design.Electrodes.Ground?.Impedance(design.Mains.Frequency) ?? 0) + design.GroundDrive.SeriesResistor.Ohms;

    private static TextbookFigure? BodyHand(Evaluation evaluation)
    {
        Design design = evaluation.Design;
        Mains mains = design.Mains;
        if (design.Electrodes.Ground is null || mains.Voltage.Volts == 0)
        {
            return null;
        }

        double loop = evaluation.Drive is null ? 0 : design.GroundDrive.UnityGainFrequency / mains.Frequency;
        return MainsFormulas.BodyCommonMode(
            mains.Voltage, mains.Frequency, mains.BodyToMains, mains.BodyToEarth, mains.AmplifierToMains, mains.AmplifierToEarth,
                GroundImpedance(design) / new Complex(1, -loop));
    }

    private static Complex Imbalance(Design design) =>
        NoiseReport.Built(design, 0).Impedance(design.Mains.Frequency) - NoiseReport.Built(design, 1).Impedance(design.Mains.Frequency);

    private static TextbookFigure? DividerHand(Evaluation evaluation)
    {
        double body = evaluation.Mains.AtInput.BodyCommonMode;
        return body <= 0 || IsBuffered(evaluation.Design)
            ? null
            : MainsFormulas.DividerVoltage(VoltageRms.FromVolts(body),
                InputReport.Impedance(evaluation.Design, evaluation.Design.Mains.Frequency.Hertz), Imbalance(evaluation.Design));
    }

    private static TextbookFigure? DividerRejectionHand(Evaluation evaluation)
    {
        Complex imbalance = Imbalance(evaluation.Design);
        return imbalance == Complex.Zero || IsBuffered(evaluation.Design)
            ? null
            : MainsFormulas.DividerRejection(InputReport.Impedance(evaluation.Design, evaluation.Design.Mains.Frequency.Hertz), imbalance);
    }

    /// <summary>Behind a buffer a lead's source is its output, and the formulas for two electrodes against two inputs do not fit.</summary>
    private static bool IsBuffered(Design design) =>
        design.Electrodes.ActiveBuffer is not null || design.Electrodes.ReferenceBuffer is not null;

    private static TextbookFigure? LeadHand(Evaluation evaluation)
    {
        if (IsBuffered(evaluation.Design))
        {
            return null;
        }

        Mains mains = evaluation.Design.Mains;
        double shield = 1 - evaluation.Design.Input.DrivenShield.Fraction;
        double current = 2 * Math.PI * mains.Frequency.Hertz * mains.LeadToMains.Farads * shield * mains.Voltage.Volts;
        return MainsFormulas.LeadVoltage(Current.FromAmperes(current), Imbalance(evaluation.Design));
    }
}
