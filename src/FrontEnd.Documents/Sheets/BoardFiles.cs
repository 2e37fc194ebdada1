using System.Text;
using FrontEnd.Boards;
using FrontEnd.Building;
using FrontEnd.Documents.Drawing;
using FrontEnd.Documents.Files;
using FrontEnd.Schematics;

namespace FrontEnd.Documents.Sheets;

/// <summary>What a builder takes along without the sheet: the schematic and the netlist, each with the cautions in it.</summary>
internal static class BoardFiles
{
    /// <summary>Extension of a schematic's file.</summary>
    public const string SchematicExtension = ".svg";

    /// <summary>Extension of a netlist's file.</summary>
    public const string NetlistExtension = ".csv";

    /// <summary>The schematic as a picture of its own, its pages below one another; the cautions stand in it and, whole, in a comment.</summary>
    /// <param name="assessment">Of the design.</param>
    /// <param name="board">The design's.</param>
    /// <param name="withHeadroom">True for how far each node is from clipping, at its test point.</param>
    public static string SchematicOf(Assessment assessment, Board board, bool withHeadroom = false)
    {
        Schematic schematic = SchematicDrawing.Of(assessment, board, withHeadroom);
        return Svg.File(SchematicDrawing.All(schematic, $"Schematic of {assessment.Design.Name}"), [Cautions.OfFile(assessment), .. Cautions.Own(assessment.Design), .. Cautions.All]);
    }

    /// <summary>A row for each pin, RFC 4180. Comments are none there: the caution is the last row, whose first cell begins with #, as in every
    /// table that leaves the program.</summary>
    public static string NetlistOf(Assessment assessment, Board board)
    {
        StringBuilder text = new();
        text.Row(CsvSheet.End, "designator", "pin", "net");
        foreach (NetlistRow row in Netlist.Of(board))
        {
            text.Row(CsvSheet.End, row.Designator, row.Pin, row.Net);
        }

        return CsvSheet.Caution(text, assessment, 3).ToString();
    }
}
