namespace FrontEnd.Quantities;

/// <summary>A capacitance. Symbol C, held in farads.</summary>
public readonly record struct Capacitance : IQuantity
{
    private Capacitance(double farads) => Farads = Require.Finite(farads);

    public double Farads { get; }
    public double Microfarads => Farads * 1e6;
    public double Nanofarads => Farads * 1e9;
    public double Picofarads => Farads * 1e12;
    double IQuantity.SiValue => Farads;
    string IQuantity.SiUnit => "F";

    public static Capacitance FromFarads(double farads) => new(farads);
    public static Capacitance FromMicrofarads(double microfarads) => new(microfarads / 1e6);
    public static Capacitance FromNanofarads(double nanofarads) => new(nanofarads / 1e9);
    public static Capacitance FromPicofarads(double picofarads) => new(picofarads / 1e12);

    public static double operator /(Capacitance left, Capacitance right) => left.Farads / right.Farads;
}
