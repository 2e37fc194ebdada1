using FrontEnd.Citations;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Identity;
using FrontEnd.Results;

namespace FrontEnd.Bench;

/// <summary>Direct current through each electrode: with the fault forced, which tells what the lead's resistor lets through, and without a
/// fault, which tells that nothing leaks.</summary>
/// <remarks>A healthy board drives nothing but its bias current through an electrode: a reading near the fault current there is a fault. The
/// fault has to be forced for the resistor to be tried. Both are for a board that one built oneself, with nobody connected.</remarks>
internal static class BenchDirect
{
    /// <summary>What the meter and the supply's setting leave open, ± (common practice, no source).</summary>
    public const double MeterTolerance = 0.02;

    /// <summary>Least current that a meter with µA resolution tells from none [A].</summary>
    public const double MeterFloor = 1e-7;

    /// <summary>Said in every one of these tests.</summary>
    public const string OwnBoard = "nobody connected, and only on a board that you built yourself";

    private static readonly SourceRef Source = new("iec-60601-1", "dc limits; from memory");

    public static IEnumerable<BenchReading> Of(Assessment assessment)
    {
        Design design = assessment.Design;
        ElectrodeSet set = design.Electrodes;
        double tolerance = design.Input.ResistorTolerance.Fraction, bias = Math.Abs(design.Amplifier.BiasCurrent.Amperes);
        double active = set.ActiveBuffer is { } first ? Math.Abs(first.OpAmp.BiasCurrent.Amperes) : bias;
        double reference = set.ReferenceBuffer is { } second
            ? Math.Abs(second.OpAmp.BiasCurrent.Amperes)
            : bias * design.EffectiveReferenceInputs;
        yield return Forced(assessment, Lead.Active, set.ActiveBuffer?.SkinResistor ?? design.Input.SeriesResistor, tolerance,
            set.ActiveBuffer is null ? "the amplifier end of the lead's protection resistor" : "the buffer end of the electrode's skin resistor");
        yield return Healthy(design, Lead.Active, active);
        yield return Forced(assessment, Lead.Reference, set.ReferenceBuffer?.SkinResistor ?? design.Input.SeriesResistor, tolerance,
            set.ReferenceBuffer is null ? "the amplifier end of the lead's protection resistor" : "the buffer end of the electrode's skin resistor");
        yield return Healthy(design, Lead.Reference, reference);
        if (set.Ground is null)
        {
            yield break;
        }

        yield return Forced(assessment, Lead.Ground, design.GroundDrive.SeriesResistor, design.GroundDrive.ResistorTolerance.Fraction,
            design.GroundIsDriven ? "the driving amplifier's end of the ground lead's resistor" : "the mid-supply's end of the ground lead's resistor");
        yield return Healthy(design, Lead.Ground, (active * design.Channels) + reference);
        if (assessment.Find(ResultIds.Safety.SharedFaultCurrent) is { State: ResultState.Number } shared)
        {
            yield return Shared(design, shared);
        }

        if (assessment.Find(ResultIds.Safety.DrivenGroundCurrent) is { State: ResultState.Number } rail)
        {
            yield return Driven(design, rail);
        }
    }

    /// <summary>The electrode's lead with the highest voltage in the box behind its resistor.</summary>
    private static BenchReading Forced(Assessment assessment, Lead lead, Resistance fitted, double tolerance, string end)
    {
        Design design = assessment.Design;
        Result? figure = assessment.Find(ResultIds.Safety.FaultCurrentOf(lead));
        bool isFitted = figure is { State: ResultState.Number };
        double highest = design.Supply.Highest.Volts;
        return new BenchReading($"dc-forced-{lead.Word()}", $"dc, fault forced, {lead.Word()} electrode",
            $"{OwnBoard}: lift {end} and tie it to the highest supply through a current meter with µA resolution; the lead's electrode end to the supply's negative pole, {QuantityText.Format(design.Supply.Highest)} below",
            "read the current: it is what a single fault can drive through the electrode; then refit the resistor", ReadingKind.Other)
        {
            Brief = $"{end} lifted and tied to the highest supply through a µA meter, electrode end to the supply's minus; refit afterwards",
            Expected = isFitted ? figure!.Value : null,
            Least = isFitted ? highest / fitted.Ohms / (1 + tolerance) * (1 - MeterTolerance) : null,
            Greatest = isFitted ? figure!.Si * (1 + MeterTolerance) : null,
            Tolerance = "predicted with the resistor at the lower end of its tolerance; the resistor within its tolerance, the meter within 2 %",
            Source = Source,
            Id = figure?.Id,
            Remark = isFitted
                ? figure!.Text
                : "do not force this fault: no resistor is fitted in this lead, and the supply would be shorted; above the quoted limit for any fault",
            Design = design,
        };
    }

    /// <summary>All measuring leads with the highest voltage behind their resistors, as after a fault of a chip that they share.</summary>
    private static BenchReading Shared(Design design, Result figure)
    {
        double tolerance = Math.Max(design.Input.ResistorTolerance.Fraction, design.GroundDrive.ResistorTolerance.Fraction);
        string back = design.Mains.CommonIsEarthed
            ? "their electrode ends to the supply's negative pole"
            : "their electrode ends to the ground lead's, and the box end of the ground lead's resistor to the supply's negative pole";
        return new BenchReading("dc-forced-shared", "dc, shared fault forced, all measuring leads",
            $"{OwnBoard}: lift the box ends of all measuring leads' resistors and tie them together to the highest supply, {QuantityText.Format(design.Supply.Highest)}, through a current meter with µA resolution; {back}",
            "read the current: it is what a fault of a whole chip can drive through a wearer; then refit the resistors", ReadingKind.Other)
        {
            Brief = $"box ends of all measuring leads' resistors lifted and tied together to the highest supply through a µA meter; electrode ends to {(design.Mains.CommonIsEarthed ? "the supply's minus" : "the ground lead's, its resistor's box end to the supply's minus")}; put back after",
            Expected = figure.Value,
            Least = figure.Si * (1 - tolerance) / (1 + tolerance) * (1 - MeterTolerance),
            Greatest = figure.Si * (1 + MeterTolerance),
            Tolerance = "predicted with the resistors at the lower end of their tolerance; the resistors within it, the meter within 2 %",
            Source = Source,
            Id = figure.Id,
            Remark = figure.Text,
            Design = design,
        };
    }

    private static BenchReading Healthy(Design design, Lead lead, double bias)
    {
        string meter = lead == Lead.Ground
            ? "all other electrode leads tied together, the current meter with µA resolution between them and the ground lead"
            : "the current meter with µA resolution between the lead's electrode end and the mid-supply, all other leads to the mid-supply";
        return new BenchReading($"dc-{lead.Word()}", $"dc without a fault, {lead.Word()} electrode", $"{OwnBoard}: {meter}",
            $"supply at its highest, {QuantityText.Format(design.Supply.Highest)}; read the current: the bias current alone, which such a meter shows as zero",
            ReadingKind.Other)
        {
            Brief = lead == Lead.Ground ? "µA meter between the ground lead and all other leads tied together" : "µA meter from the lead's electrode end to the mid-supply, all other leads there too",
            Expected = Current.FromAmperes(bias),
            Greatest = (2 * bias) + MeterFloor,
            Tolerance = "twice the bias current and the meter's last digit; anything more is a leak or a damaged input, and the device must not be worn",
            Source = Source,
            Design = design,
        };
    }

    /// <summary>The driven ground's amplifier at its rail, which it goes to when a lead falls off.</summary>
    private static BenchReading Driven(Design design, Result rail)
    {
        double ohms = design.GroundDrive.SeriesResistor.Ohms, tolerance = design.GroundDrive.ResistorTolerance.Fraction;
        double swing = Math.Max(0, design.Supply.Lowest.Volts - design.GroundDrive.OutputMargin.Volts);
        return new BenchReading("dc-drive", "dc of the driven ground at each rail",
            $"{OwnBoard}: the current meter with µA resolution from the ground lead's electrode end to the supply's negative pole, then to its positive one",
            $"supply at its highest, {QuantityText.Format(design.Supply.Highest)}; all other leads together 0.1 V below the mid-supply, then 0.1 V above, which drives the amplifier to the upper and to the lower rail; read the larger current",
            ReadingKind.Other)
        {
            Brief = "µA meter from the ground lead to the supply's minus, then to its plus; all other leads 0.1 V below the mid-supply, then above; the larger current",
            Expected = rail.Value,
            Least = swing / ohms / (1 + tolerance) * (1 - MeterTolerance),
            Greatest = rail.Si * (1 + MeterTolerance),
            Tolerance = "at most the whole supply over the resistor at the lower end of its tolerance; at least what the amplifier reaches at the lowest supply",
            Source = Source,
            Id = rail.Id,
            Remark = rail.Text,
            Design = design,
        };
    }
}
