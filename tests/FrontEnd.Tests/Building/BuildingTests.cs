using FrontEnd.Amplifier;
using FrontEnd.Boards;
using FrontEnd.Building;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Filters;
using FrontEnd.Quantities;
using FrontEnd.Topologies;
using Xunit;

namespace FrontEnd.Tests.Building;

/// <summary>What is bought and programmed for a design.</summary>
public sealed class BuildingTests
{
    /// <summary>The series by hand: 47 is in E12, 51 in E24 first, 49.9 in E96 first; 50 is in none of them.</summary>
    [Theory]
    [InlineData(47e3, 0.01, PreferredSeries.E24, null)]
    [InlineData(49.9e3, 0.01, PreferredSeries.E96, null)]
    [InlineData(50e3, 0.01, PreferredSeries.E96, 49.9e3)]
    [InlineData(47e3, 0.05, PreferredSeries.E12, null)]
    [InlineData(51e3, 0.05, PreferredSeries.E24, null)]
    [InlineData(50e3, 0.05, PreferredSeries.E24, 51e3)]
    public void Value_OfAResistor_IsLookedUpInTheSeriesOfItsTolerance(double ohms, double tolerance, PreferredSeries series, double? nearest)
    {
        PartValue value = PartValue.Of(Resistance.FromOhms(ohms), Ratio.FromFraction(tolerance));
        Assert.Equal(series, value.Series);
        Assert.Equal(nearest is { } found ? Resistance.FromOhms(found) : null, value.Nearest);
    }

    /// <summary>Capacitors come in E24 at best, however tight.</summary>
    [Fact]
    public void Value_OfACapacitor_StaysInE24()
    {
        PartValue value = PartValue.Of(Capacitance.FromFarads(99e-9), Ratio.FromFraction(0.01));
        Assert.Equal(PreferredSeries.E24, value.Series);
        Assert.Equal(Capacitance.FromFarads(100e-9), value.Nearest);
    }

    [Fact]
    public void Parts_OfADesign_AreThoseOfItsCircuitsForEveryChannel()
    {
        Design design = new() { Channels = 8, Input = new InputNetwork { SeriesResistor = Resistance.FromKilohms(10) }, Stages = [new GainStage()] };
        IReadOnlyList<BoardPart> parts = Board.Of(design).Parts;
        Assert.Equal(9, parts.Count(part => part.Key == "input.series-resistor"));
        Assert.Single(parts, part => part.Key == "converter.card");
        int fitted = 8 * design.Stages.Sum(stage => stage.Circuit().Parts.Count(part => part.Value > 0));
        Assert.Equal(fitted, parts.Count(part => part.Block.Kind == BlockKind.Stage && part.Key.StartsWith("stages[", StringComparison.Ordinal) && part.Class != PieceClass.OpAmps));
        Assert.Equal(8, parts.SelectMany(part => part.Sections).Count(section => section.Block.Kind == BlockKind.Stage && section.Role != BoardRoles.Unused));
        Assert.All(parts.Where(part => part.Value is not null), part => Assert.True(0 < part.Value!.SiValue));
    }

    /// <summary>15.8 kΩ of a twin-T is two of 31.6 kΩ in parallel, 200 nF two of 100 nF: that is what one orders, twice for each channel.</summary>
    [Fact]
    public void Parts_OfATwinT_CountTheTwoInParallel()
    {
        Board board = Board.Of(new Design { Channels = 4, Stages = [new TwinTNotch()] });
        BoardPart[] r3 = [.. board.Parts.Where(part => part.Key == "stages[1].r3")], c3 = [.. board.Parts.Where(part => part.Key == "stages[1].c3")];
        Assert.Equal(8, r3.Length);
        Assert.All(r3, part => Assert.Equal(Resistance.FromKilohms(31.6), part.Value));
        Assert.Equal(8, c3.Length);
        Assert.All(c3, part => Assert.Equal(100e-9, part.Value!.SiValue, 1e-18));
    }

    /// <summary>Rounding to words of 16 bits moves a coefficient by less than half a step, and does move one.</summary>
    [Fact]
    public void Filters_InShortWords_AreProgrammedAsRounded()
    {
        Design exact = new() { Digital = [new DigitalHighPass { Name = "drift" }, new DigitalNotch { Name = "hum" }] };
        Design rounded = exact with { Arithmetic = new DigitalArithmetic { Word = DigitalWord.Q15 } };
        Assert.Equal(["drift", "hum"], ProgrammedFilter.AllOf(rounded).Select(filter => filter.Name));
        double[] from = A1(exact), to = A1(rounded);
        Assert.NotEqual(from, to);
        Assert.All(from.Zip(to), pair => Assert.Equal(pair.First, pair.Second, 1e-3));

        static double[] A1(Design design) => [.. ProgrammedFilter.AllOf(design).SelectMany(filter => filter.Sections).Select((Biquad section) => section.A1)];
    }
}
