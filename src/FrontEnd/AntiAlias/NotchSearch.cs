using FrontEnd.Topologies;

namespace FrontEnd.AntiAlias;

/// <summary>What an analogue notch is to be built from.</summary>
internal sealed record NotchRequest : PartsRequest
{
    /// <summary>Frequency to be removed.</summary>
    public required Frequency Centre { get; init; }

    /// <summary>Centre over the width between the −3 dB points.</summary>
    public required double Q { get; init; }

    /// <summary>The circuit.</summary>
    public NotchKind Kind { get; init; } = NotchKind.TwinT;
}

/// <summary>The circuits of an analogue notch.</summary>
public enum NotchKind
{
    /// <summary>One op-amp; Q and depth hang on how well the parts match.</summary>
    TwinT,

    /// <summary>Four op-amps.</summary>
    StateVariable,
}

/// <summary>An analogue notch as parts.</summary>
/// <param name="Circuit">As built.</param>
/// <param name="FormulaQ">Q by the formula for matched parts and an ideal op-amp.</param>
/// <param name="BuiltQ">Q of the pole pair with rounded parts and real op-amps.</param>
public sealed record NotchRealisation(NotchCircuit Circuit, double FormulaQ, double BuiltQ)
{
    /// <summary>The parts as a stage of a design.</summary>
    public required Stage Stage { get; init; }

    public required NotchKind Kind { get; init; }
}

/// <summary>From centre and Q to the parts of an analogue notch in preferred values.</summary>
/// <remarks>The null's place hangs on R·C alone: of all capacitors with the resistor rounded down and up the pair is taken whose f0 is
/// nearest; pairs nearer than what parts of 0.1 % can hold count as equal, and of those the smallest resistor makes the least noise. Then
/// the two resistors that set Q are chosen for the Q as built, the op-amp's bandwidth included.</remarks>
internal static class NotchSearch
{
    /// <summary>An error of f0 that no part of 0.1 % can be told from.</summary>
    private const double NearEnough = 3e-4;

    /// <summary>The parts; null with a finding where they cannot be had.</summary>
    public static (NotchRealisation? Best, IReadOnlyList<Finding> Findings) Find(NotchRequest request)
    {
        // The twin-T with a follower has Q ½, the state-variable filter without R2 ⅓.
        double leastQ = request.Kind == NotchKind.TwinT ? 0.5 : 1 / 3.0;
        if (!(leastQ <= request.Q && request.Q <= MostQ))
        {
            return (null, [RealisationMessages.NotchQ(request.Field, request.Q, leastQ, MostQ)]);
        }

        var pairs = request.Capacitors
            .SelectMany(c =>
                request.Rounded(SectionDesign.Rc(request.Centre, Capacitance.FromFarads(c)).Ohms).Select(r =>
                    (R: r, C: c, Error: Math.Abs(Math.Log(2 * Math.PI * r * c * request.Centre.Hertz)))))
            .Where(pair => request.Kind != NotchKind.TwinT || request.LeastResistor.Ohms <= pair.R / 2)
            .ToList();
        if (pairs.Count == 0)
        {
            return (null, [RealisationMessages.NoPartsInLimits(request.Field, request.Centre, request.Q, true)]);
        }

        double limit = Math.Max(NearEnough, pairs.Min(pair => pair.Error));
        (double ohms, double farads, _) = pairs.Where(pair => pair.Error <= limit).MinBy(pair => pair.R);
        Func<double, IEnumerable<NotchRealisation>> near = request.Kind == NotchKind.TwinT
            ? q => TwinT(request, ohms, farads, q)
            : q => StateVariable(request, ohms, farads, q);

        // Designed for a Q displaced by what the op-amps did, as in the search for low-pass sections.
        double aim = request.Q;
        NotchRealisation best = Nearest(near(aim));
        for (int round = 0; round < 3 && 0 < best.BuiltQ; round++)
        {
            aim = Math.Clamp(aim * request.Q / best.BuiltQ, leastQ, 10 * MostQ);
            NotchRealisation next = Nearest(near(aim));
            best = Nearest([best, next]);
        }

        return (best, []);

        NotchRealisation Nearest(IEnumerable<NotchRealisation> all) =>
            all.MinBy(one => one.BuiltQ <= 0 ? double.PositiveInfinity : Math.Abs(Math.Log(one.BuiltQ / request.Q)))!;
    }

    /// <summary>Beyond it no part holds the Q (common practice, no source).</summary>
    public const double MostQ = 100;

    private static IEnumerable<NotchRealisation> TwinT(NotchRequest request, double ohms, double farads, double q)
    {
        foreach ((double rf, double rg) in request.GainResistors(TwinTNotch.GainFor(q)))
        {
            var notch = new TwinTNotch
            {
                Name = "analogue notch 1",
                R1 = Resistance.FromOhms(ohms), R2 = Resistance.FromOhms(ohms), R3 = Resistance.FromOhms(ohms / 2),
                C1 = Capacitance.FromFarads(farads), C2 = Capacitance.FromFarads(farads), C3 = Capacitance.FromFarads(2 * farads),
                FeedbackResistor = Resistance.FromOhms(rf), GroundResistor = double.IsPositiveInfinity(rg)
                    ? null
                    : Resistance.FromOhms(rg), OpAmp = request.OpAmp,
                ResistorTolerance = request.ResistorTolerance, CapacitorTolerance = request.CapacitorTolerance,
            };
            if (notch.IsStable)
            {
                NotchCircuit circuit = notch.AsBuilt();
                yield return new NotchRealisation(circuit, notch.Q, circuit.Poles(notch.Q).Q) { Stage = notch, Kind = NotchKind.TwinT };
            }
        }
    }

    private static IEnumerable<NotchRealisation> StateVariable(NotchRequest request, double ohms, double farads, double q)
    {
        // R2/R1 = 3Q − 1, with R2 within the limits; the six equal ones as the integrators', which they load alike.
        double ratio = Math.Max(0, (3 * q) - 1),
            from = Math.Max(request.LeastResistor.Ohms,
                Math.Min(5 * request.LeastResistor.Ohms, request.GreatestResistor.Ohms / (1 + ratio)));
        foreach (double r1 in PreferredValues.Between(from, 3 * from, request.ResistorSeries))
        {
            Resistance r = Resistance.FromOhms(ohms), equal = PreferredValues.Nearest(Resistance.FromKilohms(20), request.ResistorSeries);
            Capacitance c = Capacitance.FromFarads(farads);
            var notch = new StateVariableNotch
            {
                Name = "analogue notch 1", Ra = r, Rb = r, Ca = c, Cb = c,
                R1 = Resistance.FromOhms(r1),
                R2 = Resistance.FromOhms(ratio == 0 ? 0 : PreferredValues.Nearest(ratio * r1, request.ResistorSeries)),
                R3 = equal, R4 = equal, R5 = equal, R6 = equal, R7 = equal, R8 = equal,
                OpAmp = request.OpAmp, ResistorTolerance = request.ResistorTolerance, CapacitorTolerance = request.CapacitorTolerance,
            };
            NotchCircuit circuit = notch.AsBuilt();
            yield return new NotchRealisation(circuit, notch.Q, circuit.Poles(notch.Q).Q) { Stage = notch, Kind = NotchKind.StateVariable };
        }
    }
}
