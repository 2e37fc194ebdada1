using FrontEnd.Designs;
using FrontEnd.Findings;
using FrontEnd.Reporting;
using FrontEnd.Results;
using Xunit;

namespace FrontEnd.Tests.Plain;

/// <summary>The program against the plain second way, on designs drawn at random: every figure that both give, 1e-5, delays 1e-3, settling and recovery 2 %.</summary>
/// <remarks>PLAIN_RUNS sets the number of designs, PLAIN_SEED where to begin; a design that fails is drawn again by its number alone.</remarks>
public sealed class PlainWayTests
{
    public static IEnumerable<TheoryDataRow<int>> Seeds => Enumerable.Range(Setting("PLAIN_SEED", 1), Setting("PLAIN_RUNS", 40)).Select(seed => new TheoryDataRow<int>(seed));

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Evaluate_ADrawnDesign_AgreesWithThePlainSecondWay(int seed)
    {
        Design design = PlainDesigns.Draw(seed);
        Assessment assessment = Evaluator.Evaluate(design);
        Assert.DoesNotContain(assessment.Findings, finding => finding.Severity == Severity.Error);
        List<string> wrong = [];
        int compared = 0;
        foreach ((string id, object expected) in PlainFigures.Of(design))
        {
            if (assessment.Find(id) is not { } result || result.State == ResultState.Missing)
            {
                continue;
            }

            compared++;
            object actual = result.Value is { } value ? value.SiValue : result.State == ResultState.Unbounded ? "unbounded" : result.Text ?? "";
            if (!PlainComparison.Agree(id, expected, actual))
            {
                wrong.Add($"{id}: plainly {expected}, the program says {actual}");
            }
        }

        Assert.True(70 < compared, $"only {compared} figures were compared");
        Assert.True(wrong.Count == 0, $"{wrong.Count} of {compared}:\n{string.Join('\n', wrong)}");
    }

    private static int Setting(string name, int usual) => int.TryParse(Environment.GetEnvironmentVariable(name), out int given) ? given : usual;
}
