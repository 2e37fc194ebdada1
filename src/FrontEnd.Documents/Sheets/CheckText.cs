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
