using FrontEnd.Documents.Teaching;
using FrontEnd.Findings;
using FrontEnd.Teaching.Problems;
using Xunit;

namespace FrontEnd.Documents.Tests.Teaching;

/// <summary>What is said of a file that is not the one that was wanted: what it is, and what was.</summary>
public class WantedFileTests
{
    private const string Design = "channels = 2\n[electrodes.active]\nkind = \"gel\"\n[input]\nseries-resistor = \"47 kΩ\"\n[converter]\nbits = 16\n";
    private const string Homework = "topics = [\"noise\"]\ncount = 3\n";
    private const string Templates = "[[templates]]\nid = \"own\"\n";

    public static TheoryData<string, string, string, string> OfHomework => new()
    {
        { Design, "FE1085", "`a.toml` is a design, not a homework's file", "`frontend check a.toml` reads it" },
        { Templates, "FE1085", "`a.toml` is a file of problem templates, not a homework's file", "`frontend problems --templates a.toml --list` reads it" },
        { "<html></html>", "FE0120", "HTML", "name a homework's file; a homework's file has lines such as `topics = [\"noise\", \"gain\"]` and `count = 10`" },
        { "id,name\ns1,Ada\ns2,Ben\n", "FE0120", "a table of values", "name a homework's file" },
        { "{\"topics\": [\"noise\"]}", "FE0120", "JSON", "name a homework's file, in TOML" },
        { "count: 3\ntopics: noise\n", "FE0120", "YAML", "a homework's file has lines such as" },
    };

    public static TheoryData<string, string, string, string> OfTemplates => new()
    {
        { Design, "FE1085", "`a.toml` is a design, not a file of problem templates", "`frontend check a.toml` reads it" },
        { Homework, "FE1085", "`a.toml` is a homework's file, not a file of problem templates", "`frontend problems --homework a.toml` reads it" },
        { "<html></html>", "FE0120", "HTML", "each template begins with [[templates]]" },
        { "{\"a\": 1}", "FE0120", "JSON", "name a file of problem templates, in TOML" },
    };

    [Theory]
    [MemberData(nameof(OfHomework))]
    public void Homework_ThatIsAnotherFile_IsToldAsOneThing(string text, string code, string message, string help)
    {
        (HomeworkPlan? plan, IReadOnlyList<Finding> findings) = HomeworkPlanFile.Parse(text, "a.toml");
        Assert.Null(plan);
        IsTold(Assert.Single(findings), code, message, help);
    }

    [Theory]
    [MemberData(nameof(OfTemplates))]
    public void Templates_ThatAreAnotherFile_AreToldAsOneThing(string text, string code, string message, string help)
    {
        List<Finding> findings = [];
        Assert.Empty(OwnTemplateFile.Parse(text, "a.toml", [], findings));
        IsTold(Assert.Single(findings), code, message, help);
    }

    private static void IsTold(Finding finding, string code, string message, string help)
    {
        Assert.Equal(code, finding.Code);
        Assert.Contains(message, finding.Message, StringComparison.Ordinal);
        Assert.Contains(help, finding.Help, StringComparison.Ordinal);
        Assert.DoesNotContain("frontend new", finding.Help, StringComparison.Ordinal);
    }
}
