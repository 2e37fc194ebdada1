using System.Numerics;
using FrontEnd.Filters;
using FrontEnd.Quantities;
using FrontEnd.Topologies;

namespace FrontEnd.AntiAlias;

/// <summary>A section that could be built.</summary>
/// <param name="Parts">In preferred values.</param>
/// <param name="Wanted">The ideal section.</param>
/// <param name="Errors">Error against the ideal at each point of the grid [dB].</param>
/// <param name="Error">The largest of them, by size [dB].</param>
internal sealed record SectionCandidate(SectionParts Parts, AnalogSection Wanted, double[] Errors, double Error);

/// <summary>Every build of one wanted section in preferred values within the limits.</summary>
internal sealed class SectionCandidates
{
    private const double GreatestRatioOverLeast = 8;

    private readonly RealisationRequest _request;
    private readonly AnalogSection _wanted;
    private readonly double[] _grid;
    private readonly double[] _ideal;
    private readonly List<SectionCandidate> _found = [];

    private SectionCandidates(RealisationRequest request, AnalogSection wanted, double[] grid)
    {
        (_request, _wanted, _grid) = (request, wanted, grid);
        _ideal = [.. grid.Select(Decibels)];
    }

    /// <summary>All of them; empty where the limits allow none.</summary>
    /// <param name="grid">Where their errors are looked at [Hz].</param>
    internal static IReadOnlyList<SectionCandidate> Of(RealisationRequest request, AnalogSection wanted, double[] grid)
    {
        var search = new SectionCandidates(request, wanted, grid);
        double[] capacitors = [.. request.Capacitors];
        if (wanted.IsFirstOrder)
        {
            search.AddFirstOrder(capacitors);
        }
        else if (request.Topology == SectionKind.SallenKeyEqual)
        {
            search.AddEqual(capacitors);
        }
        else
        {
            search.AddPairs(capacitors);
        }

        return search._found;
    }

    private void AddFirstOrder(double[] capacitors)
    {
        foreach (double c in capacitors)
        {
            double r = SectionDesign.Rc(Frequency.FromHertz(_wanted.PoleHertz), Capacitance.FromFarads(c)).Ohms;
            foreach (double rounded in _request.Rounded(r))
            {
                Judge(SectionParts.Of(SectionKind.Rc, _request.OpAmp, rounded, 0, 0, c, 0));
            }
        }
    }

    private void AddPairs(double[] capacitors)
    {
        double q = _wanted.Q!.Value;
        double least = 4 * q * q * (_request.Topology == SectionKind.MultipleFeedback ? 2 : 1);
        foreach (double c2 in capacitors)
        {
            foreach (double c1 in capacitors)
            {
                double ratio = c1 / c2;
                if (least * (1 - 1e-12) <= ratio && ratio <= GreatestRatioOverLeast * least)
                {
                    AddPair(c1, c2);
                }
            }
        }
    }

    private void AddPair(double c1, double c2)
    {
        if (Corrected(c1, c2) is not { } exact)
        {
            return;
        }

        // A Sallen–Key has no third resistor: one round with none.
        bool feedback = _request.Topology == SectionKind.MultipleFeedback;
        foreach (double r1 in _request.Rounded(exact.R1))
        {
            foreach (double r2 in _request.Rounded(exact.R2))
            {
                foreach (double r3 in feedback ? _request.Rounded(exact.R3) : [0])
                {
                    Judge(SectionParts.Of(_request.Topology, _request.OpAmp, r1, r2, r3, c1, c2));
                }
            }
        }
    }

    private void AddEqual(double[] capacitors)
    {
        // The gain that is wanted hangs on Q and GBW and hardly on the capacitor: one list of pairs serves until it moves.
        // (A fourth order over E24 by E96: 152 ms with a list for each, 6 ms with this, on a busy machine.)
        const double SameGain = 1e-5;
        double listed = double.NaN;
        IReadOnlyList<(double Rf, double Rg)> gains = [];
        foreach (double c in capacitors)
        {
            if (Corrected(c, c) is not { } exact)
            {
                continue;
            }

            foreach (double r in _request.Rounded(exact.R1))
            {
                if (!(Math.Abs(exact.Gain - listed) <= SameGain))
                {
                    (listed, gains) = (exact.Gain, _request.GainResistors(exact.Gain));
                }

                foreach ((double rf, double rg) in gains)
                {
                    Judge(SectionParts.Of(_request.Topology, _request.OpAmp, r, r, 0, c, c) with { Rf = rf, Rg = rg });
                }
            }
        }
    }

    /// <summary>Exact resistors such that the pole as built, not the ideal op-amp's, is the wanted one: four rounds of designing for f0 and
    /// Q displaced by what the op-amp did.</summary>
    private SectionParts? Corrected(double c1, double c2)
    {
        double f = _wanted.PoleHertz;
        double q = _wanted.Q!.Value;
        SectionParts? parts = null;
        for (int round = 0; round < 4; round++)
        {
            SectionParts? next = Exact(_request, f, q, c1, c2);
            if (next is not { } built)
            {
                // At the least ratio of capacitors a higher Q cannot be had: what there is stands.
                return parts;
            }

            parts = built;
            Complex pole = built.Pole();
            f *= _wanted.PoleHertz / (Complex.Abs(pole) / (2 * Math.PI));
            q *= _wanted.Q!.Value / (Complex.Abs(pole) / (-2 * pole.Real));
        }

        return parts;
    }

    private static SectionParts? Exact(RealisationRequest request, double f, double q, double c1, double c2)
    {
        if (!(0 < q && 0 < f && double.IsFinite(q) && double.IsFinite(f)))
        {
            return null;
        }

        var pole = Frequency.FromHertz(f);
        if (request.Topology == SectionKind.SallenKeyEqual)
        {
            // Rg of the middle of the range only loads the output here; the pair is chosen afterwards.
            double r = SectionDesign.Rc(pole, Capacitance.FromFarads(c1)).Ohms, rg = 10 * request.LeastResistor.Ohms;
            return SectionParts.Of(
                request.Topology, request.OpAmp, r, r, 0, c1, c1) with { Rf = (SectionDesign.EqualGain(q) - 1) * rg, Rg = rg };
        }

        (Capacitance first, Capacitance second) = (Capacitance.FromFarads(c1), Capacitance.FromFarads(c2));
        if (request.Topology == SectionKind.SallenKey)
        {
            return SectionDesign.SallenKey(pole, q, first, second) is { } r
                ? SectionParts.Of(request.Topology, request.OpAmp, r.R1.Ohms, r.R2.Ohms, 0, c1, c2)
                : null;
        }

        return SectionDesign.MultipleFeedback(pole, q, 1, first, second) is { } m
            ? SectionParts.Of(request.Topology, request.OpAmp, m.R1.Ohms, m.R2.Ohms, m.R3.Ohms, c1, c2)
            : null;
    }

    private void Judge(SectionParts parts)
    {
        double[] errors = new double[_grid.Length];
        double zero = 20 * Math.Log10(Complex.Abs(parts.Denominator(0) / parts.Numerator(0)));
        double worst = 0;
        for (int i = 0; i < _grid.Length; i++)
        {
            var s = new Complex(0, 2 * Math.PI * _grid[i]);
            double built = zero - (20 * Math.Log10(
                parts.Ro == 0 ? Complex.Abs(parts.Denominator(s)) : Complex.Abs(parts.Denominator(s) / parts.Numerator(s))));
            errors[i] = built - _ideal[i];
            worst = Math.Max(worst, Math.Abs(errors[i]));
        }

        _found.Add(new SectionCandidate(parts, _wanted, errors, worst));
    }

    private double Decibels(double hertz) => 20 * Math.Log10(Complex.Abs(_wanted.At(new Complex(0, 2 * Math.PI * hertz)) / _wanted.At(0)));
}
