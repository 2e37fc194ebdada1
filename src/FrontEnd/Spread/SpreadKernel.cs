using System.Numerics;
using FrontEnd.Budgets;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Interference;
using FrontEnd.Networks;

namespace FrontEnd.Spread;

/// <summary>Works out the figures of a group of builds at once: a lane is a build. One to a thread.</summary>
/// <remarks>There are no formulas of the circuit here: it puts the drawn parts into the lanes, calls the budgets' and writes
/// rows.</remarks>
internal sealed class SpreadKernel
{
    /// <summary>Figures in the order of <see cref="Ids"/>.</summary>
    public const int GainMid = 0, NoiseTotal = 1, BoardShare = 2, Enob = 3, BitsNeeded = 4, MainsTotal = 5, SystemCmrr = 6, Recorded = 7,
        Offset = 8, Headroom = 9, PhaseMargin = 10, WorstMargin = 11, Fold = 12, ModulatorFold = 13, FaultCurrent = 14, GroundCurrent = 15,
        SharedFault = 16;

    /// <summary>Ids of the assessment's results, and the least of its headrooms.</summary>
    public static readonly ResultId[] Ids =
    [
        ResultIds.Gain.Mid, ResultIds.Noise.Total, ResultIds.Noise.BoardShare, ResultIds.Converter.Enob, ResultIds.Converter.BitsNeeded,
        ResultIds.Mains.Total, ResultIds.Mains.SystemCmrr,
        ResultIds.Mains.Recorded, ResultIds.Levels.OffsetSurvived, ResultIds.Levels.LeastHeadroom,
        ResultIds.Drive.PhaseMargin, ResultIds.Drive.WorstPhaseMargin, ResultIds.Alias.FoldAttenuation,
        ResultIds.Alias.ModulatorFoldAttenuation,
        ResultIds.Safety.FaultCurrent, ResultIds.Safety.DrivenGroundCurrent, ResultIds.Safety.SharedFaultCurrent,
    ];

    /// <summary>The row behind the figures: the bits needed before they are rounded up to a whole number.</summary>
    private const int BitsUnrounded = 17;

    private static readonly Vector<double> None = new(double.NaN);

    private readonly SpreadSetup _setup;
    private readonly Design _design;
    private readonly DrawnBuilds _drawn;
    private readonly BuildLanes _builds;
    private readonly PathLanes _path;
    private readonly LevelLanes _levels;
    private readonly LoopLanes _loop;
    private readonly double[] _lane = new double[Vector<double>.Count];
    private Vector<double> _gainMid;

    public SpreadKernel(SpreadSetup setup)
    {
        _setup = setup;
        _design = setup.Design;
        _drawn = new DrawnBuilds(setup);
        _builds = _drawn.Lanes;

        // The nominal device has been solved with the check of its residuals, and what is drawn stays near it.
        _path = new PathLanes(setup.Nominal.Path.Model, isChecked: false);
        _levels = new LevelLanes(_design);
        _loop = new LoopLanes(_design, _path.Input);
    }

    /// <summary>Rows for <see cref="Evaluate"/>: the figures in the order of <see cref="Ids"/>, and what <see cref="Walked"/> adds to
    /// them.</summary>
    public static double[][] NewRows(int builds) => [.. Enumerable.Range(0, BitsUnrounded + 1).Select(_ => new double[builds])];

    /// <summary>The row to look for a figure's extremes in: a stepped figure does not tell which way a part moves it, the value before
    /// the step does.</summary>
    public static int Walked(int figure) => figure == BitsNeeded ? BitsUnrounded : figure;

    /// <summary>Fills figures[id][first … first + width − 1] from factors[part][…].</summary>
    public void Evaluate(double[][] factors, double[][] figures, int first)
    {
        _drawn.Put(factors, first);
        _path.Set(_builds);
        _levels.Clear();
        PutNoise(figures, first);
        PutModulatorFold(figures, first);
        PutMains(figures, first);
        PutLevels(figures, first);
        PutSafety(figures, first);
        PutMargins(figures, first);
    }

    private static void Put(double[][] figures, int figure, int first, Vector<double> value) => value.CopyTo(figures[figure], first);

    /// <summary>Gain, noise with folds, bits and fold attenuation: densities at the setup's few frequencies times its weights.</summary>
    private void PutNoise(double[][] figures, int first)
    {
        Vector<double> rest = _builds.ConverterNoise * _builds.ConverterNoise * _setup.WhitePower, excess = default, fold = default;
        for (int i = 0; i < SpreadSetup.BandPoints; i++)
        {
            double hertz = _setup.BandHertz[i];
            _path.Solve(new(hertz));
            Vector<double> density = _path.NodeDensity[_path.Pin];
            rest += density * _setup.BandWeights[i];
            excess += (density * _setup.BandWeights[i]) - ((density - _path.NodeExcess[_path.Pin]) * _setup.BoardWeights[i]);
            AddNodes(i);
            if (i == SpreadSetup.BandPoints / 2)
            {
                _gainMid = _path.Size * _design.Converter.Response(hertz);
            }
        }

        for (int i = 0; i < SpreadSetup.FoldPoints; i++)
        {
            double hertz = _setup.FoldHertz[i];
            _path.Solve(new(hertz));
            rest += _path.NodeDensity[_path.Pin] * _setup.FoldWeights[i];
            if (i == 0)
            {
                fold = _path.Size * _design.Converter.Response(hertz);
            }
        }

        Vector<double> all = rest + (_builds.Step * _builds.Step * (NoiseDensity.Quantisation(1) * _setup.WhitePower));
        Vector<double> noise = Vector.SquareRoot(all) / _gainMid;
        Put(figures, GainMid, first, _gainMid);
        Put(figures, NoiseTotal, first, noise);
        Put(figures, BoardShare, first, TradeConstants.NoisePeakToPeak * Vector.SquareRoot(all - excess) / _gainMid);
        Put(figures, Enob, first, ConverterFigures.EffectiveBits(_builds.FullScale / _gainMid, noise));
        Put(figures, Fold, first, LaneMath.Decibels(_gainMid / fold));
        Vector<double> oneStep = _builds.FullScale * Math.Sqrt(NoiseDensity.Quantisation(1) * _setup.WhitePower) / Vector.SquareRoot(rest);
        for (int lane = 0; lane < Vector<double>.Count; lane++)
        {
            double wanted = ConverterFigures.BitsWanted(oneStep[lane], _design.Requirements.QuantisationRise.Fraction);
            figures[BitsUnrounded][first + lane] = wanted;
            figures[BitsNeeded][first + lane] = ConverterFigures.BitsNeeded(wanted);
        }
    }

    /// <summary>What stands at the nodes at one of the band's points; the noise is summed up as power, its root is taken with the
    /// levels.</summary>
    private void AddNodes(int point)
    {
        for (int node = 0; node < _path.Node.Length; node++)
        {
            AddNode(point, node, _path.Node[node].Magnitude, _path.NodeDensity[node], _path.NodeExcess[node]);
        }

        if (0 < _path.BufferTransfer.Length)
        {
            _path.SolveBuffers(new(_setup.BandHertz[point]));
            for (int buffer = 0; buffer < _path.BufferTransfer.Length; buffer++)
            {
                AddNode(point, _levels.FirstBuffer + buffer, _path.BufferTransfer[buffer].Magnitude, _path.BufferDensity[buffer],
                    _path.BufferExcess[buffer]);
            }
        }
    }

    private void AddNode(int point, int node, Vector<double> size, Vector<double> density, Vector<double> excess)
    {
        _levels.SignalGain[node] = Vector.Max(_levels.SignalGain[node], size * _setup.SignalGainScale[node]);
        _levels.NoiseRms[node] += ((density - excess) * _setup.NodeWeights[point][node]) + (excess * _setup.NodeExcessWeights[point][node]);
    }

    private void PutModulatorFold(double[][] figures, int first)
    {
        if (_design.Converter.Kind != ConverterKind.DeltaSigma)
        {
            Put(figures, ModulatorFold, first, None);
            return;
        }

        double hertz = _design.Converter.ModulatorClock.Hertz - _design.Band.High.Hertz;
        _path.SolveTransfer(new(hertz));
        Put(figures, ModulatorFold, first, LaneMath.Decibels(_gainMid / (_path.Size * _design.Converter.Response(hertz))));
    }

    /// <summary>Every harmonic at the input and at every node, and what of it is recorded where it lands in the band.</summary>
    private void PutMains(double[][] figures, int first)
    {
        Mains mains = _design.Mains;
        double rate = _design.Converter.Rate.Hertz;
        Vector<double> recorded = default;
        foreach (MainsHarmonic harmonic in _setup.Harmonics)
        {
            Vector<double> hertz = new(harmonic.Hertz), share = new(MainsBudget.Share(mains.Harmonics, harmonic.Order)),
                field = new(MainsBudget.FieldShare(mains, harmonic.Order));
            var at = MainsLanes.At(_path.Input, _design, _builds, hertz, share, field);
            _path.Carry(hertz);
            _levels.AddMains(at.CommonMode, at.Difference, at.Drive, at.FirstBuffer, at.SecondBuffer);
            for (int node = 0; node < _path.Node.Length; node++)
            {
                _levels.AddNodeMains(node, at.Total, _path.Node[node].Magnitude);
            }

            if (harmonic.Order == 1)
            {
                Put(figures, MainsTotal, first, at.Total);
                Put(figures, SystemCmrr, first,
                    LaneMath.Decibels(MainsPartsLanes.At(_path.Input, _builds, hertz, share, at).SystemCmrr(at)));
            }

            if (harmonic.InBand)
            {
                recorded += Vector.Max(
                    RecordedAt(harmonic.Hertz * (1 + mains.Deviation.Fraction)),
                    RecordedAt(harmonic.Hertz * (1 - mains.Deviation.Fraction)));
            }

            Vector<double> RecordedAt(double side)
            {
                Vector<double> total = MainsLanes.At(_path.Input, _design, _builds, new(side), share, field).Total;
                _path.Carry(new(side));
                return MainsBudget.RecordedAt(
                    total, _path.Size * _design.Converter.Response(side) / _gainMid, _setup.Nominal.Digital, side, rate);
            }
        }

        Put(figures, Recorded, first, recorded);
    }

    /// <summary>The largest offset that no node clips at, and the least headroom.</summary>
    private void PutLevels(double[][] figures, int first)
    {
        for (int node = 0; node < _levels.NoiseRms.Length; node++)
        {
            _levels.NoiseRms[node] = Vector.SquareRoot(_levels.NoiseRms[node]);
        }

        _levels.Add(_builds, DirectLanes.At(_path.Input, _design, _builds));
        Vector<double> survived = _levels.OffsetSurvived();
        Put(figures, Offset, first,
            Vector.ConditionalSelect(Vector.Equals(survived, new Vector<double>(double.PositiveInfinity)), None, survived));
        Put(figures, Headroom, first, LaneMath.Decibels(_levels.LeastHeadroom()));
    }

    private void PutSafety(double[][] figures, int first)
    {
        double highest = _design.Supply.Highest.Volts;
        var fitted = SafetyLanes.Of(_design, _builds);

        // Without a resistor there is no bound: infinite, which fails.
        Put(figures, FaultCurrent, first, fitted.FaultCurrent(highest));
        Put(figures, GroundCurrent, first, _design.GroundIsDriven && fitted.Ground is { } ground
            ? SafetyLanes.Current(highest, ground) : None);
        Put(figures, SharedFault, first, fitted.SharedFault(_design) ?? None);
    }

    /// <summary>The loop's phase margins, body and electrodes as each figure wants them: at their nominal values, and in the surroundings
    /// in which the nominal device's margin is least.</summary>
    private void PutMargins(double[][] figures, int first)
    {
        Span<double> nominal = figures[PhaseMargin].AsSpan(first, Vector<double>.Count),
            least = figures[WorstMargin].AsSpan(first, Vector<double>.Count);
        nominal.Fill(double.NaN);
        least.Fill(double.NaN);
        if (_setup.Nominal.Drive is null)
        {
            return;
        }

        _path.Input.Surround(_drawn.Nominal);
        if (_setup.Loop is { } point)
        {
            _loop.Margin(point, nominal);
        }

        foreach (LoopPoint worst in _setup.WorstLoops)
        {
            _loop.Margin(worst, _lane);
            for (int lane = 0; lane < _lane.Length; lane++)
            {
                least[lane] = least[lane] <= _lane[lane] ? least[lane] : _lane[lane];
            }
        }
    }
}
