using System.Text.RegularExpressions;
using System.Xml.Linq;
using FrontEnd.Documents.Drawing;
using FrontEnd.Documents.Sheets;
using FrontEnd.Documents.Teaching;
using FrontEnd.Schematics;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;
using FrontEnd.Text;
using FrontEnd.Textbook;
using Xunit;

namespace FrontEnd.Documents.Tests.Teaching;

/// <summary>Problem sheets and keys as pages: what stands on them, and where.</summary>
public class PrintedProblemsTests
{
    /// <summary>Every template once on a sheet.</summary>
    private static readonly Homework Everything = Homework.Make([], null, TemplateSet.All.Count, 5, [new Student("s1", "Ada")]);

    private static readonly Homework Thirty = Homework.Make([], null, 12, 2026, [.. Enumerable.Range(1, 30).Select(at => new Student($"s{at:00}", $"Student {at}"))]);

    public static TheoryData<string> Papers => [.. Paper.All.Select(paper => paper.Word)];

    private static SheetLook Look(string paper) => new() { Paper = Paper.Find(paper)! };

    private static KeyBook Book(Homework homework)
    {
        KeyBook book = new(homework);
        foreach (ProblemSheet sheet in homework.Sheets)
        {
            book.Add(sheet);
        }

        return book;
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void Sheet_OnAnyPaper_StandsWithinItsMarginsWithTheNameOnEveryPage(string paper)
    {
        PrintedSheet sheet = ProblemPdf.Sheet(Everything.Sheets[0], Look(paper));
        Assert.True(5 < sheet.Pages.Count);
        for (int at = 0; at < sheet.Pages.Count; at++)
        {
            Picture page = sheet.Pages[at];
            Assert.Equal((Paper.Find(paper)!.Short, Paper.Find(paper)!.Long), (page.Width, page.Height));
            string[] texts = [.. Texts(page)];
            Assert.Contains("Ada (s1)", texts);
            Assert.Contains($"Sheet {Everything.Sheets[0].Code}", texts);
            Assert.Contains($"page {at + 1} of {sheet.Pages.Count}", texts);
            StandsWithin(page);
        }

        Assert.All(Everything.Sheets[0].Questions, question => Assert.Contains(sheet.Pages, page => Texts(page).Contains($"{question.Id}. {question.Problem.Title}")));
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void Key_OnAnyPaper_StandsWithinItsMargins(string paper) => Assert.All(KeyPdf.Of(Book(Everything), Look(paper)).Pages, StandsWithin);

    [Fact]
    public void Sheet_WithRoomToWork_BeginsAPageForEachQuestion() =>
        Assert.Equal(12, ProblemPdf.Sheet(Thirty.Sheets[0], new SheetLook { RoomToWork = true }).Pages.Count);

    /// <summary>121 pages were a key of thirty sheets, each worked out by itself.</summary>
    [Fact]
    public void Key_OfAClass_HasAllAnswersOnOnePageAndEachSolutionOnce()
    {
        PrintedSheet key = KeyPdf.Of(Book(Thirty), new SheetLook());
        Assert.InRange(key.Pages.Count, 8, 20);
        string[] first = [.. Texts(key.Pages[0])];
        Assert.All(Thirty.Sheets, sheet => Assert.Contains(first, text => text.StartsWith(sheet.Student!.Id, StringComparison.Ordinal)));
        Assert.Contains("q12", first);
        string[] all = [.. key.Pages.SelectMany(Texts)];
        Assert.Equal(12, all.Count(text => text.StartsWith("Worked out with", StringComparison.Ordinal)));
        foreach (Question question in Thirty.Sheets.SelectMany(sheet => sheet.Questions))
        {
            Assert.True(question.Problem.Answer is ChoiceAnswer || all.Contains(question.Problem.Answer.Text));
            Assert.All(question.Problem.Givens, given => Assert.Contains(given.Text, all));
        }

        string html = ProblemHtml.Key(Book(Thirty));
        Assert.Equal(12, Regex.Count(html, "Worked out with"));
        Assert.All(Thirty.Sheets.SelectMany(sheet => sheet.Questions).Where(question => question.Problem.Answer is QuantityAnswer), question =>
            Assert.Contains($"<td>{PrintedPage.Safe(question.Problem.Answer.Text)}</td>", html, StringComparison.Ordinal));
    }

    /// <summary>No formula stands on a page as it is written in the code.</summary>
    [Fact]
    public void Pages_OfEveryTemplate_HaveNoRawFormula()
    {
        string[] pdf = [.. ProblemPdf.Sheet(Everything.Sheets[0], new SheetLook()).Pages.Concat(KeyPdf.Of(Book(Everything), new SheetLook()).Pages).SelectMany(Texts)];
        string[] html = [.. new[] { ProblemHtml.Sheet(Everything.Sheets[0]), ProblemHtml.Key(Book(Everything)) }
            .SelectMany(page => Regex.Split(Regex.Replace(page, "<style>.*?</style>|<title>.*?</title>", "", RegexOptions.Singleline | RegexOptions.NonBacktracking), "<[^>]*>", RegexOptions.NonBacktracking)).Select(System.Net.WebUtility.HtmlDecode)!];
        foreach (string text in pdf.Concat(html))
        {
            string plain = text.Replace("offset_survived", "").Replace("fold_attenuation", "");
            Assert.DoesNotMatch(@"[A-Za-zσΔ]_[A-Za-z0-9]|\)/|/\(|√\(|\^|·\w+/|[A-Za-z]/[A-Za-z](?<!V/√|A/√|J/K|F/m|t/s)\b", plain);
        }
    }

    [Fact]
    public void Html_OfEveryTemplate_SetsEveryStepAsMathMl()
    {
        string key = ProblemHtml.Key(Book(Everything));
        int formulas = Everything.Sheets[0].Questions.Sum(question => question.Problem.Steps.Count(step => step.Formula.Length > 0));
        Assert.Equal(2 * formulas, Regex.Count(key, "<math [^>]*display=\"block\""));
        string[] core = ["math", "mi", "mn", "mo", "mtext", "mspace", "mrow", "mfrac", "msqrt", "msup", "msub"];
        foreach (Match math in Regex.Matches(key, "<math .*?</math>", RegexOptions.NonBacktracking))
        {
            XElement tree = XElement.Parse(math.Value);
            Assert.All(tree.DescendantsAndSelf(), one => Assert.Contains(one.Name.LocalName, core));
            Assert.All(tree.Descendants().Where(one => one.Name.LocalName is "mfrac" or "msup" or "msub"), one => Assert.Equal(2, one.Elements().Count()));
        }
    }

    /// <summary>What a student gets back: the slip explained and the way worked out where points were lost, and nowhere else.</summary>
    [Fact]
    public void Returned_WithSolutions_ExplainsWhatWasLostOnPagesWithTheName()
    {
        Key written = Key.Of(Thirty with { Sheets = [.. Thirty.Sheets.Take(2)] });
        Key key = KeyFile.Read(KeyFile.Write(written), "key.json", out _)!;
        KeyQuestion[] questions = [.. key.Sheets[0].Questions];
        KeyQuestion lost = questions.First(question => question.Kind is not null && question.Slips.Count > 0);
        string wrong = QuantityText.Format(lost.Kind!.FromSi(lost.Slips[0].Value));
        Marks marks = Marker.Mark(key, [.. questions.Select((question, at) => new GivenAnswer("s01", question.Id, question == lost ? wrong : question.Answer, at + 2))]);
        ReturnedSheet sheet = ReturnedSheet.Of(key, marks).First();
        Assert.Equal(lost.Id, Assert.Single(sheet.ToExplain).Question.Id);
        PrintedSheet pages = ReturnedPdf.Sheet(sheet, withSolutions: true, new SheetLook());
        Assert.All(pages.Pages, page => Assert.Contains("Student 1 (s01)", Texts(page)));
        Assert.All(pages.Pages, StandsWithin);
        string[] texts = [.. pages.Pages.SelectMany(Texts)];
        Assert.Contains(texts, text => text.StartsWith($"Your answer: {wrong}", StringComparison.Ordinal));
        Assert.Contains($"Answer: {lost.Answer}", texts);
        Assert.Single(texts, text => text.StartsWith("Answer: ", StringComparison.Ordinal));
        string html = ReturnedHtml.Page(key, marks, withSolutions: true);
        Assert.Contains("<ol class=\"steps\">", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<ol class=\"steps\">", ReturnedHtml.Page(key, marks), StringComparison.Ordinal);
    }

    [Fact]
    public void Fraction_Drawn_IsOneOverTheOther()
    {
        Picture page = new(200, 60, "");
        DrawnFormula drawn = DrawnFormula.Of(FormulaReader.Read("V_max/I/(1 − tol)"), 10);
        drawn.Draw(page, 5, 30);
        Operation.Line bar = Assert.Single(page.Operations.OfType<Operation.Line>());
        double Of(string text) => page.Operations.OfType<Operation.Text>().First(one => one.Runs[0].Text == text).Y;
        Assert.True(Of("V") < bar.Y1 && bar.Y1 < Of("I") && bar.Y1 < Of("tol") && Of("V") < Of("max"));
        Assert.True(bar.X2 - bar.X1 < drawn.Width);
    }

    [Fact]
    public void Circuits_OfTheQuestions_ShowTheirGivensAndNothingElse()
    {
        // What a circuit needs beside what is given.
        string[] also = ["R", "C", "R_G", "R_1", "R_2", "Z", "Z + ΔZ", "10 kΩ"];
        foreach (string id in QuestionCircuits.Templates)
        {
            Template template = Assert.IsType<Template>(TemplateSet.Find(id));
            string[] givens = [.. template.For(3, "s1").Givens.Select(given => Same(given.Symbol))];
            QuestionCircuit circuit = QuestionCircuits.Find(id)!;
            foreach (Match part in Regex.Matches(circuit.Art, @"\[(?<name>[^\]]+)\]", RegexOptions.NonBacktracking))
            {
                string name = part.Groups["name"].Value;
                Assert.True(givens.Contains(Same(name)) || also.Contains(name), $"{id}: {name}");
            }

            Picture picture = QuestionPicture.Of(id)!;
            Assert.All(picture.AllTexts().SelectMany(text => text.Runs), run => Assert.DoesNotMatch("[\u2500-\u257F▷_]", run.Text));
        }

        static string Same(string symbol) => FormulaReader.Find(symbol) is Formula.Symbol one ? $"{one.Name}_{one.Low}" : symbol;
    }

    /// <summary>What a remark quotes stands in quotes and is no formula: 4n7 is no 4·n₇.</summary>
    [Fact]
    public void Remark_ThatQuotes_IsNotSetAsAFormula()
    {
        Key key = Key.Of(Thirty);
        KeyQuestion asked = key.Sheets[0].Questions.First(question => question.Kind is not null);
        Key own = key with { Sheets = [key.Sheets[0] with { Questions = [asked with { Kind = QuantityKind.Of<Quantities.Capacitance>() }] }] };
        string page = ReturnedHtml.Page(own, Marker.Mark(own, [new GivenAnswer("s01", asked.Id, "see back", 2)]), withSolutions: true);
        Assert.Equal(3, page.Split("“4n7”").Length);
        Assert.DoesNotContain("`", page, StringComparison.Ordinal);
    }

    /// <summary>A stage of the catalogue is drawn as a board's schematic draws it, with the symbols and values of the question; what is asked for is open.</summary>
    [Fact]
    public void Stages_OfTheQuestions_AreDrawnFromTheSchematicsCellsWithTheirValues()
    {
        Assert.Equal(["filter-choose-capacitor", "filter-rc", "filter-sallen-key", "filter-sallen-key-q", "gain-settling", "gain-stage"], QuestionSchematic.Templates.Order(StringComparer.Ordinal));
        foreach (string id in QuestionSchematic.Templates)
        {
            for (ulong seed = 1; seed <= 20; seed++)
            {
                QuestionView view = QuestionView.Of(new Question("q1", TemplateSet.Find(id)!.For(seed, "s1")));
                QuestionSchematic drawn = QuestionSchematic.Of(id, [.. view.Givens.Select(given => (given.Symbol, given.Value))])!;
                Assert.Contains(drawn.Page.Symbols, symbol => symbol.Strokes.Count > 2);
                string[] texts = [.. drawn.Page.AllTexts.Select(text => text.Text)];
                foreach (KeyGiven given in view.Givens.Where(given => given.Symbol[0] is 'R' or 'C'))
                {
                    Assert.Contains(given.Symbol, texts);
                    Assert.Contains(given.Value, texts);
                }

                Assert.Equal(id == "filter-choose-capacitor", texts.Contains("?"));
                Assert.Contains("in", texts);
                Assert.Contains("out", texts);
                Assert.DoesNotContain(texts, text => text.Length == 0 || text.StartsWith("TP", StringComparison.Ordinal) || text.StartsWith("R3", StringComparison.Ordinal));
                SchematicText[] all = [.. drawn.Page.AllTexts];
                Assert.All(all, text => Assert.True(drawn.Area.Holds(text.Box), $"{id}: {text.Text} stands outside"));
                Assert.All(all, text => Assert.DoesNotContain(all, other => other != text && other.Box.Overlaps(text.Box)));
                Picture picture = QuestionPicture.Of(view)!;
                Assert.Contains(view.Givens[0].Value, Texts(picture));
                Assert.Equal(QuestionCircuits.Find(id)!.Title, picture.Label);
            }
        }

        // A package holds the picture once, without a student's values.
        Assert.DoesNotContain(Texts(QuestionPicture.Of("filter-rc")!), text => text.Contains('Ω', StringComparison.Ordinal));
        Assert.Contains(">180 kΩ<", ProblemHtml.Sheet(new ProblemSheet(null, [new Question("q1", StageOf180())], "")), StringComparison.Ordinal);

        static Problem StageOf180() => Enumerable.Range(1, 500).Select(seed => TemplateSet.Find("gain-stage")!.For((ulong)seed, ""))
            .First(problem => problem.Givens[0].Text == "180 kΩ");
    }

    private static IEnumerable<string> Texts(Picture page) => page.AllTexts().Select(text => string.Concat(text.Runs.Select(run => run.Text)));

    private static void StandsWithin(Picture page)
    {
        const double Hair = 0.5;
        foreach (Operation.Text text in page.Operations.OfType<Operation.Text>())
        {
            Box box = TextWidth.Around(text);
            Assert.True(PageFlow.Margin - Hair <= box.X && box.X + box.Width <= page.Width - PageFlow.Margin + Hair && 0 < box.Y && box.Y + box.Height < page.Height,
                $"{string.Concat(text.Runs.Select(run => run.Text))} stands at {box}");
        }

        double foot = page.Operations.OfType<Operation.Text>().Where(text => text.Runs[0].Text.StartsWith("page ", StringComparison.Ordinal)).Min(text => TextWidth.Around(text).Y);
        Assert.All(page.Operations.OfType<Operation.Text>().Where(text => text.Size != PrintStyle.Foot.Size), text => Assert.True(text.Y < foot, $"{text.Runs[0].Text} stands in the foot"));
    }
}
