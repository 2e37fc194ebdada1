namespace FrontEnd.Documents.Recordings;

/// <summary>Units of samples.</summary>
internal static class RecordingUnits
{
    /// <summary>Volts of one unit; null for a unit that is no voltage.</summary>
    public static double? Volts(string unit) => unit.Trim() switch
    {
        "V" => 1,
        "mV" => 1e-3,
        "uV" or "µV" or "μV" => 1e-6,   // the micro sign and the Greek letter
        "nV" => 1e-9,
        _ => null,
    };

    public static bool IsSteps(string unit) => unit.Trim().ToUpperInvariant() is "COUNTS" or "STEPS" or "LSB";
}
