namespace FrontEnd.Quantities;

/// <summary>The root mean square of an alternating or noise voltage, held in volts rms. Not a dc voltage: use <see cref="Voltage"/> for
/// that.</summary>
public readonly record struct VoltageRms : IQuantity
{
    private VoltageRms(double volts) => Volts = Require.Finite(volts);

    public double Volts { get; }
    public double Microvolts => Volts * 1e6;
    double IQuantity.SiValue => Volts;
    string IQuantity.SiUnit => "V";

    public static VoltageRms FromVolts(double volts) => new(volts);
    public static VoltageRms FromMicrovolts(double microvolts) => new(microvolts / 1e6);

    /// <summary>The peak-to-peak value of Gaussian noise with this rms, <see cref="TradeConstants.NoisePeakToPeak"/> times as
    /// much.</summary>
    public VoltagePeakToPeak NoisePeakToPeak => VoltagePeakToPeak.FromVolts(Volts * TradeConstants.NoisePeakToPeak);
    public static double operator /(VoltageRms left, VoltageRms right) => left.Volts / right.Volts;
}
