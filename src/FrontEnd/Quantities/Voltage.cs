namespace FrontEnd.Quantities;

/// <summary>A dc or instantaneous voltage. Symbol V, held in volts.</summary>
public readonly record struct Voltage : IQuantity
{
    private Voltage(double volts) => Volts = Require.Finite(volts);

    public double Volts { get; }
    public double Millivolts => Volts * 1e3;
    public double Microvolts => Volts * 1e6;
    double IQuantity.SiValue => Volts;
    string IQuantity.SiUnit => "V";

    public static Voltage FromVolts(double volts) => new(volts);
    public static Voltage FromMillivolts(double millivolts) => new(millivolts / 1e3);
    public static Voltage FromMicrovolts(double microvolts) => new(microvolts / 1e6);

    public static Current operator /(Voltage left, Resistance right) => Current.FromAmperes(left.Volts / right.Ohms);
    public static Resistance operator /(Voltage left, Current right) => Resistance.FromOhms(left.Volts / right.Amperes);
    public static double operator /(Voltage left, Voltage right) => left.Volts / right.Volts;
    public static Voltage operator +(Voltage left, Voltage right) => new(left.Volts + right.Volts);
    public static Voltage operator -(Voltage left, Voltage right) => new(left.Volts - right.Volts);
}
