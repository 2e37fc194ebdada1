using FrontEnd.Documents.Files;
using FrontEnd.Head;
using FrontEnd.Simulation;

namespace FrontEnd.Documents.Recordings;

/// <summary>Writes the samples of a simulated recording into files as they are made, all of them in one pass.</summary>
/// <remarks>No more than a record and a block of samples are held, whatever the length. Every file is a temporary one beside its place until
/// all are whole; what ends the writing leaves none.</remarks>
internal static class SampleFiles
{
    /// <summary>Their forms, by the extension of the file.</summary>
    public static IReadOnlyList<string> Extensions { get; } = [Edf, Csv];

    /// <summary>The form that says a day.</summary>
    public const string Dated = Edf;

    private const string Edf = ".edf", Csv = ".csv";

    /// <summary>Parts that a progress goes to.</summary>
    public const int ProgressSteps = 1000;

    /// <summary>Makes the samples and writes them; null with a finding where a file cannot be written.</summary>
    /// <param name="run">The samples.</param>
    /// <param name="assessment">Of the same design.</param>
    /// <param name="wish">How.</param>
    /// <param name="paths">The files; none where the samples are only looked at.</param>
    /// <param name="look">Sees every block before it is written; null for nobody.</param>
    /// <param name="progress">Told how far it is, to <see cref="ProgressSteps"/>; null for nobody.</param>
    /// <param name="cancellation">Ends it, and leaves no file.</param>
    public static IReadOnlyList<WrittenSamples>? Write(SampleRun run, Assessment assessment, SampleFileWish wish, IReadOnlyList<string> paths,
        Action<SampleBlock>? look, IProgress<int>? progress, CancellationToken cancellation, out Finding? finding)
    {
        RecordingHead head = HeadOf(run, assessment, wish);
        List<Output> outputs = [];
        try
        {
            foreach (string path in paths)
            {
                if (Opener(head, path, out finding) is not { } open || Output.At(path, open, out finding) is not { } output)
                {
                    return null;
                }

                outputs.Add(output);
            }

            finding = null;
            foreach (SampleBlock block in run.Blocks(cancellation))
            {
                look?.Invoke(block);
                finding = All(outputs, output => output.Take(block));
                if (finding is not null)
                {
                    return null;
                }

                progress?.Report((int)((block.First + block.Length) * ProgressSteps / run.Count));
            }

            cancellation.ThrowIfCancellationRequested();
            finding = All(outputs, output => output.End()) ?? All(outputs, output => output.Place());
            return finding is null ? [.. outputs.Select(output => output.Written)] : null;
        }
        finally
        {
            outputs.ForEach(output => output.Dispose());
        }
    }

    private static Finding? All(List<Output> outputs, Action<Output> act)
    {
        foreach (Output output in outputs)
        {
            if (output.Try(() => act(output)) is { } finding)
            {
                return finding;
            }
        }

        return null;
    }

    /// <summary>What makes the writer of a file; null with a finding where its form cannot hold the samples.</summary>
    private static Func<ByteSink, ISampleWriter>? Opener(RecordingHead head, string path, out Finding? finding)
    {
        finding = null;
        switch (Path.GetExtension(path).ToLowerInvariant())
        {
            case Edf:
                return EdfFile.Prepare(head, path, out finding);
            case Csv:
                return write => new SampleTable(write, head);
            default:
                finding = WritingMessages.SamplesFormat(path, Extensions);
                return null;
        }
    }

    private static RecordingHead HeadOf(SampleRun run, Assessment assessment, SampleFileWish wish)
    {
        string[] sites = SitesOf(run.Design);
        return new RecordingHead
        {
            Design = run.Design.Name,
            Program = $"frontend_{wish.Version}",
            Seed = run.Wish.Seed,
            Rate = run.Rate,
            Count = run.Count,
            Length = run.Wish.Length,
            AreWhole = run.AreWhole,
            InSteps = wish.InSteps,
            Channels = [.. run.Channels.Select((name, at) =>
                new RecordedChannel(NameOf(name), Voltage.FromVolts(run.VoltsPerStep[at]), run.LargestExpected[at]) { Sites = sites[at] })],
            Notes = [.. run.Events.Select(NoteOf)],
            Filters = RecordingWording.Filters(assessment),
            Caution = Cautions.OfFile(assessment),
            Day = wish.Day ?? RecordingHead.NoDay,
        };
    }

    private static RecordingNote NoteOf(SampleEvent one) => new(one.Start, one.Length, one.Text);

    /// <summary>A channel that has a number for a name is <c>ch1</c>.</summary>
    private static string NameOf(string name) => name.All(char.IsAsciiDigit) ? $"ch{name}" : name;

    /// <summary>What each recorded channel compares: its site with the reference's; "" where its site is not known.</summary>
    private static string[] SitesOf(Design design)
    {
        string[] sites = [.. Enumerable.Repeat("", design.Channels)];
        for (int at = 0; at < sites.Length; at++)
        {
            Channel? channel = at < design.ChannelList.Count ? design.ChannelList[at] : null;
            string word = channel?.EffectiveSite ?? (at < design.Montage.Sites.Count ? design.Montage.Sites[at] : "");
            string reference = channel?.Minus is { } minus ? SiteWords.Site(minus.Site)?.Name ?? minus.Site : design.ReferenceName;
            sites[at] = SiteWords.Site(word) is { } site ? $"{site.Called(word)}-{reference}" : "";
        }

        return sites;
    }

    /// <summary>A file that is being written.</summary>
    private sealed class Output : IDisposable
    {
        private readonly string _path;
        private readonly AtomicFile _file;
        private readonly ISampleWriter _writer;

        private Output(string path, AtomicFile file, ISampleWriter writer) => (_path, _file, _writer) = (path, file, writer);

        public WrittenSamples Written => _writer is EdfFile edf
            ? new WrittenSamples(_path, edf.Channels)
            {
                Records = edf.Records, RecordLength = Duration.FromSeconds(EdfNumber.Value(edf.RecordSeconds)),
            }
            : new WrittenSamples(_path, _writer.Channels);

        /// <summary>Null with a finding where it cannot be made.</summary>
        public static Output? At(string path, Func<ByteSink, ISampleWriter> open, out Finding? finding)
        {
            AtomicFile? file = null;
            ISampleWriter? writer = null;
            finding = TextFiles.Attempt(path, () =>
            {
                file = new AtomicFile(path);
                writer = open(file.Write);
            });
            if (finding is null)
            {
                return new Output(path, file!, writer!);
            }

            file?.Dispose();
            return null;
        }

        /// <summary>What went wrong with the file, or null; a fault of ours is none of the file's.</summary>
        public Finding? Try(Action act)
        {
            try
            {
                act();
                return null;
            }
            catch (Exception error) when (error is IOException or UnauthorizedAccessException)
            {
                return FileMessages.Unwritable(_path, error);
            }
        }

        public void Take(SampleBlock block)
        {
            foreach (SampleEvent found in block.Found)
            {
                _writer.Note(NoteOf(found));
            }

            _writer.Write(block.Steps, block.Length);
        }

        public void End() => _writer.Finish();

        public void Place() => _file.Finish();

        public void Dispose() => _file.Dispose();
    }
}
