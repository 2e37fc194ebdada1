namespace FrontEnd.Documents.Sheets;

/// <summary>A page of a sheet, for any format: every format begins it on a new sheet of paper.</summary>
/// <param name="Title">What it is, for bookmarks: "budgets and response".</param>
/// <param name="Blocks">What stands on it, in order; what does not fit runs on to the next sheet of paper.</param>
internal sealed record SheetPage(string Title, IReadOnlyList<Block> Blocks)
{
    /// <summary>True for a page that is wider than high, as a schematic's.</summary>
    public bool IsLandscape { get; init; }

    /// <summary>What must be read on every sheet of paper, such as "not to be worn"; null for nothing.</summary>
    public string? Stamp { get; init; }
}
