namespace FrontEnd.Quantities;

/// <summary>The excess (1/f-type) noise power density of one electrode at 1 Hz. Symbol K, held in V²/Hz at 1 Hz.</summary>
public readonly record struct ExcessNoise : IQuantity
{
    private ExcessNoise(double voltsSquaredPerHertz) => VoltsSquaredPerHertz = Require.Finite(voltsSquaredPerHertz);

    public double VoltsSquaredPerHertz { get; }
    double IQuantity.SiValue => VoltsSquaredPerHertz;
    string IQuantity.SiUnit => "V²/Hz";

    public static ExcessNoise FromVoltsSquaredPerHertz(double voltsSquaredPerHertz) => new(voltsSquaredPerHertz);

    /// <summary>K of a density K/f^α whose rms between two frequencies was reported.</summary>
    /// <remarks>K = σ² / ∫ f^-α df: σ²/(1/fl − 1/fh) for α = 2, σ²/ln(fh/fl) for α = 1. Derived; common practice, no source.</remarks>
    public static ExcessNoise FromRms(VoltageRms rms, Frequency low, Frequency high, double slope)
    {
        double integral = Math.Abs(slope - 1) < 1e-12
            ? Math.Log(high.Hertz / low.Hertz)
            : (Math.Pow(high.Hertz, 1 - slope) - Math.Pow(low.Hertz, 1 - slope)) / (1 - slope);
        return new ExcessNoise(rms.Volts * rms.Volts / integral);
    }
}
