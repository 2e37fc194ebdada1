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

    public static readonly PrintStyle Title = new(14, 18, IsBold: true), Heading = new(10, 13, IsBold: true), Caption = new(8.5, 11);

    public static readonly PrintStyle Body = new(8, 10.6), Small = new(6.6, 8.2), Quiet = new(7, 9, Colour: "#444"), Foot = new(7, 9, Colour: "#444");

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
