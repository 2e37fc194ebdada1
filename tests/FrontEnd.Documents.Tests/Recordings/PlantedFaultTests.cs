using System.Collections.Concurrent;
using FrontEnd.Bench;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Filters;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Results;
using FrontEnd.Simulation;
using FrontEnd.Topologies;
using Xunit;

namespace FrontEnd.Documents.Tests.Recordings;

/// <summary>Closing the loop: samples of a design with one fault, simulated on a bench fixture and held against the design without it. The bench names the fault among its
/// first two suspects, and raises none on a healthy board. It gets nothing but the samples.</summary>
public sealed class PlantedFaultTests
{
    private const double Seconds = 150;

    private static readonly ConcurrentDictionary<string, (Design Design, IReadOnlyList<BenchReading> Plan)> Boards = new(StringComparer.Ordinal);

    /// <summary>A design by its file's name, with the word of its filters behind a colon; with a third part, so few bits of state that its rounding is no white noise.</summary>
    private static (Design Design, IReadOnlyList<BenchReading> Plan) Board(string name) => Boards.GetOrAdd(name, static name =>
    {
        string[] parts = name.Split(':');
        Design design = DesignDocument.Read(Path.Combine(Repository.Designs, parts[0] + ".toml")).Design;
        design = parts.Length == 1 ? design : design with
        {
            Arithmetic = new DigitalArithmetic { Word = parts[1] == "q15" ? DigitalWord.Q15 : DigitalWord.Q31, Form = FilterForm.DirectI, StateFraction = parts.Length == 3 ? 8 : parts[1] == "q15" ? 8 : 16 },
        };
        return (design, BenchPlan.Of(design).Readings);
    });

    /// <summary>Steps of one channel of a design that has its fixture in place.</summary>
    private static double[] Steps(Design fixture, ulong seed, double seconds = Seconds)
    {
        Design one = fixture with { Channels = 1, Input = fixture.Input with { ReferenceInputs = fixture.EffectiveReferenceInputs }, Patches = [] };
        List<Finding> findings = [];
        SampleRun run = SampleRun.Prepare(one, new SampleWish { Length = Duration.FromSeconds(seconds), Seed = seed }, findings)!;
        Assert.Empty(findings);
        List<double> steps = [];
        foreach (SampleBlock block in run.Blocks(TestContext.Current.CancellationToken))
        {
            steps.AddRange(block.Steps[0].AsSpan(0, block.Length));
        }

        return [.. steps];
    }

    private static BenchResult Held(string board, string test, double[] steps, bool areSteps = true)
    {
        (Design design, IReadOnlyList<BenchReading> plan) = Board(board);
        (BenchResult? result, IReadOnlyList<Finding> findings) = BenchComparison.Recording(plan, test, new Recording("1", design.Converter.Rate, steps, areSteps));
        Assert.Empty(findings);
        return result!;
    }

    private static BenchReading Test(string board, string name) => Board(board).Plan.Single(test => test.Name == name);

    private static void Names(SuspectKind kind, BenchResult result) =>
        Assert.True(result.Suspects.Take(2).Any(suspect => suspect.Kind == kind), $"{kind} is not among the first two of {string.Join(", ", result.Suspects.Select(suspect => $"{suspect.Kind} ({suspect.Evidence})"))}: {result.Because}");

    /// <summary>A fault of the board or its fixture: what it makes of the design with the fixture; <c>whole</c> is the design on a head.</summary>
    private static Design Planted(string fault, double size, Design fixture, Design whole) => fault switch
    {
        "amplifier noise" => fixture with { Amplifier = fixture.Amplifier with { InputNoise = Times(fixture.Amplifier.InputNoise, size), OutputNoise = Times(fixture.Amplifier.OutputNoise, size) } },
        "op-amp noise" => fixture with { Stages = [.. fixture.Stages.Select(stage => stage.FittedOpAmp is { } opAmp ? stage.WithOpAmp(opAmp with { VoltageNoise = Times(opAmp.VoltageNoise, size) }) : stage)] },
        "gain" => fixture with { Amplifier = fixture.Amplifier with { Gain = fixture.Amplifier.Gain * size } },
        "flicker" => fixture with { Amplifier = fixture.Amplifier with { NoiseCorner = Frequency.FromHertz(size) } },
        "converter noise" => fixture with { Converter = fixture.Converter with { Noise = VoltageRms.FromVolts(fixture.Converter.Noise!.Value.Volts * size) } },
        "sections out" => fixture with { Stages = [.. fixture.Stages.Where((stage, i) => stage.Role != StageRole.LowPass || i == fixture.Stages.Count - 1 - (int)size)] },
        "capacitors" => fixture with { Stages = [.. fixture.Stages.Select(stage => stage.Role != StageRole.LowPass ? stage : stage.Circuit().Parts.Where(part => part.Kind == PartKind.Capacitor)
            .Aggregate(stage, (changed, part) => TopologyCatalogue.Times(changed, part.Role, size)))] },
        "folded harmonic" => fixture with { Mains = fixture.Mains with { Harmonics = Only((int)size), FieldHarmonics = Only((int)size), LoopArea = Area.FromSquareMetres(0.2), Field = whole.Mains.Field } },
        "loop" => fixture with { Mains = fixture.Mains with { LoopArea = Area.FromSquareMetres(whole.Mains.LoopArea.SquareMetres * size), Field = whole.Mains.Field } },
        "open box" => fixture with { Mains = whole.Mains with { LeadToMains = Capacitance.FromFarads(size * 1e-15) } },
        "current noise" => fixture with { Amplifier = fixture.Amplifier with { CurrentNoise = CurrentNoiseDensity.FromAmperesPerRootHertz(size * 1e-12) } },
        "bias resistor" => fixture with { Input = fixture.Input with { BiasResistor = Resistance.FromMegohms(size) } },
        "fixture" => Fixture.With(fixture, Fixture.Of(Resistance.FromKilohms(size), default)),
        "filters off" => fixture with { Digital = [] },
        "last filter off" => fixture with { Digital = [.. fixture.Digital.SkipLast(1)] },
        "filter rate" => fixture with { Digital = [.. fixture.Digital.Select(stage => Moved(stage, size))] },
        "clip" => fixture with { Converter = fixture.Converter with { Lsb = Voltage.FromVolts(Lsb(fixture)), FullScale = VoltagePeakToPeak.FromVolts(2 * size) } },
        "cut" => fixture with { Amplifier = fixture.Amplifier with { Gain = 1e-6 * fixture.Amplifier.Gain } },
        _ => throw new ArgumentOutOfRangeException(nameof(fault), fault, "No such fault is planted."),
    };

    private static double[] Only(int harmonic) => [.. Enumerable.Range(1, harmonic).Select(h => h == harmonic ? 1.0 : 0)];

    private static double Lsb(Design design) => design.Converter.Lsb?.Volts ?? (design.Converter.FullScale.Volts / Math.Pow(2, design.Converter.Bits));

    private static VoltageNoiseDensity Times(VoltageNoiseDensity noise, double size) => VoltageNoiseDensity.FromVoltsPerRootHertz(noise.VoltsPerRootHertz * size);

    private static DigitalStage Moved(DigitalStage stage, double factor) => stage switch
    {
        DigitalHighPass filter => filter with { Corner = Frequency.FromHertz(filter.Corner.Hertz * factor) },
        DigitalNotch filter => filter with { Centre = Frequency.FromHertz(filter.Centre.Hertz * factor) },
        _ => stage,
    };

    /// <summary>Dry and gel electrodes' boards, both kinds of converter, 12, 16 and 24 bits, 50 and 60 Hz, filters in doubles and in whole numbers; sizes from just outside
    /// the tolerance to many times.</summary>
    [Theory]
    [InlineData("dry-headband", "shorted", "amplifier noise", 2, SuspectKind.LouderPart)]
    [InlineData("dry-headband:q31", "shorted", "amplifier noise", 4, SuspectKind.LouderPart)]
    [InlineData("gel-cap", "shorted", "amplifier noise", 3, SuspectKind.LouderPart)]
    [InlineData("saline-sponge", "10k", "amplifier noise", 9, SuspectKind.LouderPart)]
    [InlineData("starter", "shorted", "amplifier noise", 2.5, SuspectKind.LouderPart)]
    [InlineData("saline-sponge", "shorted", "op-amp noise", 4, SuspectKind.LouderPart)]
    [InlineData("hobbyist", "shorted", "op-amp noise", 60, SuspectKind.LouderPart)]
    [InlineData("saline-sponge", "shorted", "gain", 3, SuspectKind.LouderPart)]
    [InlineData("gel-cap", "51k-47n", "gain", 2, SuspectKind.LouderPart)]
    [InlineData("dry-headband", "shorted", "gain", 0.5, SuspectKind.TooQuiet)]
    [InlineData("gel-cap", "620k-4.7n", "gain", 0.3, SuspectKind.TooQuiet)]
    [InlineData("starter:q15", "10k", "gain", 0.5, SuspectKind.TooQuiet)]
    [InlineData("dry-headband", "shorted", "flicker", 60, SuspectKind.LowFrequency)]
    [InlineData("gel-cap", "shorted", "flicker", 30, SuspectKind.LowFrequency)]
    [InlineData("starter", "shorted", "flicker", 90, SuspectKind.LowFrequency)]
    [InlineData("hobbyist", "10k", "flicker", 200, SuspectKind.LowFrequency)]
    [InlineData("dry-headband", "shorted", "converter noise", 5, SuspectKind.HighFrequency)]
    [InlineData("gel-cap", "shorted", "converter noise", 3, SuspectKind.HighFrequency)]
    [InlineData("saline-sponge", "shorted", "converter noise", 5, SuspectKind.HighFrequency)]
    [InlineData("dry-headband", "shorted", "sections out", 9, SuspectKind.Aliasing)]
    [InlineData("saline-sponge", "shorted", "sections out", 0, SuspectKind.Aliasing)]
    [InlineData("saline-sponge", "10k", "sections out", 9, SuspectKind.Aliasing)]
    [InlineData("hobbyist", "shorted", "sections out", 9, SuspectKind.Aliasing)]
    [InlineData("hobbyist", "shorted", "capacitors", 0.2, SuspectKind.Aliasing)]
    [InlineData("dry-headband", "shorted", "capacitors", 3, SuspectKind.Aliasing)]
    [InlineData("dry-headband", "shorted", "folded harmonic", 9, SuspectKind.Aliasing)]
    [InlineData("hobbyist", "shorted", "folded harmonic", 17, SuspectKind.Aliasing)]
    [InlineData("dry-headband", "shorted", "loop", 600, SuspectKind.MainsPickup)]
    [InlineData("gel-cap", "shorted", "loop", 300, SuspectKind.MainsPickup)]
    [InlineData("starter", "10k", "loop", 100, SuspectKind.MainsPickup)]
    [InlineData("saline-sponge", "51k-47n", "open box", 3000, SuspectKind.MainsPickup)]
    [InlineData("dry-headband", "620k-4.7n", "loop", 900, SuspectKind.MainsPickup)]
    [InlineData("starter", "620k-4.7n", "open box", 2000, SuspectKind.MainsPickup)]
    [InlineData("dry-headband", "620k-4.7n", "current noise", 2, SuspectKind.InputLoad)]
    [InlineData("gel-cap", "620k-4.7n", "current noise", 0.5, SuspectKind.InputLoad)]
    [InlineData("starter", "620k-4.7n", "current noise", 8, SuspectKind.InputLoad)]
    [InlineData("dry-headband", "620k-4.7n", "bias resistor", 0.3, SuspectKind.InputLoad)]
    [InlineData("starter", "620k-4.7n", "bias resistor", 0.5, SuspectKind.InputLoad)]
    [InlineData("dry-headband", "shorted", "fixture", 300, SuspectKind.Fixture)]
    [InlineData("gel-cap", "10k", "fixture", 200, SuspectKind.Fixture)]
    [InlineData("saline-sponge", "51k-47n", "fixture", 1000, SuspectKind.Fixture)]
    [InlineData("starter", "shorted", "fixture", 620, SuspectKind.Fixture)]
    [InlineData("dry-headband", "shorted", "filters off", 0, SuspectKind.DigitalFilter)]
    [InlineData("gel-cap", "10k", "last filter off", 0, SuspectKind.DigitalFilter)]
    [InlineData("starter:q15", "shorted", "last filter off", 0, SuspectKind.DigitalFilter)]
    [InlineData("starter", "shorted", "filter rate", 2, SuspectKind.DigitalFilter)]
    [InlineData("hobbyist", "10k", "filter rate", 0.83, SuspectKind.DigitalFilter)]
    [InlineData("gel-cap", "shorted", "cut", 0, SuspectKind.DeadChannel)]
    [InlineData("starter", "10k", "cut", 0, SuspectKind.DeadChannel)]
    public void Fault_OfABoard_IsAmongTheFirstTwoSuspects(string board, string test, string fault, double size, object kind)
    {
        Design fixture = Test(board, test).Design, planted = Planted(fault, size, fixture, Board(board).Design);
        Names((SuspectKind)kind, Held(board, test, Steps(planted, 7)));
    }

    /// <summary>A converter that clips behind which filters blur the limit, and one without filters.</summary>
    [Theory]
    [InlineData("gel-cap", 1)]
    [InlineData("gel-cap", 2)]
    [InlineData("starter", 1.5)]
    [InlineData("starter:q15", 2)]
    public void Converter_ThatClips_IsClipping(string board, double sigmas)
    {
        BenchReading test = Test(board, "shorted");
        Names(SuspectKind.Clipping, Held(board, "shorted", Steps(Planted("clip", sigmas * test.Expected!.SiValue * test.Gain, test.Design, test.Design), 3)));
    }

    /// <summary>A line where no harmonic can be told from chance is at least not told as one alone.</summary>
    [Theory]
    [InlineData("dry-headband", 33.3, 0.5)]
    [InlineData("gel-cap", 8.6, 0.3)]
    [InlineData("saline-sponge", 8.6, 1)]
    [InlineData("starter", 12.4, 3)]
    [InlineData("hobbyist", 91.7, 1)]
    public void Line_AtNoMultipleOfTheMains_IsAnotherLine(string board, double hertz, double sigmas)
    {
        BenchReading test = Test(board, "shorted");
        double[] steps = Steps(test.Design, 5);
        double rate = test.Design.Converter.Rate.Hertz, size = Math.Sqrt(2) * sigmas * test.Expected!.SiValue * test.Gain / Lsb(test.Design);
        Names(SuspectKind.OtherLine, Held(board, "shorted", [.. steps.Select((step, i) => step + (size * Math.Sin(2 * Math.PI * hertz * i / rate)))]));
    }

    [Theory]
    [InlineData("dry-headband", 1e-3)]
    [InlineData("gel-cap", 1e3)]
    [InlineData("starter", 1e6)]
    public void Samples_InAnotherUnit_PointToTheUnit(string board, double factor)
    {
        BenchReading test = Test(board, "10k");
        double perStep = Lsb(test.Design) / test.Gain;
        Names(SuspectKind.Unit, Held(board, "10k", [.. Steps(test.Design, 9).Select(step => step * perStep * factor)], areSteps: false));
    }

    /// <summary>Of noise the sign cannot be told, so that nothing is said of it; pulses tell it.</summary>
    [Theory]
    [InlineData("dry-headband")]
    [InlineData("saline-sponge")]
    [InlineData("starter")]
    public void Polarity_IsToldByPulsesAlone(string board)
    {
        BenchReading noise = Test(board, "shorted");
        BenchResult turned = Held(board, "shorted", [.. Steps(noise.Design, 4).Select(step => -step)]);
        Assert.Equal(VerdictKind.Pass, turned.Verdict);
        Assert.Empty(turned.Suspects);
        BenchReading pulse = Test(board, "polarity");
        if (pulse.Kind != ReadingKind.Pulse)
        {
            Assert.Null(pulse.Expected);
            return;
        }

        // What is expected of the path is in the height; pulses last a tenth of the time.
        double[] steps = Steps(pulse.Design, 4);
        double rate = pulse.Design.Converter.Rate.Hertz, height = pulse.Expected!.SiValue * pulse.Gain / Lsb(pulse.Design);
        double[] down = [.. steps.Select((step, i) => -step - (i * 10 / rate % 5 < 0.5 ? height : 0))];
        Names(SuspectKind.Polarity, Held(board, "polarity", down));
    }

    [Fact]
    public void NothingMoves_IsADeadChannel() => Names(SuspectKind.DeadChannel, Held("dry-headband", "shorted", new double[30000]));

    /// <summary>None of 20 records of each of the designs raises a suspect, whatever the fixture and the length.</summary>
    /// <remarks>160 records: where one in a thousand raised one, 15 of 100 such tests would fail; where one in a hundred, 80 (1 − (1 − p)^160). The bench's own thresholds
    /// (nine deviations of a line's bin, six of a tail, odds of 20,000 to 1 for a fault inside the tolerances) lie far beyond.</remarks>
    [Theory]
    [InlineData("dry-headband")]
    [InlineData("gel-cap")]
    [InlineData("saline-sponge")]
    [InlineData("starter")]
    [InlineData("hobbyist")]
    [InlineData("eight-channel-cap")]
    [InlineData("dry-headband:q31")]
    [InlineData("starter:q15")]
    public void Board_WithoutAFault_RaisesNoSuspect(string board)
    {
        string[] tests = [.. Board(board).Plan.Where(test => test.Kind == ReadingKind.Noise).Select(test => test.Name)];
        for (int seed = 0; seed < 20; seed++)
        {
            string test = tests[seed % tests.Length];
            BenchResult result = Held(board, test, Steps(Test(board, test).Design, (ulong)(1000 + seed), seed % 2 == 0 ? 60 : 120));
            Assert.True(result.Verdict == VerdictKind.Pass && result.Suspects.Count == 0,
                $"{test}, seed {seed}: {result.Because} {string.Join(", ", result.Suspects.Select(suspect => $"{suspect.Kind} ({suspect.Evidence})"))}");
        }
    }

    /// <summary>The worked dry design in whole numbers with 8 bits below the step: its rounding follows the noise, up to eleven times what white rounding has. That is the
    /// design's own, and passes; what is left of it to tell is the digital filters'.</summary>
    [Fact]
    public void Rounding_BelowADeadBand_IsNoFaultOfTheBoard()
    {
        for (ulong seed = 1; seed <= 6; seed++)
        {
            BenchResult result = Held("dry-headband:q31:8", "shorted", Steps(Test("dry-headband:q31:8", "shorted").Design, seed));
            Assert.True(result.Verdict == VerdictKind.Pass && result.Suspects.All(suspect => suspect.Kind == SuspectKind.DigitalFilter),
                $"seed {seed}: {result.Because} {string.Join(", ", result.Suspects.Select(suspect => $"{suspect.Kind} ({suspect.Evidence})"))}");
        }
    }
}
