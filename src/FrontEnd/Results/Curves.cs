using FrontEnd.Identity;

namespace FrontEnd.Results;

/// <summary>The lines of the plots: plain SI doubles, every Y array as long as its X.</summary>
public sealed record Curves
{
    /// <summary>No curves, as of a design that cannot be evaluated.</summary>
    public static readonly Curves None = new();

    /// <summary>Gain of the path to the converter, of path and converter, and after the digital filters [dB] against frequency
    /// [Hz].</summary>
    public IReadOnlyList<Curve> Response { get; init; } = [];

    /// <summary>Phase of path and converter [°] and group delay [s] against frequency [Hz].</summary>
    public IReadOnlyList<Curve> PhaseAndDelay { get; init; } = [];

    /// <summary>Noise density referred to the input, one curve a source and the total [V/√Hz] against frequency [Hz].</summary>
    public IReadOnlyList<Curve> NoiseDensity { get; init; } = [];

    /// <summary>Magnitude of each electrode's impedance [Ω] against frequency [Hz].</summary>
    public IReadOnlyList<Curve> ElectrodeImpedance { get; init; } = [];

    /// <summary>Driven-ground loop gain [dB] and phase [°] against frequency [Hz]; empty without a driven ground.</summary>
    public IReadOnlyList<Curve> DrivenGroundLoop { get; init; } = [];

    /// <summary>Gain [dB] against frequency [Hz] of the anti-alias sections with their op-amps and with ideal ones, and of the digital
    /// filters as designed and, where the word rounds them, as rounded; each against its own largest gain.</summary>
    public IReadOnlyList<Curve> FilterResponse { get; init; } = [];

    /// <summary>As built less ideal [dB] against frequency [Hz], of the same two.</summary>
    public IReadOnlyList<Curve> FilterDifference { get; init; } = [];

    /// <summary>Group delay [s] against frequency [Hz]: the anti-alias sections, the digital filters.</summary>
    public IReadOnlyList<Curve> FilterDelay { get; init; } = [];

    /// <summary>Answer to a unit step against time [s], logarithmic: the anti-alias sections, and the samples behind them and the digital
    /// filters.</summary>
    public IReadOnlyList<Curve> FilterStep { get; init; } = [];

    /// <summary>Output of the path after a full step of the electrode offset, referred to the input [V], against time [s].</summary>
    public IReadOnlyList<Curve> StepResponse { get; init; } = [];
}

/// <summary>One line of a plot.</summary>
public sealed record Curve(string Name, string XUnit, string YUnit, double[] X, double[] Y)
{
    /// <summary>The source of noise that the line is; null for any other line.</summary>
    public SourceId? Source { get; init; }
}
