using FrontEnd.Documents.Sheets;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>What the class did, as text: points by question, and the slips that were made.</summary>
internal static class MarksText
{
    public static string Of(Marks marks, int width = TextPage.Width)
    {
        if (ClassSummary.Of(marks) is not { } all)
        {
            return "no answers\n" + Absent(marks, width);
        }

        TextPage page = new(width);
        string students = all.Students == 1 ? "1 student" : $"{all.Students} students";
        page.Line($"{students}, {all.Asked} answers asked for, {Percent(all.Share)} of the points");
        (StudentShare least, StudentShare most) = (all.Shares[0], all.Shares[^1]);
        if (all.Students > 1)
        {
            page.Line($"least {Percent(least.Share)} ({least.Student}), middle {Percent(all.Middle)}, most {Percent(most.Share)} ({most.Student})");
        }

        page.Blank();
        string head = page + Absent(marks, width);
        page = new TextPage(width);
        page.Line("question   points   full   part   none   not answered");
        foreach (QuestionSummary one in all.Questions)
        {
            page.Line($"{one.Question,-8}{Percent(one.Share),9}{one.Full,7}{one.Part,7}{one.None,7}{one.NotAnswered,15}");
        }

        page.Blank();
        page.Line(all.Slips.Count == 0 ? "no known slips" : "slips");
        foreach (SlipCount slip in all.Slips)
        {
            page.Paragraph($"{slip.Slip}: {slip.Remark}", $"{slip.Count,5} × ");
        }

        return head + page;
    }

    /// <summary>Who has a sheet and no answers, by id and name; nothing where all answered.</summary>
    private static string Absent(Marks marks, int width)
    {
        if (marks.Absent.Count == 0)
        {
            return "";
        }

        TextPage page = new(width);
        page.Paragraph(string.Join(", ", marks.Absent.Select(one => one.Name.Length == 0 ? one.Id : $"{one.Id} ({one.Name})")),
            "no answers, not counted: ");
        return page + "\n";
    }

    private static string Percent(double share) => QuantityText.FormatPercent(Quantities.Ratio.FromFraction(share), share < 0.1 ? 1 : 2);
}
