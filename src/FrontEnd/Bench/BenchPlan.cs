using FrontEnd.Converter;
using FrontEnd.Electrodes;
using FrontEnd.Interference;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Text;

namespace FrontEnd.Bench;

/// <summary>The tests that a built board is put through, and what each should read.</summary>
/// <remarks>Tolerances: noise ±20 %, gain ±1 dB, rejection ±6 dB since stray capacitance is not known (common practice, no source). Noise has the statistical spread of a
/// 60 s record besides, twice its standard deviation. Every test is on a fixture with nobody connected.</remarks>
public static class BenchPlan
{
    /// <summary>Length of a noise record [s].</summary>
    public const double RecordSeconds = 60;

    public const double NoiseTolerance = 0.2;
    public const double GainDecibels = 1;
    public const double RejectionDecibels = 6;

    /// <summary>Said on every screen and sheet with these tests.</summary>
    public const string Caution = "Every test here is on a fixture with nobody connected: the leads go to resistors, capacitors and a generator, never to a person.";

    private static readonly SourceRef Practice = new("common-practice");
    private static readonly SourceRef Imbalance = new("aami-tir60");
    private static readonly SourceRef DryFixture = new("iec-60601-2-25");

    /// <summary>The parts put at each input: the first three of the noise tests.</summary>
    private static (string Name, string Words, Electrode Electrode, SourceRef Source)[] NoiseFixtures =>
    [
        ("shorted", "all electrode leads tied together and to common, at the electrodes' end", Fixture.Short, Practice),
        ("10k", "10 kΩ in every lead, the far ends tied together", Fixture.Of(Resistance.FromKilohms(10), default), Practice),
        ("51k-47n", "51 kΩ in parallel with 47 nF in every lead, the far ends tied together", Fixture.Of(Resistance.FromKilohms(51), Capacitance.FromNanofarads(47)), Imbalance),
        ("620k-4.7n", "620 kΩ in parallel with 4.7 nF in every lead, the far ends tied together", Fixture.Of(Resistance.FromKilohms(620), Capacitance.FromNanofarads(4.7)), DryFixture),
    ];

    /// <summary>The tests in the order in which a board is brought up; findings where the design cannot be evaluated.</summary>
    public static (IReadOnlyList<BenchReading> Readings, IReadOnlyList<Finding> Findings) Of(Design design)
    {
        Finding[] errors = [.. DesignCheck.Run(design).Where(finding => finding.Severity == Severity.Error)];
        if (errors.Length != 0)
        {
            return ([], errors);
        }

        try
        {
            return ([.. Noise(design), .. Sine(design), .. Rejection(design), .. Offset(design), .. Alias(design), Step(design)], []);
        }
        catch (Exception problem) when (problem is ArithmeticException or ArgumentException or InvalidOperationException)
        {
            return ([], [Messages.Fails(problem.Message)]);
        }
    }

    private static IEnumerable<BenchReading> Noise(Design design)
    {
        string band = $"{QuantityText.FormatPart(design.Band.Low)} to {QuantityText.FormatPart(design.Band.High)}";
        foreach ((string name, string words, Electrode electrode, SourceRef source) in NoiseFixtures)
        {
            Design fixture = Fixture.With(design, electrode);
            var evaluation = new Evaluation(fixture);
            double rms = evaluation.Noise.Total;
            double spread = new PredictedSpectrum(evaluation, filtered: true).Spread(design.Band.Low.Hertz, Math.Min(design.Band.High.Hertz, design.Converter.Rate.Hertz / 2), RecordSeconds);
            double width = NoiseTolerance + (2 * spread);
            yield return new BenchReading(name, name == "shorted" ? "noise, inputs shorted" : $"noise, {Parts(electrode)} at each input", words,
                $"record {RecordSeconds:0} s in a closed metal box on battery; read the rms in {band}, at the electrodes", ReadingKind.Noise)
            {
                Expected = VoltageRms.FromVolts(rms),
                Least = rms * (1 - width),
                Greatest = rms * (1 + width),
                Spread = spread,
                Tolerance = $"±20 % and twice the record's own spread of {QuantityText.FormatPercent(Ratio.FromFraction(spread), 2)}",
                Source = source,
                Design = fixture,
            };
        }
    }

    private static string Parts(Electrode electrode) => electrode.ContactCapacitance.Farads == 0
        ? QuantityText.FormatPart(electrode.ContactResistance)
        : $"{QuantityText.FormatPart(electrode.ContactResistance)} in parallel with {QuantityText.FormatPart(electrode.ContactCapacitance)}";

    /// <summary>100 mV through 100 kΩ : 10 Ω, 1/10001: 9.999 µV behind 10 Ω.</summary>
    private static IEnumerable<BenchReading> Sine(Design design)
    {
        const double Generator = 0.1, Divider = 10.0 / 100_010;
        Design fixture = Fixture.With(design, Fixture.Of(Resistance.FromOhms(10), default), Fixture.Short, Fixture.Short);
        var evaluation = new Evaluation(fixture);
        Electrode dry = Fixture.Of(Resistance.FromKilohms(620), Capacitance.FromNanofarads(4.7));
        var loaded = new Evaluation(Fixture.With(design, dry, Fixture.Short, Fixture.Short));
        double high = design.Band.High.Hertz, centre = design.Band.Centre.Hertz, mains = design.Mains.Frequency.Hertz;
        foreach ((string name, double hertz) in new[] { ("sine", centre), ("sine-low", design.Band.Low.Hertz), ("sine-high", high) })
        {
            double rms = Generator * Divider * evaluation.PathAndConverter([hertz])[0] / evaluation.GainMid * Math.Sqrt(evaluation.Digital.Power(hertz));
            yield return Tone(name, name == "sine" ? "calibrated sine: gain and polarity" : "calibrated sine at the band's edge", "divider 100 kΩ : 10 Ω at the active lead; reference and ground to the divider's foot",
                $"100 mV rms at {QuantityText.Format(hertz, "Hz")} into the divider; read the rms of the line, at the electrodes (positive first input gives a positive reading)", rms, hertz, true, fixture, Practice, GainDecibels);
        }

        // Through 620 kΩ ∥ 4.7 nF the line falls by what the input impedance takes: the network with the part against the network without.
        double reference = evaluation.PathAndConverter([mains])[0], behind = loaded.PathAndConverter([mains])[0];
        double left = 1e-3 * behind / evaluation.GainMid;
        yield return Tone("impedance", "input impedance", "620 kΩ in parallel with 4.7 nF between generator and the active lead; reference and ground to the generator's foot",
            $"1 mV rms at {QuantityText.Format(mains, "Hz")}, digital filters off; read the line, at the electrodes; without the part it is {QuantityText.Format(VoltageRms.FromVolts(1e-3 * reference / evaluation.GainMid))}",
            left, mains, false, loaded.Design, DryFixture, GainDecibels);
    }

    private static IEnumerable<BenchReading> Rejection(Design design)
    {
        Electrode part = Fixture.Of(Resistance.FromKilohms(51), Capacitance.FromNanofarads(47));
        (string Name, string Words, Electrode Active, Electrode Reference)[] cases =
        [
            ("rejection", "51 kΩ in parallel with 47 nF in every lead", part, part),
            ("rejection-active", "51 kΩ in parallel with 47 nF in every lead but the active one, which is bridged", Fixture.Short, part),
            ("rejection-reference", "51 kΩ in parallel with 47 nF in every lead but the reference, which is bridged", part, Fixture.Short),
        ];
        foreach ((string name, string words, Electrode active, Electrode reference) in cases)
        {
            Design fixture = Fixture.With(design, active, reference, part);
            Mains mains = fixture.Mains;
            fixture = fixture with
            {
                Mains = mains with
                {
                    Voltage = VoltageRms.FromVolts(20), BodyToMains = Capacitance.FromPicofarads(100), BodyToEarth = Capacitance.FromPicofarads(100), Harmonics = [1], Deviation = default,
                },
            };
            var evaluation = new Evaluation(fixture);
            double rms = evaluation.Mains.Harmonics[0].Converter, factor = Math.Pow(10, RejectionDecibels / 20);
            double peak = 2 * Math.Sqrt(2) * rms;
            yield return Tone(name, "rejection with imbalance", words + "; far ends tied to one node, node to ground through 100 pF (strays included)",
                $"20 V rms at {QuantityText.Format(mains.Frequency)} into the node through 100 pF, which is 10 V rms with the cable off; digital filters off; read the line, at the electrodes", rms, mains.Frequency.Hertz, false, fixture, Imbalance, RejectionDecibels) with
            {
                Least = null,
                Greatest = rms * factor,
                Tolerance = "+6 dB; stray capacitance decides, less is better",
                Remark = $"{QuantityText.Format(VoltagePeakToPeak.FromVolts(peak))}; the test's own limit is 1 mV p-p, which is {QuantityText.Format(Decibels.FromVoltageRatio(28284))} of 10 V rms; repeat with +300 and -300 mV dc in series with the active part",
            };
        }
    }

    private static IEnumerable<BenchReading> Offset(Design design)
    {
        Design fixture = Fixture.With(design, Fixture.Of(Resistance.FromKilohms(10), default));
        double? survived = new Evaluation(fixture).Levels.OffsetLimitedBy?.OffsetSurvived;
        yield return new BenchReading("offset", "offset survived", "a battery and a potentiometer in series with the active lead, 10 kΩ in every lead",
            $"raise the dc, both signs, under a 10 µV sine until the line falls by 5 %; {QuantityText.Format(design.Requirements.Offset)} must pass with gain and noise unchanged; supply at its lowest", ReadingKind.Other)
        {
            Expected = survived is { } volts ? Voltage.FromVolts(volts) : null,
            Least = survived * 0.9,
            Tolerance = "not below by more than 10 %: the reading stops at clipping, the prediction at full headroom",
            Source = new SourceRef("aami-ec11"),
            Remark = survived is null ? "the offset reaches no node" : null,
            Design = fixture,
        };
    }

    private static IEnumerable<BenchReading> Alias(Design design)
    {
        double fs = design.Converter.Rate.Hertz;
        Design fixture = Fixture.With(design, Fixture.Short);
        var evaluation = new Evaluation(fixture);
        foreach ((string name, double hertz) in new[] { ("alias-below", fs - 10), ("alias-rate", fs), ("alias-above", fs + 10), ("alias-240", 240.0) })
        {
            if (hertz <= 0)
            {
                continue;
            }

            double landing = Folding.LandsAt(hertz, fs), rms = 1e-3 * evaluation.PathAndConverter([hertz])[0] / evaluation.GainMid;
            BenchReading tone = Tone(name, hertz < fs / 2 ? "tone below half the rate" : "alias tone", "generator with 10 Ω or less at the active lead; reference and ground to its foot",
                $"1 mV rms at {QuantityText.FormatPart(Frequency.FromHertz(hertz))}, digital filters off; read the line at {QuantityText.FormatPart(Frequency.FromHertz(landing))}, at the electrodes", rms, landing, false, fixture, Practice, GainDecibels);
            yield return landing < 0.1
                ? tone with { Kind = ReadingKind.Other, Remark = "lands at 0 Hz: detune the generator by 0.5 Hz and read the slow beat" }
                : tone;
        }
    }

    private static BenchReading Step(Design design)
    {
        Design fixture = Fixture.With(design, Fixture.Of(Resistance.FromKilohms(10), default));
        var list = new ResultList();
        LevelsReport.AddRecovery(list, [], new Evaluation(fixture));
        Result recovery = list["levels.recovery"];
        double? seconds = recovery.State == ResultState.Number ? recovery.Si : null;
        return new BenchReading("step", "step and recovery", "a battery and a switch in series with the active lead, 10 kΩ in every lead",
            $"a step of {QuantityText.Format(design.Requirements.Offset)}; read the time until the recording stays within 10 µV", ReadingKind.Other)
        {
            Expected = seconds is { } s ? Duration.FromSeconds(s) : null,
            Least = seconds * 0.8,
            Greatest = seconds * 1.2,
            Tolerance = "±20 %",
            Source = Practice,
            Remark = seconds is null ? recovery.Text : null,
            Design = fixture,
        };
    }

    private static BenchReading Tone(string name, string title, string words, string setting, double rms, double line, bool filtered, Design fixture, SourceRef source, double decibels)
    {
        double factor = Math.Pow(10, decibels / 20);
        return new BenchReading(name, title, words, setting, ReadingKind.Tone)
        {
            Expected = VoltageRms.FromVolts(rms),
            Least = rms / factor,
            Greatest = rms * factor,
            Tolerance = $"±{QuantityText.FormatNumber(decibels, 2)} dB",
            Source = source,
            Line = Frequency.FromHertz(line),
            Filtered = filtered,
            Design = fixture,
        };
    }
}
