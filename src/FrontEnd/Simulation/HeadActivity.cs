using FrontEnd.Designs;
using FrontEnd.Head;

namespace FrontEnd.Simulation;

/// <summary>What the made-up head does: Gaussian activity by its density and what each channel sees of it, and shapes in time.</summary>
internal sealed class HeadActivity
{
    /// <summary>Peak of a Gaussian rhythm over its rms that levels are counted with.</summary>
    private const double GaussianPeak = 4.5;

    private const double MuscleLow = 20, MuscleHigh = 300, AlphaHertz = 10, AlphaWidth = 0.5, BackgroundHertz = 10;

    private readonly List<Gaussian> _gaussians = [];
    private readonly List<Shape> _shapes = [];
    private readonly List<Finding> _findings = [];
    private readonly double _length;

    public HeadActivity(Design design, SampleWish wish)
    {
        _length = wish.Length.Seconds;
        if (0 < design.Patches.Count || 0 < wish.Signals.Count)
        {
            var weights = new HeadWeights(design);
            for (int i = 0; i < design.Patches.Count; i++)
            {
                AddPatch(design, weights, i);
            }

            foreach (HeadSignal signal in wish.Signals)
            {
                Add(design, weights, signal, wish.Seed);
            }
        }
    }

    /// <summary>Steady Gaussian activity.</summary>
    /// <param name="Name">Of its stream.</param>
    /// <param name="Root">√S at a frequency, for a weight of 1 [V/√Hz].</param>
    /// <param name="Weights">What each channel sees of it.</param>
    internal sealed record Gaussian(string Name, Func<double, double> Root, double[] Weights);

    /// <summary>A shape in time.</summary>
    /// <param name="What">As it is told of.</param>
    /// <param name="Volts">Its height, for a weight of 1.</param>
    /// <param name="Weights">What each channel sees of it.</param>
    /// <param name="Pulses">When.</param>
    /// <param name="IsOffset">True for a direct voltage between the electrodes, which the input passes as it passes one.</param>
    internal sealed record Shape(string What, double Volts, double[] Weights, Pulses Pulses, bool IsOffset = false);

    public IReadOnlyList<Gaussian> Gaussians => _gaussians;

    public IReadOnlyList<Shape> Shapes => _shapes;

    /// <summary>Bursts of Gaussian activity, each channel its own; null for none.</summary>
    public (Pulses When, double Root)? Muscle { get; private set; }

    /// <summary>When the first channel's lead is off; null for never.</summary>
    public Pulses? Off { get; private set; }

    public bool HasLeadOff => Off is not null;

    public bool IsStill => _gaussians.Count == 0 && _shapes.Count == 0 && Muscle is null && Off is null;

    /// <summary>The largest peak of all but offsets that any channel sees [V].</summary>
    public double PeakVolts { get; private set; }

    /// <summary>The largest offset [V].</summary>
    public double OffsetVolts { get; private set; }

    public void Warn(ICollection<Finding> findings)
    {
        foreach (Finding finding in _findings)
        {
            findings.Add(finding);
        }
    }

    /// <summary>What happens when.</summary>
    public IEnumerable<SampleEvent> Events(IReadOnlyList<string> channels)
    {
        foreach (Gaussian gaussian in _gaussians.Where(one => !one.Name.StartsWith(BackgroundName, StringComparison.Ordinal) || one.Name == BackgroundName + "0"))
        {
            yield return new SampleEvent(default, null, gaussian.Name.StartsWith(BackgroundName, StringComparison.Ordinal) ? "simulated background activity" : $"simulated rhythm: {gaussian.Name}");
        }

        foreach (Shape shape in _shapes)
        {
            foreach (double time in shape.Pulses.Times)
            {
                yield return new SampleEvent(Duration.FromSeconds(time), Duration.FromSeconds(shape.Pulses.Length), shape.What);
            }
        }

        foreach (double time in Muscle?.When.Times ?? [])
        {
            yield return new SampleEvent(Duration.FromSeconds(time), Duration.FromSeconds(Muscle!.Value.When.Length), "simulated muscle burst");
        }

        foreach (double time in Off?.Times ?? [])
        {
            yield return new SampleEvent(Duration.FromSeconds(time), Duration.FromSeconds(Off!.Length), $"simulated: lead of {channels[0]} off", 0);
        }
    }

    private const string BackgroundName = "background ";

    private void AddPatch(Design design, HeadWeights weights, int number)
    {
        CortexPatch patch = design.Patches[number];
        string key = $"patches[{number + 1}].amplitude";
        if (patch.Amplitude is null)
        {
            _findings.Add(SampleMessages.PatchWithoutAmplitude(key, patch.Name));
            return;
        }

        if (weights.OfPatch(patch) is not { } seen)
        {
            _findings.Add(SampleMessages.PatchNotSeen(key, patch.Name));
            return;
        }

        Band band = patch.Band.Length == 0 ? design.Band : design.Bands.First(one => Catalogue.SourceCheck.SameWord(one.Name, patch.Band));
        double low = band.Low.Hertz, high = band.High.Hertz, root = 1 / Math.Sqrt(high - low);
        AddGaussian(new Gaussian(patch.Name, hertz => low <= hertz && hertz <= high ? root : 0, seen), 1);
    }

    /// <param name="rms">Of the activity for a weight of 1 [V].</param>
    private void AddGaussian(Gaussian gaussian, double rms)
    {
        _gaussians.Add(gaussian);
        PeakVolts += GaussianPeak * rms * gaussian.Weights.Max(Math.Abs);
    }

    private void AddShape(Shape shape)
    {
        _shapes.Add(shape);
        double peak = shape.Volts * shape.Weights.Max(Math.Abs);
        (PeakVolts, OffsetVolts) = shape.IsOffset ? (PeakVolts, OffsetVolts + peak) : (PeakVolts + peak, OffsetVolts);
    }

    private void Add(Design design, HeadWeights weights, HeadSignal signal, ulong seed)
    {
        double volts = signal.Volts;
        switch (signal.Kind)
        {
            case HeadSignalKind.Background:
                AddBackground(design, weights, signal.Amplitude is null ? Math.Sqrt((design.Background ?? new()).Density.VoltsSquaredPerHertz) : volts);
                break;
            case HeadSignalKind.Alpha:
                double rms = volts / (2 * Math.Sqrt(2)), density = rms * rms / (AlphaWidth * Math.Sqrt(2 * Math.PI));
                AddGaussian(new Gaussian(signal.Word, hertz => Math.Sqrt(density) * Math.Exp(-Math.Pow((hertz - AlphaHertz) / AlphaWidth, 2) / 4), weights.OfCortex("Oz")), rms);
                break;
            case HeadSignalKind.Blink:
                AddShape(new Shape("simulated blink", volts, weights.OfBlink(), Pulses.Blinks(_length, seed)));
                break;
            case HeadSignalKind.Heart:
                AddShape(new Shape("simulated heart beat", volts, weights.OfHeart(), Pulses.Beats(_length)));
                break;
            case HeadSignalKind.Muscle:
                Muscle = (Pulses.Bursts(_length, seed), volts / Math.Sqrt(MuscleHigh - MuscleLow));
                PeakVolts += GaussianPeak * volts;
                break;
            case HeadSignalKind.Evoked:
                AddShape(new Shape("simulated stimulus", volts, weights.OfCortex("Cz"), Pulses.Responses(_length)));
                break;
            case HeadSignalKind.Offset:
                AddShape(new Shape("simulated step of the electrodes' offset", signal.Amplitude is null ? design.OffsetStep.Volts : volts, weights.Alike(), Pulses.Step(_length), IsOffset: true));
                break;
            case HeadSignalKind.LeadOff:
                Off = Pulses.Off(_length);
                break;
            case HeadSignalKind.Calibration:
                AddShape(new Shape("simulated calibration", volts, weights.Alike(), Pulses.Square(_length)));
                break;
            default:
                throw new InvalidOperationException($"Signal {signal.Kind} is not handled.");
        }
    }

    /// <summary>√S of muscle activity at a frequency, while a burst lasts.</summary>
    public double MuscleRoot(double hertz) => Muscle is { } muscle && MuscleLow <= hertz && hertz <= MuscleHigh ? muscle.Root : 0;

    private void AddBackground(Design design, HeadWeights weights, double root)
    {
        double slope = (design.Background ?? new()).Slope;
        double[][] rows = weights.OfBackground();
        VoltageRms rms = (new BackgroundActivity() with { Density = VoltagePowerDensity.FromVoltsSquaredPerHertz(root * root), Slope = slope })
            .Rms(Frequency.FromHertz(Math.Max(0.1, design.Band.Low.Hertz)), Frequency.FromHertz(design.Converter.Rate.Hertz / 2));
        for (int source = 0; source < rows.Length; source++)
        {
            int one = source;

            // Below a tenth of a hertz nothing is known of it, and a power law has no end.
            AddGaussian(new Gaussian($"{BackgroundName}{source}", hertz => root * Math.Pow(BackgroundHertz / Math.Max(0.1, hertz), slope / 2), [.. rows.Select(row => row[one])]),
                source == 0 ? rms.Volts : 0);
        }
    }
}
