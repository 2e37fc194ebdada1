using FrontEnd.Budgets;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using Xunit;

namespace FrontEnd.Tests.Budgets;

/// <summary>How far the converter's pin can swing: half of full scale, but never beyond what the supply lets in.</summary>
public sealed class ConverterSwingTests
{
    /// <summary>By hand. A single pin takes the supply: 9 V of full scale on 3 V is ±1.5 V, 2.4 V is ±1.2 V. Two pins take twice the supply:
    /// 9 V on 3 V is ±3 V, 9 V on 5 V is ±4.5 V. The mid-rail, here 1 V, has no say.</summary>
    [Theory]
    [InlineData(ConverterKind.SuccessiveApproximation, 9, 3, 1.5)]
    [InlineData(ConverterKind.SuccessiveApproximation, 2.4, 3, 1.2)]
    [InlineData(ConverterKind.DeltaSigma, 9, 3, 3)]
    [InlineData(ConverterKind.DeltaSigma, 9, 5, 4.5)]
    public void Swing_OfTheConverter_IsHalfTheSmallerOfFullScaleAndWhatTheSupplyLetsIn(ConverterKind kind, double fullScale, double lowest, double swing)
    {
        Design design = Tests.Designs.Gel with
        {
            Converter = Tests.Designs.Gel.Converter with { Kind = kind, FullScale = VoltagePeakToPeak.FromVolts(fullScale) },
            Supply = new Supply { Lowest = Voltage.FromVolts(lowest), Highest = Voltage.FromVolts(5.5), MidRail = Voltage.FromVolts(1) },
        };
        NodeLevel pin = new Evaluation(design).Levels.Nodes.Single(node => node.Node == NodeId.Converter);
        Assert.Equal(swing, pin.Swing, 1e-12);
        Assert.Equal(20 * Math.Log10(swing / pin.Total), pin.Headroom!.Value, 1e-9);
    }
}
