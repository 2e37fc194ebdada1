namespace FrontEnd.Text;

/// <summary>Every quantity that can be written and read, one for each struct in FrontEnd.Quantities.</summary>
public enum QuantityKind
{
    Voltage,
    VoltageRms,
    VoltagePeakToPeak,
    Current,
    Resistance,
    Capacitance,
    Frequency,
    Duration,
    Charge,
    Length,
    Area,
    MagneticFluxDensity,
    Temperature,
    Ratio,
    Decibels,
    Angle,
    BitCount,
    DataRate,
    VoltageNoiseDensity,
    CurrentNoiseDensity,
    ExcessNoise,
}
