namespace FrontEnd.Quantities;

/// <summary>A voltage from its lowest to its highest point, held in volts peak-to-peak.</summary>
public readonly record struct VoltagePeakToPeak : IQuantity
{
    private VoltagePeakToPeak(double volts) => Volts = Require.Finite(volts);

    public double Volts { get; }
    public double Microvolts => Volts * 1e6;
    double IQuantity.SiValue => Volts;
    string IQuantity.SiUnit => "V";

    public static VoltagePeakToPeak FromVolts(double volts) => new(volts);
    public static VoltagePeakToPeak FromMicrovolts(double microvolts) => new(microvolts / 1e6);

    public static double operator /(VoltagePeakToPeak left, VoltagePeakToPeak right) => left.Volts / right.Volts;
}
