namespace FrontEnd.Documents.Sheets;

/// <summary>One budget as a table of texts, ready for any format.</summary>
/// <param name="Ids">The ids of its results, the parts that vary as <c>*</c>.</param>
public sealed record BudgetTable(string Title, string Ids, IReadOnlyList<Column> Columns, IReadOnlyList<Row> Rows)
{
    /// <summary>What must be said with its figures; empty for most.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];
}

/// <param name="IsText">Left-aligned and wrapped; numbers are right-aligned.</param>
public sealed record Column(string Head, bool IsText = false);

/// <param name="IsSum">The line that the rows above it add up to.</param>
public sealed record Row(IReadOnlyList<string> Cells, bool IsSum = false);
