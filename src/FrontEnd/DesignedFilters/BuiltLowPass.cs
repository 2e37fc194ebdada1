using FrontEnd.AntiAlias;
using FrontEnd.Circuits;
using FrontEnd.Filters;
using FrontEnd.Textbook;
using FrontEnd.Topologies;

namespace FrontEnd.DesignedFilters;

/// <summary>An analogue low-pass as parts: what each section is, what the whole does as built, and what it adds.</summary>
public sealed record BuiltLowPass
{
    /// <summary>Greatest order whose parts are sought.</summary>
    public const int MostOrder = RealisationSearch.MostOrder;

    private static readonly double[] ComparedAt = [0.1, 0.5, 0.9, 1, 1.1, 1.5, 2, 3, 5, 10, 30, 100];

    /// <summary>In every section.</summary>
    public required OpAmp OpAmp { get; init; }

    /// <summary>In the order of the signal.</summary>
    public required IReadOnlyList<BuiltSection> Sections { get; init; }

    /// <summary>Largest difference from the ideal response, both against their gain at 0 Hz, up to twice the corner.</summary>
    public required LossAt LargestError { get; init; }

    /// <summary>The −3 dB frequency as built; null where there is none up to ten times the corner.</summary>
    public required Frequency? HalfPower { get; init; }

    /// <summary>Gain at 0 Hz, by size.</summary>
    public required double Gain { get; init; }

    /// <summary>Noise and dc error at the output.</summary>
    public required OwnNoise Noise { get; init; }

    /// <summary>Where the stop band as built turns up again; null where it falls up to 1 GHz, or where the op-amp's output resistance is
    /// not given.</summary>
    public required RiseAgainstIdeal? Rise { get; init; }

    /// <summary>Ideal and built side by side, from a tenth of the corner to a hundred times.</summary>
    public required IReadOnlyList<ResponseComparison> Response { get; init; }

    /// <summary>The parts of a low-pass; none with a finding where they cannot be had.</summary>
    /// <param name="answer">One that has an analogue low-pass.</param>
    /// <param name="parts">Op-amp and topology.</param>
    internal static (BuiltLowPass? Built, IReadOnlyList<Finding> Findings) Of(FilterAnswer answer, FilterParts parts)
    {
        AnalogFilter ideal = answer.Analog!;
        (Realisation? best, IReadOnlyList<Finding> findings) = RealisationSearch.Find(
            new RealisationRequest
            {
                Target = ideal, Requirement = answer.Requirement, OpAmp = parts.OpAmp, Topology = parts.Topology, ResistorSeries = parts.ResistorSeries,
                CapacitorSeries = parts.CapacitorSeries,
            });
        if (best is null)
        {
            return (null, findings);
        }

        Frequency corner = answer.Wish.Corners[0];
        IReadOnlyList<Stage> stages = best.Stages;
        return (new BuiltLowPass
        {
            OpAmp = parts.OpAmp,
            Sections = [.. best.Sections.Select(BuiltSection.Of)],
            LargestError = new LossAt(best.ErrorAt, Decibels.FromStated(best.LargestError)),
            HalfPower = best.HalfPower,
            Gain = stages.Aggregate(1.0, (product, stage) => product * stage.NominalGain),
            Noise = OwnNoise.Of(stages, corner, parts.OpAmp),
            Rise = best.Rise is { } rise ? RiseAgainstIdeal.Of(rise, ideal) : null,
            Response = Compare(ideal, stages, corner),
        }, findings);
    }

    private static IReadOnlyList<ResponseComparison> Compare(AnalogFilter ideal, IReadOnlyList<Stage> stages, Frequency corner)
    {
        double zero = ideal.PowerResponse(0), builtZero = AsBuiltSection.PowerResponse(stages, corner.Hertz / 1000);
        return [.. ComparedAt.Select(times => corner.Hertz * times).Select(f => new ResponseComparison(
            Frequency.FromHertz(f), Decibels.FromPowerRatio(ideal.PowerResponse(f) / zero),
            Decibels.FromPowerRatio(AsBuiltSection.PowerResponse(stages, f) / builtZero), Duration.FromSeconds(ideal.GroupDelay(f))))];
    }
}

/// <summary>One section of a low-pass as parts.</summary>
/// <param name="Section">Stage, wanted and built f0 and Q, sensitivities, swing.</param>
/// <param name="Kind">Its circuit.</param>
/// <param name="Parts">By name.</param>
/// <param name="Frequency">f0 by the textbook's formula, ideal op-amp [Hz].</param>
/// <param name="Q">Q likewise; null for a section of first order.</param>
/// <param name="Rise">Where its stop band turns up again by itself; null where it does not below 1 GHz, or there is no formula for
/// it.</param>
public sealed record BuiltSection(
    RealisedSection Section, SectionKind Kind, IReadOnlyList<BuiltPart> Parts, TextbookFigure Frequency, TextbookFigure? Q,
    RiseAgainstFormula? Rise)
{
    /// <summary>Three op-amps for the same pole pair, offered where its Q is high for one: R and C of both integrators, R1 and R2; null
    /// where it is not.</summary>
    public IReadOnlyList<BuiltPart>? StateVariableParts =>
        Section.StateVariable is { } three ? [new("R", three.R), new("C", three.C), new("R1", three.R1), new("R2", three.R2)] : null;

    internal static BuiltSection Of(RealisedSection section)
    {
        Stage stage = section.Stage;
        return new(
            section, stage.Section!.Value.Kind, [.. stage.Circuit().Parts.Select(BuiltPart.Of)], stage.PoleFormula!, stage.QFormula,
                RiseAgainstFormula.Of(stage));
    }
}

/// <summary>One part of a circuit.</summary>
/// <param name="Name">"R1", "C2".</param>
/// <param name="Value">A <see cref="Resistance"/> or a <see cref="Capacitance"/>.</param>
/// <param name="Place">Where it goes: "middle to output"; null where its name says it.</param>
public sealed record BuiltPart(string Name, IQuantity Value, string? Place = null)
{
    internal static BuiltPart Of(CircuitPart part)
    {
        string[] words = part.Label.Split(", ", 2);
        return new(words[0], part.Quantity, words.Length == 2 ? words[1] : null);
    }
}

/// <summary>A response at one frequency, against the gain at 0 Hz.</summary>
/// <param name="At">The frequency.</param>
/// <param name="Ideal">Gain of the ideal filter.</param>
/// <param name="Built">Gain of the parts.</param>
/// <param name="IdealDelay">Group delay of the ideal filter.</param>
public sealed record ResponseComparison(Frequency At, Decibels Ideal, Decibels Built, Duration IdealDelay);

/// <summary>A stop band that turns up again, and what the ideal filter loses there.</summary>
/// <param name="Built">As built.</param>
/// <param name="IdealAtTurn">Loss of the ideal filter where it turns.</param>
/// <param name="IdealAtLeast">Loss of the ideal filter where the built one loses least above that.</param>
public sealed record RiseAgainstIdeal(StopBandRise Built, Decibels IdealAtTurn, Decibels IdealAtLeast)
{
    internal static RiseAgainstIdeal Of(StopBandRise rise, AnalogFilter ideal)
    {
        return new(rise, Loss(rise.TurnsAt), Loss(rise.LeastAt));

        Decibels Loss(Frequency at) => Decibels.FromPowerRatio(ideal.PowerResponse(0) / ideal.PowerResponse(at.Hertz));
    }
}

/// <summary>Where one section's stop band turns up again, by its network and by formula.</summary>
/// <param name="Built">By its network.</param>
/// <param name="Turn">Where it turns, by formula [Hz].</param>
/// <param name="Floor">Least loss above that, by formula [dB].</param>
public sealed record RiseAgainstFormula(StopBandRise Built, TextbookFigure Turn, TextbookFigure Floor)
{
    internal static RiseAgainstFormula? Of(Stage stage) =>
        stage.StopBandTurn is { } turn && stage.StopBandFloor is { } floor && StopBandRise.Of([stage]) is { } rise
            ? new(rise, turn, floor)
            : null;
}
