using FrontEnd.Circuits;
using FrontEnd.Filters;
using FrontEnd.Topologies;

namespace FrontEnd.AntiAlias;

/// <summary>What an analogue filter is to be built from: op-amp, series, limits, tolerances.</summary>
internal abstract record PartsRequest
{
    /// <summary>The op-amp in every section.</summary>
    public OpAmp OpAmp { get; init; } = OpAmp.MicropowerCmos;

    /// <summary>Series that resistors are taken from.</summary>
    public PreferredSeries ResistorSeries { get; init; } = PreferredSeries.E96;

    /// <summary>Series that capacitors are taken from.</summary>
    public PreferredSeries CapacitorSeries { get; init; } = PreferredSeries.E12;

    /// <summary>Below it the op-amp's output is loaded. 2 kΩ (common practice, no source).</summary>
    public Resistance LeastResistor { get; init; } = Resistance.FromKilohms(2);

    /// <summary>Above it noise and bias current count. 330 kΩ (common practice, no source).</summary>
    public Resistance GreatestResistor { get; init; } = Resistance.FromKilohms(330);

    /// <summary>Below it stray capacitance counts. 100 pF (common practice, no source).</summary>
    public Capacitance LeastCapacitor { get; init; } = Capacitance.FromPicofarads(100);

    /// <summary>Above it stable dielectrics become large. 1 µF (common practice, no source).</summary>
    public Capacitance GreatestCapacitor { get; init; } = Capacitance.FromMicrofarads(1);

    /// <summary>±, of every resistor.</summary>
    public Ratio ResistorTolerance { get; init; } = Ratio.FromPercent(1);

    /// <summary>±, of every capacitor.</summary>
    public Ratio CapacitorTolerance { get; init; } = Ratio.FromPercent(5);

    /// <summary>The design's key, put into findings.</summary>
    public string Field { get; init; } = "";

    /// <summary>The capacitors of the series within the limits [F].</summary>
    internal IEnumerable<double> Capacitors => PreferredValues.Between(LeastCapacitor.Farads, GreatestCapacitor.Farads, CapacitorSeries);

    /// <summary>The values of the series next below and next above a resistance [Ω]; none where it is outside the limits.</summary>
    internal IEnumerable<double> Rounded(double ohms)
    {
        if (ohms < LeastResistor.Ohms || GreatestResistor.Ohms < ohms)
        {
            yield break;
        }

        double below = PreferredValues.AtMost(ohms, ResistorSeries);
        double above = PreferredValues.AtLeast(ohms, ResistorSeries);
        yield return below;
        if (above != below)
        {
            yield return above;
        }
    }

    /// <summary>The pairs of the series whose 1 + Rf/Rg is nearest to a gain: Rg every value of the decade from five times the least
    /// resistor, Rf the nearest to what it needs. A gain of 1 is a follower, Rg infinite.</summary>
    internal IReadOnlyList<(double Rf, double Rg)> GainResistors(double gain)
    {
        // Pairs tried with every other part; a gain nearer to 1 than the step is within the resistors' rounding.
        const int Kept = 3;
        const double LeastStep = 1e-3;
        double from = 5 * LeastResistor.Ohms;
        return gain - 1 < LeastStep
            ? [(0, double.PositiveInfinity)]
            : [.. PreferredValues.Between(from, 9.99 * from, ResistorSeries)
                .Select(rg => (Rf: PreferredValues.Nearest((gain - 1) * rg, ResistorSeries), Rg: rg))
                .OrderBy(pair => Math.Abs(1 + (pair.Rf / pair.Rg) - gain)).Take(Kept)];
    }
}

/// <summary>What an anti-alias filter is to be built from.</summary>
internal sealed record RealisationRequest : PartsRequest
{
    /// <summary>The ideal low-pass; all-pole (Butterworth, Chebyshev, Bessel, critically damped).</summary>
    public required AnalogFilter Target { get; init; }

    /// <summary>What the target was sought for; null where its order was given. A refusal names what else meets it.</summary>
    public FilterRequirement? Requirement { get; init; }

    /// <summary><see cref="SectionKind.SallenKey"/>, <see cref="SectionKind.SallenKeyEqual"/> or <see
    /// cref="SectionKind.MultipleFeedback"/>, for the pole pairs.</summary>
    public SectionKind Topology { get; init; } = SectionKind.SallenKey;
}

/// <summary>One section of a realisation, wanted and built.</summary>
/// <param name="Stage">The parts.</param>
/// <param name="WantedPole">f0 of the ideal section.</param>
/// <param name="WantedQ">Q of the ideal section; null for first order.</param>
/// <param name="BuiltPole">f0 with rounded parts and real op-amp.</param>
/// <param name="BuiltQ">Q likewise.</param>
/// <param name="Sensitivities">What each part does to f0 and Q.</param>
/// <param name="PeakGain">Largest gain from the filter's input to this section's output at any frequency: the swing its op-amp must
/// have.</param>
public sealed record RealisedSection(
    Stage Stage, Frequency WantedPole, double? WantedQ, Frequency BuiltPole, double? BuiltQ, IReadOnlyList<PartSensitivity> Sensitivities,
    double PeakGain)
{
    /// <summary>The same pole pair as a state-variable filter, offered where Q is above <see cref="StateVariableSection.WorthwhileQ"/>;
    /// null below.</summary>
    public StateVariableSection? StateVariable { get; init; }
}

/// <summary>An anti-alias filter as parts, and how far its response as built lies from the ideal.</summary>
/// <param name="Sections">In the order of the signal.</param>
/// <param name="LargestError">Largest difference from the ideal response, both against their gain at 0 Hz, up to twice the corner
/// [dB].</param>
/// <param name="ErrorAt">Where.</param>
/// <param name="HalfPower">The −3 dB frequency as built; null where there is none up to ten times the corner.</param>
internal sealed record Realisation(
    IReadOnlyList<RealisedSection> Sections, double LargestError, Frequency ErrorAt, Frequency? HalfPower)
{
    /// <summary>Where the stop band as built turns up again; null where it falls all the way, as it does without an output
    /// resistance.</summary>
    public StopBandRise? Rise => StopBandRise.Of(Stages);

    /// <summary>In the order of the signal.</summary>
    public IReadOnlyList<Stage> Stages => [.. Sections.Select(s => s.Stage)];
}
