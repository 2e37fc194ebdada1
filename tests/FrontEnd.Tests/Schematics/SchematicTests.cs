using FrontEnd.Boards;
using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Schematics;
using FrontEnd.Tests.Laws;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Tests.Schematics;

/// <summary>The circuit diagram of any design that has no errors.</summary>
public sealed class SchematicTests
{
    /// <summary>What is drawn is what is built: the nets, read again from the lines, are the netlist's, pin by pin.</summary>
    [Property(MaxTest = 300)]
    public void Drawing_OfAnyDesign_HasTheNetsOfItsBoard(int seed)
    {
        if (Drawn(seed) is { } schematic)
        {
            Assert.Empty(SchematicChecks.Nets(schematic));
        }
    }

    [Property(MaxTest = 300)]
    public void Drawing_OfAnyDesign_CanBeRead(int seed)
    {
        if (Drawn(seed) is { } schematic)
        {
            Assert.All(schematic.Pages, page => Assert.Empty(SchematicChecks.Readability(page)));
        }
    }

    [Property(MaxTest = 300)]
    public void Drawing_OfAnyDesign_HasNoJunctionOfFour(int seed)
    {
        if (Drawn(seed) is { } schematic)
        {
            Assert.All(schematic.Pages, page => Assert.Empty(SchematicChecks.FourWay(page)));
        }
    }

    /// <summary>What the board has beside the path, of every kind; parts of 0 Ω, which are none.</summary>
    private static Design WithChoices(Design design, Random random) => design with
    {
        Board = design.Board with
        {
            MidSupply = Any(random, Enum.GetValues<MidSupplyKind>()), OpAmpsInPackage = Any(random, [1, 2, 4]), Reference = Any(random, Enum.GetValues<ReferenceKind>()),
            Clamps = Any(random, Enum.GetValues<ClampKind>()), ReverseProtection = Any(random, Enum.GetValues<ReverseProtection>()),
            SupplyResistor = Resistance.FromOhms(random.Next(4) == 0 ? 0 : 10), DataResistor = Resistance.FromOhms(random.Next(4) == 0 ? 0 : 47),
        },
        Input = design.Input with { DifferentialCapacitor = random.Next(2) == 0 ? default : Capacitance.FromNanofarads(1) },
        Supply = design.Supply with { RailsHighest = random.Next(3) != 0 ? design.Supply.RailsHighest : Voltage.FromVolts(design.Supply.Highest.Volts / 2) },
        Converter = design.Converter with
        {
            ReferenceVoltage = random.Next(4) != 0 ? design.Converter.ReferenceVoltage : Voltage.FromVolts(2.5), OwnSupply = random.Next(4) == 0 ? Voltage.FromVolts(3) : design.Converter.OwnSupply,
            InController = random.Next(3) == 0,
        },
    };

    private static T Any<T>(Random random, T[] all) => all[random.Next(all.Length)];

    internal static Schematic? Drawn(int seed)
    {
        Design design = WithChoices(DrawnDesigns.Draw(seed), new Random(seed ^ 0x2545f491));
        return DesignCheck.Run(design).Any(finding => finding.Severity == Severity.Error) ? null : Schematic.Of(Board.Of(design));
    }
}
