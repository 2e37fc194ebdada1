using FrontEnd.Bench;
using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Findings;
using FrontEnd.Numbers;
using FrontEnd.Quantities;
using FrontEnd.Results;
using FrontEnd.Text;
using FrontEnd.Unknowns;
using Xunit;

namespace FrontEnd.Tests.Bench;

/// <summary>Recordings on a fixture of designs of which some values are not known.</summary>
public sealed class NarrowingTests
{
    private static readonly (string Key, double Least, double Greatest)[] Open =
        [("amplifier.input-noise", 10e-9, 1e-6), ("electrodes.active.excess-density", 1e-13, 1e-10), ("mains.lead-to-mains", 0.5e-15, 20e-15)];

    private static PartlyKnownDesign Design { get; } = Of(Designs.Dry, Open);

    private static PartlyKnownDesign Of(Design design, params (string Key, double Least, double Greatest)[] open) =>
        new(new DeviceDraft(design, null),
        [
            .. open.Select(one => new UnknownField(PartlyKnownDesign.OfDraft(DesignFields.Find(design, one.Key)!), one.Least, one.Greatest)
                { Source = "test", KnownBy = FrontEnd.Fields.KnownBy.Maker, IsStated = true }),
        ]);

    private static FixtureRecording Reading(double rms, KnownFixture? fixture = null, bool areSteps = false) => new(fixture ?? KnownFixture.Shorted, rms, areSteps, IsFiltered: true)
    {
        Length = Duration.FromSeconds(60), Spread = Ratio.FromFraction(0.01), Lines = [], Taken = "made up",
    };

    /// <summary>The bench's own prediction for the design in the middle is the middle's here.</summary>
    [Fact]
    public void Prediction_OfOneDesign_IsTheBenchs()
    {
        Design one = Design.With([0.5, 0.5, 0.5]);
        foreach (string test in KnownFixture.Tests)
        {
            BenchReading plan = BenchPlan.Of(one).Readings.Single(reading => reading.Name == test);
            double least = plan.Least!.Value / (1 - BenchPlan.NoiseTolerance - (2 * plan.Spread));   // what wires read: the least of the two that the test allows
            double mine = new FixturePrediction(one, 0, KnownFixture.Named(test)!, filtered: true).Rms;
            Assert.Equal(1, mine / (test == BenchPlan.Shorted ? least : plan.Expected!.SiValue), test == BenchPlan.Shorted ? 0.02 : 1e-9);
        }
    }

    /// <summary>The device's own value lies in what is left of its range; what a fixture does not reach stays as it is.</summary>
    [Theory]
    [InlineData(0.5, 4)]   // other noise is as large there
    [InlineData(0.8, 2)]
    public void Noise_OfADeviceWithinTheRanges_NarrowsWhatMakesIt(double place, double factor)
    {
        double truth = (double)FrontEnd.Fields.FieldKinds.SiValue(Design.Unknowns[0].At(place))!;
        double rms = new FixturePrediction(Design.With([place, 0.5, 0.5]), 0, KnownFixture.Shorted, filtered: true).Rms;
        Narrowing narrowing = Narrowing.Of(Design, Reading(rms), [], TestContext.Current.CancellationToken);
        Assert.Null(narrowing.Contradiction);
        Assert.Equal(PartlyKnownEvaluator.Draws, narrowing.Drawn);
        Assert.InRange(narrowing.Agree, Narrowing.FewestDraws, PartlyKnownEvaluator.Draws / 4);
        NarrowedField noise = narrowing.Fields[0];
        Assert.True(noise.IsNarrower);
        Assert.InRange(truth, noise.After.Least, noise.After.Greatest);
        Assert.True(noise.After.Greatest / noise.After.Least < factor);
        Assert.All(narrowing.Fields.Skip(1), field => Assert.Same(field.Before, field.After));
    }

    /// <summary>Counted the slow way: every draw by itself, for the same draws as the evaluation's.</summary>
    [Fact]
    public void Draws_ThatAgree_AreThoseWithinTheToleranceOfTheMeasuredNoise()
    {
        double[] rms = [.. PartlyKnownEvaluator.Places(3).Select(one => new FixturePrediction(Design.With(one), 0, KnownFixture.Of(Resistance.FromKilohms(10)), filtered: true).Rms)];
        double measured = rms.Order().ElementAt(200);
        int agree = rms.Count(one => Math.Abs((measured / one) - 1) <= 0.22);
        Narrowing narrowing = Narrowing.Of(Design, Reading(measured, KnownFixture.Of(Resistance.FromKilohms(10))), [], TestContext.Current.CancellationToken);
        Assert.Equal(agree, narrowing.Agree);
        Assert.Equal(rms.Min(), narrowing.Predicted.Least, 1e-15);
        Assert.Equal(rms.Max(), narrowing.Predicted.Greatest, 1e-15);
    }

    /// <summary>Steps are each draw's own: of a converter whose range is not known they tell noise over range.</summary>
    [Fact]
    public void Steps_AreWorthWhatEachDrawSays()
    {
        PartlyKnownDesign open = Of(Designs.Dry, ("converter.full-scale", 1, 8), ("amplifier.input-noise", 10e-9, 1e-6));
        FixturePrediction truth = new(open.With([0.5, 0.9]), 0, KnownFixture.Shorted, filtered: true);
        Narrowing inSteps = Narrowing.Of(open, Reading(truth.Rms / truth.VoltsPerStep, areSteps: true), [], TestContext.Current.CancellationToken);
        Narrowing inVolts = Narrowing.Of(open, Reading(truth.Rms), [], TestContext.Current.CancellationToken);
        Assert.Null(inSteps.Contradiction);
        Assert.NotEqual(inVolts.Agree, inSteps.Agree);
        Assert.Equal(truth.Rms, inSteps.Measured.Volts, 1e-3 * truth.Rms);
    }

    /// <summary>Which recording to make: what a resistor's fixture alone brings out is not looked for with wires, what most makes narrower stands first,
    /// and what no fixture reaches is no reason to record anything.</summary>
    [Fact]
    public void Choice_OfRecordings_NamesThoseThatNarrowAndNoOthers()
    {
        CancellationToken token = TestContext.Current.CancellationToken;
        IReadOnlyList<RecordingChoice> current = RecordingChoice.Of(Of(Designs.Dry, ("amplifier.current-noise", 1e-15, 200e-15), ("mains.lead-to-mains", 0.5e-15, 20e-15)), cancellation: token);
        Assert.Equal("1M", current[0].Word);
        Assert.DoesNotContain(current, one => one.Word == BenchPlan.Shorted);
        Assert.All(current, one => Assert.Equal(["amplifier.current-noise"], one.Keys));
        Assert.All(current.Zip(current.Skip(1)), pair => Assert.True(pair.Second.Narrower <= pair.First.Narrower));
        PartlyKnownDesign open = Of(Designs.Dry, ("amplifier.current-noise", 1e-15, 200e-15));
        double middle = new FixturePrediction(open.With([0.9]), 0, KnownFixture.Of(Resistance.FromMegohms(1)), filtered: true).Rms;
        Assert.DoesNotContain(RecordingChoice.After(Narrowing.Of(open, Reading(middle, KnownFixture.Of(Resistance.FromMegohms(1))), [], token), token), one => one.Word == "1M");
        Assert.Empty(RecordingChoice.Of(Of(Designs.Dry, ("mains.lead-to-mains", 0.5e-15, 20e-15), ("mains.field", 1e-9, 1e-7)), cancellation: token));
        Assert.Empty(RecordingChoice.Of(Of(Designs.Dry, ("amplifier.input-noise", 99e-9, 101e-9)), cancellation: token));
    }

    /// <summary>The slow way: readings made one after the other, each held against the file as a measured one is.</summary>
    [Fact]
    public void Choice_OfARecording_IsWhatItsReadingsNarrow()
    {
        CancellationToken token = TestContext.Current.CancellationToken;
        RecordingChoice shorted = Assert.Single(RecordingChoice.Of(Design, cancellation: token), one => one.Word == BenchPlan.Shorted);
        double[] readings = [.. PartlyKnownEvaluator.Places(3).Select(one => new FixturePrediction(Design.With(one), 0, KnownFixture.Shorted, filtered: true).Rms).Order()];
        FixtureRecording like = Reading(1);
        double spread = new FixturePrediction(Design.With([0.5, 0.5, 0.5]), 0, KnownFixture.Shorted, filtered: true).Spread(Duration.FromSeconds(60));
        Narrowing[] each = [.. Enumerable.Range(0, 40).Select(at => Narrowing.Of(Design, like with { Rms = readings[(10 * at) + 5], Spread = Ratio.FromFraction(spread) }, [], token))];
        Assert.Equal(each.Count(one => one.Fields.Any(field => field.IsNarrower)) / 40.0, shorted.Share, 1e-9);
        Assert.Equal(each.Average(one => one.Fields.Sum(field => field.Narrower)), shorted.Narrower, 1e-9);
    }

    /// <summary>Ten times what any draw gives: the coarse converter that the file states would explain it.</summary>
    [Fact]
    public void Noise_ThatNoDrawGives_ContradictsWhatTheFileStates()
    {
        Design coarse = Designs.Dry with { Converter = Designs.Dry.Converter with { Bits = 10, Noise = null } };
        PartlyKnownDesign open = Of(coarse, Open);
        double most = Narrowing.Of(open, Reading(1e-6), [], TestContext.Current.CancellationToken).Predicted.Greatest;
        Narrowing narrowing = Narrowing.Of(open, Reading(10 * most), ["converter.bits", "converter.rate", "signal.smallest", "amplifier.input-noise"], TestContext.Current.CancellationToken);
        Assert.Equal(0, narrowing.Agree);
        Assert.Equal(Messages.ContradictsFacts, narrowing.Contradiction!.Code);
        Assert.Contains("converter.bits 10", narrowing.Contradiction.Note, StringComparison.Ordinal);
        Assert.DoesNotContain("signal.smallest", narrowing.Contradiction.Note, StringComparison.Ordinal);
        Assert.All(narrowing.Fields, field => Assert.False(field.IsNarrower));
    }

    /// <summary>No verdict that was answered is open afterwards, and no interval is wider, in factors, than it was; one that rests on what was narrowed is
    /// much narrower.</summary>
    [Fact]
    public void Check_OfTheNarrowedDesign_AnswersAtLeastAsMuch()
    {
        double rms = new FixturePrediction(Design.With([0.6, 0.5, 0.5]), 0, KnownFixture.Shorted, filtered: true).Rms;
        Narrowing narrowing = Narrowing.Of(Design, Reading(rms), [], TestContext.Current.CancellationToken);
        Assessment before = PartlyKnownEvaluator.Evaluate(Design), after = PartlyKnownEvaluator.Evaluate(narrowing.Narrowed);
        Assert.True(OpenOf(after) <= OpenOf(before));
        foreach (Result was in before.Results.Where(result => result.Interval is { Least: > 0 } && double.IsFinite(result.Interval.Greatest) && result.Unit != "dB"))
        {
            if (after.Find(was.Id)!.Interval is { } now)
            {
                Assert.True(now.Greatest / now.Least <= 1.02 * was.Interval!.Greatest / was.Interval.Least, $"{was.Id}: {was.Interval} {now}");
            }
        }

        Interval wide = before[FrontEnd.Identity.ResultIds.Noise.BoardShare].Interval!, narrow = after[FrontEnd.Identity.ResultIds.Noise.BoardShare].Interval!;
        Assert.True(narrow.Greatest - narrow.Least < 0.5 * (wide.Greatest - wide.Least));

        static int OpenOf(Assessment assessment) => assessment.Judged.Count(result => result.Verdict.Kind == VerdictKind.Open);
    }

    /// <summary>White noise of a known rms; a line in the band is no noise of the board.</summary>
    [Theory]
    [InlineData(false, 0)]
    [InlineData(false, 5e-6)]
    [InlineData(true, 5e-6)]
    public void Recording_OfWhiteNoise_GivesItsRmsWithoutTheLine(bool areSteps, double line)
    {
        double rate = Design.Given.Design.Converter.Rate.Hertz, step = areSteps ? 1e-7 : 1;
        (double low, double high) = (Design.Given.Design.Band.Low.Hertz, Design.Given.Design.Band.High.Hertz);
        (FixtureRecording? reading, IReadOnlyList<Finding> findings) = FixtureRecording.Of(Design, KnownFixture.Shorted, White(rate, 60, step, line, areSteps));
        Assert.Empty(findings);
        double expected = 2e-6 * Math.Sqrt((high - low) / (rate / 2)) / step;
        Assert.InRange(reading!.Rms / expected, 0.95, 1.05);
        Assert.Equal(line > 0, reading.Lines.Count > 0);
        Assert.InRange(reading.Spread.Fraction, 0.001, 0.1);
        Assert.Equal(BenchPlan.NoiseTolerance + (2 * reading.Spread.Fraction), reading.Width.Fraction, 1e-12);
    }

    [Fact]
    public void Recording_ThatTellsNothing_IsAFinding()
    {
        double rate = Design.Given.Design.Converter.Rate.Hertz;
        Assert.Equal(Messages.NoNoiseInBand, Code(Design, new Recording("a", Frequency.FromHertz(rate), new double[(int)(60 * rate)])));
        Assert.Equal("FE0711", Code(Design, White(rate, 2, 1, 0, false)));
        Assert.Equal("FE0712", Code(Design, White(2 * rate, 60, 1, 0, false)));
        Assert.Equal(Messages.RateUnknown, Code(Of(Designs.Dry, ("converter.rate", 100, 1000)), White(rate, 60, 1, 0, false)));
        double[] cut = [.. Samples(rate, 60, 1, 0).Select(sample => Math.Clamp(sample, -2e-6, 2e-6))];
        Assert.Equal(Messages.AtLimits, Code(Design, new Recording("a", Frequency.FromHertz(rate), cut)));

        static string Code(PartlyKnownDesign design, Recording recording) => FixtureRecording.Of(design, KnownFixture.Shorted, recording).Findings.Single().Code;
    }

    private static Recording White(double rate, double seconds, double step, double line, bool areSteps) => new("a", Frequency.FromHertz(rate), Samples(rate, seconds, step, line), areSteps);

    private static double[] Samples(double rate, double seconds, double step, double line)
    {
        var random = new SeededRandom(5);
        return
        [
            .. Enumerable.Range(0, (int)(rate * seconds)).Select(i =>
                ((2e-6 * Math.Sqrt(-2 * Math.Log(1 - random.NextUnit())) * Math.Cos(2 * Math.PI * random.NextUnit())) + (line * Math.Sqrt(2) * Math.Sin(2 * Math.PI * 20.3 * i / rate))) / step),
        ];
    }
}
