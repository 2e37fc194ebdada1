using System.Numerics;
using FrontEnd.Circuits;
using FrontEnd.Filters;

namespace FrontEnd.AntiAlias;

/// <summary>State-variable filter of three op-amps (summing amplifier and two integrators) for a Q that one op-amp cannot hold: low-pass,
/// band-pass and high-pass at once.</summary>
/// <remarks>f0 = 1/(2π·R·C), Q = (1 + R2/R1)/3, gain −1 at 0 Hz (low-pass output); the summing amplifier's three resistors are equal. With
/// T = 1/(sRC + (1 + sRC)/A):
/// H_LP = −T²/(1 + 3/A + 3βT + T²), β = R1/(R1 + R2). Derived; Q and R2/R1 agree with S. Franco, Design with Operational Amplifiers and
/// Analog Integrated Circuits, Example 3.18.</remarks>
/// <param name="R">Integrator resistors.</param>
/// <param name="C">Integrator capacitors.</param>
/// <param name="R1">From the summing amplifier's + input to common.</param>
/// <param name="R2">From the band-pass output to the summing amplifier's + input.</param>
public sealed record StateVariableSection(Resistance R, Capacitance C, Resistance R1, Resistance R2, OpAmp OpAmp)
{
    /// <summary>Above this Q a unity-gain Sallen–Key needs C1/C2 above 100; from there the three op-amps are worth their current (common
    /// practice, no source).</summary>
    public const double WorthwhileQ = 5;

    /// <summary>f0 by formula.</summary>
    public Frequency Pole => Frequency.FromHertz(1 / (2 * Math.PI * R.Ohms * C.Farads));

    /// <summary>Q by formula.</summary>
    public double Q => (1 + (R2 / R1)) / 3;

    /// <summary>Parts for f0 and Q: R and R2 rounded to a series for given C and R1.</summary>
    public static StateVariableSection Design(
        Frequency pole, double q, Capacitance c, Resistance r1, PreferredSeries series, OpAmp opAmp) =>
        new(
            PreferredValues.Nearest(SectionDesign.Rc(pole, c), series), c, r1,
            PreferredValues.Nearest(Resistance.FromOhms(r1.Ohms * ((3 * q) - 1)), series), opAmp);

    /// <summary>Low-pass response as built.</summary>
    public Complex LowPass(double hertz)
    {
        Complex s = new(0, 2 * Math.PI * hertz);
        Complex t = Integrator(s, out Complex inverse);
        return -t * t / Denominator(t, inverse);
    }

    /// <summary>Band-pass response as built; gain Q at f0.</summary>
    public Complex BandPass(double hertz)
    {
        Complex s = new(0, 2 * Math.PI * hertz);
        Complex t = Integrator(s, out Complex inverse);
        return t / Denominator(t, inverse);
    }

    /// <summary>Q as built, op-amps included: they lag by f0/GBW each integrator and three times that in the summing amplifier (noise gain
    /// 3), which raises Q to about Q/(1 − 5·Q·f0/GBW) (derived). The width of the band-pass between its −3 dB points is f0/Q.</summary>
    public double BuiltQ()
    {
        double f0 = Pole.Hertz;
        // The top of the band-pass within ±20 %, then the points of half its power.
        double peak = MathExtra.LeastAt(f => -Complex.Abs(BandPass(f)), 0.8 * f0, 1.2 * f0);
        double half = Complex.Abs(BandPass(peak)) * Math.Sqrt(0.5);
        double lower = MathExtra.Bisect(f => Complex.Abs(BandPass(f)) - half, peak / 100, peak);
        double upper = MathExtra.Bisect(f => Complex.Abs(BandPass(f)) - half, peak, peak * 100);
        return peak / (upper - lower);
    }

    private Complex Integrator(Complex s, out Complex inverse)
    {
        inverse = (1 / OpAmp.DcGain) + (s / (2 * Math.PI * OpAmp.GainBandwidth.Hertz));
        Complex src = s * (R.Ohms * C.Farads);
        return 1 / (src + ((1 + src) * inverse));
    }

    private Complex Denominator(Complex t, Complex inverse)
    {
        double beta = R1.Ohms / (R1.Ohms + R2.Ohms);
        return 1 + (3 * inverse) + (3 * beta * t) + (t * t);
    }
}
