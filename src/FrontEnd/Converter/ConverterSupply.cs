using System.Numerics;

namespace FrontEnd.Converter;

/// <summary>What its supply leaves a converter: the largest span between its inputs, and how far its pin can swing.</summary>
internal static class ConverterSupply
{
    /// <summary>True where the converter takes the difference of two pins, each of which can go from rail to rail: as given, else
    /// delta-sigma converters, not those with successive approximation (common practice, no source).</summary>
    public static bool IsDifferential(AnalogDigitalConverter converter) => converter.Differential ?? converter.Kind == ConverterKind.DeltaSigma;

    /// <summary>The largest signal that the supply lets in: the supply itself at a single pin, twice that between two. A supply of its own
    /// takes the analogue supply's place.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="lowest">Lowest voltage of the analogue supply [V].</param>
    public static VoltagePeakToPeak Largest(AnalogDigitalConverter converter, Voltage lowest) =>
        VoltagePeakToPeak.FromVolts((converter.OwnSupply ?? lowest).Volts * (IsDifferential(converter) ? 2 : 1));

    /// <summary>True where full scale is not above what the supply lets in.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="lowest">Lowest voltage of the analogue supply [V].</param>
    public static bool Fits(AnalogDigitalConverter converter, Voltage lowest) =>
        converter.FullScale.Volts <= Largest(converter, lowest).Volts * (1 + 1e-9);

    /// <summary>How far the pin can swing to either side, whatever the mid-rail.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="lowest">Lowest voltage of the analogue supply [V].</param>
    public static Voltage Swing(AnalogDigitalConverter converter, Voltage lowest) =>
        Voltage.FromVolts(Swing(converter, lowest, new(converter.FullScale.Volts))[0]);

    /// <summary>How far the pin can swing to either side, whatever the mid-rail: half of full scale, or half of what the supply lets in
    /// where that is less [V].</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="lowest">Lowest voltage of the analogue supply [V].</param>
    /// <param name="fullScale">Full scale of each build [V p-p].</param>
    internal static Vector<double> Swing(AnalogDigitalConverter converter, Voltage lowest, Vector<double> fullScale) =>
        Vector.Min(fullScale, new Vector<double>(Largest(converter, lowest).Volts)) / 2;
}
