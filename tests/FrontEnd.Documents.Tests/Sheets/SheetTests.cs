using System.Text.Json;
using System.Xml.Linq;
using FrontEnd.Advice;
using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Documents.Reading;
using FrontEnd.Documents.Sheets;
using FrontEnd.Fields;
using FrontEnd.Findings;
using FrontEnd.Interference;
using FrontEnd.Reporting;
using FrontEnd.Results;
using Xunit;

namespace FrontEnd.Documents.Tests.Sheets;

/// <summary>The printed forms of an assessment: complete, adding up, readable again and safe whatever a design is called.</summary>
public sealed class SheetTests
{
    private const string Project = "FrontEnd.Documents.Tests";

    public static TheoryData<string> Designs => ["starter", "dry-headband", "gel-cap", "saline-sponge", "minimal", "hobbyist", "engineer", "instructor"];

    [Theory]
    [MemberData(nameof(Designs))]
    public void CheckText_AnyDesign_KeepsToEightyColumns(string name)
    {
        foreach (string line in CheckText.Of(Of(name)).Split('\n'))
        {
            Assert.True(line.Length <= 80, line);
        }
    }

    [Theory]
    [MemberData(nameof(Designs))]
    public void BudgetTables_AnyDesign_ShowEveryResult(string name)
    {
        Sheet sheet = Of(name);
        Row[] rows = [.. BudgetTables.Of(sheet.Assessment).SelectMany(table => table.Rows)];
        foreach (Result result in sheet.Assessment.Results)
        {
            string shown = result.State == ResultState.Word ? result.Text! : Wording.Value(result);
            bool found = rows.Any(row => (row.IsSum || result.Id.Text.Contains(row.Cells[0], StringComparison.Ordinal)) && row.Cells.Any(cell => cell.Contains(shown, StringComparison.Ordinal)));
            Assert.True(found, $"{result.Id} with {shown} is in no table");
        }
    }

    /// <summary>Texts are for the reader: what a table decides follows from facts, whatever the texts say.</summary>
    [Theory]
    [MemberData(nameof(Designs))]
    public void BudgetTables_OtherTexts_DecideNothing(string name)
    {
        Assessment told = Of(name).Assessment;
        Assessment silent = new(told.Design, [.. told.Results.Select(result => result.State == ResultState.Number ? result with { Text = "-" } : result)], told.Findings, told.Curves);
        foreach (string title in new[] { "mains harmonics", "noise by source" })
        {
            Assert.Equal(Cells(told, title), Cells(silent, title));
        }

        static IEnumerable<string> Cells(Assessment assessment, string title) =>
            BudgetTables.Of(assessment).Where(table => table.Title == title).SelectMany(table => table.Rows).SelectMany(row => row.Cells);
    }

    /// <summary>A name is the user's, whatever words stand in it.</summary>
    [Fact]
    public void Aliases_OfAnOddlyNamedInterferer_KeepItsName()
    {
        const string Name = "what lands at night";
        Design design = Of("starter").Design with { Interferers = [Interferer.Muscle with { Name = Name, High = Interferer.Muscle.Low }] };
        BudgetTable aliases = BudgetTables.Of(Evaluator.Evaluate(design)).Single(table => table.Title == "aliases");
        Assert.Contains(aliases.Rows, row => row.Cells[^1] == Name);
    }

    [Theory]
    [MemberData(nameof(Designs))]
    public void BudgetTables_SumLines_AreTheSumsOfTheirRows(string name)
    {
        Assessment assessment = Of(name).Assessment;

        // The tables call these lines sums; rounding of doubles only.
        double noise = assessment.Results.Where(result => result.Id.Text.StartsWith("noise.source.", StringComparison.Ordinal)).Sum(result => result.Si * result.Si);
        Equal(Math.Sqrt(noise), assessment["noise.total"].Si, 1e-9);
        Equal(assessment["mains.imbalance"].Si + assessment["mains.amplifier"].Si + assessment["mains.loop"].Si, assessment["mains.total"].Si, 1e-9);
        Result[] recorded = [.. assessment.Results.Where(result => result.Id.Text.StartsWith("mains.harmonic.", StringComparison.Ordinal) && result.Id.Text.EndsWith(".recorded", StringComparison.Ordinal))];
        Equal(recorded.Sum(result => result.Si), assessment["mains.recorded_everywhere"].Si, 1e-9);
        Equal(
            recorded.Where(result => assessment[result.Id.Text.Replace(".recorded", ".lands_at", StringComparison.Ordinal)].LandsInBand == true).Sum(result => result.Si),
            assessment["mains.recorded"].Si, 1e-9);
    }

    [Theory]
    [MemberData(nameof(Designs))]
    public void Json_DesignObject_ReadsBackAsTheSameDesign(string name)
    {
        Sheet sheet = Of(name);
        using JsonDocument json = JsonDocument.Parse(AnswerJson.Of(sheet));
        DesignDocument back = DesignDocument.Parse(json.RootElement.GetProperty("design").GetRawText(), DocumentFormat.Json);
        Assert.DoesNotContain(back.Findings, finding => finding.Severity == Severity.Error);
        IReadOnlyList<Field<Design>> fields = DesignFields.Of(sheet.Design);
        Assert.Equal(fields.Select(field => field.Key), DesignFields.Of(back.Design).Select(field => field.Key), StringComparer.Ordinal);
        foreach (Field<Design> field in fields)
        {
            string before = FieldText.Format(field, field.Get(sheet.Design)), after = FieldText.Format(field, field.Get(back.Design));
            Assert.True(string.Equals(before, after, StringComparison.Ordinal), $"{field.Key}: {before} became {after}");
        }
    }

    [Fact]
    public void Json_Results_SayTheirStateAndHoldNumbersInSi()
    {
        Sheet sheet = Of("dry-headband");
        using JsonDocument json = JsonDocument.Parse(AnswerJson.Of(sheet));
        JsonElement[] results = [.. json.RootElement.GetProperty("results").EnumerateArray()];
        Assert.Equal(sheet.Assessment.Results.Select(result => result.Id.Text), results.Select(result => result.GetProperty("id").GetString()));
        JsonElement total = results.First(result => result.GetProperty("id").GetString() is "noise.total");
        Assert.Equal(sheet.Assessment["noise.total"].Si, total.GetProperty("value").GetDouble());
        Assert.Equal("V", total.GetProperty("unit").GetString());
        Assert.Equal("number", total.GetProperty("state").GetString());
        Assert.True(total.GetProperty("hand").GetProperty("value").GetDouble() > 0);

        // Leads and loop alone are above the residue asked for, so that no rejection helps: a ratio without bound is a state, not a number.
        JsonElement needed = results.First(result => result.GetProperty("id").GetString() is "mains.cmrr_needed");
        Assert.Equal(JsonValueKind.Null, needed.GetProperty("value").ValueKind);
        Assert.Equal("unbounded", needed.GetProperty("state").GetString());
        Assert.Equal("word", results.First(result => result.GetProperty("id").GetString() is "levels.first_to_clip").GetProperty("state").GetString());
        foreach (JsonElement result in results)
        {
            Assert.True(result.GetProperty("verdict").GetString() is "pass" or "marginal" or "fail" or "not judged");
        }
    }

    [Fact]
    public void Json_MissingResult_NamesItsFinding()
    {
        Design wrong = new() { Channels = 0 };
        DesignDocument document = DesignDocument.Parse("", DocumentFormat.Toml);
        Assessment assessment = Evaluator.Evaluate(wrong);
        Assert.Contains(assessment.Results, result => result.State == ResultState.Missing);
        using JsonDocument json = JsonDocument.Parse(AnswerJson.Of(new Sheet(document, assessment)));
        JsonElement missing = json.RootElement.GetProperty("results").EnumerateArray().First(result => result.GetProperty("state").GetString() is "missing");
        Assert.Equal(JsonValueKind.Null, missing.GetProperty("value").ValueKind);
        Assert.Contains(json.RootElement.GetProperty("findings").EnumerateArray(), finding => finding.GetProperty("code").GetString() == missing.GetProperty("finding").GetString());
    }

    [Theory]
    [MemberData(nameof(Designs))]
    public void Html_AnyDesign_IsOneFileInPartsWithWellFormedDrawings(string name)
    {
        Sheet sheet = Of(name) with { HasAppendix = true };
        string html = HtmlSheet.Of(sheet);
        Curves curves = sheet.Assessment.Curves;
        int filters = new[] { curves.FilterResponse, curves.FilterDifference, curves.FilterDelay, curves.FilterStep }.Count(lines => lines.Count != 0);
        int schematic = SchematicDrawing.Of(sheet.Assessment, sheet.Board!.Board).Pages.Count;
        Assert.Equal((filters == 0 && sheet.Design.Digital.Count == 0 ? 8 : 9) + schematic, html.Split("<section ").Length - 1);
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<link", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("src=", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("NaN", html, StringComparison.Ordinal);
        Assert.DoesNotContain("∞", html, StringComparison.Ordinal);
        XElement[] drawings = [.. Drawings(html)];
        int figures = html.Split("<figure>").Length - 1;
        Assert.InRange(figures, 10, FrontEnd.Teaching.Diagrams.All.Count);
        Assert.Equal(4 + filters + figures + schematic, drawings.Length);
        foreach (XElement text in drawings.SelectMany(drawing => drawing.Descendants().Where(one => one.Name.LocalName is "text" && one.Attribute("x") is not null)))
        {
            // Every letter starts inside the drawing.
            XElement drawing = text.AncestorsAndSelf().Last();
            string[] box = drawing.Attribute("viewBox")!.Value.Split(' ');
            Assert.InRange((double)text.Attribute("x")!, 0, double.Parse(box[2]));
            Assert.InRange((double)text.Attribute("y")!, 0, double.Parse(box[3]));
        }
    }

    [Theory]
    [MemberData(nameof(Designs))]
    public void Html_TickLabelsOfAnAxis_KeepApart(string name)
    {
        foreach (XElement drawing in Drawings(HtmlSheet.Of(Of(name))).Where(one => !((string)one.Attribute("aria-label")!).StartsWith("schematic", StringComparison.Ordinal)).Skip(1).Take(3))
        {
            // Labels of the x axis stand in one line below the plot; a letter of size 10 is at most 7 wide.
            (double X, string Text)[] labels =
            [
                .. drawing.Descendants().Where(one => one.Name.LocalName is "text" && one.Value.Length > 0 && (string?)one.Attribute("font-size") is "10" && (string?)one.Attribute("text-anchor") is "middle")
                    .GroupBy(one => (string)one.Attribute("y")!, StringComparer.Ordinal).OrderByDescending(line => double.Parse(line.Key)).First().Select(one => ((double)one.Attribute("x")!, one.Value)),
            ];
            Assert.True(labels.Length >= 2);
            foreach (((double X, string Text) left, (double X, string Text) right) in labels.OrderBy(label => label.X).Zip(labels.OrderBy(label => label.X).Skip(1)))
            {
                Assert.True((left.Text.Length + right.Text.Length) * 3.5 < right.X - left.X, $"`{left.Text}` and `{right.Text}` touch in {(string?)drawing.Attribute("aria-label")}");
            }
        }
    }

    [Fact]
    public void Sheets_HostileName_IsTextInEveryFormat()
    {
        const string Name = "<script>alert(1)</script>|x|\"&' **b** =1+1";
        DesignDocument document = DesignDocument.Parse(
            $"name = '''{Name}'''\ncaution = '''{Name}'''\n[[digital]]\nkind = \"notch\"\nname = '''{Name}'''\n[[stages]]\nkind = \"gain\"\nname = '''=cmd|<b>'''\nfeedback-resistor = \"10 kΩ\"\nground-resistor = \"1 kΩ\"\n", DocumentFormat.Toml);
        Sheet sheet = new(document, Advisor.Advise(Evaluator.Evaluate(document.Design), TestContext.Current.CancellationToken)) { Bench = FrontEnd.Bench.BenchPlan.Of(document.Design).Readings, Board = BoardAnswers.Of(Evaluator.Evaluate(document.Design)) };
        Assert.Equal(Name, sheet.Design.Name);
        string html = HtmlSheet.Of(sheet), markdown = MarkdownSheet.Of(sheet), csv = CsvSheet.Of(sheet);
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<b>", html, StringComparison.Ordinal);
        Assert.NotEmpty(Drawings(html));
        Assert.DoesNotContain("**b**", markdown, StringComparison.Ordinal);
        foreach (string line in markdown.Split('\n').Where(line => line.Contains("script", StringComparison.Ordinal)))
        {
            Assert.DoesNotContain("<script", line.Replace("\\<", "", StringComparison.Ordinal), StringComparison.Ordinal);
        }

        Assert.DoesNotContain(csv.Split("\r\n"), line => line.StartsWith('=') || line.StartsWith("\"=", StringComparison.Ordinal));
        using JsonDocument json = JsonDocument.Parse(AnswerJson.Of(sheet));
        Assert.Equal(Name, json.RootElement.GetProperty("design").GetProperty("name").GetString());
    }

    [Fact]
    public void Markdown_DryHeadband_IsAsExpected() => ExpectedText.Matches(MarkdownSheet.Of(Of("dry-headband")), Project, "dry-headband.md");

    [Fact]
    public void Csv_HobbyistParts_AreAsExpected() => ExpectedText.Matches(CsvSheet.Of(Of("hobbyist")), Project, "hobbyist-parts.csv");

    /// <summary>The rest of the pack: a new line in the drawing or another net is read before it is accepted.</summary>
    [Fact]
    public void Pack_OfTheHobbyist_IsAsExpected()
    {
        Sheet sheet = Of("hobbyist");
        ExpectedText.Matches(BoardFiles.NetlistOf(sheet.Assessment, sheet.Board!.Board), Project, "hobbyist-nets.csv");
        ExpectedText.Matches(BoardFiles.SchematicOf(sheet.Assessment, sheet.Board!.Board), Project, "hobbyist-schematic.svg");
    }

    [Theory]
    [MemberData(nameof(Designs))]
    public void SourceList_EverySourceUsed_IsInIt(string name)
    {
        foreach (Result result in Of(name).Assessment.Results)
        {
            Assert.True(SourceList.Has(result.Equation.Source.Key), $"{result.Id}: {result.Equation.Source.Key}");
            Assert.True(result.Hand is null || SourceList.Has(result.Hand.Source.Key), $"{result.Id} by hand: {result.Hand?.Source.Key}");
            Assert.True(result.Verdict.LimitSource is null || SourceList.Has(result.Verdict.LimitSource.Key), $"{result.Id}, limit: {result.Verdict.LimitSource?.Key}");
        }
    }

    private static Sheet Of(string name)
    {
        DesignDocument document = DesignDocument.Read(Path.Combine(Repository.Designs, name + ".toml"));
        Assert.False(document.HasErrors);
        return new Sheet(document, Advisor.Advise(Evaluator.Evaluate(document.Design), TestContext.Current.CancellationToken)) { Bench = FrontEnd.Bench.BenchPlan.Of(document.Design).Readings, Board = BoardAnswers.Of(Evaluator.Evaluate(document.Design)) };
    }

    private static IEnumerable<XElement> Drawings(string html)
    {
        for (int at = html.IndexOf("<svg", StringComparison.Ordinal); 0 <= at; at = html.IndexOf("<svg", at + 1, StringComparison.Ordinal))
        {
            int end = html.IndexOf("</svg>", at, StringComparison.Ordinal) + "</svg>".Length;
            yield return XElement.Parse(html[at..end]);
        }
    }

    private static void Equal(double expected, double actual, double share) => Assert.True(Math.Abs(expected - actual) <= share * Math.Abs(expected), $"{expected:R} against {actual:R}");
}
