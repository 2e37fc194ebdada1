using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Findings;
using FrontEnd.Identity;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Tests.Reporting;

/// <summary>Sources that a design names, in its assessment.</summary>
public class SeeReportTests
{
    private static readonly CortexPatch Rhythm = new()
    {
        Name = "rhythm", Under = "O1", Area = Area.FromSquareCentimetres(25), Amplitude = Voltage.FromMicrovolts(30), StatedIn = "O1-ears", Band = "alpha",
    };

    private static readonly Design Seeing = Designs.All[0] with
    {
        Channels = 3, Montage = new Montage { Kind = MontageKind.Bipolar, Sites = ["O1", "P3", "Fz"], Reference = "ears" }, Patches = [Rhythm],
        Requirements = Designs.All[0].Requirements with { See = [new SeeRequirement { Patch = "rhythm", Channel = "O1-ears", Ratio = Decibels.FromStated(3) }] },
    };

    private static double Of(Assessment assessment, string id) => assessment[id].Si;

    [Fact]
    public void Figures_OfASource_AreTheHeadsWithTheDesignsNoise()
    {
        Assessment assessment = Evaluator.Evaluate(Seeing);
        Assert.Equal(1.07, Of(assessment, "see.rhythm.o1-ears.kept"), 0.005);
        Assert.Equal(0.82, Of(assessment, "see.rhythm.o1-p3.kept"), 0.005);
        Assert.Equal(Of(assessment, "noise.band.alpha"), Of(assessment, "see.rhythm.o1-ears.front_end"), 1e-15);
        double signal = Of(assessment, "see.rhythm.o1-p3.signal"), background = Of(assessment, "see.rhythm.o1-p3.background"), noise = Of(assessment, "see.rhythm.o1-p3.front_end");
        Assert.Equal(signal / Math.Sqrt((background * background) + (noise * noise)), Of(assessment, "see.rhythm.o1-p3.snr.alpha"), 1e-9);
        Assert.Equal(8.928, Of(assessment, "head.radius") * 100, 5e-4);
        Assert.Equal(5.76, Of(assessment, "head.distance.o1.p3.skin") * 100, 0.005);
        Assert.InRange(Of(assessment, "see.o1-ears.p3-ears.correlation"), -1, 1);
    }

    /// <summary>In the design's band the montage's own figure and the source's are one.</summary>
    [Fact]
    public void Noise_OfADerivedChannel_IsTheMontages()
    {
        Assessment assessment = Evaluator.Evaluate(Seeing with { Patches = [Rhythm with { Band = "" }], Requirements = new() });
        Assert.Equal(Of(assessment, "montage.o1-p3.noise"), Of(assessment, "see.rhythm.o1-p3.front_end"), 1e-12 * Of(assessment, "montage.o1-p3.noise"));
    }

    [Theory]
    [InlineData(3, VerdictKind.Pass)]
    [InlineData(100, VerdictKind.Fail)]
    public void Requirement_OfARatio_IsJudged(double decibels, VerdictKind verdict)
    {
        Design design = Seeing with { Requirements = Seeing.Requirements with { See = [Seeing.Requirements.See[0] with { Ratio = Decibels.FromStated(decibels) }] } };
        Result judged = Evaluator.Evaluate(design)["see.rhythm.o1-ears.snr_level.alpha"];
        Assert.Equal(verdict, judged.Verdict.Kind == VerdictKind.Marginal ? VerdictKind.Pass : judged.Verdict.Kind);
        Assert.Equal("requirements.see[1].ratio", judged.Verdict.Requirement);
        Assert.Equal(judged.Verdict.Kind, Evaluator.Judged(design)![judged.Id].Verdict.Kind);   // what the adviser tries changes with
    }

    [Fact]
    public void Requirement_WithoutARatio_JudgesNothing()
    {
        Design design = Seeing with { Requirements = Seeing.Requirements with { See = [new SeeRequirement { Patch = "rhythm", Channel = "O1-P3" }] } };
        Assert.Equal(VerdictKind.NotJudged, Evaluator.Evaluate(design)["see.rhythm.o1-p3.snr_level.alpha"].Verdict.Kind);
    }

    [Fact]
    public void Design_WithoutSources_SaysNothingOfThem() =>
        Assert.DoesNotContain(Evaluator.Evaluate(Designs.All[0]).Results, result => ResultIds.See.All.Has(result.Id) || ResultIds.Head.All.Has(result.Id));

    public static TheoryData<string, string, string> Wrong => new()
    {
        { "under", "A1", Messages.SourceOutsideBrain },
        { "under", "Q2", Messages.SourceSiteUnknown },
        { "under", "", Messages.SourceSiteUnknown },
        { "wall", "O1", Messages.WallDirection },
        { "wall", "Q9", Messages.SourceSiteUnknown },
        { "stated", "O1", Messages.DerivationUnknown },
        { "band", "alfa", Messages.RhythmBandUnknown },
        { "area", "999", Messages.PatchArea },
        { "head", "", Messages.HeadMeasuresApart },
        { "see", "rythm", Messages.SeeUnknown },
        { "channel", "O1-P4", Messages.SeeUnknown },
        { "amplitude", "", Messages.RhythmNotStated },
        { "twice", "", Messages.NameTwice },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void Input_ThatIsWrong_IsAFindingAtItsPlace(string what, string word, string code)
    {
        CortexPatch patch = what switch
        {
            "under" => Rhythm with { Under = word },
            "wall" => Rhythm with { WallTowards = word },
            "stated" => Rhythm with { StatedIn = word },
            "band" => Rhythm with { Band = word },
            "area" => Rhythm with { Area = Area.FromSquareCentimetres(999) },
            "amplitude" => Rhythm with { Amplitude = null },
            _ => Rhythm,
        };
        SeeRequirement see = Seeing.Requirements.See[0] with { Patch = what is "see" ? word : "rhythm", Channel = what is "channel" ? word : "O1-ears" };
        Design design = Seeing with
        {
            Patches = what is "twice" ? [patch, patch] : [patch], Requirements = Seeing.Requirements with { See = [see] },
            Head = what is "head" ? new HeadMeasures { Circumference = Length.FromCentimetres(80) } : null,
        };
        Finding finding = Assert.Single(DesignCheck.Run(design), one => one.Code == code);
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Matches(@"^(patches\[[12]\]\.[a-z-]+|requirements\.see\[1\]\.[a-z]+|head\.circumference)$", finding.Field);
        Assert.False(Evaluator.Evaluate(design).HasFigures);
    }

    /// <summary>Sites that nobody knows are told and left out; the rest stands.</summary>
    [Fact]
    public void Site_ThatIsUnknown_IsAWarningWithTheNearestName()
    {
        Design design = Seeing with { Montage = Seeing.Montage with { Kind = MontageKind.Referential, Sites = ["O1", "Q2", "Fz"] } };
        Assessment assessment = Evaluator.Evaluate(design);
        Finding finding = Assert.Single(assessment.Findings, one => one.Code == Messages.SiteNotKnown);
        Assert.Contains("`O2`", finding.Help, StringComparison.Ordinal);
        Assert.NotNull(assessment.Find("see.rhythm.fz-ears.of_peak"));
        Assert.Null(assessment.Find("see.rhythm.q2-ears.of_peak"));
    }

    [Fact]
    public void Band_ThatTheFiltersTakeAway_IsAWarning()
    {
        Band slow = new("slow", Frequency.FromHertz(0.001), Frequency.FromHertz(0.002));
        Design design = Designs.All.First(one => one.Stages.Any(stage => stage.Circuit() is not null) && one.Digital.Count > 0) with
        {
            Channels = 1, Montage = new Montage { Sites = ["O1"], Reference = "A1" }, Bands = [slow], Patches = [Rhythm with { Band = "slow" }],
            Digital = [new global::FrontEnd.Digital.DigitalHighPass { Name = "high-pass", Corner = Frequency.FromHertz(1), Order = 2 }],
        };
        Assert.Contains(Evaluator.Evaluate(design).Findings, one => one.Code == Messages.BandNotRecorded);
    }
}
