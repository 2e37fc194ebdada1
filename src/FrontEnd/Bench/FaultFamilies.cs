using FrontEnd.Amplifier;
using FrontEnd.Budgets;
using FrontEnd.Circuits;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Networks;
using FrontEnd.Reporting;
using FrontEnd.Topologies;

namespace FrontEnd.Bench;

/// <summary>What may be wrong with a board, each fault as the spectrum that the design has with it, worked out by the budget itself.</summary>
/// <remarks>A recording is held against every one of them. What shows the same spectrum cannot be told apart, and both are named.</remarks>
internal sealed class FaultFamilies
{
    /// <summary>Powers of a gain that count as less, as more, and the least that is no dead channel.</summary>
    private const double LessGain = 0.75, MoreGain = 1.3, LeastGain = 1e-5, Most = 1e7;

    private readonly Evaluation _evaluation;
    private readonly Design _design;
    private readonly double _gain;
    private readonly double[] _hertz, _healthy, _fixed;
    private readonly SpectrumRows _rows;

    /// <param name="evaluation">The design with its fixture.</param>
    /// <param name="gain">What samples are divided by.</param>
    /// <param name="rows">The recording's.</param>
    /// <param name="floor">Share of the predicted density in each row that is made behind the digital filters, which no fault before them changes.</param>
    public FaultFamilies(Evaluation evaluation, double gain, SpectrumRows rows, double[] floor)
    {
        (_evaluation, _design, _gain, _rows, _hertz, _fixed) = (evaluation, evaluation.Design, gain, rows, rows.Hertz, floor);
        _healthy = new PredictedSpectrum(evaluation, filtered: false, gain).BeforeDigital(_hertz);
    }

    /// <summary>All but those of the digital filters.</summary>
    public IEnumerable<FaultFamily> All() =>
    [
        .. Scales(), .. Gains(), .. LouderParts(), .. LowFrequencies(), .. HighFrequencies(), .. AntiAlias(), .. OtherRates(), .. InputLoads(), .. Fixtures(),
    ];

    /// <summary>Everything alike.</summary>
    private IEnumerable<FaultFamily> Scales()
    {
        double[] none = new double[_hertz.Length], all = [.. none.Select(_ => 1.0)];
        yield return new MixedFaults(SuspectKind.TooQuiet, "everything {0} times its size", none, all, 1e-9, LessGain, Math.Sqrt) { IsTimes = true };
        yield return new MixedFaults(SuspectKind.LouderPart, "everything {0} times its size", none, all, MoreGain, Most, Math.Sqrt) { IsTimes = true };
    }

    /// <summary>Everything before a place times a gain; what is made behind it stays.</summary>
    private IEnumerable<FaultFamily> Gains()
    {
        foreach ((string words, double[] kept) in Behind())
        {
            double[] before = [.. kept.Select(share => Math.Max(0, 1 - share))];
            yield return Mixed(SuspectKind.TooQuiet, $"a gain of {{0}} times the design's {words}", kept, before, LeastGain, LessGain, Math.Sqrt) with { IsTimes = true };
            yield return Mixed(SuspectKind.LouderPart, $"a gain of {{0}} times the design's {words}", kept, before, MoreGain, Most, Math.Sqrt) with { IsTimes = true };
            yield return new ListedFaults(SuspectKind.DeadChannel, $"only what is made after it: no signal comes through {words}", [Change(kept)], [1]);
        }
    }

    /// <summary>Shares of the predicted density that are made behind the amplifier's input, behind each block, and in the converter.</summary>
    private IEnumerable<(string Words, double[] Kept)> Behind()
    {
        AnalogDigitalConverter converter = _design.Converter;
        double white = (NoiseDensity.Quantisation(converter.LsbVolts) + (converter.NoiseVolts * converter.NoiseVolts)) / (converter.Rate.Hertz / 2) / (_gain * _gain);
        double[] own = [.. _healthy.Select(density => white / density)];
        if (With(_design with { Amplifier = _design.Amplifier with { Gain = _design.Amplifier.Gain * 1e-6 } }) is { } cut)
        {
            yield return ("in the amplifier", [.. cut.Select((density, i) => Math.Min(1, density / _healthy[i]))]);
        }

        SignalPath path = _evaluation.Path;
        for (int block = 0; block < path.Nodes - 1; block++)
        {
            double[] share = ShareBehind(block);
            yield return ($"up to {(block == 0 ? "the amplifier" : _design.Stages[block - 1].Name)}'s output", [.. share.Select((behind, i) => own[i] + (behind * (1 - own[i])))]);
        }

        yield return ("before the converter", own);
    }

    /// <summary>Share of what reaches the converter's pin that is made behind a block.</summary>
    private double[] ShareBehind(int block)
    {
        SignalPath path = _evaluation.Path;
        var share = new double[_hertz.Length];
        var density = new double[SignalPath.Chunk];
        for (int first = 0; first < _hertz.Length; first += SignalPath.Chunk)
        {
            int n = Math.Min(SignalPath.Chunk, _hertz.Length - first);
            path.Sweep(_hertz.AsSpan(first, n));
            for (int source = 0; source < path.Sources.Count; source++)
            {
                path.SourceDensity(source, n, density);
                for (int lane = 0; lane < n && block < path.Sources[source].Block; lane++)
                {
                    share[first + lane] += density[lane] / path.Density[lane];
                }
            }
        }

        return share;
    }

    private IEnumerable<FaultFamily> LouderParts()
    {
        DifferentialAmplifier amplifier = _design.Amplifier;
        if (Louder(_design with { Amplifier = amplifier with { InputNoise = Twice(amplifier.InputNoise), OutputNoise = Twice(amplifier.OutputNoise) } }) is { } voltage)
        {
            yield return Times(SuspectKind.LouderPart, "the amplifier's voltage noise {0} times its card's", voltage);
        }

        if (CurrentNoise() is { } current)
        {
            yield return Times(SuspectKind.LouderPart, "the input's current noise {0} times its card's", current);
        }

        for (int i = 0; i < _design.Stages.Count; i++)
        {
            if (_design.Stages[i] is { FittedOpAmp: { } opAmp } stage)
            {
                OpAmp both = opAmp with { VoltageNoise = Twice(opAmp.VoltageNoise), CurrentNoise = Twice(opAmp.CurrentNoise) };
                if (Louder(WithStage(i, stage.WithOpAmp(both))) is { } noise)
                {
                    yield return Times(SuspectKind.LouderPart, $"the noise of {stage.Name}'s op-amp {{0}} times its card's", noise);
                }
            }
        }

        if (_design.Electrodes is { ActiveBuffer: not null } or { ReferenceBuffer: not null }
            && Louder(_design with { Electrodes = WithBuffers(buffer => buffer with { OpAmp = buffer.OpAmp with { VoltageNoise = Twice(buffer.OpAmp.VoltageNoise) } }) }) is { } buffers)
        {
            yield return Times(SuspectKind.LouderPart, "the electrode buffers' voltage noise {0} times their card's", buffers);
        }

        yield return Times(SuspectKind.LouderPart, "the converter's own noise {0} times its card's", ConverterShare());
    }

    /// <summary>Flicker: what grows towards low frequencies as a power of them, in front of the path.</summary>
    private IEnumerable<FaultFamily> LowFrequencies()
    {
        double[] path = PathPower();
        double centre = _design.Band.Centre.Hertz;
        int middle = Enumerable.Range(0, _hertz.Length).MinBy(i => Math.Abs(Math.Log(_hertz[i] / centre)));
        foreach (double slope in new[] { 0.5, 1, 1.5, 2, 3 })
        {
            double[] added = [.. path.Select((power, i) => power * Math.Pow(_hertz[i] / centre, -slope) / _healthy[i] * _healthy[middle] / path[middle])];
            yield return Mixed(SuspectKind.LowFrequency, $"noise that falls with the {Power(slope)} of the frequency, {{0}} times the predicted in the band's middle",
                Ones(), added, 1e-4, Most, Math.Sqrt);
        }

        DifferentialAmplifier amplifier = _design.Amplifier;
        if (Louder(_design with { Amplifier = amplifier with { NoiseCorner = Frequency.FromHertz(amplifier.NoiseCorner.Hertz + 1) } }, 1) is { } flicker)
        {
            yield return Mixed(SuspectKind.LowFrequency, "flicker of the amplifier with a corner {0} Hz higher than stated", Ones(), flicker, 0.3, 1e5, hertz => hertz);
        }

        for (int i = 0; i < _design.Stages.Count; i++)
        {
            if (_design.Stages[i] is { FittedOpAmp: { } opAmp } stage
                && Louder(WithStage(i, stage.WithOpAmp(opAmp with { NoiseCorner = Frequency.FromHertz(opAmp.NoiseCorner.Hertz + 1) })), 1) is { } own)
            {
                yield return Mixed(SuspectKind.LowFrequency, $"flicker of {stage.Name}'s op-amp with a corner {{0}} Hz higher than stated", Ones(), own, 0.3, 1e6, hertz => hertz);
            }
        }
    }

    private IEnumerable<FaultFamily> HighFrequencies()
    {
        yield return Times(SuspectKind.HighFrequency, "the converter's own noise {0} times its card's, or that much folding back past the anti-alias filter", ConverterShare());
        double high = _hertz[^1];
        double typical = _healthy.Order().ElementAt(_healthy.Length / 2);
        foreach (double slope in new[] { 1.0, 2 })
        {
            double[] added = [.. _hertz.Select((hertz, i) => Math.Pow(hertz / high, slope) * typical / _healthy[i])];
            yield return Mixed(SuspectKind.HighFrequency, $"noise that grows with the {Power(slope)} of the frequency", Ones(), added, 1e-3, Most, Math.Sqrt);
        }
    }

    private static readonly double[] CornerFactors = [0.1, 0.2, 0.35, 0.55, 0.8, 1.25, 1.8, 3, 6, 15, 40];

    /// <summary>Sections of the anti-alias filter left out, or with capacitors of another value.</summary>
    private IEnumerable<FaultFamily> AntiAlias()
    {
        int[] sections = [.. Enumerable.Range(0, _design.Stages.Count).Where(i => _design.Stages[i].Role == StageRole.LowPass)];
        if (sections.Length == 0)
        {
            yield break;
        }

        List<(Design Design, double Left)> without = [(_design with { Stages = [.. _design.Stages.Where(stage => stage.Role != StageRole.LowPass)] }, sections.Length)];
        without.AddRange(sections.Length < 2 ? [] : sections.Select(out1 => (_design with { Stages = [.. _design.Stages.Where((_, i) => i != out1)] }, 1.0)));
        yield return Listed(SuspectKind.Aliasing, "{0} of the anti-alias filter's sections without effect", without);
        foreach (int[] which in sections.Length < 2 ? [sections] : sections.Select(one => new[] { one }).Prepend(sections))
        {
            string words = which.Length == 1 ? $"{_design.Stages[which[0]].Name} with" : "the anti-alias filter with";
            yield return Listed(SuspectKind.Aliasing, words + " a corner of {0} times the design's",
                CornerFactors.Select(factor => (_design with { Stages = [.. _design.Stages.Select((stage, i) => which.Contains(i) ? Cornered(stage, factor) : stage)] }, factor)));
        }
    }

    private static Stage Cornered(Stage stage, double factor) => stage.Circuit().Parts.Where(part => part.Kind == PartKind.Capacitor)
        .Aggregate(stage, (changed, part) => TopologyCatalogue.Times(changed, part.Role, 1 / factor));

    /// <summary>Samples that were taken at another rate than the file says: what stands at f is from f times the factor, the digital filters' own response is
    /// where it was.</summary>
    private IEnumerable<FaultFamily> OtherRates()
    {
        List<double[]> changes = [];
        List<double> factors = [];
        foreach (double factor in new[] { 0.25, 0.5, 0.8, 1.25, 2, 4 })
        {
            Design other = _design with { Converter = _design.Converter with { Rate = Frequency.FromHertz(_design.Converter.Rate.Hertz * factor) } };
            if (With(other, [.. _hertz.Select(hertz => hertz * factor)]) is { } density)
            {
                changes.Add(Change([.. density.Select((one, i) => factor * one / _healthy[i])]));
                factors.Add(factor);
            }
        }

        yield return new ListedFaults(SuspectKind.DigitalFilter, "samples taken at {0} times the rate", changes, factors);
    }

    private IEnumerable<FaultFamily> InputLoads()
    {
        if (CurrentNoise() is { } current)
        {
            yield return Times(SuspectKind.InputLoad, "current noise at the inputs {0} times the card's, as a leak makes", current);
        }

        InputNetwork input = _design.Input;
        double[] ohms = [1e5, 3e5, 1e6, 3e6, 1e7, 3e7, 1e8, 3e8];
        double[] farads = [3e-11, 1e-10, 3e-10, 1e-9, 3e-9, 1e-8, 3e-8];
        yield return Listed(SuspectKind.InputLoad, "{0} MΩ at the inputs",
            ohms.Where(one => one < (input.BiasResistor?.Ohms ?? double.PositiveInfinity)).Select(one => (Loaded(one), one / 1e6)));
        yield return Listed(SuspectKind.InputLoad, "{0} nF more at the inputs", farads.Select(one => (Shunted(one), one * 1e9)));

        Design Loaded(double load) => _design with
        {
            Input = input with { BiasResistor = Resistance.FromOhms(load) },
            Electrodes = WithBuffers(buffer => buffer with { InputResistance = Resistance.FromOhms(Math.Min(load, buffer.InputResistance.Ohms)) }),
        };
        Design Shunted(double load) => _design with
        {
            Input = input with { ShuntCapacitor = Capacitance.FromFarads(input.ShuntCapacitor.Farads + load) },
            Electrodes = WithBuffers(buffer => buffer with { InputCapacitance = Capacitance.FromFarads(buffer.InputCapacitance.Farads + load) }),
        };
    }

    /// <summary>Another part in the electrodes' place.</summary>
    private IEnumerable<FaultFamily> Fixtures()
    {
        Electrode there = _design.Electrodes.Active;
        double[] ohms = [0.1, 1e3, 5e3, 1e4, 2e4, 5e4, 1e5, 2e5, 5e5, 1e6, 2e6, 5e6, 1e7];
        foreach (Capacitance across in new[] { there.ContactCapacitance, default }.Distinct())
        {
            yield return Listed(SuspectKind.Fixture, $"{{0}} kΩ{(across.Farads == 0 ? "" : $" in parallel with {QuantityText.FormatPart(across)}")} in the leads",
                ohms.Select(one => (Fixture.With(_design, Fixture.Of(Resistance.FromOhms(one), across)), one / 1e3)));
        }
    }

    private double[]? CurrentNoise()
    {
        DifferentialAmplifier amplifier = _design.Amplifier;
        return Louder(_design with
        {
            Amplifier = amplifier with { CurrentNoise = Twice(amplifier.CurrentNoise) },
            Electrodes = WithBuffers(buffer => buffer with { OpAmp = buffer.OpAmp with { CurrentNoise = Twice(buffer.OpAmp.CurrentNoise) } }),
        });
    }

    /// <summary>What one unit more of a noise power adds, as a share of the predicted; null where nothing.</summary>
    /// <param name="louder">The design with a noise of twice its size, or <paramref name="more"/> units of power more.</param>
    private double[]? Louder(Design louder, double more = 3)
    {
        if (With(louder) is not { } density)
        {
            return null;
        }

        double[] added = [.. density.Select((one, i) => Math.Max(0, (one / _healthy[i]) - 1) / more)];
        return added.Max() < LeastShare ? null : added;
    }

    /// <summary>A source that makes less of the noise than this would have to be thousands of times its card's.</summary>
    private const double LeastShare = 1e-9;

    private double[] ConverterShare()
    {
        AnalogDigitalConverter converter = _design.Converter;
        double power = Math.Max(converter.NoiseVolts * converter.NoiseVolts, NoiseDensity.Quantisation(converter.LsbVolts)) / (converter.Rate.Hertz / 2) / (_gain * _gain);
        return [.. _healthy.Select(density => power / density)];
    }

    /// <summary>|H_path·H_adc|² over the gain.</summary>
    private double[] PathPower()
    {
        var power = new double[_hertz.Length];
        for (int first = 0; first < _hertz.Length; first += SignalPath.Chunk)
        {
            int n = Math.Min(SignalPath.Chunk, _hertz.Length - first);
            _evaluation.Path.SweepTransfer(_hertz.AsSpan(first, n));
            for (int lane = 0; lane < n; lane++)
            {
                double size = _evaluation.Path.Size(_evaluation.Path.Nodes - 1, lane) * _design.Converter.Response(_hertz[first + lane]) / _gain;
                power[first + lane] = size * size;
            }
        }

        return power;
    }

    private Design WithStage(int index, Stage stage) => _design with { Stages = [.. _design.Stages.Select((one, i) => i == index ? stage : one)] };

    private ElectrodeSet WithBuffers(Func<ElectrodeBuffer, ElectrodeBuffer> change) => _design.Electrodes with
    {
        ActiveBuffer = _design.Electrodes.ActiveBuffer is { } active ? change(active) : null,
        ReferenceBuffer = _design.Electrodes.ReferenceBuffer is { } reference ? change(reference) : null,
    };

    private static VoltageNoiseDensity Twice(VoltageNoiseDensity noise) => VoltageNoiseDensity.FromVoltsPerRootHertz(2 * noise.VoltsPerRootHertz);

    private static CurrentNoiseDensity Twice(CurrentNoiseDensity noise) => CurrentNoiseDensity.FromAmperesPerRootHertz(2 * noise.AmperesPerRootHertz);

    private static string Power(double slope) => slope switch { 0.5 => "root", 1 => "first power", 1.5 => "power 1.5", 2 => "square", _ => "third power" };

    private double[] Ones() => [.. _hertz.Select(_ => 1.0)];

    /// <summary>A part's noise power times k², k above 1.</summary>
    private MixedFaults Times(SuspectKind kind, string words, double[] added) =>
        Mixed(kind, words, Ones(), added, 0.3, 1e12, more => Math.Sqrt(1 + more)) with { IsTimes = true };

    private MixedFaults Mixed(SuspectKind kind, string words, double[] kept, double[] added, double least, double most, Func<double, double> size) =>
        new(kind, words, [.. kept.Select((share, i) => (share * (1 - _fixed[i])) + _fixed[i])], [.. added.Select((share, i) => share * (1 - _fixed[i]))], least, most, size);

    private ListedFaults Listed(SuspectKind kind, string words, IEnumerable<(Design Design, double Size)> faults)
    {
        (double[]? Density, double Size)[] all = [.. faults.Select(fault => (With(fault.Design), fault.Size))];
        (double[]? Density, double Size)[] worked = [.. all.Where(one => one.Density is not null)];
        return new ListedFaults(kind, words, [.. worked.Select(one => Change([.. one.Density!.Select((density, i) => density / _healthy[i])]))], [.. worked.Select(one => one.Size)]) { IsSmooth = true };
    }

    /// <summary>A share of the predicted density before the digital filters as it shows behind them [dB].</summary>
    private double[] Change(double[] share) => [.. share.Select((one, i) => 10 * Math.Log10(Math.Max(1e-30, (one * (1 - _fixed[i])) + _fixed[i])))];

    /// <summary>The density of another design before the digital filters; null where its network has no answer.</summary>
    private double[]? With(Design design, double[]? hertz = null)
    {
        try
        {
            double[] density = PredictedSpectrum.BeforeDigital(design, _gain, hertz ?? _hertz);
            return density.All(double.IsFinite) ? density : null;
        }
        catch (NetworkHasNoAnswer)
        {
            return null;
        }
    }
}
