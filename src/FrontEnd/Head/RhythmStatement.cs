namespace FrontEnd.Head;

/// <summary>How large a rhythm is, as someone knows it: in a derivation. The program does not guess it.</summary>
/// <param name="In">The derivation that it is so large in.</param>
internal sealed record RhythmStatement(Derivation In, Voltage Amplitude, AmplitudeKind Kind)
{
    /// <summary>The sine's peak [V].</summary>
    internal double PeakVolts => Kind switch
    {
        AmplitudeKind.PeakToPeak => Amplitude.Volts / 2,
        AmplitudeKind.Rms => Amplitude.Volts * Math.Sqrt(2),
        _ => throw new InvalidOperationException($"Amplitude {Kind} is not handled."),
    };

    /// <summary>A voltage of the statement's kind from a sine's peak.</summary>
    internal IQuantity OfPeak(double peakVolts) => Kind switch
    {
        AmplitudeKind.PeakToPeak => VoltagePeakToPeak.FromVolts(2 * peakVolts),
        AmplitudeKind.Rms => VoltageRms.FromVolts(peakVolts / Math.Sqrt(2)),
        _ => throw new InvalidOperationException($"Amplitude {Kind} is not handled."),
    };
}
