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
internal sealed record BenchReading(string Name, string Title, string Fixture, string Setting, ReadingKind Kind)
{
    /// <summary>What is set up and read in a few words, beside what all tests of its step share; null where <see cref="Fixture"/> and <see
    /// cref="Setting"/> are short enough.</summary>
    public string? Brief { get; init; }

    /// <summary>What tells it from others that are set up alike, such as a level and a frequency; null for nothing but its name.</summary>
    public string? Particular { get; init; }

    /// <summary>When in bringing up a board its turn comes.</summary>
    public BenchStep Step { get; init; } = BenchStep.Further;

    /// <summary>The node of the path that is measured with a meter; null for a test that measures none.</summary>
    public NodeId? Node { get; init; }

    /// <summary>Where the probe is put; null for a test without.</summary>
    public TestPoint? At { get; init; }

    /// <summary>What to suspect where a reading does not agree, most likely first.</summary>
    public IReadOnlyList<BenchSuspicion> IfOff => BenchSuspects.Plan(this);

    /// <summary>The predicted reading; null where there is none, and <see cref="Remark"/> says why.</summary>
    public IQuantity? Expected { get; init; }

    /// <summary>True where <see cref="Expected"/> is the most that a reading can be, the thing itself being lost in noise and steps, or, where
    /// there is no <see cref="Greatest"/>, the least.</summary>
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

/// <summary>The steps in which a board is brought up, in their order: each is taken only where those before it agree.</summary>
internal enum BenchStep
{
    /// <summary>Without battery or supply: by eye and with an ohmmeter.</summary>
    BeforePower,

    /// <summary>Power on, current limited.</summary>
    Power,

    /// <summary>Dc at the test points, at rest.</summary>
    RestingVoltages,

    /// <summary>Dc through the electrodes, with the fault forced and without.</summary>
    Faults,

    /// <summary>Noise with shorted inputs.</summary>
    Noise,

    /// <summary>Gain, response, polarity.</summary>
    Gain,

    /// <summary>Hum at rest.</summary>
    Hum,

    /// <summary>What a first board is characterised with besides.</summary>
    Further,
}

/// <summary>A test point of the board.</summary>
/// <param name="Name">Its designator, without the prefix of a channel: "TP301".</param>
/// <param name="Net">The net that it is on, without it too: "G2".</param>
internal sealed record TestPoint(string Name, string Net);

/// <summary>What to suspect of a board whose reading is off.</summary>
/// <param name="IsAbove">True where it reads too much, false where too little, null for either.</param>
/// <param name="Text">What it is and what to try.</param>
internal sealed record BenchSuspicion(bool? IsAbove, string Text);

/// <summary>What a reading is.</summary>
internal enum ReadingKind
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
