namespace FrontEnd.Simulation;

/// <summary>What a made-up head and its wearer can do.</summary>
internal enum HeadSignalKind
{
    /// <summary>Activity that falls with frequency, everywhere.</summary>
    Background,

    /// <summary>A rhythm at 10 Hz that waxes and wanes, from the back of the head.</summary>
    Alpha,

    /// <summary>Blinks, largest at the front.</summary>
    Blink,

    /// <summary>The heart, seen at an ear.</summary>
    Heart,

    /// <summary>Bursts of muscle activity, 20 to 300 Hz.</summary>
    Muscle,

    /// <summary>A response to stimuli at a steady rate, from the top of the head.</summary>
    Evoked,

    /// <summary>Steps of the electrodes' offset, there and back.</summary>
    Offset,

    /// <summary>The first channel's lead falls off and comes back.</summary>
    LeadOff,

    /// <summary>A square wave at the electrodes.</summary>
    Calibration,
}

/// <summary>A signal on the made-up head.</summary>
/// <param name="Kind">Which.</param>
/// <param name="Amplitude">Peak-to-peak for <see cref="HeadSignalKind.Alpha"/>; rms within a burst for <see cref="HeadSignalKind.Muscle"/>; a root density at
/// 10 Hz times √Hz for <see cref="HeadSignalKind.Background"/>; else the peak. Null for the usual.</param>
internal sealed record HeadSignal(HeadSignalKind Kind, Voltage? Amplitude = null)
{
    /// <summary>Words and usual amplitudes [V]: orders of magnitude that a practitioner expects (common practice, no source).</summary>
    private static readonly (HeadSignalKind Kind, string Word, double Volts, string What)[] Known =
    [
        (HeadSignalKind.Background, "background", 1e-6, "activity that falls with frequency; the amplitude is its root density at 10 Hz, per √Hz"),
        (HeadSignalKind.Alpha, "alpha", 30e-6, "a 10 Hz rhythm that waxes and wanes, from the back of the head, peak-to-peak"),
        (HeadSignalKind.Blink, "blink", 100e-6, "blinks, largest at the front, peak"),
        (HeadSignalKind.Heart, "heart", 15e-6, "the heart seen at an ear, 66 beats a minute, peak"),
        (HeadSignalKind.Muscle, "muscle", 20e-6, "bursts of muscle activity, 20 to 300 Hz, rms"),
        (HeadSignalKind.Evoked, "evoked", 5e-6, "a response to a stimulus every second, from the top of the head, peak"),
        (HeadSignalKind.Offset, "offset", 0, "steps of the electrodes' offset, there and back; the design's own step where none is given"),
        (HeadSignalKind.LeadOff, "lead-off", 0, "the first channel's lead falls off and comes back; it has no amplitude"),
        (HeadSignalKind.Calibration, "calibration", 50e-6, "a square wave of 1 Hz at the electrodes, peak"),
    ];

    /// <summary>Every word with what it stands for.</summary>
    public static IReadOnlyList<(string Word, string What)> All => [.. Known.Select(one => (one.Word, one.What))];

    /// <summary>The word it is asked for by.</summary>
    public string Word => Of(Kind).Word;

    /// <summary>What it is.</summary>
    public string What => Of(Kind).What;

    /// <summary>The amplitude given, or the usual one [V].</summary>
    internal double Volts => Amplitude?.Volts ?? Of(Kind).Volts;

    /// <summary>"alpha", "alpha=20uV"; null where a finding says what is wrong.</summary>
    public static HeadSignal? Parse(string text, ICollection<Finding> findings)
    {
        int at = text.IndexOf('=', StringComparison.Ordinal);
        string word = (at < 0 ? text : text[..at]).Trim();
        var known = Known.FirstOrDefault(one => string.Equals(one.Word, word, StringComparison.OrdinalIgnoreCase));
        if (known.Word is null)
        {
            findings.Add(SampleMessages.NoSignal(word, Nearest.Of(word, Known.Select(one => one.Word)), Known.Select(one => one.Word)));
            return null;
        }

        if (at < 0)
        {
            return new HeadSignal(known.Kind);
        }

        if (known.Kind == HeadSignalKind.LeadOff)
        {
            findings.Add(SampleMessages.NoAmplitudeWanted(known.Word));
            return null;
        }

        if (!QuantityText.TryParse(text[(at + 1)..].Trim(), out Voltage volts, out ParseProblem? problem))
        {
            findings.Add(problem!.ToFinding("--signal", text));
            return null;
        }

        if (volts.Volts is <= 0 or > MostVolts)
        {
            findings.Add(SampleMessages.NoSuchAmplitude(known.Word, QuantityText.FormatPart(volts)));
            return null;
        }

        return new HeadSignal(known.Kind, volts);
    }

    /// <summary>More than this no electrode on skin gives [V] (common practice, no source).</summary>
    private const double MostVolts = 2;

    private static (HeadSignalKind Kind, string Word, double Volts, string What) Of(HeadSignalKind kind) => Known.First(one => one.Kind == kind);
}
