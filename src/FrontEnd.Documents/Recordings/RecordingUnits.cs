using System.Globalization;

namespace FrontEnd.Documents.Recordings;

/// <summary>Units of samples and of their time, as headings spell them.</summary>
internal static class RecordingUnits
{
    /// <summary>Volts of one unit; null for a unit that is no voltage.</summary>
    public static double? Volts(string unit) => unit.Trim() switch
    {
        "V" or "v" or "volt" or "volts" or "Volt" or "Volts" => 1,
        "mV" or "mv" or "millivolt" or "millivolts" => 1e-3, // not MV, which may be a million volts or a heading in capitals
        "uV" or "µV" or "μV" or "uv" or "µv" or "μv" or "UV" or "microvolt" or "microvolts" => 1e-6, // the micro sign and the Greek letter
        "nV" or "nv" or "NV" or "nanovolt" or "nanovolts" => 1e-9,
        _ => null,
    };

    public static bool IsSteps(string unit) => unit.Trim().ToUpperInvariant() is "COUNT" or "COUNTS" or "STEPS" or "LSB" or "LSBS";

    /// <summary>Seconds of one unit; null for a unit that is no time.</summary>
    public static double? Seconds(string unit) => unit.Trim().ToLower(CultureInfo.InvariantCulture) switch
    {
        "s" or "sec" or "secs" or "second" or "seconds" => 1,
        "ms" or "msec" or "millisecond" or "milliseconds" => 1e-3,
        "us" or "µs" or "μs" or "usec" or "microsecond" or "microseconds" => 1e-6,
        "min" or "minute" or "minutes" => 60,
        _ => null,
    };

    /// <summary>True for what measures something, and neither volts nor steps of a converter: a column headed so is refused, not taken as
    /// volts.</summary>
    public static bool IsOther(string unit) => unit.Trim() is "MV"
        or "%" or "A" or "mA" or "uA" or "µA" or "μA" or "nA" or "pA" or "Ω" or "Ohm" or "ohm" or "kΩ" or "kohm" or "MΩ" or "Mohm" or "dB" or "dBV" or "dBm" or "Hz"
        or "ADC" or "adc" or "ADU" or "adu" or "raw" or "a.u." or "au" or "g" or "°C" or "T" or "pT" or "fT" or "V/√Hz" or "V²" or "uV^2" or "µV²" or "kV" or "pV";
}
