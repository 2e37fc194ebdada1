using System.Numerics;
using FrontEnd.Amplifier;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Inputs;
using FrontEnd.Quantities;
using FrontEnd.Tests.Networks;
using Xunit;
using static FrontEnd.Tests.Designs;

namespace FrontEnd.Tests.Topologies;

/// <summary>The input network and the driven ground as circuits.</summary>
public sealed class InputCircuitTests
{
    /// <summary>Parts of a gain and a unity-gain frequency make just these again, and a dense network of them has the gain K0/(1 + s·K0/(2πf_u)).</summary>
    [Theory]
    [InlineData(10000, 2000)]
    [InlineData(5000, 300)]
    [InlineData(74.82, 5092)]
    public void GroundIntegrator_ThereAndBack_IsTheGain(double gain, double unity)
    {
        GroundIntegrator parts = GroundIntegrator.Of(gain, Frequency.FromHertz(unity), GroundIntegrator.LargestFeedback);
        Assert.Equal(gain, parts.DcGain, 1e-9 * gain);
        Assert.Equal(unity, parts.UnityGain.Hertz, 1e-9 * unity);
        Assert.Equal(unity / gain, parts.Corner.Hertz, 1e-9 * unity);
        var plain = new PlainNetwork();
        int first = plain.Node(), second = plain.Node(), minus = plain.Node(), output = plain.Node();
        int one = plain.Source(first), two = plain.Source(second);
        plain.Resistor(first, minus, parts.Averaging(2).Ohms);
        plain.Resistor(second, minus, parts.Averaging(2).Ohms);
        plain.Resistor(minus, output, parts.Feedback.Ohms);
        plain.Capacitor(minus, output, parts.Capacitor.Farads);
        plain.OpAmp(output, PlainNetwork.Common, minus, _ => 1e-15);
        foreach (double hertz in (double[])[0.001, 1, 50, unity, 1e4])
        {
            var s = new Complex(0, 2 * Math.PI * hertz);
            Complex found = plain.Solve(s, [], [], [(one, 1), (two, 1)])[output], wanted = -gain / (1 + (s * gain / (2 * Math.PI * unity)));
            Assert.True(Complex.Abs(found - wanted) <= 1e-8 * Complex.Abs(wanted), $"{found}, not {wanted}, at {hertz} Hz");
        }
    }

    /// <summary>What is fitted stands in the circuit by its role, with tolerance and nodes; what is not, does not.</summary>
    [Fact]
    public void Of_BufferedDesign_HasItsPartsByRole()
    {
        Design design = Gel with
        {
            Electrodes = Gel.Electrodes with { ActiveBuffer = new ElectrodeBuffer { SkinResistor = Resistance.FromKilohms(68) }, ReferenceBuffer = new ElectrodeBuffer() },
            Input = Gel.Input with { SeriesResistor = Resistance.FromKilohms(10), BiasResistor = null },
        };
        Circuit circuit = InputCircuit.Of(design);
        Assert.Equal(circuit.Parts.Count, circuit.Parts.Select(part => part.Role).Distinct().Count());
        Assert.Equal((68e3, design.Input.ResistorTolerance.Fraction), (circuit.Find(InputCircuit.SkinResistor("active"))!.Value, circuit.Find(InputCircuit.SkinResistor("active"))!.Tolerance));
        Assert.Equal((InputCircuit.ActiveLead, InputCircuit.ActiveInput), (circuit.Find(InputCircuit.ActiveResistor)!.From, circuit.Find(InputCircuit.ActiveResistor)!.To));
        Assert.Null(circuit.Find(InputCircuit.SkinResistor("reference")));
        Assert.Null(circuit.Find(InputCircuit.ActiveBias));
        Assert.Equal(["buffer-active", "buffer-reference"], circuit.Clipping);
    }
}
