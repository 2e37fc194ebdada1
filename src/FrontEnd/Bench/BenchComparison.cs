using FrontEnd.Designs;
using FrontEnd.Results;

namespace FrontEnd.Bench;

/// <summary>Holds readings and recordings of a built board against what its design should give.</summary>
internal static class BenchComparison
{
    /// <summary>The highest harmonic of the mains that a line in a recording is compared with.</summary>
    public static readonly int HighestHarmonic = Interference.Mains.StandardHarmonics.Count;

    /// <summary>Shortest recording that is worked out [s].</summary>
    private const double ShortestSeconds = 4;

    /// <summary>One reading against its test.</summary>
    public static (BenchResult? Result, Finding? Finding) Reading(BenchReading test, IQuantity measured)
    {
        if (test.Expected is null)
        {
            return (new BenchResult(test, measured, VerdictKind.NotJudged, test.Remark ?? "nothing is predicted", 0, []), null);
        }

        if (!string.Equals(measured.SiUnit, test.Expected.SiUnit, StringComparison.Ordinal))
        {
            return (null, Messages.OtherKind(test.Name, measured.SiUnit, test.Expected.SiUnit));
        }

        bool pass = Within(test, measured.SiValue);
        IReadOnlyList<Suspect> suspects = pass ? [] : BenchSuspects.Of(test, measured.SiValue);
        return (new BenchResult(test, measured, pass
            ? VerdictKind.Pass
            : VerdictKind.Fail, Sentence(test, measured), test.Spread, suspects), null);
    }

    /// <summary>A recording made during one test.</summary>
    /// <param name="plan">The design's tests: see <see cref="BenchPlan"/>.</param>
    /// <param name="name">The test's name.</param>
    /// <param name="recording">Samples as the board delivers them. They are read once; where a percentile is wanted of more values than are
    /// counted one by one, four times more.</param>
    /// <param name="raw">True where the digital filters were off also in tests that have them on.</param>
    public static (BenchResult? Result, IReadOnlyList<Finding> Findings) Recording(IReadOnlyList<BenchReading> plan, string name,
        Recording recording, bool raw = false)
    {
        if (plan.FirstOrDefault(one => string.Equals(one.Name, name, StringComparison.Ordinal)) is not { } test)
        {
            string[] known = [.. plan.Select(one => one.Name)];
            return (null, [Messages.NoTest(name, Nearest.Of(name, known), known)]);
        }

        if (test.Kind == ReadingKind.Other)
        {
            return (null, [Messages.ByInstrument(name)]);
        }

        Design design = test.Design;
        if (Unfit(design, recording) is { } unfit)
        {
            return (null, [unfit]);
        }

        var taken = new TakenRecording(test, recording, test.Filtered && !raw);
        if (taken.Sums.NotFinite is { } at)
        {
            return (null, [Messages.NotFinite(at + 1)]);
        }

        BenchResult result = RecordingChecks.IsDead(taken.Sums) ? Dead(taken)
            : test.Kind == ReadingKind.Tone ? Tone(taken)
            : test.Kind == ReadingKind.Pulse ? Pulse(taken)
            : Noise(taken);
        return Whole(taken, result);
    }

    /// <summary>Why a recording cannot be held against a design: another rate, or too short; null where it can.</summary>
    internal static Finding? Unfit(Design design, Recording recording)
    {
        if (1e-3 < Math.Abs((recording.Rate.Hertz / design.Converter.Rate.Hertz) - 1))
        {
            return Messages.OtherRate(QuantityText.Format(recording.Rate, 5), QuantityText.Format(design.Converter.Rate, 5));
        }

        double least = Math.Max(ShortestSeconds, 8 / design.Band.Low.Hertz);
        return recording.Length.Seconds < least
            ? Messages.TooShort(QuantityText.Format(recording.Length), QuantityText.Format(Duration.FromSeconds(least)))
            : null;
    }

    /// <summary>What was taken from a recording, in words.</summary>
    internal static string Described(Recording recording, bool isFiltered) =>
        $"channel `{recording.Channel}`, its samples read as {(recording.AreSteps ? "converter counts" : $"{recording.Unit} at the electrodes")}, {QuantityText.Format(recording.Rate)}"
        + $"{(recording.IsRateAssumed ? " as in the design (the file does not say)" : "")}, {QuantityText.Format(recording.Length)}, compared with the design, digital filters {(isFiltered ? "on" : "off")}";

    /// <summary>The result with what it was taken from; a record that is shorter than the test asks for passes nothing.</summary>
    private static (BenchResult Result, IReadOnlyList<Finding> Findings) Whole(TakenRecording taken, BenchResult result)
    {
        Recording recording = taken.Recording;
        bool isShort = recording.Length.Seconds < WholeShare * BenchPlan.RecordSeconds;
        string asked = QuantityText.Format(Duration.FromSeconds(BenchPlan.RecordSeconds));
        result = result with
        {
            Verdict = isShort && result.Verdict == VerdictKind.Pass ? VerdictKind.NotJudged : result.Verdict,
            Because = result.Because + (isShort && result.Verdict == VerdictKind.Pass
                ? $"; not judged, because the recording has only {QuantityText.Format(recording.Length)} of the {asked} that the test asks for"
                : ""),
            Length = recording.Length,
            Taken = Described(recording, taken.IsFiltered),
            Spectra =
            [
                new Curve("measured", "Hz", "V/√Hz", taken.Hertz,
                    [.. Enumerable.Range(1, taken.Hertz.Length).Select(k => Math.Sqrt(taken.Measured.Density[k]))]),
                new Curve("predicted", "Hz", "V/√Hz", taken.Hertz, [.. taken.Density.Select(Math.Sqrt)]),
            ],
        };
        return (result, isShort ? [Messages.Ends(QuantityText.Format(recording.Length), asked)] : []);
    }

    /// <summary>Share of the record that a test asks for which a recording must have: a few rows lost at either end are no cut.</summary>
    private const double WholeShare = 0.98;

    private static BenchResult Dead(TakenRecording taken) => new(taken.Test, Zero(taken.Test), VerdictKind.Fail,
        $"no sample of {taken.Sums.Count} differs from the first: nothing was measured", 0,
        [new Suspect(SuspectKind.DeadChannel,
            "the channel is dead: no sample differs from the first; check power, the converter's clock and the channel's wire",
            $"{taken.Sums.Count} equal samples"),
        new Suspect(SuspectKind.Clipping, "an input constantly beyond its range, which a digital high-pass removes: an offset, a lead that is off",
            $"all at {QuantityText.Format(Voltage.FromVolts(taken.Sums.Top))}")]);

    private static IQuantity Zero(BenchReading test) => test.Kind == ReadingKind.Pulse ? default(Voltage) : default(VoltageRms);

    /// <summary>Bins beside a tone into which its window reaches, and how far the noise beside it may be off before it is told [dB].</summary>
    private const int ToneBins = 40;

    private static BenchResult Tone(TakenRecording taken)
    {
        BenchReading test = taken.Test;
        VoltageRms rms = VoltageRms.FromVolts(taken.Measured.ToneRms(test.Line!.Value.Hertz));
        bool inside = Within(test, rms.Volts);
        string because = Sentence(test, rms);
        List<Suspect> suspects = inside ? [] : [.. BenchSuspects.Of(test, rms.Volts)];
        FoundLine line = new(test.Line.Value, rms, null, null, false);
        Func<int, bool> atLine = SpectrumShape.At([line], taken.Measured.Step, ToneBins);
        if (RecordingChecks.IsCut(taken.Sums, taken.Order, taken.Measured, test.Line.Value.Hertz, rms.Volts, isMains: test.Least is null))
        {
            because += "; but its tops are flat: something clips, so the reading does not show the gain";
            suspects = [new Suspect(SuspectKind.Clipping, "clipping: generator level too high, an input beyond its range, a supply below the design",
                "the samples stay at their extremes longer than a sine does, or the line has harmonics")];
            inside = false;
        }
        else if (!inside && Strongest(taken) is { } other && 2 * taken.Measured.Step < Math.Abs(other.Frequency.Hertz - test.Line.Value.Hertz)
            && rms.Volts < other.Rms.Volts)
        {
            suspects.Insert(0, new Suspect(SuspectKind.Fixture,
                $"the largest line is at {QuantityText.Format(other.Frequency)}, not at {QuantityText.Format(test.Line.Value)}: the generator's frequency is wrong, or the samples were not taken at {QuantityText.Format(taken.Recording.Rate)}",
                $"{QuantityText.Format(other.Rms)} there"));
        }

        double level = SpectrumShape.Level(taken.Measured, taken.Density, taken.Band, atLine);
        if (test.Least is null && level < -QuietDecibels)
        {
            because += $"; but the noise next to it is {QuantityText.FormatNumber(-level, 2)} dB below what the board must make: this is not a recording of it";
            suspects.Insert(0, new Suspect(SuspectKind.TooQuiet, "a channel that is not connected, or samples in another unit",
                $"the noise is {QuantityText.FormatNumber(-level, 2)} dB below the prediction"));
            inside = false;
        }

        if (SpectrumShape.Worst(taken.Measured, taken.Density, taken.Predicted, taken.Band, atLine) is { } shape)
        {
            Suspect[] filters = [.. taken.OtherFilters(atLine, shape)];
            because += $"; {(filters.Length == 0 ? "" : "but ")}the noise next to the line is not as predicted, {shape.Words}{(filters.Length == 0 ? ", which the noise tests judge" : "")}";
            suspects.AddRange(filters);
            inside &= filters.Length == 0;
        }

        return new BenchResult(test, rms, inside ? VerdictKind.Pass : VerdictKind.Fail, because, 0, suspects);
    }

    /// <summary>How far below the predicted noise a recording tells nothing [dB].</summary>
    private const double QuietDecibels = 6;

    private static FoundLine? Strongest(TakenRecording taken)
    {
        int best = 3;
        for (int k = 3; k < taken.Measured.Density.Count - 3; k++)
        {
            best = taken.Measured.Density[best] < taken.Measured.Density[k] ? k : best;
        }

        double hertz = best * taken.Measured.Step;
        return new FoundLine(Frequency.FromHertz(hertz), VoltageRms.FromVolts(taken.Measured.ToneRms(hertz)), null, null, false);
    }

    private static BenchResult Pulse(TakenRecording taken)
    {
        BenchReading test = taken.Test;
        Voltage height = Voltage.FromVolts(BenchPulse.Direction(taken.Order));
        bool inside = Within(test, height.Volts);
        double ratio = height.Volts / test.Expected!.SiValue;
        string evidence = $"{QuantityText.FormatNumber(ratio)} times the prediction";
        Suspect[] suspects = inside ? []
            : ratio < -0.1
            ? [BenchSuspects.Turned(evidence)]
            : [
                .. BenchSuspects.OfUnit(ratio, 0.5),
                new Suspect(SuspectKind.Fixture, "no pulses of this length and period, or the wrong generator level", evidence)];
        return new BenchResult(test, height, inside ? VerdictKind.Pass : VerdictKind.Fail, Sentence(test, height), 0, suspects);
    }

    private static BenchResult Noise(TakenRecording taken)
    {
        (BenchReading test, WelchSpectrum measured) = (taken.Test, taken.Measured);
        double low = taken.Band.Low.Hertz, high = Math.Min(taken.Band.High.Hertz, test.Design.Converter.Rate.Hertz / 2);

        // Both sides are summed over the same bins, so that the coarseness of the bins at the band's edges drops out of the comparison.
        double expectedPower = measured.Integral(low, high, k => 0 < k && k <= taken.Density.Length ? taken.Density[k - 1] : 0);
        double rms = Math.Sqrt(measured.Power(low, high)), fixture = Math.Sqrt(expectedPower);
        double spread = taken.Predicted.Spread(low, high, taken.Recording.Length.Seconds);
        RecordingLines lines = RecordingLines.Of(measured, test.Design, taken.Density);

        // What the sheet calls noise.shorted and what the wires read may differ: the test's range reaches over both.
        double expected = taken.IsFiltered ? test.Expected!.SiValue : fixture, share = taken.IsFiltered ? fixture / test.Expected!.SiValue : 1;
        double width = BenchPlan.NoiseTolerance + (2 * spread), ratio = rms / fixture, least = Math.Min(1, 1 / share) * (1 - width),
            greatest = Math.Max(1, 1 / share) * (1 + width);
        NoiseFindings found = new(taken, lines, ratio, expectedPower, least, greatest);
        bool inside = least <= ratio && ratio <= greatest, pass = inside && found.Agrees;
        VoltageRms value = VoltageRms.FromVolts(rms);
        string because = $"{QuantityText.Format(value)} measured in {QuantityText.Format(taken.Recording.Length)}, {QuantityText.Format(VoltageRms.FromVolts(expected))} predicted: {Percent(rms / expected)}, "
            + $"the record's own spread {QuantityText.FormatPercent(Ratio.FromFraction(spread), 2)}, allowed {Percent(least * share)} to {Percent(greatest * share)}"
            + found.But(inside);
        return new BenchResult(test, value, pass ? VerdictKind.Pass : VerdictKind.Fail, because, spread, found.Suspects(inside)) { Lines = lines.Lines };
    }

    private static bool Within(BenchReading test, double value) =>
        (test.Least is not { } least || least <= value) && (test.Greatest is not { } greatest || value <= greatest);

    private static string Sentence(BenchReading test, IQuantity measured) =>
        $"{QuantityText.Format(measured)} measured, {(test.IsBound ? "at most " : "")}{QuantityText.Format(test.Expected)} predicted, {test.Tolerance}: {(Within(test, measured.SiValue) ? "inside" : "outside")}";

    private static string Percent(double ratio) =>
        $"{(1 <= ratio ? "+" : "")}{QuantityText.FormatPercent(Ratio.FromFraction(ratio - 1), 2)}";
}
