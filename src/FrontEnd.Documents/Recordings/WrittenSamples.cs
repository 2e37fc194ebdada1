namespace FrontEnd.Documents.Recordings;

/// <summary>A file of samples that was written.</summary>
/// <param name="Path">As the user named it.</param>
/// <param name="Channels">How their samples stand in it.</param>
internal sealed record WrittenSamples(string Path, IReadOnlyList<WrittenChannel> Channels)
{
    /// <summary>Records of an EDF file; null for a table.</summary>
    public long? Records { get; init; }

    /// <summary>Length of each of them.</summary>
    public Duration? RecordLength { get; init; }

    /// <summary>How the samples stand in it, in words, each sentence once; none for a table, whose numbers are written out.</summary>
    public IReadOnlyList<string> Scales => Records is null ? [] :
        [.. Channels.Select(channel => RecordingWording.Scale(channel.Count.Volts, channel.Step, channel.IsExact)).Distinct(StringComparer.Ordinal)];

    /// <summary>Samples of all channels that did not fit and were held at the edge of the file's range.</summary>
    public long Held => Channels.Sum(channel => channel.Held);
}

/// <summary>How the samples of one channel stand in a file.</summary>
/// <param name="Name">As the design calls it.</param>
/// <param name="Label">As the file calls it.</param>
/// <param name="Count">What the smallest difference of the file's numbers stands for, at the electrodes.</param>
/// <param name="Step">The design's converter step, at the electrodes.</param>
/// <param name="IsExact">True where every sample stands in the file as it is, a whole number of steps.</param>
/// <param name="Held">Samples that did not fit and were held at the edge of the file's range.</param>
internal sealed record WrittenChannel(string Name, string Label, Voltage Count, Voltage Step, bool IsExact, long Held);
