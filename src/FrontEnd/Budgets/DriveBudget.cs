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

    /// <summary>|T| &lt;= |K|·|β| and a passive network's β exceeds 1 little if at all, so the highest crossing of 1 lies below twice f_u; it
    /// is looked for on so many points down from there.</summary>
    private const int PointsPerDecade = 3, Decades = 4, Points = (PointsPerDecade * Decades) + 1;

    /// <summary>Margins whose rough estimates lie so far above the least are not estimated better [°]: the rough ones are wrong by a few degrees
    /// at most.</summary>
    private const double Rough = 20;

    /// <summary>Common to earth of a device that is tied to earth [F].</summary>
    internal const double EarthedFarads = 1e-6;

    private readonly Design _design;
    private readonly BuildLanes _builds;
    private readonly InputLanes _input;
    private readonly GroundDriveGain _gain;
    private readonly LoopSurroundings _nominal;
    private readonly double[] _hertz = new double[Points];
    private readonly double[] _gainSquared = new double[Points];
    private readonly List<LoopCrossing> _crossings;

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
        double high = 2 * _design.GroundDrive.UnityGainFrequency.Hertz;
        for (int i = 0; i < Points; i++)
        {
            _hertz[i] = high * Math.Pow(10, (i + 1.0 - Points) / PointsPerDecade);
            Complex k = _gain.At(_hertz[i]);
            _gainSquared[i] = (k.Real * k.Real) + (k.Imaginary * k.Imaginary);
        }

        if (Crossing(_nominal) is { } crossing)
        {
            Narrow([crossing]);
            (UnityGainHertz, PhaseMarginDegrees) = (crossing.Hertz, crossing.MarginDegrees);
        }

        GainAtMains = LoopAt(_nominal, [_design.Mains.Frequency.Hertz])[0].Magnitude;
        _crossings = Estimates();
        if (Least(1) is [var least])
        {
            (WorstCase, WorstPhaseMargin) = (least.Surroundings, least.MarginDegrees);
        }
    }

    /// <summary>Highest frequency at which |T| = 1 [Hz]; null where T stays below 1.</summary>
    public double? UnityGainHertz { get; }

    /// <summary>180° + arg T there.</summary>
    public double? PhaseMarginDegrees { get; }

    /// <summary>|T| at the mains frequency.</summary>
    public double GainAtMains { get; }

    /// <summary>Least phase margin over body capacitance, electrode resistance, battery and earthed; null where T nowhere reaches
    /// 1.</summary>
    public double? WorstPhaseMargin { get; }

    /// <summary>Where the least margin is found.</summary>
    public LoopSurroundings WorstCase { get; }

    /// <summary>T at given frequencies for the device as it stands.</summary>
    public Complex[] LoopAt(double[] hertz) => LoopAt(_nominal, hertz);

    /// <summary>The loop as the device stands; null where its gain stays below 1.</summary>
    public LoopPoint? Point => UnityGainHertz is { } unity ? PointOf(_nominal, unity, PhaseMarginDegrees!.Value) : null;

    /// <summary>The loop in the surroundings in which the margin is least, the least first.</summary>
    /// <param name="count">Greatest number of surroundings.</param>
    public IReadOnlyList<LoopPoint> LeastPoints(int count) =>
        [.. Least(count).Select(one => PointOf(one.Surroundings, one.Hertz, one.MarginDegrees))];

    private LoopPoint PointOf(LoopSurroundings surroundings, double unity, double margin) =>
        new(surroundings, unity, margin, LoopAt(surroundings, [unity])[0]);

    private Complex[] LoopAt(LoopSurroundings surroundings, ReadOnlySpan<double> hertz)
    {
        double[] re = new double[hertz.Length], im = new double[hertz.Length];
        Feedback(surroundings, hertz, re, im);
        var loop = new Complex[hertz.Length];
        for (int i = 0; i < loop.Length; i++)
        {
            loop[i] = new Complex(re[i], im[i]) * _gain.At(hertz[i]);
        }

        return loop;
    }

    /// <summary>Every surrounding of the range in which |T| reaches 1, its crossing and margin estimated: 9 × 9 logarithmic points over
    /// 100 pF…1 nF and 1 kΩ…1 MΩ (the ground electrode's dc resistance; all three scaled together), battery and earthed.</summary>
    private List<LoopCrossing> Estimates()
    {
        double resistance = Math.Max(1e-3, _design.Electrodes.Ground!.DcResistance.Ohms);
        double[] body = new double[CornerPoints], factors = new double[CornerPoints];
        for (int i = 0; i < CornerPoints; i++)
        {
            (body[i], factors[i]) = (100e-12 * Math.Pow(10, i / 8.0), 1e3 * Math.Pow(1000, i / 8.0) / resistance);
        }

        var grid = new LoopGrid(_input, _builds, _hertz, body, [_design.Mains.AmplifierToEarth.Farads, EarthedFarads], factors);
        var crossings = new List<LoopCrossing>(grid.Count);
        for (int i = 0; i < grid.Count; i++)
        {
            if (LoopCrossing.Highest(_hertz, _gainSquared, grid.Re.AsSpan(i * Points, Points), grid.Im.AsSpan(i * Points, Points)) is { } crossing)
            {
                crossing.Surroundings = grid.At(i);
                crossing.EstimateRoughly(_gain);
                crossings.Add(crossing);
            }
        }

        double rough = crossings.Count == 0 ? 0 : crossings.Min(crossing => crossing.Estimated);
        foreach (LoopCrossing crossing in crossings)
        {
            if (crossing.Estimated < rough + Rough)
            {
                crossing.Estimate(_gain);
            }
        }

        crossings.Sort((a, b) => a.MarginDegrees.CompareTo(b.MarginDegrees));
        return crossings;
    }

    /// <summary>The crossings of the least margins, the least first, worked out to the last digit; more of the estimated ones are, until
    /// what the estimates were seen to be wrong by cannot bring another one among them.</summary>
    private List<LoopCrossing> Least(int count)
    {
        const int Batch = 4;
        const double Doubt = 4, Slack = 0.01;
        var exact = new List<LoopCrossing>();
        double wrong = 0;
        for (int next = 0; next < _crossings.Count; next += Batch)
        {
            if (count <= exact.Count && exact[count - 1].MarginDegrees + (Doubt * wrong) + Slack < _crossings[next].Estimated)
            {
                break;
            }

            List<LoopCrossing> some = _crossings.GetRange(next, Math.Min(Batch, _crossings.Count - next));
            Narrow(some);
            foreach (LoopCrossing one in some)
            {
                wrong = Math.Max(wrong, Math.Abs(one.MarginDegrees - one.Estimated));
            }

            exact.AddRange(some);
            exact.Sort((a, b) => a.MarginDegrees.CompareTo(b.MarginDegrees));
        }

        return exact[..Math.Min(count, exact.Count)];
    }

    /// <summary>Where |T| falls through 1 in one surrounding, between two points; null where it nowhere does.</summary>
    private LoopCrossing? Crossing(LoopSurroundings surroundings)
    {
        Span<double> re = stackalloc double[Points], im = stackalloc double[Points];
        Feedback(surroundings, _hertz, re, im);
        LoopCrossing? crossing = LoopCrossing.Highest(_hertz, _gainSquared, re, im);
        if (crossing is not null)
        {
            crossing.Surroundings = surroundings;
        }

        return crossing;
    }

    /// <summary>Regula falsi (Illinois) on ln|T| against ln f, as many surroundings together as there are lanes, to 1e-10.</summary>
    private void Narrow(List<LoopCrossing> crossings)
    {
        for (int first = 0; first < crossings.Count; first += Vector<double>.Count)
        {
            Narrow(crossings, first, Math.Min(Vector<double>.Count, crossings.Count - first));
        }
    }

    private void Narrow(List<LoopCrossing> crossings, int first, int count)
    {
        Span<double> hertz = stackalloc double[Vector<double>.Count];
        Span<double> body = stackalloc double[hertz.Length], common = stackalloc double[hertz.Length], factor = stackalloc double[hertz.Length];
        bool isOpen = true;
        for (int round = 0; round < 40 && isOpen; round++)
        {
            for (int lane = 0; lane < hertz.Length; lane++)
            {
                LoopCrossing crossing = crossings[first + Math.Min(lane, count - 1)];
                (body[lane], common[lane], factor[lane]) = crossing.Surroundings;
                hertz[lane] = crossing.IsNear ? crossing.Hertz : crossing.Next;
            }

            ComplexLanes beta = Feedback(new Vector<double>(body), new Vector<double>(common), new Vector<double>(factor), new Vector<double>(hertz));
            isOpen = false;
            for (int lane = 0; lane < count; lane++)
            {
                isOpen |= !crossings[first + lane].IsNear && !crossings[first + lane].Move(hertz[lane], beta[lane], _gain);
            }
        }
    }

    /// <summary>β of one surrounding at many frequencies.</summary>
    private void Feedback(LoopSurroundings surroundings, ReadOnlySpan<double> hertz, Span<double> re, Span<double> im)
    {
        Span<double> group = stackalloc double[Vector<double>.Count];
        for (int first = 0; first < hertz.Length; first += group.Length)
        {
            int live = Math.Min(group.Length, hertz.Length - first);
            group.Fill(hertz[^1]);
            hertz.Slice(first, live).CopyTo(group);
            ComplexLanes beta = Feedback(new Vector<double>(surroundings.BodyToEarth), new Vector<double>(surroundings.CommonToEarth),
                new Vector<double>(surroundings.ElectrodeFactor), new Vector<double>(group));
            for (int lane = 0; lane < live; lane++)
            {
                (re[first + lane], im[first + lane]) = (beta.Re[lane], beta.Im[lane]);
            }
        }
    }

    private ComplexLanes Feedback(Vector<double> body, Vector<double> common, Vector<double> factor, Vector<double> hertz)
    {
        _input.Surround(body, common);
        _input.SetElectrodes(factor * _builds.ActiveFactor, factor * _builds.ReferenceFactor, factor * _builds.GroundFactor);
        _input.Factor(hertz);
        (ComplexLanes mean, ComplexLanes drive) = _input.SolveDrive();
        return mean / drive;
    }
}
