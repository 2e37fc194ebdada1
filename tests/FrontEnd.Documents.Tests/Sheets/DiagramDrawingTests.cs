using System.Xml.Linq;
using FrontEnd.Documents.Drawing;
using FrontEnd.Documents.Sheets;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Teaching;
using Xunit;

namespace FrontEnd.Documents.Tests.Sheets;

/// <summary>The drawing says what the letters say: the same words in the same places, every line joined.</summary>
public sealed class DiagramDrawingTests
{
    private const double CellWidth = 6.4, CellHeight = 14;
    private const string Lines = "│─┌┐└┘├┤┬┴┼┷╧┆";

    private static readonly Assessment Assessment = Evaluator.Evaluate(DesignDocument.Read(Path.Combine(Repository.Designs, "hobbyist.toml")).Design);

    public static TheoryData<string> Ids => [.. Diagrams.All.Select(diagram => diagram.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Drawing_HasTheWordsOfTheLetters(string id)
    {
        Diagram diagram = Diagrams.All.First(one => one.Id == id);
        string letters = string.Concat(diagram.Lines(Assessment)), drawn = string.Concat(Texts(diagram).Select(text => text.Value));

        // Frames, lines and arrowheads are drawn, not written; a low line sets its index low.
        string plain = string.Concat(letters.Where(letter => !Lines.Contains(letter) && !"[] _()<>^v".Contains(letter)).Order());
        Assert.Equal(plain, string.Concat(drawn.Where(letter => !" _()<>^v[]".Contains(letter)).Order()));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Drawing_TextsStandWhereTheLettersStand(string id)
    {
        Diagram diagram = Diagrams.All.First(one => one.Id == id);
        IReadOnlyList<string> lines = diagram.Lines(Assessment);
        foreach (XElement text in Texts(diagram))
        {
            string row = lines[(int)((double)text.Attribute("y")! / CellHeight)];
            string value = string.Concat(text.Nodes().Select(node => node is XElement low && (double)low.Attribute("dy")! > 0 ? "_" + low.Value : node is XElement up ? up.Value : node.ToString())).Replace("&lt;", "<", StringComparison.Ordinal).Replace("&gt;", ">", StringComparison.Ordinal);
            Assert.Contains(value, row, StringComparison.Ordinal);
            double x = (double)text.Attribute("x")! / CellWidth;
            if ((string?)text.Attribute("text-anchor") == "start")
            {
                Assert.True(Enumerable.Range(0, row.Length).Any(at => row.AsSpan(at).StartsWith(value, StringComparison.Ordinal) && Math.Abs(at - x) < 0.5), $"{value} at {x}: {row}");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Drawing_CountsOfPartsAndArrows_AreThoseOfTheLetters(string id)
    {
        Diagram diagram = Diagrams.All.First(one => one.Id == id);
        Picture picture = DiagramDrawing.Of(diagram, Assessment);
        string letters = string.Join('\n', diagram.Lines(Assessment));
        Assert.Equal(letters.Count(letter => letter == '['), picture.Operations.Count(one => one is Operation.Rectangle));
        Assert.Equal(letters.Split("─>").Length - 1, picture.Operations.Count(one => one is Operation.Path path && PointsRight(path.Outline.Steps)));
        Assert.Equal(58 * CellWidth, picture.Width, 6);
    }

    private static bool PointsRight(IReadOnlyList<OutlineStep> steps) => steps is [.., var upper, var tip, var lower]
        && Math.Abs(tip.X - upper.X - 6) < 1e-9 && Math.Abs(tip.Y - upper.Y - 3.2) < 1e-9
        && Math.Abs(tip.X - lower.X - 6) < 1e-9 && Math.Abs(lower.Y - tip.Y - 3.2) < 1e-9;

    [Fact]
    public void Explain_EveryResultOfEveryDesign_KeepsToEightyColumns()
    {
        foreach (string name in new[] { "starter", "dry-headband", "gel-cap", "saline-sponge", "hobbyist", "engineer", "instructor" })
        {
            Assessment assessment = Evaluator.Evaluate(DesignDocument.Read(Path.Combine(Repository.Designs, name + ".toml")).Design);
            foreach (Result result in assessment.Results)
            {
                Assert.All(ExplainText.Of(new FrontEnd.Teaching.Explained(assessment, result, [])).Split('\n'), line => Assert.True(line.Length <= 80, $"{name} {result.Id}: {line}"));
            }
        }
    }

    private static XElement[] Texts(Diagram diagram) => [.. XElement.Parse(Svg.Of(DiagramDrawing.Of(diagram, Assessment)), LoadOptions.PreserveWhitespace).Descendants().Where(one => one.Name.LocalName == "text")];
}
