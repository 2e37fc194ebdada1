using FrontEnd.Bench;
using FrontEnd.Catalogue;
using FrontEnd.Documents.Files;

namespace FrontEnd.Documents.Recordings;

/// <summary>What was measured at the bench, in a file of any size: readings (.csv that begins with <c>test,reading</c>), or a recording as
/// text (any other .csv) or of the European Data Format's family (.edf, .bdf).</summary>
/// <remarks>The memory needed does not grow with the file: a recording is read as a stream, more than once where that is needed.</remarks>
internal sealed class MeasuredFile : IDisposable
{
    /// <summary>Largest file of readings, 4 MiB.</summary>
    private const int LargestReadings = 4 * 1024 * 1024;

    /// <summary>Shorter ones are read before anyone looks.</summary>
    private const int Short = 16 * 1024 * 1024;

    private readonly RecordingBytes _bytes;
    private readonly string _extension;

    private MeasuredFile(RecordingBytes bytes)
    {
        (_bytes, _extension) = (bytes, System.IO.Path.GetExtension(bytes.Path).ToUpperInvariant());
        HoldsReadings = _extension == ".CSV" && ReadingsFile.Is(bytes.Text());
    }

    /// <summary>Thousandths that a progress of <see cref="Compare"/> goes to.</summary>
    public const int ProgressSteps = RecordingBytes.Steps;

    public string Path => _bytes.Path;

    /// <summary>True where the first line says that readings follow.</summary>
    public bool HoldsReadings { get; }

    /// <summary>True where reading it takes so long that someone should be told how far it is.</summary>
    public bool IsLong => Short < _bytes.Length;

    /// <summary>Opens a file; null with a finding where it cannot be had. A pipe is read to its end first.</summary>
    public static MeasuredFile? Open(string path, out Finding? finding)
    {
        RecordingBytes? bytes = RecordingBytes.Open(path, out finding);
        try
        {
            return bytes is null ? null : new MeasuredFile(bytes);
        }
        catch (BadRecordingException problem)
        {
            bytes!.Dispose();
            finding = problem.Finding;
            return null;
        }
    }

    public void Dispose() => _bytes.Dispose();

    /// <summary>Every reading with its test, in the order of the file, and what cannot be read.</summary>
    public (IReadOnlyList<(BenchReading Test, IQuantity Reading)> Readings, IReadOnlyList<Finding> Findings) Readings(
        IReadOnlyList<BenchReading> plan)
    {
        if (LargestReadings < _bytes.Length)
        {
            return ([], [RecordingMessages.ReadingsTooLarge(Path, _bytes.Length, LargestReadings)]);
        }

        try
        {
            byte[] bytes = new byte[_bytes.Length];
            _bytes.Read(0, bytes);
            string? text = TextFiles.Decode(Path, bytes, out Finding? problem);
            return text is null ? ([], [problem!]) : ReadingsFile.Parse(text, Path, plan);
        }
        catch (BadRecordingException problem)
        {
            return ([], [problem.Finding]);
        }
    }

    /// <summary>Holds a recording against the test that it was made in.</summary>
    /// <param name="plan">The design's tests.</param>
    /// <param name="test">The test's name; null where it was not said.</param>
    /// <param name="channel">The channel's name, or its number from 1; null for the first.</param>
    /// <param name="raw">True where the digital filters were off.</param>
    /// <param name="progress">Told how far it is; null for nobody.</param>
    /// <param name="cancellation">Ends it.</param>
    public (BenchResult? Result, IReadOnlyList<Finding> Findings) Compare(IReadOnlyList<BenchReading> plan, string? test, string? channel,
        bool raw, IProgress<int>? progress, CancellationToken cancellation)
    {
        _bytes.Watch(progress, cancellation);
        try
        {
            // The file first: what cannot be read has no test.
            Recording recording = Recording(channel, plan[0].Design.Converter.Rate);
            return test is null
                ? (null, [RecordingMessages.NeedsTest(Path)])
                : BenchComparison.Recording(plan, test, recording, raw);
        }
        catch (BadRecordingException problem)
        {
            return (null, [problem.Finding]);
        }
    }

    /// <summary>The noise of a recording on a fixture, of a device of which not everything is known.</summary>
    /// <param name="design">What is known of it.</param>
    /// <param name="fixture">What stood in the electrodes' place.</param>
    /// <param name="channel">The channel's name, or its number from 1; null for the first.</param>
    /// <param name="raw">True where the design's digital filters were off.</param>
    /// <param name="progress">Told how far it is; null for nobody.</param>
    /// <param name="cancellation">Ends it.</param>
    public (FixtureRecording? Recording, IReadOnlyList<Finding> Findings) OnFixture(PartlyKnownDesign design, KnownFixture fixture, string? channel,
        bool raw, IProgress<int>? progress, CancellationToken cancellation)
    {
        _bytes.Watch(progress, cancellation);
        try
        {
            return FixtureRecording.Of(design, fixture, Recording(channel, design.Given.Design.Converter.Rate), raw);
        }
        catch (BadRecordingException problem)
        {
            return (null, [problem.Finding]);
        }
    }

    /// <summary>One channel; throws <see cref="BadRecordingException"/> where it cannot be read, and so do its samples.</summary>
    /// <param name="channel">Its name, or its number from 1; null for the first.</param>
    /// <param name="designRate">The rate of a text file that does not say its own.</param>
    internal Recording Recording(string? channel, Frequency designRate) => _extension switch
    {
        ".EDF" => BinaryRecording.Read(_bytes, channel, 2),
        ".BDF" => BinaryRecording.Read(_bytes, channel, 3),
        _ => TextRecording.Read(_bytes, channel, designRate),
    };
}
