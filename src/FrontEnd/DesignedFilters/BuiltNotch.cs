using System.Numerics;
using FrontEnd.AntiAlias;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Topologies;

namespace FrontEnd.DesignedFilters;

/// <summary>An analogue notch as parts: how deep it is as built, what its parts' tolerance leaves of it, and what it adds.</summary>
public sealed record BuiltNotch
{
    private static readonly double[] Tolerances = [0.01, 0.001];

    /// <summary>Frequency that is to be removed.</summary>
    public required Frequency Centre { get; init; }

    /// <summary>Centre over −3 dB width that is wanted.</summary>
    public required double WantedQ { get; init; }

    /// <summary>In every place.</summary>
    public required OpAmp OpAmp { get; init; }

    /// <summary>The circuit with its parts and its Q, built and by formula.</summary>
    public required NotchRealisation Circuit { get; init; }

    /// <summary>Op-amps that it takes.</summary>
    public int OpAmps => Circuit.Stage.Circuit().OpAmps.Count;

    /// <summary>Every part by name.</summary>
    public required IReadOnlyList<BuiltPart> Parts { get; init; }

    /// <summary>Where the response as built is least.</summary>
    public required Frequency DeepestAt { get; init; }

    /// <summary>Loss at the centre against the gain far below it; null without bound.</summary>
    public required Decibels? Depth { get; init; }

    /// <summary>How far the mains may be from its frequency, as a design has it by default.</summary>
    public required Ratio Deviation { get; init; }

    /// <summary>Loss where the mains is as far off as that, the worse side; null without bound.</summary>
    public required Decibels? DepthAtDeviation { get; init; }

    /// <summary>Gain far from the notch, by size.</summary>
    public required double Gain { get; init; }

    /// <summary>Noise and dc error at the output.</summary>
    public required OwnNoise Noise { get; init; }

    /// <summary>Every part at its tolerance, the worst way: ±1 % and ±0.1 %.</summary>
    public required IReadOnlyList<NotchTolerance> Corners { get; init; }

    /// <summary>What each part does alone.</summary>
    public required IReadOnlyList<NotchPartEffect> Sensitivities { get; init; }

    /// <summary>The parts of a notch; none with a finding where they cannot be had.</summary>
    internal static (BuiltNotch? Built, IReadOnlyList<Finding> Findings) Of(Frequency centre, double q, FilterParts parts)
    {
        (NotchRealisation? built, IReadOnlyList<Finding> findings) = NotchSearch.Find(
            new NotchRequest
            {
                Centre = centre, Q = q, OpAmp = parts.OpAmp, Kind = parts.Notch, ResistorSeries = parts.ResistorSeries,
                CapacitorSeries = parts.CapacitorSeries,
            });
        if (built is null)
        {
            return (null, findings);
        }

        NotchCircuit circuit = built.Circuit;
        Ratio deviation = new Design().Mains.Deviation;
        double[] flanks = [centre.Hertz * (1 - deviation.Fraction), centre.Hertz * (1 + deviation.Fraction)];
        return (new BuiltNotch
        {
            Centre = centre,
            WantedQ = q,
            OpAmp = parts.OpAmp,
            Circuit = built,
            Parts = [.. circuit.Names.Zip(circuit.Values, Part)],
            DeepestAt = Frequency.FromHertz(circuit.NullHertz()),
            Depth = Stated(circuit.Loss(centre.Hertz)),
            Deviation = deviation,
            DepthAtDeviation = Stated(flanks.Min(f => circuit.Loss(f) ?? double.PositiveInfinity)),
            Gain = Complex.Abs(circuit.Response(centre.Hertz / 1e4)),
            Noise = OwnNoise.Of([built.Stage], centre, parts.OpAmp),
            Corners = [.. Tolerances.Select(tolerance => circuit.Corners(tolerance, centre.Hertz, built.FormulaQ))],
            Sensitivities = [.. circuit.Sensitivities(built.FormulaQ).Select(
                (move, part) => new NotchPartEffect(move, Stated(circuit.With(part, 1.01).Loss(centre.Hertz))))],
        }, findings);
    }

    private static BuiltPart Part(string name, double value) =>
        new(name, name[0] == 'C' ? Capacitance.FromFarads(value) : Resistance.FromOhms(value));

    private static Decibels? Stated(double? decibels) =>
        decibels is { } value && double.IsFinite(value) ? Decibels.FromStated(value) : null;
}

/// <summary>What one part does to a notch.</summary>
/// <param name="Move">How it moves f0 and Q.</param>
/// <param name="DepthWithOnePerCent">Loss that is left at the centre with 1 % more of it; null without bound.</param>
public sealed record NotchPartEffect(PartSensitivity Move, Decibels? DepthWithOnePerCent);
