namespace FrontEnd.Documents.Sheets;

/// <summary>A finding in its four parts: what is wrong, where, the fact it rests on, what to change.</summary>
public static class FindingText
{
    public static string Of(Finding finding) => Of(finding, int.MaxValue);

    /// <summary>In lines of so many columns.</summary>
    internal static string Of(Finding finding, int width)
    {
        TextPage page = new(width);
        Write(page, finding);
        return page.ToString();
    }

    internal static void Write(TextPage page, Finding finding)
    {
        page.Paragraph(finding.Message, $"{finding.Code} {Wording.Word(finding.Severity)}: ");
        if (Place(finding) is { Length: > 0 } place)
        {
            page.Paragraph(place, "  at       ");
        }

        if (finding.Note is { } note)
        {
            page.Paragraph(note, "  because  ");
        }

        if (finding.Help is { } help)
        {
            page.Paragraph(help, "  do       ");
        }
    }

    /// <summary>File, line, field and the offending text; "" where nothing is known.</summary>
    public static string Place(Finding finding)
    {
        string file = finding.File is null ? "" : finding.Line is { } line ? $"{finding.File}:{line}" : finding.File;
        string place = string.Join(", ", new[] { file, finding.Field }.Where(part => part.Length > 0));
        return finding.Excerpt is { } excerpt ? $"{place}: {excerpt}" : place;
    }
}
