using System.Numerics;
using FrontEnd.Budgets;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Identity;

namespace FrontEnd.Spread;

/// <summary>Works out the figures of a group of builds at once: a lane is a build. One to a thread.</summary>
/// <remarks>
/// It goes through the frequencies and solves the stages at each of them once. In front of the stages the builds stand in up to three
/// surroundings (<see cref="BuildFigures"/>), each with an input network of its own. The driven ground's loop is looked at with body and
/// electrodes as each figure wants them, and so the same in all three.
/// </remarks>
internal sealed class SpreadKernel
{
    /// <summary>Figures in the order of <see cref="Ids"/>.</summary>
    public const int GainMid = 0, NoiseTotal = 1, BoardShare = 2, Enob = 3, BitsNeeded = 4, MainsTotal = 5, SystemCmrr = 6, Recorded = 7,
        Offset = 8, Headroom = 9, PhaseMargin = 10, WorstMargin = 11, Fold = 12, ModulatorFold = 13, FaultCurrent = 14, GroundCurrent = 15,
        SharedFault = 16;

    /// <summary>Behind the figures: the bits needed before they are rounded up to a whole number.</summary>
    public const int BitsUnrounded = 17;

    /// <summary>The figures and what <see cref="Walked"/> adds to them.</summary>
    public const int Rows = BitsUnrounded + 1;

    /// <summary>The surroundings: as drawn; electrodes and leads at their nominal values; everything outside the board at its
    /// nominal value.</summary>
    public const int Drawn = 0, Inside = 1, Board = 2, Surroundings = 3;

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

    private readonly SpreadSetup _setup;
    private readonly Design _design;
    private readonly BuildFigures[] _builds;
    private readonly SpreadLimit[] _limits;
    private readonly InputLanes _loopInput;
    private readonly LoopLanes _loop;
    private readonly double[] _degrees = new double[Vector<double>.Count], _lane = new double[Vector<double>.Count];
    private SpreadNeeds _any;

    /// <param name="setup">What all builds share.</param>
    /// <param name="surroundings">How many of the surroundings are worked out, <see cref="Drawn"/> first.</param>
    /// <param name="limits">Limits of which one missed is enough: builds without what electrodes and leads do that have missed one are not
    /// worked out any further.</param>
    public SpreadKernel(SpreadSetup setup, int surroundings = 1, params SpreadLimit[] limits)
    {
        _setup = setup;
        _design = setup.Design;
        _limits = limits;
        _builds = new BuildFigures[surroundings];
        _builds[Drawn] = new BuildFigures(setup, null);
        if (surroundings == Surroundings)
        {
            _builds[Inside] = new BuildFigures(setup, _builds[Drawn], SpreadPlace.Electrodes, SpreadPlace.Leads);
            _builds[Board] =
                new BuildFigures(setup, _builds[Drawn], SpreadPlace.Electrodes, SpreadPlace.Leads, SpreadPlace.Surroundings);
        }

        _loopInput = new InputLanes(_design, setup.Nominal.Path.Model.Input, isChecked: false);
        _loop = new LoopLanes(_design, _loopInput);
    }

    /// <summary>The row to look for a figure's extremes in: a stepped figure does not tell which way a part moves it, the value before
    /// the step does.</summary>
    public static int Walked(int figure) => figure == BitsNeeded ? BitsUnrounded : figure;

    /// <summary>What must be solved for one figure.</summary>
    public static SpreadNeeds Needs(int figure) => figure switch
    {
        GainMid => SpreadNeeds.Middle,
        NoiseTotal or BoardShare or Enob or BitsNeeded => SpreadNeeds.Noise,
        MainsTotal => SpreadNeeds.Mains,
        SystemCmrr => SpreadNeeds.Mains | SpreadNeeds.Rejection,
        Recorded => SpreadNeeds.Middle | SpreadNeeds.Recorded,
        Offset or Headroom => SpreadNeeds.Levels,
        PhaseMargin => SpreadNeeds.Margin,
        WorstMargin => SpreadNeeds.WorstMargin,
        Fold => SpreadNeeds.Middle | SpreadNeeds.Fold,
        ModulatorFold => SpreadNeeds.Middle | SpreadNeeds.ModulatorFold,
        _ => SpreadNeeds.None,
    };

    /// <summary>A figure of the builds last evaluated, NaN for what they have none of or what was not asked for.</summary>
    public Vector<double> Figure(int surrounding, int figure) => _builds[surrounding].Values[figure];

    /// <summary>Works out builds <paramref name="first"/> … of factors[part][…].</summary>
    /// <param name="factors">Value over nominal value.</param>
    /// <param name="first">The first lane's build.</param>
    /// <param name="needs">What is asked for of the builds as they are drawn.</param>
    /// <param name="needsOfOthers">What is asked for in the other surroundings.</param>
    public void Evaluate(double[][] factors, int first, SpreadNeeds needs, SpreadNeeds needsOfOthers = SpreadNeeds.None)
    {
        for (int i = 0; i < _builds.Length; i++)
        {
            _builds[i].Put(factors, first, i == Drawn ? needs : needsOfOthers);
            _builds[i].PutSafety();
        }

        _any = 1 < _builds.Length ? needs | needsOfOthers : needs;
        PutMargins();
        GiveUpLost();
        AddBand();
        AddFold();
        foreach (BuildFigures builds in _builds)
        {
            builds.PutNoise();
        }

        GiveUpLost();
        AddMains();
        foreach (BuildFigures builds in _builds)
        {
            builds.PutRecorded();
            builds.PutLevels();
        }
    }

    /// <summary>Of the builds without what electrodes and leads do nothing is kept but whether all limits are met: where every lane has
    /// missed one, the rest is not asked for.</summary>
    private void GiveUpLost()
    {
        if (_builds.Length < Surroundings || _limits.Length == 0)
        {
            return;
        }

        for (int lane = 0; lane < Vector<double>.Count; lane++)
        {
            if (!HasMissed(lane))
            {
                return;
            }
        }

        _builds[Inside].AskNoMore();

        bool HasMissed(int lane)
        {
            foreach (SpreadLimit limit in _limits)
            {
                double value = _builds[Inside].Values[limit.Figure][lane];
                if (!double.IsNaN(value) && !limit.IsMet(value))
                {
                    return true;
                }
            }

            return false;
        }
    }

    private bool Any(SpreadNeeds needs) => (_any & needs) != SpreadNeeds.None;

    private void SolveStages(double hertz, bool withNoise) => _builds[Drawn].Path.SolveStages(new(hertz), withNoise);

    private void AddBand()
    {
        const SpreadNeeds Whole = SpreadNeeds.Noise | SpreadNeeds.Levels;
        for (int point = 0; point < SpreadSetup.BandPoints; point++)
        {
            bool isMiddle = point == SpreadSetup.Middle;
            if (!Any(Whole) && !(isMiddle && Any(SpreadNeeds.Middle)))
            {
                continue;
            }

            SolveStages(_setup.BandHertz[point], Any(Whole));
            foreach (BuildFigures builds in _builds)
            {
                if (builds.Wants(Whole))
                {
                    builds.AddBand(point);
                }
                else if (isMiddle && builds.Wants(SpreadNeeds.Middle))
                {
                    builds.AddMiddle();
                }
            }
        }
    }

    private void AddFold()
    {
        for (int point = 0; point < SpreadSetup.FoldPoints; point++)
        {
            SpreadNeeds wanted = SpreadNeeds.Noise | (point == 0 ? SpreadNeeds.Fold : SpreadNeeds.None);
            if (!Any(wanted))
            {
                continue;
            }

            SolveStages(_setup.FoldHertz[point], withNoise: true);
            foreach (BuildFigures builds in _builds)
            {
                if (builds.Wants(wanted))
                {
                    builds.AddFold(point);
                }
            }
        }

        if (_design.Converter.Kind != ConverterKind.DeltaSigma || !Any(SpreadNeeds.ModulatorFold))
        {
            return;
        }

        double hertz = _design.Converter.ModulatorClock.Hertz - _design.Band.High.Hertz;
        SolveStages(hertz, withNoise: false);
        foreach (BuildFigures builds in _builds)
        {
            if (builds.Wants(SpreadNeeds.ModulatorFold))
            {
                builds.PutModulatorFold(hertz);
            }
        }
    }

    /// <summary>Every harmonic at the input and at every node, and what of it is recorded where it lands in the band.</summary>
    private void AddMains()
    {
        foreach (MainsHarmonic harmonic in _setup.Harmonics)
        {
            if (Any(SpreadNeeds.Levels))
            {
                SolveStages(harmonic.Hertz, withNoise: false);
            }

            foreach (BuildFigures builds in _builds)
            {
                if (builds.Wants(SpreadNeeds.Levels | (harmonic.Order == 1 ? SpreadNeeds.Mains : SpreadNeeds.None)))
                {
                    builds.AddHarmonic(harmonic);
                }
            }

            if (harmonic.InBand && Any(SpreadNeeds.Recorded))
            {
                AddRecorded(harmonic);
            }
        }
    }

    private void AddRecorded(MainsHarmonic harmonic)
    {
        double off = _design.Mains.Deviation.Fraction;
        ReadOnlySpan<double> sides = [harmonic.Hertz * (1 + off), harmonic.Hertz * (1 - off)];
        foreach (double side in sides)
        {
            SolveStages(side, withNoise: false);
            foreach (BuildFigures builds in _builds)
            {
                if (builds.Wants(SpreadNeeds.Recorded))
                {
                    builds.AddSide(harmonic, side);
                }
            }
        }

        foreach (BuildFigures builds in _builds)
        {
            builds.AddRecorded();
        }
    }

    /// <summary>The loop's phase margins, body and electrodes as each figure wants them: at their nominal values, and in the surroundings
    /// in which the nominal device's margin is least.</summary>
    private void PutMargins()
    {
        if (_setup.Nominal.Drive is null || !Any(SpreadNeeds.Margin | SpreadNeeds.WorstMargin))
        {
            return;
        }

        _loopInput.Set(_builds[Drawn].Lanes);
        _loopInput.Surround(_builds[Drawn].Nominal);
        if (_setup.Loop is { } point && Any(SpreadNeeds.Margin))
        {
            _loop.Margin(point, _lane);
            Put(PhaseMargin, new(_lane));
        }

        if (_setup.WorstLoops.Count == 0 || !Any(SpreadNeeds.WorstMargin))
        {
            return;
        }

        Array.Fill(_degrees, double.NaN);
        foreach (LoopPoint worst in _setup.WorstLoops)
        {
            _loop.Margin(worst, _lane);
            for (int lane = 0; lane < _lane.Length; lane++)
            {
                _degrees[lane] = _degrees[lane] <= _lane[lane] ? _degrees[lane] : _lane[lane];
            }
        }

        Put(WorstMargin, new(_degrees));

        void Put(int figure, Vector<double> value)
        {
            foreach (BuildFigures builds in _builds)
            {
                builds.Values[figure] = value;
            }
        }
    }
}
