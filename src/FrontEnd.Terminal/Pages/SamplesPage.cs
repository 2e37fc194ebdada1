using FrontEnd.Documents.Sheets;
using FrontEnd.Simulation;

namespace FrontEnd.Terminal;

/// <summary>The samples that the design would deliver on a made-up head: time and spectrum, with and without some of what is in them.</summary>
/// <param name="Window">Which of <see cref="Windows"/> is drawn in time.</param>
/// <param name="Channel">Which channel is drawn.</param>
internal sealed record SamplesPage(int Window = 1, int Channel = 0) : StudyPage
{
    /// <summary>The way to it.</summary>
    public static readonly Act Way = new(
        '\0', [], "samples in time: what the device would deliver, with and without hum and folding", model => OpenStudy(model, new SamplesPage())) { Under = 't' };

    /// <summary>Lengths that are drawn in time [s].</summary>
    private static readonly double[] Windows = [0.5, 2, 10];

    /// <summary>Enough for the summary to hold noise against the budget.</summary>
    private static readonly Duration Length = Duration.FromSeconds(40);

    /// <summary>What a key leaves out, and its words.</summary>
    private static readonly (char Letter, string Word, string Key)[] Switches =
        [('h', "hum", "hum"), ('f', "folded", "folds"), ('q', "quantisation", "rounding"), ('e', "electrodes", "electrodes"), ('d', DigitalWord, "filters")];

    private const string DigitalWord = "digital filters";

    /// <summary>What is left out, by the letters of its keys.</summary>
    public string Off { get; init; } = "";

    /// <summary>Alpha, background and blinks on the head, or nothing but noise and mains.</summary>
    public bool HasHead { get; init; }

    /// <summary>The same seed gives the same samples.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>True for the summary in words in the pictures' place.</summary>
    public bool InWords { get; init; }

    /// <inheritdoc/>
    public override string Title => "samples";

    /// <inheritdoc/>
    public override string Does => "Simulates the samples that this design would deliver. Nobody is recorded.";

    /// <inheritdoc/>
    protected override IEnumerable<KeyHint> WishKeys =>
        [new("v", InWords ? "picture" : "words"), .. Switches.Select(one => new KeyHint(one.Letter.ToString(), one.Key)), new("a", "head"), new("w", "window"), new("c", "channel"), new("s", "seed")];

    /// <inheritdoc/>
    public override StudyOutcome Work(Design design, Action<double> progress, CancellationToken cancellation)
    {
        List<Finding> findings = [];
        SampleWish all = new()
        {
            Length = Length, Seed = Seed, Signals = HasHead ? [new(HeadSignalKind.Background), new(HeadSignalKind.Alpha), new(HeadSignalKind.Blink)] : [],
        };
        SampleRun? run = SampleRun.Prepare(design, all, findings), less = null;
        if (run is not null && Off.Length != 0)
        {
            less = SampleRun.Prepare(design, all with { Without = [.. Names(design)] }, []);
        }

        if (run is null || (less is null && Off.Length != 0))
        {
            return Refused(findings, "nothing of this design can be simulated");
        }

        double parts = less is null ? 1 : 2;
        Duration shown = Duration.FromSeconds(Windows[^1]);
        SampleLook with = SampleLook.Of(run, shown, new Told<double>(share => progress(share / parts)), cancellation);
        SampleLook? without = less is null ? null : SampleLook.Of(less, shown, new Told<double>(share => progress((1 + share) / parts)), cancellation);
        SampledDesign first = new(with.Run, with.Summary);
        SampleAnswer answer = without is null ? new SampleAnswer(first, null, []) : new SampleAnswer(new SampledDesign(without.Run, without.Summary), first, []);
        return new SamplesOutcome(width => SamplesText.Of(answer, width) + Found(findings, width, "\n"), with, without);
    }

    /// <inheritdoc/>
    public override void Paint(Canvas canvas, Model model, Frame frame)
    {
        // Where two pictures have no room the one in time stands alone, and where that has none the words do.
        const int LeastRows = 4;
        int rows = frame.Rows - 2;
        if (InWords || Progress is not null || rows < LeastRows || Outcome is not SamplesOutcome outcome)
        {
            base.Paint(canvas, model, frame);
            return;
        }

        int end = canvas.Put(1, frame.Top, Title, Ink.Title);
        canvas.Put(end + 3, frame.Top, canvas.Fit(Wish(model), frame.Width - end - 4), Ink.Strong);
        int upper = rows < 2 * LeastRows ? rows : rows / 2, channel = Channel % outcome.With.Traces.Count;
        DotPlot.Draw(canvas, 0, frame.Top + 1, frame.Width - 1, upper, InTime(outcome, channel));
        if (upper < rows)
        {
            DotPlot.Draw(canvas, 0, frame.Top + 1 + upper, frame.Width - 1, rows - upper, InFrequency(outcome, channel));
        }

        canvas.Put(1, frame.Bottom - 1, canvas.Fit("simulated, nobody was recorded; " + Said(outcome, channel), frame.Width - 2), Ink.Changed);
    }

    /// <inheritdoc/>
    protected override string Wish(Model model) =>
        (Off.Length == 0 ? "noise and mains" : "without " + string.Join(", ", Switches.Where(one => Off.Contains(one.Letter)).Select(one => one.Word)))
            + (HasHead ? ", on an invented head" : "") + $", channel {Channel + 1}, seed {Seed}";

    /// <inheritdoc/>
    protected override StudyPage? Wished(char letter) => letter switch
    {
        _ when Array.Exists(Switches, one => one.Letter == letter) => this with { Off = Off.Contains(letter) ? Off.Replace(letter.ToString(), "", StringComparison.Ordinal) : Off + letter },
        'a' => this with { HasHead = !HasHead },
        's' => this with { Seed = Seed + 1 },
        _ => null,
    };

    /// <inheritdoc/>
    protected override StudyPage? Turned(char letter) => letter switch
    {
        'w' => this with { Window = (Window + 1) % Windows.Length },
        'c' => this with { Channel = (Channel + 1) % Math.Max(1, (Outcome as SamplesOutcome)?.With.Traces.Count ?? 1) },
        'v' => this with { InWords = !InWords, Scroll = 0 },
        _ => null,
    };

    private IEnumerable<string> Names(Design design) => Switches.Where(one => Off.Contains(one.Letter))
        .SelectMany(one => one.Word == DigitalWord ? design.Digital.Select(filter => filter.Name) : [one.Word]);

    private PlotData InTime(SamplesOutcome outcome, int channel)
    {
        List<Curve> curves = [Cut(outcome.With.Traces[channel]) with { Name = "with all" }];
        if (outcome.Without is { } without)
        {
            curves.Add(Cut(without.Traces[channel]) with { Name = "without" });
        }

        return new PlotData($"{outcome.With.Traces[channel].Name}, at the electrodes", "s", "V", curves, [], false, false);
    }

    private static PlotData InFrequency(SamplesOutcome outcome, int channel)
    {
        List<Curve> curves = [outcome.With.Spectrum(channel, "with all")];
        if (outcome.Without is { } without)
        {
            curves.Add(without.Spectrum(channel, "without"));
        }

        return new PlotData("spectrum", "Hz", "V/√Hz", [.. curves, outcome.With.Budget(channel)],
            [new(outcome.With.Run.Design.Mains.Frequency.Hertz, "mains")], true, true) { Decades = 5 };
    }

    private Curve Cut(Curve trace)
    {
        int points = Math.Max(2, trace.X.Count(second => second <= Windows[Window]));
        return trace with { X = trace.X[..Math.Min(points, trace.X.Length)], Y = trace.Y[..Math.Min(points, trace.Y.Length)] };
    }

    private static string Said(SamplesOutcome outcome, int channel)
    {
        string All(SampleLook look) => QuantityText.Format(look.Summary.Channels[channel].Rms);
        return outcome.Without is { } without ? $"{All(outcome.With)} with all, {All(without)} without"
            : outcome.With.Summary.Channels[channel].Bands is [{ } band, ..] ? $"noise {QuantityText.Format(band.Share, "1")} of the budget"
            : All(outcome.With);
    }
}

/// <summary>Simulated samples, and the same without what is switched off.</summary>
/// <param name="Write">What the command prints, in so many columns.</param>
/// <param name="With">All.</param>
/// <param name="Without">Null where nothing is switched off.</param>
internal sealed record SamplesOutcome(Func<int, string> Write, SampleLook With, SampleLook? Without) : StudyOutcome(Write, [], 0);
