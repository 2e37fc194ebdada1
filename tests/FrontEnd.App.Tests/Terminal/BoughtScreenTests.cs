using FrontEnd.Terminal;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.App.Tests.Terminal;

/// <summary>The screens show no figure of a design of which something is not known.</summary>
public sealed class BoughtScreenTests
{
    private static readonly string Bought = Path.Combine(Setup.Root, "designs", "bought-headband.toml");

    [Fact]
    public void Screens_OfABoughtHeadset_GiveNoFiguresAndSayWhy()
    {
        Model model = Setup.Start(Bought, 120, 40);
        Assert.False(model.Here.Shown!.HasFigures);
        Assert.Contains(model.Here.Shown.Findings, finding => finding.Code == Messages.PartlyKnown);
        foreach (Place place in Place.Views.Concat(Place.Blocks(model.Design)))
        {
            Assert.NotEmpty(Updater.Update(model, new Message.GoTo(place.Id)).Model.Screen());
        }
    }

    [Fact]
    public void Form_OfABoughtHeadset_SaysWhatIsUnknown()
    {
        Model model = Setup.Start(Bought, 120, 40);
        FormRow Row(string key) => Place.Views.Concat(Place.Blocks(model.Design)).SelectMany(place => FormRow.Of(model.Design, place)).First(row => row.Field.Key == key);
        Assert.Equal("unknown", Row("input.series-resistor").Value(model.Here.Document));
        Assert.Equal("5 pF to 20 pF", Row("mains.amplifier-to-earth").Value(model.Here.Document));
        Assert.Equal("14", Row("converter.bits").Value(model.Here.Document));
    }

    /// <summary>The one page that has figures of it: what `check` prints.</summary>
    [Fact]
    public void Unknowns_OfABoughtHeadset_ShowWhatTheCommandPrints()
    {
        Model model = Setup.Start(Bought, 120, 40).Type("zu");
        StudyPage page = Assert.IsType<UnknownsPage>(model.Page);
        static string Words(string text) => string.Join(' ', text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
        Assert.Equal(
            Words(Shell.Run("check", "designs/bought-headband.toml", "--all").Output).Replace("; `--json` lists all of them", "", StringComparison.Ordinal), Words(page.Outcome!.Text));
        Assert.Contains("? open", page.Outcome.Text, StringComparison.Ordinal);
        Assert.Contains("Every value of this design is known", ((StudyPage)Setup.Start(Setup.Headband).Type("zu").Page!).Outcome!.Text, StringComparison.Ordinal);
    }

    /// <summary>The smallest screen has the way to the intervals too, and what is cut there says so.</summary>
    [Fact]
    public void Screens_OfABoughtHeadset_SayTheWayInFewRows()
    {
        string[] rows = [.. Setup.Start(Bought, 60, 15).Screen().Split('\n').Where(row => row.Contains('│')).Select(row => row.Split('│')[1].Trim())];
        Assert.Contains("; z u shows what can be said", string.Join(' ', rows), StringComparison.Ordinal);
        Assert.Contains(rows, row => row.EndsWith('…'));
    }

    /// <summary>No change is looked for where values are not known: who asks for one is told why, and not to wait.</summary>
    [Fact]
    public void Fix_OfABoughtHeadset_SaysWhatIsInTheWay()
    {
        Model model = Setup.Start(Bought, 120, 40).Type("h");
        Assert.Equal(Messages.PartlyKnown, model.Complaint?.Code);
        Assert.DoesNotContain("try again in a moment", model.Status, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("zp")]
    [InlineData("zr")]
    [InlineData("zb")]
    [InlineData("zs")]
    public void Study_OfABoughtHeadset_IsRefused(string keys)
    {
        Model model = Setup.Start(Bought, 120, 40).Type(keys);
        Assert.Equal(Messages.PartlyKnown, model.Complaint?.Code);
    }

    /// <summary>In front of the figures that are not there: how many values are not known, and the keys that lead to what can be said.</summary>
    [Fact]
    public void Screens_OfABoughtHeadset_SayTheWayToTheIntervals()
    {
        string screen = string.Join(' ', Setup.Start(Bought, 120, 40).Screen().Split((char[])[' ', '\n', '│'], StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("57 values of the design are not known", screen, StringComparison.Ordinal);
        Assert.Contains("z u shows what can be said in intervals", screen, StringComparison.Ordinal);
        Assert.Contains("z u", Setup.Start(Bought, 120, 40).Type("zr").Complaint!.Help, StringComparison.Ordinal);
    }
}
