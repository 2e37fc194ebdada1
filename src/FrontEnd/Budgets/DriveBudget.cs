using System.Numerics;
using FrontEnd.Amplifier;
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
    private readonly InputModel _model;

    public DriveBudget(Design design)
    {
        _design = design;
        _model = new InputModel(design, Varying.Surroundings);
        Lane nominal = new(design.Mains.BodyToEarth.Farads, design.Mains.AmplifierToEarth.Farads, 1);
        (UnityGainHertz, PhaseMarginDegrees) = Margins([nominal])[0];
        GainAtMains = Loop([(nominal, design.Mains.Frequency.Hertz)])[0].Magnitude;
        FindWorst();
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

    /// <summary>T at given frequencies for the design as it stands.</summary>
    public Complex[] LoopAt(double[] hertz) =>
        Loop([.. hertz.Select(f => (new Lane(_design.Mains.BodyToEarth.Farads, _design.Mains.AmplifierToEarth.Farads, 1), f))]);

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
        for (int i = 0; i < margins.Length; i++)
        {
            if (margins[i].Margin is { } margin && !(WorstPhaseMargin <= margin))
            {
                WorstPhaseMargin = margin;
                WorstCase = lanes[i];
            }
        }
    }

    /// <summary>Highest unity-gain frequency and phase margin of many surroundings at once.</summary>
    private (double? Unity, double? Margin)[] Margins(Lane[] lanes)
    {
        // |T| <= |K|·|β| and a passive network's β exceeds 1 little if at all, so the highest crossing lies below twice f_u.
        const int PointsPerDecade = 4;
        double high = 2 * _design.GroundDrive.UnityGainFrequency.Hertz;
        int points = (4 * PointsPerDecade) + 1;
        double[] grid = [.. Enumerable.Range(0, points).Select(i => high * Math.Pow(10, ((double)i - points + 1) / PointsPerDecade))];
        var all = new (Lane, double)[lanes.Length * points];
        for (int lane = 0; lane < lanes.Length; lane++)
        {
            for (int i = 0; i < points; i++)
            {
                all[(lane * points) + i] = (lanes[lane], grid[i]);
            }
        }

        Complex[] beta = Beta(all);
        var brackets = new Bracket?[lanes.Length];
        for (int lane = 0; lane < lanes.Length; lane++)
        {
            brackets[lane] = HighestCrossing(grid, beta.AsSpan(lane * points, points));
        }

        Narrow(lanes, brackets);
        return [.. brackets.Select(bracket => bracket is { } b ? (b.Best, 180 + ((b.PhaseAtBest + GainPhase(b.Best)) * 180 / Math.PI)) : ((double?)null, (double?)null))];
    }

    /// <summary>An interval of frequency in which |T| falls through 1, with the followed phase of β at its lower end.</summary>
    private sealed class Bracket
    {
        public double Low { get; set; }

        public double High { get; set; }

        /// <summary>ln|T| at the ends.</summary>
        public double ValueLow { get; set; }

        public double ValueHigh { get; set; }

        public double Phase { get; set; }

        public double Best { get; set; }

        public double PhaseAtBest { get; set; }

        public bool Done { get; set; }
    }

    private Bracket? HighestCrossing(double[] grid, ReadOnlySpan<Complex> beta)
    {
        var phase = new double[grid.Length];
        phase[0] = beta[0].Phase;
        for (int i = 1; i < grid.Length; i++)
        {
            phase[i] = phase[i - 1] + (beta[i] / beta[i - 1]).Phase;
        }

        for (int i = grid.Length - 1; 1 <= i; i--)
        {
            double above = Math.Log(beta[i].Magnitude * Gain(grid[i]).Magnitude), below = Math.Log(beta[i - 1].Magnitude * Gain(grid[i - 1]).Magnitude);
            if (above < 0 && 0 <= below)
            {
                return new Bracket { Low = grid[i - 1], High = grid[i], ValueLow = below, ValueHigh = above, Phase = phase[i - 1], Best = grid[i - 1], PhaseAtBest = phase[i - 1] };
            }
        }

        return null;
    }

    /// <summary>Regula falsi (Illinois) on ln|T| against ln f, all lanes together.</summary>
    private void Narrow(Lane[] lanes, Bracket?[] brackets)
    {
        int[] open = [.. Enumerable.Range(0, lanes.Length).Where(i => brackets[i] is not null)];
        var anchor = open.ToDictionary(i => i, i => (Beta: Complex.One, brackets[i]!.Phase, Ready: false));
        for (int round = 0; round < 40 && open.Length != 0; round++)
        {
            var asked = new (Lane, double)[open.Length];
            for (int i = 0; i < open.Length; i++)
            {
                Bracket b = brackets[open[i]]!;
                double share = round == 0 ? 0 : b.ValueLow / (b.ValueLow - b.ValueHigh);
                asked[i] = (lanes[open[i]], b.Low * Math.Pow(b.High / b.Low, share));
            }

            Complex[] beta = Beta(asked);
            for (int i = 0; i < open.Length; i++)
            {
                Bracket b = brackets[open[i]]!;
                if (round == 0)
                {
                    anchor[open[i]] = (beta[i], b.Phase, true);
                    continue;
                }

                double f = asked[i].Item2, value = Math.Log(beta[i].Magnitude * Gain(f).Magnitude);
                b.Best = f;
                b.PhaseAtBest = anchor[open[i]].Phase + (beta[i] / anchor[open[i]].Beta).Phase;
                b.Done = Math.Abs(value) < 1e-11;
                if (value < 0)
                {
                    (b.High, b.ValueHigh, b.ValueLow) = (f, value, b.ValueLow / 2);
                }
                else
                {
                    (b.Low, b.ValueLow, b.ValueHigh) = (f, value, b.ValueHigh / 2);
                }
            }

            open = [.. open.Where(i => !brackets[i]!.Done)];
        }
    }

    private Complex Gain(double hertz)
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

    private Complex[] Loop((Lane Lane, double Hertz)[] lanes)
    {
        Complex[] beta = Beta(lanes);
        for (int i = 0; i < beta.Length; i++)
        {
            beta[i] *= Gain(lanes[i].Hertz);
        }

        return beta;
    }

    private NetworkSweep? _sweep;
    private ElectrodeLanes? _electrodes;
    private readonly double[] _factor = new double[SignalPath.Chunk];

    /// <summary>β = ½(v(A2) + v(R2))/v(D).</summary>
    private Complex[] Beta((Lane Lane, double Hertz)[] lanes)
    {
        _sweep ??= _model.Program.CreateSweep(SignalPath.Chunk);
        _electrodes ??= new ElectrodeLanes(SignalPath.Chunk);
        double m = _design.Electrodes.EffectiveMismatch;
        double[] active = new double[SignalPath.Chunk], reference = new double[SignalPath.Chunk];
        var beta = new Complex[lanes.Length];
        for (int first = 0; first < lanes.Length; first += SignalPath.Chunk)
        {
            int n = Math.Min(SignalPath.Chunk, lanes.Length - first);
            for (int i = 0; i < SignalPath.Chunk; i++)
            {
                (Lane lane, double hertz) = lanes[first + Math.Min(i, n - 1)];
                double w = 2 * Math.PI * hertz;
                _sweep.Omega[i] = w;
                _factor[i] = lane.ElectrodeFactor;
                active[i] = lane.ElectrodeFactor * (1 + (m / 2));
                reference[i] = lane.ElectrodeFactor * (1 - (m / 2));
                _sweep.SlotImaginary(_model.BodyToEarth)[i] = w * lane.BodyToEarth;
                _sweep.SlotImaginary(_model.CommonToEarth)[i] = w * lane.CommonToEarth;
            }

            _model.SetElectrodes(_sweep, (n + 7) / 8 * 8, active, reference, _factor, _electrodes);
            _sweep.SolveForward(n, _model.DrivePort);
            for (int i = 0; i < n; i++)
            {
                beta[first + i] = _sweep.Transfer(_model.Mean, _model.DrivePort, i) / _sweep.Transfer(_model.Drive, _model.DrivePort, i);
            }
        }

        return beta;
    }
}
