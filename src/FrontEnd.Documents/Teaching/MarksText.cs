using System.Text;
using FrontEnd.Documents.Sheets;
using FrontEnd.Teaching;
using FrontEnd.Text;

namespace FrontEnd.Documents.Teaching;

/// <summary>What the class did, as text: points by question, and the slips that were made.</summary>
public static class MarksText
{
    public static string Of(Marks marks)
    {
        StringBuilder text = new();
        int students = marks.Rows.Select(row => row.Student).Distinct(StringComparer.Ordinal).Count();
        if (students == 0)
        {
            return "no answers\n";
        }

        double share = marks.Rows.Sum(row => row.Points) / marks.Rows.Sum(row => row.Possible);
        text.Append(FormattableString.Invariant($"{students} student{(students == 1 ? "" : "s")}, {marks.Rows.Count} answers asked for, {Percent(share)} of the points\n"));
        IReadOnlyList<(string Student, double Share)> shares = marks.Shares;
        text.Append(shares.Count == 1 ? "\n" : $"least {Percent(shares[0].Share)} ({shares[0].Student}), middle {Percent((shares[(shares.Count - 1) / 2].Share + shares[shares.Count / 2].Share) / 2)}, most {Percent(shares[^1].Share)} ({shares[^1].Student})\n\n");
        text.Append("question   points   full   part   none   not answered\n");
        foreach (IGrouping<string, Mark> question in marks.Rows.GroupBy(row => row.Question, StringComparer.Ordinal))
        {
            int full = question.Count(row => row.Points == row.Possible), unanswered = question.Count(row => row.Answer.Length == 0);
            int none = question.Count(row => row.Points == 0) - unanswered;
            string percent = Percent(question.Sum(row => row.Points) / question.Sum(row => row.Possible));
            text.Append(FormattableString.Invariant($"{question.Key,-8}{percent,9}{full,7}{question.Count() - full - none - unanswered,7}{none,7}{unanswered,15}\n"));
        }

        text.Append(marks.Slips.Count == 0 ? "\nno known slips\n" : "\nslips\n");
        TextPage page = new();
        foreach ((string slip, string remark, int count) in marks.Slips)
        {
            page.Paragraph($"{slip}: {remark}", $"{count,5} × ");
        }

        return text.ToString() + page;
    }

    private static string Percent(double share) => QuantityText.FormatPercent(Quantities.Ratio.FromFraction(share), share < 0.1 ? 1 : 2);
}
