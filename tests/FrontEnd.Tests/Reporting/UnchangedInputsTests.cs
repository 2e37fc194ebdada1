using FrontEnd.Advice;
using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Fields;
using FrontEnd.Identity;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Tests.Reporting;

/// <summary>Budgets taken over from another design are those that the design would have itself.</summary>
public sealed class UnchangedInputsTests
{
    [Property(MaxTest = 150)]
    public void Judged_AnyFieldChanged_IsTheSameWithAndWithoutTheOtherDesignsBudgets(int seed)
    {
        var random = new Random(seed);
        Design design = Designs.All[random.Next(Designs.All.Count)], changed = design;
        Field<Design>[] fields = [.. DesignFields.Numeric(design).Where(field => field.Range is not null)];
        for (int i = random.Next(3); 0 <= i; i--)
        {
            Field<Design> field = fields[random.Next(fields.Length)];
            double value = field.SiValue(changed)!.Value * (0.5 + random.NextDouble());
            changed = field.Range!.Value.Contains(value) ? field.WithSiValue(changed, value) : changed;
        }

        AssertSame(design, changed);
    }

    /// <summary>Every change that the adviser tries.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Judged_EveryCandidate_IsTheSameWithAndWithoutTheDesignsBudgets(int which)
    {
        Design design = Designs.All[which];
        Assert.All(Candidates.For(design, Evaluator.Evaluate(design)), candidate => AssertSame(design, candidate.Design));
    }

    [Fact]
    public void Of_WhatABudgetDoesNotRead_LeavesItAndNoOther()
    {
        Design design = Designs.Dry;
        Design offset = design with { Electrodes = design.Electrodes with { Offset = Voltage.FromMillivolts(1) } };
        Design field = design with { Mains = design.Mains with { Field = MagneticFluxDensity.FromTeslas(1e-6) } };
        Design contact = design with { Electrodes = design.Electrodes with { Active = design.Electrodes.Active.Scaled(2) } };
        Assert.Equal((true, true, true), Of(offset));
        Assert.Equal((true, false, true), Of(field));
        Assert.Equal((false, false, false), Of(contact));

        (bool, bool, bool) Of(Design other) =>
            (UnchangedInputs.OfNoise(design, other), UnchangedInputs.OfMains(design, other), UnchangedInputs.OfDrive(design, other));
    }

    private static void AssertSame(Design design, Design changed)
    {
        Dictionary<ResultId, Result>? fresh = Evaluator.Judged(changed), taken = Evaluator.Judged(changed, Evaluator.Whole(design));
        Assert.Equal(fresh?.Keys.Order(Comparer<ResultId>.Create((a, b) => string.CompareOrdinal(a.Text, b.Text))), taken?.Keys.Order(Comparer<ResultId>.Create((a, b) => string.CompareOrdinal(a.Text, b.Text))));
        foreach ((ResultId id, Result result) in fresh ?? [])
        {
            Assert.Equal((result.State, result.Value, result.Verdict.Kind, result.Verdict.Because, result.Verdict.Dominates), (taken![id].State, taken[id].Value, taken[id].Verdict.Kind, taken[id].Verdict.Because, taken[id].Verdict.Dominates));
        }
    }
}
