using FrontEnd.Documents.Teaching;
using FrontEnd.Findings;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>A homework's file: read like a design, and what it asks is what the sheets have.</summary>
public class HomeworkPlanFileTests
{
    private static readonly string Example = Path.Combine(Repository.Designs, "classroom", "homework.toml");

    [Fact]
    public void Read_OfTheClassroomsFile_IsWhatItSays()
    {
        (HomeworkPlan? plan, IReadOnlyList<Finding> findings) = HomeworkPlanFile.Read(Example);
        Assert.Empty(findings);
        Assert.Equal(("Biopotential front ends", 8, 2026, SheetPaper.A4, WorkingSpace.Line), (plan!.Course, plan.Questions, plan.Seed, plan.Paper, plan.Space));
        ProblemSheet sheet = Homework.Make(plan, new DrawSource(2026), []).Sheets[0];
        Assert.Equal(["noise-thermal", "gain-first-stage"], sheet.Questions.Take(2).Select(question => question.Problem.TemplateId));
        Assert.Equal(8, sheet.Questions.Select(question => question.Problem.TemplateId).Distinct().Count());
        Topic[] topics = [Topic.Noise, Topic.Gain, Topic.Cmrr, Topic.Electrodes, Topic.Safety];
        Assert.All(sheet.Questions, question => Assert.Contains(question.Problem.Topic, topics));
    }

    [Theory]
    [InlineData("topic = [\"noise\"]", "FE", "`topics`")]
    [InlineData("count = 0", "FE", "count")]
    [InlineData("count = \"ten\"", "FE", "count")]
    [InlineData("level = 4", "FE", "level")]
    [InlineData("paper = \"a5\"", "FE", "paper")]
    [InlineData("topics = [\"nois\"]", "FE0809", "`noise`")]
    [InlineData("templates = [\"noise-thermel\"]", "FE1130", "`noise-thermal`")]
    [InlineData("templates = [\"noise-thermal\", \"gain-stage\"]\ncount = 1", "FE1131", "count")]
    [InlineData("topics = [\"whole-chain\"]\nlevel = 1", "FE0816", "topics")]
    [InlineData("course = ", "FE", "")]
    public void Parse_OfAWrongLine_TellsWhereAndWhatIsMeant(string text, string code, string says)
    {
        (HomeworkPlan? plan, IReadOnlyList<Finding> findings) = HomeworkPlanFile.Parse("# a comment\n" + text, "homework.toml");
        Assert.Null(plan);
        Finding finding = findings[0];
        Assert.True(finding.Code.StartsWith(code, StringComparison.Ordinal), finding.Code);
        Assert.Contains(says, $"{finding.Field} {finding.Message} {finding.Note} {finding.Help}", StringComparison.Ordinal);
        Assert.True(2 <= finding.Line, $"{finding.Code} {finding.Line}");
    }

    /// <summary>What is listed is asked first, twice where it is listed twice, and the rest is balanced with it.</summary>
    [Fact]
    public void Choose_OfListedTemplates_AsksThemFirst()
    {
        HomeworkPlan plan = new() { Templates = ["gain-stage", "noise-thermal", "gain-stage"] };
        Assert.Equal([("gain-stage", 1), ("noise-thermal", 1), ("gain-stage", 2)], plan.Choose(new DrawSource(5)).Select(one => (one.Template.Id, one.Copy)));
        int[] points = [.. Enumerable.Range(0, 100).Select(seed => (plan with { Count = 12 }).Choose(new DrawSource((ulong)seed)).Sum(one => one.Template.Points))];
        Assert.InRange(points.Max() - points.Min(), 0, 4);
    }
}
