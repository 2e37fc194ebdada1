using FrontEnd.Amplifier;
using FrontEnd.Boards;
using FrontEnd.Building;
using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Tests.Laws;
using FrontEnd.Text;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Tests.Boards;

/// <summary>The design as a circuit board, and as it can be bought.</summary>
public sealed class BoardTests
{
    /// <summary>A board of any design that has no errors: every net has two pins or more, every piece a name of its own, every pin a net but
    /// those of an amplifier without gain resistor.</summary>
    [Property(MaxTest = 200)]
    public void Board_OfAnyDesign_LeavesNoPinAlone(int seed)
    {
        if (Drawn(seed) is not { } design)
        {
            return;
        }

        Board board = Board.Of(design);
        Assert.Equal(board.Parts.Count, board.Parts.Select(part => part.Name).Distinct(StringComparer.Ordinal).Count());
        foreach (IGrouping<string, NetlistRow> net in Netlist.Of(board).GroupBy(row => row.Net, StringComparer.Ordinal))
        {
            if (net.Key.Length == 0)
            {
                Assert.All(net, row => Assert.Equal(PieceClass.DifferentialAmplifier, board.Parts.First(part => part.Name == row.Designator).Class));
            }
            else
            {
                Assert.True(2 <= net.Count(), $"{net.Key} of {string.Join(", ", net)}");
            }
        }
    }

    /// <summary>What can be bought stays as it is when it is made buildable once more.</summary>
    [Property(MaxTest = 300)]
    public void Buildable_OfWhatIsBuildable_IsTheSame(int seed)
    {
        if (Drawn(seed) is not { } design)
        {
            return;
        }

        BuildableDesign once = BuildableDesign.Of(design), twice = BuildableDesign.Of(once.Design);
        foreach (Fields.Field<Design> field in DesignFields.Numeric(once.Design))
        {
            double was = field.SiValue(once.Design)!.Value, now = field.SiValue(twice.Design)!.Value;
            Assert.True(Math.Abs(now - was) <= 1e-9 * Math.Abs(was), $"{field.Key}: {was} and {now}");
        }
    }

    /// <summary>No resistor that protects the wearer gets smaller by being made buildable.</summary>
    [Property(MaxTest = 300)]
    public void Buildable_OfAnyDesign_ProtectsNoLess(int seed)
    {
        if (Drawn(seed) is not { } design)
        {
            return;
        }

        BuildableDesign built = BuildableDesign.Of(design);
        Assert.True(design.Input.SeriesResistor.Ohms <= built.Design.Input.SeriesResistor.Ohms * (1 + 1e-12));
        Assert.True(design.GroundDrive.SeriesResistor.Ohms <= built.Design.GroundDrive.SeriesResistor.Ohms * (1 + 1e-12));
        foreach ((MeasuringLead stated, MeasuringLead bought) in design.Leads.Zip(built.Design.Leads))
        {
            Assert.True((stated.Buffer?.SkinResistor.Ohms ?? 0) <= (bought.Buffer?.SkinResistor.Ohms ?? 0) * (1 + 1e-12));
        }
    }

    /// <summary>Gains and frequencies that parts cannot give are told, the nearest that they can is drawn, and with what is asked for nothing is said any
    /// more: 10 MΩ over 2 × 1 kΩ is 20,000, and 500 Ω with 10 µF cross at 31.8 Hz.</summary>
    [Theory]
    [InlineData(1e6, 1000, "FE1021", "20000", "")]
    [InlineData(20000, 1, "FE1022", "", "31.9 Hz")]
    [InlineData(20000, 1e9, "FE1023", "", "31.8 MHz")]
    public void DrivenGround_ThatCannotBeBuilt_IsDrawnWithTheNearestThatCan(double gain, double hertz, string code, string gainAsked, string hertzAsked)
    {
        Design design = new()
        {
            GroundDrive = new GroundDrive { Kind = GroundKind.Driven, DcGain = gain, UnityGainFrequency = Frequency.FromHertz(hertz) },
            Amplifier = new DifferentialAmplifier { Gains = [5] },
        };
        Finding finding = Assert.Single(BuildableDesign.Of(design).Findings);
        Assert.Equal(code, finding.Code);
        Assert.Contains(gainAsked + hertzAsked, finding.Help, StringComparison.Ordinal);
        Design mended = design with
        {
            GroundDrive = design.GroundDrive with
            {
                DcGain = gainAsked.Length == 0 ? gain : double.Parse(gainAsked, System.Globalization.CultureInfo.InvariantCulture),
                UnityGainFrequency = hertzAsked.Length == 0 ? Frequency.FromHertz(hertz)
                    : QuantityText.TryParse(hertzAsked, out Frequency asked, out _) ? asked : default,
            },
        };
        Assert.Empty(BuildableDesign.Of(mended).Findings);
    }

    /// <summary>A converter in the microcontroller is neither drawn nor ordered, and nothing of its data lines and supplies is: the signals, and the
    /// reference that the board makes, go to the connector.</summary>
    [Theory]
    [InlineData(1, ReferenceKind.Auto, null, "GND AIN VP")]
    [InlineData(3, ReferenceKind.Internal, null, "GND AIN1 AIN2 AIN3 VP")]
    [InlineData(1, ReferenceKind.Supply, null, "GND AIN VREF VP")]
    [InlineData(2, ReferenceKind.Part, 3.0, "GND AIN1 AIN2 VREF VC VP")]
    public void Board_WithTheConverterInTheController_BringsItTheSignals(int channels, ReferenceKind reference, double? ownSupply, string pins)
    {
        Design apart = new()
        {
            Channels = channels, Board = new BoardChoices { Reference = reference },
            Converter = new() { OwnSupply = ownSupply is { } volts ? Voltage.FromVolts(volts) : null },
        };
        Board board = Board.Of(apart with { Converter = apart.Converter with { InController = true } });
        BoardPart host = Assert.Single(board.Parts, part => part.Role == BoardRoles.Host);
        Assert.Equal(pins, string.Join(' ', host.Pins.Select(pin => pin.Name)));
        Assert.Contains("converter, 12 bit", host.Description, StringComparison.Ordinal);
        Assert.DoesNotContain(board.Parts, part => part.Class == PieceClass.Converter || part.Role.StartsWith("data line", StringComparison.Ordinal)
            || part.Class == PieceClass.Regulator || part.Pins.Any(pin => pin.Net == Nets.Digital || Nets.DataLines.Contains(pin.Net)));
        Assert.DoesNotContain(OrderList.Of(board), row => row.Parts[0].Class == PieceClass.Converter);
        Assert.Contains(Board.Of(apart).Parts, part => part.Class == PieceClass.Converter);
        Assert.Equal(FrontEnd.Sizing.SizingGrid.PartCount(apart) - 1, FrontEnd.Sizing.SizingGrid.PartCount(board.Stated));
    }

    private static Design? Drawn(int seed)
    {
        Design design = DrawnDesigns.Draw(seed);
        design = design with { Converter = design.Converter with { InController = seed % 3 == 0 } };
        return DesignCheck.Run(design).Any(finding => finding.Severity == Severity.Error) ? null : design;
    }
}
