using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using Xunit;

namespace FrontEnd.Tests.Reporting;

/// <summary>What the noise verdict calls the largest part.</summary>
public sealed class NoiseVerdictTests
{
    /// <summary>4kT·620 kΩ is about 10 times the square of a quiet amplifier's 30 nV/√Hz: without excess noise the electrode is still the largest part.</summary>
    [Fact]
    public void Dominates_DryElectrodes_IsTheirThermalNoise()
    {
        Design quiet = Designs.Dry with { Amplifier = Designs.Dry.Amplifier with { InputNoise = VoltageNoiseDensity.FromNanovoltsPerRootHertz(30) } };
        Assert.Equal("active electrode, thermal", Evaluator.Evaluate(quiet)[ResultIds.Noise.BoardShare].Verdict.Dominates);
    }

    [Fact]
    public void Dominates_LoudAmplifier_IsTheAmplifier()
    {
        Design loud = Designs.Dry with { Amplifier = Designs.Dry.Amplifier with { InputNoise = VoltageNoiseDensity.FromNanovoltsPerRootHertz(900) } };
        Assert.Equal("amplifier voltage", Evaluator.Evaluate(loud)[ResultIds.Noise.BoardShare].Verdict.Dominates);
    }
}
