namespace FrontEnd.Head;

/// <summary>What the rest of the brain does at the same time: a density that falls with frequency, of patches all over the brain that know
/// nothing of each other.</summary>
/// <remarks>S(f) = S_10·(10 Hz/f)^χ at one site, against far. 1 µV²/Hz, 1.5 and the size of the patches: from memory and common practice. Above
/// 20 Hz the muscles rule (whitham-2007), which this is not.</remarks>
public sealed record BackgroundActivity
{
    /// <summary>The frequency that <see cref="Density"/> is given at.</summary>
    private const double At = 10;

    /// <summary>S_10: one-sided power density at 10 Hz without a rhythm's peak.</summary>
    public VoltagePowerDensity Density { get; init; } = VoltagePowerDensity.FromMicrovoltsSquaredPerHertz(1);

    /// <summary>χ: how steeply it falls, 1 to 2 usually.</summary>
    public double Slope { get; init; } = 1.5;

    /// <summary>A_b: how large the patches are that act together.</summary>
    public Area PatchArea { get; init; } = Area.FromSquareCentimetres(6);

    /// <summary>B at one site, against far, between two frequencies.</summary>
    /// <remarks>B² = S_10·10^χ·(f_2^(1−χ) − f_1^(1−χ))/(1 − χ); for χ = 1 10·S_10·ln(f_2/f_1). 8 to 13 Hz: 2.195 µV, 1 to 30 Hz: 7.190
    /// µV.</remarks>
    public VoltageRms Rms(Frequency low, Frequency high)
    {
        double octaves = Math.Log(high.Hertz / low.Hertz), flat = 1 - Slope;

        // (f_2^(1−χ) − f_1^(1−χ))/(1−χ) without loss where χ is near 1.
        double integral = Math.Pow(low.Hertz, flat) * (flat == 0 ? octaves : Filters.MathExtra.Expm1(flat * octaves) / flat);
        return VoltageRms.FromVolts(Math.Sqrt(Density.VoltsSquaredPerHertz * Math.Pow(At, Slope) * integral));
    }
}
