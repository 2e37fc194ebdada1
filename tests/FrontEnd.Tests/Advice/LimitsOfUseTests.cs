using FrontEnd.Advice;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using Xunit;

namespace FrontEnd.Tests.Advice;

/// <summary>Limits of use a second time: the whole design evaluated at the limit and a little beyond it.</summary>
public sealed class LimitsOfUseTests
{
    private static readonly string[] Ids = ["limit.contact", "limit.mismatch", "limit.offset", "limit.leads", "limit.field", "limit.battery"];

    // Their steps and offsets leave room, so that each limit is met by something.
    private static readonly Design[] Cases =
    [
        .. Designs.All.Select(design => design with
        {
            Electrodes = design.Electrodes with { Offset = Voltage.FromMillivolts(20), Mismatch = Ratio.FromFraction(0.1) },
            Requirements = design.Requirements with { Offset = Voltage.FromMillivolts(40) },
        }),
    ];

    public static IEnumerable<TheoryDataRow<int>> Numbers => Enumerable.Range(0, Cases.Length).Select(i => new TheoryDataRow<int>(i));

    private static Design With(Design design, string id, double value)
    {
        ElectrodeSet set = design.Electrodes;
        switch (id)
        {
            case "limit.contact":
                double factor = value / set.Active.DcResistance.Ohms;
                return design with { Electrodes = set with { Active = Grown(set.Active, factor), Reference = Grown(set.Reference, factor), Ground = set.Ground is null ? null : Grown(set.Ground, factor) } };
            case "limit.mismatch":
                return design with { Electrodes = set with { Mismatch = Ratio.FromFraction(value) } };
            case "limit.offset":
                return design with { Electrodes = set with { Offset = Voltage.FromVolts(value) } };
            case "limit.leads":
                return design with
                {
                    Mains = design.Mains with { LeadToMains = Capacitance.FromFarads(design.Mains.LeadToMains.Farads * value) },
                    Input = design.Input with { LeadToCommon = Capacitance.FromFarads(design.Input.LeadToCommon.Farads * value) },
                };
            case "limit.field":
                return design with { Mains = design.Mains with { Field = MagneticFluxDensity.FromTeslas(value) } };
            default:
                return design with { Supply = design.Supply with { Lowest = Voltage.FromVolts(value) } };
        }
    }

    /// <summary>Resistances grow, time constants stay.</summary>
    private static Electrode Grown(Electrode electrode, double factor) => electrode with
    {
        SeriesResistance = Resistance.FromOhms(electrode.SeriesResistance.Ohms * factor),
        ContactResistance = Resistance.FromOhms(electrode.ContactResistance.Ohms * factor),
        ContactCapacitance = Capacitance.FromFarads(electrode.ContactCapacitance.Farads / factor),
        SecondResistance = electrode.SecondResistance is { } second ? Resistance.FromOhms(second.Ohms * factor) : null,
        SecondCapacitance = electrode.SecondCapacitance is { } across ? Capacitance.FromFarads(across.Farads / factor) : null,
        Contact = electrode.EffectiveContact,
    };

    private static string[] Met(Assessment assessment) =>
        [.. assessment.Judged.Where(result => result.Verdict.Kind is VerdictKind.Pass or VerdictKind.Marginal).Select(result => result.Verdict.Requirement!).Distinct()];

    private static string[] Failing(Assessment assessment) =>
        [.. assessment.Judged.Where(result => result.Verdict.Kind == VerdictKind.Fail).Select(result => result.Verdict.Requirement!).Distinct()];

    [Theory]
    [MemberData(nameof(Numbers))]
    public void Limits_AtThemEverythingThatIsMetStillIs_ALittleBeyondOneIsNot(int number)
    {
        Design design = Cases[number];
        Assessment today = Evaluator.Evaluate(design), all = LimitsOfUse.Add(today, TestContext.Current.CancellationToken);
        string[] met = [.. Met(today).Except(Failing(today))];
        int limits = 0;
        foreach (string id in Ids)
        {
            Result limit = all[id];
            if (limit.State == ResultState.Unbounded)
            {
                Assert.Contains("met requirement", limit.Text, StringComparison.Ordinal);
                continue;
            }

            limits++;
            double beyond = id == "limit.battery" ? limit.Si * 0.99 : limit.Si * 1.01;
            Assert.Empty(Failing(Evaluator.Evaluate(With(design, id, limit.Si))).Intersect(met));
            Assessment there = Evaluator.Evaluate(With(design, id, beyond));
            Assert.NotEmpty(Failing(there).Intersect(met));
            Result named = there.Judged.First(result => result.Verdict.Kind == VerdictKind.Fail && limit.Text!.Contains($" that, {result.Id} fails", StringComparison.Ordinal));
            Assert.StartsWith(id == "limit.battery" ? "holds down to here" : "holds up to here", limit.Text, StringComparison.Ordinal);
            Assert.Contains(named.Name, limit.Text, StringComparison.Ordinal);
        }

        Assert.True(3 <= limits, $"{limits} limits");
    }

    [Fact]
    public void Limits_OfAPlainEvaluation_AreNotThereAndAdviceBringsThem()
    {
        Assessment plain = Evaluator.Evaluate(Designs.Dry);
        Assert.All(Ids, id => Assert.Null(plain.Find(id)));
        Assessment advised = Advisor.Advise(plain, cancellation: TestContext.Current.CancellationToken);
        Assert.All(Ids, id => Assert.NotNull(advised.Find(id)));
        Assert.Same(advised, LimitsOfUse.Add(advised, TestContext.Current.CancellationToken));
        Assert.Equal(plain.Results.Count + Ids.Length, advised.Results.Count);
    }

    /// <summary>Leads without any capacitance cannot have more of it; a design that meets nothing has nothing to lose.</summary>
    [Fact]
    public void Limits_WhereNothingCanFail_AreUnbounded()
    {
        Design bare = Designs.Dry with { Mains = Designs.Dry.Mains with { LeadToMains = default }, Input = Designs.Dry.Input with { LeadToCommon = default } };
        Result leads = LimitsOfUse.Add(Evaluator.Evaluate(bare), TestContext.Current.CancellationToken)["limit.leads"];
        Assert.Equal((ResultState.Unbounded, "1"), (leads.State, leads.Unit));
        Assert.Contains("no met requirement can fail because of it", leads.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Limits_OfADesignWithoutFigures_AreNotLookedFor()
    {
        Design contradictory = Designs.Dry with { Band = new Band("band", Frequency.FromHertz(40), Frequency.FromHertz(1)) };
        Assessment assessment = Evaluator.Evaluate(contradictory);
        Assert.False(assessment.HasFigures);
        Assert.Same(assessment, LimitsOfUse.Add(assessment, TestContext.Current.CancellationToken));
    }

    /// <summary>Gel of 20 kΩ stays gel at 200 kΩ: neither does its mismatch double nor does its noise go unjudged, as a dry electrode's would.</summary>
    [Fact]
    public void Contact_OfAWetElectrode_StaysWetHoweverLarge()
    {
        Design design = Designs.Gel with { Electrodes = Designs.Gel.Electrodes with { Offset = default, Mismatch = null } };
        Assessment today = Evaluator.Evaluate(design);
        Result limit = LimitsOfUse.Add(today, TestContext.Current.CancellationToken)["limit.contact"];
        Design held = design with { Electrodes = design.Electrodes with { Mismatch = Ratio.FromFraction(0.5) } };
        Assert.Equal(limit.Si, LimitsOfUse.Add(Evaluator.Evaluate(held), TestContext.Current.CancellationToken)["limit.contact"].Si, 1e-9 * limit.Si);
        Assert.Empty(Failing(Evaluator.Evaluate(With(held, "limit.contact", limit.Si))).Except(Failing(today)));
    }

    [Fact]
    public void Sensitivity_OfALimit_IsNotLookedFor() =>
        Assert.Empty(Sensitivity.Of(LimitsOfUse.Add(Evaluator.Evaluate(Cases[1]), TestContext.Current.CancellationToken), new("limit.offset"), TestContext.Current.CancellationToken));
}
