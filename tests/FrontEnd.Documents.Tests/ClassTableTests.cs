using System.Text;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Teaching;
using FrontEnd.Findings;
using FrontEnd.Teaching.Problems;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>Lists of a class as spreadsheets save them.</summary>
public sealed class ClassTableTests
{
    private const string Table = "student,question,answer\nZoë,q1,2.7 µV\nJosé,q2,45°\nAda,q3,“≈ 5 %”\n";

    static ClassTableTests() => Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);

    public static TheoryData<string> Encodings => ["utf-8", "utf-8 mark", "utf-16 mark", "utf-16", "utf-16 big mark", "utf-16 big", "windows-1252"];

    [Theory]
    [MemberData(nameof(Encodings))]
    public void Table_InAnyEncoding_IsTheSameText(string name)
    {
        string table = name == "windows-1252" ? Table.Replace("≈", "~", StringComparison.Ordinal) : Table;
        Encoding encoding = name switch
        {
            "utf-8" or "utf-8 mark" => new UTF8Encoding(name.EndsWith("mark", StringComparison.Ordinal)),
            "windows-1252" => Encoding.GetEncoding(1252),
            _ => new UnicodeEncoding(name.Contains("big", StringComparison.Ordinal), name.EndsWith("mark", StringComparison.Ordinal)),
        };
        byte[] bytes = [.. encoding.GetPreamble(), .. encoding.GetBytes(table)];
        Assert.Equal(table, TableText.Decode("x.csv", bytes, out Finding? finding));
        Assert.Null(finding);
    }

    /// <summary>Every byte against the framework's table.</summary>
    [Fact]
    public void Windows1252_EveryByte_IsTheFrameworksLetter()
    {
        byte[] bytes = [.. Enumerable.Range(0x20, 0x7F - 0x20).Concat(Enumerable.Range(0x80, 0x80)).Select(one => (byte)one)];
        Assert.Equal(Encoding.GetEncoding(1252).GetString(bytes), TableText.Decode("x.csv", bytes, out _));
    }

    [Theory]
    [InlineData(new byte[] { (byte)'a', 0, 0, 0, (byte)'b', 1 })]
    [InlineData(new byte[] { 0xFF, 1, 2, 3 })]
    [InlineData(new byte[] { (byte)'P', (byte)'K', 3, 4, 20, 0 })]
    public void Table_ThatIsNoText_IsAFinding(byte[] bytes)
    {
        Assert.Null(TableText.Decode("x.csv", bytes, out Finding? finding));
        Assert.Equal(FileMessages.FileNotText, finding!.Code);
    }

    [Theory]
    [InlineData("student,question,answer\na,q1,5 V\n")]
    [InlineData("student;question;answer\na;q1;5 V\n")]
    [InlineData("sep=;\nstudent;question;answer\na;q1;5 V\n")]
    [InlineData("\uFEFFSEP=;\r\nstudent;question;answer\r\na;q1;5 V\r\n")]
    [InlineData("\"sep=;\"\nStudent;Question;Answer\na;q1;5 V;;\n")]
    [InlineData("sep=|\nstudent|question|answer|\na|q1|5 V|\n")]
    [InlineData("sep=\t\nstudent\tquestion\tanswer\na\tq1\t5 V\n")]
    [InlineData("sep=,\nname,answer,student,question,,\nAda,5 V,a,q1,,\n,,,,,\n")]
    public void Answers_WithAnySeparator_AreRead(string text)
    {
        List<Finding> findings = [];
        GivenAnswer answer = Assert.Single(ClassFiles.Answers(text, "x.csv", findings)!);
        Assert.Empty(findings);
        Assert.Equal(("a", "q1", "5 V", ""), (answer.Student, answer.Question, answer.Text, answer.Sheet));
        Assert.Equal(text.Split('\n').TakeWhile(line => !line.Contains("5 V", StringComparison.Ordinal)).Count() + 1, answer.Line);
    }

    /// <summary>A decimal comma that nobody put in quotes divides the last field, which is put together again.</summary>
    [Fact]
    public void Answers_WithACommaThatDivides_AreWholeAgain()
    {
        List<Finding> findings = [];
        IReadOnlyList<GivenAnswer> answers = ClassFiles.Answers("student,sheet,question,answer\na,K,q1,2,7 nV\nb,,q1,5 V\nc,,q1\n", "x.csv", findings)!;
        Assert.Equal([("2,7 nV", "K"), ("5 V", "")], answers.Select(one => (one.Text, one.Sheet)));
        Assert.Equal(4, Assert.Single(findings).Line);
    }

    [Fact]
    public void BlankList_FilledIn_HasEverySheetsCode()
    {
        Homework homework = Homework.Make([], 1, 2, 5, [new Student("a", "Ada, B"), new Student("b", "")]);
        List<Finding> findings = [];
        IReadOnlyList<GivenAnswer> answers = ClassFiles.Answers(ClassFiles.AnswersTable(homework), "x.csv", findings)!;
        Assert.Equal(homework.Sheets.SelectMany(sheet => sheet.Questions.Select(question => (sheet.Student!.Id, sheet.Code, question.Id))), answers.Select(one => (one.Student, one.Sheet, one.Question)));
    }
}
