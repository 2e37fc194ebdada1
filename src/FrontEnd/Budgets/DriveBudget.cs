using System.Numerics;
using FrontEnd.Amplifier;
using FrontEnd.Designs;
using FrontEnd.Networks;

namespace FrontEnd.Budgets;

/// <summary>The driven ground's loop: a return ratio T, positive at dc.</summary>
/// <remarks>T = K·½(v(A2) + v(R2)) with v(D) − v(C) held at 1. The ratio of the mean to the drive in the closed network is the same figure,
/// so the loop need not be opened.</remarks>
internal sealed class DriveBudget
{
    private const int CornerPoints = 9;
    private const double EarthedFarads = 1e-6;

    private readonly Design _design;
    private readonly BuiltParts _built;
    private readonly InputModel _model;

    public DriveBudget(Design design, BuiltParts? built = null, bool worst = true)
    {
        _design = design;
        _built = built ?? BuiltParts.Worst(design);
        _model = new InputModel(design, Varying.Surroundings, _built);
        Lane nominal = new(design.Mains.BodyToEarth.Farads, design.Mains.AmplifierToEarth.Farads, 1);
        (UnityGainHertz, PhaseMarginDegrees) = Margins([nominal])[0];
        GainAtMains = LoopAt([design.Mains.Frequency.Hertz])[0].Magnitude;
        if (worst)
        {
            FindWorst();
        }
    }

    /// <summary>One surrounding of the loop.</summary>
    internal readonly record struct Lane(double BodyToEarth, double CommonToEarth, double ElectrodeFactor);

    /// <summary>Highest frequency at which |T| = 1 [Hz]; null where T stays below 1.</summary>
    public double? UnityGainHertz { get; }

    /// <summary>180° + arg T there.</summary>
    public double? PhaseMarginDegrees { get; }

    /// <summary>|T| at the mains frequency.</summary>
    public double GainAtMains { get; }

    /// <summary>Least phase margin over body capacitance, electrode resistance, battery and earthed; null where T nowhere reaches 1.</summary>
    public double? WorstPhaseMargin { get; private set; }

    /// <summary>Where the least margin is found.</summary>
    public Lane WorstCase { get; private set; }

    /// <summary>Every surrounding that was tried and in which |T| reaches 1, the least margin first: the surrounding, its highest crossing of 1 and the margin there.</summary>
    public IReadOnlyList<(Lane Surroundings, double UnityGainHertz, double MarginDegrees)> Tried { get; private set; } = [];

    /// <summary>T at given frequencies for the design as it stands.</summary>
    public Complex[] LoopAt(double[] hertz) => LoopAt(new Lane(_design.Mains.BodyToEarth.Farads, _design.Mains.AmplifierToEarth.Farads, 1), hertz);

    /// <summary>T at given frequencies in given surroundings.</summary>
    public Complex[] LoopAt(Lane surroundings, double[] hertz)
    {
        double[] re = new double[hertz.Length], im = new double[hertz.Length];
        Beta([surroundings], new int[hertz.Length], hertz, re, im);
        var loop = new Complex[hertz.Length];
        for (int i = 0; i < loop.Length; i++)
        {
            loop[i] = new Complex(re[i], im[i]) * Gain(hertz[i]);
        }

        return loop;
    }

    /// <summary>9 × 9 logarithmic points over 100 pF…1 nF and 1 kΩ…1 MΩ (the ground electrode's dc resistance; all three scaled together), battery and earthed.</summary>
    private void FindWorst()
    {
        double resistance = Math.Max(1e-3, _design.Electrodes.Ground!.DcResistance.Ohms);
        var lanes = new List<Lane>();
        foreach (double common in new[] { _design.Mains.AmplifierToEarth.Farads, EarthedFarads })
        {
            for (int i = 0; i < CornerPoints; i++)
            {
                for (int j = 0; j < CornerPoints; j++)
                {
                    lanes.Add(new Lane(100e-12 * Math.Pow(10, i / 8.0), common, 1e3 * Math.Pow(1000, j / 8.0) / resistance));
                }
            }
        }

        (double? Unity, double? Margin)[] margins = Margins([.. lanes]);
        Tried = [.. lanes.Zip(margins).Where(pair => pair.Second.Margin is not null).Select(pair => (pair.First, pair.Second.Unity!.Value, pair.Second.Margin!.Value)).OrderBy(one => one.Item3)];
        if (Tried is [var least, ..])
        {
            (WorstCase, WorstPhaseMargin) = (least.Surroundings, least.MarginDegrees);
        }
    }

    /// <summary>Highest unity-gain frequency and phase margin of many surroundings at once.</summary>
    private (double? Unity, double? Margin)[] Margins(Lane[] lanes)
    {
        // |T| <= |K|·|β| and a passive network's β exceeds 1 little if at all, so the highest crossing lies below twice f_u.
        const int PointsPerDecade = 3, Decades = 4, Points = (PointsPerDecade * Decades) + 1;
        double high = 2 * _design.GroundDrive.UnityGainFrequency.Hertz;
        var grid = new double[Points];
        var gain = new double[Points];
        for (int i = 0; i < Points; i++)
        {
            grid[i] = high * Math.Pow(10, (i + 1.0 - Points) / PointsPerDecade);
            Complex k = Gain(grid[i]);
            gain[i] = (k.Real * k.Real) + (k.Imaginary * k.Imaginary);
        }

        var lane = new int[lanes.Length * Points];
        var hertz = new double[lane.Length];
        for (int i = 0; i < lane.Length; i++)
        {
            (lane[i], hertz[i]) = (i / Points, grid[i % Points]);
        }

        double[] re = new double[lane.Length], im = new double[lane.Length];
        Beta(lanes, lane, hertz, re, im);
        var brackets = new Bracket?[lanes.Length];
        for (int i = 0; i < lanes.Length; i++)
        {
            brackets[i] = HighestCrossing(grid, gain, re.AsSpan(i * Points, Points), im.AsSpan(i * Points, Points));
        }

        Narrow(lanes, brackets);
        return [.. brackets.Select(bracket => bracket is { } b ? (b.Best, 180 + ((b.PhaseAtBest + GainPhase(b.Best)) * 180 / Math.PI)) : ((double?)null, (double?)null))];
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
            double above = gainSquared[i] * ((re[i] * re[i]) + (im[i] * im[i])), below = gainSquared[i - 1] * ((re[i - 1] * re[i - 1]) + (im[i - 1] * im[i - 1]));
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
    private void Narrow(Lane[] lanes, Bracket?[] brackets)
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

            Beta(lanes, lane.AsSpan(0, open.Count), hertz.AsSpan(0, open.Count), re, im);
            int kept = 0;
            for (int i = 0; i < open.Count; i++)
            {
                Bracket b = brackets[open[i]]!;
                Complex k = Gain(hertz[i]);
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

    /// <summary>K(s).</summary>
    internal Complex Gain(double hertz)
    {
        GroundDrive drive = _design.GroundDrive;
        Complex first = new(1 / drive.DcGain, hertz / drive.UnityGainFrequency.Hertz);
        return 1 / (_design.EffectiveAveragingBandwidth is { } f2 ? first * new Complex(1, hertz / f2.Hertz) : first);
    }

    /// <summary>arg K, followed from dc [rad].</summary>
    private double GainPhase(double hertz)
    {
        GroundDrive drive = _design.GroundDrive;
        double phase = -Math.Atan(hertz * drive.DcGain / drive.UnityGainFrequency.Hertz);
        return _design.EffectiveAveragingBandwidth is { } f2 ? phase - Math.Atan(hertz / f2.Hertz) : phase;
    }

    private NetworkSweep? _sweep;
    private ElectrodeLanes? _electrodes;
    private readonly double[] _ground = new double[SignalPath.Chunk];
    private readonly double[] _active = new double[SignalPath.Chunk];
    private readonly double[] _reference = new double[SignalPath.Chunk];

    /// <summary>β = ½(v(A2) + v(R2))/v(D) of the surroundings <paramref name="lane"/> points to, at the frequencies beside them.</summary>
    private void Beta(Lane[] lanes, ReadOnlySpan<int> lane, ReadOnlySpan<double> hertz, Span<double> re, Span<double> im)
    {
        _sweep ??= _model.Program.CreateSweep(SignalPath.Chunk);
        _electrodes ??= new ElectrodeLanes(SignalPath.Chunk);
        Span<double> omega = _sweep.Omega, body = _sweep.SlotImaginary(_model.BodyToEarth), common = _sweep.SlotImaginary(_model.CommonToEarth);
        for (int first = 0; first < hertz.Length; first += SignalPath.Chunk)
        {
            int n = Math.Min(SignalPath.Chunk, hertz.Length - first), padded = (n + Vector<double>.Count - 1) / Vector<double>.Count * Vector<double>.Count;
            for (int i = 0; i < padded; i++)
            {
                int at = first + Math.Min(i, n - 1);
                Lane surroundings = lanes[lane[at]];
                double w = 2 * Math.PI * hertz[at];
                omega[i] = w;
                _ground[i] = surroundings.ElectrodeFactor;
                _active[i] = surroundings.ElectrodeFactor * _built.ActiveFactor;
                _reference[i] = surroundings.ElectrodeFactor * _built.ReferenceFactor;
                body[i] = w * surroundings.BodyToEarth;
                common[i] = w * surroundings.CommonToEarth;
            }

            _model.SetElectrodes(_sweep, padded, _active, _reference, _ground, _electrodes);
            _sweep.SolveForward(n, _model.DrivePort);
            ReadOnlySpan<double> mr = _sweep.TransferReal(_model.Mean, _model.DrivePort), mi = _sweep.TransferImaginary(_model.Mean, _model.DrivePort);
            ReadOnlySpan<double> dr = _sweep.TransferReal(_model.Drive, _model.DrivePort), di = _sweep.TransferImaginary(_model.Drive, _model.DrivePort);
            for (int i = 0; i < n; i++)
            {
                double inverse = 1 / ((dr[i] * dr[i]) + (di[i] * di[i]));
                re[first + i] = ((mr[i] * dr[i]) + (mi[i] * di[i])) * inverse;
                im[first + i] = ((mi[i] * dr[i]) - (mr[i] * di[i])) * inverse;
            }
        }
    }
}
