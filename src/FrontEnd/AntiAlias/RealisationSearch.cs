using FrontEnd.Filters;
using FrontEnd.Topologies;

namespace FrontEnd.AntiAlias;

/// <summary>From an ideal low-pass to parts: preferred values whose response as built, with the real op-amp, is nearest to the
/// ideal.</summary>
/// <remarks>
/// For each pole pair of unity-gain Sallen–Key or multiple feedback every pair of capacitors in the limits with C1/C2 between 1 and 8 times
/// the least ratio is tried;
/// the exact resistors are corrected for the op-amp (the parts are designed for a pole displaced the other way) and each is rounded down
/// and up.
/// The equal-component form tries every capacitor, the resistor rounded down and up, and the few pairs Rf, Rg of the series whose gain is
/// nearest (<see cref="SectionCandidates"/>).
/// The best few of each section are then combined, and the combination with the least error of the whole response wins (<see
/// cref="SectionArrangement"/>).
/// Every figure is of the section as built; nothing is judged by its ideal.
/// <para>The order of the sections is the one with the least of the largest gains from the input to any section's output; of equal ones the
/// tamest first.</para>
/// </remarks>
internal static class RealisationSearch
{
    /// <summary>Greatest order whose parts are sought.</summary>
    public const int MostOrder = 8;

    /// <summary>Sections kept for the combination, per pole pair.</summary>
    private const int Kept = 10;

    private const int GridPoints = 60;

    /// <summary>The nearest build; null together with findings where the filter cannot be built of these sections in these
    /// limits.</summary>
    public static (Realisation? Best, IReadOnlyList<Finding> Findings) Find(RealisationRequest request)
    {
        IReadOnlyList<Finding> findings = Check(request);
        if (findings.Any(f => f.Severity == Severity.Error))
        {
            return (null, findings);
        }

        double corner = request.Target.Shape!.Corners[0].Hertz;
        double[] grid = [.. Enumerable.Range(0, GridPoints + 1).Select(i => corner * 0.02 * Math.Pow(100, (double)i / GridPoints))];
        var kept = new List<SectionCandidate[]>();
        foreach (AnalogSection wanted in request.Target.Sections.Sections)
        {
            IReadOnlyList<SectionCandidate> candidates = SectionCandidates.Of(request, wanted, grid);
            if (candidates.Count == 0)
            {
                bool equal = request.Topology == SectionKind.SallenKeyEqual;
                Finding none = RealisationMessages.NoPartsInLimits(request.Field, Frequency.FromHertz(wanted.PoleHertz), wanted.Q, equal);
                return (null, [.. findings, none]);
            }

            kept.Add([.. candidates.OrderBy(c => c.Error).Take(Kept)]);
        }

        SectionCandidate[] best = SectionArrangement.Nearest(kept, grid.Length);
        return (Describe(request, best, grid), findings);
    }

    private static List<Finding> Check(RealisationRequest request)
    {
        var findings = new List<Finding>();
        if (request.Target.Shape is not LowPass || request.Target.ZeroPoleGain.Zeros.Count != 0)
        {
            findings.Add(RealisationMessages.NotAllPoleLowPass(
                request.Field, request.Target.Shape is LowPass ? SubstituteLowPass.Of(request.Target, request.Requirement) : null, MostOrder));
        }
        else if (request.Topology == SectionKind.Rc)
        {
            throw new ArgumentOutOfRangeException(nameof(request), request.Topology, "A pole pair needs a section of second order.");
        }

        // Op-amp bandwidth wanted: 100·Q·f0 keeps the section within a per cent or so (common practice, no source); the search corrects for
        // less.
        foreach (AnalogSection section in request.Target.Sections.Sections)
        {
            double wanted = 100 * (section.Q ?? 1) * section.PoleHertz;
            if (section.Q is { } q && request.OpAmp.GainBandwidth.Hertz < wanted / 5)
            {
                findings.Add(RealisationMessages.OpAmpTooSlow(
                    request.Field, request.OpAmp.GainBandwidth, Frequency.FromHertz(section.PoleHertz), q));
            }
        }

        return findings;
    }

    private static Realisation Describe(RealisationRequest request, SectionCandidate[] best, double[] grid)
    {
        SectionCandidate[] order = SectionArrangement.Tamest(best);
        Stage[] stages = [.. order.Select((c, i) => Build(request, c.Parts, $"anti-alias {i + 1}"))];
        var sections = new List<RealisedSection>();
        for (int i = 0; i < order.Length; i++)
        {
            (double pole, double? q) = AsBuiltSection.Poles(stages[i]);
            AnalogSection wanted = order[i].Wanted;
            sections.Add(new RealisedSection(
                stages[i], Frequency.FromHertz(wanted.PoleHertz), wanted.Q, Frequency.FromHertz(pole), q,
                AsBuiltSection.Sensitivities(stages[i]),
                SectionArrangement.Peak(order.Take(i + 1)))
            {
                StateVariable = StateVariableFor(request, wanted),
            });
        }

        double[] sums = [.. grid.Select((_, i) => best.Sum(c => c.Errors[i]))];
        int at = Enumerable.Range(0, sums.Length).MaxBy(i => Math.Abs(sums[i]));
        Frequency? half = HalfPower(stages, request.Target.Shape!.Corners[0].Hertz);
        return new Realisation(sections, Math.Abs(sums[at]), Frequency.FromHertz(grid[at]), half);
    }

    /// <summary>Integrator capacitor of the series that brings R nearest the middle of the resistors' limits; R1 a tenth of it, but within
    /// the limits.</summary>
    private static StateVariableSection? StateVariableFor(RealisationRequest request, AnalogSection wanted)
    {
        if (wanted.Q is not { } q || q <= StateVariableSection.WorthwhileQ)
        {
            return null;
        }

        double middle = Math.Sqrt(request.LeastResistor.Ohms * request.GreatestResistor.Ohms);
        double c = Math.Clamp(1 / (wanted.PoleAngular * middle), request.LeastCapacitor.Farads, request.GreatestCapacitor.Farads);
        double r1 = Math.Max(request.LeastResistor.Ohms, Math.Min(middle / 10, request.GreatestResistor.Ohms / ((3 * q) - 1)));
        return StateVariableSection.Design(
            Frequency.FromHertz(wanted.PoleHertz), q, PreferredValues.Nearest(Capacitance.FromFarads(c), request.CapacitorSeries),
            PreferredValues.Nearest(Resistance.FromOhms(r1), request.ResistorSeries), request.ResistorSeries, request.OpAmp);
    }

    private static Frequency? HalfPower(Stage[] stages, double corner)
    {
        double target = AsBuiltSection.PowerResponse(stages, corner * 1e-4) / 2;
        double F(double f) => AsBuiltSection.PowerResponse(stages, f) - target;
        return F(10 * corner) < 0 ? Frequency.FromHertz(MathExtra.Bisect(F, corner * 1e-3, 10 * corner)) : null;
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
            FeedbackResistor = Resistance.FromOhms(p.Rf),
            GroundResistor = double.IsPositiveInfinity(p.Rg) ? null : Resistance.FromOhms(p.Rg),
            Name = name, R1 = Resistance.FromOhms(p.R1), R2 = Resistance.FromOhms(p.R2), C1 = Capacitance.FromFarads(p.C1),
            C2 = Capacitance.FromFarads(p.C2), OpAmp = request.OpAmp,
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
}
