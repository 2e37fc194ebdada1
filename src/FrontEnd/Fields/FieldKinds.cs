using FrontEnd.Quantities;
using FrontEnd.Text;

namespace FrontEnd.Fields;

/// <summary>What follows from a field's kind: its unit, its name in a sentence, an example, and its value as a bare number.</summary>
public static class FieldKinds
{
    public static bool IsNumeric(FieldKind kind) => kind <= FieldKind.Count;

    /// <summary>True where the value is written with a unit.</summary>
    public static bool HasUnit(FieldKind kind) => kind < FieldKind.Ratio;

    /// <summary>The SI unit (decibels and degrees count as their own); "" for a pure number.</summary>
    public static string Unit(FieldKind kind) => kind switch
    {
        FieldKind.Resistance => "Ω",
        FieldKind.Capacitance => "F",
        FieldKind.Voltage or FieldKind.VoltageRms or FieldKind.VoltagePeakToPeak => "V",
        FieldKind.Frequency or FieldKind.FrequencyRange => "Hz",
        FieldKind.VoltageNoiseDensity => "V/√Hz",
        FieldKind.CurrentNoiseDensity => "A/√Hz",
        FieldKind.ExcessNoise => "V²/Hz",
        FieldKind.Current => "A",
        FieldKind.Charge => "C",
        FieldKind.Temperature => "K",
        FieldKind.Decibels => "dB",
        FieldKind.Angle => "°",
        FieldKind.Duration => "s",
        FieldKind.Area => "m²",
        FieldKind.MagneticFluxDensity => "T",
        _ => "",
    };

    /// <summary>The kind in a sentence: "`40 uW` is not a voltage".</summary>
    public static string Noun(FieldKind kind) => kind switch
    {
        FieldKind.Resistance => "a resistance",
        FieldKind.Capacitance => "a capacitance",
        FieldKind.Voltage => "a voltage",
        FieldKind.VoltageRms => "an rms voltage",
        FieldKind.VoltagePeakToPeak => "a peak-to-peak voltage",
        FieldKind.Frequency => "a frequency",
        FieldKind.VoltageNoiseDensity => "a voltage noise density",
        FieldKind.CurrentNoiseDensity => "a current noise density",
        FieldKind.ExcessNoise => "an excess noise density",
        FieldKind.Current => "a current",
        FieldKind.Charge => "a charge",
        FieldKind.Temperature => "a temperature",
        FieldKind.Decibels => "a number of decibels",
        FieldKind.Angle => "an angle",
        FieldKind.Duration => "a duration",
        FieldKind.Area => "an area",
        FieldKind.MagneticFluxDensity => "a magnetic flux density",
        FieldKind.Ratio => "a ratio",
        FieldKind.Number => "a number",
        FieldKind.Count => "a whole number",
        FieldKind.Flag => "true or false",
        FieldKind.Text => "a text",
        FieldKind.Choice => "one of the words",
        FieldKind.Card => "the name of a part card",
        FieldKind.FrequencyRange => "a pair of frequencies",
        FieldKind.NumberList => "a list of numbers",
        FieldKind.TextList => "a list of texts",
        FieldKind.SectionRows => "a list of rows of six numbers",
        FieldKind.Ranges => "a table of ranges",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Kind is not handled."),
    };

    /// <summary>A value as it is written in a design file.</summary>
    public static string Example(FieldKind kind) => kind switch
    {
        FieldKind.Resistance => "\"10 kΩ\"",
        FieldKind.Capacitance => "\"4.7 nF\"",
        FieldKind.Voltage => "\"300 mV\"",
        FieldKind.VoltageRms => "\"5 µV\"",
        FieldKind.VoltagePeakToPeak => "\"3 V\"",
        FieldKind.Frequency => "\"50 Hz\"",
        FieldKind.VoltageNoiseDensity => "\"50 nV/√Hz\"",
        FieldKind.CurrentNoiseDensity => "\"1 fA/√Hz\"",
        FieldKind.ExcessNoise => "\"2.5e-12 V²/Hz\"",
        FieldKind.Current => "\"50 µA\"",
        FieldKind.Charge => "\"500 mAh\"",
        FieldKind.Temperature => "\"33 °C\"",
        FieldKind.Decibels => "\"100 dB\"",
        FieldKind.Angle => "\"45 °\"",
        FieldKind.Duration => "\"10 ms\"",
        FieldKind.Area => "\"20 cm²\"",
        FieldKind.MagneticFluxDensity => "\"0.1 µT\"",
        FieldKind.Ratio => "\"5 %\"",
        FieldKind.Number => "2.5",
        FieldKind.Count => "8",
        FieldKind.Flag => "true",
        FieldKind.Text => "\"text\"",
        FieldKind.Choice => "\"word\"",
        FieldKind.Card => "\"card-name\"",
        FieldKind.FrequencyRange => "[\"0.5 Hz\", \"40 Hz\"]",
        FieldKind.NumberList => "[1, 0.02, 0.05]",
        FieldKind.TextList => "[\"Fp1\", \"Fp2\"]",
        FieldKind.SectionRows => "[[b0, b1, b2, a0, a1, a2]]",
        FieldKind.Ranges => "{ key = [\"1 mV\", \"2 mV\"] }",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Kind is not handled."),
    };

    /// <summary>A boxed value as a bare number in SI units; null where it is no number.</summary>
    public static double? SiValue(object? value) => value switch
    {
        IQuantity quantity => quantity.SiValue,
        double number => number,
        int count => count,
        _ => null,
    };

    /// <summary>A bare number in SI units as a value of a numeric kind; counts are rounded.</summary>
    public static object FromSi(FieldKind kind, double si) => kind switch
    {
        FieldKind.Resistance => Resistance.FromOhms(si),
        FieldKind.Capacitance => Capacitance.FromFarads(si),
        FieldKind.Voltage => Voltage.FromVolts(si),
        FieldKind.VoltageRms => VoltageRms.FromVolts(si),
        FieldKind.VoltagePeakToPeak => VoltagePeakToPeak.FromVolts(si),
        FieldKind.Frequency => Frequency.FromHertz(si),
        FieldKind.VoltageNoiseDensity => VoltageNoiseDensity.FromVoltsPerRootHertz(si),
        FieldKind.CurrentNoiseDensity => CurrentNoiseDensity.FromAmperesPerRootHertz(si),
        FieldKind.ExcessNoise => ExcessNoise.FromVoltsSquaredPerHertz(si),
        FieldKind.Current => Current.FromAmperes(si),
        FieldKind.Charge => Charge.FromCoulombs(si),
        FieldKind.Temperature => Temperature.FromKelvins(si),
        FieldKind.Decibels => Decibels.FromStated(si),
        FieldKind.Angle => Angle.FromDegrees(si),
        FieldKind.Duration => Duration.FromSeconds(si),
        FieldKind.Area => Area.FromSquareMetres(si),
        FieldKind.MagneticFluxDensity => MagneticFluxDensity.FromTeslas(si),
        FieldKind.Ratio => Ratio.FromFraction(si),
        FieldKind.Number => si,
        FieldKind.Count => (int)Math.Clamp(Math.Round(si), int.MinValue, int.MaxValue),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "The kind holds no single number."),
    };

    /// <summary>The kind of quantity that the kind of field is written as. Only for kinds that are quantities.</summary>
    public static QuantityKind QuantityKind(FieldKind kind) => kind switch
    {
        FieldKind.Resistance => Text.QuantityKind.Resistance,
        FieldKind.Capacitance => Text.QuantityKind.Capacitance,
        FieldKind.Voltage => Text.QuantityKind.Voltage,
        FieldKind.VoltageRms => Text.QuantityKind.VoltageRms,
        FieldKind.VoltagePeakToPeak => Text.QuantityKind.VoltagePeakToPeak,
        FieldKind.Frequency or FieldKind.FrequencyRange => Text.QuantityKind.Frequency,
        FieldKind.VoltageNoiseDensity => Text.QuantityKind.VoltageNoiseDensity,
        FieldKind.CurrentNoiseDensity => Text.QuantityKind.CurrentNoiseDensity,
        FieldKind.ExcessNoise => Text.QuantityKind.ExcessNoise,
        FieldKind.Current => Text.QuantityKind.Current,
        FieldKind.Charge => Text.QuantityKind.Charge,
        FieldKind.Temperature => Text.QuantityKind.Temperature,
        FieldKind.Decibels => Text.QuantityKind.Decibels,
        FieldKind.Angle => Text.QuantityKind.Angle,
        FieldKind.Duration => Text.QuantityKind.Duration,
        FieldKind.Area => Text.QuantityKind.Area,
        FieldKind.MagneticFluxDensity => Text.QuantityKind.MagneticFluxDensity,
        FieldKind.Ratio => Text.QuantityKind.Ratio,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "The kind is no quantity."),
    };

    /// <summary>The kind of a value's type.</summary>
    internal static FieldKind Of<T>()
    {
        Type type = typeof(T);
        return type == typeof(Resistance) ? FieldKind.Resistance
            : type == typeof(Capacitance) ? FieldKind.Capacitance
            : type == typeof(Voltage) ? FieldKind.Voltage
            : type == typeof(VoltageRms) ? FieldKind.VoltageRms
            : type == typeof(VoltagePeakToPeak) ? FieldKind.VoltagePeakToPeak
            : type == typeof(Frequency) ? FieldKind.Frequency
            : type == typeof(VoltageNoiseDensity) ? FieldKind.VoltageNoiseDensity
            : type == typeof(CurrentNoiseDensity) ? FieldKind.CurrentNoiseDensity
            : type == typeof(ExcessNoise) ? FieldKind.ExcessNoise
            : type == typeof(Current) ? FieldKind.Current
            : type == typeof(Charge) ? FieldKind.Charge
            : type == typeof(Temperature) ? FieldKind.Temperature
            : type == typeof(Decibels) ? FieldKind.Decibels
            : type == typeof(Angle) ? FieldKind.Angle
            : type == typeof(Duration) ? FieldKind.Duration
            : type == typeof(Area) ? FieldKind.Area
            : type == typeof(MagneticFluxDensity) ? FieldKind.MagneticFluxDensity
            : type == typeof(Ratio) ? FieldKind.Ratio
            : type == typeof(double) ? FieldKind.Number
            : type == typeof(int) ? FieldKind.Count
            : type == typeof(bool) ? FieldKind.Flag
            : type == typeof(string) ? FieldKind.Text
            : type == typeof(FrequencyRange) ? FieldKind.FrequencyRange
            : type == typeof(IReadOnlyList<double>) ? FieldKind.NumberList
            : type == typeof(IReadOnlyList<string>) ? FieldKind.TextList
            : type == typeof(IReadOnlyList<IReadOnlyList<double>>) ? FieldKind.SectionRows
            : throw new NotSupportedException($"No field kind holds {type}.");
    }
}
