using FrontEnd.Advice;
using FrontEnd.Amplifier;
using FrontEnd.Designs;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FsCheck;
using FsCheck.Xunit;
using Xunit;
using Result = FrontEnd.Results.Result;

namespace FrontEnd.Tests.Advice;

public sealed class AdvisorTests
{
    private static Assessment Advised(Design design) => Advisor.Advise(Evaluator.Evaluate(design));

    [Fact]
    public void Advise_TooSmallResistors_NamesTheNextPreferredValueThatMeetsTheLimit()
    {
        Design design = Designs.Gel with { Input = Designs.Gel.Input with { SeriesResistor = Resistance.FromKilohms(10) } };
        Improvement? improvement = Advised(design)["safety.fault_current"].Verdict.Improvement;
        Assert.NotNull(improvement);
        Assert.Contains("68 kΩ", improvement.Change, StringComparison.Ordinal);
        Assert.True(improvement.After!.SiValue <= 50e-6);
    }

    /// <summary>Whoever chose dry contacts, a passive or a driven ground and no buffers keeps them while a change of values does it; where none does, what helps most is named.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Advise_ADryDesign_ChangesValuesBeforeKinds(bool passive)
    {
        Design design = passive ? Designs.Dry with { GroundDrive = Designs.Dry.GroundDrive with { Kind = GroundKind.Passive } } : Designs.Dry;
        Assessment assessment = Evaluator.Evaluate(design), advised = Advisor.Advise(assessment, TestContext.Current.CancellationToken);
        Candidate[] kinds = [.. Candidates.For(design, assessment).Where(one => one.IsOfKind)];
        Assert.Contains(kinds, one => one.Change.StartsWith("gel", StringComparison.Ordinal));
        Result[] failing = [.. advised.Judged.Where(result => result.Verdict is { Kind: VerdictKind.Fail, Improvement: not null })];
        Assert.NotEmpty(failing);
        foreach (Result result in failing)
        {
            Improvement improvement = result.Verdict.Improvement!;
            if (kinds.Any(one => one.Change == improvement.Change))
            {
                // Then no change of a value that spoils nothing meets the requirement.
                Assert.All(
                    Candidates.For(design, assessment).Where(one => !one.IsOfKind),
                    one => Assert.False(
                        Advisor.Advise(assessment, [one], only: result.Id, cancellation: TestContext.Current.CancellationToken).Find(result.Id)!.Verdict.Improvement is { SideEffect: null } other
                        && other.Verdict != VerdictKind.Fail, one.Change));
            }
        }

        // Nothing that keeps the electrodes as they are brings this hum below its limit.
        Assert.NotEqual(VerdictKind.Fail, Assert.IsType<Improvement>(advised["mains.total"].Verdict.Improvement).Verdict);
    }

    /// <summary>What is proposed again and again comes to an end: no lead of a centimetre, no amplifier that nobody sells.</summary>
    [Fact]
    public void Advise_OneAfterTheOther_StaysWithinWhatIsUsual()
    {
        Design design = Designs.Dry;
        for (int step = 0; step < 12 && Advisor.Advise(Evaluator.Evaluate(design), new("mains.total"), TestContext.Current.CancellationToken)["mains.total"].Verdict.Improvement is { } next; step++)
        {
            design = next.Design;
        }

        Assert.True(design.Mains.LeadToMains.Farads > 0.1e-15, $"{design.Mains.LeadToMains.Farads}");
        Assert.True(design.Mains.LoopArea.SquareMetres > 2e-4);
        Assert.True(design.Amplifier.Cmrr.Value <= 140);
    }

    [Property(MaxTest = 6)]
    public void Advise_AnyDesign_EffectIsWhatTheChangedDesignEvaluatesTo(int seed)
    {
        foreach (Result result in Advised(Designs.Varied(seed, 2)).Judged.Where(result => result.Verdict.Improvement is not null))
        {
            Improvement improvement = result.Verdict.Improvement!;
            Assessment changed = Evaluator.Evaluate(improvement.Design);
            if (changed.Find(result.Id) is { } after && result.Verdict.Requirement != "requirements.headroom")
            {
                Assert.Equal(improvement.After, after.Value);
                Assert.Equal(improvement.Verdict, after.Verdict.Kind);
            }
        }
    }

    /// <summary>No suggestion may worsen a safety figure past its limit or connect anything to earth.</summary>
    [Property(MaxTest = 6)]
    public void Advise_AnyDesign_KeepsTheWearerSafe(int seed)
    {
        Design design = Designs.Varied(seed, 3);
        Assessment before = Evaluator.Evaluate(design);
        foreach (Improvement improvement in Advised(design).Judged.Select(result => result.Verdict.Improvement).OfType<Improvement>())
        {
            Assert.True(improvement.Design.Mains.AmplifierToEarth.Farads <= design.Mains.AmplifierToEarth.Farads);
            Assert.Equal(design.Requirements.FaultCurrent, improvement.Design.Requirements.FaultCurrent);
            Assert.Equal(design.Requirements.DrivenGroundCurrent, improvement.Design.Requirements.DrivenGroundCurrent);
            Assert.Equal(design.Supply.Highest, improvement.Design.Supply.Highest);
            Assessment after = Evaluator.Evaluate(improvement.Design);
            foreach (string id in new[] { "safety.fault_current", "safety.driven_ground_current", "safety.shared_fault_current" })
            {
                if (after.Find(id) is { Verdict.Kind: VerdictKind.Fail } worse)
                {
                    Assert.Equal(VerdictKind.Fail, before.Find(id)?.Verdict.Kind);
                    Assert.True(worse.State == ResultState.Unbounded || before[id].State == ResultState.Unbounded || worse.Si <= before[id].Si * (1 + 1e-9), $"{improvement.Change}: {id}");
                }
            }
        }
    }

    /// <summary>What is tried, helpful or not, ties nothing to earth and asks for no other limit.</summary>
    [Property(MaxTest = 30)]
    public void Candidates_OfAnyDesign_TieNothingToEarthAndMoveNoLimit(int seed)
    {
        Design design = Designs.Varied(seed, 3);
        foreach (Candidate candidate in Candidates.For(design, Evaluator.Evaluate(design)))
        {
            Assert.True(candidate.Design.Mains.AmplifierToEarth.Farads <= design.Mains.AmplifierToEarth.Farads, candidate.Change);
            Assert.True(candidate.Design.Mains.BodyToEarth == design.Mains.BodyToEarth, candidate.Change);
            Assert.True(candidate.Design.Requirements == design.Requirements, candidate.Change);
            Assert.True(candidate.Design.Supply.Highest == design.Supply.Highest, candidate.Change);
        }
    }

    /// <summary>Leads without protection resistors have less noise. That is not suggested, however much it helps: a fault would drive more than the limit.</summary>
    [Fact]
    public void Advise_AHelpingChangeThatEndangersTheWearer_IsDropped()
    {
        Design tight = Designs.Gel with { Requirements = Designs.Gel.Requirements with { Noise = VoltagePeakToPeak.FromVolts(1e-9) } };
        Candidate bare = new("no protection resistors", tight with { Input = tight.Input with { SeriesResistor = default } });
        Candidate quiet = new("no current noise", tight with { Amplifier = tight.Amplifier with { InputNoise = default } });
        Assessment assessment = Evaluator.Evaluate(tight), unsafeOne = Evaluator.Evaluate(bare.Design);
        Assert.NotEqual(VerdictKind.Fail, assessment["safety.fault_current"].Verdict.Kind);
        Assert.Equal(VerdictKind.Fail, unsafeOne["safety.fault_current"].Verdict.Kind);
        Assert.True(unsafeOne["noise.total"].Si < assessment["noise.total"].Si);
        Assert.DoesNotContain(Advisor.Advise(assessment, [bare], cancellation: TestContext.Current.CancellationToken).Judged, result => result.Verdict.Improvement is not null);
        Assert.Contains(Advisor.Advise(assessment, [quiet], cancellation: TestContext.Current.CancellationToken).Judged, result => result.Verdict.Improvement is not null);
    }

    [Fact]
    public void Advise_ResistorsAtWhatIsNeeded_AreNeverMadeSmaller()
    {
        foreach (Improvement improvement in Advised(Designs.Gel).Judged.Select(result => result.Verdict.Improvement).OfType<Improvement>())
        {
            Assert.True(Designs.Gel.Input.SeriesResistor.Ohms <= improvement.Design.Input.SeriesResistor.Ohms);
        }
    }

    [Fact]
    public void Sensitivity_ProtectionNoise_MovesWithTheRootOfTheResistor()
    {
        Sensitivity row = Sensitivity.Of(Evaluator.Evaluate(Designs.Gel), new("noise.source.protection-resistors"), TestContext.Current.CancellationToken).Single(row => row.Key == "input.series-resistor");
        Assert.Equal(Math.Sqrt(1.1) - 1, row.Change, 2e-3);
    }

    [Fact]
    public void Sensitivity_UnknownOrWordResult_IsEmpty()
    {
        Assessment assessment = Evaluator.Evaluate(Designs.Gel);
        Assert.Empty(Sensitivity.Of(assessment, new("no.such"), TestContext.Current.CancellationToken));
        Assert.Empty(Sensitivity.Of(assessment, new("mains.signs"), TestContext.Current.CancellationToken));
    }
}
