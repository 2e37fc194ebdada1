namespace FrontEnd.Filters;

/// <summary>What a notch costs and what it is worth when the mains wanders.</summary>
/// <param name="Bandwidth">Width between the −3 dB points.</param>
/// <param name="TimeConstant">τ = −1/(fs·ln r), r the pole radius √a2; about 1/(π·bandwidth).</param>
/// <param name="RingTime">Time to ring down to 1 %, τ·ln 100.</param>
/// <param name="Depths">Attenuation at the mains' deviations asked for [dB].</param>
public sealed record NotchFigures(Frequency Bandwidth, Duration TimeConstant, Duration RingTime, IReadOnlyList<NotchDepth> Depths)
{
    /// <summary>The deviations looked at unless others are given [Hz]: 0.05, 0.1, 0.2, 0.5 (common practice, no source).</summary>
    public static IReadOnlyList<Frequency> CustomaryDeviations { get; } =
        [Frequency.FromHertz(0.05), Frequency.FromHertz(0.1), Frequency.FromHertz(0.2), Frequency.FromHertz(0.5)];

    /// <summary>The figures of a digital notch by itself, at the customary deviations unless others are given.</summary>
    public static NotchFigures Of(Frequency centre, Frequency bandwidth, Frequency rate, IReadOnlyList<Frequency>? deviations = null)
    {
        Biquad notch = Notch.Coefficients(centre, bandwidth, rate);
        var sections = new SecondOrderSections([notch]);
        // ln r = ½·ln a2; a very wide notch has two real poles, and the slower one rings.
        double tau = -1 / (rate.Hertz * Math.Log(Math.Max(notch.PoleRadius, double.Epsilon)));
        return new NotchFigures(bandwidth, Duration.FromSeconds(tau), Duration.FromSeconds(tau * Math.Log(100)),
            [.. (deviations ?? CustomaryDeviations).Select(d => new NotchDepth(d, DepthAt(sections, centre, d, rate)))]);
    }

    private static double? DepthAt(SecondOrderSections sections, Frequency centre, Frequency deviation, Frequency rate)
    {
        double power = Math.Max(
            sections.PowerResponse(centre.Hertz + deviation.Hertz, rate.Hertz),
            sections.PowerResponse(centre.Hertz - deviation.Hertz, rate.Hertz));
        return power < 1e-30 ? null : -10 * Math.Log10(power);
    }
}

/// <summary>Attenuation of a notch at a deviation of the mains, the worse of both sides [dB]; null where it is without bound. A notch at
/// harmonic h finds it h times as far off.</summary>
public sealed record NotchDepth(Frequency Deviation, double? Attenuation);
