namespace FrontEnd.Quantities;

/// <summary>The root mean square of an alternating or noise voltage, held in volts rms. Not a dc voltage: use <see cref="Voltage"/> for that.</summary>
public readonly record struct VoltageRms : IQuantity
{
    /// <summary>Peak-to-peak of Gaussian noise over its rms, 6.6: ±3.3σ, left by 0.1 % of the samples (common practice, no source).</summary>
    public const double NoisePeakToPeakFactor = 6.6;

    private VoltageRms(double volts) => Volts = Require.Finite(volts);

    public double Volts { get; }
    public double Microvolts => Volts * 1e6;
    public double Nanovolts => Volts * 1e9;
    double IQuantity.SiValue => Volts;
    string IQuantity.SiUnit => "V";

    public static VoltageRms FromVolts(double volts) => new(volts);
    public static VoltageRms FromMicrovolts(double microvolts) => new(microvolts / 1e6);
    public static VoltageRms FromNanovolts(double nanovolts) => new(nanovolts / 1e9);

    /// <summary>The peak-to-peak value of Gaussian noise with this rms, 6.6 σ (common trade factor, 99.9 % of samples; from memory).</summary>
    public VoltagePeakToPeak NoisePeakToPeak => VoltagePeakToPeak.FromVolts(Volts * NoisePeakToPeakFactor);
    public static double operator /(VoltageRms left, VoltageRms right) => left.Volts / right.Volts;
}
