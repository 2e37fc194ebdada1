using System.Text.RegularExpressions;
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
    /// <summary>Families that the program need not give: a figure of the spread, the corner of a notch, the settling of an amplifier alone.</summary>
    private static readonly Regex NotAlwaysGiven = new(@"^(levels\.least_headroom|filter\.analogue-notch-1\.minus_3db|filter\.path\.settling)$", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1));

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
            if (Said(assessment, id) is not { } actual)
            {
                wrong.AddRange(NotAlwaysGiven.IsMatch(id) ? Array.Empty<string>() : [$"{id}: plainly {expected}, the program says nothing"]);
                continue;
            }

            compared++;
            if (!PlainComparison.Agree(id, expected, actual))
            {
                wrong.Add($"{id}: plainly {expected}, the program says {actual}");
            }
        }

        Assert.True(70 < compared, $"only {compared} figures were compared");
        Assert.True(wrong.Count == 0, $"{wrong.Count} of {compared}:\n{string.Join('\n', wrong)}");
    }

    /// <summary>What the program says: a number, or a word; of a source also its share, of a harmonic whether it lands in the band. Null where it says nothing.</summary>
    private static object? Said(Assessment assessment, string id)
    {
        if (id.EndsWith(".share", StringComparison.Ordinal))
        {
            return assessment.Find(id[..^".share".Length])?.ShareOfVariance;
        }

        if (id.StartsWith("mains.harmonic.", StringComparison.Ordinal) && id.EndsWith(".in_band", StringComparison.Ordinal))
        {
            return assessment.Find(id.Replace("in_band", "lands_at", StringComparison.Ordinal))?.LandsInBand is { } lands ? lands ? "true" : "false" : null;
        }

        return assessment.Find(id) switch
        {
            null or { State: ResultState.Missing } => null,
            { Value: { } value } => value.SiValue,
            { State: ResultState.Unbounded } => "unbounded",
            { } word => word.Text ?? "",
        };
    }

    private static int Setting(string name, int usual) => int.TryParse(Environment.GetEnvironmentVariable(name), out int given) ? given : usual;
}
