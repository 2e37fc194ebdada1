using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Findings;
using FrontEnd.Identity;
using FrontEnd.Interference;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Tests.Identity;

/// <summary>Names are the user's; what a figure is, is decided by ids alone. A name that would take an id is a finding, every other works.</summary>
public sealed class NameTests
{
    private static Design WithStage(string name) => Designs.Dry with { Stages = [.. Designs.Dry.Stages.Take(1).Select(stage => stage with { Name = name }), .. Designs.Dry.Stages.Skip(1)] };

    private static Design WithInterferer(string name) => Designs.Dry with { Interferers = [Interferer.Muscle with { Name = name }] };

    /// <summary>Each once ended the evaluation with a doubled key, or had its resistors added into the row of the built-in ones.</summary>
    [Theory]
    [InlineData("amplifier")]
    [InlineData("converter")]
    [InlineData("drive")]
    [InlineData("path")]
    [InlineData("Amplifier, inner plus")]
    [InlineData("amplifier-inner-minus")]
    [InlineData("bias")]
    [InlineData("protection")]
    [InlineData("buffer")] // Not fitted here, and reserved all the same.
    [InlineData("SKIN")]
    public void Stage_WithANameThatIsBuiltIn_IsAFindingAtTheNameAndTheProposalWorks(string name)
    {
        Design design = WithStage(name);
        Finding finding = Assert.Single(DesignCheck.Run(design), one => one.Severity == Severity.Error);
        Assert.Equal((Messages.NameReserved, "stages[1].name"), (finding.Code, finding.Field));
        Assert.Contains($"`{name} 2`", finding.Help, StringComparison.Ordinal);
        AssertWorks(WithStage($"{name} 2"));
    }

    [Theory]
    [InlineData("low edge")]
    [InlineData("High Edge")]
    [InlineData("h1")]
    [InlineData("H17")]
    public void Interferer_WithANameThatIsBuiltIn_IsAFindingAtTheNameAndTheProposalWorks(string name)
    {
        Finding finding = Assert.Single(DesignCheck.Run(WithInterferer(name)), one => one.Severity == Severity.Error);
        Assert.Equal((Messages.NameReserved, "interferers[1].name"), (finding.Code, finding.Field));
        AssertWorks(WithInterferer($"{name} 2"));
    }

    /// <summary>Words that stand in built-in ids and names, but take none.</summary>
    [Theory]
    [InlineData("total")]
    [InlineData("active electrode")]
    [InlineData("quantisation")]
    [InlineData("folded")]
    [InlineData("ground")]
    [InlineData("amplifier voltage")]
    [InlineData("headroom")]
    [InlineData("first_to_clip")]
    [InlineData("input")]
    [InlineData("bias resistors")]
    [InlineData("ratio")]
    [InlineData("muscle")]
    public void AnyOtherName_Works(string name)
    {
        AssertWorks(WithStage(name));
        AssertWorks(WithInterferer(name));
        AssertWorks(Designs.Dry with { Digital = [new DigitalHighPass { Name = name }] });
        AssertWorks(Designs.Dry with { Bands = [new Band(name, Frequency.FromHertz(8), Frequency.FromHertz(13))] });
    }

    /// <summary>A stage's name moves no figure: every row is the one that another name gives.</summary>
    [Fact]
    public void Stage_WhateverItsName_KeepsItsFigures()
    {
        Result[] plain = [.. Evaluator.Evaluate(WithStage("gain 2")).Results], odd = [.. Evaluator.Evaluate(WithStage("active electrode")).Results];
        Assert.Equal(plain.Length, odd.Length);
        Assert.All(plain.Zip(odd), pair => Assert.Equal((pair.First.Value, pair.First.Hand?.Value, pair.First.State), (pair.Second.Value, pair.Second.Hand?.Value, pair.Second.State)));
    }

    [Fact]
    public void Names_OfOneSlug_AreAFindingWithAFreeNameInEveryList()
    {
        Band alpha = new("alpha", Frequency.FromHertz(8), Frequency.FromHertz(13));
        (Design, string)[] doubled =
        [
            (Designs.Dry with { Stages = [.. Designs.Dry.Stages.Zip(["low pass", "Low-pass!"], (stage, name) => stage with { Name = name })] }, "stages[2].name"),
            (Designs.Dry with { Digital = [.. Designs.Dry.Digital.Zip(["a b", "a-b"], (stage, name) => stage with { Name = name })] }, "digital[2].name"),
            (Designs.Dry with { Bands = [alpha, alpha with { Name = "ALPHA" }] }, "bands[2].name"),
            (Designs.Dry with { Interferers = [Interferer.Muscle, Interferer.Muscle] }, "interferers[2].name"),
            (Designs.Dry with { Montage = new Montage { Sites = ["O1", "o1"] } }, "montage.sites[2].name"),
        ];
        foreach ((Design design, string place) in doubled)
        {
            Finding finding = Assert.Single(DesignCheck.Run(design), one => one.Severity == Severity.Error);
            Assert.Equal((Messages.NameTwice, place), (finding.Code, finding.Field));
            Assert.Contains(" 2`", finding.Help, StringComparison.Ordinal);
        }
    }

    /// <summary>Four sites that differ make a-b-c twice; the second channel was once left out in silence.</summary>
    [Fact]
    public void Montage_WhoseChannelsHaveOneName_IsAFindingAndTheProposalWorks()
    {
        Design design = Designs.Dry with { Channels = 4, Montage = new Montage { Kind = MontageKind.Bipolar, Sites = ["a-b", "c", "a", "b-c"] } };
        Finding finding = Assert.Single(DesignCheck.Run(design), one => one.Severity == Severity.Error);
        Assert.Equal((Messages.NameTwice, "montage.sites[4].name"), (finding.Code, finding.Field));
        Assert.Contains("`b-c 2`", finding.Help, StringComparison.Ordinal);
        AssertWorks(design with { Montage = design.Montage with { Sites = ["a-b", "c", "a", "b-c 2"] } });
        AssertWorks(design with { Montage = design.Montage with { Kind = MontageKind.Average } });
    }

    /// <summary>What is reserved is what there is: every built-in node and source of the test's designs is in its list.</summary>
    [Fact]
    public void BuiltIns_OfAllDesigns_AreListed()
    {
        foreach (Design design in Designs.All)
        {
            Evaluation evaluation = new(design);
            Assert.All(evaluation.Noise.Rows(), row => Assert.True(SourceId.BuiltIn.Contains(row.Id) || design.Stages.Any(stage => SourceId.Of(stage.Name).Contains(row.Id)), row.Name));
            Assert.All(evaluation.Levels.Nodes, node => Assert.True(NodeId.BuiltIn.Contains(node.Node) || design.Stages.Any(stage => NodeId.Of(stage.Name) == node.Node), node.Node.Text));
        }
    }

    private static void AssertWorks(Design design)
    {
        Assessment assessment = Evaluator.Evaluate(design);
        Assert.DoesNotContain(assessment.Findings, finding => finding.Severity == Severity.Error);
        Assert.True(100 < assessment.Results.Count);
    }
}
