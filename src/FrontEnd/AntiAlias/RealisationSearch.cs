using System.Numerics;
using FrontEnd.Filters;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Text;
using FrontEnd.Topologies;

namespace FrontEnd.AntiAlias;

/// <summary>From an ideal low-pass to parts: preferred values whose response as built, with the real op-amp, is nearest to the ideal.</summary>
/// <remarks>
/// For each pole pair of unity-gain Sallen–Key or multiple feedback every pair of capacitors in the limits with C1/C2 between 1 and 8 times the least ratio is tried; the exact resistors are corrected for the op-amp (the parts are designed for a pole displaced
/// the other way) and each is rounded down and up. The best few of each section are then combined, and the combination with the least error of the whole response wins. Every figure is of the section as built;
/// nothing is judged by its ideal. The equal-component form tries every capacitor, the resistor rounded down and up, and the few pairs Rf, Rg of the series whose gain is nearest.
/// <para>The order of the sections is the one with the least of the largest gains from the input to any section's output; of equal ones the tamest first.</para>
/// </remarks>
public static class RealisationSearch
{
    /// <summary>Sections kept for the combination, per pole pair.</summary>
    private const int Kept = 10;

    private const double GreatestRatioOverLeast = 8;
    private const int GridPoints = 60;

    /// <summary>The nearest build; null together with findings where the filter cannot be built of these sections in these limits.</summary>
    public static (Realisation? Best, IReadOnlyList<Finding> Findings) Find(RealisationRequest request)
    {
        IReadOnlyList<Finding> findings = Check(request);
        if (findings.Any(f => f.Severity == Severity.Error))
        {
            return (null, findings);
        }

        double corner = request.Target.Shape!.Corners[0].Hertz;
        double[] grid = [.. Enumerable.Range(0, GridPoints + 1).Select(i => corner * 0.02 * Math.Pow(100, (double)i / GridPoints))];
        var kept = new List<List<Candidate>>();
        int tried = 0;
        foreach (AnalogSection wanted in request.Target.Sections.Sections)
        {
            List<Candidate> candidates = Candidates(request, wanted, grid);
            tried += candidates.Count;
            if (candidates.Count == 0)
            {
                return (null, [.. findings, RealisationMessages.NoPartsInLimits(request.Field, Frequency.FromHertz(wanted.PoleHertz), wanted.Q, request.Topology == SectionKind.SallenKeyEqual)]);
            }

            kept.Add([.. candidates.OrderBy(c => c.Error).Take(Kept)]);
        }

        Candidate[] best = Combine(kept, grid);
        return (Describe(request, best, grid, tried), findings);
    }

    private static List<Finding> Check(RealisationRequest request)
    {
        var findings = new List<Finding>();
        if (request.Target.Shape is not LowPass || request.Target.ZeroPoleGain.Zeros.Count != 0)
        {
            findings.Add(RealisationMessages.NotAllPoleLowPass(request.Field, request.Target.Shape is LowPass ? WithoutZeros(request.Target) : null));
        }
        else if (request.Topology == SectionKind.Rc)
        {
            throw new ArgumentOutOfRangeException(nameof(request), request.Topology, "A pole pair needs a section of second order.");
        }

        // Op-amp bandwidth wanted: 100·Q·f0 keeps the section within a per cent or so (common practice, no source); the search corrects for less.
        foreach (AnalogSection section in request.Target.Sections.Sections)
        {
            double wanted = 100 * (section.Q ?? 1) * section.PoleHertz;
            if (section.Q is { } q && request.OpAmp.GainBandwidth.Hertz < wanted / 5)
            {
                findings.Add(RealisationMessages.OpAmpTooSlow(request.Field, request.OpAmp.GainBandwidth, Frequency.FromHertz(section.PoleHertz), q));
            }
        }

        return findings;
    }

    /// <summary>The Chebyshev low-pass that does what one with zeros does: its order, pass and stop edge; null where there is none of an order that is built.</summary>
    private static (int Order, double PassHertz, double StopHertz)? WithoutZeros(AnalogFilter target)
    {
        double corner = target.Shape!.Corners[0].Hertz;
        (double pass, double stop, Decibels ripple, Decibels attenuation) = target.Prototype switch
        {
            EllipticPrototype p => (corner, Edge(p.Attenuation.Value, corner), p.Ripple, p.Attenuation),
            InverseChebyshevPrototype p => (Edge(FrequencyResponse.HalfPower.Value, corner / 1000), corner, FrequencyResponse.HalfPower, p.Attenuation),
            _ => default,
        };
        return pass < stop
            && MinimumOrder.Find(FilterFamily.Chebyshev, new FilterRequirement(new LowPass(Frequency.FromHertz(pass)), new LowPass(Frequency.FromHertz(stop)), ripple, attenuation)) is { Prototype: { } found }
            ? (found.Order, pass, stop)
            : null;

        // The first frequency with a loss, in steps that the stop band's first zero is wider than; the greatest gain of a prototype is 1.
        double Edge(double decibels, double from)
        {
            const double Step = 1.001;
            double Above(double f) => target.PowerResponse(f) - (Math.Pow(10, -decibels / 10) * (1 + 1e-9));
            double low = from;
            while (0 < Above(low * Step) && low < 1e6 * from)
            {
                low *= Step;
            }

            return MathExtra.Bisect(Above, low, low * Step);
        }
    }

    private static List<Candidate> Candidates(RealisationRequest request, AnalogSection wanted, double[] grid)
    {
        double[] ideal = [.. grid.Select(f => Decibels(wanted, f))];
        double[] capacitors = [.. request.Capacitors];
        var found = new List<Candidate>();
        if (wanted.IsFirstOrder)
        {
            foreach (double c in capacitors)
            {
                double r = SectionDesign.Rc(Frequency.FromHertz(wanted.PoleHertz), Capacitance.FromFarads(c)).Ohms;
                foreach (double rounded in request.Rounded(r))
                {
                    found.Add(Judge(SectionParts.Of(SectionKind.Rc, request.OpAmp, rounded, 0, 0, c, 0), wanted, grid, ideal));
                }
            }

            return found;
        }

        if (request.Topology == SectionKind.SallenKeyEqual)
        {
            AddEqual(request, wanted, capacitors, grid, ideal, found);
            return found;
        }

        double q = wanted.Q!.Value;
        double least = 4 * q * q * (request.Topology == SectionKind.MultipleFeedback ? 2 : 1);
        foreach (double c2 in capacitors)
        {
            foreach (double c1 in capacitors)
            {
                double ratio = c1 / c2;
                if (least * (1 - 1e-12) <= ratio && ratio <= GreatestRatioOverLeast * least)
                {
                    Add(request, wanted, c1, c2, grid, ideal, found);
                }
            }
        }

        return found;
    }

    private static void Add(RealisationRequest request, AnalogSection wanted, double c1, double c2, double[] grid, double[] ideal, List<Candidate> found)
    {
        if (Corrected(request, wanted, c1, c2) is not { } exact)
        {
            return;
        }

        bool feedback = request.Topology == SectionKind.MultipleFeedback;
        foreach (double r1 in request.Rounded(exact.R1))
        {
            foreach (double r2 in request.Rounded(exact.R2))
            {
                if (!feedback)
                {
                    found.Add(Judge(SectionParts.Of(request.Topology, request.OpAmp, r1, r2, 0, c1, c2), wanted, grid, ideal));
                    continue;
                }

                foreach (double r3 in request.Rounded(exact.R3))
                {
                    found.Add(Judge(SectionParts.Of(request.Topology, request.OpAmp, r1, r2, r3, c1, c2), wanted, grid, ideal));
                }
            }
        }
    }

    private static void AddEqual(RealisationRequest request, AnalogSection wanted, double[] capacitors, double[] grid, double[] ideal, List<Candidate> found)
    {
        // The gain that is wanted hangs on Q and GBW and hardly on the capacitor: one list of pairs serves until it moves. (A fourth order over E24 by E96: 152 ms with a list for each, 6 ms with this, on a busy machine.)
        const double SameGain = 1e-5;
        double listed = double.NaN;
        IReadOnlyList<(double Rf, double Rg)> gains = [];
        foreach (double c in capacitors)
        {
            if (Corrected(request, wanted, c, c) is not { } exact)
            {
                continue;
            }

            foreach (double r in request.Rounded(exact.R1))
            {
                if (!(Math.Abs(exact.Gain - listed) <= SameGain))
                {
                    (listed, gains) = (exact.Gain, request.GainResistors(exact.Gain));
                }

                foreach ((double rf, double rg) in gains)
                {
                    found.Add(Judge(SectionParts.Of(request.Topology, request.OpAmp, r, r, 0, c, c) with { Rf = rf, Rg = rg }, wanted, grid, ideal));
                }
            }
        }
    }

    /// <summary>Exact resistors such that the pole as built, not the ideal op-amp's, is the wanted one: four rounds of designing for f0 and Q displaced by what the op-amp did.</summary>
    private static SectionParts? Corrected(RealisationRequest request, AnalogSection wanted, double c1, double c2)
    {
        double f = wanted.PoleHertz;
        double q = wanted.Q!.Value;
        SectionParts? parts = null;
        for (int round = 0; round < 4; round++)
        {
            SectionParts? next = Exact(request, f, q, c1, c2);
            if (next is not { } built)
            {
                // At the least ratio of capacitors a higher Q cannot be had: what there is stands.
                return parts;
            }

            parts = built;
            Complex pole = built.Pole();
            f *= wanted.PoleHertz / (Complex.Abs(pole) / (2 * Math.PI));
            q *= wanted.Q!.Value / (Complex.Abs(pole) / (-2 * pole.Real));
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
            return SectionParts.Of(request.Topology, request.OpAmp, r, r, 0, c1, c1) with { Rf = (SectionDesign.EqualGain(q) - 1) * rg, Rg = rg };
        }

        (Capacitance first, Capacitance second) = (Capacitance.FromFarads(c1), Capacitance.FromFarads(c2));
        if (request.Topology == SectionKind.SallenKey)
        {
            return SectionDesign.SallenKey(pole, q, first, second) is { } r ? SectionParts.Of(request.Topology, request.OpAmp, r.R1.Ohms, r.R2.Ohms, 0, c1, c2) : null;
        }

        return SectionDesign.MultipleFeedback(pole, q, 1, first, second) is { } m
            ? SectionParts.Of(request.Topology, request.OpAmp, m.R1.Ohms, m.R2.Ohms, m.R3.Ohms, c1, c2)
            : null;
    }

    private static Candidate Judge(SectionParts parts, AnalogSection wanted, double[] grid, double[] ideal)
    {
        double[] errors = new double[grid.Length];
        double zero = 20 * Math.Log10(Complex.Abs(parts.Denominator(0) / parts.Numerator(0)));
        double worst = 0;
        for (int i = 0; i < grid.Length; i++)
        {
            var s = new Complex(0, 2 * Math.PI * grid[i]);
            double built = zero - (20 * Math.Log10(parts.Ro == 0 ? Complex.Abs(parts.Denominator(s)) : Complex.Abs(parts.Denominator(s) / parts.Numerator(s))));
            errors[i] = built - ideal[i];
            worst = Math.Max(worst, Math.Abs(errors[i]));
        }

        return new Candidate(parts, wanted, errors, worst);
    }

    private static double Decibels(AnalogSection section, double hertz) =>
        20 * Math.Log10(Complex.Abs(section.At(new Complex(0, 2 * Math.PI * hertz)) / section.At(0)));

    /// <summary>One candidate of each section, so that the errors of the whole cancel best: each in turn is exchanged until nothing improves, from every best start.</summary>
    private static Candidate[] Combine(List<List<Candidate>> kept, double[] grid)
    {
        Candidate[]? best = null;
        double bestError = double.PositiveInfinity;
        for (int start = 0; start < kept[0].Count; start++)
        {
            Candidate[] choice = [.. kept.Select((list, i) => list[i == 0 ? start : 0])];
            double error = Worst(choice, grid.Length);
            bool improved = true;
            while (improved)
            {
                improved = false;
                for (int section = 0; section < kept.Count; section++)
                {
                    foreach (Candidate other in kept[section])
                    {
                        Candidate before = choice[section];
                        choice[section] = other;
                        double changed = Worst(choice, grid.Length);
                        if (changed < error - 1e-12)
                        {
                            (error, improved) = (changed, true);
                        }
                        else
                        {
                            choice[section] = before;
                        }
                    }
                }
            }

            if (error < bestError)
            {
                (best, bestError) = (choice, error);
            }
        }

        return best!;
    }

    private static double Worst(Candidate[] choice, int points)
    {
        double worst = 0;
        for (int i = 0; i < points; i++)
        {
            double sum = 0;
            foreach (Candidate candidate in choice)
            {
                sum += candidate.Errors[i];
            }

            worst = Math.Max(worst, Math.Abs(sum));
        }

        return worst;
    }

    private static Realisation Describe(RealisationRequest request, Candidate[] best, double[] grid, int tried)
    {
        Candidate[] order = Order(best);
        Stage[] stages = [.. order.Select((c, i) => Build(request, c.Parts, $"anti-alias {i + 1}"))];
        var sections = new List<RealisedSection>();
        for (int i = 0; i < order.Length; i++)
        {
            (double pole, double? q) = AsBuiltSection.Poles(stages[i]);
            sections.Add(new RealisedSection(stages[i], Frequency.FromHertz(order[i].Wanted.PoleHertz), order[i].Wanted.Q, Frequency.FromHertz(pole), q,
                AsBuiltSection.Sensitivities(stages[i]), Peak(order.Take(i + 1)))
            {
                StateVariable = StateVariableFor(request, order[i].Wanted),
            });
        }

        double[] sums = [.. grid.Select((_, i) => best.Sum(c => c.Errors[i]))];
        int at = Enumerable.Range(0, sums.Length).MaxBy(i => Math.Abs(sums[i]));
        return new Realisation(sections, Math.Abs(sums[at]), Frequency.FromHertz(grid[at]), HalfPower(stages, request.Target.Shape!.Corners[0].Hertz), tried, []);
    }

    /// <summary>Integrator capacitor of the series that brings R nearest the middle of the resistors' limits; R1 a tenth of it, but within the limits.</summary>
    private static StateVariableSection? StateVariableFor(RealisationRequest request, AnalogSection wanted)
    {
        if (wanted.Q is not { } q || q <= StateVariableSection.WorthwhileQ)
        {
            return null;
        }

        double middle = Math.Sqrt(request.LeastResistor.Ohms * request.GreatestResistor.Ohms);
        double c = Math.Clamp(1 / (wanted.PoleAngular * middle), request.LeastCapacitor.Farads, request.GreatestCapacitor.Farads);
        double r1 = Math.Max(request.LeastResistor.Ohms, Math.Min(middle / 10, request.GreatestResistor.Ohms / ((3 * q) - 1)));
        return StateVariableSection.Design(Frequency.FromHertz(wanted.PoleHertz), q, PreferredValues.Nearest(Capacitance.FromFarads(c), request.CapacitorSeries),
            PreferredValues.Nearest(Resistance.FromOhms(r1), request.ResistorSeries), request.ResistorSeries, request.OpAmp);
    }

    private static Frequency? HalfPower(Stage[] stages, double corner)
    {
        double target = AsBuiltSection.PowerResponse(stages, corner * 1e-4) / 2;
        double F(double f) => AsBuiltSection.PowerResponse(stages, f) - target;
        return F(10 * corner) < 0 ? Frequency.FromHertz(MathExtra.Bisect(F, corner * 1e-3, 10 * corner)) : null;
    }

    /// <summary>The order whose largest swing anywhere inside is least.</summary>
    private static Candidate[] Order(Candidate[] sections)
    {
        Candidate[] tamestFirst = [.. sections.OrderBy(c => c.Wanted.Q ?? 0)];
        // Ten orders of five sections are 120; more sections stay tamest first, which is never far off.
        if (5 < sections.Length)
        {
            return tamestFirst;
        }

        Candidate[] best = tamestFirst;
        double least = LargestPeak(best);
        foreach (Candidate[] order in Permutations(tamestFirst))
        {
            double peak = LargestPeak(order);
            if (peak < least - 1e-9)
            {
                (best, least) = (order, peak);
            }
        }

        return best;
    }

    private static double LargestPeak(Candidate[] order) => Enumerable.Range(1, order.Length).Max(n => Peak(order.Take(n)));

    private static double Peak(IEnumerable<Candidate> sections)
    {
        Candidate[] all = [.. sections];
        double low = all.Min(c => c.Wanted.PoleHertz) / 10;
        double high = all.Max(c => c.Wanted.PoleHertz) * 3;
        double peak = 0;
        for (int i = 0; i <= 100; i++)
        {
            var s = new Complex(0, 2 * Math.PI * low * Math.Pow(high / low, i / 100.0));
            double gain = 1;
            foreach (Candidate c in all)
            {
                gain *= Complex.Abs(c.Parts.Numerator(s) / c.Parts.Denominator(s));
            }

            peak = Math.Max(peak, gain);
        }

        return peak;
    }

    private static IEnumerable<Candidate[]> Permutations(Candidate[] items)
    {
        if (items.Length < 2)
        {
            yield return items;
            yield break;
        }

        for (int i = 0; i < items.Length; i++)
        {
            foreach (Candidate[] rest in Permutations([.. items[..i], .. items[(i + 1)..]]))
            {
                yield return [items[i], .. rest];
            }
        }
    }

    private static Stage Build(RealisationRequest request, SectionParts p, string name) => p.Kind switch
    {
        SectionKind.Rc => new RcSection
        {
            Name = name, R = Resistance.FromOhms(p.R1), C = Capacitance.FromFarads(p.C1), OpAmp = request.OpAmp,
            ResistorTolerance = request.ResistorTolerance, CapacitorTolerance = request.CapacitorTolerance,
        },
        SectionKind.SallenKey or SectionKind.SallenKeyEqual => new SallenKeySection
        {
            FeedbackResistor = Resistance.FromOhms(p.Rf), GroundResistor = double.IsPositiveInfinity(p.Rg) ? null : Resistance.FromOhms(p.Rg),
            Name = name, R1 = Resistance.FromOhms(p.R1), R2 = Resistance.FromOhms(p.R2), C1 = Capacitance.FromFarads(p.C1), C2 = Capacitance.FromFarads(p.C2), OpAmp = request.OpAmp,
            ResistorTolerance = request.ResistorTolerance, CapacitorTolerance = request.CapacitorTolerance,
        },
        SectionKind.MultipleFeedback => new MultipleFeedbackSection
        {
            Name = name, R1 = Resistance.FromOhms(p.R1), R2 = Resistance.FromOhms(p.R2), R3 = Resistance.FromOhms(p.R3),
            C1 = Capacitance.FromFarads(p.C1), C2 = Capacitance.FromFarads(p.C2), OpAmp = request.OpAmp,
            ResistorTolerance = request.ResistorTolerance, CapacitorTolerance = request.CapacitorTolerance,
        },
        _ => throw new InvalidOperationException($"Section {p.Kind} is not handled."),
    };

    /// <summary>A section that could be built, with its error against the ideal at each point of the grid [dB].</summary>
    private sealed record Candidate(SectionParts Parts, AnalogSection Wanted, double[] Errors, double Error);
}
