using FrontEnd.Budgets;
using FrontEnd.Citations;
using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Textbook;

namespace FrontEnd.Reporting;

/// <summary>Dc through the wearer in a fault. The words are "below the quoted limit" and "above the quoted limit": nothing here is called
/// safe.</summary>
internal static class SafetyReport
{
    /// <summary>Said wherever the limits show.</summary>
    public const string LimitOrigin = "limits as commonly quoted from IEC 60601-1; its dc row is from memory";

    public static void AddTo(ResultList list, List<Finding> findings, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        Voltage highest = design.Supply.Highest;
        var fitted = SafetyLanes.Least(design);
        (Lead Lead, double Ohms)[] leads = [.. Leads(fitted)];
        Current limit = design.Requirements.FaultCurrent;
        (Lead worst, double least) = leads.MinBy(lead => lead.Ohms);
        AddCurrent(list, ResultIds.Safety.FaultCurrent, $"dc through one electrode after a single fault ({worst.Source().Words})", highest,
            least, limit);
        foreach ((Lead lead, double ohms) in leads)
        {
            AddCurrent(list, ResultIds.Safety.FaultCurrentOf(lead), $"dc through the {lead.Source().Words} after a single fault", highest,
                ohms, limit);
        }

        if (evaluation.Drive is not null)
        {
            AddCurrent(
                list, ResultIds.Safety.DrivenGroundCurrent,
                    "dc through the driven ground with its amplifier at the rail (a lead fell off: normal operation)", highest,
                    fitted.Ground!.Value[0], design.Requirements.DrivenGroundCurrent);
        }

        AddNeeded(list, design, highest, limit);
        AddSum(list, findings, design, highest, leads, limit);
        if (design.ContactCheck is { } check)
        {
            list.Number(
                ResultIds.Safety.ContactCheckCurrent, "contact check's current, peak", "I", check.Current,
                new Equation("as set", Equations.Derived),
                text: $"{(check.Current.Amperes <= design.Requirements.DrivenGroundCurrent.Amperes ? "below" : "above")} the quoted limit {QuantityText.Format(design.Requirements.DrivenGroundCurrent)}");
        }
    }

    private static IEnumerable<(Lead Lead, double Ohms)> Leads(SafetyLanes fitted)
    {
        yield return (Lead.Active, fitted.Active[0]);
        yield return (Lead.Reference, fitted.Reference[0]);
        if (fitted.Ground is { } ground)
        {
            yield return (Lead.Ground, ground[0]);
        }
    }

    private static void AddCurrent(ResultList list, ResultId id, string name, Voltage highest, double ohms, Current limit)
    {
        if (ohms <= 0)
        {
            list.Unbounded(id, name, "I", "A", Equations.FaultCurrent,
                "no resistor is fitted in this lead: above the quoted limit whatever the fault");
            return;
        }

        var current = Current.FromAmperes(SafetyLanes.Current(highest.Volts, new(ohms))[0]);
        string word = current.Amperes <= limit.Amperes ? "below the quoted limit" : "above the quoted limit";
        list.Number(id, name, "I", current, Equations.FaultCurrent, hand: SafetyFormulas.FaultCurrent(highest, Resistance.FromOhms(ohms)),
            text: $"{word} {QuantityText.Format(limit)}; {LimitOrigin}");
    }

    private static void AddNeeded(ResultList list, Design design, Voltage highest, Current limit)
    {
        const string Name = "series resistor that each measuring lead needs";
        if (limit.Amperes <= 0)
        {
            list.Unbounded(ResultIds.Safety.SeriesResistanceNeeded, Name, "R", "Ω", Equations.SeriesNeeded,
                "a limit of zero allows no current at all");
            return;
        }

        double ohms = highest.Volts / limit.Amperes / (1 - design.Input.ResistorTolerance.Fraction);
        double preferred = PreferredValues.AtLeast(ohms, PreferredSeries.E24);
        list.Number(
            ResultIds.Safety.SeriesResistanceNeeded, Name, "R", Resistance.FromOhms(ohms), Equations.SeriesNeeded,
            hand: SafetyFormulas.SeriesResistanceNeeded(highest, limit),
            assumption: "the formula leaves out the resistor's tolerance",
                text: $"next preferred value {QuantityText.FormatPart(Resistance.FromOhms(preferred))}; {LimitOrigin}");
    }

    private static void AddSum(ResultList list, List<Finding> findings, Design design, Voltage highest, (Lead Lead, double Ohms)[] leads,
        Current limit)
    {
        const string Name = "dc through all leads together, one shared fault";
        int actives = design.Channels;
        double siemens = 0;
        foreach ((Lead lead, double ohms) in leads)
        {
            siemens += (lead == Lead.Active ? actives : 1) / ohms;
        }

        if (!double.IsFinite(siemens))
        {
            list.Unbounded(ResultIds.Safety.SumOfLeads, Name, "I", "A", Equations.FaultCurrent,
                "a lead has no resistor: above the quoted limit");
            return;
        }

        Current sum = Current.FromAmperes(highest.Volts * siemens);
        bool above = limit.Amperes < sum.Amperes;
        list.Number(ResultIds.Safety.SumOfLeads, Name, "I", sum, Equations.FaultCurrent,
            text: $"{(above ? "above" : "below")} the quoted limit {QuantityText.Format(limit)} for one electrode; {LimitOrigin}");
        if (above)
        {
            findings.Add(Messages.SharedFault(QuantityText.Format(sum), QuantityText.Format(limit)));
        }
    }
}
