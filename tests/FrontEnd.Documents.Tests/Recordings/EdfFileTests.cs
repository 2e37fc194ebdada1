using System.Globalization;
using System.Text.RegularExpressions;
using FrontEnd.Bench;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Recordings;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Documents.Tests.Recordings;

/// <summary>Simulated samples as EDF+: what the program writes is read by a reader that shares nothing with it, and by its own.</summary>
public sealed class EdfFileTests : IDisposable
{
    private const int BlockSamples = 777;

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    internal static RecordingHead Head(double rate, double seconds, int channels = 1, double largest = 2048, double stepMicrovolts = 0.0456, bool areWhole = true, bool inSteps = false) => new()
    {
        Design = "a design, of \"mine\" µ",
        Program = "frontend_0.1.0",
        Seed = 7,
        Rate = Frequency.FromHertz(rate),
        Count = (long)Math.Round(rate * seconds),
        Length = Duration.FromSeconds(seconds),
        Channels = [.. Enumerable.Range(1, channels).Select(i => new RecordedChannel($"ch{i}", Voltage.FromMicrovolts(stepMicrovolts * (1 + (0.1 * (i - 1)))), largest))],
        AreWhole = areWhole,
        InSteps = inSteps,
        Filters = "HP:0.5Hz LP:40Hz",
        Caution = "Not a medical device. Design aid only. Local electrical and medical-device rules and a licensed professional decide.",
    };

    /// <summary>Samples that any test can make again: of a channel the n-th.</summary>
    internal static double Sample(int channel, long n, double largest, bool areWhole)
    {
        double value = largest * Math.Sin((0.37 * n) + channel) * (n % 5 == 0 ? 1 : 0.1);
        return areWhole ? Math.Round(value) : value;
    }

    private static byte[] Written(RecordingHead head, Func<int, long, double>? sample = null, Func<long, IEnumerable<RecordingNote>>? found = null)
    {
        using MemoryStream stream = new();
        Func<ByteSink, EdfFile> open = EdfFile.Prepare(head, "a.edf", out Finding? finding)!;
        Assert.Null(finding);
        Fill(open(stream.Write), head, sample, found);
        return stream.ToArray();
    }

    internal static void Fill(ISampleWriter writer, RecordingHead head, Func<int, long, double>? sample = null, Func<long, IEnumerable<RecordingNote>>? found = null)
    {
        double[][] steps = [.. head.Channels.Select(_ => new double[BlockSamples])];
        for (long first = 0; first < head.Count; first += BlockSamples)
        {
            int length = (int)Math.Min(BlockSamples, head.Count - first);
            for (int channel = 0; channel < steps.Length; channel++)
            {
                for (int i = 0; i < length; i++)
                {
                    steps[channel][i] = sample?.Invoke(channel, first + i) ?? Sample(channel, first + i, head.Channels[channel].Largest, head.AreWhole);
                }
            }

            foreach (RecordingNote note in found?.Invoke(first) ?? [])
            {
                writer.Note(note);
            }

            writer.Write(steps, length);
        }

        writer.Finish();
    }

    /// <summary>Rates with and without whole seconds, one to many channels: each record holds whole samples, and every sample is the step that went in.</summary>
    [Theory]
    [InlineData(250, 61, 1, "1")]
    [InlineData(256, 10, 8, "1")]
    [InlineData(512, 10, 32, "1")]
    [InlineData(1000, 4, 32, "0.8")]          // 64 kB in a second
    [InlineData(16_000, 1, 8, "0.2")]
    [InlineData(250.5, 60, 1, "2")]
    [InlineData(100.0 / 3, 60, 8, "3")]
    [InlineData(33.33333333, 60, 1, "3")]     // written with ten digits
    [InlineData(250, 60.5, 2, "60.5")]        // half a second is left: no whole seconds
    [InlineData(250, 60.404, 8, "0.004")]     // 15101 samples are a prime number
    [InlineData(0.5, 60, 1, "2")]
    [InlineData(512, 0.03125, 1, "0.03125")]
    public void Write_AnyRate_IsReadBySomebodyElse(double rate, double seconds, int channels, string recordSeconds)
    {
        RecordingHead head = Head(rate, seconds, channels);
        PlainEdf read = new(Written(head));
        Assert.Equal(recordSeconds, read.RecordSeconds.ToString(CultureInfo.InvariantCulture));
        Assert.Equal(channels, read.Signals.Count);
        for (int channel = 0; channel < channels; channel++)
        {
            PlainEdf.Signal signal = read.Signals[channel];
            Assert.Equal(rate, (double)(signal.Samples / read.RecordSeconds), 1e-9 * rate);
            Assert.Equal(head.Count, signal.Digital.Count);
            for (int n = 0; n < signal.Digital.Count; n++)
            {
                double step = Sample(channel, n, 2048, true);
                Assert.Equal(step, signal.Digital[n]);
                Assert.Equal(step * head.Channels[channel].Step.Microvolts, signal.Physical(signal.Digital[n]), 1e-6 * (1 + Math.Abs(step * head.Channels[channel].Step.Microvolts)));
            }
        }
    }

    [Fact]
    public void Header_SaysWhatTheSpecificationAsksFor()
    {
        RecordingHead head = Head(250, 10, 2) with { Day = new DateOnly(2031, 12, 5) };
        head = head with { Channels = [head.Channels[0] with { Sites = "Fp1-A2" }, head.Channels[1] with { Name = "a name that is too long µ" }] };
        PlainEdf read = new(Written(head));
        Assert.Equal("X X X X", read.Patient);
        Assert.Equal("Startdate 05-DEC-2031 X X frontend_0.1.0 seed_7 simulated", read.Recording);
        Assert.Equal(("05.12.31", "00.00.00", "EDF+C"), (read.Date, read.Time, read.Reserved));
        Assert.Equal(["EEG Fp1-A2", "a name that is t", "EDF Annotations"], read.All.Select(signal => signal.Label));
        Assert.Equal(["uV", "uV", ""], read.All.Select(signal => signal.Dimension));
        Assert.Equal("HP:0.5Hz LP:40Hz", read.Signals[0].Filters);
        Assert.Equal("simulated, nobody was recorded", read.Signals[0].Transducer);
        Assert.Equal((-32768, 32767), (read.All[2].DigitalLeast, read.All[2].DigitalMost));
    }

    [Fact]
    public void Labels_OfAlikeNames_DifferAndAreNeverThatOfTheAnnotations()
    {
        RecordingHead head = Head(250, 1, 3);
        head = head with { Channels = [.. head.Channels.Zip(["EDF Annotations", "a long name of a channel 1", "a long name of a channel 2"], (channel, name) => channel with { Name = name })] };
        Assert.Equal(["EDF Annotation 2", "a long name of a", "a long name of 2"], new PlainEdf(Written(head)).Signals.Select(signal => signal.Label));
    }

    /// <summary>Whole steps up to 16 bits are the numbers themselves, the edges of 16 bits included, and the eight letters of the range are near.</summary>
    [Theory]
    [InlineData(2048, 0.0456)]
    [InlineData(32_768, 0.0456097)]
    [InlineData(32_767, 0.732422)]
    [InlineData(2048, 233.3333)]
    [InlineData(2048, 0.0000123)]
    public void WholeSteps_OfSixteenBits_AreTheNumbersThemselves(double largest, double microvolts)
    {
        RecordingHead head = Head(250, 2, 1, largest, microvolts);
        PlainEdf.Signal signal = new PlainEdf(Written(head, (_, n) => n == 0 ? -largest : n == 1 ? Math.Min(largest, 32_767) : n)).Signals[0];
        Assert.Equal((short)-largest, signal.Digital[0]);
        Assert.Equal((short)Math.Min(largest, 32_767), signal.Digital[1]);
        Assert.Equal(499, signal.Digital[499]);
        double unit = signal.Dimension switch { "uV" => 1, "mV" => 1e3, "nV" => 1e-3, _ => double.NaN };
        Assert.Equal(1, signal.Physical(30_000) * unit / (30_000 * microvolts), 32_000 < largest ? 5e-6 : 5e-7);
        Assert.Equal(0, signal.Physical(0) * unit / microvolts, 0.02);
    }

    /// <summary>24 bits do not fit: the samples are scaled, and the file says how.</summary>
    [Theory]
    [InlineData(8_388_608, 0.00012, true)]
    [InlineData(54_321, 0.00012, true)]
    [InlineData(2048, 0.0456, false)]         // not whole: a filter in floating point
    public void OtherSteps_AreScaled_AndTheFileSaysHow(double largest, double microvolts, bool areWhole)
    {
        RecordingHead head = Head(250, 4, 2, largest, microvolts, areWhole);
        PlainEdf read = new(Written(head));
        for (int channel = 0; channel < 2; channel++)
        {
            PlainEdf.Signal signal = read.Signals[channel];
            double step = head.Channels[channel].Step.Microvolts, count = signal.Physical(1);
            Assert.InRange(count, step * largest / 32_768, step * largest / 32_700);
            for (int n = 0; n < signal.Digital.Count; n++)
            {
                Assert.Equal(Sample(channel, n, largest, areWhole) * step, signal.Physical(signal.Digital[n]), 0.501 * count);
            }

            Assert.Contains($"one count of the file is {Text.QuantityText.Format(count * 1e-6, "V", 4)}", string.Join(' ', read.Texts), StringComparison.Ordinal);
            Assert.Contains($"the design's step is {Text.QuantityText.Format(step * 1e-6, "V", 4)}", string.Join(' ', read.Texts), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(2048, true)]
    [InlineData(8_388_608, true)]
    [InlineData(300, false)]
    public void Counts_AreStepsWithoutAUnit_AndTheProgramReadsThemSo(double largest, bool areWhole)
    {
        RecordingHead head = Head(250, 4, 1, largest, 0.1, areWhole, inSteps: true);
        byte[] bytes = Written(head);
        PlainEdf.Signal signal = new PlainEdf(bytes).Signals[0];
        Assert.Equal("", signal.Dimension);
        double count = signal.Physical(1) - signal.Physical(0);
        Recording own = Own(bytes, null, out double[] samples);
        Assert.True(own.AreSteps);
        for (int n = 0; n < samples.Length; n++)
        {
            Assert.Equal(Sample(0, n, largest, areWhole), signal.Physical(signal.Digital[n]), areWhole && largest == 2048 ? 0 : 1.001 * count); // the uppermost step is held at the edge
            Assert.Equal(signal.Physical(signal.Digital[n]), samples[n], 1e-9 * largest);
        }
    }

    [Fact]
    public void Counts_OfMoreThanTwentyFourBits_AreAFinding()
    {
        Assert.Null(EdfFile.Prepare(Head(250, 4, 1, Math.Pow(2, 31), 1e-6, inSteps: true), "a.edf", out Finding? finding));
        Assert.Equal("FE1063", finding!.Code);
        Assert.NotNull(EdfFile.Prepare(Head(250, 4, 1, Math.Pow(2, 31), 1e-6), "a.edf", out _));
    }

    /// <summary>What does not fit is held at the edge, counted, and told at the end.</summary>
    [Fact]
    public void Samples_BeyondTheRange_AreHeldAndCounted()
    {
        RecordingHead head = Head(250, 4, 2, 1000, areWhole: false);
        using MemoryStream stream = new();
        EdfFile file = EdfFile.Prepare(head, "a.edf", out _)!(stream.Write);
        Fill(file, head, (channel, n) => channel == 1 && n is 100 or 200 or 999 ? 1e9 * (n == 200 ? -1 : 1) : 3);
        Assert.Equal([0, 3], file.Channels.Select(channel => channel.Held));
        PlainEdf read = new(stream.ToArray());
        Assert.Equal((read.Signals[1].DigitalMost, read.Signals[1].DigitalLeast), (read.Signals[1].Digital[100], read.Signals[1].Digital[200]));
        Assert.Single(read.Texts, "3 samples beyond the range, held at its edge");
        Assert.DoesNotContain(new PlainEdf(Written(Head(250, 4))).Texts, text => text.Contains("beyond the range", StringComparison.Ordinal));
    }

    /// <summary>Known events stand in their record; what is found follows; the rest of the file's remarks fills what room there is.</summary>
    [Fact]
    public void Annotations_AllOfThem_AreThere()
    {
        RecordingNote[] known = [.. Enumerable.Range(0, 30).Select(i => new RecordingNote(Duration.FromSeconds(0.25 + (i * 0.5)), Duration.FromSeconds(0.2), $"blink {i} of µ"))];
        RecordingHead head = Head(250, 20, 2) with { Notes = known };
        PlainEdf read = new(Written(head, found: first => first == 0 ? [] : [new RecordingNote(Duration.FromSeconds((first - 10) / 250.0), Duration.FromSeconds(0.04), $"ch1 clips at node {first}")]));
        Assert.Equal("simulated, nobody was recorded", read.Annotations[0].Text);
        Assert.Equal(("seed 7", 0L), (read.Annotations[1].Text, read.Annotations[1].Record));
        foreach (RecordingNote note in known)
        {
            PlainEdf.Annotation one = Assert.Single(read.Annotations, one => one.Text == note.Text);
            Assert.Equal(((decimal)note.Start.Seconds, 0.2m), (one.Onset, one.Length));
            Assert.Equal((long)note.Start.Seconds, one.Record);
        }

        for (long first = BlockSamples; first < head.Count; first += BlockSamples)
        {
            PlainEdf.Annotation one = Assert.Single(read.Annotations, one => one.Text == $"ch1 clips at node {first}");
            Assert.Equal(((first - 10) / 250m, 0.04m), (one.Onset, one.Length));
            Assert.InRange(one.Record, (first - 10) / 250, first / 250);
        }

        string all = string.Join(' ', read.Texts);
        Assert.Contains(head.Caution, all, StringComparison.Ordinal);
        Assert.Contains($"design: {head.Design}", all, StringComparison.Ordinal);
    }

    /// <summary>However many findings meet in one record, they are told, as one of each kind with their number.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(20)]
    public void Findings_OfAnyNumber_HaveRoom(double seconds)
    {
        RecordingHead head = Head(250, seconds);
        PlainEdf read = new(Written(head, found: first =>
            Enumerable.Range(0, 500).Select(i => new RecordingNote(Duration.FromSeconds(Math.Floor(first / 250.0) + (0.001 * i)), Duration.FromSeconds(0.0005), i % 2 == 0 ? "ch1 clips at the converter" : "ch1 clips at the amplifier"))));
        int blocks = (int)Math.Ceiling(head.Count / (double)BlockSamples);
        foreach ((string node, decimal from) in new[] { ("converter", 0m), ("amplifier", 0.001m) })
        {
            PlainEdf.Annotation[] clips = [.. read.Annotations.Where(one => one.Text == $"ch1 clips at the {node}, 250 times")];
            Assert.Equal(blocks, clips.Length);
            Assert.All(clips, clip => Assert.Equal((clip.Record + from, 0.4985m), (clip.Onset, clip.Length)));
        }
    }

    /// <summary>What is of too many kinds for a record stands in later ones; what no later one can take is counted.</summary>
    [Theory]
    [InlineData(0, false)]
    [InlineData(18, true)]
    public void Findings_OfTooManyKinds_Wait(double start, bool areCounted)
    {
        PlainEdf read = new(Written(Head(250, 20), found: first => first <= start * 250 && start * 250 < first + BlockSamples
            ? Enumerable.Range(100, 50).Select(i => new RecordingNote(Duration.FromSeconds(start), null, $"a finding of some length, of kind {i}")) : []));
        PlainEdf.Annotation[] found = [.. read.Annotations.Where(one => one.Text.StartsWith("a finding", StringComparison.Ordinal))];
        Assert.All(found, one => Assert.Equal((decimal)start, one.Onset));
        Assert.True(2 < found.Select(one => one.Record).Distinct().Count() || areCounted);
        string? counted = read.Texts.SingleOrDefault(text => text.EndsWith(" more events", StringComparison.Ordinal));
        Assert.Equal(areCounted, counted is not null);
        Assert.Equal(50, found.Length + (counted is null ? 0 : int.Parse(counted.Split(' ')[0], CultureInfo.InvariantCulture)));
    }

    /// <summary>A record of one sample has its annotations too, a file of one record all of them.</summary>
    [Theory]
    [InlineData(250, 0.004)]
    [InlineData(250, 0.004 * 10_007)]
    public void Annotations_OfTheSmallestFiles_AreThere(double rate, double seconds)
    {
        PlainEdf read = new(Written(Head(rate, seconds, 32)));
        Assert.Contains(Head(rate, seconds).Caution, string.Join(' ', read.Texts), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(250.5, 61, 1, "FE1062", "`60 s` or `62 s`")]
    [InlineData(250, 60.001, 1, "FE1062", "`60 s` or `60.004 s`")]
    [InlineData(100.0 / 3, 1, 1, "FE1062", "`990 ms` or `1.02 s`")]
    [InlineData(33.3333, 60, 1, "FE1061", "`33.332 Hz` or `33.334 Hz`")]
    [InlineData(100_003, 60, 8, "FE1061", "`100 kHz` or `100.05 kHz`")]
    [InlineData(3.14159265, 60, 1, "FE1061", "Hz")]
    public void RatesAndLengths_ThatDoNotFit_NameTheNearestThatDo(double rate, double seconds, int channels, string code, string nearest)
    {
        Assert.Null(EdfFile.Prepare(Head(rate, seconds, channels), "a.edf", out Finding? finding));
        Assert.Equal(code, finding!.Code);
        Assert.Contains(nearest.Replace("`", "", StringComparison.Ordinal), finding.Help, StringComparison.Ordinal);
    }

    /// <summary>Whatever rate, length and number of channels: there is a layout that the specification allows, or what is named instead has one.</summary>
    [Property(MaxTest = 300)]
    public void Layout_OfAnyRateAndLength_FitsOrNamesOneThatDoes(PositiveInt a, PositiveInt b, PositiveInt c, PositiveInt d)
    {
        double[] parts = [1, 2, 3, 4, 7, 10, 100, 1024, 32_768.0 / 1000];
        double rate = Math.Max(0.25, 25 * (a.Get % 400) / parts[b.Get % parts.Length]), seconds = c.Get % 5000 / parts[d.Get % 7];
        int channels = 1 + (d.Get % 40);
        RecordingHead head = Head(rate, Math.Max(seconds, 20 / rate), channels);
        Func<ByteSink, EdfFile>? open = EdfFile.Prepare(head, "a.edf", out Finding? finding);
        if (open is null)
        {
            MatchCollection named = Regex.Matches(finding!.Help!, @"[0-9.]+ (?:[mk]?Hz|[mµ]?s|min|h)\b", RegexOptions.None, TimeSpan.FromSeconds(5));
            Assert.NotEmpty(named);
            Assert.All(named, one => Assert.True(Fits(head, one.Value), $"{rate} Hz, {head.Length.Seconds} s, {channels} channels: {one.Value}"));
            return;
        }

        EdfFile file = open(Stream.Null.Write);
        double length = double.Parse(file.RecordSeconds, CultureInfo.InvariantCulture);
        Assert.Equal(head.Length.Seconds, file.Records * length, 1e-6 * length);
    }

    private static bool Fits(RecordingHead head, string named)
    {
        RecordingHead other = head;
        if (Text.QuantityText.TryParse(named, out Frequency rate, out _))
        {
            // A thousand seconds are whole records at every rate that is named.
            other = Head(rate.Hertz, 1000, head.Channels.Count);
        }
        else if (Text.QuantityText.TryParse(named, out Duration length, out _))
        {
            other = Head(head.Rate.Hertz, length.Seconds, head.Channels.Count);
        }

        return EdfFile.Prepare(other, "a.edf", out _) is not null;
    }

    [Theory]
    [InlineData(1984)]
    [InlineData(2085)]
    public void Day_OfAYearThatTwoDigitsCannotSay_IsAFinding(int year)
    {
        Assert.Null(EdfFile.Prepare(Head(250, 4) with { Day = new DateOnly(year, 1, 1) }, "a.edf", out Finding? finding));
        Assert.Equal("FE1064", finding!.Code);
    }

    /// <summary>The program's own reader: name, unit, rate and every sample.</summary>
    [Theory]
    [InlineData(250, 60, 8, 2048, true)]
    [InlineData(100.0 / 3, 60, 2, 8_388_608, true)]
    [InlineData(250.5, 60, 1, 2048, false)]
    public void Read_ByTheProgram_GivesTheSamples(double rate, double seconds, int channels, double largest, bool areWhole)
    {
        RecordingHead head = Head(rate, seconds, channels, largest, 0.01, areWhole);
        byte[] bytes = Written(head);
        for (int channel = 0; channel < channels; channel++)
        {
            Recording own = Own(bytes, $"ch{channel + 1}", out double[] samples);
            Assert.Equal((false, "uV"), (own.AreSteps, own.Unit));
            Assert.Equal(rate, own.Rate.Hertz, 1e-9 * rate);
            Assert.Equal(head.Count, samples.Length);
            double step = head.Channels[channel].Step.Volts;
            Assert.All(Enumerable.Range(0, samples.Length), n =>
                Assert.Equal(step * Sample(channel, n, largest, areWhole), samples[n], step * (areWhole && largest == 2048 ? 1e-3 : largest / 32_700)));
        }
    }

    /// <summary>A label of EDF+ is found by its sensor alone, while that is but one's.</summary>
    [Fact]
    public void Read_OfASensor_FindsItsLabel()
    {
        RecordingHead head = Head(250, 4, 4);
        head = head with { Channels = [.. head.Channels.Zip(["Fp1-A2", "Fp2-A2", "Cz-A1", "Cz-A2"], (channel, sites) => channel with { Sites = sites })] };
        byte[] bytes = Written(head);
        Assert.Equal("EEG Fp2-A2", Own(bytes, "fp2", out _).Channel);
        Assert.Equal("EEG Cz-A2", Own(bytes, "Cz-A2", out _).Channel);
        Assert.Equal("FE0743", Assert.Throws<BadRecordingException>(() => Own(bytes, "Cz", out _)).Finding.Code);
    }

    [Theory]
    [InlineData("EDF Annotations")]
    [InlineData("3")]
    public void Read_OfTheAnnotations_SaysThatTheyHoldNoSamples(string channel)
    {
        BadRecordingException problem = Assert.Throws<BadRecordingException>(() => Own(Written(Head(250, 4, 2)), channel, out _));
        Assert.Equal("FE1060", problem.Finding.Code);
        Assert.Contains("`EDF Annotations` holds annotations", problem.Finding.Message, StringComparison.Ordinal);
        Assert.Contains("ch1", problem.Finding.Note, StringComparison.Ordinal);
        Assert.Contains("ch2", problem.Finding.Note, StringComparison.Ordinal);
    }

    /// <summary>A range that is no number of steps says nothing without a unit.</summary>
    [Fact]
    public void Read_OfARangeWithoutAUnit_IsAFinding()
    {
        byte[] bytes = Written(Head(250, 4));
        "        "u8.CopyTo(bytes.AsSpan(256 + (96 * 2)));
        BadRecordingException problem = Assert.Throws<BadRecordingException>(() => Own(bytes, null, out _));
        Assert.Equal("FE0742", problem.Finding.Code);
        Assert.Contains("`ch1` does not state the unit", problem.Finding.Message, StringComparison.Ordinal);
    }

    private Recording Own(byte[] bytes, string? channel, out double[] samples)
    {
        string path = Path.Combine(_folder.Path, "own.edf");
        File.WriteAllBytes(path, bytes);
        using MeasuredFile file = MeasuredFile.Open(path, out _)!;
        Recording recording = file.Recording(channel, Frequency.FromHertz(1));
        List<double> all = [];
        recording.Samples.Read(piece => all.AddRange(piece));
        samples = [.. all];
        return recording;
    }

    /// <summary>A writer that is given other samples than were announced says so: no file may lie about its length.</summary>
    [Fact]
    public void Finish_AfterTooFewSamples_Throws()
    {
        EdfFile file = EdfFile.Prepare(Head(250, 4), "a.edf", out _)!(Stream.Null.Write);
        file.Write([new double[300]], 300);
        Assert.Throws<InvalidOperationException>(file.Finish);
    }
}
