using FrontEnd.Catalogue;
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

    public static string Of(Sheet sheet, int width = TextPage.Width)
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
        Unknown(page, assessment, design);
        Findings(page, sheet);
        page.Cautions();
        return page.ToString();
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
                Mark(band.Kind, "above the noise", "below it"), $"{band.Band.Name}, {QuantityText.FormatPart(band.Band.Low)} to {QuantityText.FormatPart(band.Band.High)}",
                Wording.Span(band.Noise), QuantityText.FormatPart(band.Band.SmallestSignal ?? assessment.Design.SmallestSignal), Wording.Span(band.Ratio)]))]);
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

    /// <summary>"alpha in O1-A1" of the name of its signal over noise.</summary>
    internal static string Source(string name) => name[(name.IndexOf(" of ", StringComparison.Ordinal) + 4)..name.LastIndexOf(',')];

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
            page.Paragraph($"{result.Id}: {result.Name}; {Wording.Value(result)}; {Wording.Limit(verdict)}", $"{Wording.Sign(verdict.Kind)} {Wording.Word(verdict.Kind),-11} ");
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

    private static void Unknown(TextPage page, Assessment assessment, PartlyKnownDesign design)
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
            page.Paragraph("and others within their usual ranges, which matter less; `--json` lists all of them", "  ");
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
