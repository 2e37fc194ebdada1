using System.Globalization;
using FrontEnd.AntiAlias;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Text;
using FrontEnd.Topologies;

namespace FrontEnd.Documents.Sheets;

/// <summary>The part of a filter's page that says what an analogue notch is built of, how deep it is as built, and what its parts' tolerance leaves of it.</summary>
internal static class NotchPage
{
    private static readonly double[] Tolerances = [0.01, 0.001];

    public static void Write(TextPage page, Frequency centre, double q, FilterParts build)
    {
        page.Blank();
        (NotchRealisation? built, IReadOnlyList<Finding> findings) = NotchSearch.Find(new NotchRequest { Centre = centre, Q = q, OpAmp = build.OpAmp, Kind = build.Notch });
        if (built is null)
        {
            FilterPage.NoParts(page, findings);
            return;
        }

        page.Ends("parts", "E12 capacitors, E96 resistors");
        page.Paragraph(Values(built), "  ");
        NotchCircuit circuit = built.Circuit;
        double mains = new Design().Mains.Deviation.Fraction;
        double[] flanks = [centre.Hertz * (1 - mains), centre.Hertz * (1 + mains)];
        page.Blank();
        page.Line($"as built, with the op-amp's real gain-bandwidth product, {QuantityText.FormatPart(build.OpAmp.GainBandwidth)}");
        page.Table(
            [new("", IsText: true), new("")],
            [
                new(["deepest at", QuantityText.Format(Frequency.FromHertz(circuit.NullHertz()), 5)]),
                new(["Q", $"{FilterPage.Plain(built.BuiltQ, 4)} (wanted {FilterPage.Plain(q, 4)})"]),
                new(["Q by formula, ideal op-amp", FilterPage.Plain(built.FormulaQ, 4)]),
                new([$"depth at {QuantityText.FormatPart(centre)}", Depth(circuit.Loss(centre.Hertz))]),
                new([$"depth at the mains' deviation, ±{Share(mains)}", Depth(flanks.Min(f => circuit.Loss(f) ?? double.PositiveInfinity))]),
                new(["gain far from the notch", FilterPage.Plain(System.Numerics.Complex.Abs(circuit.Response(centre.Hertz / 1e4)), 4)]),
                .. built.TwinT is { } notch
                    ? FilterPage.NoiseRows([notch], centre, build.OpAmp)
                    : [new Row(["own noise and dc error of four op-amps", "not worked out"])],
            ],
            heads: false);
        page.Blank();
        page.Line("with every part at its tolerance, the worst way");
        List<Row> rows = [.. Tolerances.Select(tolerance =>
        {
            NotchTolerance worst = circuit.Corners(tolerance, centre.Hertz, built.FormulaQ);
            return new Row(["±" + Share(tolerance), Depth(worst.LeastLoss), FilterPage.Plain(worst.LowestQ, 3), worst.CanOscillate ? "OSCILLATES" : FilterPage.Plain(worst.HighestQ, 3)]);
        })];
        page.Table([new("tolerance"), new($"depth at {QuantityText.FormatPart(centre)}"), new("least Q"), new("greatest Q")], rows);
        page.Blank();
        page.Line("1 % more of one part");
        IReadOnlyList<PartSensitivity> moves = circuit.Sensitivities(built.FormulaQ);
        page.Table(
            [new("part", IsText: true), new("moves f0 by"), new("moves Q by"), new($"leaves at {QuantityText.FormatPart(centre)}")],
            [.. moves.Select((move, part) => new Row([move.Part, FilterPage.Percent(move.ToFrequency), FilterPage.Percent(move.ToQ!.Value), Depth(circuit.With(part, 1.01).Loss(centre.Hertz))]))]);
        page.Paragraph(
            built.TwinT is null
                ? "The null stays a null whatever the parts are; they only move it away from the mains."
                : "Unequal parts leave a residue at the null as well as moving it. Where the mains has to be deeper, match the parts, or filter behind the converter, with a sampling rate.", "  ");
    }

    private static string Values(NotchRealisation built)
    {
        if (built.TwinT is { } t)
        {
            return $"twin-T, amplifier of gain {FilterPage.Plain(t.NominalGain, 4)} that drives the foot of R3: R1 and R2 {QuantityText.FormatPart(t.R1)}, R3 two of them in parallel to the output, C1 and C2 {QuantityText.FormatPart(t.C1)}, "
                + $"C3 two of them in parallel to common{FilterPage.Gain(t.FeedbackResistor, t.GroundResistor)}";
        }

        StateVariableNotch s = built.StateVariable!;
        return $"state-variable filter and adding amplifier, {StateVariableNotch.OpAmps} op-amps: integrators Ra and Rb {QuantityText.FormatPart(s.R)}, Ca and Cb {QuantityText.FormatPart(s.C)}; "
            + $"R1 {QuantityText.FormatPart(s.R1)} from the first + input to common, R2 {QuantityText.FormatPart(s.R2)} from the band-pass output to it; R3 from the input, R4 from the low-pass output and R5 feedback, all {QuantityText.FormatPart(s.Equal)}; "
            + "R6 from the high-pass output, R7 from the low-pass output and R8 feedback of the adding amplifier, the same";
    }

    private static string Depth(double? decibels) => decibels is { } value && double.IsFinite(value) ? FilterPage.Decibel(value) : "without bound";

    private static string Share(double fraction) => (100 * fraction).ToString("0.##", CultureInfo.InvariantCulture) + " %";
}
