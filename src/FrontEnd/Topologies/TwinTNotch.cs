using System.Numerics;
using FrontEnd.Circuits;
using FrontEnd.Fields;
using static FrontEnd.Circuits.Circuit;
using static FrontEnd.Fields.FieldRange;
using static FrontEnd.Fields.Make;
using static FrontEnd.Topologies.StageFields;

namespace FrontEnd.Topologies;

/// <summary>Analogue notch: a twin-T network and a non-inverting amplifier of gain G = 1 + Rf/Rg whose output also drives the foot of R3;
/// the foot of C3 is at common.</summary>
/// <remarks>Ideal parts: H = G·(1 + S²)/(1 + 2(2 − G)·S + S²), S = s/ω0, Q = 1/(2(2 − G)). (Each foot carries half of what the network
/// takes from them, hence G up to 2; both feet at common and no amplifier: Q = 1/4.) Source: B. Carter, R. Mancini (eds.), Op Amps for
/// Everyone, design reference SLOD006, section 16.6.1, equation 16-21. Unequal parts leave a residue at the null and move it, which is why
/// a digital notch is deeper:
/// <see cref="NotchCircuit"/> works that out. R3 and C3 are two of the others in parallel, which keeps the ratio.</remarks>
public sealed record TwinTNotch : Stage
{
    internal static readonly IReadOnlyList<Variant> Variants =
    [
        Variant.Make("notch", "twin-t", "an analogue notch", () => new TwinTNotch(), Of<TwinTNotch>(
        [
            Ohms("r1", "R1", "31.6 kΩ", "R1, from the input to the resistors' middle", (TwinTNotch s) => s.R1, (s, v) => s with { R1 = v }),
            Ohms("r2", "R2", "31.6 kΩ", "R2, from the resistors' middle to the op-amp's + input", (TwinTNotch s) =>
                s.R2, (s, v) => s with { R2 = v }),
            Ohms("r3", "R3", "15.8 kΩ", "R3, from the capacitors' middle to the output; half of R1", (TwinTNotch s) =>
                s.R3, (s, v) => s with { R3 = v }),
            Farads("c1", "C1", "100 nF", "C1, from the input to the capacitors' middle", (TwinTNotch s) =>
                s.C1, (s, v) => s with { C1 = v }),
            Farads("c2", "C2", "100 nF", "C2, from the capacitors' middle to the op-amp's + input", (TwinTNotch s) =>
                s.C2, (s, v) => s with { C2 = v }),
            Farads("c3", "C3", "200 nF", "C3, from the resistors' middle to common; twice C1", (TwinTNotch s) =>
                s.C3, (s, v) => s with { C3 = v }),
            Value("feedback-resistor", "Rf", Closed(0, 1e10), "18 kΩ", Practice, "Rf of the gain G = 1 + Rf/Rg; Q = 1/(2(2 − G))",
                (TwinTNotch s) => s.FeedbackResistor, (s, v) => s with { FeedbackResistor = v }),
            Maybe("ground-resistor", "Rg", Above(0, 1e10), "none", "20 kΩ", Practice,
                "Rg of the gain G = 1 + Rf/Rg; \"none\" makes a follower, Q 0.5",
                (TwinTNotch s) => s.GroundResistor, (s, v) => s with { GroundResistor = v }) with { DefaultIsValue = true },
        ]), stage => stage is TwinTNotch, isDefault: true),
    ];

    /// <summary>Input to the resistors' middle.</summary>
    public Resistance R1 { get; init; } = Resistance.FromKilohms(31.6);

    /// <summary>Resistors' middle to the amplifier's + input.</summary>
    public Resistance R2 { get; init; } = Resistance.FromKilohms(31.6);

    /// <summary>Capacitors' middle to the output; half of R1.</summary>
    public Resistance R3 { get; init; } = Resistance.FromKilohms(15.8);

    /// <summary>Input to the capacitors' middle.</summary>
    public Capacitance C1 { get; init; } = Capacitance.FromNanofarads(100);

    /// <summary>Capacitors' middle to the amplifier's + input.</summary>
    public Capacitance C2 { get; init; } = Capacitance.FromNanofarads(100);

    /// <summary>Resistors' middle to common; twice C1.</summary>
    public Capacitance C3 { get; init; } = Capacitance.FromNanofarads(200);

    /// <summary>Rf, from the output to the − input; of no effect without Rg.</summary>
    public Resistance FeedbackResistor { get; init; } = Resistance.FromKilohms(18);

    /// <summary>Rg, from the − input to common; null makes a follower, Q ½.</summary>
    public Resistance? GroundResistor { get; init; } = Resistance.FromKilohms(20);

    public OpAmp OpAmp { get; init; } = OpAmp.MicropowerCmos;

    public override StageRole Role => StageRole.Notch;

    public override OpAmp? FittedOpAmp => OpAmp;

    public override string Word => "twin-T notch";

    public override IReadOnlyList<string> Lines => [Word, $"at {QuantityText.Format(Centre)}",
        $"gain {QuantityText.FormatNumber(NominalGain)}"];

    public override string GainFormula => GroundResistor is null ? "" : "(1 + Rf/Rg)";

    public override string GainText => NonInvertingText(FeedbackResistor, GroundResistor);

    public override string PartsText =>
        $"twin-T, amplifier of gain {QuantityText.FormatTrimmed(NominalGain, "1", 4)} that drives the foot of R3: R1 and R2 {QuantityText.FormatPart(R1)}, R3 two of them in parallel to the output, "
        + $"C1 and C2 {QuantityText.FormatPart(C1)}, C3 two of them in parallel to common{GainParts(FeedbackResistor, GroundResistor)}";

    public override string Remark =>
        "Unequal parts leave a residue at the null as well as moving it. If the mains must be attenuated more, match the parts, or filter after the converter, with a sampling rate.";

    internal override NotchFacts? Notch => new(Centre, Q, AsBuilt());

    /// <summary>G.</summary>
    public override double NominalGain => NonInverting(FeedbackResistor, GroundResistor);

    /// <summary>f0 = 1/(2π·√(R1·R2·C1·C2)) for matched parts.</summary>
    public Frequency Centre => Frequency.FromHertz(1 / (2 * Math.PI * Math.Sqrt(R1.Ohms * R2.Ohms * C1.Farads * C2.Farads)));

    /// <summary>Q for matched parts and an ideal op-amp.</summary>
    public double Q => QFor(NominalGain);

    /// <summary>True where the circuit does not oscillate, with an ideal op-amp: the Routh criterion on the cubic denominator. Derived; for
    /// matched parts it says G below 2.</summary>
    public bool IsStable
    {
        get
        {
            (double g1, double g2, double g3) = (1 / R1.Ohms, 1 / R2.Ohms, 1 / R3.Ohms);
            (double c1, double c2, double c3) = (C1.Farads, C2.Farads, C3.Farads);
            double gain = NominalGain, foot = gain * c2 * g3;

            // (g2 + sC2)·Sr·Sc − g2²·Sc − (sC2)²·Sr − G·sC2·g3·Sr with Sr = g1 + g2 + sC3, Sc = g3 + s(C1 + C2).
            double a0 = (g1 + g2) * g3, a1 = ((g1 + g2) * (c1 + c2)) + (c3 * g3), a2 = c3 * (c1 + c2);
            double cubic = (c2 * a2) - (c2 * c2 * c3), square = (g2 * a2) + (c2 * a1) - (c2 * c2 * (g1 + g2)) - (foot * c3);
            double linear = (g2 * a1) + (c2 * a0) - (g2 * g2 * (c1 + c2)) - (foot * (g1 + g2)), constant = (g2 * a0) - (g2 * g2 * g3);
            return 0 < square && 0 < linear && cubic * constant < square * linear;
        }
    }

    public override StageShape Shape => StageShape.TwinT;

    public override Stage WithOpAmp(OpAmp opAmp) => this with { OpAmp = opAmp };

    internal override Circuit Circuit() => Draft()
        .Resistor("r1", "R1, input to middle", Input, "between the resistors", R1)
        .Resistor("r2", "R2, middle to op-amp", "between the resistors", "P", R2)
        .Resistor("r3", "R3, middle to output; two in parallel", "between the capacitors", Out, R3, pieces: 2)
        .Capacitor("c1", "C1, input to middle", Input, "between the capacitors", C1)
        .Capacitor("c2", "C2, middle to op-amp", "between the capacitors", "P", C2)
        .Capacitor("c3", "C3, middle to common; two in parallel", "between the resistors", Common, C3, pieces: 2)
        .NonInverting(OpAmp, "P", FeedbackResistor, GroundResistor)
        .Finish();

    internal override IEnumerable<StageFault> Faults(bool isLast)
    {
        if (0 < R1.Ohms && 0 < R2.Ohms && 0 < R3.Ohms && !IsStable)
        {
            yield return new(Messages.StageOscillates, Severity.Error, $"the notch `{Name}` oscillates: its gain is {NominalGain:0.###}",
                "with matched parts 1 + Rf/Rg must be below 2",
                key => $"lower {key}.feedback-resistor", "feedback-resistor", "ground-resistor");
        }
    }

    /// <summary>Gain for a Q: G = 2 − 1/(2Q), Q above ½.</summary>
    public static double GainFor(double q) => 2 - (1 / (2 * q));

    /// <summary>Q for a gain: 1/(2(2 − G)); G = 0 is the passive network with both feet at common.</summary>
    public static double QFor(double gain) => 1 / (2 * (2 - gain));

    /// <summary>The circuit as built: parts by name, transfer, tolerance.</summary>
    public NotchCircuit AsBuilt()
    {
        OpAmp opAmp = OpAmp;
        return GroundResistor is { } ground
            ? new NotchCircuit(
                ["R1", "R2", "R3", "C1", "C2", "C3", "Rf", "Rg"],
                [R1.Ohms, R2.Ohms, R3.Ohms, C1.Farads, C2.Farads, C3.Farads, FeedbackResistor.Ohms, ground.Ohms],
                Centre.Hertz,
                (x, s) => Transfer(x, x[6] + x[7] == 0 ? 1 : x[7] / (x[6] + x[7]), 1 / (x[6] + x[7]), opAmp, s))
            : new NotchCircuit(
                ["R1", "R2", "R3", "C1", "C2", "C3"], [R1.Ohms, R2.Ohms, R3.Ohms, C1.Farads, C2.Farads, C3.Farads], Centre.Hertz, (x, s) =>
                    Transfer(x, 1, 0, opAmp, s));
    }

    /// <summary>Numerator and denominator by Cramer's rule on the two equations that are left when the middle nodes are put in: no current
    /// leaves the + input P; the op-amp's law at its output O with Ro.</summary>
    /// <param name="share">β = 1/G.</param>
    /// <param name="load">1/(Rf + Rg).</param>
    private static (Complex Numerator, Complex Denominator) Transfer(double[] x, double share, double load, OpAmp opAmp, Complex s)
    {
        Complex inverse = (1 / opAmp.DcGain) + (s / (2 * Math.PI * opAmp.GainBandwidth.Hertz));
        double ro = opAmp.OutputResistance.Ohms;
        (double g1, double g2, double g3) = (1 / x[0], 1 / x[1], 1 / x[2]);
        (Complex y1, Complex y2, Complex y3) = (s * x[3], s * x[4], s * x[5]);
        Complex resistors = g1 + g2 + y3, capacitors = y1 + y2 + g3;

        // P·a + O·b = c: currents at P. P·d + O·e = f: P = O·β + (O + Ro·(what the output gives))/A.
        Complex a = g2 + y2 - (g2 * g2 / resistors) - (y2 * y2 / capacitors), b = -y2 * g3 / capacitors,
            c = (g2 * g1 / resistors) + (y2 * y1 / capacitors);
        Complex pull = inverse * ro * g3 / capacitors;
        Complex d = 1 + (pull * y2), e = -(share + (inverse * (1 + (ro * (g3 + load)))) - (pull * g3)), f = -pull * y1;
        return ((a * f) - (c * d), (a * e) - (b * d));
    }
}
