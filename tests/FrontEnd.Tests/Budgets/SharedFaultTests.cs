using FrontEnd.Advice;
using FrontEnd.Amplifier;
using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Findings;
using FrontEnd.Inputs;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Sizing;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Tests.Budgets;

/// <summary>Dc through the wearer: one lead's, and what all measuring leads share, by the way that it has back.</summary>
public sealed class SharedFaultTests
{
    /// <summary>Two channels of 100 kΩ, a driven ground of 390 kΩ, 3.3 V at most; all resistors 1 %.</summary>
    private static readonly Design Floating = Tests.Designs.Dry;

    private static readonly Design Earthed = Floating with { Mains = Floating.Mains with { AmplifierToEarth = Capacitance.FromNanofarads(10) } };

    private static Result Shared(Design design) => Evaluator.Evaluate(design)["safety.shared_fault_current"];

    /// <summary>By hand: three leads of 99 kΩ side by side are 33 kΩ; with 386.1 kΩ back through the ground 3.3 V drive 7.8740 µA.</summary>
    [Fact]
    public void SharedFault_InAFloatingBox_ReturnsThroughTheGroundLead()
    {
        Result shared = Shared(Floating);
        Assert.Equal(3.3 / ((99e3 / 3) + 386.1e3), shared.Si, 1e-15);
        Assert.Equal(7.8740e-6, shared.Si, 1e-10);
        Assert.Equal(VerdictKind.Pass, shared.Verdict.Kind);
        Assert.StartsWith("below the quoted limit 50.0 µA; 2 active and 1 reference lead, back through the ground lead", shared.Text, StringComparison.Ordinal);
        Assert.Equal("3.3 V/(1/(2/99 kΩ + 1/99 kΩ) + 386.1 kΩ) = 7.874 µA", shared.Substituted);
    }

    /// <summary>By hand: 3.3 V over 99 kΩ is 33.333 µA, three times that 100 µA. Just below 10 nF the box still floats.</summary>
    [Fact]
    public void SharedFault_WithTheCommonEarthed_IsTheSumOfTheLeads()
    {
        Result shared = Shared(Earthed);
        Assert.Equal(100e-6, shared.Si, 1e-15);
        Assert.Equal(VerdictKind.Fail, shared.Verdict.Kind);
        Assert.Equal(-50e-6, shared.Verdict.Margin!.Value, 1e-15);
        Assert.StartsWith("above the quoted limit 50.0 µA", shared.Text, StringComparison.Ordinal);
        Assert.Equal("3.3 V · (2/99 kΩ + 1/99 kΩ) = 100.0 µA", shared.Substituted);
        Assert.Equal(7.8740e-6, Shared(Earthed with { Mains = Earthed.Mains with { AmplifierToEarth = Capacitance.FromNanofarads(9.99) } }).Si, 1e-10);
    }

    /// <summary>By hand: behind buffers the skin resistors count, 50 kΩ less 1 % is 49.5 kΩ, twice, beside the reference's 99 kΩ:
    /// 1/(2/49.5 kΩ + 1/99 kΩ) = 19.8 kΩ; with 386.1 kΩ 8.1301 µA.</summary>
    [Fact]
    public void SharedFault_BehindElectrodeBuffers_CountsTheirSkinResistors()
    {
        var buffer = new ElectrodeBuffer { SkinResistor = Resistance.FromKilohms(50) };
        Result shared = Shared(Floating with { Electrodes = Floating.Electrodes with { ActiveBuffer = buffer } });
        Assert.Equal(3.3 / (19.8e3 + 386.1e3), shared.Si, 1e-15);
        Assert.Equal(8.1301e-6, shared.Si, 1e-10);
    }

    /// <summary>Leads without a resistor leave the ground's: 3.3 V over 386.1 kΩ. Where nothing is fitted at all there is no bound, and
    /// that fails.</summary>
    [Fact]
    public void SharedFault_WithoutResistors_HasNoBound()
    {
        Design bare = Floating with { Input = Floating.Input with { SeriesResistor = default } };
        Assert.Equal(3.3 / 386.1e3, Shared(bare).Si, 1e-15);
        Result none = Shared(bare with { GroundDrive = bare.GroundDrive with { SeriesResistor = default } });
        Result earthed = Shared(bare with { Mains = Earthed.Mains });
        Assert.All([none, earthed], result => Assert.Equal((ResultState.Unbounded, VerdictKind.Fail), (result.State, result.Verdict.Kind)));
        Assert.All([none, earthed], result => Assert.Contains("above the quoted limit", result.Text, StringComparison.Ordinal));
    }

    /// <summary>Two electrodes on a box that floats: no way back is known, and nothing is judged.</summary>
    [Fact]
    public void SharedFault_WithoutGroundInAFloatingBox_IsMissingWithAFinding()
    {
        Design two = Floating with
        {
            Electrodes = Floating.Electrodes with { Ground = null },
            Input = Floating.Input with { BiasResistor = Resistance.FromMegohms(100) },
            GroundDrive = new GroundDrive(),
        };
        Assessment assessment = Evaluator.Evaluate(two);
        Result shared = assessment["safety.shared_fault_current"];
        Assert.Equal((ResultState.Missing, VerdictKind.NotJudged, "FE0414"), (shared.State, shared.Verdict.Kind, shared.FindingCode));
        Assert.Equal(Severity.Warning, Assert.Single(assessment.Findings, finding => finding.Code == "FE0414").Severity);
        Assert.Equal(100e-6, Shared(two with { Mains = Earthed.Mains }).Si, 1e-15);
    }

    /// <summary>The second way, by the skin's voltage: Kirchhoff's sum at the skin, all resistors at −tol; one lead's current and the
    /// driven ground's besides.</summary>
    [Property(MaxTest = 40)]
    public void Currents_OfAnyResistors_AreKirchhoffsAtTheLowerTolerance(int seed)
    {
        var random = new Random(seed);
        double Draw(double low, double high) => low * Math.Pow(high / low, random.NextDouble());
        double tolerance = 0.3 * random.NextDouble(), groundTolerance = 0.3 * random.NextDouble(), volts = Draw(2, 12);
        double lead = Draw(1e3, 1e6), ground = Draw(1e3, 1e6);
        int channels = random.Next(1, 17);
        Design design = Floating with
        {
            Channels = channels,
            Input = Floating.Input with { SeriesResistor = Resistance.FromOhms(lead), ResistorTolerance = Ratio.FromFraction(tolerance) },
            GroundDrive = Floating.GroundDrive with { SeriesResistor = Resistance.FromOhms(ground), ResistorTolerance = Ratio.FromFraction(groundTolerance) },
            Supply = Floating.Supply with { Lowest = Voltage.FromVolts(2), Highest = Voltage.FromVolts(volts) },
        };
        double least = lead * (1 - tolerance), back = ground * (1 - groundTolerance);
        double into = 0, conductance = 1 / back;
        for (int one = 0; one < channels + 1; one++)
        {
            (into, conductance) = (into + (volts / least), conductance + (1 / least));
        }

        double skin = into / conductance;
        var list = new ResultList();
        var evaluation = new Evaluation(design);
        SafetyReport.AddTo(list, [], evaluation);
        Near(skin / back, "safety.shared_fault_current");
        Near(volts / least, "safety.fault_current.active-electrode");
        Near(volts / least, "safety.fault_current.reference-electrode");
        Near(volts / back, "safety.fault_current.ground-electrode");
        Near(volts / Math.Min(least, back), "safety.fault_current");
        Near(volts / back, "safety.driven_ground_current");
        Near(volts / 50e-6 / (1 - tolerance), "safety.series_resistance_needed");

        void Near(double expected, string id) => Assert.Equal(expected, list[new(id)].Si, 1e-9 * expected);
    }

    /// <summary>Where all leads add, each needs as many times the resistance as there are leads, 3 · 3.3 V/50 µA/0.99 = 200 kΩ; what is advised for that keeps the sum
    /// below the limit.</summary>
    [Fact]
    public void Advise_AnEarthedBoxAboveTheLimit_NamesResistorsThatKeepTheSum()
    {
        Assessment assessment = Evaluator.Evaluate(Earthed);
        Assert.Contains(Candidates.For(Earthed, assessment), candidate => candidate.Change == "series resistors in the leads 100 kΩ -> 200 kΩ");
        Improvement improvement = Advisor.Advise(assessment, cancellation: TestContext.Current.CancellationToken)["safety.shared_fault_current"].Verdict.Improvement!;
        Assert.True(improvement.After!.SiValue <= 50e-6, improvement.Change);
        Assert.Equal(improvement.After.SiValue, Shared(improvement.Design).Si);
    }

    /// <summary>Resistors that keep one lead's current below the limit and not the sum of three are not suggested, however much noise they
    /// save: 3 · 3.3 V/74.25 kΩ = 133 µA.</summary>
    [Fact]
    public void Advise_AChangeThatTakesTheSumPastTheLimit_IsDropped()
    {
        Design tight = Earthed with { Input = Earthed.Input with { SeriesResistor = Resistance.FromKilohms(240) }, Requirements = Earthed.Requirements with { Noise = VoltagePeakToPeak.FromVolts(1e-9) } };
        var less = new Candidate("less resistance", tight with { Input = tight.Input with { SeriesResistor = Resistance.FromKilohms(75) } });
        Assessment before = Evaluator.Evaluate(tight), after = Evaluator.Evaluate(less.Design);
        Assert.True(after["noise.board_share"].Si < before["noise.board_share"].Si);
        Assert.NotEqual(VerdictKind.Fail, after["safety.fault_current"].Verdict.Kind);
        Assert.Equal((VerdictKind.Pass, VerdictKind.Fail), (before["safety.shared_fault_current"].Verdict.Kind, after["safety.shared_fault_current"].Verdict.Kind));
        Assert.DoesNotContain(Advisor.Advise(before, [less], cancellation: TestContext.Current.CancellationToken).Judged, result => result.Verdict.Improvement is not null);
    }

    /// <summary>Sizing gives every measuring lead of an earthed box the resistor that the sum needs.</summary>
    [Fact]
    public void Sizing_OfAnEarthedBox_BeginsWithResistorsForTheSum()
    {
        foreach (Design wanted in (Design[])[Floating, Earthed])
        {
            var grid = new SizingGrid(new SizingRequest(wanted, new PartShelf([], [], [])));
            Assert.All(grid.Grounds(), ground => Assert.NotEqual(VerdictKind.Fail, Shared(grid.Base(ground)).Verdict.Kind));
        }
    }

    /// <summary>Behind electrode buffers each lead counts its own skin resistor, in the order active, reference: two that differ are not
    /// taken for one another, nor one for both.</summary>
    [Fact]
    public void Leads_BehindTwoBuffers_CountTheirOwnSkinResistors()
    {
        ElectrodeBuffer first = new() { SkinResistor = Resistance.FromKilohms(68) }, second = new() { SkinResistor = Resistance.FromKilohms(150) };
        Design design = new() { Electrodes = new ElectrodeSet { ActiveBuffer = first, ReferenceBuffer = second } };
        SafetyLanes leads = SafetyLanes.Of(design, Lanes(design));
        Assert.Equal(68e3, leads.Active[0], 1e-6);
        Assert.Equal(150e3, leads.Reference[0], 1e-6);
        Design half = design with { Electrodes = design.Electrodes with { ActiveBuffer = null } };
        Assert.Equal(150e3, SafetyLanes.Of(half, Lanes(half)).Reference[0], 1e-6);

        static BuildLanes Lanes(Design design)
        {
            var built = BuiltParts.Balanced(design);
            return new BuildLanes(new PathModel(design, built), built);
        }
    }
}
