using FrontEnd.Documents.Teaching;
using FrontEnd.Designs;
using FrontEnd.Findings;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>Templates of an instructor's own: read, checked with their dimensions, and drawn like the program's.</summary>
public sealed class OwnTemplateTests
{
    private static readonly string Example = Path.Combine(Repository.Root, "designs", "classroom", "own-problems.toml");

    private static (IReadOnlyList<OwnTemplate> Templates, List<Finding> Findings) Parse(string text)
    {
        List<Finding> findings = [];
        return (OwnTemplateFile.Parse(text, "own.toml", ["taken"], findings), findings);
    }

    /// <summary>A template about a current through a resistor with some of its lines replaced.</summary>
    private static string Text(string formula = "I*R", string kind = "voltage", string more = "", string givens = "", string id = "own") => $$"""
        [[templates]]
        id = "{{id}}"
        topic = "electrodes"
        level = 1
        title = "A voltage"
        text = "How large is it?"
        givens = [
          { symbol = "I", name = "current", least = "1 nA", greatest = "1 mA", series = "E24" },
          { symbol = "R", name = "resistance", values = ["1 kΩ", "4.7 kΩ", "100 kΩ"] },
          {{givens}}
        ]
        answer = { kind = "{{kind}}", formula = "{{formula}}" }
        {{more}}
        """;

    private static Finding Only(string text)
    {
        (IReadOnlyList<OwnTemplate> templates, List<Finding> findings) = Parse(text);
        Finding[] errors = [.. findings.Where(finding => finding.Severity == Severity.Error)];
        Assert.Empty(templates);
        return Assert.Single(errors);
    }

    private static string Warned(string text)
    {
        (IReadOnlyList<OwnTemplate> templates, List<Finding> findings) = Parse(text);
        Assert.Single(templates);
        return Assert.Single(findings).Code;
    }

    private static readonly string Figures = Path.Combine(Repository.Root, "designs", "classroom", "own-figures.toml");

    /// <summary>A template that asks for a figure of a design, read from the folder of the worked designs.</summary>
    private static (IReadOnlyList<OwnTemplate> Templates, List<Finding> Findings) OfDesign(
        string givens = """{ key = "amplifier.gain", symbol = "G", values = ["2.5", "3", "3.5"] }""", string answer = """{ result = "noise.total", tolerance = "15 %" }""",
        string design = "starter.toml", string more = "")
    {
        List<Finding> findings = [];
        string text = $$"""
            [[templates]]
            id = "own"
            topic = "noise"
            level = 2
            title = "A figure"
            text = "How large is it?"
            {{(design.Length == 0 ? "" : $"design = \"{design}\"")}}
            givens = [
              {{givens}}
            ]
            answer = {{answer}}
            {{more}}
            """;
        return (OwnTemplateFile.Parse(text, Path.Combine(Repository.Designs, "own.toml"), [], findings), findings);
    }

    /// <summary>What moves the answer and is nowhere on the sheet is told; once it is given, no more.</summary>
    [Fact]
    public void Figures_ThatFollowFromValuesThatTheSheetDoesNotGive_AreTold()
    {
        const string Given = """{ key = "electrodes.active.contact-resistance", symbol = "R_d", values = ["10 kΩ", "22 kΩ", "47 kΩ"] }""", Answer = """{ result = "noise.total", tolerance = "2 %" }""";
        Finding told = Assert.Single(OfDesign(Given, Answer).Findings, finding => finding.Code == "FE1076");
        Assert.Contains("electrodes.active.excess-density, electrodes.reference.excess-density, digital[1].corner", told.Message, StringComparison.Ordinal);
        string all = $$"""
            {{Given}},
              { key = "electrodes.active.excess-density", symbol = "e_1" },
              { key = "electrodes.reference.excess-density", symbol = "e_2" },
              { key = "digital[1].corner", symbol = "f_1" },
              { key = "digital[1].order", symbol = "n_1" }
            """;
        (IReadOnlyList<OwnTemplate> templates, List<Finding> findings) = OfDesign(all, Answer);
        Assert.Single(templates);
        Assert.DoesNotContain("FE1076", findings.Select(finding => finding.Code));
        Assert.DoesNotContain("FE1076", OfDesign(Given, """{ result = "noise.total", tolerance = "45 %" }""").Findings.Select(finding => finding.Code));
    }

    /// <summary>The program's own figure is right, whatever is drawn: evaluated here with the drawn values written into the design's text.</summary>
    [Fact]
    public void Figures_OfADesign_AreThoseOfAnOrdinaryEvaluation()
    {
        List<Finding> findings = [];
        IReadOnlyList<OwnTemplate> templates = OwnTemplateFile.Read(Figures, [.. TemplateSet.All.Select(template => template.Id)], findings);
        Assert.Empty(findings);
        DesignDocument starter = DesignDocument.Read(Path.Combine(Repository.Designs, "starter.toml"));
        foreach (OwnTemplate template in templates)
        {
            for (ulong seed = 1; seed <= 8; seed++)
            {
                Problem problem = template.Make().For(seed, "s1");
                DesignDocument drawn = template.Givens.Where(given => given.Key.Length > 0).Aggregate(starter, (before, given) =>
                {
                    EditResult edit = before.Set(given.Key, problem.Givens.Single(one => one.Symbol == given.Symbol).Text);
                    Assert.Null(edit.Finding);
                    return edit.Document;
                });
                Assert.False(drawn.HasErrors);
                Assessment assessment = Evaluator.Evaluate(drawn.Design);
                double figure = assessment.Find(template.Id == "own-headset-fault" ? "safety.fault_current.active-electrode" : "noise.total")!.Si;
                double right = template.Id == "own-headset-fault" ? figure : 20 * Math.Log10(problem.Givens.Single(given => given.Symbol == "S").Value.SiValue / figure);
                QuantityAnswer answer = Assert.IsType<QuantityAnswer>(problem.Answer);
                Assert.Equal(right, answer.Value, 1e-9 * Math.Abs(right));
                Assert.Contains(problem.Steps, step => step.Formula.Length > 0 && step.Substituted.Contains(" = ", StringComparison.Ordinal));
                Assert.Equal((problem.Points, ""), Marker.Judge(Key.QuestionOf(new Question("q1", problem)), answer.Text) is var (points, slip, _) ? (points, slip) : default);
            }
        }
    }

    /// <summary>The unit follows from the figure, and the worked solution has its formula by hand.</summary>
    [Fact]
    public void Figure_WithoutKind_HasItsOwnUnitAndSolution()
    {
        (IReadOnlyList<OwnTemplate> templates, List<Finding> findings) = OfDesign();
        Assert.Equal([OwnTemplateMessages.FewAnswers], findings.Select(finding => finding.Code));
        Problem problem = templates[0].Make().For(1, "s1");
        Assert.EndsWith("µV rms", problem.Answer.Text, StringComparison.Ordinal);
        Assert.Equal(["Noise at the electrodes, rms, in 0.5 Hz to 40 Hz, by hand", "The whole circuit, solved"], problem.Steps.Select(step => step.Says.Split(';')[0]));
        Assert.Contains("assumes a rectangular band", problem.Steps[1].Says, StringComparison.Ordinal);
        Assert.NotEmpty(problem.Givens[0].Name);
    }

    [Theory]
    [InlineData("""{ key = "amplifier.gian", symbol = "G", values = ["3"] }""", OwnTemplateMessages.FieldUnknown, "amplifier.gain")]
    [InlineData("""{ key = "amplifier.card", symbol = "G", values = ["3"] }""", OwnTemplateMessages.FieldUnknown, "")]
    [InlineData("""{ key = "input.bias-resistor", symbol = "R" }""", OwnTemplateMessages.FieldUnknown, "")]
    [InlineData("""{ key = "supply.lowest", symbol = "V", values = ["3 V", "-3 V"] }""", "", "-3 V")]
    [InlineData("""{ key = "supply.lowest", symbol = "V", values = ["3 Ω"] }""", "", "3 Ω")]
    public void Given_ThatTheDesignCannotHave_IsToldWithItsPlace(string givens, string code, string says)
    {
        (IReadOnlyList<OwnTemplate> templates, List<Finding> findings) = OfDesign(givens);
        Assert.Empty(templates);
        Finding error = Assert.Single(findings);
        Assert.True(error.Severity == Severity.Error && (code.Length == 0 || error.Code == code), error.ToString());
        Assert.Contains(says, $"{error.Message} {error.Note}", StringComparison.Ordinal);
        Assert.NotNull(error.Line);
    }

    [Theory]
    [InlineData("""{ result = "noise.totl" }""", "starter.toml", OwnTemplateMessages.FigureUnknown)]
    [InlineData("""{ result = "noise.total", formula = "G", kind = "voltage-rms" }""", "starter.toml", OwnTemplateMessages.OneOrTheOther)]
    [InlineData("""{ result = "noise.total", kind = "current" }""", "starter.toml", OwnTemplateMessages.OtherAnswer)]
    [InlineData("""{ result = "noise.total" }""", "no-such-file.toml", OwnTemplateMessages.DesignUnusable)]
    [InlineData("""{ result = "noise.total" }""", "wrong-in-six-ways.toml", OwnTemplateMessages.DesignUnusable)]
    [InlineData("""{ result = "noise.total" }""", "bought-headband.toml", OwnTemplateMessages.DesignUnusable)]
    public void Answer_ThatTheDesignDoesNotGive_IsTold(string answer, string design, string code)
    {
        (IReadOnlyList<OwnTemplate> templates, List<Finding> findings) = OfDesign(answer: answer, design: design);
        Assert.Empty(templates);
        Assert.Equal([code], findings.Where(finding => finding.Severity == Severity.Error).Select(finding => finding.Code));
    }

    /// <summary>A draw with which the design cannot be used is told and put back; where none can be used there is no template.</summary>
    [Fact]
    public void Draws_WithAnUnusableDesign_ArePutBack()
    {
        (IReadOnlyList<OwnTemplate> templates, List<Finding> findings) = OfDesign("""{ key = "converter.rate", symbol = "f_s", values = ["50 Hz", "250 Hz", "500 Hz", "1 kHz"] }""", """{ result = "data.bit_rate" }""");
        Finding put = Assert.Single(findings, finding => finding.Code == OwnTemplateMessages.SomePutBack);
        Assert.StartsWith("1 of 4 draws", put.Message, StringComparison.Ordinal);
        Template template = templates[0].Make();
        Assert.All(Enumerable.Range(1, 60), seed => Assert.NotEqual("50 Hz", template.For((ulong)seed, "s1").Givens[0].Text));
        Assert.Equal(3, template.Answers(100).Count());

        (templates, findings) = OfDesign("""{ key = "converter.rate", symbol = "f_s", values = ["50 Hz", "60 Hz"] }""");
        Assert.Empty(templates);
        Finding none = Assert.Single(findings);
        Assert.Equal(OwnTemplateMessages.FigureUnknown, none.Code);
        Assert.Contains("rate", none.Message, StringComparison.Ordinal);
    }

    /// <summary>What nobody works out by hand within the tolerance is told.</summary>
    [Fact]
    public void FigureThatTheTextbookMisses_IsTold()
    {
        (_, List<Finding> findings) = OfDesign(answer: """{ result = "noise.total" }""");
        Assert.Contains(findings, finding => finding is { Code: OwnTemplateMessages.ByHandOutside, Severity: Severity.Warning });
    }

    /// <summary>Without a design file it is the design of an empty file.</summary>
    [Fact]
    public void Design_NotNamed_IsThatOfAnEmptyFile()
    {
        (IReadOnlyList<OwnTemplate> templates, List<Finding> findings) = OfDesign("""{ key = "converter.rate", symbol = "f_s", values = ["250 Hz", "500 Hz"] }""", """{ result = "data.bit_rate" }""", design: "");
        Assert.True(templates.Count == 1, string.Join('\n', findings));
        Problem problem = templates[0].Make().For(3, "s1");
        Design drawn = new Design() is var design ? design with { Converter = design.Converter with { Rate = (Quantities.Frequency)problem.Givens[0].Value } } : null!;
        Assert.Equal(Evaluator.Evaluate(drawn).Find("data.bit_rate")!.Si, ((QuantityAnswer)problem.Answer).Value, 1e-6);
    }

    /// <summary>Another design is another template: the homework's code and its numbers are others.</summary>
    [Fact]
    public void Template_OfAnotherDesign_IsAnother() =>
        Assert.NotEqual(OfDesign().Templates[0].Make().Origin, OfDesign(design: "eight-channel-cap.toml").Templates[0].Make().Origin);

    [Fact]
    public void Example_IsReadWithoutAWord()
    {
        List<Finding> findings = [];
        IReadOnlyList<OwnTemplate> templates = OwnTemplateFile.Read(Example, [.. TemplateSet.All.Select(template => template.Id)], findings);
        Assert.Empty(findings);
        Assert.Equal(3, templates.Count);
    }

    /// <summary>The answer of the example's first template by hand, of the numbers that its sheet shows.</summary>
    [Fact]
    public void Draw_OfTheExample_IsRight()
    {
        Template template = OwnTemplateFile.Read(Example, [], []).Single(one => one.Id == "own-contact-noise").Make();
        HashSet<string> answers = new(StringComparer.Ordinal);
        for (ulong seed = 0; seed < 300; seed++)
        {
            Problem problem = template.For(seed, "s1");
            double Value(string symbol) => problem.Givens.Single(given => given.Symbol == symbol).Value.SiValue;
            double expected = Math.Sqrt(4 * 1.380649e-23 * Value("T") * Value("R") * (Value("f2") - Value("f1")));
            QuantityAnswer answer = Assert.IsType<QuantityAnswer>(problem.Answer);
            Assert.Equal(expected, answer.Value, 1e-12 * expected);
            Assert.InRange(answer.Low, 0.979 * expected, 0.981 * expected);
            Assert.Contains("√(4·k_B·T·R)", problem.Steps[1].Formula, StringComparison.Ordinal);
            answers.Add(answer.Text);
        }

        Assert.True(100 < answers.Count);
        Assert.Equal(template.For(7, "a").Answer, template.For(7, "a").Answer);
    }

    [Theory]
    [InlineData("I*R", "voltage")]
    [InlineData("I×R", "voltage-rms")]
    [InlineData("I·R − [1 µV] + [1 µV]", "voltage-peak-to-peak")]
    [InlineData("I^2*R", "power", "FE1116")]
    [InlineData("sqrt(I²*R*R)", "voltage")]
    [InlineData("√(I²·R)·√R", "voltage")]
    [InlineData("(I*R)^1.5/[1 V]^0.5", "voltage")]
    [InlineData("abs(-I*R)", "voltage")]
    [InlineData("max(I*R, [1 V])", "voltage", "FE1125")]
    [InlineData("20*log10(I*R/[1 nV])", "decibels")]
    [InlineData("degrees(atan(I*R/[1 V]))", "angle")]
    [InlineData("bias_offset(I, R)", "voltage")]
    [InlineData("noise_together(I*R, I*R, [1 nV])", "voltage")]
    [InlineData("[1 V]*exp(ln(I/[1 A]))*log2(8)", "voltage", "FE1126")]
    [InlineData("I/R", "voltage", "FE1121")]
    [InlineData("I*R*R", "voltage", "FE1121")]
    [InlineData("I + R", "voltage", "FE1120")]
    [InlineData("ln(R)", "plain-number", "FE1120")]
    [InlineData("2^R", "plain-number", "FE1120")]
    [InlineData("rc_corner(R, I)", "frequency", "FE1120")]
    [InlineData("rc_corner(R)", "frequency", "FE1122")]
    [InlineData("I*Q", "voltage", "FE1119")]
    [InlineData("volt(I)", "voltage", "FE1119")]
    [InlineData("I R", "voltage", "FE1118")]
    [InlineData("I*(R", "voltage", "FE1118")]
    [InlineData("I*", "voltage", "FE1118")]
    [InlineData("I*R*[1 blob]", "voltage", "FE1118")]
    [InlineData("I*R*0", "voltage", "FE1123")]
    [InlineData("I*R*ln(-1)", "voltage", "FE1123")]
    public void Formula_IsTakenWhereItsUnitsFit(string formula, string kind, string? code = null)
    {
        (IReadOnlyList<OwnTemplate> templates, List<Finding> findings) = Parse(Text(formula, kind));
        Assert.Equal(code is null ? [] : [code], findings.Where(finding => finding.Code != "FE1125" || code == "FE1125").Select(finding => finding.Code).Distinct());
        Assert.Equal(findings.Exists(finding => finding.Severity == Severity.Error) ? 0 : 1, templates.Count);
    }

    /// <summary>Whatever is read is worked out as it is written: by another reader of the same rules.</summary>
    [Theory]
    [InlineData("1 + 2×3^2", 19)]
    [InlineData("-2^2", -4)]
    [InlineData("2^-1", 0.5)]
    [InlineData("2^3^2", 512)]
    [InlineData("8/4/2", 1)]
    [InlineData("8 - 4 - 2", 2)]
    [InlineData("2e3 + 1.5E-1", 2000.15)]
    [InlineData("√4·3", 6)]
    [InlineData("3²·2³", 72)]
    [InlineData("--3", 3)]
    [InlineData("6÷3−1", 1)]
    [InlineData("round(2.5) + floor(2.9) + ceil(2.1)", 8)]
    [InlineData("min(3, 1, 2) + max(3, 1, 2)", 4)]
    public void Expression_OfNumbers_HasItsValue(string text, double value)
    {
        Arithmetic read = Assert.IsAssignableFrom<Arithmetic>(Arithmetic.Read(text, out ArithmeticProblem? problem));
        Assert.Null(problem);
        Assert.Equal(value, read.Value(new Dictionary<string, double>()), 1e-12);
        Arithmetic again = Assert.IsAssignableFrom<Arithmetic>(Arithmetic.Read(read.Formula.Replace("|", "", StringComparison.Ordinal), out _));
        Assert.Equal(value, again.Value(new Dictionary<string, double>()), 1e-12);
    }

    /// <summary>A finding names the file, the line, the key and the place in the formula.</summary>
    [Fact]
    public void Finding_SaysWhere()
    {
        Finding wrong = Only(Text("I*R + R"));
        Assert.Equal(("own.toml", 12, "templates[1].answer.formula"), (wrong.File, wrong.Line, wrong.Field));
        Assert.Contains("I*R ^+ R", wrong.Excerpt, StringComparison.Ordinal);
        Assert.Equal("what is in Ω is added to what is in V", wrong.Message);
        Assert.Contains("`Iq`", Only(Text("Iq*R")).Message, StringComparison.Ordinal);
        Assert.Contains("there are I, R, pi", Only(Text("Iq*R")).Help, StringComparison.Ordinal);
        Assert.Equal("the answer is a voltage, in V, and the formula gives A", Only(Text("I")).Message);
    }

    [Fact]
    public void File_WithMistakes_NamesEach()
    {
        Assert.Equal("FE1127", Only("# nothing\n").Code);
        Assert.Equal("FE1115", Only(Text(id: "taken")).Code);
        Assert.Equal("FE1115", Only(Text(id: "Own Problem")).Code);
        Assert.Equal("FE1129", Only(Text().Replace("\"electrodes\"", "\"electrode\"", StringComparison.Ordinal)).Code);
        Assert.Equal("FE1129", Only(Text().Replace("E24", "E25", StringComparison.Ordinal)).Code);
        Assert.Equal("FE1117", Only(Text().Replace("\"1 mA\"", "\"1.05 nA\"", StringComparison.Ordinal).Replace("\"1 nA\"", "\"1.01 nA\"", StringComparison.Ordinal)).Code);
        Assert.Equal("FE1128", Only(Text(givens: "{ symbol = \"pi\", name = \"x\", values = [\"1 V\"] }")).Code);
        Assert.Equal("FE1128", Only(Text(givens: "{ symbol = \"R\", name = \"x\", values = [\"1 V\"] }")).Code);
        Assert.Equal("FE1116", Only(Text(givens: "{ symbol = \"x\", name = \"x\", values = [\"4k7\"] }")).Code);
        Assert.Equal("FE1114", Only(Text().Replace("title = \"A voltage\"\n", "", StringComparison.Ordinal)).Code);
        Assert.Equal(2, Parse(Text(id: "a") + "\n" + Text(id: "b")).Templates.Count);
        Assert.Equal("FE1115", Assert.Single(Parse(Text(id: "a") + "\n" + Text(id: "a")).Findings).Code);
        Finding unknown = Only(Text(more: "tolerence = 3"));
        Assert.Contains("tolerence", unknown.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Slip_ThatIsTheAnswer_AndAGivenThatIsInNoFormula_AreTold()
    {
        Assert.Equal("FE1124", Warned(Text(more: "slips = [{ formula = \"R*I\", remark = \"the same\" }]")));
        Assert.Equal("FE1126", Warned(Text(givens: "{ symbol = \"x\", name = \"x\", values = [\"1 V\"] }")));
        Assert.Empty(Parse(Text(more: "slips = [{ formula = \"I\", remark = \"only the current was given\", share = 0.25 }]")).Findings);
    }

    /// <summary>They join the program's, and a homework of a changed file has another code.</summary>
    [Fact]
    public void Homework_TakesThem()
    {
        Template one = Parse(Text()).Templates[0].Make(), other = Parse(Text("2*I*R")).Templates[0].Make();
        Homework Made(Template template) => Homework.Make([Topic.Electrodes], 1, 30, new DrawSource(1), [], [template]);
        Assert.Contains(Made(one).Sheets[0].Questions, question => question.Problem.TemplateId == "own");
        Assert.NotEqual(Made(one).Code, Made(other).Code);
        Assert.Equal(Made(one).Code, Made(Parse(Text()).Templates[0].Make()).Code);
    }
}
