using FrontEnd.Documents.Drawing;

namespace FrontEnd.Documents.Sheets;

/// <summary>What stands on a page in one piece: an entry of a list, a line of a table, a drawing. Lengths in points.</summary>
/// <param name="Draw">Draws it with its left upper corner at a place of the page.</param>
internal sealed record Piece(double Height, Action<Picture, double, double> Draw)
{
    /// <summary>Room above it, but not where it begins a page or a column.</summary>
    public double Before { get; init; }

    /// <summary>Never the last of a page: a heading, a table's head.</summary>
    public bool KeepsNext { get; init; }

    /// <summary>What stands above it again where it begins a page: the head of its table.</summary>
    public Piece? Head { get; init; }

    /// <summary>Its entry in the document's contents; null for none.</summary>
    public string? Bookmark { get; init; }
}

/// <summary>How a text of a printed page looks. Lengths in points.</summary>
internal sealed record PrintStyle(double Size, double Leading, bool IsBold = false, string Colour = "#111")
{
    /// <summary>The least size of a letter that is read without effort in print.</summary>
    public const double LeastSize = 6.5;

    /// <summary>Of the line at the foot of each page.</summary>
    public static readonly PrintStyle Foot = new(7, 9, Colour: "#444");

    public double Width(string text) => TextWidth.Of(text, Size, IsBold);

    /// <summary>Draws lines below each other, flush left in a column or flush right at its other side.</summary>
    public void Draw(Picture page, IReadOnlyList<string> lines, double x, double top, Anchor anchor = Anchor.Start)
    {
        double line = top + ((Leading - Size) / 2) + (0.79 * Size);
        foreach (string text in lines)
        {
            page.Text(x, line, text, anchor, Size, IsBold, Colour);
            line += Leading;
        }
    }
}

/// <summary>How closely a page is set.</summary>
/// <param name="Density">1 for the usual; 0.9 takes a tenth off the room between lines, tables and drawings, and off what is larger than the
/// least size.</param>
internal sealed record PrintLook(double Density)
{
    public static readonly PrintLook Usual = new(1);

    public PrintStyle Title { get; } = new(14, 18, IsBold: true);

    public PrintStyle Heading { get; } = new(Size(10, Density), 13 * Density, IsBold: true);

    public PrintStyle Caption { get; } = new(Size(8.2, Density), 10.4 * Density);

    public PrintStyle Body { get; } = new(Size(8, Density), 10.4 * Density);

    public PrintStyle Small { get; } = new(PrintStyle.LeastSize, 8 * Density);

    public PrintStyle Quiet { get; } = new(Size(7, Density), 8.8 * Density, Colour: "#444");

    /// <summary>Room between things, in points.</summary>
    public double Room(double usual) => usual * Density;

    private static double Size(double usual, double density) => Math.Max(PrintStyle.LeastSize, usual * density);
}
