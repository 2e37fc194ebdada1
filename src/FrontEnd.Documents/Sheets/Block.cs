using FrontEnd.Documents.Drawing;

namespace FrontEnd.Documents.Sheets;

/// <summary>A piece of a sheet, for any format.</summary>
internal abstract record Block
{
    public sealed record Heading(string Text) : Block;

    public sealed record Paragraph(string Text) : Block;

    /// <summary>What must not be missed.</summary>
    public sealed record Warning(string Text) : Block;

    /// <param name="AsWritten">Entries that are no sentences and keep their small letter.</param>
    public sealed record Items(IReadOnlyList<string> Texts, bool Numbered = false, bool Small = false, bool AsWritten = false) : Block;

    public sealed record Table(IReadOnlyList<Column> Columns, IReadOnlyList<Row> Rows, bool Small = false) : Block;

    public sealed record Verdicts(IReadOnlyList<Result> Results) : Block;

    /// <summary>Side by side where there is room, one after the other elsewhere.</summary>
    public sealed record Pair(IReadOnlyList<Block> Left, IReadOnlyList<Block> Right) : Block;

    /// <param name="Instead">What a format without drawings shows; null for nothing.</param>
    public sealed record Drawing(string Title, Picture Picture, Table? Instead) : Block;

    /// <summary>Drawings two by two, each with its title.</summary>
    public sealed record Drawings(IReadOnlyList<Drawing> All) : Block
    {
        public const string Title = "What the figures rest on";
    }
}
