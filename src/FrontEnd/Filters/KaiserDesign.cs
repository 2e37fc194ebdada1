using MathNet.Numerics;

namespace FrontEnd.Filters;

/// <summary>Linear-phase FIR by the Kaiser window, from a requirement.</summary>
/// <remarks>One δ for both bands, the smaller of pass-band and stop-band deviation; A = −20·log10 δ; β = 0.1102·(A − 8.7), A &gt; 50;
/// 0.5842·(A − 21)^0.4 + 0.07886·(A − 21), 21 ≤ A ≤ 50; 0 below;
/// L − 1 = (A − 7.95)/(2.285·Δω). Ideal cut-offs stand midway between pass and stop edge. The formula's length is a forecast: the filter is
/// measured and made longer until it meets the requirement.
/// Source: J. F. Kaiser, Nonrecursive digital filter design using the I0-sinh window function, IEEE ISCAS 1974; A. V. Oppenheim, R. W.
/// Schafer, Discrete-Time Signal Processing, section 7.5.3 (both from memory).</remarks>
internal static class KaiserDesign
{
    /// <summary>Longest filter that is sought.</summary>
    public const int MostTaps = 20_001;

    /// <summary>β for a stop-band attenuation A [dB].</summary>
    public static double Beta(double attenuation) => attenuation switch
    {
        > 50 => 0.1102 * (attenuation - 8.7),
        >= 21 => (0.5842 * Math.Pow(attenuation - 21, 0.4)) + (0.07886 * (attenuation - 21)),
        _ => 0,
    };

    /// <summary>Kaiser's length for attenuation A [dB] and transition width Δω [rad/sample], rounded up.</summary>
    public static int ForecastLength(double attenuation, double width) =>
        1 + (int)Math.Ceiling(Math.Max(0, attenuation - 7.95) / (2.285 * width));

    /// <summary>The shortest Kaiser-window filter of odd length found from the forecast on that meets the requirement; null where it would
    /// be longer than <see cref="MostTaps"/>.</summary>
    public static FirFilter? Design(FilterRequirement requirement, Frequency rate)
    {
        double delta = FirRequirement.Deviation(requirement);
        double attenuation = -20 * Math.Log10(delta);
        double width = FirRequirement.TransitionWidth(requirement, rate);
        // Odd lengths only: an even one has a zero at half the rate, which a high-pass and a band-stop cannot use.
        int start = Math.Max(3, ForecastLength(attenuation, width) | 1);
        // Kaiser's fit leaves some lengths a few hundredths of a decibel short at any length; a little more β cures that.
        for (int length = start; length <= MostTaps; length += Math.Max(2, start / 50 * 2))
        {
            foreach (double extra in (double[])[0, 0.3, 1])
            {
                FirFilter filter = Windowed(requirement, rate, length, Beta(attenuation + extra));
                if (FirRequirement.IsMet(filter, requirement))
                {
                    return filter;
                }
            }
        }

        return null;
    }

    /// <summary>The ideal filter's impulse response times the window, of any odd length.</summary>
    public static FirFilter Windowed(FilterRequirement requirement, Frequency rate, int length, double beta)
    {
        double[] cuts = [.. requirement.Pass.Corners.Zip(requirement.Stop.Corners).Select(
            p => Math.PI * (p.First.Hertz + p.Second.Hertz) / rate.Hertz)];
        double[] taps = new double[length];
        double middle = (length - 1) / 2.0, whole = SpecialFunctions.BesselI0(beta);
        for (int k = 0; k <= (length - 1) / 2; k++)
        {
            double t = k - middle;
            double ideal = requirement.Pass switch
            {
                LowPass => Sinc(cuts[0], t),
                HighPass => Sinc(Math.PI, t) - Sinc(cuts[0], t),
                BandPass => Sinc(cuts[1], t) - Sinc(cuts[0], t),
                BandStop => Sinc(Math.PI, t) - Sinc(cuts[1], t) + Sinc(cuts[0], t),
                _ => throw new InvalidOperationException($"Shape {requirement.Pass.GetType().Name} is not handled."),
            };
            double x = middle == 0 ? 0 : t / middle;
            taps[k] = ideal * SpecialFunctions.BesselI0(beta * Math.Sqrt(Math.Max(0, 1 - (x * x)))) / whole;
            taps[length - 1 - k] = taps[k];
        }

        return new FirFilter(taps, rate);
    }

    // Whole multiples of π make exact zeros: sin(π·t) of a whole t is 1e-16 otherwise.
    private static double Sinc(double cut, double t) =>
        t == 0 ? cut / Math.PI : cut == Math.PI && t == Math.Floor(t) ? 0 : Math.Sin(cut * t) / (Math.PI * t);
}

/// <summary>A requirement as seen by a linear-phase FIR.</summary>
internal static class FirRequirement
{
    /// <summary>Largest pass-band deviation of a response that wavers about 1: loss A from the top means (1 + δ)/(1 − δ) =
    /// 10^(A/20).</summary>
    internal static double PassDeviation(FilterRequirement requirement)
    {
        double ratio = requirement.Ripple.VoltageRatio;
        return (ratio - 1) / (ratio + 1);
    }

    /// <summary>Largest stop-band gain, the top of the pass band being 1 + δp.</summary>
    internal static double StopDeviation(FilterRequirement requirement) =>
        (1 + PassDeviation(requirement)) / requirement.Attenuation.VoltageRatio;

    /// <summary>The narrowest transition between pass and stop edge, Δω [rad/sample].</summary>
    internal static double TransitionWidth(FilterRequirement requirement, Frequency rate) =>
        requirement.Pass.Corners.Zip(requirement.Stop.Corners).Min(p =>
            Math.Abs(p.First.Hertz - p.Second.Hertz)) * 2 * Math.PI / rate.Hertz;

    internal static double Deviation(FilterRequirement requirement) => Math.Min(PassDeviation(requirement), StopDeviation(requirement));

    /// <summary>Pass and stop bands [Hz], lowest first.</summary>
    internal static IReadOnlyList<(double Low, double High, bool Pass)> Bands(FilterRequirement requirement, double rate)
    {
        double half = rate / 2;
        double[] pass = [.. requirement.Pass.Corners.Select(c => c.Hertz)];
        double[] stop = [.. requirement.Stop.Corners.Select(c => c.Hertz)];
        return requirement.Pass switch
        {
            LowPass => [(0, pass[0], true), (stop[0], half, false)],
            HighPass => [(0, stop[0], false), (pass[0], half, true)],
            BandPass => [(0, stop[0], false), (pass[0], pass[1], true), (stop[1], half, false)],
            BandStop => [(0, pass[0], true), (stop[0], stop[1], false), (pass[1], half, true)],
            _ => throw new InvalidOperationException($"Shape {requirement.Pass.GetType().Name} is not handled."),
        };
    }

    internal static bool IsMet(FirFilter filter, FilterRequirement requirement)
    {
        FirExtremes reached = Measure(filter, requirement);
        // What rounding leaves of a filter that sits on its limit: a millionth of a decibel.
        return reached.Top <= reached.Bottom * requirement.Ripple.VoltageRatio * (1 + 1e-7)
            && reached.Stop * requirement.Attenuation.VoltageRatio <= reached.Top * (1 + 1e-7);
    }

    /// <summary>On 24 points per lobe of |H|², which unlike |H| has no kink at a zero; then every top and valley that may be the largest or
    /// least is sought between the points.</summary>
    internal static FirExtremes Measure(FirFilter filter, FilterRequirement requirement)
    {
        double top = 0;
        double bottom = double.PositiveInfinity;
        double stop = 0;
        double lobe = filter.Rate.Hertz / filter.Length;
        var power = FirPower.Of(filter);
        foreach ((double low, double high, bool pass) in Bands(requirement, filter.Rate.Hertz))
        {
            double[] grid = ResponseExtremes.Even(low, high, 8 + (int)(24 * (high - low) / lobe));
            double greatest = ResponseExtremes.Greatest(power.At, grid).Value;
            if (pass)
            {
                top = Math.Max(top, greatest);
                bottom = Math.Min(bottom, ResponseExtremes.Least(power.At, grid).Value);
            }
            else
            {
                stop = Math.Max(stop, greatest);
            }
        }

        return new FirExtremes(Math.Sqrt(top), Math.Sqrt(bottom), Math.Sqrt(stop));
    }
}

/// <summary>Largest and least gain in the pass bands, largest in the stop bands.</summary>
internal readonly record struct FirExtremes(double Top, double Bottom, double Stop);
