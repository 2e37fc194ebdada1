using System.Globalization;
using FrontEnd.AntiAlias;
using FrontEnd.DesignedFilters;
using FrontEnd.Filters;
using FrontEnd.Topologies;

namespace FrontEnd.Documents.Sheets;

/// <summary>A filter of sections as a page of plain text: what it is, what it does, and what it is built of.</summary>
internal static class FilterPage
{
    private static readonly Column[] Pairs = [new("", IsText: true), new("")];

    /// <summary>The page, 80 columns.</summary>
    public static string Of(DesignedSections filter)
    {
        TextPage page = new();
        Head(page, filter.Answer);
        Sections(page, filter.Figures);
        Response(page, filter);
        if (filter.Words is { } words)
        {
            WordTables.Write(page, words);
        }

        if (filter.LowPass is { } built)
        {
            Parts(page, built, filter.PartFindings);
        }
        else if (filter.Notch is { } notch)
        {
            NotchPage.Write(page, notch);
        }
        else if (filter.PartFindings.Count != 0)
        {
            NoParts(page, filter.PartFindings);
        }

        return page.ToString();
    }

    private static void Head(TextPage page, FilterAnswer answer)
    {
        FilterWish wish = answer.Wish;
        string corners = string.Join(" and ", answer.Response!.Corners.Select(c => QuantityText.FormatTrimmed(c, 6)));
        string kind = wish.Rate is { } rate ? $"digital at {QuantityText.FormatPart(rate)}" : "analogue";
        page.Paragraph($"{FilterWords.Name(wish.Family)} {FilterWords.Of(wish.Shape)}, order {answer.Prototype!.Order}, {kind}");
        page.Paragraph($"corner {corners}: {answer.Prototype.CornerMeaning}", "  ");
        if (answer.Requirement is { } requirement && answer.Choice is { } choice)
        {
            string exact = choice.Exact is { } e
                ? $"the requirement needs order {Plain(e, 4)}, rounded up"
                : "the lowest order that meets the requirement, found by trial";
            page.Paragraph(
                $"order {choice.Order}: {exact}; at most {Decibel(requirement.Ripple)} lost at {List(wish.Corners)}, at least {Decibel(requirement.Attenuation)} at {List(wish.StopEdges!)}", "  ");
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

    private static void Sections(TextPage page, FilterFigures figures)
    {
        page.Blank();
        page.Line("sections");
        page.Table(
            [new("no."), new("f0"), new("Q"), new("zeros at", IsText: true)],
            [.. figures.Sections.Select(
                (one, i) =>
                    new Row([$"{i + 1}", QuantityText.Format(one.Pole, 5), one.Q is { } q
                        ? Plain(q, 5)
                        : "first order", Zeros(one.Zeros)]))]);
    }

    internal static string Zeros(SectionZeros zeros) => zeros.Place switch
    {
        ZeroPlace.None => "none",
        ZeroPlace.ZeroHertz => "0 Hz",
        ZeroPlace.HalfRate => "half the rate",
        ZeroPlace.ZeroHertzAndHalfRate => "0 Hz and half the rate",
        ZeroPlace.Frequency => QuantityText.Format(zeros.At, 5),
        ZeroPlace.RealAxis => "the real axis",
        ZeroPlace.OffCircle => "the z plane, off the circle",
        _ => throw new ArgumentOutOfRangeException(nameof(zeros), zeros.Place, "The place is not handled."),
    };

    private static void Response(TextPage page, DesignedSections filter)
    {
        FilterFigures figures = filter.Figures;
        string edge = filter.Answer.Requirement is null ? "corner" : "pass edge";
        page.Blank();
        page.Line("response");
        page.Table(
            Pairs,
            [
                new(["-3 dB (half power)", Crossings(figures.HalfPower)]),
                .. figures.AtCorners.Select(at => new Row([$"loss at the {edge}, {QuantityText.FormatTrimmed(at.At, 6)}", Loss(at.Loss)])),
                .. figures.AtStopEdges.Select(at => new Row([$"loss at the stop edge, {QuantityText.FormatPart(at.At)}", Loss(at.Loss)])),
                new([$"group delay at {QuantityText.FormatTrimmed(figures.Middle, 4)}", QuantityText.Format(figures.DelayAtMiddle, 4)]),
                new([$"largest group delay, at {QuantityText.FormatTrimmed(figures.LargestDelayAt, 4)}",
                    QuantityText.Format(figures.LargestDelay, 4)]),
            ],
            heads: false);
    }

    internal static string Crossings(IReadOnlyList<Frequency> halfPower) =>
        halfPower.Count == 0 ? "none in the range" : string.Join(", ", halfPower.Select(f => QuantityText.Format(f, 5)));

    // --- parts -----------------------------------------------------------------------------------------------------

    private static void Parts(TextPage page, BuiltLowPass built, IReadOnlyList<Finding> findings)
    {
        page.Blank();
        page.Ends("parts, in the order of the signal", "E12 capacitors, E96 resistors");
        foreach (BuiltSection section in built.Sections)
        {
            Section(page, section);
        }

        page.Blank();
        page.Line($"as built, with the op-amp's real gain-bandwidth product, {QuantityText.FormatPart(built.OpAmp.GainBandwidth)}");
        page.Table(
            Pairs,
            [
                new([
                    "largest deviation from the ideal response, up to twice the corner",
                    $"{Plain(built.LargestError.Loss!.Value.Value, 3)} dB at {QuantityText.Format(built.LargestError.At)}",
                ]),
                new(["-3 dB", built.HalfPower is { } half ? QuantityText.Format(half, 5) : "none up to ten times the corner"]),
                .. built.Gain == 1 ? Array.Empty<Row>() : [new(["gain at 0 Hz", Plain(built.Gain, 4)])],
                .. NoiseRows(built.Noise),
                .. RiseRows(built),
            ],
            heads: false);
        RiseFormulas(page, built);
        page.Blank();
        page.Table(
            [new("frequency"), new("ideal"), new("as built"), new("group delay, ideal")],
            [.. built.Response.Select(
                at => new Row([QuantityText.Format(at.At), Decibel(at.Ideal), Decibel(at.Built), QuantityText.Format(at.IdealDelay, 3)]))]);
        foreach (Finding finding in findings)
        {
            FindingText.Write(page, finding);
        }
    }

    private static void Section(TextPage page, BuiltSection built)
    {
        RealisedSection section = built.Section;
        page.Paragraph($"{section.Stage.Name}, {section.Stage.Title}: {section.Stage.PartsText}", "  ");
        page.Paragraph(
            $"f0 {QuantityText.Format(section.BuiltPole, 5)} (wanted {QuantityText.Format(section.WantedPole, 5)})"
            + (section.BuiltQ is { } q ? $", Q {Plain(q, 4)} (wanted {Plain(section.WantedQ!.Value, 4)})" : "")
            + $", largest gain up to here {Plain(section.PeakGain, 3)}", "    ");
        page.Paragraph($"by formula, ideal op-amp: {Formula(built)}", "    ");
        page.Paragraph($"1 % more of a part moves f0, Q by: {string.Join("; ", section.Sensitivities.Select(Sensitivity))}", "    ");
        if (built.StateVariableParts is { } parts)
        {
            string values = string.Join(", ", parts.Select(part => $"{part.Name} {QuantityText.FormatPart(part.Value)}"));
            page.Paragraph($"Q is high for one op-amp; alternatively, a state-variable section with three: {values}", "    ");
        }
    }

    internal static void NoParts(TextPage page, IReadOnlyList<Finding> findings)
    {
        page.Blank();
        page.Line("parts");
        foreach (Finding finding in findings)
        {
            page.Paragraph($"none: {finding.Message}; {finding.Help}", "  ");
        }
    }

    /// <summary>Noise and dc error; what the op-amp does not say is not shown as zero.</summary>
    internal static IEnumerable<Row> NoiseRows(OwnNoise noise)
    {
        yield return new(["own noise, a hundredth to ten times the corner", QuantityText.Format(noise.Noise)]);
        yield return new(["own dc error, worst signs", noise.DcError is { } error ? QuantityText.Format(error) : "not given"]);
        string[] missing = [.. noise.HasOffset ? [] : new[] { "offset voltage" }, .. noise.HasBias ? [] : new[] { "bias current" }];
        if (missing.Length != 0)
        {
            yield return new([$"op-amp's {string.Join(" and ", missing)}", "not given"]);
        }
    }

    private static IEnumerable<Row> RiseRows(BuiltLowPass built)
    {
        if (built.OpAmp.OutputResistance.Ohms == 0)
        {
            yield return new(["op-amp's output resistance, for the stop band", "not given"]);
            yield break;
        }

        if (built.Rise is not { Built: var rise } both)
        {
            yield return new(["stop band rises again", $"nowhere below {QuantityText.FormatPart(StopBandRise.Highest)}"]);
            yield break;
        }

        yield return new(["stop band rises again at", QuantityText.Format(rise.TurnsAt, 4)]);
        yield return new(["loss where it rises, as built", Decibel(rise.LossAtTurn)]);
        yield return new(["loss where it rises, ideal", Decibel(both.IdealAtTurn)]);
        yield return new([$"lowest loss above that, as built, at {QuantityText.Format(rise.LeastAt)}", Decibel(rise.LeastLossBeyond)]);
        yield return new(["loss at that frequency, ideal", Decibel(both.IdealAtLeast)]);
    }

    /// <summary>Each Sallen–Key section by itself, network against formula.</summary>
    private static void RiseFormulas(TextPage page, BuiltLowPass built)
    {
        Row[] rows = [.. built.Sections.Where(one => one.Rise is not null).Select(one => new Row([
            one.Section.Stage.Name, QuantityText.Format(one.Rise!.Built.TurnsAt, 4), QuantityText.Format(one.Rise.Turn.Value, "Hz", 4),
            Decibel(one.Rise.Built.LeastLossBeyond), Decibel(one.Rise.Floor.Value),
        ]))];
        if (built.Rise is not null && rows.Length != 0)
        {
            page.Blank();
            page.Table([new("each by itself", IsText: true), new("rises at"), new("by formula"), new("lowest loss above"),
                new("by formula")], rows);
        }
    }

    private static string Formula(BuiltSection by) => by.Q is { } q
        ? $"f0 = {by.Frequency.Formula} = {QuantityText.Format(by.Frequency.Value, "Hz", 5)}, Q = {q.Formula} = {Plain(q.Value, 4)}"
        : $"f0 {QuantityText.Format(by.Frequency.Value, "Hz", 5)}";

    private static string Sensitivity(PartSensitivity s) => $"{s.Part} {Percent(s.ToFrequency)}{(s.ToQ is { } q ? $", {Percent(q)}" : "")}";

    internal static string Percent(double share) => share.ToString("+0.00;-0.00;0.00", CultureInfo.InvariantCulture) + " %";

    internal static string List(IEnumerable<Frequency> frequencies) =>
        string.Join(" and ", frequencies.Select(f => QuantityText.FormatPart(f)));

    internal static string Plain(double value, int digits) => QuantityText.FormatTrimmed(value, "1", digits);

    internal static string Decibel(double value) => QuantityText.Format(value, "dB", 4);

    internal static string Decibel(Decibels value) => QuantityText.Format(value, 4);

    internal static string Loss(double? decibels) => decibels is { } value && double.IsFinite(value) ? Decibel(value) : "without bound";

    internal static string Loss(Decibels? loss) => Loss(loss?.Value);
}
