namespace FrontEnd.Quantities;

/// <summary>A one-sided power density of a voltage, such as that of the brain's background at 10 Hz. Symbol S, held in V²/Hz; not an
/// electrode's excess noise: that is <see cref="ExcessNoise"/>.</summary>
public readonly record struct VoltagePowerDensity : IQuantity
{
    private VoltagePowerDensity(double voltsSquaredPerHertz) => VoltsSquaredPerHertz = Require.Finite(voltsSquaredPerHertz);

    public double VoltsSquaredPerHertz { get; }
    public double MicrovoltsSquaredPerHertz => VoltsSquaredPerHertz * 1e12;
    double IQuantity.SiValue => VoltsSquaredPerHertz;
    string IQuantity.SiUnit => "V²/Hz";

    public static VoltagePowerDensity FromVoltsSquaredPerHertz(double voltsSquaredPerHertz) => new(voltsSquaredPerHertz);
    public static VoltagePowerDensity FromMicrovoltsSquaredPerHertz(double microvoltsSquared) => new(microvoltsSquared / 1e12);
}
