using System.Xml.Linq;
using FrontEnd.Boards;
using FrontEnd.Building;
using FrontEnd.Designs;
using FrontEnd.Documents.Drawing;
using FrontEnd.Documents.Sheets;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Schematics;
using Xunit;

namespace FrontEnd.Documents.Tests.Sheets;

/// <summary>Schematic and netlist of the design files that come along and of the worked designs.</summary>
public sealed class SchematicTests
{
    /// <summary>Design files without errors of which everything is known.</summary>
    public static IEnumerable<TheoryDataRow<string>> Files =>
        Directory.GetFiles(Repository.Designs, "*.toml").Where(file => !file.Contains("requirements", StringComparison.Ordinal) && !file.Contains("wrong", StringComparison.Ordinal))
            .Concat(Directory.GetFiles(Path.Combine(Repository.Worked, "random"), "*.json"))
            .Where(file => DesignDocument.Read(file).NotAllKnown is null)
            .Select(file => Path.GetRelativePath(Repository.Root, file)).Order(StringComparer.Ordinal).Select(file => new TheoryDataRow<string>(file));

    [Theory]
    [MemberData(nameof(Files))]
    public void Drawing_OfADesignFile_SaysWhatIsBuiltAndCanBeRead(string file)
    {
        Schematic schematic = Schematic.Of(Board.Of(Read(file)));
        Assert.Empty(SchematicChecks.Nets(schematic));
        Assert.All(schematic.Pages, page => Assert.Empty(SchematicChecks.FourWay(page)));
        Assert.All(schematic.Pages, page => Assert.Empty(SchematicChecks.Readability(page)));
    }

    /// <summary>The core keeps as much room for a text as the program's own font takes, or more; print is no smaller than 6.5 points.</summary>
    [Theory]
    [MemberData(nameof(Files))]
    public void Texts_OfADesignFile_TakeNoMoreRoomThanIsKeptForThem(string file)
    {
        foreach (SchematicText text in Schematic.Of(Board.Of(Read(file))).Pages.SelectMany(page => page.AllTexts))
        {
            Assert.True(TextWidth.Of(text.Text, text.Size, text.IsBold) <= text.Box.Width * (1 + 1e-9), text.Text);
            Assert.True(6.5 <= text.Size * Schematic.StepMillimetres / 25.4 * 72, text.Text);
        }
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Files_OfADesign_HoldEveryPieceAndTheCautions(string file)
    {
        Assessment assessment = Evaluator.Evaluate(Read(file));
        Board board = Board.Of(assessment.Design);
        string picture = BoardFiles.SchematicOf(assessment, board);
        XDocument xml = XDocument.Parse(picture);
        string comment = xml.Nodes().OfType<XComment>().Single().Value, texts = string.Join('\n', xml.Descendants().Where(one => one.Name.LocalName == "text").Select(one => one.Value));
        Assert.All(Cautions.All, caution => Assert.Contains(Svg.Escape(caution), comment, StringComparison.Ordinal));
        Assert.Contains("Not a medical device.", texts, StringComparison.Ordinal);
        int[] drawn = [0, .. board.AlikeAssemblies.Select(group => group[0])];
        Assert.All(board.Parts.Where(part => drawn.Contains(part.Assembly)), part => Assert.Contains(part.Designator, texts, StringComparison.Ordinal));

        string[] lines = BoardFiles.NetlistOf(assessment, board).TrimEnd().Split("\r\n");
        Assert.Equal("designator,pin,net", lines[0]);
        Assert.Equal(Netlist.Of(board).Count, lines.Length - 2);
        Assert.Contains("# ", lines[^1], StringComparison.Ordinal);
        Assert.Contains("Not a medical device.", lines[^1], StringComparison.Ordinal);
        foreach ((NetlistRow row, string line) in Netlist.Of(board).Zip(lines.Skip(1)))
        {
            Assert.Equal($"{row.Designator},{row.Pin},{row.Net}", line);
        }
    }

    /// <summary>With headroom at the nets, and with the stamp of a design that must not be worn, the drawing is as good.</summary>
    [Theory]
    [MemberData(nameof(Files))]
    public void Drawing_WithHeadroom_CanBeReadAndIsStampedWhereItMustBe(string file)
    {
        Assessment assessment = Evaluator.Evaluate(Read(file));
        Schematic schematic = SchematicDrawing.Of(assessment, Board.Of(assessment.Design), withHeadroom: true);
        Assert.Empty(SchematicChecks.Nets(schematic));
        Assert.All(schematic.Pages, page => Assert.Empty(SchematicChecks.Readability(page)));
        Assert.Contains(schematic.Pages.SelectMany(page => page.AllTexts), text => text.Text.StartsWith("room ", StringComparison.Ordinal));
        bool stamped = Cautions.AgainstWearing(assessment).Count > 0;
        Assert.All(schematic.Pages, page => Assert.Equal(stamped, page.AllTexts.Any(text => text.Text.Equals(Cautions.Stamp, StringComparison.OrdinalIgnoreCase))));
    }

    private static Design Read(string file) => DesignDocument.Read(Path.Combine(Repository.Root, file)).Design;
}
