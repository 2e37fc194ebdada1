using System.Text;
using FrontEnd.Documents.Teaching;
using FrontEnd.Documents.Tests;
using FrontEnd.Findings;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>The invented class of README.md: its answers are those of a plain rule, and the marks are what the rule meant them to be.</summary>
public sealed class ClassroomTests
{
    private static readonly string Folder = Path.Combine(Repository.Root, "designs", "classroom");

    private enum Meant
    {
        Right,
        Slip,
        PowerOfTen,
        Gap,
        Unreadable,
        Wrong,
    }

    [Fact]
    public void Answers_OfTheInventedClass_AreThoseOfTheRule()
    {
        string path = Path.Combine(Folder, "answers.csv"), written = Filled(Made());
        if (Environment.GetEnvironmentVariable("FRONTEND_ACCEPT") is "1")
        {
            File.WriteAllText(path, written);
        }

        Assert.Equal(written, File.ReadAllText(path).ReplaceLineEndings("\n"));
    }

    [Fact]
    public void Marks_OfTheInventedClass_AreAsMeant()
    {
        Homework homework = Made();
        Key key = Key.Of(homework);
        List<Finding> findings = [];
        IReadOnlyList<GivenAnswer> answers = ClassFiles.Answers(Filled(homework), "answers.csv", findings)!;
        Assert.Empty(findings);
        Marks marks = Marker.Mark(key, answers);
        Assert.Equal(360, marks.Rows.Count);
        for (int student = 0; student < key.Sheets.Count; student++)
        {
            for (int question = 0; question < 12; question++)
            {
                Mark mark = marks.Rows[(student * 12) + question];
                switch (Rule(student, question))
                {
                    case Meant.Right:
                        Assert.True(mark.Points == mark.Possible, $"{mark.Answer}: {mark.Remark}");
                        break;
                    case Meant.Slip:
                        Assert.Equal(key.Sheets[student].Questions[question].Slips[0].Code, mark.Slip);
                        break;
                    case Meant.Gap:
                        Assert.Equal("no answer", mark.Remark);
                        break;
                    default:
                        Assert.True(mark.Points < mark.Possible, $"{mark.Answer} for {key.Sheets[student].Questions[question].Answer}");
                        break;
                }
            }
        }

        Assert.Equal(Enumerable.Range(0, 360).Count(at => Rule(at / 12, at % 12) == Meant.Unreadable), marks.Findings.Count);
        string page = ReturnedHtml.Page(key, marks);
        Assert.Equal(30, page.Split("<section class=\"sheet\">").Length - 1);
        Assert.Equal(360, page.Split("<td class=\"value\">").Length - 1);
        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
    }

    private static Homework Made()
    {
        List<Finding> findings = [];
        HomeworkPlan plan = HomeworkPlanFile.Read(Path.Combine(Folder, "homework.toml")).Plan!;
        return Homework.Make(plan, new DrawSource((ulong)plan.Seed, File.ReadAllBytes(Path.Combine(Folder, "secret.txt"))), ClassFiles.Students(File.ReadAllText(Path.Combine(Folder, "class.csv")), "class.csv", findings));
    }

    /// <summary>Scattered by multiplying with a large odd number (Knuth's, from memory); any would do.</summary>
    private static Meant Rule(int student, int question) => ((int)(unchecked((uint)((student * 12) + question + 1) * 2654435761u) >> 16) % 24) switch
    {
        < 15 => Meant.Right,
        < 18 => Meant.Slip,
        18 => Meant.PowerOfTen,
        19 => Meant.Gap,
        20 when student % 4 == 0 => Meant.Unreadable,
        < 21 => Meant.Right,
        _ => Meant.Wrong,
    };

    /// <summary>The blank list with its last field filled in.</summary>
    private static string Filled(Homework homework)
    {
        string[] blank = ClassFiles.AnswersTable(homework).TrimEnd('\n').Split('\n');
        KeyQuestion[] questions = [.. Key.Of(homework).Sheets.SelectMany(sheet => sheet.Questions)];
        StringBuilder text = new(blank[0] + "\n");
        for (int at = 0; at < questions.Length; at++)
        {
            text.Append(blank[at + 1]).Append(Answer(questions[at], Rule(at / 12, at % 12), ((at / 12) + at) % 4)).Append('\n');
        }

        return text.ToString();
    }

    private static string Answer(KeyQuestion question, Meant meant, int spelling)
    {
        if (meant is Meant.Gap or Meant.Unreadable)
        {
            return meant == Meant.Gap ? "" : "see back";
        }

        if (question.Kind is not { } kind)
        {
            return ChoiceAnswer.Letter(meant == Meant.Right ? (int)question.Value : (int)question.Slips[0].Value);
        }

        double value = meant switch
        {
            Meant.Right => question.Value,
            Meant.Slip => question.Slips[0].Value,
            Meant.PowerOfTen => question.Value * 1000,
            _ => question.Value * 1.31,
        };
        string plain = kind.Is<Quantities.Ratio>() ? QuantityText.FormatTrimmed(value, "1", 4) : QuantityText.FormatTrimmed(kind.FromSi(value), 4);
        return spelling switch
        {
            0 => plain,
            1 => plain.Replace("µ", "u", StringComparison.Ordinal).Replace("Ω", "ohm", StringComparison.Ordinal),
            2 => plain.Replace(" ", "", StringComparison.Ordinal).Replace("rms", " rms", StringComparison.Ordinal),
            _ => FormattableString.Invariant($"{value:0.###e0} {(kind.Is<Quantities.Ratio>() ? "" : kind.FromSi(1).SiUnit)}").Trim(),
        };
    }
}
