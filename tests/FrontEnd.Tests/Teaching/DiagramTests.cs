using FrontEnd.Electrodes;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Teaching;
using FrontEnd.Topologies;
using Xunit;

namespace FrontEnd.Tests.Teaching;

/// <summary>The pictures: attached to results that there are, all of them reached, and drawn without a slip.</summary>
public class DiagramTests
{
    // Between them they have every kind of stage, a contact check and every optional figure of the supply.
    private static readonly Assessment[] Assessments =
    [
        .. Designs.All.Select(Evaluator.Evaluate),
        Evaluator.Evaluate(Designs.Dry with
        {
            ContactCheck = new ContactCheck(),
            Stages = [.. Designs.Dry.Stages, new MultipleFeedbackSection { Name = "anti-alias 2" }, new RcSection { Name = "anti-alias 3" }],
            Supply = Designs.Dry.Supply with { Ripple = VoltageRms.FromVolts(0.01), MidRailNoise = VoltageRms.FromMicrovolts(5), BatteryCapacity = Charge.FromMilliampereHours(250) },
            Converter = Designs.Dry.Converter with { ReferenceNoise = VoltageRms.FromMicrovolts(10) },
        }),
    ];

    [Fact]
    public void Patterns_OfAllDiagrams_FitAResult()
    {
        string[] ids = [.. Assessments.SelectMany(assessment => assessment.Results).Select(result => result.Id.Text).Distinct()];
        foreach (Diagram diagram in Diagrams.All)
        {
            Assert.All(diagram.For, pattern => Assert.True(Array.Exists(ids, id => pattern.Fits(new(id))), $"{diagram.Id}: no result fits {pattern}"));
        }

        Assert.Equal(Diagrams.All.Count, Diagrams.All.Select(diagram => diagram.Id).Distinct().Count());
    }

    [Fact]
    public void Diagrams_OfTheTestsDesigns_AreAllReached() =>
        Assert.Equal([], Diagrams.All.Select(diagram => diagram.Id).Except(Assessments.SelectMany(Diagrams.Of).Select(diagram => diagram.Id)));

    [Theory]
    [InlineData("noise.total", "noise-sources")]
    [InlineData("mains.divider", "lead-network")]
    [InlineData("mains.body_common_mode", "common-mode-path")]
    [InlineData("drive.phase_margin", "driven-ground-loop")]
    [InlineData("alias.fold_attenuation", "folding")]
    [InlineData("levels.amplifier.headroom", "headroom")]
    [InlineData("levels.drive.headroom", "driven-ground-loop")]
    [InlineData("filter.gain-2.minus_3db", "stage-gain")]
    [InlineData("filter.anti-alias-1.minus_3db", "stage-sallen-key")]
    [InlineData("filter.anti-alias-2.minus_3db", "stage-multiple-feedback")]
    [InlineData("filter.anti-alias-3.minus_3db", "stage-rc")]
    [InlineData("safety.fault_current", "fault-path")]
    [InlineData("converter.lsb", "quantiser")]
    public void Of_AResult_IsThePictureOfItsReason(string id, string diagram) => Assert.Equal(diagram, Diagrams.Of(Assessments[^1], new(id))?.Id);

    [Fact]
    public void Lines_OfEveryDiagramAndDesign_AreFilledAndNarrow()
    {
        foreach (Assessment assessment in Assessments)
        {
            foreach (Diagram diagram in Diagrams.Of(assessment))
            {
                Assert.All(diagram.Lines(assessment), line => Assert.True(line.Length <= 58 && !line.Contains('{', StringComparison.Ordinal) && !line.Contains("no number", StringComparison.Ordinal), $"{diagram.Id}: {line}"));
            }
        }
    }

    /// <summary>A line that goes up or down meets a line, a part, an arrowhead or a word there; so a letter too many in a row is seen.</summary>
    [Fact]
    public void Lines_OfEveryDiagram_MeetWhereTheyGo()
    {
        const string up = "│└┘├┤┴┼┷╧", down = "│┌┐├┤┬┼";
        List<string> loose = [];
        foreach (Diagram diagram in Diagrams.All)
        {
            string[] rows = [.. diagram.Art.Split('\n')];
            char At(int row, int column) => 0 <= row && row < rows.Length && 0 <= column && column < rows[row].Length ? rows[row][column] : ' ';
            for (int row = 0; row < rows.Length; row++)
            {
                for (int column = 0; column < rows[row].Length; column++)
                {
                    char here = rows[row][column], above = At(row - 1, column), below = At(row + 1, column);

                    // ┤├ side by side are a capacitor's plates, ┴ above ┬ as well, and an axis ends in the air.
                    bool plate = (here == '┤' && At(row, column + 1) == '├') || (here == '├' && At(row, column - 1) == '┤');
                    bool axis = here == '│' && row == 0;
                    if (!plate && !axis && up.Contains(here) && (above == ' ' || above == '─'))
                    {
                        loose.Add($"{diagram.Id} {row}:{column} {here} up");
                    }

                    if (!plate && down.Contains(here) && (below == ' ' || below == '─'))
                    {
                        loose.Add($"{diagram.Id} {row}:{column} {here} down");
                    }
                }
            }
        }

        Assert.Equal([], loose);
    }

    [Fact]
    public void Lines_WithALongValueInAFrame_KeepTheFrame()
    {
        Diagram diagram = new("d", "t", [], "│ {a}    │\n{a}  b", _ => new Dictionary<string, string> { ["a"] = "123456" });
        Assert.Equal(["│ 123456 │", "123456  b"], diagram.Lines(Assessments[0]));
    }
}
