using System.Numerics;
using System.Runtime.InteropServices;

namespace FrontEnd.Filters;

/// <summary>A filter's response at one frequency.</summary>
/// <param name="Hertz">Frequency [Hz].</param>
/// <param name="Gain">|H|.</param>
/// <param name="Decibels">20·log10|H|; null where the gain is 0.</param>
/// <param name="PhaseDegrees">Phase [°], without jumps of 360° along the sweep.</param>
/// <param name="GroupDelay">−dφ/dω [s].</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct ResponsePoint(double Hertz, double Gain, double? Decibels, double PhaseDegrees, double GroupDelay);

/// <summary>Questions put to any filter's response: sweep, crossings of a level, droop, depth.</summary>
internal static class FrequencyResponse
{
    private const int GridPoints = 4000;

    /// <summary>dB, unwrapped phase and group delay at the given frequencies, lowest first.</summary>
    public static IReadOnlyList<ResponsePoint> Sweep(IFrequencyResponse filter, IReadOnlyList<double> hertz)
    {
        var points = new List<ResponsePoint>(hertz.Count);
        double previous = 0;
        foreach (double f in hertz)
        {
            Complex h = filter.Response(f);
            double gain = Complex.Abs(h);
            double phase = h.Phase * 180 / Math.PI;
            if (0 < points.Count)
            {
                phase += 360 * Math.Round((previous - phase) / 360);
            }

            previous = phase;
            points.Add(new ResponsePoint(f, gain, gain == 0 ? null : 20 * Math.Log10(gain), phase, filter.GroupDelay(f)));
        }

        return points;
    }

    /// <summary>Where the response passes through a level below a reference, lowest first.</summary>
    /// <param name="below">How far below, as in −3 dB; <see cref="HalfPower"/> for the exact half.</param>
    /// <param name="reference">Gain that is 0 dB; null for the greatest in the range.</param>
    /// <param name="from">Lowest frequency [Hz], above 0.</param>
    /// <param name="to">Highest frequency [Hz].</param>
    /// <remarks>Looked for on a grid of 4000 logarithmic steps and refined by bisection: features narrower than 1/400 of a decade can be
    /// missed.</remarks>
    public static IReadOnlyList<Frequency> Crossings(
        IFrequencyResponse filter, Frequency from, Frequency to, Decibels below, double? reference = null)
    {
        double[] grid = [.. Enumerable.Range(0, GridPoints + 1).Select(
            i => i == GridPoints ? to.Hertz : from.Hertz * Math.Exp(Math.Log(to / from) * i / GridPoints))];
        double top = reference * reference ?? grid.Max(filter.PowerResponse);
        return [.. ResponseExtremes.Crossings(filter.PowerResponse, top * Math.Pow(10, -Math.Abs(below.Value) / 10), grid)
            .Select(Frequency.FromHertz)];
    }

    /// <summary>10·log10 2 = 3.0103 dB: the level called −3 dB.</summary>
    public static Decibels HalfPower { get; } = Decibels.FromPowerRatio(2);

    /// <summary>Largest loss in a band against the gain at a reference frequency [dB]; negative where the band lies above it.</summary>
    public static double LargestLoss(IFrequencyResponse filter, Frequency low, Frequency high, Frequency reference)
    {
        double least = ResponseExtremes.Least(filter.PowerResponse, ResponseExtremes.Even(low.Hertz, high.Hertz, GridPoints)).Value;
        return 10 * Math.Log10(filter.PowerResponse(reference.Hertz) / Math.Max(least, 1e-300));
    }

    /// <summary>Least attenuation at a frequency that has wandered by ±deviation [dB]: what a notch is worth on a real mains. Null where it
    /// is without bound.</summary>
    public static double? DepthAt(IFrequencyResponse filter, Frequency centre, Frequency deviation)
    {
        double power = Math.Max(filter.PowerResponse(centre.Hertz + deviation.Hertz), filter.PowerResponse(centre.Hertz - deviation.Hertz));
        return power < 1e-30 ? null : -10 * Math.Log10(power);
    }
}
