using FrontEnd.Documents.Recordings;
using FrontEnd.Simulation;

namespace FrontEnd.Documents.Sheets;

/// <summary>Members of <c>samples --json</c>: what simulated samples hold, and what was written of them.</summary>
/// <param name="Simulated">That nobody was recorded.</param>
/// <param name="Recordings">The files of samples; pictures are among the files alone.</param>
internal sealed record SamplesJson(string Design, string Simulated, SampledDesignJson Samples, SampledDesignJson? Beside, IReadOnlyList<WrittenSamplesJson> Recordings)
    : CautionedJson
{
    public static SamplesJson From(SampleAnswer answer) => new(
        answer.First.Run.Design.Name, RecordingHead.Simulated, SampledDesignJson.From(answer.First), answer.Beside is { } beside ? SampledDesignJson.From(beside) : null,
        [.. answer.Files.Select(WrittenSamplesJson.From)])
    {
        DesignCautions = FrontEnd.Results.Cautions.Own(answer.Designs.Select(one => one.Run.Design)),
    };
}

/// <summary>The samples of one design.</summary>
internal sealed record SampledDesignJson(string Design, IQuantity Length, ulong Seed, IQuantity Rate, long SamplesPerChannel, IQuantity Delay)
{
    public required IReadOnlyList<SampledSignalJson> Signals { get; init; }

    public required IReadOnlyList<string> Without { get; init; }

    /// <summary>True where everything went from node to node at a multiple of the rate, so that nodes could clip.</summary>
    public required bool StepByStep { get; init; }

    public required IReadOnlyList<SampledChannelJson> Channels { get; init; }

    /// <summary>Why noise is not held against the budget; null where it is.</summary>
    public string? NotCompared { get; init; }

    /// <summary>Chance that a band of a sound record lies outside its limits; one record in so many.</summary>
    public double Significance { get; } = SampleSummary.Significance;

    public double OneRecordIn { get; } = 1 / SampleSummary.Significance;

    public required bool Agrees { get; init; }

    public required IReadOnlyList<SampleEventsJson> Events { get; init; }

    /// <summary>How many stretches at a limit there were; how many of them are listed.</summary>
    public required long Clipped { get; init; }

    public required int ClipsListed { get; init; }

    public required IReadOnlyList<SampleEventsJson> Clips { get; init; }

    /// <summary>What the samples do not hold, and why.</summary>
    public required IReadOnlyList<FindingJson> Findings { get; init; }

    public static SampledDesignJson From(SampledDesign design)
    {
        (SampleRun run, SampleSummary summary) = design;
        return new(run.Design.Name, run.Wish.Length, run.Wish.Seed, run.Rate, run.Count, summary.Delay)
        {
            Signals = [.. run.Wish.Signals.Select(signal => new SampledSignalJson(signal.Word, signal.What, signal.Amplitude))], Without = run.Wish.Without,
            StepByStep = run.IsStepByStep, Channels = [.. summary.Channels.Select((channel, at) => SampledChannelJson.From(channel, run.VoltsPerStep[at]))],
            NotCompared = summary.NotCompared, Agrees = summary.Agrees, Events = SampleEventsJson.From(design.Events),
            Clipped = summary.ClippedSamples, ClipsListed = summary.Clips.Count, Clips = SampleEventsJson.From(design.Clips),
            Findings = FindingJson.From(design.Findings),
        };
    }
}

/// <summary>A signal on the made-up head.</summary>
/// <param name="Amplitude">Null for the usual one.</param>
internal sealed record SampledSignalJson(string Name, string What, IQuantity? Amplitude);

/// <summary>One channel, in volts at the electrodes.</summary>
/// <param name="Step">One step of the converter.</param>
internal sealed record SampledChannelJson(string Name, double Step, IQuantity Mean, IQuantity Rms, IQuantity PeakToPeak)
{
    public required IReadOnlyList<SampledBandJson> Bands { get; init; }

    public required IReadOnlyList<SampledLineJson> Lines { get; init; }

    public static SampledChannelJson From(SampledChannel channel, double step) => new(channel.Name, step, channel.Mean, channel.Rms, channel.PeakToPeak)
    {
        Bands = [.. channel.Bands.Select(band => new SampledBandJson(band.Band.Name, band.Band.Low, band.Band.High, band.Measured, band.Budget, band.Share)
        {
            Least = band.Least, Greatest = band.Greatest, DegreesOfFreedom = band.Freedom, IsInside = band.IsInside,
        })],
        Lines = [.. channel.Lines.Select(line => new SampledLineJson(line.Order, line.LandsAt, line.Measured, line.Budget))],
    };
}

/// <summary>Noise in a band, rms, against the budget.</summary>
internal sealed record SampledBandJson(string Name, IQuantity Low, IQuantity High, IQuantity Measured, IQuantity Budget, double Share)
{
    public required double Least { get; init; }

    public required double Greatest { get; init; }

    public required double DegreesOfFreedom { get; init; }

    public required bool IsInside { get; init; }
}

/// <summary>A harmonic of the mains, rms.</summary>
internal sealed record SampledLineJson(int Order, IQuantity LandsAt, IQuantity Measured, IQuantity Budget);

/// <summary>Events of the same words.</summary>
internal sealed record SampleEventsJson(string Text, int Number, IQuantity First)
{
    public static IReadOnlyList<SampleEventsJson> From(IReadOnlyList<AlikeEvents> events) => [.. events.Select(one => new SampleEventsJson(one.Text, one.Number, one.First))];
}

/// <summary>A file of samples.</summary>
internal sealed record WrittenSamplesJson(string File, long? Records, IQuantity? RecordLength, long Held, IReadOnlyList<string> Scales, IReadOnlyList<WrittenChannelJson> Channels)
{
    public static WrittenSamplesJson From(WrittenSamples file) => new(
        file.Path, file.Records, file.RecordLength, file.Held, file.Scales,
        [.. file.Channels.Select(channel => new WrittenChannelJson(channel.Name, channel.Label, channel.Count, channel.Step, channel.IsExact, channel.Held))]);
}

/// <summary>How the samples of a channel stand in a file.</summary>
/// <param name="Count">The least difference of the file's numbers, at the electrodes.</param>
internal sealed record WrittenChannelJson(string Name, string Label, IQuantity Count, IQuantity Step, bool IsExact, long Held);
