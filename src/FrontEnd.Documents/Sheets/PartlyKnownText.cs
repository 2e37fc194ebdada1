using FrontEnd.Catalogue;
using FrontEnd.Documents.Reading;
using FrontEnd.Identity;
using FrontEnd.Unknowns;

namespace FrontEnd.Documents.Sheets;

/// <summary>What can be said of a design of which some values are not known, as plain text: what it can and cannot see, hum,
/// what is open and what would close it.</summary>
internal static class PartlyKnownText
{
    private static string Mark(VerdictKind kind, string yes, string no) => $"{Wording.Sign(kind)} " + kind switch
    {
        VerdictKind.Pass => yes,
        VerdictKind.Fail => no,
        VerdictKind.Open => "open",
        _ => Wording.Word(kind),
    };

    /// <summary>The whole page.</summary>
    /// <param name="listsAll">Where all values that were drawn are listed, for whoever reads it; "" for nowhere.</param>
    public static string Of(Sheet sheet, int width = TextPage.Width, string listsAll = "`--json` lists all of them")
    {
        TextPage page = new(width);
        Assessment assessment = sheet.Assessment;
        PartlyKnownDesign design = assessment.PartlyKnown!;
        page.Paragraph(sheet.Design.Name);
        if (sheet.Design.Purpose.Length > 0)
        {
            page.Paragraph(sheet.Design.Purpose);
        }

        page.OwnCautions(sheet.Design);
        page.Blank();
        page.Paragraph($"Some values are not known. Each of them was drawn {PartlyKnownEvaluator.Draws} times from its range; shown below are the lowest and the highest results, including the corners of the values that matter most. "
            + $"Signs: {Signs}.");
        Sees(page, assessment);
        Hum(page, assessment);
        Verdicts(page, assessment);
        Unknown(page, assessment, design, listsAll);
        Findings(page, sheet);
        page.Cautions();
        return page.ToString();
    }

    /// <summary>The same on one screen: what must be said, what can be seen, a line for each requirement with what would close it where it is open,
    /// every finding, what decides, and what to do next.</summary>
    /// <param name="file">How the user names the design.</param>
    public static string Brief(Sheet sheet, string file)
    {
        TextPage page = new();
        Assessment assessment = sheet.Assessment;
        CheckText.BriefHead(page, sheet);
        page.Blank();
        page.Ends("can it see", Signs);
        IReadOnlyList<Sight> bands = Sight.Bands(assessment);
        string[] smallest = [.. bands.Select(band => Smallest(assessment, band.Band)).Distinct()];
        page.Paragraph(string.Join(", ", bands.Select(band => $"{Wording.Sign(band.Kind)} {band.Band.Name}")),
            smallest is [var one] ? $"  {one} above the noise in:  " : "  smallest signals above the noise in:  ");
        if (sheet.Document.OriginOf(DesignKeys.Signal.Smallest)?.Kind == OriginKind.Default)
        {
            page.Paragraph($"that is the default of {DesignKeys.Signal.Smallest}: set it to the smallest signal that you want to see", "    ");
        }

        foreach (IGrouping<string, (Result Ratio, VerdictKind Kind)> source in Sight.Sources(assessment).GroupBy(one => SourceAlone(one.Ratio.Name), StringComparer.Ordinal))
        {
            (Result best, VerdictKind kind) = source.MaxBy(one => one.Ratio.Interval?.Greatest ?? one.Ratio.Si);
            page.Paragraph($"{Source(best.Name)}, its best channel: {Wording.Span(best)} times background and noise", $"{Wording.Sign(kind)} ");
        }

        BriefVerdicts(page, assessment);
        Findings(page, sheet);
        BriefUnknown(page, sheet);
        page.Line("next");
        CheckText.Call(page, "intervals, hum, cautions", $"check {file} --all");
        if (assessment.PartlyKnown!.Unknowns.Any(one => one.KnownBy == Fields.KnownBy.Maker))
        {
            // A fixture stands in the place of contacts and room: a recording on it tells nothing of them.
            CheckText.Call(page, "what to record to narrow it", $"bench {file}");
        }

        CheckText.Call(page, "a page to print", $"sheet {file} --plain -o sheet.html");
        CheckText.Screens(page, "enter values on screens", file);
        return page.ToString();
    }

    /// <summary>Requirements with the values that the unknown allows; what closes several of them in a row stands once, behind the last.</summary>
    private static void BriefVerdicts(TextPage page, Assessment assessment)
    {
        const int Word = 13, Value = 18;
        page.Blank();
        page.Ends("requirements", Wording.Counts(assessment));
        IReadOnlyDictionary<ResultId, string> names = ShortNames.Of(assessment.Results);
        for (int at = 0; at < assessment.Judged.Count; at++)
        {
            Result result = assessment.Judged[at];
            Verdict verdict = result.Verdict;
            string row = $"{Wording.Sign(verdict.Kind)} {Wording.Word(verdict.Kind)}".PadRight(Word) + names[result.Id].PadRight(ShortNames.Most + 1) + Wording.Value(result).PadRight(Value);
            string limit = Wording.Limit(verdict);
            if (row.Length + 1 + limit.Length <= TextPage.Width)
            {
                page.Line($"{row} {limit}");
            }
            else
            {
                page.Line(row.TrimEnd());
                page.Paragraph(limit, "             limit: ");
            }

            if (result is { State: ResultState.Interval, Text: { } where })
            {
                page.Paragraph(where, "             ");
            }

            if (verdict.ClosesBy is { } whole && (at + 1 == assessment.Judged.Count || assessment.Judged[at + 1].Verdict.ClosesBy != whole))
            {
                // What protects the wearer is said whole: nobody is to try it out.
                page.Paragraph(ResultIds.Safety.All.Has(result.Id) ? whole : verdict.ClosesInShort ?? whole, "             closed by: ");
            }
        }

        if (assessment.Judged.Count == 0)
        {
            page.Line("  nothing could be judged");
        }
    }

    private static void BriefUnknown(TextPage page, Sheet sheet)
    {
        IReadOnlyList<UnknownField> unknown = sheet.Assessment.PartlyKnown!.Unknowns;
        HashSet<string> deciding = [.. sheet.Assessment.Judged.Select(result => result.Verdict.DecidedBy).OfType<string>()];
        page.Blank();
        page.Line($"{(unknown.Count == 1 ? "1 value is not known" : FormattableString.Invariant($"{unknown.Count} values are not known"))}, {CheckText.DefaultsCounted(sheet)}");
        if (deciding.Count != 0)
        {
            page.Paragraph(string.Join("; ", unknown.Where(one => deciding.Contains(one.Key)).Select(one => $"{one.Key} {Ends(one)}")), "  deciding: ");
        }
    }

    /// <summary>The marks with their words.</summary>
    internal static string Signs => string.Join(", ", new[] { VerdictKind.Pass, VerdictKind.Fail, VerdictKind.Open, VerdictKind.NotJudged }
        .Select(kind => $"{Wording.Sign(kind)} {Wording.Word(kind)}"));

    private static void Sees(TextPage page, Assessment assessment)
    {
        page.Blank();
        page.Ends("what it can see", ResultIds.Noise.Bands + "*");
        page.Table([new("", true), new("band", true), new("noise, rms"), new("smallest signal"), new("signal over noise")],
            [.. Sight.Bands(assessment).Select(band => new Row([
                Mark(band.Kind, "above the noise", "below it"), $"{band.Band.Name}, {Range(band.Band.Low, band.Band.High)}",
                Wording.Span(band.Noise), Smallest(assessment, band.Band), Wording.Span(band.Ratio)]))]);
        IReadOnlyList<(Result Ratio, VerdictKind Kind)> sources = Sight.Sources(assessment);
        if (sources.Count == 0)
        {
            return;
        }

        page.Blank();
        page.Paragraph("sources, at the size that the file states, over the background of the rest of the brain and the device's noise:");
        page.Table([new("", true), new("source in channel", true), new("over noise")],
            [.. sources.Select(one => new Row([Mark(one.Kind, "above", "below"), Source(one.Ratio.Name), Wording.Span(one.Ratio)]))]);
    }

    /// <summary>The ends of a band: "0.5 Hz to 4 Hz".</summary>
    internal static string Range(Frequency low, Frequency high) => $"{QuantityText.FormatPart(low)} to {QuantityText.FormatPart(high)}";

    /// <summary>The smallest signal wanted in a band; where it is not known, between what it lies.</summary>
    internal static string Smallest(Assessment assessment, Band band) =>
        band.SmallestSignal is null && assessment.PartlyKnown?.Find(DesignKeys.Signal.Smallest) is { } unknown ? Ends(unknown)
        : QuantityText.FormatPart(band.SmallestSignal ?? assessment.Design.SmallestSignal);

    /// <summary>"alpha in O1-A1" of the name of its signal over noise.</summary>
    internal static string Source(string name) => name[(name.IndexOf(" of ", StringComparison.Ordinal) + 4)..name.LastIndexOf(',')];

    /// <summary>"alpha" of the same.</summary>
    private static string SourceAlone(string name) => Source(name) is var whole && whole.LastIndexOf(" in ", StringComparison.Ordinal) is > 0 and var end ? whole[..end] : Source(name);

    private static void Hum(TextPage page, Assessment assessment)
    {
        page.Blank();
        page.Ends("hum: where it comes from, at the electrodes, rms, the largest first", ResultIds.Mains.All + "*");
        page.Table([new("", true), new("nine in ten"), new("least to greatest")],
            [.. Sight.Hum(assessment).Append(assessment.Find(ResultIds.Mains.Total)).Append(assessment.Find(ResultIds.Mains.Recorded)).OfType<Result>()
                .Select(result => new Row([result.Name, Wording.Usual(result), Wording.Span(result)], result.Id == ResultIds.Mains.Total))]);
        page.Paragraph("What the device filters after its converter is not known and not counted: a mains filter of its own removes hum from the recording, but not from its amplifier.", "  ");
    }

    private static void Verdicts(TextPage page, Assessment assessment)
    {
        page.Blank();
        page.Ends("requirements", Wording.Counts(assessment));
        foreach (Result result in assessment.Judged)
        {
            Verdict verdict = result.Verdict;
            page.Paragraph($"{result.Id}: {Wording.Description(result)}; {Wording.Value(result)}; {Wording.Limit(verdict)}", $"{Wording.Sign(verdict.Kind)} {Wording.Word(verdict.Kind),-11} ");
            if (verdict.DecidedBy is { } by)
            {
                page.Paragraph(by, "    decided by:  ");
            }

            if (verdict.ClosesBy is { } closes)
            {
                page.Paragraph(closes, "    closed by:   ");
            }
        }
    }

    private static void Unknown(TextPage page, Assessment assessment, PartlyKnownDesign design, string listsAll)
    {
        string?[] deciding = [.. assessment.Judged.Select(result => result.Verdict.DecidedBy).Distinct()];
        UnknownField[] shown = [.. design.Unknowns.Where(one => one.IsStated || deciding.Contains(one.Key, StringComparer.Ordinal))];
        page.Blank();
        page.Line("drawn from");
        foreach (IGrouping<string, UnknownField> source in shown.GroupBy(one => one.Source, StringComparer.Ordinal))
        {
            page.Paragraph($"{source.Key}:", "  ");
            page.Paragraph(string.Join("; ", source.Select(one => $"{one.Key} {Ends(one)}")), "    ");
        }

        if (shown.Length < design.Unknowns.Count)
        {
            page.Paragraph($"and others within their usual ranges, which matter less{(listsAll.Length > 0 ? "; " : "")}{listsAll}", "  ");
        }
    }

    internal static string Ends(UnknownField unknown) => unknown.IsChoice
        ? string.Join(" or ", Fields.FieldText.Words(unknown.Field))
        : $"{Fields.FieldText.Format(unknown.Field, unknown.Field.FromSi(unknown.Least))} to {Fields.FieldText.Format(unknown.Field, unknown.Field.FromSi(unknown.Greatest))}";

    private static void Findings(TextPage page, Sheet sheet)
    {
        if (sheet.Findings.Count == 0)
        {
            return;
        }

        page.Blank();
        page.Line("findings");
        foreach (Finding finding in sheet.Findings)
        {
            FindingText.Write(page, finding);
        }
    }
}
