using System.Text;
using FrontEnd.Documents.Sheets;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>What the class did, as text: points by question, and the slips that were made.</summary>
internal static class MarksText
{
    public static string Of(Marks marks)
    {
        if (ClassSummary.Of(marks) is not { } all)
        {
            return "no answers\n" + Absent(marks);
        }

        StringBuilder text = new();
        string students = all.Students == 1 ? "1 student" : $"{all.Students} students";
        text.Append($"{students}, {all.Asked} answers asked for, {Percent(all.Share)} of the points\n");
        (StudentShare least, StudentShare most) = (all.Shares[0], all.Shares[^1]);
        text.Append(all.Students == 1
            ? "\n"
            : $"least {Percent(least.Share)} ({least.Student}), middle {Percent(all.Middle)}, most {Percent(most.Share)} ({most.Student})\n\n");
        text.Append(Absent(marks));
        text.Append("question   points   full   part   none   not answered\n");
        foreach (QuestionSummary one in all.Questions)
        {
            text.Append($"{one.Question,-8}{Percent(one.Share),9}{one.Full,7}{one.Part,7}{one.None,7}{one.NotAnswered,15}\n");
        }

        text.Append(all.Slips.Count == 0 ? "\nno known slips\n" : "\nslips\n");
        TextPage page = new();
        foreach (SlipCount slip in all.Slips)
        {
            page.Paragraph($"{slip.Slip}: {slip.Remark}", $"{slip.Count,5} × ");
        }

        return text.ToString() + page;
    }

    /// <summary>Who has a sheet and no answers, by id and name; nothing where all answered.</summary>
    private static string Absent(Marks marks)
    {
        if (marks.Absent.Count == 0)
        {
            return "";
        }

        TextPage page = new();
        page.Paragraph(string.Join(", ", marks.Absent.Select(one => one.Name.Length == 0 ? one.Id : $"{one.Id} ({one.Name})")),
            "no answers, not counted: ");
        return page + "\n";
    }

    private static string Percent(double share) => QuantityText.FormatPercent(Quantities.Ratio.FromFraction(share), share < 0.1 ? 1 : 2);
}
