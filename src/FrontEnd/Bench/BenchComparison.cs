using FrontEnd.Designs;
using FrontEnd.Filters;
using FrontEnd.Results;

namespace FrontEnd.Bench;

/// <summary>Holds readings and recordings of a built board against what its design should give.</summary>
public static class BenchComparison
{
    /// <summary>The highest harmonic of the mains that a line in a recording is compared with.</summary>
    public static readonly int HighestHarmonic = Interference.Mains.StandardHarmonics.Count;

    /// <summary>Shortest recording that is worked out [s].</summary>
    private const double ShortestSeconds = 4;

    /// <summary>A line counts where its bin is above the noise beside it by more than chance gives once in some thousand
    /// recordings.</summary>
    private const double LineSigmas = 9;

    /// <summary>Share of the predicted power in the band that a line may hold: what raises the rms by the tolerance, 1.2² − 1.</summary>
    private const double LinePower = 0.44;

    /// <summary>Two thirds of the band that differ by more than this are not "alike" [dB].</summary>
    private const double SlopeDecibels = 2.5;

    private static readonly double[] MainsFrequencies = [50, 60];

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

        bool pass = Within(test, measured.SiValue, 0);
        IReadOnlyList<Suspect> suspects = pass ? [] : BenchSuspects.Of(test, measured.SiValue);
        return (new BenchResult(test, measured, pass
            ? VerdictKind.Pass
            : VerdictKind.Fail, Sentence(test, measured, 0), test.Spread, suspects), null);
    }

    /// <summary>A recording made during one test.</summary>
    /// <param name="design">The design that the board was built from.</param>
    /// <param name="name">The test's name.</param>
    /// <param name="recording">Samples as the board delivers them.</param>
    /// <param name="raw">True where the digital filters were off also in tests that have them on.</param>
    public static (BenchResult? Result, IReadOnlyList<Finding> Findings) Recording(Design design, string name, Recording recording,
        bool raw = false)
    {
        (IReadOnlyList<BenchReading> plan, IReadOnlyList<Finding> errors) = BenchPlan.Of(design);
        if (errors.Count != 0)
        {
            return (null, errors);
        }

        if (plan.FirstOrDefault(one => string.Equals(one.Name, name, StringComparison.Ordinal)) is not { } test)
        {
            string[] known = [.. plan.Select(one => one.Name)];
            return (null, [Messages.NoTest(name, Nearest.Of(name, known), known)]);
        }

        if (test.Kind == ReadingKind.Other)
        {
            return (null, [Messages.ByInstrument(name)]);
        }

        double rate = design.Converter.Rate.Hertz;
        if (1e-3 < Math.Abs((recording.Rate.Hertz / rate) - 1))
        {
            return (null, [Messages.OtherRate(QuantityText.Format(recording.Rate, 5), QuantityText.Format(design.Converter.Rate, 5))]);
        }

        double least = Math.Max(ShortestSeconds, 8 / design.Band.Low.Hertz);
        if (recording.Length.Seconds < least)
        {
            return (null, [Messages.TooShort(QuantityText.Format(recording.Length), QuantityText.Format(Duration.FromSeconds(least)))]);
        }

        for (int i = 0; i < recording.Samples.Count; i++)
        {
            if (!double.IsFinite(recording.Samples[i]))
            {
                return (null, [Messages.NotFinite(i + 1)]);
            }
        }

        var evaluation = new Reporting.Evaluation(test.Design);
        double scale = recording.AreSteps ? test.Design.Converter.LsbVolts / evaluation.GainMid : 1;
        double[] samples = [.. recording.Samples.Select(sample => sample * scale)];
        WelchSpectrum measured = WelchSpectrum.Of(samples, rate, Math.Max(8, 6 / design.Band.Low.Hertz));
        bool filtered = test.Filtered && !raw;
        var predicted = new PredictedSpectrum(evaluation, filtered);
        double[] hertz = [.. Enumerable.Range(1, measured.Density.Count - 2).Select(k => k * measured.Step)];
        double[] density = predicted.At(hertz);
        BenchResult result = test.Kind == ReadingKind.Tone
            ? Tone(test, measured)
            : Noise(test, measured, density, predicted, evaluation.Noise.Total, recording, samples, filtered);
        return (result with
        {
            Length = recording.Length,
            Taken = $"channel `{recording.Channel}`, its samples read as {(recording.AreSteps ? "converter steps" : $"{recording.Unit} at the electrodes")}, {QuantityText.Format(recording.Rate)}",
            Spectra =
            [
                new Curve("measured", "Hz", "V/√Hz", hertz,
                    [.. Enumerable.Range(1, hertz.Length).Select(k => Math.Sqrt(measured.Density[k]))]),
                new Curve("predicted", "Hz", "V/√Hz", hertz, [.. density.Select(Math.Sqrt)]),
            ],
        }, []);
    }

    private static BenchResult Tone(BenchReading test, WelchSpectrum measured)
    {
        VoltageRms rms = VoltageRms.FromVolts(measured.ToneRms(test.Line!.Value.Hertz));
        bool pass = Within(test, rms.Volts, 0);
        return new BenchResult(test, rms, pass
            ? VerdictKind.Pass
            : VerdictKind.Fail, Sentence(test, rms, 0), 0, pass
            ? []
            : BenchSuspects.Of(test, rms.Volts));
    }

    private static BenchResult Noise(
        BenchReading test, WelchSpectrum measured, double[] density, PredictedSpectrum predicted, double total, Recording recording,
        double[] samples, bool filtered)
    {
        Design design = test.Design;
        double low = design.Band.Low.Hertz, high = Math.Min(design.Band.High.Hertz, design.Converter.Rate.Hertz / 2);
        double seconds = recording.Length.Seconds;

        // Both sides are summed over the same bins, so that the coarseness of the bins at the band's edges drops out of the comparison.
        double expectedPower = measured.Integral(low, high, k => 0 < k && k <= density.Length ? density[k - 1] : 0);
        double rms = Math.Sqrt(measured.Power(low, high)), expected = Math.Sqrt(expectedPower);
        double spread = predicted.Spread(low, high, seconds);
        FoundLine[] lines = [.. Lines(measured, design, density)];
        double width = BenchPlan.NoiseTolerance + (2 * spread), ratio = rms / expected;
        FoundLine[] loud = [.. lines.Where(line => LinePower * expectedPower < line.Rms.Volts * line.Rms.Volts)];
        bool inside = 1 - width <= ratio && ratio <= 1 + width;
        bool pass = inside && loud.Length == 0;
        VoltageRms value = VoltageRms.FromVolts(rms);
        string because = $"{QuantityText.Format(value)} measured in {QuantityText.Format(recording.Length)}, {QuantityText.Format(VoltageRms.FromVolts(filtered ? total : expected))} predicted: {Percent(ratio)}, "
            + $"the record's own spread {QuantityText.FormatPercent(Ratio.FromFraction(spread), 2)}, allowed ±{QuantityText.FormatPercent(Ratio.FromFraction(width), 2)}"
            + (inside && loud.Length != 0
                ? $"; but a line of {QuantityText.Format(loud[0].Rms)} stands at {QuantityText.Format(loud[0].Frequency)}"
                : "");
        IReadOnlyList<Suspect> suspects = pass
            ? []
            : [.. BenchSuspects.OfUnit(ratio, width),
                .. Suspects(measured, density, predicted, lines, samples, low, high, expectedPower, ratio)];
        return new BenchResult(test, value, pass ? VerdictKind.Pass : VerdictKind.Fail, because, spread, suspects) { Lines = lines };
    }

    private static IEnumerable<FoundLine> Lines(WelchSpectrum spectrum, Design design, double[] density)
    {
        // A bin of K averages of Gaussian noise spreads by 1/√K about its mean.
        double threshold = 1 + (LineSigmas / Math.Sqrt(spectrum.Averages)), rate = design.Converter.Rate.Hertz;
        var found = new List<FoundLine>();
        for (int k = 3; k < spectrum.Density.Count - 3; k++)
        {
            bool peak = spectrum.Density[k - 1] < spectrum.Density[k] && spectrum.Density[k + 1] <= spectrum.Density[k];
            if (!peak)
            {
                continue;
            }

            // Held against the shape that is predicted, so that the skirt of a notch or a corner is no line.
            double shape = density[k - 1] / Math.Max(1e-300, Median(density, k - 1));
            if (threshold * spectrum.Background(k) * Math.Max(1, shape) < spectrum.Density[k])
            {
                double power = spectrum.LobePower(k) - (5 * spectrum.Step * spectrum.Background(k));
                double hertz = Centroid(spectrum, k);
                (int? harmonic, double? mains, bool folded) = Named(hertz, spectrum.Step, rate, design);
                found.Add(new FoundLine(Frequency.FromHertz(hertz), VoltageRms.FromVolts(Math.Sqrt(Math.Max(0, power))), harmonic,
                    mains is { } f0 ? Frequency.FromHertz(f0) : null, folded));
            }
        }

        return found.OrderByDescending(line => line.Rms.Volts).Take(12);
    }

    private static double Median(double[] density, int centre)
    {
        double[] beside = [.. Enumerable.Range(-20, 41).Where(at =>
            4 <= Math.Abs(at) && 0 <= centre + at && centre + at < density.Length).Select(at => density[centre + at]).Order()];
        return beside.Length == 0 ? density[centre] : beside[beside.Length / 2];
    }

    private static double Centroid(WelchSpectrum spectrum, int k)
    {
        double sum = 0, moment = 0;
        for (int i = k - 1; i <= k + 1; i++)
        {
            sum += spectrum.Density[i];
            moment += spectrum.Density[i] * i;
        }

        return moment / sum * spectrum.Step;
    }

    /// <summary>The lowest harmonic of the design's mains, then of the other, whose landing within the mains' deviation is this
    /// line.</summary>
    private static (int? Harmonic, double? Mains, bool Folded) Named(double hertz, double step, double rate, Design design)
    {
        double own = design.Mains.Frequency.Hertz;
        foreach (double f0 in MainsFrequencies.Where(other => 1e-9 < Math.Abs(other - own)).Prepend(own))
        {
            for (int h = 1; h <= HighestHarmonic; h++)
            {
                double deviation = design.Mains.Deviation.Fraction;
                (double low, double high) = Folding.LandsWithin(h * f0 * (1 - deviation), h * f0 * (1 + deviation), rate);
                if (low - step <= hertz && hertz <= high + step)
                {
                    return (h, f0, rate / 2 < h * f0);
                }
            }
        }

        return (null, null, false);
    }

    private static List<Suspect> Suspects(
        WelchSpectrum measured, double[] density, PredictedSpectrum predicted, FoundLine[] lines, double[] samples, double low,
        double high, double expectedPower, double ratio)
    {
        var ranked = new List<(double Weight, Suspect Suspect)>();
        double first = samples[0];
        if (Array.TrueForAll(samples, sample => sample == first))
        {
            return [new Suspect(SuspectKind.DeadChannel,
                "the channel is dead: no sample differs from the first; check power, the converter's clock and the channel's wire",
                $"{samples.Length} equal samples")];
        }

        double top = samples.Max(), bottom = samples.Min();
        int stuck = samples.Count(sample => sample == top || sample == bottom);
        if (samples.Length / 50 < stuck)
        {
            ranked.Add((double.MaxValue,
                new Suspect(SuspectKind.Clipping,
                    "the samples stay at their extremes: an input beyond its range, or a range of too few steps",
                    $"{stuck} of {samples.Length} samples are the largest or the smallest")));
        }

        // The part of the excess that each line carries weighs it against the part that the broad noise carries.
        foreach (FoundLine line in lines.Where(line => 0.02 * expectedPower < line.Rms.Volts * line.Rms.Volts))
        {
            ranked.Add((line.Rms.Volts * line.Rms.Volts / expectedPower, OfLine(line)));
        }

        double linePower = lines.Where(line =>
            low <= line.Frequency.Hertz && line.Frequency.Hertz <= high).Sum(line => line.Rms.Volts * line.Rms.Volts);
        double broad = Math.Max(0, (ratio * ratio) - 1 - (linePower / expectedPower));
        double[] thirds = [.. Thirds(measured, density, low, high)];
        double mean = thirds.Average(), slope = thirds[2] - thirds[0];
        string evidence = $"low, middle and high third of the band: {string.Join(", ", thirds.Select(third => $"{(0 <= third ? "+" : "")}{QuantityText.FormatNumber(Math.Round(third, 1), 3)} dB"))}";
        if (mean < -0.8)
        {
            ranked.Add((1 - Math.Min(1, ratio * ratio), new Suspect(
                SuspectKind.TooQuiet,
                    "less noise than the parts must make: the gain is lower than stated, a filter is on that the design does not have, or the fixture is not where it should be",
                    evidence)));
        }
        else if (0.2 < broad)
        {
            ranked.Add((broad, Math.Abs(slope) < SlopeDecibels
                ? new Suspect(SuspectKind.LouderPart,
                    $"every frequency is up alike: the part that makes most of the noise is louder than its card ({predicted.LargestSource}), or gain or converter reference differ from the design; the calibrated sine tells which",
                    evidence)
                : slope < 0
                    ? new Suspect(SuspectKind.LowFrequency,
                        "more towards low frequencies: flicker of amplifier or mid-rail, draughts, a fixture with a bad joint", evidence)
                    : new Suspect(SuspectKind.HighFrequency,
                        "more towards high frequencies: converter noise, what folds back from above, radio and its supply ripple",
                        evidence)));
        }

        List<Suspect> suspects = [.. ranked.OrderByDescending(pair =>
            pair.Weight).Select(pair => pair.Suspect).DistinctBy(suspect => suspect.Kind)];
        return suspects.Count != 0
            ? suspects
            : [new Suspect(SuspectKind.LouderPart, "the excess is small and has no shape: repeat with a longer record", evidence)];
    }

    private static Suspect OfLine(FoundLine line)
    {
        string evidence = $"{QuantityText.Format(line.Rms)} at {QuantityText.Format(line.Frequency)}";
        return line switch
        {
            { Harmonic: { } h, Mains: { } f0, Folded: true } => new Suspect(
                SuspectKind.Aliasing,
                $"harmonic {h} of {QuantityText.FormatPart(f0)} folds back from {QuantityText.FormatPart(Frequency.FromHertz(h * f0.Hertz))}: a section of the anti-alias filter is missing, or the rate is unlucky",
                evidence),
            { Harmonic: { } h, Mains: { } f0 } => new Suspect(
                SuspectKind.MainsPickup,
                $"mains pick-up, {(h == 1 ? "the fundamental" : $"harmonic {h}")} of {QuantityText.FormatPart(f0)}: ground lead off or long, box open, cable untwisted, or a supply wired to the mains",
                evidence),
            _ => new Suspect(SuspectKind.OtherLine,
                $"a line that no mains harmonic up to h = {HighestHarmonic} explains: radio bursts or supply ripple through mid-rail or converter reference, a clock that beats with the sampling rate",
                evidence),
        };
    }

    /// <summary>Measured over predicted power in three parts of the band of equal ratio, by medians of the bins so that lines do not
    /// count [dB].</summary>
    private static IEnumerable<double> Thirds(WelchSpectrum measured, double[] density, double low, double high)
    {
        double step = Math.Pow(high / low, 1.0 / 3);
        for (int third = 0; third < 3; third++)
        {
            double from = low * Math.Pow(step, third), to = from * step;
            double[] ratios = [.. Enumerable.Range(2, density.Length - 2).Where(k =>
                from <= k * measured.Step && k * measured.Step <= to).Select(k => measured.Density[k] / density[k - 1]).Order()];
            yield return ratios.Length == 0 ? 0 : 10 * Math.Log10(Math.Max(1e-30, ratios[ratios.Length / 2]));
        }
    }

    private static bool Within(BenchReading test, double value, double widening) =>
        (test.Least is not { } least || least * (1 - widening) <= value)
            && (test.Greatest is not { } greatest || value <= greatest * (1 + widening));

    private static string Sentence(BenchReading test, IQuantity measured, double widening) =>
        $"{QuantityText.Format(measured)} measured, {QuantityText.Format(test.Expected)} predicted, {test.Tolerance}: {(Within(test, measured.SiValue, widening) ? "inside" : "outside")}";

    private static string Percent(double ratio) =>
        $"{(1 <= ratio ? "+" : "")}{QuantityText.FormatPercent(Ratio.FromFraction(ratio - 1), 2)}";
}
