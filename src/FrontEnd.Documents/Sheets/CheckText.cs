using FrontEnd.Identity;

namespace FrontEnd.Documents.Sheets;

/// <summary>An assessment as plain text, 80 columns wide: verdicts first, then budgets, findings, defaults and cautions.</summary>
internal static class CheckText
{
    public static string Of(Sheet sheet)
    {
        TextPage page = new();
        Head(page, sheet);
        Verdicts(page, sheet.Assessment);
        foreach (BudgetTable table in BudgetTables.Of(sheet))
        {
            page.Blank();
            page.Ends(table.Title, table.Ids);
            page.Table(table.Columns, table.Rows);
            foreach (string note in table.Notes)
            {
                page.Paragraph(note, "  - ");
            }
        }

        Findings(page, sheet);
        Defaults(page, sheet);
        page.Cautions();

        return page.ToString();
    }

    /// <summary>The same on one screen: what must be said, a line for each verdict, every finding, how many defaults it rests on, and what to do
    /// next.</summary>
    /// <param name="file">How the user names the design; "" for the starter.</param>
    public static string Brief(Sheet sheet, string file)
    {
        TextPage page = new();
        BriefHead(page, sheet);
        page.Blank();
        page.Ends("verdicts", Wording.Counts(sheet.Assessment));
        IReadOnlyDictionary<ResultId, string> names = ShortNames.Of(sheet.Assessment.Results);
        foreach (Result result in sheet.Assessment.Judged)
        {
            Verdict verdict = result.Verdict;
            string sign = $"{Wording.Sign(verdict.Kind)} {Wording.Word(verdict.Kind)}".PadRight(13), value = Wording.Value(result);
            page.Line(sign + names[result.Id].PadRight(ShortNames.Most + 1) + value.PadRight(14) + " " + Wording.Limit(verdict));
            if (Wording.IsNotLimited(result))
            {
                page.Paragraph(result.Text!, "             means: ");
            }

            if (verdict.Kind is VerdictKind.Fail or VerdictKind.Marginal && Wording.Helps(verdict) is { } helps)
            {
                page.Paragraph(helps, "             helps most: ");
            }
        }

        if (sheet.Assessment.Judged.Count == 0)
        {
            page.Line("  nothing could be judged");
        }

        if (sheet.Findings.Count > 0)
        {
            Findings(page, sheet);
        }

        Next(page, sheet, file);
        return page.ToString();
    }

    private static void Next(TextPage page, Sheet sheet, string file)
    {
        string design = file.Length == 0 ? "" : " " + file;
        page.Blank();
        page.Line(DefaultsCounted(sheet));
        page.Line("next");
        Call(page, "budgets, defaults, cautions", $"check{design} --all");
        if (file.Length > 0 && sheet.Assessment.Judged is [var worst, ..])
        {
            Call(page, "why the first is as it is", $"explain{design} {worst.Id}");
            Call(page, "a sheet to print", $"sheet{design} -o sheet.html");
        }

        Screens(page, "change values on screens", file);
        if (sheet.DescribesNoCircuit && sheet.Assessment.Judged.Any(result => result.Verdict.Kind == VerdictKind.Fail))
        {
            page.Paragraph("If this is a headset that you bought, describe it under [bought]: then nothing is made up, and what nobody told you may be \"unknown\". An example: frontend new bought.toml --bought", "  ");
        }
    }

    /// <summary>How the screens are opened; nothing over what came in by the standard input, which has no file to change.</summary>
    internal static void Screens(TextPage page, string what, string file)
    {
        if (file != StandardInput)
        {
            Call(page, what, file);
        }
    }

    /// <summary>The word for what comes in by the standard input.</summary>
    public const string StandardInput = "-";

    // Columns of what a call is for.
    private const int Beside = 29;

    /// <summary>What the design is, and what must be said before anything of it, on one screen's head.</summary>
    internal static void BriefHead(TextPage page, Sheet sheet)
    {
        page.Paragraph(sheet.Design.Name + (sheet.Design.Purpose.Length > 0 ? ": " + sheet.Design.Purpose : ""));
        page.OwnCautions(sheet.Design);
        foreach (Result above in FrontEnd.Results.Cautions.AgainstWearing(sheet.Assessment).Take(1))
        {
            page.Paragraph($"{FrontEnd.Results.Cautions.Stamp.ToUpperInvariant()}: {above.Name} is above its limit.");
        }

        page.Paragraph(FrontEnd.Results.Cautions.All[0] + " --all prints every caution.", "caution: ");
    }

    /// <summary>How many values the file leaves to the program.</summary>
    internal static string DefaultsCounted(Sheet sheet) => DefaultUsed.Of(sheet).Count is var defaults && defaults == 1
        ? "1 value is a default"
        : FormattableString.Invariant($"{defaults} values are defaults");

    /// <summary>A call of the program beside what it is for.</summary>
    internal static void Call(TextPage page, string what, string call) => page.Line($"  {what,-Beside}frontend {call}");

    private static void Head(TextPage page, Sheet sheet)
    {
        page.Paragraph(sheet.Design.Name);
        if (sheet.Design.Purpose.Length > 0)
        {
            page.Paragraph(sheet.Design.Purpose);
        }

        page.OwnCautions(sheet.Design);
        page.Blank();
    }

    private static void Verdicts(TextPage page, Assessment assessment)
    {
        page.Ends("verdicts", Wording.Counts(assessment));
        const int Word = 14, Value = 18, Limit = 26;
        page.Line("  " + "".PadRight(Word - 2) + "value".PadRight(Value) + "limit".PadRight(Limit) + "margin");
        foreach (Result result in assessment.Judged)
        {
            Verdict verdict = result.Verdict;
            // A word may be longer than its column.
            string value = Wording.Value(result), limit = Wording.Limit(verdict);
            page.Line($"{Wording.Sign(verdict.Kind)} {Wording.Word(verdict.Kind)}".PadRight(Word)
                + (value.Length < Value ? value.PadRight(Value) : value + "  ")
                + limit.PadRight(Math.Max(0, Limit - Math.Max(0, value.Length + 2 - Value))) + Wording.Margin(result));
            page.Paragraph($"{result.Id}: {result.Name}", "    ");
            if (Wording.IsNotLimited(result))
            {
                page.Paragraph(result.Text!, "    means:       ");
            }

            if (verdict.Dominates is { Length: > 0 } dominates)
            {
                page.Paragraph(dominates, "    most of it:  ");
            }

            if (Wording.Helps(verdict) is { } helps)
            {
                page.Paragraph(helps, "    helps most:  ");
            }
        }

        if (assessment.Judged.Count == 0)
        {
            page.Line("  nothing could be judged");
        }
    }

    private static void Findings(TextPage page, Sheet sheet)
    {
        page.Blank();
        page.Line("findings");
        foreach (Finding finding in sheet.Findings)
        {
            FindingText.Write(page, finding);
        }

        if (sheet.Findings.Count == 0)
        {
            page.Line("  none");
        }
    }

    private static void Defaults(TextPage page, Sheet sheet)
    {
        page.Blank();
        page.Line("defaults used, by their source");
        foreach ((string source, string texts) in DefaultUsed.BySource(sheet))
        {
            page.Paragraph(source + ":", "  ");
            page.Paragraph(texts, "    ");
        }
    }
}
