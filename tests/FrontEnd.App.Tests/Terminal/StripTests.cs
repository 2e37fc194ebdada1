using FrontEnd.Documents;
using FrontEnd.Documents.Reading;
using FrontEnd.Identity;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Terminal;
using Xunit;

namespace FrontEnd.App.Tests.Terminal;

/// <summary>The strip and the verdicts say the same.</summary>
public class StripTests
{
    public static TheoryData<string> Designs => [.. Directory.GetFiles(Path.Combine(Setup.Root, "designs"), "*.toml")
        .Where(file => DesignDocument.Read(file) is { HasErrors: false, PartlyKnown: null }).Select(file => Path.GetFileName(file))];

    [Theory]
    [MemberData(nameof(Designs))]
    public void Block_IsAsBadAsItsWorstNode_AndNoVerdictIsWithoutABlock(string file)
    {
        Assessment assessment = Evaluator.Evaluate(DesignDocument.Read(Path.Combine(Setup.Root, "designs", file)).Design);
        IReadOnlyList<Place> blocks = Place.Blocks(assessment.Design);
        foreach (Result judged in assessment.Judged)
        {
            Place[] answering = [.. blocks.Where(block => block.Judges.Any(pattern => pattern.Fits(judged.Id)))];
            Assert.True(answering.Length > 0, $"{judged.Id} has no block");
            Assert.All(answering, block => Assert.True(judged.Verdict.Kind <= block.Worst(assessment), $"{judged.Id} {block.Id}"));
        }

        foreach (Result headroom in assessment.Results.Where(result => ResultIds.Levels.IsHeadroom(result.Id) && result.State == ResultState.Number))
        {
            Place block = Assert.Single(blocks, block => block.Judges.Any(pattern => pattern.Fits(headroom.Id)));
            if (headroom.Si < ((Quantities.IQuantity)assessment.Design.Requirements.Headroom).SiValue)
            {
                Assert.Equal(VerdictKind.Fail, block.Worst(assessment));
            }
        }

        VerdictKind worst = blocks.Max(block => block.Worst(assessment));
        Assert.Equal(assessment.Judged.Max(result => result.Verdict.Kind), worst);
    }

    /// <summary>Two stages beyond their rails: the one that clips later is no better for it, and its figure has the sign.</summary>
    [Fact]
    public void Block_ThatClipsSecond_FailsAsWell()
    {
        DesignDocument document = DesignDocument.Parse(
            "[amplifier]\ngain = 20\n[[stages]]\nkind = \"gain\"\nname = \"second\"\n", DocumentFormat.Toml);
        (Model started, Effect effect) = Model.Start(document, null);
        Model model = Setup.Settle(started, effect);
        Result[] low = [.. model.Here.Shown!.Results.Where(result => ResultIds.Levels.IsHeadroom(result.Id) && result.State == ResultState.Number && result.Si < 1)];
        Assert.True(low.Length > 1);
        foreach (Result headroom in low)
        {
            Place block = Place.Blocks(model.Design).Single(one => one.Judges.Any(pattern => pattern.Fits(headroom.Id)));
            Assert.Equal(VerdictKind.Fail, block.Worst(model.Here.Shown!));
            Model there = Updater.Update(model, new Message.GoTo(block.Id)).Model with { Width = 200, Height = 60 };
            Assert.Contains("x headroom at", there.Screen(), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(60)]
    [InlineData(80)]
    [InlineData(200)]
    public void Headroom_HasOneWord_AtAllWidths(int width)
    {
        Model model = Setup.Start(Setup.Headband, width, 24);
        foreach (Place block in Place.Blocks(model.Design))
        {
            string screen = Updater.Update(model, new Message.GoTo(block.Id)).Model.Screen();
            Assert.DoesNotMatch(@"dB up\b", screen);
            Assert.DoesNotContain("no limit ", string.Join('\n', screen.Split('\n')[..7]), StringComparison.Ordinal);
        }

        Assert.Matches(@"dB room\b", Updater.Update(model, new Message.GoTo(Place.Amplifier)).Model.Screen());
    }

    /// <summary>A letter means one thing wherever it is not part of what is asked there.</summary>
    [Fact]
    public void ChangeThatHelps_HasOneKey()
    {
        Model why = Setup.Start(Setup.Headband).Type("v").Press(KeyName.Enter);
        Assert.IsType<WhyPage>(why.Page);
        Assert.Equal("aliases", why.Type("a").PlaceId);
        Assert.Contains("h make the change", why.Screen(), StringComparison.Ordinal);
    }
}
