using System.Runtime.InteropServices;

namespace FrontEnd.Filters;

/// <summary>One digital section as two states that change from sample to sample, written in differences: z = 1 + δ.</summary>
/// <remarks>z²·A = δ² + p·δ + q with p = 2 + a1 and q = 1 + a1 + a2. Where poles lie next to z = 1 both sums are exact in floating point, and all
/// that is slow about the section stands in p and q; in a1 and a2 it stands in the last digits. The states are 1/A and δ/(A·√q), with the input
/// v: x1' = x1 + √q·x2, x2' = x2 − √q·x1 − p·x2 + v/√q. Derived.</remarks>
/// <param name="P">p.</param>
/// <param name="Q">q, above 0.</param>
/// <param name="Root">√q.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct SectionStates(double P, double Q, double Root)
{
    /// <param name="section">Poles inside the unit circle.</param>
    internal static SectionStates Of(Biquad section)
    {
        double q = 1 + section.A1 + section.A2;
        return new SectionStates(2 + section.A1, q, Math.Sqrt(q));
    }

    /// <summary>By how much the states change from one sample to the next, A − I.</summary>
    internal (double F11, double F12, double F21, double F22) Change => (0, Root, -Root, -P);

    /// <summary>What a unit at the input adds to the second state; the first gets nothing at once.</summary>
    internal double Input => 1 / Root;

    /// <summary>Shares of the two states, and of the input, in what leaves a numerator n0 + n1·z⁻¹ + n2·z⁻² over these poles.</summary>
    internal (double C1, double C2, double Direct) Output(double n0, double n1, double n2) =>
        (n0 + n1 + n2 - (n0 * Q), ((2 * n0) + n1 - (n0 * P)) * Root, n0);

    /// <summary>Shares of the two states in the sum of an output over this sample and all to come: −C·(A − I)⁻¹.</summary>
    internal (double G1, double G2) ToCome(double c1, double c2) => (((c1 * P) - (c2 * Root)) / Q, c1 / Root);
}
