namespace FrontEnd.Teaching.Problems;

/// <summary>What a class did with its questions.</summary>
/// <param name="Students">Who has marks.</param>
/// <param name="Asked">Answers that were asked for, of all students together.</param>
/// <param name="Share">Share of all points, 0 to 1.</param>
/// <param name="Shares">Each student's share of the points, the least first.</param>
/// <param name="Questions">In the order of the sheets.</param>
/// <param name="Slips">How often each slip was made, commonest first.</param>
internal sealed record ClassSummary(
    int Students, int Asked, double Share, IReadOnlyList<StudentShare> Shares, IReadOnlyList<QuestionSummary> Questions,
    IReadOnlyList<SlipCount> Slips)
{
    /// <summary>The median of the students' shares.</summary>
    public double Middle => (Shares[(Shares.Count - 1) / 2].Share + Shares[Shares.Count / 2].Share) / 2;

    /// <summary>Null where nobody has marks.</summary>
    public static ClassSummary? Of(Marks marks)
    {
        if (marks.Rows.Count == 0)
        {
            return null;
        }

        StudentShare[] shares =
        [
            .. marks.Rows.GroupBy(row => row.Student, StringComparer.Ordinal).Select(rows => new StudentShare(rows.Key, ShareOf(rows)))
                .OrderBy(one => one.Share).ThenBy(one => one.Student, StringComparer.Ordinal),
        ];
        SlipCount[] slips =
        [
            .. marks.Rows.Where(row => row.Slip.Length > 0).GroupBy(row => row.Slip, StringComparer.Ordinal)
                .Select(rows =>
                    new SlipCount(rows.Key, Marker.InGeneral(rows.Key) ?? rows.First().Remark, rows.Count())).OrderByDescending(one =>
                        one.Count).ThenBy(one => one.Slip, StringComparer.Ordinal),
        ];
        QuestionSummary[] questions = [.. marks.Rows.GroupBy(row =>
            row.Question, StringComparer.Ordinal).Select(rows => Question(rows.Key, [.. rows]))];
        return new ClassSummary(shares.Length, marks.Rows.Count, ShareOf(marks.Rows), shares, questions, slips);
    }

    private static QuestionSummary Question(string id, Mark[] rows)
    {
        int full = rows.Count(row => row.Points == row.Possible), unanswered = rows.Count(row => row.Answer.Length == 0);
        int none = rows.Count(row => row.Points == 0) - unanswered;
        return new QuestionSummary(id, ShareOf(rows), full, rows.Length - full - none - unanswered, none, unanswered);
    }

    private static double ShareOf(IEnumerable<Mark> rows) => rows.Sum(row => row.Points) / rows.Sum(row => row.Possible);
}

/// <summary>A student's share of the points, 0 to 1.</summary>
internal sealed record StudentShare(string Student, double Share);

/// <summary>A question's share of the points, and how many earned all of them, part of them and none, and how many gave no
/// answer.</summary>
internal sealed record QuestionSummary(string Question, double Share, int Full, int Part, int None, int NotAnswered);

/// <summary>How often a slip was made.</summary>
internal sealed record SlipCount(string Slip, string Remark, int Count);
