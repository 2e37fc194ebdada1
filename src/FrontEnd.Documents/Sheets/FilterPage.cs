using System.Globalization;
using FrontEnd.AntiAlias;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Filters;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Text;
using FrontEnd.Textbook;
using FrontEnd.Topologies;

namespace FrontEnd.Documents.Sheets;

/// <summary>A filter as a page of plain text: what it is, what it does, and what it is built of.</summary>
public static class FilterPage
{
    /// <summary>Longest low-pass whose parts are sought.</summary>
    private const int MostRealised = 8;

    /// <param name="answer">One that has a filter.</param>
    /// <param name="build">What an analogue one is built of; null for Sallen–Key sections of gain 1 or a twin-T, and the default op-amp.</param>
    public static string Of(FilterAnswer answer, FilterParts? build = null)
    {
        TextPage page = new();
        FilterFigures figures = FilterFigures.Of(answer);
        Head(page, answer);
        Sections(page, answer, figures);
        Response(page, answer, figures);
        if (answer.Digital is { } digital)
        {
            WordTables.Write(page, digital.Sections);
        }
        else
        {
            Parts(page, answer, build ?? new FilterParts());
        }

        return page.ToString();
    }

    private static void Head(TextPage page, FilterAnswer answer)
    {
        FilterWish wish = answer.Wish;
        string corners = string.Join(" and ", answer.Response!.Corners.Select(c => QuantityText.FormatTrimmed(c, 6)));
        page.Paragraph($"{FilterWords.Name(wish.Family)} {FilterWords.Of(wish.Shape)}, order {answer.Prototype!.Order}, {(wish.Rate is { } rate ? $"digital at {QuantityText.FormatPart(rate)}" : "analogue")}");
        page.Paragraph($"corner {corners}: {answer.Prototype.CornerMeaning}", "  ");
        if (answer.Requirement is { } requirement && answer.Choice is { } choice)
        {
            string exact = choice.Exact is { } e ? $"the requirement needs order {Plain(e, 4)}, rounded up" : "the least order that meets the requirement, found by trying";
            page.Paragraph(
                $"order {choice.Order}: {exact}; at most {Decibel(requirement.Ripple.Value)} lost at {List(wish.Corners)}, at least {Decibel(requirement.Attenuation.Value)} at {List(wish.StopEdges!)}", "  ");
        }

        if (answer.AnalogNotch is { } notch)
        {
            page.Paragraph($"a notch at {QuantityText.FormatTrimmed(notch.Centre, 6)}, Q {Plain(notch.Q, 4)}", "  ");
        }

        if (FilterWords.CornerCount(wish.Shape) == 2)
        {
            page.Paragraph($"a band shape has two poles for each order of its prototype: {answer.ZeroPoleGain!.Order} poles", "  ");
        }
    }

    private static void Sections(TextPage page, FilterAnswer answer, FilterFigures figures)
    {
        page.Blank();
        page.Line("sections");
        List<Row> rows = [];
        for (int i = 0; i < figures.Sections.Count; i++)
        {
            SectionFigures section = figures.Sections[i];
            string zeros = answer.Digital is { } digital ? DigitalZero(digital.Sections[i], digital.Rate.Hertz) : AnalogZero(answer.Analog!.Sections[i]);
            rows.Add(new Row([$"{i + 1}", QuantityText.Format(section.Pole, 5), section.Q is { } q ? Plain(q, 5) : "first order", zeros]));
        }

        page.Table([new("no."), new("f0"), new("Q"), new("zeros at", IsText: true)], rows);
    }

    private static string AnalogZero(AnalogSection s)
    {
        if (s.B0 == 0 && s.B1 == 0)
        {
            return "none";
        }

        return s.B2 == 0 ? "0 Hz" : s.B1 == 0 && 0 < s.B2 / s.B0 ? QuantityText.Format(Frequency.FromHertz(Math.Sqrt(s.B2 / s.B0) / (2 * Math.PI)), 5) : "the real axis";
    }

    private static string DigitalZero(Biquad s, double rate)
    {
        if (s.B2 == 0)
        {
            return s.B1 == s.B0 ? "half the rate" : s.B1 == -s.B0 ? "0 Hz" : "the real axis";
        }

        double half = s.B1 / (-2 * s.B0);
        return s.B2 == s.B0 && Math.Abs(half) < 1
            ? QuantityText.Format(Frequency.FromHertz(Math.Acos(half) * rate / (2 * Math.PI)), 5)
            : s.B2 == -s.B0 ? "0 Hz and half the rate" : half <= -1 ? "half the rate" : 1 <= half ? "0 Hz" : "the z plane, off the circle";
    }

    private static void Response(TextPage page, FilterAnswer answer, FilterFigures figures)
    {
        page.Blank();
        page.Line("response");
        string edge = answer.Requirement is null ? "corner" : "pass edge";
        List<Row> rows =
        [
            new(["-3 dB (half power)", figures.HalfPower.Count == 0 ? "none in the range" : string.Join(", ", figures.HalfPower.Select(f => QuantityText.Format(f, 5)))]),
            .. figures.AtCorners.Select(at => new Row([$"loss at the {edge}, {QuantityText.FormatTrimmed(at.At, 6)}", Loss(at.Decibels)])),
            .. figures.AtStopEdges.Select(at => new Row([$"loss at the stop edge, {QuantityText.FormatPart(at.At)}", Loss(at.Decibels)])),
            new([$"group delay at {QuantityText.FormatTrimmed(figures.Middle, 4)}", QuantityText.Format(figures.DelayAtMiddle, 4)]),
            new([$"largest group delay, at {QuantityText.FormatTrimmed(figures.LargestDelayAt, 4)}", QuantityText.Format(figures.LargestDelay, 4)]),
        ];
        page.Table([new("", IsText: true), new("")], rows, heads: false);
    }

    internal static string Loss(double? decibels) => decibels is { } value ? Decibel(value) : "without bound";

    // --- parts -----------------------------------------------------------------------------------------------------

    private static void Parts(TextPage page, FilterAnswer answer, FilterParts build)
    {
        if (answer.AnalogNotch is { } notch)
        {
            NotchPage.Write(page, notch.Centre, notch.Q, build);
            return;
        }

        if (answer.Wish.Shape != FilterShape.LowPass || MostRealised < answer.Prototype!.Order)
        {
            return;
        }

        page.Blank();
        (Realisation? built, IReadOnlyList<Finding> findings) = RealisationSearch.Find(new RealisationRequest { Target = answer.Analog!, OpAmp = build.OpAmp, Topology = build.Topology });
        if (built is null)
        {
            NoParts(page, findings);
            return;
        }

        page.Ends("parts, in the order of the signal", "E12 capacitors, E96 resistors");
        foreach (RealisedSection section in built.Sections)
        {
            page.Paragraph($"{section.Stage.Name}, {section.Stage.Title}: {section.Stage.PartsText}", "  ");
            page.Paragraph(
                $"f0 {QuantityText.Format(section.BuiltPole, 5)} (wanted {QuantityText.Format(section.WantedPole, 5)})"
                + (section.BuiltQ is { } q ? $", Q {Plain(q, 4)} (wanted {Plain(section.WantedQ!.Value, 4)})" : "")
                + $", largest gain up to here {Plain(section.PeakGain, 3)}", "    ");
            page.Paragraph($"by formula, ideal op-amp: {Formula(section.Stage)}", "    ");
            page.Paragraph($"1 % more of a part moves f0, Q by: {string.Join("; ", section.Sensitivities.Select(Sensitivity))}", "    ");
            if (section.StateVariable is { } three)
            {
                page.Paragraph(
                    $"Q is high for one op-amp; state-variable section of three instead: R {QuantityText.FormatPart(three.R)}, C {QuantityText.FormatPart(three.C)}, R1 {QuantityText.FormatPart(three.R1)}, R2 {QuantityText.FormatPart(three.R2)}", "    ");
            }
        }

        Frequency corner = answer.Wish.Corners[0];
        page.Blank();
        page.Line($"as built, with the op-amp's real gain-bandwidth product, {QuantityText.FormatPart(build.OpAmp.GainBandwidth)}");
        double gain = built.Stages.Aggregate(1.0, (product, stage) => product * stage.NominalGain);
        page.Table(
            [new("", IsText: true), new("")],
            [
                new(["largest difference from the ideal response, up to twice the corner", $"{Plain(built.LargestError, 3)} dB at {QuantityText.Format(built.ErrorAt)}"]),
                new(["-3 dB", built.HalfPower is { } half ? QuantityText.Format(half, 5) : "none up to ten times the corner"]),
                .. gain == 1 ? Array.Empty<Row>() : [new(["gain at 0 Hz", Plain(gain, 4)])],
                .. NoiseRows(built.Stages, corner, build.OpAmp),
                .. RiseRows(answer, built, build.OpAmp),
            ],
            heads: false);
        if (built.Rise is not null)
        {
            RiseFormulas(page, built.Stages);
        }

        Compare(page, answer, built, corner);
        foreach (Finding finding in findings)
        {
            FindingText.Write(page, finding);
        }
    }

    internal static void NoParts(TextPage page, IReadOnlyList<Finding> findings)
    {
        page.Line("parts");
        foreach (Finding finding in findings)
        {
            page.Paragraph($"none: {finding.Message}; {finding.Help}", "  ");
        }
    }

    /// <summary>Noise and dc error of the stages; what the op-amp does not say is not shown as zero.</summary>
    internal static IEnumerable<Row> NoiseRows(IReadOnlyList<Stage> stages, Frequency corner, OpAmp opAmp)
    {
        VoltageRms noise = FilterNoise.Over(stages, Frequency.FromHertz(corner.Hertz / 100), Frequency.FromHertz(corner.Hertz * 10), new Design().BoardTemperature);
        yield return new(["own noise, a hundredth to ten times the corner", QuantityText.Format(noise)]);
        string missing = (opAmp.OffsetVoltage.Volts == 0, opAmp.BiasCurrent.Amperes == 0) switch
        {
            (true, true) => "offset voltage and bias current",
            (true, false) => "offset voltage",
            (false, true) => "bias current",
            _ => "",
        };
        bool isNothing = opAmp.OffsetVoltage.Volts == 0 && opAmp.BiasCurrent.Amperes == 0;
        yield return new(["own dc error, worst signs", isNothing ? "not given" : QuantityText.Format(FilterNoise.Offset(stages))]);
        if (missing.Length != 0)
        {
            yield return new([$"op-amp's {missing}", "not given"]);
        }
    }

    private static IEnumerable<Row> RiseRows(FilterAnswer answer, Realisation built, OpAmp opAmp)
    {
        if (opAmp.OutputResistance.Ohms == 0)
        {
            yield return new(["op-amp's output resistance, for the stop band", "not given"]);
            yield break;
        }

        if (built.Rise is not { } rise)
        {
            yield return new(["stop band turns up again", "nowhere below 1 GHz"]);
            yield break;
        }

        yield return new(["stop band turns up again at", QuantityText.Format(rise.TurnsAt, 4)]);
        yield return new(["loss where it turns, as built", Decibel(rise.LossAtTurn)]);
        yield return new(["loss where it turns, ideal", Decibel(Ideal(answer, rise.TurnsAt))]);
        yield return new([$"least loss above that, as built, at {QuantityText.Format(rise.LeastAt)}", Decibel(rise.LeastLossBeyond)]);
        yield return new(["loss at that frequency, ideal", Decibel(Ideal(answer, rise.LeastAt))]);
    }

    private static double Ideal(FilterAnswer answer, Frequency at) => -10 * Math.Log10(answer.Analog!.PowerResponse(at.Hertz) / answer.Analog.PowerResponse(0));

    /// <summary>Each Sallen–Key section by itself, network against formula.</summary>
    private static void RiseFormulas(TextPage page, IReadOnlyList<Stage> stages)
    {
        List<Row> rows = [];
        foreach (Stage s in stages)
        {
            if (s.StopBandTurn is { } turn && s.StopBandFloor is { } floor && StopBandRise.Of([s]) is { } rise)
            {
                rows.Add(new Row([s.Name, QuantityText.Format(rise.TurnsAt, 4), QuantityText.Format(turn.Value, "Hz", 4), Decibel(rise.LeastLossBeyond), QuantityText.Format(floor.Value, "dB", 4)]));
            }
        }

        if (rows.Count != 0)
        {
            page.Blank();
            page.Table([new("each by itself", IsText: true), new("turns at"), new("by formula"), new("least loss above"), new("by formula")], rows);
        }
    }

    private static string Formula(Stage stage) => (stage.PoleFormula, stage.QFormula) switch
    {
        ({ } corner, null) => $"f0 {QuantityText.Format(corner.Value, "Hz", 5)}",
        ({ } frequency, { } q) => $"f0 = {frequency.Formula} = {QuantityText.Format(frequency.Value, "Hz", 5)}, Q = {q.Formula} = {Plain(q.Value, 4)}",
        _ => throw new ArgumentOutOfRangeException(nameof(stage), stage, "The stage is not an anti-alias section."),
    };

    private static void Compare(TextPage page, FilterAnswer answer, Realisation built, Frequency corner)
    {
        page.Blank();
        double zero = AsBuiltSection.PowerResponse(built.Stages, corner.Hertz / 1000);
        List<Row> rows = [];
        foreach (double times in (double[])[0.1, 0.5, 0.9, 1, 1.1, 1.5, 2, 3, 5, 10, 30, 100])
        {
            double f = corner.Hertz * times;
            rows.Add(new Row(
            [
                QuantityText.Format(Frequency.FromHertz(f)),
                Decibel(10 * Math.Log10(answer.Analog!.PowerResponse(f) / answer.Analog.PowerResponse(0))),
                Decibel(10 * Math.Log10(AsBuiltSection.PowerResponse(built.Stages, f) / zero)),
                QuantityText.Format(Duration.FromSeconds(answer.Analog.GroupDelay(f)), 3),
            ]));
        }

        page.Table([new("frequency"), new("ideal"), new("as built"), new("group delay, ideal")], rows);
    }

    /// <summary>", Rf …, Rg …"; nothing for a follower.</summary>
    internal static string Gain(Resistance feedback, Resistance? ground) => ground is { } rg ? $", Rf {QuantityText.FormatPart(feedback)}, Rg {QuantityText.FormatPart(rg)}" : "";

    private static string Sensitivity(PartSensitivity s) => $"{s.Part} {Percent(s.ToFrequency)}{(s.ToQ is { } q ? $", {Percent(q)}" : "")}";

    internal static string Percent(double share) => share.ToString("+0.00;-0.00;0.00", CultureInfo.InvariantCulture) + " %";

    internal static string List(IEnumerable<Frequency> frequencies) => string.Join(" and ", frequencies.Select(f => QuantityText.FormatPart(f)));

    internal static string Plain(double value, int digits) => QuantityText.FormatTrimmed(value, "1", digits);

    internal static string Decibel(double value) => QuantityText.Format(Decibels.FromPowerRatio(Math.Pow(10, value / 10)), 4);
}
