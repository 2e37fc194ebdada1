using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Tests.Teaching;

/// <summary>Laws of marking, over all templates and some seeds.</summary>
public class MarkerTests
{
    private static readonly (double Factor, string Prefix)[] Prefixes = [(1e-15, "f"), (1e-12, "p"), (1e-9, "n"), (1e-6, "µ"), (1e-6, "u"), (1e-3, "m"), (1, ""), (1e3, "k"), (1e6, "M"), (1e9, "G")];

    public static TheoryData<string> Everything => [.. TemplateSet.All.Select(template => template.Id)];

    [Theory]
    [MemberData(nameof(Everything))]
    public void Mark_TheKeysOwnAnswer_IsFull(string id)
    {
        foreach (KeyQuestion question in Questions(id))
        {
            string text = question.Options.Count > 0 ? question.Answer[..1] : question.Answer;
            Assert.Equal((question.Points, "", ""), Marker.Judge(question, text));
            Assert.Equal(question.Points, Marker.Judge(question, $"  {text} ").Points);
        }
    }

    [Theory]
    [MemberData(nameof(Everything))]
    public void Mark_AnySpellingOfTheSameValue_MarksTheSame(string id)
    {
        foreach (KeyQuestion question in Questions(id).Where(question => question.Kind is not null))
        {
            string unit = Unit(question.Kind!);
            foreach (double value in new[] { question.Value, question.Low, question.High, question.Value * 1.3 }.Concat(question.Slips.Select(slip => slip.Value)))
            {
                (double points, string slip, _) = Marker.Judge(question, FormattableString.Invariant($"{value:R} {unit}"));
                foreach ((double factor, string prefix) in Prefixes)
                {
                    string text = FormattableString.Invariant($"{value / factor:R} {prefix}{unit}");
                    if (QuantityText.TryParse(question.Kind!, text, out _, out _))
                    {
                        (double other, string otherSlip, _) = Marker.Judge(question, text);
                        Assert.Equal((points, slip), (other, otherSlip));
                        Assert.Equal((points, slip), Pair(Marker.Judge(question, text.Replace(" ", ""))));
                        Assert.Equal((points, slip), Pair(Marker.Judge(question, FormattableString.Invariant($"{value / factor:e16}{prefix}{unit}"))));
                    }
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Everything))]
    public void Mark_AWrongPowerOfTen_NeverEarnsAPoint(string id)
    {
        foreach (KeyQuestion question in Questions(id).Where(question => question.Kind is not null))
        {
            foreach (int power in new[] { -9, -6, -3, -2, -1, 1, 2, 3, 6, 9 })
            {
                foreach (double value in new[] { question.Low, question.Value, question.High })
                {
                    string text = FormattableString.Invariant($"{value * Math.Pow(10, power):R} {Unit(question.Kind!)}");
                    Assert.True(Marker.Judge(question, text).Points == 0, $"{text} for {question.Answer}: {Marker.Judge(question, text).Slip}");
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Everything))]
    public void Mark_EachSlip_GivesItsRemarkAndLessThanFull(string id)
    {
        foreach (KeyQuestion question in Questions(id))
        {
            foreach (KeySlip slip in question.Slips)
            {
                string text = question.Options.Count > 0 ? ChoiceAnswer.Letter((int)slip.Value) : FormattableString.Invariant($"{slip.Value:R} {Unit(question.Kind!)}");
                Assert.Equal((slip.Points, slip.Code, slip.Remark), Marker.Judge(question, text));
                Assert.InRange(slip.Points, 0, question.Points - 0.5);
            }
        }
    }

    [Fact]
    public void Mark_RightNumberOfTheWrongKindOfVoltage_EarnsHalf()
    {
        KeyQuestion question = Questions("noise-thermal").First();
        Assert.Equal(Marker.KindOfVoltage, Marker.Judge(question, FormattableString.Invariant($"{question.Value:R} Vpp")).Slip);
        Assert.Equal(question.Points / 2.0, Marker.Judge(question, FormattableString.Invariant($"{question.Value:R} Vpp")).Points);
    }

    [Fact]
    public void Mark_NegativeAttenuation_IsTheSign()
    {
        KeyQuestion question = Questions("filter-butterworth").First();
        Assert.Equal(Marker.WrongSign, Marker.Judge(question, FormattableString.Invariant($"-{question.Value:R} dB")).Slip);
    }

    [Fact]
    public void Mark_DecimalComma_IsADecimalPoint()
    {
        KeyQuestion question = Questions("noise-thermal").First();
        string point = FormattableString.Invariant($"{question.Value * 1e9:0.00} nV rms"), comma = point.Replace('.', ',');
        Assert.Equal(question.Points, Marker.Judge(question, point).Points);
        Assert.Equal(question.Points, Marker.Judge(question, comma).Points);
    }

    [Fact]
    public void Mark_UnitLeftOut_EarnsHalfWhereTheNumberIsInTheUnitWithoutPrefix()
    {
        KeyQuestion question = Questions("noise-thermal").First();
        Assert.Equal((question.Points / 2.0, Marker.UnitLeftOut), (Marker.Judge(question, FormattableString.Invariant($"{question.Value:R}")).Points, Marker.Judge(question, FormattableString.Invariant($"{question.Value:R}")).Slip));
        Assert.Equal(0, Marker.Judge(question, FormattableString.Invariant($"{question.Value * 1e6:R}")).Points);
    }

    [Theory]
    [InlineData("57", 4, "")]
    [InlineData("57.0 sweeps", 4, "")]
    [InlineData("56.6", 2, Marker.NotRounded)]
    [InlineData("57.4", 2, Marker.NotRounded)]
    [InlineData("58", 0, "")]
    public void Mark_AFractionWhereAWholeNumberIsAskedFor_IsNotRounded(string text, double points, string slip)
    {
        KeyQuestion question = new("q1", "t", 4, "57", []) { Kind = QuantityKind.Of<Ratio>(), Value = 57, Low = 56.43, High = 57.57, Unrounded = 56.21 };
        Assert.Equal((points, slip), (Marker.Judge(question, text).Points, Marker.Judge(question, text).Slip));
    }

    [Fact]
    public void Mark_PartOfTheUnit_EarnsHalfWhereTheNumberIsRight()
    {
        KeyQuestion question = new("q1", "t", 4, "53.1 nV/√Hz", []) { Kind = QuantityKind.Of<VoltageNoiseDensity>(), Value = 5.31e-8, Low = 5.25e-8, High = 5.37e-8 };
        Assert.Equal((2.0, Marker.PartOfUnit, "the number is right, but a voltage noise density is in V/√Hz"), Marker.Judge(question, "53.1 nV"));
        Assert.Equal((2.0, Marker.PartOfUnit), (Marker.Judge(question, "0.0531 µV rms").Points, Marker.Judge(question, "e = 53.1 nV rms").Slip));
        Assert.Equal(0, Marker.Judge(question, "53.1 µV").Points);
        Assert.Equal(0, Marker.Judge(question, "53.1 nA").Points);
        Assert.Equal((4.0, ""), (Marker.Judge(question, "53.1").Points, Marker.Judge(question, "53.1 nV/rtHz").Slip));
        Assert.Equal(0, Marker.Judge(question, "53.1 nV", Rubric.RightOnly).Points);
    }

    [Theory]
    [InlineData("")]
    [InlineData("no idea")]
    [InlineData("1,500 µV")]
    [InlineData("150 nA")]
    [InlineData("=1+1")]
    [InlineData("\0")]
    [InlineData("1e999 V")]
    public void Mark_WhatCannotBeRead_IsNoPointAndNoException(string text)
    {
        KeyQuestion question = Questions("noise-thermal").First();
        Assert.Equal(0, Marker.Judge(question, text).Points);
        Assert.Equal(0, Marker.Judge(Questions("chain-judge-noise").First(), text).Points);
    }

    [Fact]
    public void Mark_UnknownStudentsQuestionsAndSecondAnswers_AreFindings()
    {
        Key key = Key.Of(Homework.Make([Topic.Noise], 1, 3, 1, [new Student("a1", "A"), new Student("b2", "B")]));
        Marks marks = Marker.Mark(key, [new("a1", "1", "1 V", 2), new("a1", "Q1", "2 V", 3), new("a3", "q1", "1 V", 4), new("b2", "q9", "1 V", 5), new("b2", "q2", "what", 6)]);
        Assert.Equal([Messages.StudentUnknown, Messages.QuestionUnknown, Messages.QuestionTwice, Messages.AnswerNotRead], marks.Findings.OrderBy(finding => finding.Code switch { Messages.StudentUnknown => 0, Messages.QuestionUnknown => 1, Messages.QuestionTwice => 2, _ => 3 }).Select(finding => finding.Code));
        Assert.Equal([3, 4, 5, 6], marks.Findings.Select(finding => finding.Line!.Value).Order());
        Assert.Equal(6, marks.Rows.Count);
    }

    /// <summary>Spreadsheets of half of Europe write 2,879; alone it may be 2879, and the student's other answers tell.</summary>
    [Theory]
    [InlineData("2,879", "28,4 dB", 2.0)]
    [InlineData("2,879", "1.234,5 Hz", 2.0)]
    [InlineData("2,879", "0,125", 2.0)]
    [InlineData("2,879", "28.4 dB", 0.0)]
    [InlineData("2,879", "5,123", 0.0)]
    [InlineData("2,879", "", 0.0)]
    [InlineData("2.879", "28,4 dB", 2.0)]
    public void Mark_CommaBeforeThreeDigits_IsReadAsTheStudentsOtherAnswersUseIt(string answer, string other, double points)
    {
        KeyQuestion gain = new("q1", "t", 2, "2.879", []) { Kind = QuantityKind.Of<Ratio>(), Value = 2.879, Low = 2.85, High = 2.91 };
        KeyQuestion decibels = new("q2", "t", 2, "86.1 dB", []) { Kind = QuantityKind.Of<Decibels>(), Value = 86.1, Low = 86, High = 86.2 };
        Marks marks = Marker.Mark(Of("a1", gain, decibels), [new("a1", "q1", answer, 2), new("a1", "q2", other, 3)]);
        Assert.Equal((points, answer), (marks.Rows[0].Points, marks.Rows[0].Answer));
        if (other.StartsWith("28.4", StringComparison.Ordinal))
        {
            Assert.Equal(Marker.PowerOfTen, marks.Rows[0].Slip);
        }
    }

    [Theory]
    [InlineData("53.1 nV/Hz")]
    [InlineData("53,1 nV pro Hz")]
    [InlineData("53.1 nV per hertz")]
    public void Mark_RootOfHertzLeftOut_IsPartOfTheUnit(string text)
    {
        KeyQuestion question = new("q1", "t", 4, "53.1 nV/√Hz", []) { Kind = QuantityKind.Of<VoltageNoiseDensity>(), Value = 5.31e-8, Low = 5.25e-8, High = 5.37e-8 };
        Assert.Equal((2.0, Marker.PartOfUnit), Pair(Marker.Judge(question, text)));
        Assert.Equal(0, Marker.Judge(question, text.Replace("53", "5", StringComparison.Ordinal)).Points);
    }

    [Theory]
    [InlineData("174 nV peak")]
    [InlineData("174 nVp")]
    [InlineData("174 nV Spitze")]
    [InlineData("174 nVss")]
    [InlineData("174 nV crête à crête")]
    public void Mark_RightNumberThatIsCalledAPeak_EarnsHalf(string text)
    {
        KeyQuestion question = new("q1", "t", 4, "174 nV rms", []) { Kind = QuantityKind.Of<VoltageRms>(), Value = 1.74e-7, Low = 1.72e-7, High = 1.76e-7 };
        Assert.Equal((2.0, Marker.KindOfVoltage), Pair(Marker.Judge(question, text)));
    }

    /// <summary>Two who exchanged their sheets, in a class that did well, and with the code of their own sheets in the list.</summary>
    [Fact]
    public void Mark_AnswersThatFitTheSheetOfAnotherStudent_AreToldAndMarkedByTheirOwn()
    {
        Student[] students = [.. Enumerable.Range(1, 8).Select(number => new Student($"s{number}", ""))];
        Key key = Key.Of(Homework.Make([Topic.Noise, Topic.Gain], null, 8, 5, students));
        GivenAnswer[] answers =
        [
            .. key.Sheets.SelectMany((sheet, at) => sheet.Questions.Select((question, i) => new GivenAnswer(
                sheet.Student, question.Id, (at == 2 ? key.Sheets[5] : sheet).Questions[i].Answer, 2) { Sheet = SheetCode.Of(key.Code, sheet.Student) })),
        ];
        Marks marks = Marker.Mark(key, answers);
        Finding told = Assert.Single(marks.Findings);
        Assert.Equal(Messages.SheetOfAnother, told.Code);
        Assert.Contains("the answers of `s3` fit the sheet of `s6`", told.Message, StringComparison.Ordinal);
        Assert.True(marks.Rows.Where(row => row.Student == "s3").Sum(row => row.Points) < 0.3 * marks.Rows.Where(row => row.Student == "s3").Sum(row => row.Possible));
    }

    [Fact]
    public void Mark_AnswersThatAreWrongOnEverySheet_AreNobodys()
    {
        Student[] students = [.. Enumerable.Range(1, 8).Select(number => new Student($"s{number}", ""))];
        Key key = Key.Of(Homework.Make([Topic.Noise, Topic.Gain], null, 8, 5, students));
        GivenAnswer[] answers =
        [
            .. key.Sheets.SelectMany((sheet, at) => sheet.Questions.Select(question => new GivenAnswer(sheet.Student, question.Id, at == 2 ? "123456" : question.Answer, 2))),
        ];
        Assert.DoesNotContain(Messages.SheetOfAnother, Marker.Mark(key, answers).Findings.Select(finding => finding.Code));
    }

    [Fact]
    public void Mark_CommonSheet_MarksWhoeverAnswers()
    {
        Homework homework = Homework.Make([Topic.Gain], 1, 2, 5, []);
        string answer = homework.Sheets[0].Questions[0].Problem.Answer.Text;
        Marks marks = Marker.Mark(Key.Of(homework), [new("anyone", "q1", answer, 2), new("other", "gain-nothing", "1", 3)]);
        Assert.Equal(homework.Sheets[0].Questions[0].Problem.Points, marks.Rows.Where(row => row.Student == "anyone").Sum(row => row.Points));
        Assert.Equal(["anyone", "other"], marks.Rows.Select(row => row.Student).Distinct());
    }

    private static Key Of(string student, params KeyQuestion[] questions) =>
        Key.Of(Homework.Make([Topic.Gain], 1, 1, 1, [new Student(student, "")])) with { Sheets = [new KeySheet(student, "", questions)] };

    private static (double, string) Pair((double Points, string Slip, string Remark) mark) => (mark.Points, mark.Slip);

    private static string Unit(QuantityKind kind) => kind.Is<FrontEnd.Quantities.Ratio>() ? "" : kind.SiUnit;

    private static IEnumerable<KeyQuestion> Questions(string id)
    {
        foreach (Problem problem in Drawn.Of(id).Take(50))
        {
            yield return Key.Of(new ProblemSheet(null, [new Question("q1", problem)], "")).Questions[0];
        }
    }

    /// <summary>A class is told a slip in words without the numbers and units of one answer.</summary>
    [Fact]
    public void InGeneral_OfEverySlipOfTheMarker_IsThere()
    {
        string[] codes = [.. typeof(Marker).GetFields().Where(field => field is { IsLiteral: true } && field.FieldType == typeof(string)).Select(field => (string)field.GetRawConstantValue()!)];
        Assert.NotEmpty(codes);
        Assert.All(codes, code => Assert.DoesNotMatch("[0-9µΩ]", Marker.InGeneral(code)!));
        Assert.Null(Marker.InGeneral("no-two-pi"));
    }
}
