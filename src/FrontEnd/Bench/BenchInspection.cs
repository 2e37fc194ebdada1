using FrontEnd.Boards;
using FrontEnd.Citations;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Identity;
using FrontEnd.Results;

namespace FrontEnd.Bench;

/// <summary>What is looked at before a board sees power: parts turned round, a shorted supply, and the resistors that protect the
/// wearer.</summary>
internal static class BenchInspection
{
    /// <summary>The test of the supply's poles.</summary>
    public const string SupplyName = "ohms-supply";

    /// <summary>What an ohmmeter leaves open, ± (common practice, no source).</summary>
    private const double MeterTolerance = 0.01;

    private const string Off = "no battery, no supply, nobody connected";

    private static readonly SourceRef Practice = new("common-practice");

    public static IEnumerable<BenchReading> Of(Assessment assessment, BenchBoard board)
    {
        Design design = assessment.Design;
        yield return Test(design, "look-polarity", "polarity", "against the drawing: pin 1 of chips, bars of diodes, plus of polarised capacitors and of the battery's connector") with
        {
            Remark = "by eye: all as drawn",
        };
        if (assessment.Find(ResultIds.Power.SupplyCurrent) is { State: ResultState.Number } current && 0 < current.Si)
        {
            // Where it is less, the next test's current limit trips.
            double least = design.Supply.Highest.Volts / (2 * current.Si);
            yield return Test(design, SupplyName, "shorts", "ohmmeter from the supply's plus to its minus, plus to plus; wait until the capacitors are charged") with
            {
                Expected = Resistance.FromOhms(least), Least = least, IsBound = true,
                Tolerance = "the highest supply over twice the supply current: with less, the next test would reach its current limit",
            };
        }

        foreach (Protected lead in Leads(design, board))
        {
            yield return Across(design, lead);
            yield return ToCommon(design, lead);
        }
    }

    /// <summary>A lead with its resistor.</summary>
    /// <param name="Lead">Which.</param>
    /// <param name="Ohms">Of its resistor, 0 for none.</param>
    /// <param name="Tolerance">±.</param>
    /// <param name="Further">What leads on to the mid-supply behind the resistor [Ω]; null where nothing does that an ohmmeter would see.</param>
    /// <param name="Name">Of the resistor.</param>
    /// <param name="Designator">The same on the board; null for none.</param>
    private sealed record Protected(Lead Lead, double Ohms, double Tolerance, double? Further, string Name, string? Designator);

    private static IEnumerable<Protected> Leads(Design design, BenchBoard board)
    {
        foreach ((Lead lead, ElectrodeBuffer? buffer) in new[] { (Lead.Active, design.Electrodes.ActiveBuffer), (Lead.Reference, design.Electrodes.ReferenceBuffer) })
        {
            yield return buffer is null
                ? Of(lead, false, design.Input.SeriesResistor, design.Input.ResistorTolerance, design.Input.BiasResistor?.Ohms, "protection resistor")
                : Of(lead, true, buffer.SkinResistor, design.Input.ResistorTolerance, null, "skin resistor");
        }

        if (design.Electrodes.Ground is not null)
        {
            yield return Of(Lead.Ground, false, design.GroundDrive.SeriesResistor, design.GroundDrive.ResistorTolerance, design.GroundIsDriven ? null : 0, "resistor");
        }

        // What is soldered in counts, where a value had to be rounded to one that is made.
        Protected Of(Lead lead, bool isBuffered, Resistance stated, Ratio tolerance, double? further, string name)
        {
            BoardPart? part = board.Protection(lead, isBuffered);
            return new Protected(lead, part?.Value?.SiValue ?? stated.Ohms, (part?.Tolerance ?? tolerance).Fraction, further, name, part?.Designator);
        }
    }

    private static BenchReading Across(Design design, Protected lead)
    {
        BenchReading test = Test(design, $"resistor-{lead.Lead.Word()}", $"{lead.Name}, {Word(design, lead.Lead)}",
            $"ohmmeter across {lead.Designator ?? "the resistor"}; where it is two in series, across both") with
        {
            Brief = "ohmmeter across the resistor (two in series: both)", Particular = lead.Designator,
        };
        return lead.Ohms <= 0 ? test with { Remark = "no resistor is fitted in this lead: above the quoted limit for any fault" } : test with
        {
            Expected = Resistance.FromOhms(lead.Ohms),
            Least = lead.Ohms * (1 - lead.Tolerance) * (1 - MeterTolerance), Greatest = lead.Ohms * (1 + lead.Tolerance) * (1 + MeterTolerance),
            Tolerance = "the part within its tolerance, the meter within 1 %",
            Remark = "protects the wearer: never fit a smaller value",
        };
    }

    private static BenchReading ToCommon(Design design, Protected lead)
    {
        BenchReading test = Test(design, $"ohms-{lead.Lead.Word()}", $"{Word(design, lead.Lead)} to the mid-supply",
            "ohmmeter from the lead's electrode end to the mid-supply, either way round, all other leads open") with
        {
            Brief = "ohmmeter from the lead's electrode end to the mid-supply, other leads open",
        };
        if (lead.Further is not { } further)
        {
            // A chip without power shows its protection diodes or nothing; the resistor stands in front of either.
            double least = lead.Ohms * (1 - lead.Tolerance) * (1 - MeterTolerance);
            return test with
            {
                Expected = lead.Ohms <= 0 ? null : Resistance.FromOhms(least), Least = least, IsBound = true,
                Tolerance = "the resistor at the lower end of its tolerance; beyond it, an unpowered chip shows its protection diodes or an open circuit",
                Remark = lead.Ohms <= 0 ? "no resistor is fitted in this lead" : null,
            };
        }

        double ohms = lead.Ohms + further;
        return test with
        {
            Expected = Resistance.FromOhms(ohms),
            Least = ohms * (1 - lead.Tolerance) * (1 - MeterTolerance), Greatest = ohms * (1 + lead.Tolerance) * (1 + MeterTolerance),
            Tolerance = 0 < further ? "lead and bias resistor within their tolerance, the meter within 1 %" : "the resistor within its tolerance, the meter within 1 %",
        };
    }

    private static string Word(Design design, Lead lead) =>
        lead == Lead.Active && 1 < design.Channels ? "each channel's active lead" : $"{lead.Word()} lead";

    private static BenchReading Test(Design design, string name, string title, string setting) =>
        new(name, title, Off, setting, ReadingKind.Other) { Step = BenchStep.BeforePower, Source = Practice, Design = design };
}
