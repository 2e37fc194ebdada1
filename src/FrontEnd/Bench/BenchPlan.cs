using System.Numerics;
using FrontEnd.Budgets;
using FrontEnd.Citations;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Electrodes;
using FrontEnd.Filters;
using FrontEnd.Identity;
using FrontEnd.Interference;
using FrontEnd.Networks;
using FrontEnd.Reporting;
using FrontEnd.Results;

namespace FrontEnd.Bench;

/// <summary>The tests that a built board is put through, and what each should read.</summary>
/// <remarks>Tolerances: noise ±20 %, gain ±1 dB, rejection ±6 dB since stray capacitance is not known (common practice, no source). Noise
/// has the statistical spread of a 60 s record besides, twice its standard deviation. Every test is on a fixture with nobody
/// connected.</remarks>
internal static class BenchPlan
{
    /// <summary>Length of a noise record [s].</summary>
    public const double RecordSeconds = 60;

    /// <summary>The test with the inputs shorted.</summary>
    public const string Shorted = "shorted";

    public const double NoiseTolerance = 0.2;
    public const double GainDecibels = 1;
    public const double RejectionDecibels = 6;

    /// <summary>Said on every screen and sheet with these tests.</summary>
    public const string Caution = "Every test here is on a fixture with nobody connected: the leads go to resistors, capacitors and a generator, never to a person.";

    private static readonly SourceRef Practice = new("common-practice");
    private static readonly SourceRef Imbalance = new("aami-tir60");
    private static readonly SourceRef DryFixture = new("iec-60601-2-25");

    /// <summary>The parts put at each input: the first three of the noise tests.</summary>
    internal static (string Name, string Words, Electrode Electrode, SourceRef Source)[] NoiseFixtures =>
    [
        (Shorted, BenchRest.Together, Fixture.Short, Practice),
        ("10k", "10 kΩ in every lead, the far ends tied together", Fixture.Of(Resistance.FromKilohms(10), default), Practice),
        ("51k-47n", "51 kΩ in parallel with 47 nF in every lead, the far ends tied together",
            Fixture.Of(Resistance.FromKilohms(51), Capacitance.FromNanofarads(47)), Imbalance),
        ("620k-4.7n", "620 kΩ in parallel with 4.7 nF in every lead, the far ends tied together",
            Fixture.Of(Resistance.FromKilohms(620), Capacitance.FromNanofarads(4.7)), DryFixture),
    ];

    /// <summary>The tests in the order in which a board is brought up; findings where the design cannot be evaluated.</summary>
    public static (IReadOnlyList<BenchReading> Readings, IReadOnlyList<Finding> Findings) Of(Design design)
    {
        Assessment assessment = Evaluator.Evaluate(design);
        if (!assessment.HasFigures)
        {
            return ([], [.. assessment.Findings.Where(finding => finding.Severity == Severity.Error)]);
        }

        try
        {
            Design one = Evaluator.WithOneKindOfChannel(design, out string? channel);
            IReadOnlyList<BenchReading> readings = Of(ReferenceEquals(one, design) ? assessment : Evaluator.Evaluate(one), new BenchBoard(design, channel));
            return (channel is null ? readings : [.. readings.Select(reading => reading with { Channel = channel })], []);
        }
        catch (NetworkHasNoAnswer problem)
        {
            return ([], [Messages.Fails(problem.Message)]);
        }
    }

    /// <param name="assessment">Of the design with one kind of channel.</param>
    /// <param name="board">Of the whole design, whose drawing the names are looked up on.</param>
    private static IReadOnlyList<BenchReading> Of(Assessment assessment, BenchBoard board)
    {
        Design design = assessment.Design;
        double gain = assessment[ResultIds.Gain.Mid].Si;
        BenchReading[] noise = [.. Noise(assessment, gain)];
        return
        [
            .. BenchInspection.Of(assessment, board),
            .. In(BenchStep.Power, BenchFigures.First(assessment)),
            .. BenchRest.Of(design, board),
            .. In(BenchStep.Faults, BenchDirect.Of(assessment)),
            .. In(BenchStep.Noise, noise.Take(1)),
            .. In(BenchStep.Gain, Sine(design, gain)), .. In(BenchStep.Gain, BenchPulse.Of(design, gain)),
            .. In(BenchStep.Hum, Hum(design, gain)),
            .. noise.Skip(1),
            .. InputImpedance(design, gain), .. Crosstalk(design, gain), .. Rejection(design, gain),
            .. Offset(design, assessment), .. Alias(design, gain), Step(design), .. Ring(design), Drift(design, gain),
            .. BenchFigures.Last(assessment),
        ];
    }

    private static IEnumerable<BenchReading> In(BenchStep step, IEnumerable<BenchReading> tests) => tests.Select(test => test with { Step = step });

    /// <summary>The mains line of a board at rest, with no wearer: what the leads' loop and couplings to the box bring.</summary>
    /// <remarks>The fixture is not in a closed box here: field, loop and couplings are the design's, the worst signs added up.</remarks>
    private static IEnumerable<BenchReading> Hum(Design design, double gain)
    {
        Design fixture = Fixture.With(design, Fixture.Short);
        fixture = fixture with
        {
            Mains = design.Mains with
            {
                BodyToMains = default, Harmonics = [1], Deviation = default,
                Frequency = Frequency.FromHertz(Readable(design.Mains.Frequency.Hertz, design.Converter.Rate.Hertz)),
            },
        };
        var evaluation = new Evaluation(fixture);
        double rms = evaluation.Mains.Harmonics[0].Converter * evaluation.GainMid / gain, factor = Math.Pow(10, RejectionDecibels / 20),
            line = Folding.LandsAt(fixture.Mains.Frequency.Hertz, design.Converter.Rate.Hertz);
        BenchReading tone = Tone(new("hum", "hum at rest",
            "all electrode leads tied together at their electrode ends, laid out as on a head; nobody connected",
            $"on battery, in the room where it is used, nothing plugged in; digital filters off; record {RecordSeconds:0} s and read the mains line{(line == design.Mains.Frequency.Hertz ? "" : $" at {QuantityText.Format(line, "Hz")}")}, at the electrodes",
            line, Filtered: false, evaluation, Practice), rms, gain);
        yield return tone with
        {
            Least = null,
            Greatest = Math.Max(tone.Expected!.SiValue, rms * factor),
            Brief = $"on battery, where it is used, nothing plugged in, digital filters off; record {RecordSeconds:0} s; the mains line, at the electrodes",
            Tolerance = tone.IsBound ? tone.Tolerance : "+6 dB; field, loop and strays decide; less is better",
            Remark = "a wearer adds the effect of electrodes and body",
        };
    }

    private static IEnumerable<BenchReading> Noise(Assessment assessment, double gain)
    {
        Design design = assessment.Design;
        BenchReading[] readings = [.. NoiseFixtures.Select(fixture =>
            NoiseOf(design, gain, fixture.Name, fixture.Words, fixture.Electrode, fixture.Source))];
        readings[0] = AsOnTheSheet(readings[0], assessment[ResultIds.Noise.Shorted].Si);
        return readings.Append(readings[0] with
        {
            Name = "lowest-supply",
            Title = "noise, inputs shorted, supply at its lowest",
            Setting = $"the same record with a laboratory supply in place of the battery, at {QuantityText.Format(design.Supply.Lowest)}: the reading must not change",
        });
    }

    /// <summary>With shorted leads the reading is the assessment's <c>noise.shorted</c>: everything but what the electrodes make.</summary>
    /// <remarks>That figure has the electrodes' impedance in the network still. Where the amplifier's currents make noise in it, wires read
    /// less: the range reaches down to there.</remarks>
    private static BenchReading AsOnTheSheet(BenchReading wires, double shorted)
    {
        double fixture = wires.Expected!.SiValue, width = NoiseTolerance + (2 * wires.Spread);
        return wires with
        {
            Expected = VoltageRms.FromVolts(shorted),
            Least = Math.Max(0, Math.Min(fixture, shorted) * (1 - width)),
            Greatest = Math.Max(fixture, shorted) * (1 + width),
            Id = ResultIds.Noise.Shorted,
            Remark = 0.01 < Math.Abs((fixture / shorted) - 1)
                ? $"predicted with the electrodes' impedance in the circuit; wires, in which the input currents make no noise, read {QuantityText.Format(VoltageRms.FromVolts(fixture))}, and the range extends to that"
                : null,
        };
    }

    private static BenchReading NoiseOf(Design design, double gain, string name, string words, Electrode electrode, SourceRef source)
    {
        string band = $"{QuantityText.FormatPart(design.Band.Low)} to {QuantityText.FormatPart(design.Band.High)}";
        Design fixture = Fixture.With(design, electrode);
        var evaluation = new Evaluation(fixture);
        double rms = evaluation.Noise.Total * evaluation.GainMid / gain;
        double spread = new PredictedSpectrum(evaluation, filtered: true, gain).Spread(design.Band.Low.Hertz,
            Math.Min(design.Band.High.Hertz, design.Converter.Rate.Hertz / 2), RecordSeconds);
        double width = NoiseTolerance + (2 * spread);
        return new BenchReading(name, name == Shorted ? "noise, inputs shorted" : $"noise, {Parts(electrode)} at each input", words,
            $"record {RecordSeconds:0} s in a closed metal box on battery; read the rms in {band}, at the electrodes", ReadingKind.Noise)
        {
            Expected = VoltageRms.FromVolts(rms),
            Least = Math.Max(0, rms * (1 - width)),
            Greatest = rms * (1 + width),
            Brief = $"record {RecordSeconds:0} s in a closed metal box, on battery; rms in {band}, at the electrodes",
            Spread = spread,
            Tolerance = $"±20 % and twice the record's own spread of {QuantityText.FormatPercent(Ratio.FromFraction(spread), 2)}",
            Source = source,
            Gain = gain,
            Design = fixture,
        };
    }

    private static string Parts(Electrode electrode) => electrode.ContactCapacitance.Farads == 0
        ? QuantityText.FormatPart(electrode.ContactResistance)
        : $"{QuantityText.FormatPart(electrode.ContactResistance)} in parallel with {QuantityText.FormatPart(electrode.ContactCapacitance)}";

    /// <summary>Levels that a generator is set to before the divider [V rms]: the least that stands out of the noise is taken.</summary>
    private static readonly double[] GeneratorVolts = [0.1, 1, 10];

    /// <summary>100 kΩ : 10 Ω, 1/10001: 100 mV become 9.999 µV behind 10 Ω.</summary>
    internal const double Divider = 10.0 / 100_010;

    /// <summary>How far above its floor a line must stand to tell the gain [times].</summary>
    private const double ClearOfNoise = 10;

    private static IEnumerable<BenchReading> Sine(Design design, double gain)
    {
        Design fixture = Fixture.With(design, Fixture.Of(Resistance.FromOhms(10), default), Fixture.Short, Fixture.Short);
        var evaluation = new Evaluation(fixture);
        double low = design.Band.Low.Hertz, high = design.Band.High.Hertz, centre = design.Band.Centre.Hertz;
        foreach ((string name, double hertz) in new[]
        {
            ("sine", centre), ("sine-low", low), ("sine-lower", Math.Sqrt(low * centre)), ("sine-upper", Math.Sqrt(centre * high)), ("sine-high", high),
        })
        {
            double perVolt = evaluation.RecordedAt(Divider, hertz) * evaluation.GainMid / gain;
            double floor = BenchFloor.Of(evaluation, filtered: true, gain, hertz);
            double volts = GeneratorVolts.FirstOrDefault(level => ClearOfNoise * floor <= level * perVolt, GeneratorVolts[^1]);
            yield return Tone(new(name, name == "sine" ? "calibrated sine: gain" : name is "sine-low" or "sine-high" ? "calibrated sine at the band's edge" : "calibrated sine within the band",
                "divider 100 kΩ : 10 Ω at the active lead; reference and ground to the divider's low side",
                $"{QuantityText.FormatPart(VoltageRms.FromVolts(volts))} at {QuantityText.Format(hertz, "Hz")} into the divider; record {RecordSeconds:0} s and read the rms of the line, at the electrodes (a sine does not show the polarity)",
                hertz, Filtered: true, evaluation, Practice), volts * perVolt, gain) with
            {
                Brief = $"sine of {QuantityText.FormatPart(VoltageRms.FromVolts(volts))} into the divider; record {RecordSeconds:0} s; rms of the line, at the electrodes",
                Particular = QuantityText.Format(hertz, "Hz"),
            };
        }
    }

    /// <summary>How far a known part before the active lead pulls the line down: the input impedance.</summary>
    /// <remarks>
    /// The generator is set so that the line reads 1 mV without the part. The reading with it is then the ratio of both, in which the
    /// gain and its ±1 dB drop out. At the mains frequency the part is half the designed impedance, so that a capacitive input falls to
    /// 1/√(1 + 1/4) = 0.89 and a resistive one to 2/3 (derived: divider). The range follows from the parts: the ratio depends on part
    /// over impedance, so that a part 5 % off and an impedance ±20 % off (mostly small capacitances; common practice, no source) are one
    /// part 1.05/0.8 larger or 0.95/1.2 smaller, and what is read is good to 1 %.
    /// </remarks>
    private static IEnumerable<BenchReading> InputImpedance(Design design, double gain)
    {
        const double PartTolerance = 0.05, ImpedanceTolerance = 0.2, ReadTolerance = 0.01;
        double mains = design.Mains.Frequency.Hertz, impedance = InputReport.Impedance(design, mains).Magnitude;
        Current bias = design.Electrodes.ActiveBuffer?.OpAmp.BiasCurrent ?? design.Amplifier.BiasCurrent;
        Electrode high = Fixture.Of(PreferredValues.Nearest(Resistance.FromOhms(Math.Clamp(impedance / 2, LeastSeriesOhms,
            GreatestSeriesOhms)), PreferredSeries.E12), default);
        Electrode dry = Fixture.Of(Resistance.FromKilohms(620), Capacitance.FromNanofarads(4.7));
        (string Name, double Hertz, Electrode Part)[] cases = [("impedance", mains, high), ("impedance-low", 0.67, dry),
            ("impedance-high", 40, dry)];
        var bare = new Evaluation(Fixture.With(design, Fixture.Of(Resistance.FromOhms(10), default), Fixture.Short, Fixture.Short));
        foreach ((string name, double hertz, Electrode part) in cases.Where(one => one.Hertz < design.Converter.Rate.Hertz / 2))
        {
            Design loaded = Behind(design, part, 1);
            double Share(double factor) =>
                new Evaluation(Behind(design, part, factor)).PathAndConverter([hertz])[0] / bare.PathAndConverter([hertz])[0];
            double designed = Share(1), larger = Share((1 + PartTolerance) / (1 - ImpedanceTolerance)),
                smaller = Share((1 - PartTolerance) / (1 + ImpedanceTolerance));
            bool standard = name != "impedance";
            var evaluation = new Evaluation(loaded);
            double floor = BenchFloor.Of(evaluation, filtered: false, gain, hertz) / 4;
            yield return Tone(new(name, "input impedance",
                $"{Parts(part)} between the generator and the active lead, at the lead; reference and ground to the generator's low side; closed box",
                $"about 1 mV rms at {QuantityText.Format(hertz, "Hz")}, digital filters off; without the part, set the generator so that the line reads 1.000 mV rms, at the electrodes; insert the part and read again",
                hertz, Filtered: false, evaluation, standard ? DryFixture : Practice), Tone1 * designed, gain) with
            {
                Expected = VoltageRms.FromVolts(Tone1 * designed),
                IsBound = false,
                Least = Math.Max(0, (Tone1 * Math.Min(larger, smaller) * (1 - ReadTolerance)) - floor),
                Greatest = (Tone1 * Math.Max(larger, smaller) * (1 + ReadTolerance)) + floor,
                Tolerance = "the part within 5 %, the input impedance within 20 %, the ratio of the two readings within 1 %",
                Remark = standard
                    ? "the fixture's own limit is a drop of 20 %, to 800 µV rms"
                    : $"designed {QuantityText.Format(Resistance.FromOhms(impedance))} to common (input.impedance_at_mains); the bias current makes a dc of {QuantityText.Format(Voltage.FromVolts(Math.Abs(bias.Amperes) * part.ContactResistance.Ohms))} in the part",
            };
        }
    }

    /// <summary>Least and greatest series part of the impedance test [Ω]: below, the standard part does as well; above, a resistor is
    /// hard to buy and its own strays bridge it (common practice, no source).</summary>
    private const double LeastSeriesOhms = 1e4, GreatestSeriesOhms = 1e9;

    /// <summary>The part at the active lead, its impedance times a factor.</summary>
    private static Design Behind(Design design, Electrode part, double factor) => Fixture.With(
        design, Fixture.Of(Resistance.FromOhms(part.ContactResistance.Ohms * factor),
            Capacitance.FromFarads(part.ContactCapacitance.Farads / factor)), Fixture.Short, Fixture.Short);

    /// <summary>Rms of the tones that go to an input without a divider [V].</summary>
    private const double Tone1 = 1e-3;

    /// <summary>What one channel's signal puts into another over the reference lead that they share.</summary>
    /// <remarks>
    /// The other channel's tone drives a current through that channel's differential impedance into the common reference pin, across what
    /// the pin sees: lead and fixture towards common, the pin's own impedance beside them. v/V = Y_d/(Y_d + Y_pin + 1/Z_lead) (derived:
    /// one node). Coupling between wires and inside a multiplexed converter is not in the design, so that the reading is a lower bound.
    /// </remarks>
    private static IEnumerable<BenchReading> Crosstalk(Design design, double gain)
    {
        const double Limit = 0.01;
        Electrode part = Fixture.Of(Resistance.FromKilohms(51), Capacitance.FromNanofarads(47));
        Design fixture = Fixture.With(design, part);
        if (design.Channels < 2)
        {
            yield break;
        }

        double hertz = design.Band.High.Hertz;
        var evaluation = new Evaluation(fixture);
        double share = SharedReference(fixture, hertz), rms = Tone1 * share * evaluation.PathAndConverter([hertz])[0] / gain,
            limit = Limit * Tone1, factor = Math.Pow(10, GainDecibels / 20);
        BenchReading tone = Tone(new("crosstalk", "crosstalk between channels",
            "51 kΩ in parallel with 47 nF in every lead; all far ends but the driven channel's tied together",
            $"1 mV rms at {QuantityText.FormatPart(design.Band.High)} into one channel's far end; read the line in every other channel, digital filters off, at the electrodes",
            hertz, Filtered: false, evaluation, new SourceRef("digital-eeg-chapter")), rms, gain);
        bool within = Math.Max(tone.Expected!.SiValue, rms * factor) <= limit;
        yield return tone with
        {
            Least = null,
            Greatest = within ? limit : Math.Max(tone.Expected.SiValue, rms * factor),
            Tolerance = within
                ? "below 1 % of the tone (40 dB)"
                : "the design alone is not below 1 % of the tone (40 dB); its prediction plus 1 dB",
            Remark = share == 0
                ? "the channels share no lead: the reading comes from wires and converter, which the design does not describe"
                : tone.IsBound
                ? $"the effect of the shared reference lead, {QuantityText.Format(VoltageRms.FromVolts(rms))}, is lost in the noise; wires and converter add to it"
                : "the prediction is the effect of the shared reference lead; wires and converter add to it",
        };
    }

    /// <summary>Voltage at the shared reference pin per volt at one channel's input.</summary>
    internal static double SharedReference(Design design, double hertz)
    {
        int inputs = design.EffectiveReferenceInputs;
        if (inputs < 2)
        {
            return 0;
        }

        Amplifier.DifferentialAmplifier amplifier = design.Amplifier;
        Complex s = new(0, 2 * Math.PI * hertz);
        Complex across = (1 / amplifier.DifferentialResistance.Ohms)
            + (s * (amplifier.DifferentialCapacitance.Farads + design.Input.DifferentialCapacitor.Farads));
        Complex pin = (inputs * ((1 / amplifier.CommonModeResistance.Ohms) + (s * amplifier.CommonModeCapacitance.Farads)))
            + (s * design.Input.ShuntCapacitor.Farads)
            + (design.Input.BiasResistor is { } bias ? 1 / bias.Ohms : 0);

        // A buffer at the reference electrode leaves the lead behind its output resistance.
        Complex source = design.Electrodes.ReferenceBuffer is { } buffer
            ? buffer.OutputResistance.Ohms
            : design.Electrodes.Reference.Impedance(Frequency.FromHertz(hertz));
        return (across / (across + pin + (1 / (source + design.Input.SeriesResistor.Ohms)))).Magnitude;
    }

    private static IEnumerable<BenchReading> Rejection(Design design, double gain)
    {
        Electrode part = Fixture.Of(Resistance.FromKilohms(51), Capacitance.FromNanofarads(47));
        (string Name, string Words, Electrode Active, Electrode Reference, Electrode Ground, bool Earthed)[] cases =
        [
            ("rejection", "51 kΩ in parallel with 47 nF in every lead", part, part, part, false),
            ("rejection-active", "51 kΩ in parallel with 47 nF in every lead but the active one, which is bridged", Fixture.Short, part,
                part, false),
            ("rejection-reference", "51 kΩ in parallel with 47 nF in every lead but the reference, which is bridged", part, Fixture.Short,
                part, false),
            ("rejection-ground", "51 kΩ in parallel with 47 nF in every lead but the ground, which is bridged", part, part, Fixture.Short,
                false),
            ("rejection-earthed", "51 kΩ in parallel with 47 nF in every lead, and the charger or the USB lead plugged in", part, part,
                part, true),
        ];
        foreach ((string name, string words, Electrode active, Electrode reference, Electrode ground, bool earthed) in cases.Where(one =>
            one.Name != "rejection-ground" || design.Electrodes.Ground is not null))
        {
            Design fixture = Fixture.With(design, active, reference, ground);
            Mains mains = fixture.Mains with
            {
                Frequency = Frequency.FromHertz(Readable(fixture.Mains.Frequency.Hertz, design.Converter.Rate.Hertz)),
            };
            fixture = fixture with
            {
                Mains = mains with
                {
                    Voltage = VoltageRms.FromVolts(20), BodyToMains = Capacitance.FromPicofarads(100),
                    BodyToEarth = Capacitance.FromPicofarads(100), Harmonics = [1], Deviation = default,
                    AmplifierToEarth = earthed ? Capacitance.FromFarads(DriveBudget.EarthedFarads) : mains.AmplifierToEarth,
                },
            };
            var evaluation = new Evaluation(fixture);
            double rms = evaluation.Mains.Harmonics[0].Converter * evaluation.GainMid / gain,
                factor = Math.Pow(10, RejectionDecibels / 20), line = Folding.LandsAt(mains.Frequency.Hertz, design.Converter.Rate.Hertz);
            double peak = 2 * Math.Sqrt(2) * rms;
            BenchReading tone = Tone(new(name, "rejection with imbalance",
                words + "; far ends tied to one node, node to ground through 100 pF (strays included)",
                $"20 V rms at {QuantityText.Format(mains.Frequency)} into the node through 100 pF, which is 10 V rms with the cable off; digital filters off; read the line, at the electrodes",
                line, Filtered: false, evaluation, Imbalance), rms, gain);
            yield return tone with
            {
                Least = null,
                Greatest = Math.Max(tone.Expected!.SiValue, rms * factor),
                Tolerance = tone.IsBound ? tone.Tolerance : "+6 dB; stray capacitance decides; less is better",
                Remark = $"{QuantityText.Format(VoltagePeakToPeak.FromVolts(peak))} predicted; the test's own limit is 1 mV p-p, which is {QuantityText.Format(Decibels.FromVoltageRatio(28284))} of 10 V rms; repeat with +300 and -300 mV dc in series with the active part"
                    + (earthed ? "; on this fixture only: never wear a device that is plugged in" : ""),
            };
        }
    }

    private static IEnumerable<BenchReading> Offset(Design design, Assessment assessment)
    {
        Design fixture = Fixture.With(design, Fixture.Of(Resistance.FromKilohms(10), default));
        double? survived = new Evaluation(fixture).Levels.OffsetLimitedBy?.OffsetSurvived;
        yield return new BenchReading("offset", "offset survived",
            "a battery and a potentiometer in series with the active lead, 10 kΩ in every lead",
            $"raise the dc, both signs, under a 10 µV sine until the line falls by 5 %; {QuantityText.Format(design.Requirements.Offset)} must pass with gain and noise unchanged; supply at its lowest", ReadingKind.Other)
        {
            Expected = survived is { } volts ? Voltage.FromVolts(volts) : null,
            Least = survived - (0.1 * Math.Abs(survived ?? 0)),
            Tolerance = "at most 10 % below: the reading stops at clipping, the prediction at full headroom",
            Source = new SourceRef("aami-ec11"),
            Remark = survived is null ? "the offset does not reach any node" : null,
            Design = fixture,
        };
        if (assessment.Find(ResultIds.Levels.LargestSignal) is { State: ResultState.Number } largest)
        {
            yield return new BenchReading("largest", "largest sine before anything clips, peak",
                "generator of 10 Ω or less at the active lead; reference and ground to its low side",
                $"raise a sine at {QuantityText.Format(design.Band.Centre.Hertz, "Hz")} until its tops flatten; supply at its lowest",
                ReadingKind.Other)
            {
                Expected = largest.Value,
                Least = largest.Si * 0.9,
                Tolerance = "at most 10 % below: the prediction includes the electrodes' offset and the noise",
                Source = Practice,
                Id = largest.Id,
                Design = fixture,
            };
        }
    }

    /// <summary>How far a line must stay from 0 Hz and from half the rate to be read as one [Hz].</summary>
    private const double LineRoom = 0.5;

    /// <summary>The frequency itself, or a little beside it where what lands is no line: at 0 Hz or at half the rate.</summary>
    private static double Readable(double hertz, double rate) =>
        Folding.LandsAt(hertz, rate) is var lands && LineRoom <= lands && lands <= (rate / 2) - LineRoom ? hertz : hertz + LineRoom;

    private static IEnumerable<BenchReading> Alias(Design design, double gain)
    {
        double fs = design.Converter.Rate.Hertz;
        var evaluation = new Evaluation(Fixture.With(design, Fixture.Short));
        foreach ((string name, double wanted) in new[] { ("alias-below", fs - 10), ("alias-rate", fs), ("alias-above", fs + 10),
            ("alias-240", 240.0), ("alias-fold", fs - design.Band.High.Hertz) })
        {
            if (wanted <= 0)
            {
                continue;
            }

            double hertz = Readable(wanted, fs);
            bool stands = hertz == wanted;
            double landing = Folding.LandsAt(hertz, fs), rms = Tone1 * evaluation.PathAndConverter([hertz])[0] / gain;
            BenchReading tone = Tone(new(name, hertz < fs / 2
                ? "tone below half the rate"
                : "alias tone", "generator of 10 Ω or less at the active lead; reference and ground to its low side",
                $"1 mV rms at {QuantityText.FormatPart(Frequency.FromHertz(hertz))}, digital filters off; record {RecordSeconds:0} s and read the line at {QuantityText.FormatPart(Frequency.FromHertz(landing))}, at the electrodes",
                landing, Filtered: false, evaluation, Practice), rms, gain);
            yield return name == "alias-fold" ? tone with { Id = ResultIds.Alias.FoldAttenuation }
                : stands ? tone
                : tone with { Remark = $"{QuantityText.FormatPart(Frequency.FromHertz(wanted))} itself lands where no line can be measured: half a hertz away from it" };
        }
    }

    private static BenchReading Step(Design design)
    {
        Design fixture = Fixture.With(design, Fixture.Of(Resistance.FromKilohms(10), default));
        var list = new ResultList();
        LevelsReport.AddRecovery(list, [], new Evaluation(fixture));
        Result recovery = list[ResultIds.Levels.Recovery];
        double? seconds = recovery.State == ResultState.Number ? recovery.Si : null;
        return new BenchReading("step", "step and recovery", "a battery and a switch in series with the active lead, 10 kΩ in every lead",
            $"a step of {QuantityText.Format(fixture.OffsetStep)}; read the time until the recording stays within 10 µV of its final value",
            ReadingKind.Other)
        {
            Expected = seconds is { } s ? Duration.FromSeconds(s) : null,
            Least = seconds * 0.8,
            Greatest = seconds * 1.2,
            Tolerance = "±20 %",
            Source = Practice,
            Id = recovery.Id,
            Remark = seconds is null ? recovery.Text : null,
            Design = fixture,
        };
    }

    /// <summary>How long each digital filter rings after a step.</summary>
    private static IEnumerable<BenchReading> Ring(Design design)
    {
        Design fixture = Fixture.With(design, Fixture.Of(Resistance.FromKilohms(10), default));
        var list = new ResultList();
        FilterReport.AddTo(list, [], new Evaluation(fixture));
        foreach (DigitalStage stage in design.Digital)
        {
            ResultId id = ResultIds.Digital.Of(stage.Name).RingTime;
            if (!list.Has(id) || list[id] is not { State: ResultState.Number } ring)
            {
                continue;
            }

            string filter = Slug.Of(stage.Name);
            yield return new BenchReading($"ring-{filter}", $"ring of {filter}",
                "a battery and a switch in series with the active lead, 10 kΩ in every lead",
                $"a step of 100 µV with {filter} on; read the time until its ringing has fallen to 1 %", ReadingKind.Other)
            {
                Expected = Duration.FromSeconds(ring.Si),
                Least = ring.Si * 0.8,
                Greatest = ring.Si * 1.2,
                Tolerance = "±20 %",
                Source = ring.Equation.Source,
                Id = ring.Id,
                Design = fixture,
            };
        }
    }

    /// <summary>Wander of the baseline over two minutes.</summary>
    /// <remarks>Predicted is the noise from one period in the record to the band's upper edge without the digital filters, peak-to-peak.
    /// What temperature does to offsets is not in the design.</remarks>
    private static BenchReading Drift(Design design, double gain)
    {
        const double Seconds = 120, Limit = 500e-6;
        Design fixture = Fixture.With(design, Fixture.Of(Resistance.FromKilohms(51), Capacitance.FromNanofarads(47)));
        var slow = new Evaluation(fixture with { Band = fixture.Band with { Low = Frequency.FromHertz(1 / Seconds) }, Digital = [] });
        double wander = TradeConstants.NoisePeakToPeak * slow.Noise.Total * slow.GainMid / gain;
        return new BenchReading("drift", "drift of the baseline", "51 kΩ in parallel with 47 nF in every lead, the far ends tied together",
            $"record {Seconds:0} s in a closed metal box, out of draughts, ten minutes after switching on, digital filters off; read the peak-to-peak, at the electrodes", ReadingKind.Other)
        {
            Expected = VoltagePeakToPeak.FromVolts(wander),
            Greatest = Math.Max(Limit, wander * (1 + NoiseTolerance)),
            Tolerance = wander * (1 + NoiseTolerance) <= Limit
                ? "limit 500 µV p-p"
                : "the noise alone is above the limit of 500 µV p-p; the prediction plus 20 %",
            Source = new SourceRef("aami-ec11"),
            Remark = "the prediction is noise alone; the design does not state how offsets follow temperature",
            Design = fixture,
        };
    }

    /// <summary>What a tone is set to and where it is read.</summary>
    /// <param name="Name">The test's word.</param>
    /// <param name="Title">What is tested.</param>
    /// <param name="Fixture">What is put in the electrodes' place.</param>
    /// <param name="Setting">What is set and read.</param>
    /// <param name="Line">Frequency at which it is read [Hz].</param>
    /// <param name="Filtered">True where the digital filters are on.</param>
    /// <param name="Board">The design with the fixture, evaluated.</param>
    /// <param name="Source">Where the test comes from.</param>
    private sealed record ToneSetup(
        string Name, string Title, string Fixture, string Setting, double Line, bool Filtered, Evaluation Board, SourceRef Source);

    /// <summary>A line of a size to expect; where it is lost in noise and steps, the most that these let one read.</summary>
    private static BenchReading Tone(ToneSetup setup, double rms, double gain)
    {
        double factor = Math.Pow(10, GainDecibels / 20), floor = BenchFloor.Of(setup.Board, setup.Filtered, gain, setup.Line);
        bool lost = rms < floor;
        return new BenchReading(setup.Name, setup.Title, setup.Fixture, setup.Setting, ReadingKind.Tone)
        {
            Expected = VoltageRms.FromVolts(lost ? rms + floor : rms),
            IsBound = lost,
            Least = lost ? null : (rms / factor) - (floor / 4),
            Greatest = lost ? rms + floor : (rms * factor) + (floor / 4),
            Tolerance = lost
                ? $"the line itself, {(rms < 1e-15 ? "nothing" : QuantityText.Format(VoltageRms.FromVolts(rms)))}, is lost in the noise and steps of {RecordSeconds:0} s, which can read up to this"
                : $"±{QuantityText.FormatNumber(GainDecibels, 2)} dB plus the noise under the line",
            Source = setup.Source,
            Line = Frequency.FromHertz(setup.Line),
            Filtered = setup.Filtered,
            Gain = gain,
            Design = setup.Board.Design,
        };
    }
}
