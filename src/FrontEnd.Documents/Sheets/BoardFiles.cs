using System.Text;
using FrontEnd.Boards;
using FrontEnd.Building;
using FrontEnd.Documents.Drawing;
using FrontEnd.Documents.Files;
using FrontEnd.Schematics;

namespace FrontEnd.Documents.Sheets;

/// <summary>What a builder takes along without the sheet: the schematic and the netlist, each with the cautions in it.</summary>
public static class BoardFiles
{
    private const string End = "\r\n";

    /// <summary>Extension of a schematic's file.</summary>
    public const string SchematicExtension = ".svg";

    /// <summary>Extension of a netlist's file.</summary>
    public const string NetlistExtension = ".csv";

    /// <summary>The schematic as a picture of its own, its pages below one another; the cautions stand in it and, whole, in a comment.</summary>
    public static string SchematicOf(Design design)
    {
        Schematic schematic = Schematic.Of(Board.Of(design));
        return Svg.File(SchematicDrawing.All(schematic, $"Schematic of {design.Name}"), [.. Cautions.Own(design), .. Cautions.All]);
    }

    /// <summary>A row for each pin, RFC 4180. Comments are none there, so that the cautions have a column of their own, filled in the first
    /// row: whoever reads by the names of the columns, or the first three, has the pins and nothing else.</summary>
    public static string NetlistOf(Design design)
    {
        StringBuilder text = new();
        text.Row(End, "designator", "pin", "net", "caution");
        string caution = string.Join(' ', [.. Cautions.Own(design), .. Cautions.All]);
        foreach (NetlistRow row in Netlist.Of(Board.Of(design)))
        {
            text.Row(End, row.Designator, row.Pin, row.Net, caution);
            caution = "";
        }

        return text.ToString();
    }
}
