using FrontEnd.Budgets;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Quantities;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Tests.Budgets;

/// <summary>The input network at dc by the lanes' fixed order of pivots, at all but zero hertz, against the pivoted solve without capacitors.</summary>
public sealed class DirectLanesTests
{
    [Property(MaxTest = 200)]
    public void At_AnyDesign_IsThePivotedSolve(int seed) => Compare(Designs.Varied(seed, 12));

    /// <summary>No resistor in any lead, with and without buffers.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void At_WithoutResistors_IsThePivotedSolve(bool buffered)
    {
        OpAmp opAmp = OpAmp.MicropowerCmos with { BiasCurrent = Current.FromAmperes(20e-12), OffsetVoltage = Voltage.FromMillivolts(2) };
        ElectrodeBuffer? buffer = buffered ? new() { OpAmp = opAmp, OutputResistance = default } : null;
        Compare(Designs.Dry with
        {
            Input = Designs.Dry.Input with { SeriesResistor = default }, GroundDrive = Designs.Dry.GroundDrive with { SeriesResistor = default },
            Electrodes = Designs.Dry.Electrodes with { ActiveBuffer = buffer, ReferenceBuffer = buffer },
            Amplifier = Designs.Dry.Amplifier with { BiasCurrent = Current.FromAmperes(300e-12) },
        });
    }

    private static void Compare(Design design)
    {
        var path = new SignalPath(design);
        DirectLanes pivoted = PivotedDirect.Of(design, path.Model.Input, path.Built), lanes = DirectLanes.At(path.Lanes.Input, design, path.Builds);
        foreach ((DirectAt wanted, DirectAt got) in (ReadOnlySpan<(DirectAt, DirectAt)>)[(pivoted.Difference, lanes.Difference), (pivoted.Mean, lanes.Mean), (pivoted.Drive, lanes.Drive), (pivoted.FirstBuffer, lanes.FirstBuffer), (pivoted.SecondBuffer, lanes.SecondBuffer)])
        {
            foreach ((double w, double g) in (ReadOnlySpan<(double, double)>)[(wanted.Offset[0], got.Offset[0]), (wanted.AmplifierBias[0], got.AmplifierBias[0]), (wanted.BufferBias[0], got.BufferBias[0]), (wanted.BufferOffset[0], got.BufferOffset[0])])
            {
                Assert.Equal(w, g, (1e-8 * Math.Abs(w)) + 1e-18);
            }
        }
    }
}
