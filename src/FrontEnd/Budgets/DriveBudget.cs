using System.Numerics;
using FrontEnd.Designs;
using FrontEnd.Inputs;
using FrontEnd.Networks;

namespace FrontEnd.Budgets;

/// <summary>One device's driven ground: margin as it stands and over its range of surroundings; see <see cref="LoopLanes"/> for the
/// loop.</summary>
internal sealed class DriveBudget
{
    private const int CornerPoints = 9;

    /// <summary>Common to earth of a device that is tied to earth [F].</summary>
    internal const double EarthedFarads = 1e-6;

    private readonly Design _design;
    private readonly BuildLanes _builds;
    private readonly InputLanes _input;
    private readonly GroundDriveGain _gain;
    private readonly LoopSurroundings _nominal;
    private readonly double[] _group = new double[Vector<double>.Count];
    private readonly double[] _body = new double[Vector<double>.Count];
    private readonly double[] _common = new double[Vector<double>.Count];
    private readonly double[] _factor = new double[Vector<double>.Count];

    /// <param name="model">The path's networks.</param>
    /// <param name="built">The device's own parts.</param>
    /// <param name="surroundings">The mains around it; null for the design's own.</param>
    public DriveBudget(PathModel model, BuiltParts built, Interference.Mains? surroundings = null)
    {
        _design = model.Design;
        _builds = new BuildLanes(model, built, surroundings);
        _input = new InputLanes(_design, model.Input, isChecked: false, model.Input.BodyToEarthElement, model.Input.CommonToEarthElement);
        _input.Set(_builds);
        _gain = new GroundDriveGain(_design);
        _nominal = new(_builds.BodyToEarth[0], _builds.CommonToEarth[0], 1);
        (UnityGainHertz, PhaseMarginDegrees) = Margins([_nominal])[0];
        GainAtMains = LoopAt(_nominal, [_design.Mains.Frequency.Hertz])[0].Magnitude;
        FindWorst();
    }

    /// <summary>Highest frequency at which |T| = 1 [Hz]; null where T stays below 1.</summary>
    public double? UnityGainHertz { get; }

    /// <summary>180° + arg T there.</summary>
    public double? PhaseMarginDegrees { get; }

    /// <summary>|T| at the mains frequency.</summary>
    public double GainAtMains { get; }

    /// <summary>Least phase margin over body capacitance, electrode resistance, battery and earthed; null where T nowhere reaches
    /// 1.</summary>
    public double? WorstPhaseMargin { get; private set; }

    /// <summary>Where the least margin is found.</summary>
    public LoopSurroundings WorstCase { get; private set; }

    /// <summary>Every surrounding that was tried and in which |T| reaches 1, the least margin first: the surrounding, its highest
    /// crossing of 1 and the margin there.</summary>
    public IReadOnlyList<(LoopSurroundings Surroundings, double UnityGainHertz, double MarginDegrees)> Tried { get; private set; } = [];

    /// <summary>T at given frequencies for the device as it stands.</summary>
    public Complex[] LoopAt(double[] hertz) => LoopAt(_nominal, hertz);

    /// <summary>The loop as the device stands; null where its gain stays below 1.</summary>
    public LoopPoint? Point => UnityGainHertz is { } unity ? PointOf(_nominal, unity, PhaseMarginDegrees!.Value) : null;

    /// <summary>The loop in the surroundings in which the margin is least, the least first.</summary>
    /// <param name="count">Greatest number of surroundings.</param>
    public IReadOnlyList<LoopPoint> LeastPoints(int count) =>
        [.. Tried.Take(count).Select(tried => PointOf(tried.Surroundings, tried.UnityGainHertz, tried.MarginDegrees))];

    private LoopPoint PointOf(LoopSurroundings surroundings, double unity, double margin) =>
        new(surroundings, unity, margin, LoopAt(surroundings, [unity])[0]);

    private Complex[] LoopAt(LoopSurroundings surroundings, double[] hertz)
    {
        double[] re = new double[hertz.Length], im = new double[hertz.Length];
        Feedback([surroundings], new int[hertz.Length], hertz, re, im);
        return [.. hertz.Select((f, i) => new Complex(re[i], im[i]) * _gain.At(f))];
    }

    /// <summary>9 × 9 logarithmic points over 100 pF…1 nF and 1 kΩ…1 MΩ (the ground electrode's dc resistance; all three scaled
    /// together), battery and earthed.</summary>
    private void FindWorst()
    {
        double resistance = Math.Max(1e-3, _design.Electrodes.Ground!.DcResistance.Ohms);
        var lanes = new List<LoopSurroundings>();
        foreach (double common in new[] { _design.Mains.AmplifierToEarth.Farads, EarthedFarads })
        {
            for (int i = 0; i < CornerPoints; i++)
            {
                for (int j = 0; j < CornerPoints; j++)
                {
                    lanes.Add(new LoopSurroundings(100e-12 * Math.Pow(10, i / 8.0), common, 1e3 * Math.Pow(1000, j / 8.0) / resistance));
                }
            }
        }

        (double? Unity, double? Margin)[] margins = Margins([.. lanes]);
        Tried = [.. lanes.Zip(margins).Where(pair => pair.Second.Margin is not null).Select(
            pair => (pair.First, pair.Second.Unity!.Value, pair.Second.Margin!.Value)).OrderBy(one => one.Item3)];
        if (Tried is [var least, ..])
        {
            (WorstCase, WorstPhaseMargin) = (least.Surroundings, least.MarginDegrees);
        }
    }

    /// <summary>Highest unity-gain frequency and phase margin of many surroundings at once.</summary>
    private (double? Unity, double? Margin)[] Margins(LoopSurroundings[] lanes)
    {
        // |T| <= |K|·|β| and a passive network's β exceeds 1 little if at all, so the highest crossing lies below twice f_u.
        const int PointsPerDecade = 3, Decades = 4, Points = (PointsPerDecade * Decades) + 1;
        double high = 2 * _design.GroundDrive.UnityGainFrequency.Hertz;
        var grid = new double[Points];
        var gain = new double[Points];
        for (int i = 0; i < Points; i++)
        {
            grid[i] = high * Math.Pow(10, (i + 1.0 - Points) / PointsPerDecade);
            Complex k = _gain.At(grid[i]);
            gain[i] = (k.Real * k.Real) + (k.Imaginary * k.Imaginary);
        }

        var lane = new int[lanes.Length * Points];
        var hertz = new double[lane.Length];
        for (int i = 0; i < lane.Length; i++)
        {
            (lane[i], hertz[i]) = (i / Points, grid[i % Points]);
        }

        double[] re = new double[lane.Length], im = new double[lane.Length];
        Feedback(lanes, lane, hertz, re, im);
        var brackets = new Bracket?[lanes.Length];
        for (int i = 0; i < lanes.Length; i++)
        {
            brackets[i] = HighestCrossing(grid, gain, re.AsSpan(i * Points, Points), im.AsSpan(i * Points, Points));
        }

        Narrow(lanes, brackets);
        return [.. brackets.Select(bracket => bracket is { } b ? (b.Best, Margin(b)) : ((double?)null, (double?)null))];

        double Margin(Bracket b) => 180 + ((b.PhaseAtBest + _gain.Phase(b.Best)) * 180 / Math.PI);
    }

    /// <summary>An interval of frequency in which |T| falls through 1, with β and its followed phase at its first lower end.</summary>
    private sealed class Bracket
    {
        public double Low { get; set; }

        public double High { get; set; }

        /// <summary>ln|T| at the ends.</summary>
        public double ValueLow { get; set; }

        public double ValueHigh { get; set; }

        public Complex Anchor { get; init; }

        public double Phase { get; init; }

        public double Best { get; set; }

        public double PhaseAtBest { get; set; }

        /// <summary>Which end the last round moved: the other end's value is halved when the same one moves twice (Illinois).</summary>
        public int LastMoved { get; set; }
    }

    private static Bracket? HighestCrossing(double[] grid, double[] gainSquared, ReadOnlySpan<double> re, ReadOnlySpan<double> im)
    {
        for (int i = grid.Length - 1; 1 <= i; i--)
        {
            double above = gainSquared[i] * ((re[i] * re[i]) + (im[i] * im[i])),
                below = gainSquared[i - 1] * ((re[i - 1] * re[i - 1]) + (im[i - 1] * im[i - 1]));
            if (above < 1 && 1 <= below)
            {
                // Follow β's phase from the lowest point; a third of a decade turns it by far less than half a turn.
                double phase = Math.Atan2(im[0], re[0]);
                for (int j = 1; j < i; j++)
                {
                    phase += Math.Atan2((im[j] * re[j - 1]) - (re[j] * im[j - 1]), (re[j] * re[j - 1]) + (im[j] * im[j - 1]));
                }

                return new Bracket
                {
                    Low = grid[i - 1],
                    High = grid[i],
                    ValueLow = Math.Log(below) / 2,
                    ValueHigh = Math.Log(above) / 2,
                    Anchor = new Complex(re[i - 1], im[i - 1]),
                    Phase = phase,
                    Best = grid[i - 1],
                    PhaseAtBest = phase,
                };
            }
        }

        return null;
    }

    /// <summary>Regula falsi (Illinois) on ln|T| against ln f, all lanes together, to 1e-10.</summary>
    private void Narrow(LoopSurroundings[] lanes, Bracket?[] brackets)
    {
        var open = new List<int>();
        for (int i = 0; i < lanes.Length; i++)
        {
            if (brackets[i] is not null)
            {
                open.Add(i);
            }
        }

        double[] hertz = new double[open.Count], re = new double[open.Count], im = new double[open.Count];
        var lane = new int[open.Count];
        for (int round = 0; round < 40 && open.Count != 0; round++)
        {
            for (int i = 0; i < open.Count; i++)
            {
                Bracket b = brackets[open[i]]!;
                lane[i] = open[i];
                hertz[i] = b.Low * Math.Pow(b.High / b.Low, b.ValueLow / (b.ValueLow - b.ValueHigh));
            }

            Feedback(lanes, lane.AsSpan(0, open.Count), hertz.AsSpan(0, open.Count), re, im);
            int kept = 0;
            for (int i = 0; i < open.Count; i++)
            {
                Bracket b = brackets[open[i]]!;
                Complex k = _gain.At(hertz[i]);
                double value = Math.Log(((re[i] * re[i]) + (im[i] * im[i])) * ((k.Real * k.Real) + (k.Imaginary * k.Imaginary))) / 2;
                b.Best = hertz[i];
                b.PhaseAtBest = b.Phase + (new Complex(re[i], im[i]) / b.Anchor).Phase;
                int moved = value < 0 ? 1 : -1;
                if (value < 0)
                {
                    (b.High, b.ValueHigh) = (hertz[i], value);
                    b.ValueLow = b.LastMoved == moved ? b.ValueLow / 2 : b.ValueLow;
                }
                else
                {
                    (b.Low, b.ValueLow) = (hertz[i], value);
                    b.ValueHigh = b.LastMoved == moved ? b.ValueHigh / 2 : b.ValueHigh;
                }

                b.LastMoved = moved;
                if (1e-10 < Math.Abs(value))
                {
                    open[kept++] = open[i];
                }
            }

            open.RemoveRange(kept, open.Count - kept);
        }
    }

    /// <summary>β of the surroundings <paramref name="lane"/> points to, at the frequencies beside them.</summary>
    private void Feedback(LoopSurroundings[] lanes, ReadOnlySpan<int> lane, ReadOnlySpan<double> hertz, Span<double> re, Span<double> im)
    {
        for (int first = 0; first < hertz.Length; first += Vector<double>.Count)
        {
            for (int i = 0; i < Vector<double>.Count; i++)
            {
                int at = Math.Min(first + i, hertz.Length - 1);
                _group[i] = hertz[at];
                (_body[i], _common[i], _factor[i]) = lanes[lane[at]];
            }

            var factor = new Vector<double>(_factor);
            _input.Surround(new Vector<double>(_body), new Vector<double>(_common));
            _input.SetElectrodes(factor * _builds.ActiveFactor, factor * _builds.ReferenceFactor, factor * _builds.GroundFactor);
            _input.Factor(new Vector<double>(_group));
            (ComplexLanes mean, ComplexLanes drive) = _input.SolveDrive();
            ComplexLanes beta = mean / drive;
            for (int i = first; i < Math.Min(first + Vector<double>.Count, hertz.Length); i++)
            {
                (re[i], im[i]) = (beta.Re[i - first], beta.Im[i - first]);
            }
        }
    }
}
