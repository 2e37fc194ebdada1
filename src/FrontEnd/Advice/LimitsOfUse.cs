using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Fields;
using FrontEnd.Identity;
using FrontEnd.Numbers;
using FrontEnd.Reporting;
using FrontEnd.Results;

namespace FrontEnd.Advice;

/// <summary>How far contact, mismatch, offset, leads, mains field and battery may go before a verdict that is met today fails: what one
/// checks before a recording.</summary>
/// <remarks>Each limit is a search of its own, of some fifteen evaluations, so they are looked for beside the advice and no plain
/// evaluation has them.</remarks>
internal static class LimitsOfUse
{
    /// <summary>A limit is looked for until it is known to this share of itself.</summary>
    private const double Accuracy = 0.005;

    /// <summary>From point to point while no verdict fails yet: a verdict that fails and holds again within a stride is not seen.</summary>
    private const double Stride = 4;

    /// <summary>So many strides are taken at most, and a stride is halved at most so often.</summary>
    private const int MostStrides = 20, MostHalvings = 60;

    /// <summary>The same assessment with the limits behind its results; as it is where it has no figures, or has them already.</summary>
    public static Assessment Add(Assessment assessment, CancellationToken cancellation = default) =>
        Add(assessment, null, null, cancellation);

    /// <summary>The same with one limit alone.</summary>
    /// <param name="assessment">The design's figures.</param>
    /// <param name="only">The limit's id; null for all of them.</param>
    /// <param name="cancellation">Ends the search.</param>
    public static Assessment Add(Assessment assessment, ResultId? only, CancellationToken cancellation) =>
        Add(assessment, only, null, cancellation);

    /// <summary>The same with the design's budgets, where they are at hand.</summary>
    internal static Assessment Add(Assessment assessment, ResultId? only, Evaluation? evaluation, CancellationToken cancellation)
    {
        if (!assessment.HasFigures || assessment.Find(ResultIds.Limit.Contact) is not null)
        {
            return assessment;
        }

        evaluation ??= Evaluator.Whole(assessment.Design);
        Use[] uses = [.. Uses(assessment.Design).Where(use => only is null || use.Id == only)];
        var list = new ResultList();
        foreach ((Use use, Found found) in uses.Zip(InParallel.Map(uses, use => Search(assessment, evaluation, use), cancellation)))
        {
            Put(list, use, found);
        }

        return assessment.With([.. assessment.Results, .. list.Results]);
    }

    /// <summary>One thing that differs from recording to recording.</summary>
    /// <param name="Id">Of its limit.</param>
    /// <param name="Name">Of its limit.</param>
    /// <param name="Today">As designed.</param>
    /// <param name="First">Where the search begins: beyond today's value, on the side where verdicts fail.</param>
    /// <param name="With">The design with another value.</param>
    /// <param name="Quantity">The value for the reader.</param>
    private sealed record Use(ResultId Id, string Name, double Today, double First, Func<double, Design> With,
        Func<double, IQuantity> Quantity)
    {
        /// <summary>From point to point: up, or down for the battery.</summary>
        public double Step => Today <= First ? Stride : 1 / Stride;
    }

    /// <summary>Where the search ended.</summary>
    /// <param name="Last">The last value at which every verdict still holds.</param>
    /// <param name="Fails">What fails beyond it; null for nothing.</param>
    /// <param name="HasFigures">False where beyond it the design cannot be worked out.</param>
    private readonly record struct Found(double Last, Result? Fails, bool HasFigures);

    private static IEnumerable<Use> Uses(Design design)
    {
        ElectrodeSet set = design.Electrodes;
        double contact = design.ChannelList.Select(channel => channel.Electrode ?? set.Active).DefaultIfEmpty(set.Active).Max(one => one.DcResistance.Ohms), mismatch = set.EffectiveMismatch, offset = Math.Abs(set.Offset.Volts),
            field = design.Mains.Field.Teslas, battery = design.Supply.Lowest.Volts;
        yield return new Use(ResultIds.Limit.Contact, "largest resistance of the active electrode, the others growing in proportion", contact,
            contact * Stride, ohms => Scaled(design, contact == 0 ? 1 : ohms / contact),
            value => Resistance.FromOhms(value));
        yield return new Use(ResultIds.Limit.Mismatch, "largest mismatch of active and reference electrode", mismatch,
            Math.Max(0.01, mismatch * Stride), value => design with { Electrodes = set with { Mismatch = Ratio.FromFraction(value) } },
            value => Share.FromFraction(value));
        yield return new Use(ResultIds.Limit.Offset, "largest offset between the electrodes", offset, Math.Max(1e-3, offset * Stride),
            value => design with { Electrodes = set with { Offset = Voltage.FromVolts(value) } }, value => Voltage.FromVolts(value));
        yield return new Use(ResultIds.Limit.Leads, "largest capacitance of the leads to mains and common, relative to the design's", 1, Stride,
            factor => WithLeads(design, factor), value => Ratio.FromFraction(value));
        yield return new Use(ResultIds.Limit.Field, "largest magnetic field of the mains, rms", field, Math.Max(1e-9, field * Stride),
            value => design with { Mains = design.Mains with { Field = MagneticFluxDensity.FromTeslas(value) } },
            value => MagneticFluxDensity.FromTeslas(value));
        yield return new Use(ResultIds.Limit.Battery, "lowest voltage at the analogue rails", battery, battery / Stride,
            value => design with { Supply = design.Supply with { Lowest = Voltage.FromVolts(value) } }, value => Voltage.FromVolts(value));
    }

    /// <summary>A wet electrode stays a wet one however bad its contact, and the mismatch stays: what is judged by the resistance where
    /// nothing is said is held as it is today.</summary>
    private static Design Scaled(Design design, double factor)
    {
        ElectrodeSet set = design.Electrodes;
        Design scaled = design.WithElectrodes(electrode => electrode.Scaled(factor) with { Contact = electrode.EffectiveContact });
        return scaled with
        {
            Electrodes = scaled.Electrodes with { Mismatch = 0 < design.ChannelList.Count ? set.Mismatch : Ratio.FromFraction(set.EffectiveMismatch) },
        };
    }

    private static Design WithLeads(Design design, double factor) => design with
    {
        Mains = design.Mains with { LeadToMains = Capacitance.FromFarads(design.Mains.LeadToMains.Farads * factor) },
        Input = design.Input with { LeadToCommon = Capacitance.FromFarads(design.Input.LeadToCommon.Farads * factor) },
    };

    private static Found Search(Assessment assessment, Evaluation? evaluation, Use use)
    {
        Result[] met = [.. assessment.Judged.Where(result => result.Verdict.Kind is VerdictKind.Pass or VerdictKind.Marginal)];
        double good = use.Today, end = End(use);
        if (met.Length == 0 || end == use.Today || use.With(end) == assessment.Design)
        {
            return new Found(good, null, true);
        }

        double bad = use.First;
        Point before = new(null, true, Spare(met)), beyond;
        while (true)
        {
            bad = use.Step < 1 ? Math.Max(bad, end) : Math.Min(bad, end);
            beyond = Look(met, evaluation, use, bad);
            if (!beyond.Holds)
            {
                break;
            }

            if (bad == end)
            {
                return new Found(end, null, true);
            }

            (good, before, bad) = (bad, beyond, bad * use.Step);
        }

        for (int i = 0; i < MostHalvings && Accuracy * Math.Max(good, bad) < Math.Abs(bad - good); i++)
        {
            double middle = Between(good, bad, before.Spare, beyond.Spare, i);
            Point there = Look(met, evaluation, use, middle);
            (good, before, bad, beyond) = there.Holds ? (middle, there, bad, beyond) : (good, before, middle, there);
        }

        return new Found(good, beyond.Fails, beyond.HasFigures);
    }

    /// <summary>Where to look next: somewhat to either side, in turn, of where a straight line through what is to spare at both ends is zero,
    /// so that the two ends close in on it; in the middle every third time, and where no line can be drawn. In the logarithm, unless an end is
    /// zero.</summary>
    private static double Between(double good, double bad, double spare, double lacking, int round)
    {
        bool isLinear = good <= 0 || bad <= 0;
        double from = isLinear ? good : Math.Log(good), to = isLinear ? bad : Math.Log(bad), share = spare / (spare - lacking);
        double aside = (isLinear ? Accuracy * Math.Max(good, bad) : Accuracy) * 0.4 / Math.Abs(to - from);
        double at = round % 3 == 2 || !(0 <= share && share <= 1) ? 0.5
            : Math.Clamp(share + (round % 3 == 0 ? aside : -aside), Math.Min(aside, 0.5), 1 - Math.Min(aside, 0.5));
        double middle = from + ((to - from) * at);
        return isLinear ? middle : Math.Exp(middle);
    }

    /// <summary>The least that is to spare of any limit that is met, as a share of the limit; no number where one has no bound.</summary>
    private static double Spare(IEnumerable<Result> results)
    {
        double least = double.NaN;
        foreach (Result result in results)
        {
            if (result.Verdict is { Margin: { } margin, Limit: { } limit })
            {
                double spare = margin / (limit.SiValue == 0 ? 1 : Math.Abs(limit.SiValue));
                least = least <= spare ? least : spare;
            }
        }

        return least;
    }

    /// <summary>The last value that the design's fields can hold on the way; today's where there is none.</summary>
    private static double End(Use use)
    {
        double good = use.Today, bad = use.First;
        Design today = use.With(good), first = use.With(bad);
        Field<Design>[] moved = [.. DesignFields.Numeric(first).Where(field => field.Range is not null
            && field.SiValue(first) != field.SiValue(today))];
        for (int i = 0; i < MostStrides && IsLegal(use.With(bad)); i++)
        {
            (good, bad) = (bad, bad * use.Step);
        }

        for (int i = 0; i < MostHalvings && 1e-9 * bad < Math.Abs(bad - good); i++)
        {
            double middle = good == 0 ? bad / 2 : Math.Sqrt(good * bad);
            (good, bad) = IsLegal(use.With(middle)) ? (middle, bad) : (good, middle);
        }

        return good;

        bool IsLegal(Design design) => Array.TrueForAll(moved, field => field.Range!.Value.Contains(field.SiValue(design)!.Value));
    }

    /// <summary>What the verdicts say of one value.</summary>
    /// <param name="Fails">What was met and fails; null for nothing.</param>
    /// <param name="HasFigures">False where the design cannot be worked out.</param>
    /// <param name="Spare">See <see cref="LimitsOfUse.Spare"/>; negative where something fails.</param>
    private readonly record struct Point(Result? Fails, bool HasFigures, double Spare)
    {
        public bool Holds => HasFigures && Fails is null;
    }

    private static Point Look(Result[] met, Evaluation? evaluation, Use use, double value)
    {
        if (Evaluator.Judged(use.With(value), evaluation) is not { } judged)
        {
            return new Point(null, false, double.NaN);
        }

        Result? fails = null;
        var changed = new List<Result>(met.Length);
        foreach (Result result in met)
        {
            if (Advisor.Counterpart(result, judged, out Result? now))
            {
                fails ??= now.Verdict.Kind == VerdictKind.Fail ? now : null;
                changed.Add(now);
            }
        }

        return new Point(fails, true, Spare(changed));
    }

    private static void Put(ResultList list, Use use, Found found)
    {
        string value = QuantityText.Format(use.Quantity(use.Today)), today = $"today {value}";
        (string way, string beyond) = use.Step < 1 ? ("down to", "below") : ("up to", "beyond");
        if (found.Fails is { } fails)
        {
            list.Number(use.Id, use.Name, "", use.Quantity(found.Last), Equations.LimitOfUse,
                text: $"{Holds(use, found.Last, way, value)}; {beyond} that, {fails.Id} fails: {fails.Name}");
        }
        else
        {
            string end = QuantityText.Format(use.Quantity(found.Last));
            list.Unbounded(use.Id, use.Name, "", use.Quantity(use.Today).SiUnit, Equations.LimitOfUse, found.HasFigures
                ? found.Last == use.Today
                ? $"{today}; no met requirement can fail because of it"
                : $"{today}; every met requirement still holds {way} {end}"
                : $"{today}; {beyond} {end} the design cannot be evaluated, and no met requirement fails before that");
        }
    }

    /// <summary>How far the limit is from today's value; the leads' is such a factor by itself.</summary>
    private static string Holds(Use use, double limit, string way, string today) =>
        Math.Abs(limit - use.Today) <= Accuracy * use.Today ? $"holds {way} here and no further, today it is {today}"
        : use.Today == 0 ? $"holds {way} here, today it is {today}"
        : use.Id == ResultIds.Limit.Leads ? $"holds {way} here"
        : $"holds {way} here, {QuantityText.FormatNumber(limit / use.Today, 2)} times today's {today}";
}
