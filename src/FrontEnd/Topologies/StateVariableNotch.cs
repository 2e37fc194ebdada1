using System.Numerics;
using FrontEnd.Circuits;
using FrontEnd.Fields;
using static FrontEnd.Circuits.Circuit;
using static FrontEnd.Fields.FieldRange;
using static FrontEnd.Fields.Make;
using static FrontEnd.Topologies.StageFields;

namespace FrontEnd.Topologies;

/// <summary>Analogue notch of four op-amps: the high-pass and the low-pass output of a state-variable filter added. Its null stays whatever
/// the parts are, they only move it; its Q is set by two resistors and does not run away.</summary>
/// <remarks>Matched parts: f0 = 1/(2πRC), Q = (1 + R2/R1)/3, gain 1 far from the notch, not inverting. The band-pass output swings Q times
/// what comes in at the notch's own frequency: it is a node that can clip. With da = sRaCa + (1 + sRaCa)/A, db alike, N = R5·(1/R3 + 1/R4 +
/// 1/R5), β = R1/(R1 + R2): H = (R5/R3)·(R8/R6·da·db + R8/R7)/{[(1 + N/A)·da·db + N·β·db + R5/R4]·(1 + (1 + R8/R6 + R8/R7)/A)}.
/// Derived; Q and R2/R1 agree with S. Franco, Design with Operational Amplifiers and Analog Integrated Circuits, Example 3.18. The op-amps'
/// output resistance plays no part so far below their bandwidth: the formula leaves it out, the network has it.</remarks>
public sealed record StateVariableNotch : Stage
{
    private const string HighPass = "high-pass", BandPass = "band-pass", LowPass = "low-pass";

    internal static readonly IReadOnlyList<Variant> Variants =
    [
        Variant.Make("notch", "state-variable", "a state-variable notch", () => new StateVariableNotch(), Of<StateVariableNotch>(
        [
            Ohms("ra", "Ra", "31.6 kΩ", "Ra, of the first integrator, from the high-pass output", (StateVariableNotch s) =>
                s.Ra, (s, v) => s with { Ra = v }),
            Ohms("rb", "Rb", "31.6 kΩ", "Rb, of the second integrator, from the band-pass output", (StateVariableNotch s) =>
                s.Rb, (s, v) => s with { Rb = v }),
            Farads("ca", "Ca", "100 nF", "Ca, of the first integrator", (StateVariableNotch s) => s.Ca, (s, v) => s with { Ca = v }),
            Farads("cb", "Cb", "100 nF", "Cb, of the second integrator", (StateVariableNotch s) => s.Cb, (s, v) => s with { Cb = v }),
            Ohms("r1", "R1", "10 kΩ", "R1, from the first amplifier's + input to common", (StateVariableNotch s) =>
                s.R1, (s, v) => s with { R1 = v }),
            Value("r2", "R2", Closed(0, 1e10), "140 kΩ", Practice,
                "R2, from the band-pass output to the first amplifier's + input; Q = (1 + R2/R1)/3", (StateVariableNotch s) => s.R2,
                (s, v) => s with { R2 = v }),
            Ohms("r3", "R3", "20 kΩ", "R3, from the input to the first amplifier", (StateVariableNotch s) =>
                s.R3, (s, v) => s with { R3 = v }),
            Ohms("r4", "R4", "20 kΩ", "R4, from the low-pass output to the first amplifier", (StateVariableNotch s) =>
                s.R4, (s, v) => s with { R4 = v }),
            Ohms("r5", "R5", "20 kΩ", "R5, feedback of the first amplifier", (StateVariableNotch s) => s.R5, (s, v) => s with { R5 = v }),
            Ohms("r6", "R6", "20 kΩ", "R6, from the high-pass output to the adding amplifier", (StateVariableNotch s) =>
                s.R6, (s, v) => s with { R6 = v }),
            Ohms("r7", "R7", "20 kΩ", "R7, from the low-pass output to the adding amplifier", (StateVariableNotch s) =>
                s.R7, (s, v) => s with { R7 = v }),
            Ohms("r8", "R8", "20 kΩ", "R8, feedback of the adding amplifier", (StateVariableNotch s) => s.R8, (s, v) => s with { R8 = v }),
        ]), stage => stage is StateVariableNotch),
    ];

    /// <summary>Resistor of the first integrator, high-pass to band-pass output.</summary>
    public Resistance Ra { get; init; } = Resistance.FromKilohms(31.6);

    /// <summary>Resistor of the second integrator, band-pass to low-pass output.</summary>
    public Resistance Rb { get; init; } = Resistance.FromKilohms(31.6);

    public Capacitance Ca { get; init; } = Capacitance.FromNanofarads(100);

    public Capacitance Cb { get; init; } = Capacitance.FromNanofarads(100);

    /// <summary>From the first amplifier's + input to common.</summary>
    public Resistance R1 { get; init; } = Resistance.FromKilohms(10);

    /// <summary>From the band-pass output to the first amplifier's + input.</summary>
    public Resistance R2 { get; init; } = Resistance.FromKilohms(140);

    /// <summary>From the input to the first amplifier's − input.</summary>
    public Resistance R3 { get; init; } = Resistance.FromKilohms(20);

    /// <summary>From the low-pass output to the first amplifier's − input.</summary>
    public Resistance R4 { get; init; } = Resistance.FromKilohms(20);

    /// <summary>Feedback of the first amplifier.</summary>
    public Resistance R5 { get; init; } = Resistance.FromKilohms(20);

    /// <summary>From the high-pass output to the adding amplifier.</summary>
    public Resistance R6 { get; init; } = Resistance.FromKilohms(20);

    /// <summary>From the low-pass output to the adding amplifier.</summary>
    public Resistance R7 { get; init; } = Resistance.FromKilohms(20);

    /// <summary>Feedback of the adding amplifier.</summary>
    public Resistance R8 { get; init; } = Resistance.FromKilohms(20);

    /// <summary>The values of each of the four.</summary>
    public OpAmp OpAmp { get; init; } = OpAmp.MicropowerCmos;

    /// <summary>f0 for matched parts.</summary>
    public Frequency Centre => Frequency.FromHertz(1 / (2 * Math.PI * Math.Sqrt(Ra.Ohms * Rb.Ohms * Ca.Farads * Cb.Farads)));

    /// <summary>Q with ideal op-amps: √(R5/R4·RaCa/(RbCb))/(N·β), (1 + R2/R1)/3 for matched parts.</summary>
    public double Q
    {
        get
        {
            double n = 1 + (R5 / R3) + (R5 / R4), beta = R1.Ohms / (R1.Ohms + R2.Ohms);
            return Math.Sqrt(R5 / R4 * Ra.Ohms * Ca.Farads / (Rb.Ohms * Cb.Farads)) / (n * beta);
        }
    }

    public override StageRole Role => StageRole.Notch;

    public override OpAmp? FittedOpAmp => OpAmp;

    /// <summary>Far below the notch: R4·R8/(R3·R7).</summary>
    public override double NominalGain => R4 / R3 * (R8 / R7);

    public override string Word => "state-variable notch";

    public override IReadOnlyList<string> Lines => ["state-variable", $"notch at {QuantityText.Format(Centre)}",
        $"gain {QuantityText.FormatNumber(NominalGain)}"];

    public override string GainFormula => "R4/R3·R8/R7";

    public override string GainText => $" · {QuantityText.FormatPart(R4)}/{QuantityText.FormatPart(R3)} · {QuantityText.FormatPart(R8)}/{QuantityText.FormatPart(R7)}";

    public override string PartsText =>
        $"state-variable filter and adding amplifier, 4 op-amps: integrators Ra and Rb {QuantityText.FormatPart(Ra)}, Ca and Cb {QuantityText.FormatPart(Ca)}; "
        + $"R1 {QuantityText.FormatPart(R1)} from the first + input to common, R2 {QuantityText.FormatPart(R2)} from the band-pass output to it; "
        + $"R3 from the input, R4 from the low-pass output and R5 feedback, all {QuantityText.FormatPart(R5)}; "
        + "R6 from the high-pass output, R7 from the low-pass output and R8 feedback of the adding amplifier, the same";

    public override string Remark => "Whatever the parts are, the null stays deep; they only move it away from the mains.";

    internal override NotchFacts? Notch => new(Centre, Q, AsBuilt());

    public override StageShape Shape => StageShape.StateVariable;

    public override Stage WithOpAmp(OpAmp opAmp) => this with { OpAmp = opAmp };

    internal override Circuit Circuit() => Draft()
        .Resistor("ra", "Ra, high-pass output to first integrator", HighPass, "a", Ra)
        .Resistor("rb", "Rb, band-pass output to second integrator", BandPass, "b", Rb)
        .Capacitor("ca", "Ca, first integrator to band-pass output", "a", BandPass, Ca)
        .Capacitor("cb", "Cb, second integrator to low-pass output", "b", LowPass, Cb)
        .Resistor("r1", "R1, first + input to common", "plus", Common, R1)
        .Resistor("r2", "R2, band-pass output to first + input", BandPass, "plus", R2)
        .Resistor("r3", "R3, input to first amplifier", Input, "sum", R3)
        .Resistor("r4", "R4, low-pass output to first amplifier", LowPass, "sum", R4)
        .Resistor("r5", "R5, first amplifier's feedback", HighPass, "sum", R5)
        .Resistor("r6", "R6, high-pass output to adding amplifier", HighPass, "add", R6)
        .Resistor("r7", "R7, low-pass output to adding amplifier", LowPass, "add", R7)
        .Resistor("r8", "R8, adding amplifier's feedback", Out, "add", R8)
        .OpAmp(OpAmp, HighPass, "plus", "sum", "first op-amp, high-pass")
        .OpAmp(OpAmp, BandPass, Common, "a", "first integrator's op-amp, band-pass")
        .OpAmp(OpAmp, LowPass, Common, "b", "second integrator's op-amp, low-pass")
        .OpAmp(OpAmp, Out, Common, "add", "adding op-amp")
        .Finish();

    /// <summary>The circuit as built: parts by name, transfer, tolerance.</summary>
    public NotchCircuit AsBuilt()
    {
        OpAmp opAmp = OpAmp;
        return new NotchCircuit(
            ["Ra", "Rb", "Ca", "Cb", "R1", "R2", "R3", "R4", "R5", "R6", "R7", "R8"],
            [Ra.Ohms, Rb.Ohms, Ca.Farads, Cb.Farads, R1.Ohms, R2.Ohms, R3.Ohms, R4.Ohms, R5.Ohms, R6.Ohms, R7.Ohms, R8.Ohms],
            Centre.Hertz,
            (x, s) =>
            {
                Complex inverse = (1 / opAmp.DcGain) + (s / (2 * Math.PI * opAmp.GainBandwidth.Hertz));
                Complex a = s * (x[0] * x[2]), b = s * (x[1] * x[3]);
                Complex da = a + ((1 + a) * inverse), db = b + ((1 + b) * inverse), both = da * db;
                double noiseGain = x[8] * ((1 / x[6]) + (1 / x[7]) + (1 / x[8])), beta = x[4] / (x[4] + x[5]), high = x[11] / x[9],
                    low = x[11] / x[10];
                return (
                    x[8] / x[6] * ((high * both) + low),
                    (((1 + (noiseGain * inverse)) * both) + (noiseGain * beta * db) + (x[8] / x[7])) * (1 + ((1 + high + low) * inverse)));
            });
    }
}
