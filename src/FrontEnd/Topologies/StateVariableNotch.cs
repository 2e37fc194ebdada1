using System.Numerics;
using FrontEnd.AntiAlias;
using FrontEnd.Circuits;
using FrontEnd.Quantities;

namespace FrontEnd.Topologies;

/// <summary>Analogue notch of four op-amps: the high-pass and the low-pass output of a state-variable filter added. Its null stays whatever the parts are, they only move it; its Q is set by two resistors and does not run away.</summary>
/// <remarks>f0 = 1/(2πRC), Q = (1 + R2/R1)/3, gain 1 far from the notch, not inverting. With da = sRaCa + (1 + sRaCa)/A, db alike, N = R5·(1/R3 + 1/R4 + 1/R5), β = R1/(R1 + R2):
/// H = (R5/R3)·(R8/R6·da·db + R8/R7)/{[(1 + N/A)·da·db + N·β·db + R5/R4]·(1 + (1 + R8/R6 + R8/R7)/A)}.
/// Derived; Q and R2/R1 agree with S. Franco, Design with Operational Amplifiers and Analog Integrated Circuits, Example 3.18. The op-amps' output resistance plays no part so far below their bandwidth and is left out.</remarks>
/// <param name="R">Both integrators' resistors, Ra and Rb.</param>
/// <param name="C">Both integrators' capacitors, Ca and Cb.</param>
/// <param name="R1">From the first amplifier's + input to common.</param>
/// <param name="R2">From the band-pass output to the first amplifier's + input.</param>
/// <param name="Equal">R3 (input), R4 (from the low-pass output) and R5 (feedback) of the first amplifier; R6 (from the high-pass), R7 (from the low-pass) and R8 (feedback) of the adding one.</param>
public sealed record StateVariableNotch(Resistance R, Capacitance C, Resistance R1, Resistance R2, Resistance Equal, OpAmp OpAmp)
{
    /// <summary>Op-amps of the circuit.</summary>
    public const int OpAmps = 4;

    public Frequency Centre => Frequency.FromHertz(1 / (2 * Math.PI * R.Ohms * C.Farads));

    public double Q => (1 + (R2 / R1)) / 3;

    /// <summary>The circuit as built: parts by name, transfer, tolerance.</summary>
    public NotchCircuit AsBuilt()
    {
        OpAmp opAmp = OpAmp;
        return new NotchCircuit(
            ["Ra", "Rb", "Ca", "Cb", "R1", "R2", "R3", "R4", "R5", "R6", "R7", "R8"],
            [R.Ohms, R.Ohms, C.Farads, C.Farads, R1.Ohms, R2.Ohms, .. Enumerable.Repeat(Equal.Ohms, 6)],
            Centre.Hertz,
            (x, s) =>
            {
                Complex inverse = (1 / opAmp.DcGain) + (s / (2 * Math.PI * opAmp.GainBandwidth.Hertz));
                Complex a = s * (x[0] * x[2]), b = s * (x[1] * x[3]);
                Complex da = a + ((1 + a) * inverse), db = b + ((1 + b) * inverse), both = da * db;
                double noiseGain = x[8] * ((1 / x[6]) + (1 / x[7]) + (1 / x[8])), beta = x[4] / (x[4] + x[5]), high = x[11] / x[9], low = x[11] / x[10];
                return (
                    x[8] / x[6] * ((high * both) + low),
                    (((1 + (noiseGain * inverse)) * both) + (noiseGain * beta * db) + (x[8] / x[7])) * (1 + ((1 + high + low) * inverse)));
            });
    }
}
