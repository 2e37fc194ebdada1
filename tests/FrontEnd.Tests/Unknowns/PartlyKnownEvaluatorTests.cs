using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Unknowns;
using Xunit;

namespace FrontEnd.Tests.Unknowns;

/// <summary>Intervals of a design of which some values are not known, against the evaluation of single designs.</summary>
public sealed class PartlyKnownEvaluatorTests
{
    private static UnknownField Open(Design design, string key, double least, double greatest) =>
        new(PartlyKnownDesign.OfDraft(DesignFields.Find(design, key)!), least, greatest) { Source = "test", KnownBy = Fields.KnownBy.Maker };

    private static PartlyKnownDesign With(Design design, params (string Key, double Least, double Greatest)[] open) =>
        new(new DeviceDraft(design, null), [.. open.Select(one => Open(design, one.Key, one.Least, one.Greatest))]);

    /// <summary>One unknown that the noise grows with: the ends are those of the two designs at its ends, and what it does not reach stays a
    /// number.</summary>
    [Fact]
    public void Interval_OfOneUnknown_EndsWhereItsEndsDo()
    {
        Design design = Designs.Dry;
        PartlyKnownDesign open = With(design, ("amplifier.input-noise", 10e-9, 200e-9));
        Assessment assessment = PartlyKnownEvaluator.Evaluate(open);
        Result noise = assessment[ResultIds.Noise.Total];
        Assert.Equal(ResultState.Interval, noise.State);
        Assert.Null(noise.Value);
        Assert.Equal(Evaluator.Evaluate(open.With([0]))[noise.Id].Si, noise.Interval!.Least, 1e-15);
        Assert.Equal(Evaluator.Evaluate(open.With([1]))[noise.Id].Si, noise.Interval.Greatest, 1e-15);
        Assert.True(noise.Interval.Least < noise.Interval.P05 && noise.Interval.P05 < noise.Interval.P95 && noise.Interval.P95 < noise.Interval.Greatest);
        Assert.Equal(ResultState.Number, assessment[ResultIds.Mains.Total].State);
        Assert.Equal(Evaluator.Evaluate(design)[ResultIds.Mains.Total].Si, assessment[ResultIds.Mains.Total].Si);
    }

    /// <summary>The slow way: every draw evaluated one after the other, sorted, counted.</summary>
    [Fact]
    public void Interval_OfSeveralUnknowns_HoldsEveryDraw()
    {
        PartlyKnownDesign open = With(Designs.Dry, ("electrodes.mismatch", 0.1, 1.5), ("mains.lead-to-mains", 0.5e-15, 20e-15), ("ground-drive.kind", 0, 1), ("amplifier.gain", 2, 8));
        Assessment assessment = PartlyKnownEvaluator.Evaluate(open);
        foreach (ResultId id in (ResultId[])[ResultIds.Mains.Total, ResultIds.Noise.Total, ResultIds.Levels.OffsetSurvived])
        {
            double[] all = [.. PartlyKnownEvaluator.Places(4).Select(one => Evaluator.Evaluate(open.With(one))[id].Si).Order()];
            Interval interval = assessment[id].Interval!;
            Assert.Equal(PartlyKnownEvaluator.Draws, all.Length);
            Assert.True(interval.Least <= all[0] && all[^1] <= interval.Greatest, id.Text);
            Assert.InRange(interval.P05, all[19], all[20]);
            Assert.InRange(interval.P95, all[379], all[380]);
        }

        Result margin = assessment[ResultIds.Drive.WorstPhaseMargin];   // of those whose ground is driven alone
        Assert.NotEqual(ResultState.Missing, margin.State);
    }

    /// <summary>Which node clips first rests on what is not known: the figure that is judged is the least headroom of each draw, whichever node has it,
    /// and it says which. The design in the middle has it at one node alone.</summary>
    [Fact]
    public void Headroom_OverWhatIsUnknown_IsThatOfTheWorstNodeOfEachDesign()
    {
        Design design = Designs.Dry with { Converter = Designs.Dry.Converter with { FullScale = VoltagePeakToPeak.FromVolts(2) } };
        PartlyKnownDesign open = With(design, ("amplifier.gain", 1.5, 12), ("converter.full-scale", 0.5, 3));
        Assessment assessment = PartlyKnownEvaluator.Evaluate(open);
        Result least = assessment[ResultIds.Levels.LeastHeadroom];
        (double Headroom, string Node)[] each = [.. PartlyKnownEvaluator.Places(2).Concat([[0, 0], [0, 1], [1, 0], [1, 1]]).Select(place =>
            Evaluator.Evaluate(PartlyKnownEvaluator.Drawn(open, place)).Results.Where(result => ResultIds.Levels.IsHeadroom(result.Id) && result.State == ResultState.Number)
                .Select(result => (result.Si, result.Id.Text.Split('.')[1].Replace('-', ' '))).MinBy(one => one.Si))];
        Assert.Equal(each.Min(one => one.Headroom), least.Interval!.Least, 1e-9);
        Assert.Equal(each.Max(one => one.Headroom), least.Interval.Greatest, 1e-9);
        string[] nodes = [.. each.Select(one => one.Node).Distinct()];
        Assert.InRange(nodes.Length, 2, 5);
        Assert.All(nodes, node => Assert.Contains($"at {node} in {each.Count(one => one.Node == node)}", least.Text, StringComparison.Ordinal));
        Assert.All(nodes, node => Assert.Contains(node, least.Name, StringComparison.Ordinal));
        Assert.Equal("requirements.headroom", least.Verdict.Requirement);
        Assert.Same(least, Assert.Single(assessment.Judged, result => result.Verdict.Requirement == "requirements.headroom"));
        Assert.Contains("divider", least.Verdict.ClosesInShort ?? "divider", StringComparison.Ordinal);
    }

    /// <summary>Where every design fails, each at another node, it is not met, though no single node fails in all of them.</summary>
    [Fact]
    public void Headroom_ThatEveryDesignLacksAtOneNodeOrAnother_IsNotMet()
    {
        Design design = Designs.Dry with { Requirements = Designs.Dry.Requirements with { Headroom = Decibels.FromStated(40) } };
        Assessment assessment = PartlyKnownEvaluator.Evaluate(With(design, ("amplifier.gain", 1.5, 12)));
        Assert.Equal(VerdictKind.Fail, assessment[ResultIds.Levels.LeastHeadroom].Verdict.Kind);
    }

    [Fact]
    public void Verdict_IsPassWhereAllPass_FailWhereNonePasses_OpenBetween()
    {
        VerdictKind Of(double least, double greatest) => PartlyKnownEvaluator.Evaluate(With(
            Designs.Dry with { Requirements = new() { Noise = VoltagePeakToPeak.FromVolts(12e-6) } }, ("amplifier.input-noise", least, greatest)))[ResultIds.Noise.BoardShare].Verdict.Kind;

        Assert.Equal(VerdictKind.Pass, Of(1e-9, 2e-9));
        Assert.Equal(VerdictKind.Fail, Of(2e-6, 3e-6));
        Assert.Equal(VerdictKind.Open, Of(1e-9, 3e-6));
    }

    /// <summary>What closes it is right: readings below the first number belong to designs that meet the requirement, all of them.</summary>
    [Fact]
    public void OpenNoise_IsDecidedByTheAmplifier_AndClosedByShortedInputs()
    {
        PartlyKnownDesign open = With(Designs.Dry with { Requirements = new() { Noise = VoltagePeakToPeak.FromVolts(12e-6) } }, ("amplifier.input-noise", 1e-9, 3e-6), ("mains.field", 1e-9, 1e-7));
        Verdict verdict = PartlyKnownEvaluator.Evaluate(open)[ResultIds.Noise.BoardShare].Verdict;
        Assert.Equal("amplifier.input-noise", verdict.DecidedBy);
        Assert.StartsWith("inputs shorted", verdict.ClosesBy, StringComparison.Ordinal);
    }

    /// <summary>Noise of the electrodes' resistance times the amplifier's current is as good as none with wires: a recording with shorted inputs whose
    /// reading would hardly ever decide is not proposed.</summary>
    [Fact]
    public void OpenNoise_ThatShortedInputsDoNotShow_IsNotClosedByThem()
    {
        Design design = Designs.Dry with { Requirements = new() { Noise = VoltagePeakToPeak.FromVolts(12e-6) }, Input = Designs.Dry.Input with { SeriesResistor = Resistance.FromKilohms(1) } };
        PartlyKnownDesign open = With(design, ("amplifier.input-noise", 10e-9, 100e-9), ("amplifier.current-noise", 1e-15, 5e-12));
        Result result = PartlyKnownEvaluator.Evaluate(open)[ResultIds.Noise.BoardShare];
        Assert.Equal(VerdictKind.Open, result.Verdict.Kind);
        Assert.StartsWith("ask the maker", result.Verdict.ClosesBy, StringComparison.Ordinal);
    }

    /// <summary>Resistors between 200 kΩ and 1 MΩ leave every draw below the quoted limit, and still nobody knows.</summary>
    [Fact]
    public void Safety_OnAnUnknownResistor_IsNeverPassed()
    {
        PartlyKnownDesign open = With(Designs.Dry, ("input.series-resistor", 200e3, 1e6));
        Verdict verdict = PartlyKnownEvaluator.Evaluate(open)[ResultIds.Safety.FaultCurrent].Verdict;
        Assert.Equal(VerdictKind.Open, verdict.Kind);
        Assert.Equal("input.series-resistor", verdict.DecidedBy);
        Assert.StartsWith("ask the maker", verdict.ClosesBy, StringComparison.Ordinal);
        Assert.Equal(VerdictKind.Pass, Evaluator.Evaluate(open.With([0]))[ResultIds.Safety.FaultCurrent].Verdict.Kind);
    }

    [Fact]
    public void SameDesign_EvaluatedTwice_GivesTheSameIntervals()
    {
        PartlyKnownDesign open = With(Designs.Dry, ("electrodes.mismatch", 0.1, 1.5), ("amplifier.gain", 2, 8));
        Assert.Equal(PartlyKnownEvaluator.Evaluate(open).Results.Select(result => result.Interval), PartlyKnownEvaluator.Evaluate(open).Results.Select(result => result.Interval));
    }

    /// <summary>What only a driven ground has says so; what every draw has says nothing.</summary>
    [Fact]
    public void Figure_OfAGroundThatMayBePassive_SaysThatItHoldsOnlyIfItIsDriven()
    {
        Design design = Designs.Dry with { GroundDrive = Designs.Dry.GroundDrive with { Kind = FrontEnd.Amplifier.GroundKind.Driven } };
        Assessment assessment = PartlyKnownEvaluator.Evaluate(With(design, ("ground-drive.kind", 0, 1), ("electrodes.mismatch", 0.1, 1.5)));
        Assert.EndsWith(", only if ground-drive.kind is driven", assessment[ResultIds.Drive.WorstPhaseMargin].Name, StringComparison.Ordinal);
        Assert.EndsWith(", only if ground-drive.kind is driven", assessment[ResultIds.Safety.DrivenGroundCurrent].Name, StringComparison.Ordinal);
        Assert.DoesNotContain("only if", assessment[ResultIds.Mains.Total].Name, StringComparison.Ordinal);
        Assert.DoesNotContain("only if", PartlyKnownEvaluator.Evaluate(With(design, ("electrodes.mismatch", 0.1, 1.5)))[ResultIds.Drive.WorstPhaseMargin].Name, StringComparison.Ordinal);
    }

    /// <summary>A limit by default stands for wet electrodes alone: where it is not known whether they are wet, the verdict is neither a fail nor a pass, and
    /// shows the limit that may apply. With electrodes that are surely dry none does, and with a requirement that one does.</summary>
    [Fact]
    public void Limit_ThatMayNotApply_IsShownAndFailsNothing()
    {
        Electrodes.ElectrodeSet set = Designs.Dry.Electrodes;
        Design design = Designs.Dry with
        {
            Electrodes = set with { Active = set.Active with { Contact = null }, Reference = set.Reference with { Contact = Electrodes.ContactKind.Wet } },
        };
        Verdict Of(Design one, double least, double greatest) =>
            PartlyKnownEvaluator.Evaluate(With(one, ("electrodes.active.contact-resistance", least, greatest)))[ResultIds.Noise.BoardShare].Verdict;

        Verdict open = Of(design, 5e3, 2e6);
        Assert.Equal(VerdictKind.Open, open.Kind);
        Assert.Null(open.Limit);
        Assert.True(open.LimitSpan!.OrNone);
        Assert.True(open.LimitIsGreatest);
        Assert.Equal(Judge.DefaultNoise(design).Volts, open.LimitSpan.Least.SiValue, 1e-15);
        Assert.StartsWith("set requirements.noise", open.ClosesBy, StringComparison.Ordinal);
        Assert.Equal(VerdictKind.NotJudged, Of(design, 500e3, 2e6).Kind);
        Assert.Null(Of(design, 500e3, 2e6).LimitSpan);
        Verdict held = Of(design with { Requirements = new() { Noise = VoltagePeakToPeak.FromVolts(1e-3) } }, 5e3, 2e6);
        Assert.Equal((VerdictKind.Pass, 1e-3), (held.Kind, held.Limit!.SiValue));
    }

    /// <summary>A limit that an unknown field sets is its range, and no number in the middle of it: the resolution by a converter's bits, hum by the smallest
    /// signal.</summary>
    [Fact]
    public void Limit_FromAnUnknownField_IsItsRange()
    {
        Verdict bits = PartlyKnownEvaluator.Evaluate(With(Designs.Dry, ("converter.bits", 4, 20)))[ResultIds.Converter.BitsNeeded].Verdict;
        Assert.Null(bits.Limit);
        Assert.Equal((4, 20), (bits.LimitSpan!.Least.SiValue, bits.LimitSpan.Greatest.SiValue));
        Assert.Equal((VerdictKind.Open, "converter.bits"), (bits.Kind, bits.DecidedBy));
        Verdict known = PartlyKnownEvaluator.Evaluate(With(Designs.Dry, ("amplifier.input-noise", 1e-9, 2e-9)))[ResultIds.Converter.BitsNeeded].Verdict;
        Assert.Equal(Designs.Dry.Converter.Bits, known.Limit!.SiValue);
        Assert.Null(known.LimitSpan);

        Design design = Designs.Dry with { Requirements = Designs.Dry.Requirements with { MainsRecorded = null } };
        Verdict hum = PartlyKnownEvaluator.Evaluate(With(design, ("signal.smallest", 1e-6, 4e-6)))[ResultIds.Mains.Recorded].Verdict;
        Assert.Null(hum.Limit);
        Assert.Equal(0.5e-6, hum.LimitSpan!.Least.SiValue, 1e-12);
        Assert.Equal(2e-6, hum.LimitSpan.Greatest.SiValue, 1e-12);
    }

    /// <summary>The ends of the limit are tried against the ends of the figure: a resolution that the least of the unknown bits does not reach is no
    /// pass.</summary>
    [Fact]
    public void Limit_FromAnUnknownField_IsHeldAgainstAtItsEnds()
    {
        Design design = Designs.Dry;
        double needed = Evaluator.Evaluate(design)[ResultIds.Converter.BitsNeeded].Si;
        Assert.Equal(VerdictKind.Open, PartlyKnownEvaluator.Evaluate(With(design, ("converter.bits", needed - 0.001, needed + 12)))[ResultIds.Converter.BitsNeeded].Verdict.Kind);
    }
}
