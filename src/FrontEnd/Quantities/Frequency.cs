namespace FrontEnd.Quantities;

/// <summary>A frequency. Symbol f, held in hertz. The default value is 0 Hz.</summary>
public readonly record struct Frequency : IQuantity
{
    private Frequency(double hertz) => Hertz = Require.Finite(hertz);

    public double Hertz { get; }
    public double Kilohertz => Hertz / 1e3;
    public double Megahertz => Hertz / 1e6;
    double IQuantity.SiValue => Hertz;
    string IQuantity.SiUnit => "Hz";

    public static Frequency FromHertz(double hertz) => new(hertz);
    public static Frequency FromKilohertz(double kilohertz) => new(kilohertz * 1e3);
    public static Frequency FromMegahertz(double megahertz) => new(megahertz * 1e6);

    /// <summary>Angular frequency at a sampling rate, ω = 2π f / fs [rad/sample].</summary>
    public double RadiansPerSample(Frequency rate) => 2 * Math.PI * (this / rate);

    public static double operator /(Frequency left, Frequency right) => left.Hertz / right.Hertz;
}
