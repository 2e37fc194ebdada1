using FrontEnd.Filters;
using FrontEnd.Topologies;

namespace FrontEnd.AntiAlias;

/// <summary>Where the stop band of sections as built stops falling and turns up again, as the op-amps' output resistance makes a Sallen–Key
/// do; losses against the gain at 0 Hz.</summary>
/// <remarks>Above the op-amp's bandwidth its output no longer holds the foot of C1, and the input gets through R1 and C1 to an output that
/// only Ro ties to common.</remarks>
/// <param name="TurnsAt">The lowest frequency beyond the poles at which the response is least before it rises.</param>
/// <param name="LossAtTurn">Loss there [dB]: the deepest point.</param>
/// <param name="LeastLossBeyond">Least loss at any frequency above, up to 1 GHz [dB]: the floor.</param>
/// <param name="LeastAt">Where that is.</param>
public sealed record StopBandRise(Frequency TurnsAt, double LossAtTurn, double LeastLossBeyond, Frequency LeastAt)
{
    private const double HighestHertz = 1e9;

    /// <summary>Highest frequency that is looked at, 1 GHz.</summary>
    public static Frequency Highest { get; } = Frequency.FromHertz(HighestHertz);

    private const int PerDecade = 24;

    /// <summary>A rise below this is none: rounding and ripples [dB].</summary>
    private const double Noticeable = 0.1;

    /// <summary>The rise of low-pass sections one after the other; null where the response falls all the way.</summary>
    public static StopBandRise? Of(IReadOnlyList<Stage> sections)
    {
        // Without an output resistance there is no second way to the output: the numerators are constants.
        if (!sections.Any(section => section.FittedOpAmp is { OutputResistance.Ohms: > 0 }))
        {
            return null;
        }

        double low = 2 * sections.Max(section => AsBuiltSection.Poles(section).PoleHertz);
        int points = Math.Max(2, (int)(PerDecade * Math.Log10(HighestHertz / low)));
        double[] hertz = [.. Enumerable.Range(0, points + 1).Select(i => low * Math.Pow(HighestHertz / low, (double)i / points))];
        double[] power = [.. hertz.Select(f => AsBuiltSection.PowerResponse(sections, f))];
        double zero = AsBuiltSection.PowerResponse(sections, 0);
        for (int i = 1; i < points; i++)
        {
            if (power[i + 1] <= power[i])
            {
                continue;
            }

            int top = Enumerable.Range(i + 1, points - i).MaxBy(k => power[k]);
            double turn = Extreme(sections, hertz[i - 1], hertz[i + 1], -1);
            double deepest = Loss(turn);
            double peak = top == points ? hertz[top] : Extreme(sections, hertz[top - 1], hertz[top + 1], 1);
            return deepest - Loss(peak) < Noticeable
                ? null
                : new StopBandRise(Frequency.FromHertz(turn), deepest, Loss(peak), Frequency.FromHertz(peak));
        }

        return null;

        double Loss(double f) => -10 * Math.Log10(AsBuiltSection.PowerResponse(sections, f) / zero);
    }

    /// <summary>The greatest (sign 1) or least (−1) response between two frequencies, sought on their logarithm.</summary>
    private static double Extreme(IReadOnlyList<Stage> sections, double from, double to, int sign) =>
        Math.Exp(MathExtra.LeastAt(x => -sign * AsBuiltSection.PowerResponse(sections, Math.Exp(x)), Math.Log(from), Math.Log(to)));
}
