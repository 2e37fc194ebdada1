using System.Numerics;
using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Interference;
using FrontEnd.Networks;

namespace FrontEnd.Spread;

/// <summary>The figures of a group of builds in one surrounding: as they are drawn, or with what stands in some places at its nominal
/// value. A lane is a build.</summary>
/// <remarks>There are no formulas of the circuit here: it puts the drawn parts into the lanes, calls the budgets' and keeps what they
/// say. The frequencies, and the stages at them, are <see cref="SpreadKernel"/>'s, since the stages are the same in every
/// surrounding.</remarks>
internal sealed class BuildFigures
{
    private static readonly Vector<double> None = new(double.NaN);

    private readonly SpreadSetup _setup;
    private readonly Design _design;
    private readonly DrawnBuilds _drawn;
    private readonly BuildLanes _builds;
    private readonly LevelLanes _levels;
    private readonly bool _hasOwnStages;
    private Vector<double> _gainMid, _rest, _excess, _fold, _side, _recorded;
    private SpreadNeeds _needs;

    /// <param name="setup">What all builds share.</param>
    /// <param name="first">Another surrounding of the same builds, whose stages serve this one too; null for the first.</param>
    /// <param name="held">Places whose parts stay at their nominal values.</param>
    public BuildFigures(SpreadSetup setup, BuildFigures? first, params ReadOnlySpan<SpreadPlace> held)
    {
        _setup = setup;
        _design = setup.Design;
        _drawn = new DrawnBuilds(setup, held);
        _builds = _drawn.Lanes;
        _hasOwnStages = first is null;

        // The nominal device has been solved with the check of its residuals, and what is drawn stays near it.
        Path = new PathLanes(setup.Nominal.Path.Model, isChecked: false, first?.Path);
        _levels = new LevelLanes(_design);
    }

    public PathLanes Path { get; }

    /// <summary>The nominal device on all lanes.</summary>
    public BuildLanes Nominal => _drawn.Nominal;

    /// <summary>The figures in the order of <see cref="SpreadKernel.Ids"/>, and what <see cref="SpreadKernel.Walked"/> adds to them; NaN for
    /// what a device has none of and for what was not asked for.</summary>
    public Vector<double>[] Values { get; } = new Vector<double>[SpreadKernel.Rows];

    /// <summary>The builds last put in.</summary>
    public BuildLanes Lanes => _builds;

    /// <summary>Leaves out what has not been worked out yet.</summary>
    public void AskNoMore() => _needs = SpreadNeeds.None;

    /// <summary>True where one of these is asked for.</summary>
    public bool Wants(SpreadNeeds needs) => (_needs & needs) != SpreadNeeds.None;

    /// <summary>Puts in builds <paramref name="first"/> … and forgets the last ones.</summary>
    public void Put(double[][] factors, int first, SpreadNeeds needs)
    {
        _needs = needs;
        _drawn.Put(factors, first);
        if (_hasOwnStages)
        {
            Path.Set(_builds);
        }
        else
        {
            Path.SetInput(_builds);
        }

        _levels.Clear();
        Array.Fill(Values, None);
        _rest = _builds.ConverterNoise * _builds.ConverterNoise * _setup.WhitePower;
        (_excess, _fold, _side, _recorded) = (default, default, default, default);
    }

    /// <summary>The middle of the band alone, its stages being solved.</summary>
    public void AddMiddle()
    {
        Vector<double> hertz = new(_setup.BandHertz[SpreadSetup.Middle]);
        Path.Input.Factor(hertz);
        Path.Input.SolveDifference();
        Path.Carry(hertz);
        KeepMiddle();
    }

    /// <summary>One of the band's points, its stages being solved with their noise: the density times the point's weight.</summary>
    public void AddBand(int point)
    {
        Path.Join(new(_setup.BandHertz[point]));
        Vector<double> density = Path.NodeDensity[Path.Pin];
        _rest += density * _setup.BandWeights[point];
        _excess += (density * _setup.BandWeights[point]) - ((density - Path.NodeExcess[Path.Pin]) * _setup.BoardWeights[point]);
        if (point == SpreadSetup.Middle)
        {
            KeepMiddle();
        }

        if (Wants(SpreadNeeds.Levels))
        {
            AddNodes(point);
        }
    }

    /// <summary>One of the points of what folds, its stages being solved with their noise.</summary>
    public void AddFold(int point)
    {
        double hertz = _setup.FoldHertz[point];
        Path.Join(new(hertz));
        _rest += Path.NodeDensity[Path.Pin] * _setup.FoldWeights[point];
        if (point == 0)
        {
            _fold = Path.Size * _design.Converter.Response(hertz);
        }
    }

    /// <summary>Fold, noise with folds, and bits, from what was added.</summary>
    public void PutNoise()
    {
        if (Wants(SpreadNeeds.Fold))
        {
            Values[SpreadKernel.Fold] = LaneMath.Decibels(_gainMid / _fold);
        }

        if (!Wants(SpreadNeeds.Noise))
        {
            return;
        }

        Vector<double> all = _rest + (_builds.Step * _builds.Step * (NoiseDensity.Quantisation(1) * _setup.WhitePower));
        Vector<double> noise = Vector.SquareRoot(all) / _gainMid;
        Values[SpreadKernel.NoiseTotal] = noise;
        Values[SpreadKernel.BoardShare] = TradeConstants.NoisePeakToPeak * Vector.SquareRoot(all - _excess) / _gainMid;
        Values[SpreadKernel.Enob] = ConverterFigures.EffectiveBits(_builds.FullScale / _gainMid, noise);
        Vector<double> oneStep = _builds.FullScale * Math.Sqrt(NoiseDensity.Quantisation(1) * _setup.WhitePower) / Vector.SquareRoot(_rest);
        Span<double> wanted = stackalloc double[Vector<double>.Count], needed = stackalloc double[Vector<double>.Count];
        for (int lane = 0; lane < wanted.Length; lane++)
        {
            wanted[lane] = ConverterFigures.BitsWanted(oneStep[lane], _design.Requirements.QuantisationRise.Fraction);
            needed[lane] = ConverterFigures.BitsNeeded(wanted[lane]);
        }

        Values[SpreadKernel.BitsUnrounded] = new(wanted);
        Values[SpreadKernel.BitsNeeded] = new(needed);
    }

    /// <summary>What the modulator's first fold is attenuated by, the stages being solved there.</summary>
    public void PutModulatorFold(double hertz)
    {
        Path.Input.Factor(new(hertz));
        Path.Input.SolveDifference();
        Path.Carry(new(hertz));
        Values[SpreadKernel.ModulatorFold] = LaneMath.Decibels(_gainMid / (Path.Size * _design.Converter.Response(hertz)));
    }

    /// <summary>A harmonic at the input, and at every node where the stages are solved there.</summary>
    public void AddHarmonic(MainsHarmonic harmonic)
    {
        (Vector<double> hertz, Vector<double> share, Vector<double> field) = At(harmonic);
        bool withLevels = Wants(SpreadNeeds.Levels);
        var at = MainsLanes.At(Path.Input, _design, _builds, hertz, share, field, withLevels);
        if (withLevels)
        {
            Path.Carry(hertz);
            _levels.AddMains(at.CommonMode, at.Difference, at.Drive, at.FirstBuffer, at.SecondBuffer);
            for (int node = 0; node < Path.Node.Length; node++)
            {
                _levels.AddNodeMains(node, at.Total, Path.Node[node].Magnitude);
            }
        }

        if (harmonic.Order == 1)
        {
            Values[SpreadKernel.MainsTotal] = at.Total;
            if (Wants(SpreadNeeds.Rejection))
            {
                Values[SpreadKernel.SystemCmrr] =
                    LaneMath.Decibels(MainsPartsLanes.At(Path.Input, _builds, hertz, share, at).SystemCmrr(at));
            }
        }
    }

    /// <summary>What is recorded of a harmonic that is off its frequency, the stages being solved there: the larger side counts.</summary>
    public void AddSide(MainsHarmonic harmonic, double hertz)
    {
        (_, Vector<double> share, Vector<double> field) = At(harmonic);
        Vector<double> total = MainsLanes.At(Path.Input, _design, _builds, new(hertz), share, field, withOutputs: false).Total;
        Path.Carry(new(hertz));
        _side = Vector.Max(_side, MainsBudget.RecordedAt(
            total, Path.Size * _design.Converter.Response(hertz) / _gainMid, _setup.Nominal.Digital, hertz, _design.Converter.Rate.Hertz));
    }

    /// <summary>Adds the harmonic whose sides were added.</summary>
    public void AddRecorded() => (_recorded, _side) = (_recorded + _side, default);

    public void PutRecorded() => Values[SpreadKernel.Recorded] = Wants(SpreadNeeds.Recorded) ? _recorded : None;

    /// <summary>The largest offset that no node clips at, and the least headroom.</summary>
    public void PutLevels()
    {
        if (!Wants(SpreadNeeds.Levels))
        {
            return;
        }

        for (int node = 0; node < _levels.NoiseRms.Length; node++)
        {
            _levels.NoiseRms[node] = Vector.SquareRoot(_levels.NoiseRms[node]);
        }

        _levels.Add(_builds, DirectLanes.At(Path.Input, _design, _builds));
        Vector<double> survived = _levels.OffsetSurvived();
        Values[SpreadKernel.Offset] =
            Vector.ConditionalSelect(Vector.Equals(survived, new Vector<double>(double.PositiveInfinity)), None, survived);
        Values[SpreadKernel.Headroom] = LaneMath.Decibels(_levels.LeastHeadroom());
    }

    public void PutSafety()
    {
        double highest = _design.Supply.Highest.Volts;
        var fitted = SafetyLanes.Of(_design, _builds);

        // Without a resistor there is no bound: infinite, which fails.
        Values[SpreadKernel.FaultCurrent] = fitted.FaultCurrent(highest);
        Values[SpreadKernel.GroundCurrent] =
            _design.GroundIsDriven && fitted.Ground is { } ground ? SafetyLanes.Current(highest, ground) : None;
        Values[SpreadKernel.SharedFault] = fitted.SharedFault(_design) ?? None;
    }

    private (Vector<double> Hertz, Vector<double> Share, Vector<double> Field) At(MainsHarmonic harmonic)
    {
        Mains mains = _design.Mains;
        return (new(harmonic.Hertz), new(MainsBudget.Share(mains.Harmonics, harmonic.Order)),
            new(MainsBudget.FieldShare(mains, harmonic.Order)));
    }

    private void KeepMiddle()
    {
        _gainMid = Path.Size * _design.Converter.Response(_setup.BandHertz[SpreadSetup.Middle]);
        Values[SpreadKernel.GainMid] = _gainMid;
    }

    /// <summary>What stands at the nodes at one of the band's points; the noise is summed up as power, its root is taken with the
    /// levels.</summary>
    private void AddNodes(int point)
    {
        for (int node = 0; node < Path.Node.Length; node++)
        {
            AddNode(point, node, Path.Node[node].Magnitude, Path.NodeDensity[node], Path.NodeExcess[node]);
        }

        if (0 < Path.BufferTransfer.Length)
        {
            Path.SolveBuffers(new(_setup.BandHertz[point]));
            for (int buffer = 0; buffer < Path.BufferTransfer.Length; buffer++)
            {
                AddNode(point, _levels.FirstBuffer + buffer, Path.BufferTransfer[buffer].Magnitude, Path.BufferDensity[buffer],
                    Path.BufferExcess[buffer]);
            }
        }
    }

    private void AddNode(int point, int node, Vector<double> size, Vector<double> density, Vector<double> excess)
    {
        _levels.SignalGain[node] = Vector.Max(_levels.SignalGain[node], size * _setup.SignalGainScale[node]);
        _levels.NoiseRms[node] += ((density - excess) * _setup.NodeWeights[point][node]) + (excess * _setup.NodeExcessWeights[point][node]);
    }
}
