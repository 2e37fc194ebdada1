using FrontEnd.Citations;
using FrontEnd.Textbook;

namespace FrontEnd.Teaching.Problems;

/// <summary>Problems about the driven ground and about safety.</summary>
internal static class DriveProblems
{
    public static IReadOnlyList<Template> All { get; } =
    [
        new("drive-loop-gain", Topic.Drive, 1, "Loop gain at the mains", d =>
        {
            Frequency unity = d.Part<Frequency>("f_u", "frequency at which the loop gain is 1", 200, 20e3, PreferredSeries.E96);
            Frequency line = d.OneOf<Frequency>("f", "mains frequency", 50, 60);
            TextbookFigure figure = MainsFormulas.DrivenGroundLoopGain(unity, line);
            return new ProblemText("A driven ground is an integrator. How large is its loop gain at the mains, in decibels?")
                .Step("An integrator's gain falls with the frequency", figure)
                .AnswersWithin<Decibels>(figure.Value, 0.15)
                .Slip(Slips.TenForTwentyLog, figure.Value / 2)
                .Slip(Slips.NaturalForTenLog, 20 * Math.Log(unity / line));
        }),
        new("drive-resistance", Topic.Drive, 2, "Resistance that a driven ground shows", d =>
        {
            Resistance output = d.Part<Resistance>("R_o", "resistor in the driven lead", 100e3, 470e3);
            Resistance feedback = d.Part<Resistance>("R_f", "feedback resistor of the inverting stage", 470e3, 4.7e6);
            Resistance averaging = d.Part<Resistance>("R_a", "each of the two averaging resistors", 10e3, 47e3);
            TextbookFigure figure = MainsFormulas.DrivenGroundResistance(output, feedback, averaging);
            return new ProblemText("Which resistance does the driven ground show to the body's displacement current?")
                .Step("The loop divides the resistor by 1 plus its gain; the two averaging resistors are in parallel for the common mode",
                    figure)
                .Answers<Resistance>(figure.Value)
                .Slip(Slips.AveragingFactor, output.Ohms / (1 + (feedback / averaging)))
                .Slip(Slips.NoLoop, output.Ohms);
        }),
        new("drive-common-mode", Topic.Drive, 2, "Common mode with a driven ground", d =>
        {
            Current body = d.Part<Current>("i", "displacement current through the body, rms", 20e-9, 330e-9);
            Resistance resistor = d.Part<Resistance>("R_o", "resistor in the driven lead", 100e3, 390e3);
            Resistance electrode = d.Part<Resistance>("R_e", "ground electrode", 10e3, 100e3);
            Ratio gain = d.OneOf<Ratio>("T", "loop gain at the mains", 10, 20, 30, 40, 60, 100);
            TextbookFigure figure = MainsFormulas.DrivenCommonMode(body, resistor + electrode, gain.Fraction);
            return new ProblemText("Which common-mode voltage is left on the body, rms? The loop gain is taken as a real number.")
                .Step("The current's voltage in the driven lead, divided by 1 plus the loop gain", figure)
                .Answers<VoltageRms>(figure.Value)
                .Slip(Slips.NoLoop, body.Amperes * (resistor.Ohms + electrode.Ohms))
                .Slip(Slips.NoGroundElectrode, body.Amperes * resistor.Ohms / (1 + gain.Fraction))
                .Slip(Slips.RmsForPeak, Math.Sqrt(2) * figure.Value);
        }),
        new("drive-margin", Topic.Drive, 3, "Phase margin of a driven ground", d =>
        {
            Frequency unity = d.OneOf<Frequency>("f_u", "unity gain of the integrator alone", 800, 1000, 1200, 1500, 2000, 2500, 3000, 4000, 5000);
            Frequency first = d.OneOf<Frequency>("f₁", "pole of driven lead and body capacitance", 2000, 2500, 3000, 4000, 5000, 6500, 8000);
            Frequency second = d.OneOf<Frequency>("f₂", "pole of an electrode and its input", 8000, 12000, 15000, 20000, 30000, 50000, 80000);
            TextbookFigure crossing = MainsFormulas.DrivenGroundCrossing(unity, first, second);
            TextbookFigure figure = MainsFormulas.DrivenGroundPhaseMargin(unity, first, second);
            double late = ToDegrees(Math.Atan(unity / first) + Math.Atan(unity / second));
            return new ProblemText("The loop of a driven ground is an integrator with two more poles. How large is its phase margin?")
                .Step("The other poles lower the gain too, so the loop gain is 1 below f_u (by trial, or halving)", crossing)
                .Step("There, 180° less the integrator's 90° and less what the poles add", figure)
                .AnswersWithin<Angle>(figure.Value, 1)
                .Slip(Slips.NotAtCrossing, 90 - late)
                .Slip(Slips.NoIntegrator, figure.Value + 90)
                .Slip(Slips.OnePoleOfTwo, 90 - ToDegrees(Math.Atan(crossing.Value / first.Hertz)));
        }),
        new("safety-current", Topic.Safety, 1, "Direct current after a fault", d =>
        {
            Voltage battery = d.OneOf<Voltage>("V_bat", "battery, full", 3.3, 3.6, 4.2);
            Voltage highest = d.OneOf<Voltage>("V_max", "highest voltage in the box (charger or boost converter)", 5, 5.2, 5.5, 6, 7.5, 9, 12, 15);
            Resistance series = d.Part<Resistance>("R", "resistor in the electrode's lead, at its lower tolerance", 100e3, 1e6, PreferredSeries.E96);
            Resistance skin = d.OneOf<Resistance>("R_skin", "skin and electrode, on a good day", 20e3, 50e3, 100e3);
            TextbookFigure figure = SafetyFormulas.FaultCurrent(highest, series);
            return new ProblemText("A single fault puts the worst voltage on an electrode's lead. Which direct current must be reckoned with, in the worst case?")
                .Step("The highest voltage of the box over the resistor that is fitted; skin and electrode count as 0 Ω", figure)
                .Say("A design aid, no safety assessment: the figure is held against the quoted limit, and local rules and a qualified person decide")
                .Answers<Current>(figure.Value)
                .Slip(Slips.WrongVoltage, battery.Volts / series.Ohms)
                .Slip(Slips.SkinCounts, highest.Volts / (series.Ohms + skin.Ohms))
                .Slip(Slips.BatteryAndSkin, battery.Volts / (series.Ohms + skin.Ohms));
        }),
        new("safety-resistor", Topic.Safety, 2, "Series resistor from the E24 series", d =>
        {
            Voltage highest = d.Stepped<Voltage>("V_max", "highest voltage in the box", 3, 15, 0.1);
            Current limit = d.OneOf<Current>("I", "quoted single-fault limit, dc", TradeConstants.FaultAmperes);
            Current normal = d.Give<Current>("I_n", "quoted limit of normal operation, dc", TradeConstants.NormalAmperes);
            Ratio tolerance = d.OneOf<Ratio>("tol", "tolerance of the resistor", 0.01, 0.02, 0.05);
            double least = highest.Volts / limit.Amperes / (1 - tolerance.Fraction);
            double chosen = PreferredValues.AtLeast(least, PreferredSeries.E24);
            return new ProblemText("Which is the smallest resistor of the E24 series that keeps the current of a single fault below the quoted limit, tolerance included?")
                .Step("Ohm's law, and the resistor may be at its lower tolerance", "V_max/I/(1 − tol)",
                    $"{Put.In(highest)}/{Put.In(limit)}/(1 − {Put.In(tolerance)})", least, "Ω", Sources.FaultLimit)
                .Say($"A limit is kept by rounding up, never to the nearest: {Put.In(chosen, "Ω")}", new SourceRef("iec-60063"))
                .Say("The dc limits are quoted from memory and not read in the standard; a design aid, no safety assessment")
                .Answers<Resistance>(chosen, 0.005)
                .RoundedFrom(least)
                .Slip(Slips.RoundedDown, PreferredValues.NextDown(chosen, PreferredSeries.E24))
                .Slip(Slips.NoTolerance, PreferredValues.AtLeast(highest.Volts / limit.Amperes, PreferredSeries.E24))
                .Slip(Slips.NotPreferred, least)
                .Slip(Slips.NormalForFault,
                    PreferredValues.AtLeast(highest.Volts / normal.Amperes / (1 - tolerance.Fraction), PreferredSeries.E24));
        })
        { FewAnswers = "the E24 series has 24 values a decade" },
        new("safety-leads", Topic.Safety, 3, "One fault shared by all measuring leads", d =>
        {
            Voltage highest = d.OneOf<Voltage>("V_max", "highest voltage in the box", 3.3, 4.2, 5, 9);
            Resistance series = d.Part<Resistance>("R", "resistor in each measuring lead, nominal", 100e3, 1e6);
            Resistance ground = d.Part<Resistance>("R_g", "resistor in the ground lead, nominal", 180e3, 1.5e6);
            Ratio tolerance = d.OneOf<Ratio>("tol", "tolerance of all of them", 0.01, 0.05);
            int leads = (int)d.OneOf<Ratio>("N", "measuring leads, the reference among them", 3, 5, 9, 12).Fraction;
            Resistance least = Resistance.FromOhms(series.Ohms * (1 - tolerance.Fraction)),
                back = Resistance.FromOhms(ground.Ohms * (1 - tolerance.Fraction));
            TextbookFigure figure = SafetyFormulas.SharedFault(highest, leads - 1, least, least, back);
            return new ProblemText("A box on battery floats: no wire leaves it. One fault puts the highest voltage on all measuring leads at once. Which direct current flows through the wearer and back through the ground lead?")
                .Step("The measuring leads stand side by side, each resistor at its lower tolerance", "R·(1 − tol)/N",
                    $"{Put.In(least)}/{Put.In(leads)}", least.Ohms / leads, "Ω", Sources.FaultLimit)
                .Step("All of it returns through the ground lead, so its resistor is in series; skin and electrodes count as 0 Ω", figure)
                .Say("A design aid, no safety assessment: the figure is held against the quoted limit, and local rules and a qualified person decide")
                .Answers<Current>(figure.Value)
                .Slip(Slips.OneLead, highest.Volts / (least.Ohms + back.Ohms))
                .Slip(Slips.NoWayBack, leads * highest.Volts / least.Ohms)
                .Slip(Slips.NoTolerance, highest.Volts / ((series.Ohms / leads) + ground.Ohms));
        }),
    ];

    private static double ToDegrees(double radians) => radians * 180 / Math.PI;
}
