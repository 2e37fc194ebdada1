using FrontEnd.Amplifier;
using FrontEnd.Boards;
using FrontEnd.Building;
using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Spread;
using FrontEnd.Tests.Laws;
using FrontEnd.Text;
using FrontEnd.Topologies;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Tests.Building;

/// <summary>What is ordered for a board.</summary>
public sealed class OrderListTests
{
    /// <summary>Every piece of the netlist is ordered once, but for test points, which are copper.</summary>
    [Property(MaxTest = 100)]
    public void Order_OfAnyDesign_HasEveryPieceOfTheNetlistOnce(int seed)
    {
        Design design = DrawnDesigns.Draw(seed);
        if (DesignCheck.Run(design).Any(finding => finding.Severity == Severity.Error))
        {
            return;
        }

        Board board = Board.Of(design);
        string[] ordered = [.. OrderList.Of(board).SelectMany(row => row.Designators.Split(' '))];
        string[] pieces = [.. Netlist.Of(board).Select(row => row.Designator).Distinct(StringComparer.Ordinal).Where(name => !name.Contains("TP", StringComparison.Ordinal))];
        Assert.Equal(pieces.Order(StringComparer.Ordinal), ordered.Order(StringComparer.Ordinal));
        Assert.Equal(ordered.Length, OrderList.Of(board).Sum(row => row.Quantity));
    }

    /// <summary>What one buys as one stands in one row, and no piece of the row is of another make.</summary>
    [Property(MaxTest = 50)]
    public void Order_OfAnyDesign_HasNoRowTwice(int seed)
    {
        Design design = DrawnDesigns.Draw(seed);
        if (DesignCheck.Run(design).Any(finding => finding.Severity == Severity.Error))
        {
            return;
        }

        IReadOnlyList<OrderRow> rows = OrderList.Of(Board.Of(design));
        Assert.Equal(rows.Count, rows.Select(row =>
            (row.First.Class, row.First.Value?.SiValue, row.First.Tolerance?.Fraction, row.Ratings, row.First.ProtectsWearer, row.First.Card, row.First.Description,
                row.First.Remark)).Distinct().Count());
    }

    [Fact]
    public void Order_OfProtectionResistors_SaysThatTheyMayNotShrink()
    {
        IReadOnlyList<OrderRow> rows = OrderList.Of(Board.Of(new Design { Channels = 8, Input = new InputNetwork { SeriesResistor = Resistance.FromKilohms(68) } }));
        OrderRow row = rows.Single(row => row.First.Key == "input.series-resistor");
        Assert.Equal(9, row.Quantity);
        Assert.Contains(OrderList.Protects, row.Remark, StringComparison.Ordinal);
        Assert.Equal("1206", row.Ratings.Package);
    }

    /// <summary>1 µF in the signal's path is film with wires; 10 nF is C0G; 100 nF at a supply pin is X7R of twice the supply: classes of IEC 60384-8 and -9,
    /// usual sizes from memory.</summary>
    [Fact]
    public void Dielectric_FollowsPlaceAndSize()
    {
        Board board = Board.Of(new Design
        {
            Stages = [new GainStage { CouplingCapacitor = Capacitance.FromMicrofarads(1), FeedbackResistor = Resistance.FromKilohms(100),
                GroundResistor = Resistance.FromKilohms(1), FeedbackCapacitor = Capacitance.FromNanofarads(10) }],
        });
        BoardBlock stage = new(BlockKind.Stage);
        Assert.StartsWith("film", PartRatings.Of(board, board.Find(0, stage, "coupling-capacitor")!).Technology, StringComparison.Ordinal);
        Assert.Equal("C0G", PartRatings.Of(board, board.Find(0, stage, "feedback-capacitor")!).Technology);
        PartRatings decoupling = PartRatings.Of(board, board.Parts.First(part => part.Key == "board.decoupling"));
        Assert.Equal(("X7R", "10 V"), (decoupling.Technology, decoupling.Voltage));
    }

    /// <summary>IEC 60062's own examples (reference/parts/codes.txt), written instead of read.</summary>
    [Theory]
    [InlineData(0.47, "R47")]
    [InlineData(470, "470R")]
    [InlineData(4700, "4K7")]
    [InlineData(47300, "47K3")]
    [InlineData(1000, "1K0")]
    [InlineData(1e9, "1G0")]
    public void Code_OfAResistor_IsThatOfTheStandard(double ohms, string code) => Assert.Equal(code, PartCode.Of(Resistance.FromOhms(ohms)));

    [Theory]
    [InlineData(10e-12, "10p")]
    [InlineData(4.7e-9, "4n7")]
    [InlineData(2.2e-9, "2n2")]
    [InlineData(1e-6, "1u0")]
    public void Code_OfACapacitor_IsThatOfTheStandard(double farads, string code) => Assert.Equal(code, PartCode.Of(Capacitance.FromFarads(farads)));

    /// <summary>Every member of E96 is read back from its code as it was written.</summary>
    [Fact]
    public void Code_ReadBack_IsTheValue()
    {
        foreach (double ohms in PreferredValues.Between(1, 1e8, PreferredSeries.E96))
        {
            Assert.True(QuantityText.TryParse(PartCode.Of(Resistance.FromOhms(ohms)), out Resistance read, out _), PartCode.Of(Resistance.FromOhms(ohms)));
            Assert.Equal(ohms, read.Ohms, ohms * 1e-12);
        }
    }

    /// <summary>The row that names a piece most closely is its price: 2 pieces at 0.10, one at 0.5, all others at 0.02.</summary>
    [Fact]
    public void Price_OfAPiece_IsThatOfTheClosestRow()
    {
        Board board = Board.Of(new Design { Input = new InputNetwork { SeriesResistor = Resistance.FromKilohms(68) } });
        Prices prices = new([("resistor", 0.02), ("Resistor 68kΩ", 0.10), ("R801", 0.5)]);
        Assert.Equal(0.10, prices.Of(board.Parts.First(part => part.Name == "R101")));
        Assert.Equal(0.02, prices.Of(board.Parts.First(part => part.Name == "R701")));
        Assert.Null(prices.Of(board.Parts.First(part => part.Class == PieceClass.Battery)));
        (double total, IReadOnlyList<OrderRow> without) = prices.Total(OrderList.Of(board));
        Assert.Equal(0.2 + (0.02 * board.Parts.Count(part => part.Class == PieceClass.Resistor && part.Value is not Resistance { Ohms: 68e3 })), total, 1e-9);
        Assert.All(without, row => Assert.NotEqual(PieceClass.Resistor, row.First.Class));
    }

    /// <summary>A filter whose capacitors of 20 % fail at its edge is told to buy better ones, and the yield given is what a spread of that design finds.</summary>
    [Fact]
    public void Tolerance_ThatDecides_IsMarkedWithTheYieldOfASpread()
    {
        Board board = Board.Of(Designs.Dry);
        SpreadOptions options = new() { Builds = 500 };
        IReadOnlyList<ToleranceMark> marks = ToleranceStudy.Of(board, options);
        Assert.NotEmpty(marks);
        foreach (ToleranceMark mark in marks)
        {
            Design other = DesignFields.Find(board.Design, mark.Key)!.WithSiValue(board.Design, mark.Other.Fraction);
            Assert.Equal(SpreadRun.Run(other, options, cancellation: TestContext.Current.CancellationToken)!.Yield!.Value, mark.After, 1e-12);
            Assert.True(mark.IsTighter ? mark.Before + ToleranceStudy.Worth <= mark.After : mark.Before - ToleranceStudy.NoLoss < mark.After);
        }
    }
}
