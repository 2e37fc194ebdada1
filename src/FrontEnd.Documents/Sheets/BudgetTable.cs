namespace FrontEnd.Documents.Sheets;

/// <summary>One budget as a table of texts, ready for any format.</summary>
/// <param name="Ids">The ids of its results, the parts that vary as <c>*</c>.</param>
internal sealed record BudgetTable(string Title, string Ids, IReadOnlyList<Column> Columns, IReadOnlyList<Row> Rows)
{
    /// <summary>What must be said with its figures; empty for most.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];
}

/// <param name="IsText">Left-aligned and wrapped; numbers are right-aligned.</param>
/// <param name="IsBox">Left empty, to write a reading in by hand.</param>
/// <param name="IsWhole">Text whose lines are never broken, so that they stand beside those of its neighbours.</param>
internal sealed record Column(string Head, bool IsText = false, bool IsBox = false, bool IsWhole = false);

/// <param name="Cells">Texts; one of several lines has a line end between them.</param>
/// <param name="IsSum">The line that the rows above it add up to.</param>
/// <param name="IsHeading">A line over the whole width that heads the rows below it; its only cell is the text.</param>
internal sealed record Row(IReadOnlyList<string> Cells, bool IsSum = false, bool IsHeading = false);
