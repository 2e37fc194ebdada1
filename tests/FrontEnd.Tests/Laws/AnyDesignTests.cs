using System.Collections.Concurrent;
using System.Globalization;
using FrontEnd.Advice;
using FrontEnd.Bench;
using FrontEnd.Designs;
using FrontEnd.Findings;
using FrontEnd.Rates;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Spread;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Tests.Laws;

/// <summary>Whatever a user can write is evaluated or is refused with the reason; nothing is thrown and nothing is left out in silence.</summary>
/// <remarks>LAW_RUNS sets the number of designs, LAW_SEED where to begin: a design that fails is drawn again by its number alone.</remarks>
public sealed class AnyDesignTests
{
    private static readonly int Runs = Setting("LAW_RUNS", 60);
    private static readonly int First = Setting("LAW_SEED", 20261125);

    [Fact]
    public void Evaluate_AnyDrawnDesign_AnswersOrNamesTheReason() => Hold(Runs, design => Judge(design));

    /// <summary>What works a design out in a way of its own: bench plan, spread, rates, advice.</summary>
    [Fact]
    public void Studies_AnyDrawnDesign_DoNotThrow() => Hold(Math.Max(1, Runs / 5), design =>
    {
        (IReadOnlyList<BenchReading> readings, IReadOnlyList<Finding> refused) = BenchPlan.Of(design);
        SpreadResult? spread = SpreadRun.Run(design, new SpreadOptions { Builds = 4, Threads = 1 });
        RateStudy.Compare(design);
        if (refused is [{ } error, ..])
        {
            return (error.Code == Messages.CannotEvaluate ? $"the bench plan is refused with {error.Message}" : spread is null ? null : "is spread although it is refused", error.Code);
        }

        // What is predicted agrees with itself, and every line can be read.
        double half = design.Converter.Rate.Hertz / 2;
        if (readings.FirstOrDefault(test => (test.Expected is { } expected && (expected.SiValue < test.Least || test.Greatest < expected.SiValue))
            || (test.Line is { } line && (line.Hertz <= 0 || half <= line.Hertz))) is { } odd)
        {
            return ($"expects {odd.Expected} at {odd.Line} of {odd.Name}, {odd.Least} to {odd.Greatest}", "");
        }

        Advisor.Advise(Evaluator.Evaluate(design));
        return (spread is null ? "is not spread" : readings.Count == 0 ? "has no bench plan" : null, "");
    });

    private static void Hold(int runs, Func<Design, (string? Fault, string Refused)> judge)
    {
        ConcurrentQueue<string> wrong = [];
        ConcurrentDictionary<string, int> refused = [];
        Parallel.For(First, First + runs, seed =>
        {
            try
            {
                (string? fault, string code) = judge(DrawnDesigns.Draw(seed));
                refused.AddOrUpdate(code, 1, (_, count) => count + 1);
                if (fault is not null)
                {
                    wrong.Enqueue($"{seed}: {fault}");
                }
            }
            catch (Exception fault)
            {
                wrong.Enqueue($"{seed}: {fault.GetType().Name} {fault.Message} {fault.StackTrace}");
            }
        });
        int legal = refused.GetValueOrDefault("");
        string codes = string.Join(", ", refused.Where(pair => pair.Key.Length != 0).OrderByDescending(pair => pair.Value).Select(pair => $"{pair.Key} {pair.Value}"));
        TestContext.Current.TestOutputHelper?.WriteLine($"{runs} designs, {legal} of them legal; refused: {codes}");
        Assert.True(wrong.IsEmpty, $"{wrong.Count} of {runs}, {legal} legal\n" + string.Join('\n', wrong.Order(StringComparer.Ordinal).Take(40)));
        Assert.True(runs < 3 * legal, $"only {legal} of {runs} designs are legal: the draw says little");
    }

    /// <summary>What is wrong with the answer, and the code that the design is refused with; "" for a legal one.</summary>
    private static (string? Fault, string Refused) Judge(Design design)
    {
        Assessment assessment = Evaluator.Evaluate(design);
        if (assessment.Findings.FirstOrDefault(finding => finding.Severity == Severity.Error) is { } error)
        {
            bool isRefused = error.Code != Messages.CannotEvaluate && error.Field.Length != 0 && assessment.Results.All(result => result.State == ResultState.Missing && result.FindingCode == error.Code);
            return (isRefused ? null : $"refused with {error.Code} at `{error.Field}`: {error.Message}", error.Code);
        }

        foreach (Result result in assessment.Results)
        {
            string? fault = result.State switch
            {
                ResultState.Number => double.IsFinite(result.Si) ? result.Hand is { } hand && !double.IsFinite(hand.Value.SiValue) ? "by hand is no number" : null : $"is {result.Si}",
                ResultState.Missing => assessment.Findings.Any(finding => finding.Code == result.FindingCode) ? null : $"is missing without {result.FindingCode}",
                _ => string.IsNullOrEmpty(result.Text) ? "says nothing" : null,
            };
            if (fault is not null)
            {
                return ($"{result.Id} {fault}", "");
            }
        }

        return (assessment.Find("noise.total") is null ? "has no noise.total" : null, "");
    }

    private static int Setting(string name, int otherwise) => int.TryParse(Environment.GetEnvironmentVariable(name), CultureInfo.InvariantCulture, out int value) ? value : otherwise;
}
