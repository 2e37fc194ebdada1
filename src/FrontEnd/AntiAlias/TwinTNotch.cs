using System.Numerics;
using FrontEnd.Amplifier;
using FrontEnd.Quantities;

namespace FrontEnd.AntiAlias;

/// <summary>Analogue notch: a twin-T network and a non-inverting amplifier of gain G whose output also drives the foot of R3; the foot of C3 is at common.</summary>
/// <remarks>Ideal parts: H = G·(1 + S²)/(1 + 2(2 − G)·S + S²), S = s/ω0, Q = 1/(2(2 − G)); both feet at common and no amplifier: Q = 1/4. (Each foot carries half of what the network takes from them, hence G up to 2.)
/// Source: B. Carter, R. Mancini (eds.), Op Amps for Everyone, design reference SLOD006, section 16.6.1, equation 16-21. With real parts the three node equations are solved:
/// unequal parts leave a residue at the null, which is why a digital notch is deeper.</remarks>
/// <param name="R1">Input to the resistors' middle.</param>
/// <param name="R2">Resistors' middle to the output.</param>
/// <param name="R3">Capacitors' middle to the output (passive: common); half of R1.</param>
/// <param name="C1">Input to the capacitors' middle.</param>
/// <param name="C2">Capacitors' middle to the output.</param>
/// <param name="C3">Resistors' middle to common; twice C1.</param>
/// <param name="Gain">G, 1 ≤ G &lt; 2; null for the passive network.</param>
public sealed record TwinTNotch(Resistance R1, Resistance R2, Resistance R3, Capacitance C1, Capacitance C2, Capacitance C3, double? Gain, OpAmp OpAmp)
{
    /// <summary>f0 = 1/(2π·R1·C1) for matched parts.</summary>
    public Frequency Centre => SectionCentre(R1, C1);

    public double Q => Gain is { } g ? 1 / (2 * (2 - g)) : 0.25;

    /// <summary>Gain for a Q: G = 2 − 1/(2Q), Q above ½.</summary>
    public static double GainFor(double q) => 2 - (1 / (2 * q));

    /// <summary>A notch of preferred resistors for a given capacitor; R3 and C3 are two of the same in parallel, which keeps the ratio.</summary>
    public static TwinTNotch Design(Frequency centre, double? q, Capacitance c, PreferredSeries series, OpAmp opAmp)
    {
        Resistance r = PreferredValues.Nearest(SectionDesign.Rc(centre, c), series);
        return new TwinTNotch(r, r, Resistance.FromOhms(r.Ohms / 2), c, c, Capacitance.FromFarads(2 * c.Farads), q is { } wanted ? GainFor(wanted) : null, opAmp);
    }

    /// <summary>The response as built; gain G (passive: 1) far from the notch.</summary>
    public Complex Response(double hertz)
    {
        Complex s = new(0, 2 * Math.PI * hertz);
        Complex inverse = (1 / OpAmp.DcGain) + (s / (2 * Math.PI * OpAmp.GainBandwidth.Hertz));
        Complex gain = Gain is { } g ? g / (1 + (g * inverse)) : 0;
        (double g1, double g2, double g3) = (1 / R1.Ohms, 1 / R2.Ohms, 1 / R3.Ohms);
        (Complex y1, Complex y2, Complex y3) = (s * C1.Farads, s * C2.Farads, s * C3.Farads);

        // Middle nodes for Vi = 1 as p + q·Vp, the foot of R3 being at gain·Vp; no current leaves the output node.
        Complex resistors = g1 + g2 + y3;
        Complex capacitors = y1 + y2 + g3;
        Complex constant = (g2 * g1 / resistors) + (y2 * y1 / capacitors);
        Complex feedback = (g2 * g2 / resistors) + (y2 * (y2 + (g3 * gain)) / capacitors);
        Complex node = constant / (g2 + y2 - feedback);
        return Gain is null ? node : gain * node;
    }

    /// <summary>Attenuation at a frequency against the gain far away [dB]; null where it is without bound.</summary>
    public double? Depth(double hertz)
    {
        double share = Complex.Abs(Response(hertz)) / (Gain ?? 1);
        return share < 1e-15 ? null : -20 * Math.Log10(share);
    }

    private static Frequency SectionCentre(Resistance r, Capacitance c) => Frequency.FromHertz(1 / (2 * Math.PI * r.Ohms * c.Farads));
}
