using FrontEnd.Designs;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Tests.Teaching;

/// <summary>Every template with many draws: solved a second way, finite, units right, slips apart.</summary>
public class TemplateTests
{
    public static TheoryData<string> Numeric => [.. TemplateSet.All.Where(template => !template.Id.StartsWith("chain-judge", StringComparison.Ordinal)).Select(template => template.Id)];

    public static TheoryData<string> Everything => [.. TemplateSet.All.Select(template => template.Id)];

    [Fact]
    public void TemplateSet_HasEnoughOfEveryTopicAndLevel()
    {
        Assert.True(40 <= TemplateSet.All.Count, $"{TemplateSet.All.Count} templates");
        Assert.Equal(TemplateSet.All.Count, TemplateSet.All.Select(template => template.Id).Distinct().Count());
        Assert.Equal(Enum.GetValues<Topic>(), TemplateSet.All.Select(template => template.Topic).Distinct().Order());
        foreach (int level in new[] { 1, 2, 3 })
        {
            Assert.True(10 <= TemplateSet.All.Count(template => template.Level == level));
        }

        Assert.True(4 <= TemplateSet.All.Count(template => template.For(1, "").Answer is ChoiceAnswer));
    }

    [Theory]
    [MemberData(nameof(Numeric))]
    public void Template_ManySeeds_AgreesWithTheSecondWay(string id)
    {
        (Func<Func<string, double>, double> second, double tolerance) = SecondWays.All[id];
        foreach (Problem problem in Drawn.Of(id))
        {
            // From nothing but what is printed.
            Dictionary<string, double> values = PrintedValues.Of(problem);
            double expected = second(symbol => values[symbol]);
            QuantityAnswer answer = Assert.IsType<QuantityAnswer>(problem.Answer);
            Assert.True(
                Math.Abs(answer.Value - expected) <= tolerance * Math.Abs(expected),
                $"{id}: {answer.Value:R} by the template, {expected:R} the second way; {string.Join(", ", problem.Givens.Select(given => $"{given.Symbol} = {given.Text}"))}");
        }
    }

    [Theory]
    [MemberData(nameof(Everything))]
    public void Template_ManySeeds_IsSound(string id)
    {
        HashSet<string> different = [];
        foreach (Problem problem in Drawn.Of(id))
        {
            different.Add(string.Join(";", problem.Givens.Select(given => given.Text)));
            Assert.NotEmpty(problem.Steps);
            Assert.InRange(problem.Slips.Count, 1, 10);
            Assert.Equal(problem.Givens.Count, problem.Givens.Select(given => given.Symbol).Distinct().Count());
            Assert.All(problem.Givens, given => AssertPrinted(given));
            Assert.All(problem.Steps, step => Assert.DoesNotContain("∞", step.Substituted, StringComparison.Ordinal));
            if (problem.Answer is QuantityAnswer answer)
            {
                AssertAnswer(problem, answer);
            }
            else
            {
                ChoiceAnswer choice = Assert.IsType<ChoiceAnswer>(problem.Answer);
                Assert.InRange(choice.Right, 0, choice.Options.Count - 1);
                Assert.Equal(choice.Options.Count - 1, problem.Slips.Count);
            }
        }

        Assert.True(6 <= different.Count, $"{different.Count} different draws only");
    }

    /// <summary>Whole hertz, twelve digits at most: what is printed is what is worked with.</summary>
    private static void AssertPrinted(Given given)
    {
        Assert.True(QuantityText.TryParse(QuantityKind.Of(given.Value), given.Text, out IQuantity? read, out _), given.Text);
        Assert.Equal(given.Value.SiValue, read!.SiValue, Math.Abs(given.Value.SiValue) * 1e-12);
        Assert.True(given.Text.Count(char.IsAsciiDigit) <= 5, given.Text);
    }

    private static void AssertAnswer(Problem problem, QuantityAnswer answer)
    {
        Assert.True(double.IsFinite(answer.Value) && answer.Value > 0, $"{answer.Value}");
        Assert.True(answer.Low < answer.Value && answer.Value < answer.High);

        // The printed answer is inside the accepted range, so the digits are enough.
        string text = answer.Text;
        Assert.True(QuantityText.TryParse(answer.Kind, text, out IQuantity? read, out ParseProblem? why), $"{text}: {why?.Message}");
        Assert.InRange(read!.SiValue, answer.Low, answer.High);

        // So is the answer with the three digits that the sheet asks for.
        Assert.True(QuantityText.TryParse(answer.Kind, (answer with { Digits = 3 }).Text, out IQuantity? three, out _));
        Assert.InRange(three!.SiValue, answer.Low, answer.High);
        foreach (Slip slip in problem.Slips)
        {
            Assert.True(slip.High < answer.Low || answer.High < slip.Low, $"{slip.Kind.Code} cannot be told from the answer");
            Assert.InRange(slip.Share, 0, 0.99);
        }
    }

    /// <summary>Second way: the public evaluation of a design that is built from the printed values, each change by its printed words.</summary>
    [Theory]
    [InlineData("chain-judge-noise", "noise.total", true)]
    [InlineData("chain-judge-mains", "mains.total", true)]
    [InlineData("chain-judge-fold", "alias.fold_attenuation", false)]
    [InlineData("chain-judge-offset", "levels.offset_survived", false)]
    public void Judgement_OptionsEvaluatedInFull_HasTheKeysBest(string id, string result, bool least) => Parallel.ForEach(Drawn.Of(id), problem =>
    {
        ChoiceAnswer choice = (ChoiceAnswer)problem.Answer;
        Design design = JudgedDesigns.Build(problem);
        double[] figures = [.. choice.Options.Select(option => Evaluator.Evaluate(JudgedDesigns.Change(design, option))[result].Si)];
        Assert.Equal(least ? figures.Min() : figures.Max(), figures[choice.Right]);

        // The best is ahead of the next by enough that no rounding by hand decides.
        double[] others = [.. figures.Where((_, at) => at != choice.Right)];
        Assert.True(least ? figures[choice.Right] * 1.149 < others.Min() : others.Max() * 1.149 < figures[choice.Right], string.Join(", ", figures));
    });

    [Fact]
    public void Dominant_EvaluatedInFull_IsTheKeys() => Parallel.ForEach(Drawn.Of("chain-judge-dominant"), problem =>
    {
        ChoiceAnswer choice = (ChoiceAnswer)problem.Answer;
        Assessment assessment = Evaluator.Evaluate(JudgedDesigns.Build(problem));
        double Group(string option) => assessment.Results.Where(one => one.Id.Text.StartsWith("noise.source.", StringComparison.Ordinal) && JudgedDesigns.Belongs(option, one.Id.Text["noise.source.".Length..])).Sum(one => one.Si * one.Si);
        double[] figures = [.. choice.Options.Select(Group)];
        Assert.All(figures, figure => Assert.True(figure > 0));
        Assert.Equal(figures.Max(), figures[choice.Right]);
    });

    /// <summary>What the sheet says besides the values drawn is what the design has.</summary>
    [Theory]
    [InlineData("chain-judge-noise", "25 °C", "33 °C", "no excess noise", "55 nV/√Hz", "folds")]
    [InlineData("chain-judge-mains", "230 V", "3 pF", "300 pF", "10 pF", "37 pF")]
    [InlineData("chain-judge-offset", "half the supply", "50 mV", "2 mV")]
    [InlineData("chain-judge-fold", "0.5 Hz to 40 Hz")]
    public void Judgement_Question_StatesWhatItRestsOn(string id, params string[] stated) =>
        Assert.All(stated, text => Assert.Contains(text, Drawn.Of(id)[0].Text, StringComparison.Ordinal));

    /// <summary>A band that begins at half a hertz is printed so.</summary>
    [Fact]
    public void Givens_AreWrittenAsBooksWriteThem()
    {
        string[] texts = [.. TemplateSet.All.SelectMany(template => Drawn.Of(template.Id)).SelectMany(problem => problem.Givens).Select(given => given.Text)];
        Assert.Contains("0.5 Hz", texts);
        Assert.DoesNotContain(texts, text => text.Contains("mHz", StringComparison.Ordinal));
        Assert.All(Drawn.Of("sampling-sinc").SelectMany(problem => problem.Givens).Where(given => given.Symbol == "f/f_d"), given => Assert.DoesNotContain("%", given.Text, StringComparison.Ordinal));
    }
}
