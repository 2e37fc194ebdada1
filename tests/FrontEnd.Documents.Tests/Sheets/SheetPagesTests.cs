using System.Collections.Concurrent;
using System.Globalization;
using System.Text.RegularExpressions;
using FrontEnd.Advice;
using FrontEnd.Bench;
using FrontEnd.Documents.Sheets;
using FrontEnd.Findings;
using FrontEnd.Reporting;
using FrontEnd.Results;
using Xunit;

namespace FrontEnd.Documents.Tests.Sheets;

/// <summary>What stands on which page of a sheet, what every page must carry, and what none may show.</summary>
public sealed partial class SheetPagesTests
{
    /// <summary>One channel and eight, driven ground and none, a failing one, one with channels of their own.</summary>
    public static TheoryData<string> Designs => ["starter", "hobbyist", "dry-headband", "eight-channel-cap", "mixed-headset"];

    private static readonly ConcurrentDictionary<string, Lazy<Sheet>> Read = new(StringComparer.Ordinal);

    [Theory]
    [MemberData(nameof(Designs))]
    public void Pages_WithoutAppendix_HoldVerdictsBudgetsPartsAndPlan(string name)
    {
        Sheet sheet = Of(name);
        string[] titles = [.. SheetBody.Pages(sheet).Select(page => page.Title)];
        Assert.Equal(["verdicts", "budgets and response", "parts", "bench plan"], titles.Where(title => !title.StartsWith("schematic", StringComparison.Ordinal)));
        Assert.StartsWith("schematic", titles[1], StringComparison.Ordinal);
        Assert.All(SheetBody.Pages(sheet), page => Assert.Equal(page.Title.StartsWith("schematic", StringComparison.Ordinal), page.IsLandscape));
        Assert.All(SheetBody.Pages(sheet with { HasAppendix = true }).Skip(titles.Length), page => Assert.StartsWith("appendix: ", page.Title, StringComparison.Ordinal));
    }

    /// <summary>The pages without the appendix keep what a builder must not miss.</summary>
    [Theory]
    [MemberData(nameof(Designs))]
    public void Pages_WithoutAppendix_KeepCautionsFindingsAndTheCountOfDefaults(string name)
    {
        Sheet sheet = Of(name);
        string page = System.Net.WebUtility.HtmlDecode(HtmlSheet.Of(sheet));
        Assert.All(Cautions.All, caution => Assert.Contains(caution, page, StringComparison.Ordinal));
        foreach (Finding finding in sheet.Findings)
        {
            Assert.Contains($"[{finding.Code}]", page, StringComparison.Ordinal);
            Assert.Contains(finding.Message[1..], page, StringComparison.Ordinal);
            Assert.Contains(finding.Note ?? "", page, StringComparison.Ordinal);
            Assert.Contains(finding.Help ?? "", page, StringComparison.Ordinal);
        }

        Assert.Contains($"{DefaultUsed.Of(sheet).Count} value", page, StringComparison.Ordinal);
        Assert.Contains("--appendix", page, StringComparison.Ordinal);
        Assert.DoesNotContain("defaults used, by their source", page, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>In every format: each page, and the first line of a file that travels alone.</summary>
    [Fact]
    public void Pages_OfADesignThatFailsASafetyRequirement_AreStamped()
    {
        Sheet fails = Of("starter", "4.7 kΩ", ""), plain = fails with { PlainOnly = true }, whole = fails with { HasAppendix = true };
        Assert.NotEmpty(Cautions.AgainstWearing(fails.Assessment));
        foreach (Sheet sheet in new[] { fails, plain, whole })
        {
            Assert.All(SheetBody.Pages(sheet), page => Assert.Equal(Cautions.Stamp, page.Stamp));
            string html = HtmlSheet.Of(sheet), markdown = MarkdownSheet.Of(sheet);
            Assert.Equal(html.Split("<section ").Length, html.Split("<p class=\"stamp\">not to be worn</p>").Length);
            Assert.Contains("content: \"NOT TO BE WORN\"", html, StringComparison.Ordinal);
            Assert.Equal(SheetBody.Pages(sheet).Count, markdown.Split("> **NOT TO BE WORN**").Length - 1);
        }

        Assert.StartsWith("# NOT TO BE WORN: ", Files.CsvText.Rows(CsvSheet.Of(fails)).Last().Cells[0], StringComparison.Ordinal);
        Sheet meets = Of("starter");
        Assert.All(SheetBody.Pages(meets with { HasAppendix = true }), page => Assert.Null(page.Stamp));
        Assert.DoesNotContain("not to be worn", HtmlSheet.Of(meets), StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>One cell without a comma or a quotation mark, whether a reader knows remarks or not.</summary>
    [Fact]
    public void Csv_LastRow_IsTheCautionInOneCell()
    {
        Sheet sheet = Of("starter", "", "caution = 'a, \"b\"; c'\n");
        Assert.StartsWith("# Caution: a; 'b'; c. Not a medical device.", Files.CsvText.Rows(CsvSheet.Of(sheet)).Last().Cells[0], StringComparison.Ordinal);
    }

    /// <summary>What a sheet shows is for the eye; the exact coefficients are in their own files.</summary>
    [Theory]
    [MemberData(nameof(Designs))]
    public void Sheet_NoFigure_HasSixteenDigits(string name)
    {
        Sheet sheet = Of(name) with { HasAppendix = true };
        Assert.DoesNotMatch(ManyDigits(), MarkdownSheet.Of(sheet));
        Assert.True(sheet.Design.Digital.Count == 0 || HtmlSheet.Of(sheet).Contains("`frontend coefficients`", StringComparison.Ordinal));
    }

    /// <summary>The plan's tests are those of the command, in its order; the appendix has the others.</summary>
    [Theory]
    [MemberData(nameof(Designs))]
    public void BenchPlan_OfASheet_HasEveryTestOfTheCommandOnce(string name)
    {
        Sheet sheet = Of(name) with { HasAppendix = true };
        Block.Table[] tables = [.. BenchBlocks.Of(sheet).Concat(BenchBlocks.Further(sheet)).OfType<Block.Table>()];
        Row[] rows = [.. tables[0].Rows.TakeWhile(row => !row.Cells[0].StartsWith("then, on battery", StringComparison.Ordinal)).Where(row => !row.IsHeading)];
        string[] plan = [.. rows.SelectMany(row => row.Cells[0].Split('\n')).Select(cell => cell.Split(':')[0])];
        string[] further = [.. tables[^1].Rows.Select(row => row.Cells[2].Split(',')[0])];
        Assert.Equal(sheet.Bench.Where(test => test.Step == BenchStep.Further).Select(test => test.Name), further);
        Assert.Equal(sheet.Bench.Where(test => test.Step != BenchStep.Further).Select(test => test.Name).Order(StringComparer.Ordinal), plan.Order(StringComparer.Ordinal));
        Assert.True(sheet.Bench.Zip(sheet.Bench.Skip(1)).All(pair => pair.First.Step <= pair.Second.Step), "the tests are not in the order of powering up");
        Assert.All(rows, row => Assert.Contains(". If off: ", row.Cells[3], StringComparison.Ordinal));

        // Lines of one row stand beside each other.
        Assert.All(rows, row => Assert.Equal(row.Cells[0].Split('\n').Length, row.Cells[1].Split('\n').Length));
    }

    /// <summary>No letter is printed smaller than 6.5 pt: tables by their style, drawings by their width of 188 mm, schematics of 275 mm.</summary>
    [Theory]
    [MemberData(nameof(Designs))]
    public void Drawings_OnThePages_AreReadableInPrint(string name)
    {
        const double PrintedPoints = 188 / 25.4 * 72, LandscapePoints = 275 / 25.4 * 72;
        string html = HtmlSheet.Of(Of(name));
        foreach (Match drawing in SvgSize().Matches(html))
        {
            double width = double.Parse(drawing.Groups["width"].Value, CultureInfo.InvariantCulture);
            foreach (Match size in FontSize().Matches(drawing.Value))
            {
                Assert.InRange(double.Parse(size.Groups["size"].Value, CultureInfo.InvariantCulture) * (1000 < width ? LandscapePoints : PrintedPoints) / width, 6.5, 20);
            }
        }
    }

    /// <summary>A line over time bends by little from one drawn point to the next, however few samples its first decade has.</summary>
    [Fact]
    public void SmoothLine_ThroughFewPoints_HasNoCornersAndNoOvershoot()
    {
        (double X, double Y)[] points = [.. Enumerable.Range(1, 12).Select(n => (100 * Math.Log10(n), 80 * Math.Exp(-n / 3.0)))];
        IReadOnlyList<(double X, double Y)> line = SmoothLine.Through(points);
        double[] turns = [.. Enumerable.Range(1, line.Count - 2).Select(i => Math.Abs(Angle(line[i], line[i + 1]) - Angle(line[i - 1], line[i])))];
        Assert.All(turns, turn => Assert.InRange(turn, 0, 0.15));
        Assert.All(line, point => Assert.InRange(point.Y, points[^1].Y, points[0].Y));
        Assert.All(points, point => Assert.Contains(point, line));

        static double Angle((double X, double Y) from, (double X, double Y) to) => Math.Atan2(to.Y - from.Y, to.X - from.X);
    }

    /// <summary>Each design's sheet once.</summary>
    private static Sheet Of(string name) => Read.GetOrAdd(name, one => new Lazy<Sheet>(() => Of(one, "", ""))).Value;

    private static Sheet Of(string name, string tables, string head)
    {
        string text = head + File.ReadAllText(Path.Combine(Repository.Designs, name + ".toml"));
        if (tables.Length > 0)
        {
            text = SeriesResistor().Replace(text, "series-resistor = \"4.7 kΩ\"", 1);
        }

        DesignDocument document = DesignDocument.Parse(text, Reading.DocumentFormat.Toml);
        Assert.False(document.HasErrors);
        return new Sheet(document, Advisor.Advise(Evaluator.Evaluate(document.Design), TestContext.Current.CancellationToken)) { Bench = BenchPlan.Of(document.Design).Readings, Board = BoardAnswers.Of(Evaluator.Evaluate(document.Design)) };
    }

    [GeneratedRegex("[0-9]{13,}|[0-9]\\.[0-9]{12,}", RegexOptions.None, 10_000)]
    private static partial Regex ManyDigits();

    [GeneratedRegex("<svg[^>]*viewBox=\"0 0 (?<width>[0-9.]+) .*?</svg>", RegexOptions.Singleline | RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex SvgSize();

    [GeneratedRegex("font-size=\"(?<size>[0-9.]+)\"", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex FontSize();

    [GeneratedRegex("series-resistor = \"68 kΩ\"", RegexOptions.None, 10_000)]
    private static partial Regex SeriesResistor();
}
