using System.Text;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Teaching;
using FrontEnd.Quantities;
using FrontEnd.Teaching.Problems;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>A class of any size is marked: a key is no design file.</summary>
public sealed class LargeClassTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("class");

    public void Dispose() => _folder.Delete(recursive: true);

    [Theory]
    [InlineData(400)]
    [InlineData(2000)]
    public void Mark_LargeClass_GivesEveryStudentMarks(int students)
    {
        const int Questions = 20;
        KeySlip[] slips = [.. Enumerable.Range(0, 4).Select(slip => new KeySlip($"slip-{slip}", new string('r', 120), 3 + slip, 2.9 + slip, 3.1 + slip, 0.5))];
        Key key = new(7, "1", [.. Enumerable.Range(1, students).Select(student => new KeySheet($"s{student}", $"student {student}",
            [.. Enumerable.Range(1, Questions).Select(question => new KeyQuestion($"q{question}", "noise-thermal", 2, "2 V", slips)
            {
                Kind = QuantityKind.Of<Voltage>(), Value = 2, Low = 1.9, High = 2.1,
            })]))]);
        string keyFile = Path.Combine(_folder.FullName, "key.json"), answers = Path.Combine(_folder.FullName, "answers.csv"), marks = Path.Combine(_folder.FullName, "marks.csv");
        File.WriteAllText(keyFile, KeyFile.Write(key));
        Assert.True(TextFiles.Limit < new FileInfo(keyFile).Length);
        StringBuilder given = new("student,question,answer\n");
        for (int student = 1; student <= students; student++)
        {
            given.Append(System.Globalization.CultureInfo.InvariantCulture, $"s{student},q1,2 V\ns{student},q2,3 V\n");
        }

        File.WriteAllText(answers, given.ToString());
        Outcome outcome = Shell.Run("mark", keyFile, answers, "-o", marks);
        Assert.Equal(0, outcome.Code);
        string[] lines = File.ReadAllLines(marks);
        Assert.Equal(1 + (students * (Questions + 1)), lines.Length);
        Assert.Contains($"s{students},student {students},total,,2.5,40,,", lines);
    }

    /// <summary>A name that ends in .json gets JSON, and the starter's figures.</summary>
    [Fact]
    public void New_Json_WritesADesignThatIsTheStarter()
    {
        string json = Path.Combine(_folder.FullName, "x.json"), toml = Path.Combine(_folder.FullName, "x.toml");
        Assert.Equal(0, Shell.Run("new", json).Code);
        Assert.Equal(0, Shell.Run("new", toml).Code);
        Assert.StartsWith("{", File.ReadAllText(json), StringComparison.Ordinal);
        Documents.DesignDocument plain = Documents.DesignDocument.Read(json), starter = Documents.DesignDocument.Read(toml);
        Assert.Empty(plain.Findings);
        FrontEnd.Results.Assessment mine = FrontEnd.Reporting.Evaluator.Evaluate(plain.Design), theirs = FrontEnd.Reporting.Evaluator.Evaluate(starter.Design);
        Assert.Equal(theirs.Results.Select(result => (result.Id, result.Value, result.Text, result.Verdict.Kind)), mine.Results.Select(result => (result.Id, result.Value, result.Text, result.Verdict.Kind)));
        Assert.Equal(theirs.Findings.Select(finding => finding.Message), mine.Findings.Select(finding => finding.Message));
        Assert.All(FrontEnd.Catalogue.DesignFields.Of(starter.Design), field => Assert.Equal(
            FrontEnd.Fields.FieldText.Format(field, field.Get(starter.Design)), FrontEnd.Fields.FieldText.Format(field, FrontEnd.Catalogue.DesignFields.Find(plain.Design, field.Key)!.Get(plain.Design))));
    }
}
