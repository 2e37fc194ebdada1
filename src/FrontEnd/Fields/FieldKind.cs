namespace FrontEnd.Fields;

/// <summary>What sort of value a design field holds; decides its unit, how it is written and how it is read.</summary>
public enum FieldKind
{
    Resistance,
    Capacitance,
    Voltage,
    VoltageRms,
    VoltagePeakToPeak,
    Frequency,
    VoltageNoiseDensity,
    CurrentNoiseDensity,
    ExcessNoise,
    Current,
    Charge,
    Temperature,
    Decibels,
    Angle,
    Duration,
    Area,
    MagneticFluxDensity,

    /// <summary>A share or tolerance: written "5 %" or 0.05.</summary>
    Ratio,

    /// <summary>A number without unit that need not be whole.</summary>
    Number,

    /// <summary>A whole number.</summary>
    Count,

    Flag,
    Text,

    /// <summary>One of a few words.</summary>
    Choice,

    /// <summary>The name of a part card.</summary>
    Card,

    /// <summary>Two frequencies, low and high.</summary>
    FrequencyRange,

    NumberList,
    TextList,

    /// <summary>Rows of six numbers, second-order sections b0 b1 b2 a0 a1 a2.</summary>
    SectionRows,

    /// <summary>Least and greatest value of some of a part's other fields.</summary>
    Ranges,
}
