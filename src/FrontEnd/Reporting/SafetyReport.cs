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

    /// <summary>Name of <c>safety.shared_fault_current</c>.</summary>
    public const string SharedFaultName = "dc through the wearer after one fault that all measuring leads share";

    public static void AddTo(ResultList list, List<Finding> findings, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        Voltage highest = design.Supply.Highest;
        var fitted = SafetyLanes.Least(design);
        (Lead Lead, double Ohms)[] leads = [.. Leads(fitted)];
        Current limit = design.Requirements.FaultCurrent;
        (Lead worst, double least) = leads.MinBy(lead => lead.Ohms);
        AddCurrent(list, design, ResultIds.Safety.FaultCurrent, $"dc through one electrode after a single fault ({worst.Source().Words})", least, limit);
        foreach ((Lead lead, double ohms) in leads)
        {
            AddCurrent(list, design, ResultIds.Safety.FaultCurrentOf(lead), $"dc through the {lead.Source().Words} after a single fault", ohms, limit);
        }

        if (evaluation.Drive is not null)
        {
            AddCurrent(
                list, design, ResultIds.Safety.DrivenGroundCurrent,
                    "dc through the driven ground with its amplifier at the rail (lead off: normal operation)",
                    fitted.Ground!.Value[0], design.Requirements.DrivenGroundCurrent);
        }

        AddShared(list, findings, design, fitted, limit);
        AddNeeded(list, design, highest, limit);
        if (design.ContactCheck is { } check)
        {
            list.Number(
                ResultIds.Safety.ContactCheckCurrent, "contact check's current, peak", "I", check.Current,
                new Equation("as set", Equations.Derived),
                text: Words(check.Current.Amperes, design.Requirements.DrivenGroundCurrent));
        }
    }

    /// <summary>What it means for the wearer that a lead has no resistor, and what to do.</summary>
    public static string NotLimited(Design design)
    {
        const string means = "no resistor is fitted in this lead: after a fault only the skin limits the current through the wearer, above the quoted limit for any fault; not to be worn";
        return design.Requirements.FaultCurrent.Amperes <= 0 ? means
            : $"{means}; fit a series resistor in it, {QuantityText.FormatPart(Resistance.FromOhms(PreferredValues.AtLeast(Needed(design), PreferredSeries.E24)))} at least";
    }

    /// <summary>What holds the current of one lead at its limit, the resistor at the low end of its tolerance [Ω].</summary>
    private static double Needed(Design design) =>
        design.Supply.Highest.Volts / design.Requirements.FaultCurrent.Amperes / (1 - design.Input.ResistorTolerance.Fraction);

    private static IEnumerable<(Lead Lead, double Ohms)> Leads(SafetyLanes fitted)
    {
        yield return (Lead.Active, fitted.Active[0]);
        yield return (Lead.Reference, fitted.Reference[0]);
        if (fitted.Ground is { } ground)
        {
            yield return (Lead.Ground, ground[0]);
        }
    }

    private static void AddCurrent(ResultList list, Design design, ResultId id, string name, double ohms, Current limit)
    {
        Voltage highest = design.Supply.Highest;
        if (ohms <= 0)
        {
            list.Unbounded(id, name, "I", "A", Equations.FaultCurrent,
                NotLimited(design));
            return;
        }

        var current = Current.FromAmperes(SafetyLanes.Current(highest.Volts, new(ohms))[0]);
        list.Number(id, name, "I", current, Equations.FaultCurrent, hand: SafetyFormulas.FaultCurrent(highest, Resistance.FromOhms(ohms)),
            text: $"{Words(current.Amperes, limit)}; {LimitOrigin}");
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

        double ohms = Needed(design);
        double preferred = PreferredValues.AtLeast(ohms, PreferredSeries.E24);
        list.Number(
            ResultIds.Safety.SeriesResistanceNeeded, Name, "R", Resistance.FromOhms(ohms), Equations.SeriesNeeded,
            hand: SafetyFormulas.SeriesResistanceNeeded(highest, limit),
            assumption: "the formula leaves out the resistor's tolerance",
                text: $"next preferred value {QuantityText.FormatPart(Resistance.FromOhms(preferred))}; {LimitOrigin}");
    }

    /// <summary>All measuring leads at the highest voltage, by the way that the current has back.</summary>
    private static void AddShared(ResultList list, List<Finding> findings, Design design, SafetyLanes fitted, Current limit)
    {
        bool earthed = design.Mains.CommonIsEarthed;
        Equation equation = earthed ? Equations.SharedFaultByEarth : Equations.SharedFaultByGround;
        if (fitted.SharedFault(design) is not { } lanes)
        {
            list.Missing(ResultIds.Safety.SharedFaultCurrent, SharedFaultName, "I", "A", equation, Messages.SharedFaultWithoutReturn);
            findings.Add(Messages.NoReturnPath());
            return;
        }

        if (!double.IsFinite(lanes[0]))
        {
            list.Unbounded(ResultIds.Safety.SharedFaultCurrent, SharedFaultName, "I", "A", equation,
                $"no resistor is fitted in its path{(earthed ? "" : ", neither in a measuring lead nor in the ground lead")}: after such a fault only the skin limits the current through the wearer, above the quoted limit for any of them; not to be worn; fit a series resistor in every lead");
            return;
        }

        TextbookFigure? hand = 0 < design.ChannelList.Count ? null : SafetyFormulas.SharedFault(design.Supply.Highest, design.Channels, Resistance.FromOhms(fitted.Active[0]),
            Resistance.FromOhms(fitted.Reference[0]), earthed ? null : Resistance.FromOhms(fitted.Ground!.Value[0]));
        string way = earthed ? "back through the earth, to which the common is tied" : "back through the ground lead";
        list.Number(ResultIds.Safety.SharedFaultCurrent, SharedFaultName, "I", Current.FromAmperes(lanes[0]), equation, hand: hand,
            text: $"{Words(lanes[0], limit)}; {LeadsInWords(design)}, {way}; {LimitOrigin}");
    }

    private static string LeadsInWords(Design design)
    {
        int minus = design.ChannelList.Count(channel => channel.Minus is not null), reference = design.ChannelList.Count > 0 && minus == design.Channels ? 0 : 1;
        return $"{design.Channels} active and {reference} reference lead" + (0 < minus ? $", {minus} of channels' own minus electrodes" : "");
    }

    /// <summary>Which resistors hold the current of a shared fault most, in words.</summary>
    public static string SharedFaultHeldBy(Design design)
    {
        var fitted = SafetyLanes.Least(design);
        double leads = 1 / (fitted.Measuring?[0] ?? ((design.Channels / fitted.Active[0]) + (1 / fitted.Reference[0])));
        return design.Mains.CommonIsEarthed || (fitted.Ground is { } ground && ground[0] < leads)
            ? "the measuring leads' resistors, in parallel"
            : "the ground lead's resistor";
    }

    private static string Words(double amperes, Current limit) =>
        $"{(amperes <= limit.Amperes ? "below" : "above")} the quoted limit {QuantityText.Format(limit)}";
}
