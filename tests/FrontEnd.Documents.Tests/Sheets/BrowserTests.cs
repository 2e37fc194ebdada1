using System.Diagnostics;
using FrontEnd.Advice;
using FrontEnd.Bench;
using FrontEnd.Documents.Sheets;
using FrontEnd.Documents.Teaching;
using FrontEnd.Reporting;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using Xunit;

namespace FrontEnd.Documents.Tests.Sheets;

/// <summary>HTML pages as a browser prints them: nothing is cut in two, no page is all but empty. Without a browser on the machine they are skipped, and what
/// they rest on is looked for in the pages.</summary>
public sealed class BrowserTests : IDisposable
{
    private static readonly string? Browser = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .SelectMany(folder => new[] { "chromium", "chromium-browser", "chrome" }.Select(name => Path.Combine(folder, name))).FirstOrDefault(File.Exists);

    private static readonly Homework Everything = Homework.Make([], null, TemplateSet.All.Count, 5, [new Student("s1", "Ada"), new Student("s2", "Ben")]);

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    /// <summary>A heading of a running page is repeated, and no question stands on two pages: each page has as many answers as questions.</summary>
    [Fact]
    public void ProblemSheets_Printed_HaveTheNameOnEveryPageAndCutNoQuestion()
    {
        IReadOnlyList<IReadOnlyList<string>> pages = Printed(ProblemHtml.Page(Everything.Sheets.Select(sheet => ProblemHtml.Sheet(sheet))));
        Assert.True(10 < pages.Count);
        Assert.All(pages, page =>
        {
            Assert.True(page[0] is "Ada" or "Ben", string.Join(' ', page.Take(8)));
            Assert.Equal(page.Count(word => word is ['q', var digit, .., '.'] && char.IsAsciiDigit(digit)), page.Count(word => word is "Answer" or "Answer,"));
        });
    }

    /// <summary>A schematic stood on the page behind its own heading.</summary>
    [Theory]
    [InlineData("starter")]
    [InlineData("dry-headband")]
    [InlineData("eight-channel-cap")]
    public void DesignSheet_Printed_HasNoPageWithAHeadingAlone(string name)
    {
        Sheet sheet = Of(name);
        IReadOnlyList<IReadOnlyList<string>> pages = Printed(HtmlSheet.Of(sheet));
        Assert.All(pages, page => Assert.True(40 < page.Count, string.Join(' ', page)));
        int schematics = SheetBody.Pages(sheet).Count(page => page.IsLandscape);
        Assert.Equal(schematics, pages.Count(page => page.Contains("Schematic,")));
    }

    /// <summary>The question on the first page, what came of it on the second, and no third for a line of cautions.</summary>
    [Theory]
    [InlineData("aliasing")]
    [InlineData("mains-and-imbalance")]
    [InlineData("quantisation")]
    public void Lesson_Printed_TakesTwoPages(string name)
    {
        string path = Path.Combine(_folder.Path, "lesson.html");
        Assert.Null(LessonPages.Write(path, LessonRun.Work(Lessons.Find(name)!, null, null, [])!, null));
        Assert.Equal(2, Printed(File.ReadAllText(path)).Count);
    }

    /// <summary>What the tests above rest on, where there is no browser to say so.</summary>
    [Fact]
    public void Pages_OfAnyKind_SayWhatMayNotBeCut()
    {
        string problems = ProblemHtml.Page([ProblemHtml.Sheet(Everything.Sheets[0])]), sheet = HtmlSheet.Of(Of("starter"));
        Assert.Contains(".running { display: table-header-group; break-inside: avoid; }", problems, StringComparison.Ordinal);
        Assert.Contains(".question { break-inside: avoid; }", problems, StringComparison.Ordinal);
        Assert.Contains("h1 + .ruled tr { display: grid;", problems, StringComparison.Ordinal);
        Assert.Contains("math[display=\"block\"] { display: block math; width: fit-content;", problems, StringComparison.Ordinal);
        Assert.Contains(".landscape > svg { max-height: 178mm; }", sheet, StringComparison.Ordinal);
        Assert.Contains("<thead><tr><th>verdict</th>", sheet, StringComparison.Ordinal);
        Assert.Contains("<td colspan=\"3\">all of them</td>", sheet, StringComparison.Ordinal);
        Assert.Contains(">−50 dB<", sheet, StringComparison.Ordinal);
        Assert.DoesNotContain(">-50 dB<", sheet, StringComparison.Ordinal);
    }

    private static Sheet Of(string name)
    {
        DesignDocument document = DesignDocument.Read(Path.Combine(Repository.Designs, name + ".toml"));
        return new Sheet(document, Advisor.Advise(Evaluator.Evaluate(document.Design), TestContext.Current.CancellationToken))
        {
            Bench = BenchPlan.Of(document.Design).Readings, Board = BoardAnswers.Of(Evaluator.Evaluate(document.Design)),
        };
    }

    /// <summary>The words of each page, from above.</summary>
    private IReadOnlyList<IReadOnlyList<string>> Printed(string html)
    {
        Assert.SkipWhen(Browser is null, "There is no browser on this machine.");
        string page = _folder.Write("page.html", html), pdf = Path.Combine(_folder.Path, "page.pdf");
        ProcessStartInfo start = new(Browser!) { UseShellExecute = false, RedirectStandardError = true, RedirectStandardOutput = true };
        foreach (string argument in new[]
            {
                "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
                $"--user-data-dir={Path.Combine(_folder.Path, "profile")}", "--no-pdf-header-footer", $"--print-to-pdf={pdf}", new Uri(page).AbsoluteUri,
            })
        {
            start.ArgumentList.Add(argument);
        }

        using Process browser = Process.Start(start)!;
        browser.OutputDataReceived += (_, _) => { };
        browser.ErrorDataReceived += (_, _) => { };
        browser.BeginOutputReadLine();
        browser.BeginErrorReadLine();
        Assert.True(browser.WaitForExit(TimeSpan.FromMinutes(2)) && File.Exists(pdf), "The browser printed nothing.");
        using PdfDocument document = PdfDocument.Open(pdf);
        return [.. document.GetPages().Select(one => (IReadOnlyList<string>)[.. Words(one)])];
    }

    private static IEnumerable<string> Words(Page page) =>
        page.GetWords().OrderByDescending(word => Math.Round(word.BoundingBox.Bottom)).ThenBy(word => word.BoundingBox.Left).Select(word => word.Text);
}
