using FrontEnd.Amplifier;
using FrontEnd.Bench;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Quantities;
using Xunit;

namespace FrontEnd.Tests.Bench;

/// <summary>The bench's test of the input impedance, where a buffer at the electrode is what the part stands in front of.</summary>
public sealed class BufferedInputTests
{
    /// <summary>By hand: the buffer's 5 pF are 637 MΩ at 50 Hz; half of it is 330 MΩ in the E12 series, in which its 100 pA make 33.0 mV. The
    /// amplifier behind it draws nothing through the part.</summary>
    [Fact]
    public void Impedance_WithAnElectrodeBuffer_SpeaksOfTheBuffer()
    {
        Design dry = Tests.Designs.Dry;
        Design buffered = dry with
        {
            Electrodes = dry.Electrodes with { ActiveBuffer = new ElectrodeBuffer { SkinResistor = Resistance.FromKilohms(100), OpAmp = new OpAmp { BiasCurrent = Current.FromAmperes(100e-12) } } },
            GroundDrive = new GroundDrive { SeriesResistor = Resistance.FromKilohms(390) },
            Amplifier = dry.Amplifier with { BiasCurrent = Current.FromNanoamperes(5) },
        };
        BenchReading reading = BenchPlan.Of(buffered).Readings.Single(one => one.Name == "impedance");
        Assert.Equal("designed 637 MΩ to common (input.impedance_at_mains); the bias current makes a dc of 33.0 mV in the part", reading.Remark);
        Assert.StartsWith("330 MΩ between the generator and the active lead", reading.Fixture, StringComparison.Ordinal);

        // 637 MΩ of capacitance behind 330 MΩ: 1/√(1 + (330/637)²) = 0.888 of the tone.
        Assert.Equal(0.888e-3, reading.Expected!.SiValue, 5e-6);
    }
}
