namespace FrontEnd.Documents.Recordings;

/// <summary>What a file of simulated samples says before its samples: the one description that every form of it is written from.</summary>
internal sealed record RecordingHead
{
    /// <summary>What every such file says, in these words.</summary>
    public const string Simulated = "simulated, nobody was recorded";

    /// <summary>Day that a file is of where none is asked for. The same design and seed are to give the same file, so that no clock is
    /// read; nothing happened on that day.</summary>
    public static readonly DateOnly NoDay = new(2026, 1, 1);

    /// <summary>The design's name.</summary>
    public required string Design { get; init; }

    /// <summary>The program that writes it, without blanks: <c>frontend_0.1.0</c>.</summary>
    public required string Program { get; init; }

    /// <summary>Seed of the random numbers.</summary>
    public required ulong Seed { get; init; }

    /// <summary>Samples a second, of every channel.</summary>
    public required Frequency Rate { get; init; }

    /// <summary>Samples of every channel.</summary>
    public required long Count { get; init; }

    /// <summary>The length that was asked for; it may be no whole number of samples.</summary>
    public required Duration Length { get; init; }

    public required IReadOnlyList<RecordedChannel> Channels { get; init; }

    /// <summary>True where every sample is a whole number of converter steps.</summary>
    public bool AreWhole { get; init; }

    /// <summary>True for converter steps, false for volts at the electrodes.</summary>
    public bool InSteps { get; init; }

    /// <summary>What is known to happen before it is simulated.</summary>
    public IReadOnlyList<RecordingNote> Notes { get; init; } = [];

    /// <summary>The design's filters as the form has it: <c>HP:0.5Hz LP:40Hz N:50Hz</c>; "" for none.</summary>
    public string Filters { get; init; } = "";

    /// <summary>What a file carries which travels alone: stamp and cautions, one line.</summary>
    public string Caution { get; init; } = "";

    /// <summary>Day that the file says it is of.</summary>
    public DateOnly Day { get; init; } = NoDay;}

/// <summary>One channel of such a file.</summary>
/// <param name="Name">As the design calls it.</param>
/// <param name="Step">One converter step, at the electrodes.</param>
/// <param name="Largest">What no sample is expected to exceed, by size [converter steps].</param>
internal sealed record RecordedChannel(string Name, Voltage Step, double Largest)
{
    /// <summary>The sites that it compares, <c>Fp1-A2</c>; "" where the design has none.</summary>
    public string Sites { get; init; } = "";
}

/// <summary>Something that happens in a recording.</summary>
/// <param name="Start">Seconds from the first sample.</param>
/// <param name="Length">Null for a moment.</param>
/// <param name="Text">What happens, with the channel's name where it is one channel's.</param>
internal sealed record RecordingNote(Duration Start, Duration? Length, string Text);
