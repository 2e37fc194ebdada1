using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Identity;
using FrontEnd.Textbook;

namespace FrontEnd.Reporting;

/// <summary>The driven ground: its loop, and the swing that it needs.</summary>
internal static class DriveReport
{
    private const string Never = "the loop gain stays below 1: it cannot oscillate";

    /// <summary>Nothing where no ground electrode is driven.</summary>
    public static void AddTo(ResultList list, Evaluation evaluation)
    {
        if (evaluation.Drive is not { } drive)
        {
            return;
        }

        Design design = evaluation.Design;
        Frequency unity = design.GroundDrive.UnityGainFrequency;
        ElectrodeSet set = design.Electrodes;
        if (drive.UnityGainHertz is { } crossing && drive.PhaseMarginDegrees is { } margin)
        {
            Frequency[] poles = HandPoles(design, set);
            list.Number(
                ResultIds.Drive.UnityGainFrequency, "driven ground: where the loop gain falls to 1", "f_c", Frequency.FromHertz(crossing),
                Equations.UnityGain,
                hand: MainsFormulas.DrivenGroundCrossing(unity, poles),
                    assumption: "the formula has a single pole, of the ground electrode's resistance and the body's capacitance");
            list.Number(
                ResultIds.Drive.PhaseMargin, "driven ground: phase margin", "PM", Angle.FromDegrees(margin), Equations.PhaseMargin,
                hand: MainsFormulas.DrivenGroundPhaseMargin(unity, poles),
                    assumption: "the formula has a single pole, of the ground electrode's resistance and the body's capacitance");
        }
        else
        {
            list.Unbounded(ResultIds.Drive.UnityGainFrequency, "driven ground: where the loop gain falls to 1", "f_c", "Hz",
                Equations.UnityGain, Never);
            list.Unbounded(ResultIds.Drive.PhaseMargin, "driven ground: phase margin", "PM", "°", Equations.PhaseMargin, Never);
        }

        list.Number(
            ResultIds.Drive.GainAtMains, "driven ground: loop gain at the mains frequency", "|T|",
            Decibels.FromVoltageRatio(Math.Max(1e-15, drive.GainAtMains)), Equations.DriveGain,
            hand: MainsFormulas.DrivenGroundLoopGain(unity, design.Mains.Frequency),
                assumption: "the formula is for the amplifier alone; the body's load takes the rest");
        double dc = Math.Abs(evaluation.Levels.Direct.Drive.Offset[0] * design.Electrodes.Offset.Volts);
        double ac = evaluation.Mains.DriveSwing;
        list.Number(
            ResultIds.Drive.SwingNeeded, "driven ground: swing needed, peak", "", Voltage.FromVolts(ac + dc), Equations.DriveSwing,
            () => $"{QuantityText.Format(ac, "V")} + {QuantityText.Format(dc, "V")}",
            text: $"{QuantityText.Format(ac, "V")} of it mains, {QuantityText.Format(dc, "V")} electrode offset");
        AddWorst(list, design, drive);
    }

    /// <summary>The margin that is judged.</summary>
    public static void AddWorst(ResultList list, Design design, DriveBudget drive)
    {
        if (drive.WorstPhaseMargin is { } worst)
        {
            LoopSurroundings at = drive.WorstCase;
            list.Number(
                ResultIds.Drive.WorstPhaseMargin, "driven ground: minimum phase margin over its range of loads", "PM_min",
                Angle.FromDegrees(worst), Equations.WorstMargin,
                text: $"at body to earth {QuantityText.Format(at.BodyToEarth, "F")}, ground electrode {QuantityText.Format(at.ElectrodeFactor * design.Electrodes.Ground!.DcResistance.Ohms, "Ω")}, "
                    + (1e-7 < at.CommonToEarth ? "common earthed" : "on battery"));
        }
        else
        {
            list.Unbounded(ResultIds.Drive.WorstPhaseMargin, "driven ground: minimum phase margin over its range of loads", "PM_min", "°",
                Equations.WorstMargin, Never);
        }
    }

    /// <summary>Pole of (R_o + R_e) with the body's capacitance as the loop sees it.</summary>
    private static Frequency[] HandPoles(Design design, ElectrodeSet set)
    {
        double resistance = design.GroundDrive.SeriesResistor.Ohms + set.Ground!.DcResistance.Ohms;
        double body = design.Mains.BodyToEarth.Farads + design.Mains.BodyToMains.Farads,
            common = design.Mains.AmplifierToEarth.Farads + design.Mains.AmplifierToMains.Farads;
        double effective = body + common == 0 ? 0 : body * common / (body + common);
        return resistance * effective == 0 ? [] : [Frequency.FromHertz(1 / (2 * Math.PI * resistance * effective))];
    }
}
