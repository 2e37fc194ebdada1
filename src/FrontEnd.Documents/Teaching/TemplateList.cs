using FrontEnd.Documents.Sheets;
using FrontEnd.Teaching;

namespace FrontEnd.Documents.Teaching;

/// <summary>The kinds of problems that there are, as text of 80 columns.</summary>
internal static class TemplateList
{
    public static string Of(IReadOnlyList<Template> templates)
    {
        TextPage page = new();
        page.Table(
            [new("topic", true), new("level"), new("problem", true), new("name in lists", true)],
            [.. templates.Select(template => new Row([Topics.Word(template.Topic), $"{template.Level}", template.Title, template.Id]))]);
        page.Line(FormattableString.Invariant($"{templates.Count} kinds of problems, two points for each level; each student gets other numbers"));
        page.Paragraph(FrontEnd.Results.Cautions.Exercise);
        return page.ToString();
    }
}
