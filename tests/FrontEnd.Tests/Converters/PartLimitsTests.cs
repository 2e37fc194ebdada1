using FrontEnd.Advice;
using FrontEnd.Amplifier;
using FrontEnd.Boards;
using FrontEnd.Building;
using FrontEnd.Catalogue;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Tests.Converters;

/// <summary>A part is held to the supply that it works on and to the gains that it has.</summary>
public sealed class PartLimitsTests
{
    private static readonly SupplyRange Range = new(Voltage.FromVolts(2.7), Voltage.FromVolts(5.5));

    private static Supply Of(double lowest, double highest, double? rails = null) => new()
    {
        Lowest = Voltage.FromVolts(lowest), Highest = Voltage.FromVolts(highest), RailsHighest = rails is { } volts ? Voltage.FromVolts(volts) : null,
    };

    private static Design WithPart(string part, SupplyRange range) => part switch
    {
        "amplifier" => Designs.Dry with { Amplifier = Designs.Dry.Amplifier with { SupplyRange = range } },
        "converter" => Designs.Dry with { Converter = Designs.Dry.Converter with { SupplyRange = range } },
        "op-amp" => Designs.Dry with { Stages = [.. Designs.Dry.Stages.Select(stage => stage.WithOpAmp(OpAmp.MicropowerCmos with { SupplyRange = range }))] },
        _ => Designs.Dry with { Electrodes = Designs.Dry.Electrodes with { ActiveBuffer = new ElectrodeBuffer { OpAmp = OpAmp.MicropowerCmos with { SupplyRange = range } } } },
    };

    public static TheoryData<string, double, double, double?, string?> Supplies
    {
        get
        {
            TheoryData<string, double, double, double?, string?> rows = [];
            foreach (string part in (string[])["amplifier", "converter", "op-amp", "buffer"])
            {
                rows.Add(part, 2.7, 5.5, null, null);                                 // just inside at both ends
                rows.Add(part, 2.6, 5.5, null, Messages.SupplyOutsidePart);           // too little for the figures to hold
                rows.Add(part, 3, 5.6, null, Messages.SupplyOutsidePart);             // a charger's input, say: not known to reach the rails
                rows.Add(part, 3, 9, 5.5, null);                                      // a regulator keeps it away
                rows.Add(part, 3, 9, 5.6, Messages.SupplyDestroysPart);               // it does not
                rows.Add(part, 6, 9, null, Messages.SupplyDestroysPart);              // even the lowest is too much
            }

            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Supplies))]
    public void Supply_OutsideAPartsRange_IsSaidWithTheNearestValue(string part, double lowest, double highest, double? rails, string? code)
    {
        Design design = WithPart(part, Range) with { Supply = Of(lowest, highest, rails) };
        Finding[] found = [.. DesignCheck.Run(design).Where(finding => finding.Code is Messages.SupplyOutsidePart or Messages.SupplyDestroysPart)];
        if (code is null)
        {
            Assert.Empty(found);
            return;
        }

        Assert.All(found, finding => Assert.Equal(code, finding.Code));
        Assert.All(found, finding => Assert.Equal(code == Messages.SupplyDestroysPart ? Severity.Error : Severity.Warning, finding.Severity));
        Assert.All(found, finding => Assert.Contains(lowest < 2.7 ? "2.7 V" : "5.5 V", finding.Help, StringComparison.Ordinal));
    }

    [Fact]
    public void Supply_OfTheConvertersOwn_IsWhatItsRangeIsHeldTo()
    {
        Design design = WithPart("converter", new(Voltage.FromVolts(4.5), Voltage.FromVolts(5.5)));
        Assert.Contains(DesignCheck.Run(design), finding => finding.Code == Messages.SupplyOutsidePart);
        Design own = design with { Converter = design.Converter with { OwnSupply = Voltage.FromVolts(5) }, Supply = Of(3, 5) };
        Assert.DoesNotContain(DesignCheck.Run(own), finding => finding.Code is Messages.SupplyOutsidePart or Messages.SupplyDestroysPart);
        Design over = design with { Converter = design.Converter with { OwnSupply = Voltage.FromVolts(6) }, Supply = Of(3, 6) };
        Assert.Contains(DesignCheck.Run(over), finding => finding.Code == Messages.SupplyDestroysPart && finding.Field == DesignKeys.Converter.OwnSupply);
    }

    [Fact]
    public void OneCard_InSeveralPlaces_IsSpokenOfOnce()
    {
        OpAmp opAmp = OpAmp.MicropowerCmos with { Card = "mine", SupplyRange = Range };
        Design design = Designs.Dry with { Stages = [.. Designs.Dry.Stages.Select(stage => stage.WithOpAmp(opAmp))], Supply = Of(2, 3.3) };
        Assert.Single(DesignCheck.Run(design), finding => finding.Code == Messages.SupplyOutsidePart);
    }

    [Theory]
    [InlineData(3, 6)]
    [InlineData(8, 6)]     // 8/6 is less than 12/8
    [InlineData(9, 12)]
    [InlineData(100, 24)]
    public void Gain_ThatIsNotOffered_IsSaidWithTheNearest(double gain, double nearest)
    {
        Design design = Designs.Gel with { Amplifier = Designs.Gel.Amplifier with { Card = "steps", Gains = [6, 12, 24], Gain = gain } };
        Finding finding = Assert.Single(DesignCheck.Run(design), finding => finding.Code == Messages.GainNotOffered);
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Contains($"set {nearest}, the nearest", finding.Help, StringComparison.Ordinal);
        Assert.DoesNotContain(DesignCheck.Run(design with { Amplifier = design.Amplifier with { Gain = nearest } }), one => one.Code == Messages.GainNotOffered);
    }

    [Fact]
    public void Advice_OnAnAmplifierWithSteps_NamesNoOtherGain()
    {
        Design design = Designs.Gel with { Amplifier = Designs.Gel.Amplifier with { Gains = [6, 12, 24], Gain = 12 } };
        double[] tried = [.. Candidates.For(design, Evaluator.Evaluate(design)).Select(candidate => candidate.Design.Amplifier.Gain)];
        Assert.Contains(6, tried);
        Assert.All(tried, gain => Assert.Contains(gain, new double[] { 6, 12, 24 }));
    }

    // R_G = k/(G − 1).
    [Fact]
    public void GainResistor_OfAKnownConstant_IsInThePartsList()
    {
        DifferentialAmplifier amplifier = new() { Gain = 5, GainConstant = Resistance.FromKilohms(50) };
        Assert.Equal(12_500, amplifier.GainResistor!.Value.Ohms, 1e-9);
        Assert.Null((amplifier with { Gain = 1 }).GainResistor);
        Assert.Null((amplifier with { Gains = [5, 10] }).GainResistor);
        Assert.Equal(12_400, Board.Of(Designs.Gel with { Amplifier = amplifier }).Parts.First(part => part.Key == DesignKeys.Amplifier.GainConstant).Value!.SiValue, 1e-9);
        Assert.Null(Board.Of(Designs.Gel).Parts.First(part => part.Key == DesignKeys.Amplifier.GainConstant).Value);
    }
}
