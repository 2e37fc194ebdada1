using FrontEnd.Documents;
using FrontEnd.Findings;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Terminal;
using Xunit;

namespace FrontEnd.App.Tests.Terminal;

/// <summary>Nothing that is said loses its end unseen, and no two rows read alike.</summary>
public class MessageTests
{
    private static readonly Model Headband = Setup.Start(Setup.Headband);

    private static Finding Long(int words) => Finding.Error(
        "FE0000", "", string.Join(' ', Enumerable.Range(1, words).Select(number => $"word{number}")), null, "the very end");

    [Theory]
    [InlineData(80, 24, 60)]
    [InlineData(120, 40, 200)]
    [InlineData(60, 18, 20)]
    public void Message_OfSeveralRows_StandsWhole(int width, int height, int words)
    {
        string screen = (Headband with { Width = width, Height = height }).Complain(Long(words)).Screen();
        Assert.Contains($"word{words}", screen, StringComparison.Ordinal);
        Assert.EndsWith("the very end", string.Join(' ', screen.Split('\n')[..^2].Select(line => line.Trim())).Trim(), StringComparison.Ordinal);
    }

    /// <summary>One that is longer than the screen is cut with a mark, and one key shows all of it.</summary>
    [Fact]
    public void Message_LongerThanTheScreen_IsAKeyAway_AndScrolls()
    {
        Model model = (Headband with { Width = 60, Height = 18 }).Complain(Long(400));
        Assert.Contains("… Space: all", model.Screen(), StringComparison.Ordinal);
        Model whole = model.Press(Keystroke.Of(' '));
        Assert.IsType<MessagePage>(whole.Page);
        Assert.Contains("very end", whole.Press(KeyName.End).Screen(), StringComparison.Ordinal);
        Assert.Null(whole.Press(KeyName.Escape).Page);

        // What stands whole needs no page: the key is the field's.
        Assert.IsType<FieldHelpPage>(Headband.Complain(Long(5)).Press(Keystroke.Of(' ')).Page);
    }

    [Theory]
    [InlineData("abcdef", 6, false, "abcdef")]
    [InlineData("abcdefg", 6, false, "abcde…")]
    [InlineData("abcdefg", 6, true, "abcd..")]
    [InlineData("ab      ", 4, false, "ab")]
    [InlineData("日本語", 5, false, "日本…")]
    [InlineData("日本語", 4, false, "日 …")]
    [InlineData("日本語", 3, false, "日…")]
    public void Text_ThatIsCut_EndsInAMark(string text, int room, bool ascii, string seen)
    {
        Canvas canvas = new(20, 1, ascii);
        canvas.Put(0, 0, text, Ink.Plain, room);
        Assert.Equal(seen, canvas.ToString().TrimEnd('\n'));
        Canvas narrow = new(room, 1, ascii);
        narrow.Put(0, 0, text);
        Assert.Equal(seen, narrow.ToString().TrimEnd('\n'));
    }

    /// <summary>In plain ASCII the tilde is the sign of a marginal verdict and nothing else.</summary>
    [Theory]
    [InlineData(60, 15)]
    [InlineData(80, 24)]
    public void Tilde_InAscii_IsAVerdict(int width, int height)
    {
        Model model = Headband with { Width = width, Height = height };
        foreach (string id in Place.Blocks(model.Design).Concat(Place.Views).Select(place => place.Id))
        {
            Model there = Updater.Update(model, new Message.GoTo(id)).Model;
            foreach (string screen in (string[])[there.Screen(ascii: true), there.Press(KeyName.Tab).Screen(ascii: true)])
            {
                Assert.All(screen.Split('\n'), line => Assert.DoesNotMatch(@"\S~|~(?! |marginal)", line));
            }
        }
    }

    public static TheoryData<string> Designs => StripTests.Designs;

    [Theory]
    [MemberData(nameof(Designs))]
    public void ShortNames_AreShort_AndNoTwoAlike(string file)
    {
        Designs.Design design = DesignDocument.Read(Path.Combine(Setup.Root, "designs", file)).Design;
        Short(Evaluator.Evaluate(design));

        // Nothing of a shipped design has to be cut but pairs of names that its user chose.
        Assert.DoesNotContain(
            Evaluator.Evaluate(design).ShortNames.Where(one => !Identity.ResultIds.Montage.All.Has(one.Key) && !Identity.ResultIds.See.All.Has(one.Key)),
            one => one.Value.Contains('…', StringComparison.Ordinal));
        // Names that a user chooses may be long and alike to the last letter.
        string name = new('n', 60);
        Short(Evaluator.Evaluate(design with
        {
            Stages = [.. design.Stages.Select((stage, at) => stage with { Name = $"{name}{at}" })],
            Bands = [.. design.Bands.Select((band, at) => band with { Name = $"{name}{at}" })],
            Digital = [.. design.Digital.Select((filter, at) => filter with { Name = $"{name}{at}" })],
        }));

        static void Short(Assessment assessment)
        {
            Assert.Equal(assessment.Results.Count, assessment.ShortNames.Count);
            foreach (bool ascii in (bool[])[false, true])
            {
                string[] names = [.. assessment.Results.Select(result => Lettering.Say(assessment.ShortNames[result.Id], ascii))];
                Assert.Equal(names.Length, names.Distinct(StringComparer.Ordinal).Count());
                Assert.All(names, one => Assert.InRange(one.Length, 1, ShortNames.Most));
            }
        }
    }

    /// <summary>A frequency stands with what is at it, wherever both are shown, and is a key away on the page of reasons.</summary>
    [Fact]
    public void Pairs_ShareARow()
    {
        Model aliases = (Headband with { Width = 80 }).Type("a");
        string screen = (aliases with { Height = 60 }).Screen();
        Assert.Matches(@"fold attenuation +45\.2 dB at 460 Hz", screen);
        Assert.Matches(@"low edge image +47\.3 dB at 0\.500 Hz", screen);
        Assert.DoesNotContain("fold frequency", screen, StringComparison.Ordinal);
        Model next = aliases.Press(KeyName.Tab).Press(KeyName.Down);
        Assert.Equal(Identity.ResultIds.Alias.FoldFrequency, Whereabouts.ResultInHand(next)?.Id);
        Assert.Contains("lowest frequency that folds", next.Screen(), StringComparison.Ordinal);

        Model why = aliases.Press(KeyName.Tab).Press(KeyName.Enter);
        Assert.Equal(Identity.ResultIds.Alias.FoldAttenuation, Assert.IsType<WhyPage>(why.Page).ResultId);
        Assert.Equal(Identity.ResultIds.Alias.FoldFrequency, Assert.IsType<WhyPage>(why.Press(KeyName.Tab).Page).ResultId);
        Assert.Equal(Identity.ResultIds.Alias.FoldAttenuation, Assert.IsType<WhyPage>(why.Press(KeyName.Tab).Press(KeyName.Tab).Page).ResultId);
    }
}
