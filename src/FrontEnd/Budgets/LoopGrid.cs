using System.Numerics;
using FrontEnd.Inputs;
using FrontEnd.Networks;

namespace FrontEnd.Budgets;

/// <summary>β of the driven ground's loop for every combination of some capacitances to earth and some sizes of the electrodes, at the same
/// frequencies.</summary>
/// <remarks>
/// Two capacitors tell one surrounding from another of the same electrodes, so the network is solved once for each size and frequency, with
/// the driven ground's source and with a current across each of the two; what other capacitances do follows from two equations in the
/// voltages across them (Sherman–Morrison–Woodbury). Far from the capacitances that were solved for, some digits are lost: what is wanted
/// to the last one is solved afresh.
/// </remarks>
internal sealed class LoopGrid
{
    private readonly InputModel _model;
    private readonly InputLanes _input;
    private readonly BuildLanes _builds;
    private readonly double[] _hertz;

    /// <param name="input">The input network, its capacitances to earth set from group to group.</param>
    /// <param name="builds">The build that stands on its lanes.</param>
    /// <param name="hertz">Frequencies [Hz].</param>
    /// <param name="body">Capacitances body to earth [F].</param>
    /// <param name="common">Capacitances common to earth [F].</param>
    /// <param name="factors">Impedance of the electrodes over the nominal one.</param>
    public LoopGrid(InputLanes input, BuildLanes builds, double[] hertz, double[] body, double[] common, double[] factors)
    {
        (_model, _input, _builds, _hertz) = (input.Model, input, builds, hertz);
        (Body, Common, Factors) = (body, common, factors);
        Re = new double[body.Length * common.Length * factors.Length * hertz.Length];
        Im = new double[Re.Length];
        Span<double> f = stackalloc double[Vector<double>.Count], factor = stackalloc double[Vector<double>.Count];
        int solves = factors.Length * hertz.Length;
        for (int first = 0; first < solves; first += f.Length)
        {
            int live = Math.Min(f.Length, solves - first);
            for (int lane = 0; lane < f.Length; lane++)
            {
                int at = Math.Min(first + lane, solves - 1);
                (factor[lane], f[lane]) = (factors[at / hertz.Length], hertz[at % hertz.Length]);
            }

            Solve(new Vector<double>(f), new Vector<double>(factor), first, live);
        }
    }

    public double[] Body { get; }

    public double[] Common { get; }

    public double[] Factors { get; }

    /// <summary>Number of surroundings.</summary>
    public int Count => Body.Length * Common.Length * Factors.Length;

    /// <summary>β, surrounding after surrounding.</summary>
    public double[] Re { get; }

    public double[] Im { get; }

    /// <summary>A surrounding by its number.</summary>
    public LoopSurroundings At(int surrounding)
    {
        int pair = surrounding / Factors.Length;
        return new(Body[pair % Body.Length], Common[pair / Body.Length], Factors[surrounding % Factors.Length]);
    }

    /// <summary>What one source makes: the mean of the amplifier's inputs, the driven ground's output, and the voltages across the two
    /// capacitors.</summary>
    private readonly record struct Answer(ComplexLanes Mean, ComplexLanes Drive, ComplexLanes AcrossBody, ComplexLanes AcrossCommon);

    private void Solve(Vector<double> hertz, Vector<double> factor, int first, int live)
    {
        // The largest capacitances, so that no node hangs on nothing.
        double body = Body[^1], common = Common[^1];
        _input.Surround(new Vector<double>(body), new Vector<double>(common));
        _input.SetElectrodes(factor * _builds.ActiveFactor, factor * _builds.ReferenceFactor, factor * _builds.GroundFactor);
        _input.Factor(hertz);
        Answer source = From(_model.DrivePort), one = From(_model.BodyMainsPort), two = From(_model.CommonMainsPort);
        Vector<double> omega = 2 * Math.PI * hertz;
        for (int c = 0; c < Common.Length; c++)
        {
            var second = new ComplexLanes(Vector<double>.Zero, omega * (Common[c] - common));
            for (int b = 0; b < Body.Length; b++)
            {
                var beta = Beta(source, one, two, new ComplexLanes(Vector<double>.Zero, omega * (Body[b] - body)), second);
                for (int lane = 0; lane < live; lane++)
                {
                    int solve = first + lane, surrounding = (((c * Body.Length) + b) * Factors.Length) + (solve / _hertz.Length);
                    int at = (surrounding * _hertz.Length) + (solve % _hertz.Length);
                    (Re[at], Im[at]) = (beta.Re[lane], beta.Im[lane]);
                }
            }
        }
    }

    private Answer From(int port)
    {
        _input.SolveForward(port);
        ComplexLanes earth = _input.Output(_model.Earth);
        return new(_input.Output(_model.Mean), _input.Output(_model.Drive), _input.Output(_model.Body) - earth,
            new ComplexLanes(-earth.Re, -earth.Im));
    }

    /// <summary>Mean over drive with admittances d1 and d2 added across the two capacitors: the voltages u across them obey (1 + Z·d)·u = u0,
    /// and each adds the current −d·u. Both sides are multiplied by the determinant.</summary>
    private static ComplexLanes Beta(in Answer source, in Answer one, in Answer two, ComplexLanes d1, ComplexLanes d2)
    {
        var unit = new ComplexLanes(Vector<double>.One, Vector<double>.Zero);
        ComplexLanes z11 = unit + (one.AcrossBody * d1), z12 = two.AcrossBody * d2, z21 = one.AcrossCommon * d1,
            z22 = unit + (two.AcrossCommon * d2), determinant = (z11 * z22) - (z12 * z21);
        ComplexLanes current1 = d1 * ((z22 * source.AcrossBody) - (z12 * source.AcrossCommon)),
            current2 = d2 * ((z11 * source.AcrossCommon) - (z21 * source.AcrossBody));
        return ((source.Mean * determinant) - (one.Mean * current1) - (two.Mean * current2))
            / ((source.Drive * determinant) - (one.Drive * current1) - (two.Drive * current2));
    }
}
