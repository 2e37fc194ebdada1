using FrontEnd.Bench;

namespace FrontEnd.Documents.Recordings;

/// <summary>One channel of a recording, read from a file: a table of samples (.csv), or of the European Data Format's family (.edf, .bdf).</summary>
/// <param name="Channel">As the file calls it.</param>
/// <param name="Rate">How fast it was sampled.</param>
/// <param name="Samples">In volts at the electrodes, or in steps of the converter, see <see cref="AreSteps"/>.</param>
public sealed record MeasuredSignal(string Channel, Frequency Rate, IReadOnlyList<double> Samples)
{
    /// <summary>True where the samples are the converter's own numbers.</summary>
    public bool AreSteps { get; init; }

    /// <summary>True where the file does not say how fast it was sampled.</summary>
    public bool IsRateAssumed { get; init; }

    /// <summary>Reads one channel; null with a finding where it cannot be had. Never throws for what is in the file.</summary>
    /// <param name="assumedRate">The rate of a table that does not say its own, such as the design's.</param>
    /// <param name="channel">Its name, or its number from 1; null for the first.</param>
    /// <param name="finding">What is wrong; null for nothing.</param>
    public static MeasuredSignal? Read(string path, Frequency assumedRate, string? channel, out Finding? finding)
    {
        using MeasuredFile? file = MeasuredFile.Open(path, out finding);
        if (file is null)
        {
            return null;
        }

        try
        {
            Recording recording = file.Recording(channel, assumedRate);
            List<double> samples = [];
            recording.Samples.Read(piece => samples.AddRange(piece));
            return new MeasuredSignal(recording.Channel, recording.Rate, samples) { AreSteps = recording.AreSteps, IsRateAssumed = recording.IsRateAssumed };
        }
        catch (BadRecordingException problem)
        {
            finding = problem.Finding with { File = problem.Finding.File ?? path };
            return null;
        }
    }
}
