using FrontEnd.Citations;
using FrontEnd.Designs;
using FrontEnd.Identity;

namespace FrontEnd.Bench;

/// <summary>One test at the bench, on a fixture with nobody connected, and the reading that the design should give.</summary>
/// <param name="Name">Stable word: <c>shorted</c>, <c>51k-47n</c>, <c>alias-240</c>.</param>
/// <param name="Title">What is tested, in a few words.</param>
/// <param name="Fixture">What is put in the electrodes' place.</param>
/// <param name="Setting">What is set and what is read.</param>
/// <param name="Kind">How a recording of this test is worked out.</param>
public sealed record BenchReading(string Name, string Title, string Fixture, string Setting, ReadingKind Kind)
{
    /// <summary>The predicted reading; null where there is none, and <see cref="Remark"/> says why.</summary>
    public IQuantity? Expected { get; init; }

    /// <summary>True where <see cref="Expected"/> is the most that a reading can be: the thing itself is lost in noise and steps.</summary>
    public bool IsBound { get; init; }

    /// <summary>The figure of the assessment that this test reads; null where it is none of them.</summary>
    public ResultId? Id { get; init; }

    /// <summary>What samples are divided by to be volts at the electrodes: <c>gain.mid</c> of the design without a fixture.</summary>
    public double Gain { get; init; } = 1;

    /// <summary>Least reading that agrees, in the reading's own SI unit; null for no lower bound.</summary>
    public double? Least { get; init; }

    /// <summary>Greatest reading that agrees; null for no upper bound.</summary>
    public double? Greatest { get; init; }

    /// <summary>The tolerance in words.</summary>
    public string Tolerance { get; init; } = "";

    /// <summary>Where the test's procedure or fixture comes from: a key of reference/sources.json.</summary>
    public SourceRef Source { get; init; } = new("common-practice");

    /// <summary>Relative standard deviation of the reading itself, from the length of the record; 0 where it is not statistical.</summary>
    public double Spread { get; init; }

    /// <summary>Frequency at which a tone is looked for in the recording.</summary>
    public Frequency? Line { get; init; }

    /// <summary>True where the digital filters are in the reading.</summary>
    public bool Filtered { get; init; } = true;

    public string? Remark { get; init; }

    /// <summary>Of channels that are unlike each other the one that the reading is predicted for; null where all are alike.</summary>
    public string? Channel { get; init; }

    /// <summary>The design with the fixture in place: what the reading was worked out from.</summary>
    public required Design Design { get; init; }
}

/// <summary>What a reading is.</summary>
public enum ReadingKind
{
    /// <summary>Rms noise in the band, referred to the input.</summary>
    Noise,

    /// <summary>Rms of one tone, referred to the input.</summary>
    Tone,

    /// <summary>Height of pulses against the baseline, with its sign, referred to the input.</summary>
    Pulse,

    /// <summary>What is read from an instrument or by eye.</summary>
    Other,
}
