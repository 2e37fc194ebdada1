using FrontEnd.Advice;
using FrontEnd.Documents.Drawing;
using FrontEnd.Schematics;

namespace FrontEnd.Documents.Sheets;

/// <summary>What stands on a sheet's pages, without its form: verdicts and what to do next, budgets and response, parts and bench; what the
/// figures rest on and how to read them is the appendix.</summary>
internal static class SheetBody
{
    public static IReadOnlyList<SheetPage> Pages(Sheet sheet)
    {
        SheetPage plain = new("in plain words", PlainPage.Of(sheet));
        List<SheetPage> pages = sheet.PlainOnly ? [plain]
            : sheet.Assessment.PartlyKnown is not null ? [plain, new("what is open", [.. OpenPage.Of(sheet)])]
            :
            [
                new("verdicts", [.. Verdicts(sheet)]),
                .. SchematicPages(sheet),
                new("budgets and response", [.. BudgetsAndPlots(sheet)]),
                new("many builds", [.. sheet.Spread is { } spread ? SpreadBlocks.Of(spread) : []]),
                new("parts", [.. SheetParts.Of(sheet)]),
                new("bench plan", [.. BenchBlocks.Of(sheet)]),
            ];
        if (sheet is { HasAppendix: true, PlainOnly: false, Assessment.PartlyKnown: null })
        {
            pages.AddRange(SheetAppendix.Of(sheet, [.. pages.SelectMany(page => page.Blocks)]));
        }

        string? stamp = Cautions.AgainstWearing(sheet.Assessment).Count == 0 ? null : Cautions.Stamp;
        return [.. pages.Where(page => page.Blocks.Count != 0).Select(page => page with { Stamp = stamp })];
    }

    /// <summary>The circuit, a page of its own for each of the drawing's.</summary>
    private static IEnumerable<SheetPage> SchematicPages(Sheet sheet)
    {
        if (sheet.Board is not { } answers)
        {
            yield break;
        }

        Schematic schematic = Schematic.Of(answers.Board);
        for (int at = 0; at < schematic.Pages.Count; at++)
        {
            SchematicPage page = schematic.Pages[at];
            string title = (schematic.Pages.Count == 1 ? "schematic" : $"schematic, page {at + 1} of {schematic.Pages.Count}") + (page.Title.Length == 0 ? "" : $": {page.Title}");
            yield return new SheetPage(title, [new Block.Drawing(title, SchematicDrawing.Page(page, $"{title}, {sheet.Design.Name}"), null)]) { IsLandscape = true };
        }
    }

    /// <summary>The texts of a sheet in which a reader may meet a term: headings, tables and verdicts.</summary>
    internal static IEnumerable<string> Texts(IEnumerable<Block> blocks) => blocks.SelectMany(block => block switch
    {
        Block.Heading heading => [heading.Text],
        Block.Paragraph paragraph => [paragraph.Text],
        Block.Table table => table.Columns.Select(column => column.Head).Concat(table.Rows.SelectMany(row => row.Cells)),
        Block.Verdicts verdicts => verdicts.Results.Select(result => $"{result.Name} {result.Verdict.Dominates}"),
        Block.Pair pair => Texts(pair.Left.Concat(pair.Right)),
        Block.Drawing drawing => [drawing.Title],
        _ => Array.Empty<string>(),
    });

    private static IEnumerable<Block> Verdicts(Sheet sheet)
    {
        foreach (Result against in Cautions.AgainstWearing(sheet.Assessment))
        {
            yield return new Block.Warning($"{Capital(Cautions.Stamp)}: {against.Name}, {Wording.Value(against)}, {Wording.Limit(against.Verdict)} required.");
        }

        if (sheet.Design.Caution.Length > 0)
        {
            yield return new Block.Warning("Caution: " + sheet.Design.Caution + ".");
        }

        if (sheet.Design.Purpose.Length > 0)
        {
            yield return new Block.Paragraph(sheet.Design.Purpose);
        }

        yield return new Block.Items(Cautions.All, Small: true);
        yield return new Block.Heading("Does it meet its requirements?   " + Wording.Counts(sheet.Assessment));
        yield return new Block.Verdicts(sheet.Assessment.Judged);
        yield return new Block.Heading("The path, and how far each block is from clipping");
        yield return Chain(sheet.Assessment);
        yield return new Block.Heading("What to do next");
        yield return Next(sheet.Assessment);
        foreach (Block block in BudgetTables.Of(sheet.Assessment).Where(table => table.Title is ChannelTable.Title or ChannelTable.DerivedTitle).SelectMany(Titled))
        {
            yield return block;
        }

        if (sheet.Findings.Count > 0)
        {
            yield return new Block.Heading("What to know when reading the figures");
            yield return new Block.Items([.. sheet.Findings.Select(Told)], Small: true);
        }

        int defaults = DefaultUsed.Of(sheet).Count;
        yield return new Block.Items(
            [$"{defaults} value{(defaults == 1 ? " is a default" : "s are defaults")} that the design does not state; the appendix lists {(defaults == 1 ? "it" : "them")} with {(defaults == 1 ? "its source" : "their sources")}{(sheet.HasAppendix ? "" : ": --appendix")}."],
            Small: true);
    }

    /// <summary>A finding in one line: what is wrong, the fact it rests on, what to change, and its code.</summary>
    private static string Told(Finding finding) =>
        finding.Message + (finding.Note is null ? "" : $"; {finding.Note}") + (finding.Help is null ? "." : $". To do: {finding.Help}.")
            + $" [{finding.Code}]";

    private static Block.Drawing Chain(Assessment assessment) => new(
        "", ChainDrawing.Of(assessment),
        new Block.Table(
            [new("block", true), new("what it is", true), new("headroom"), new("levels at its output", true)],
            [.. ChainBlocks.Of(assessment).Select(Described)]));

    private static Row Described(ChainBlock block) =>
        new([block.Name, string.Join(", ", block.Lines), block.Headroom, string.Join(", ", block.Levels)]);

    private static Block Next(Assessment assessment)
    {
        IReadOnlyList<NextStep> steps = NextStep.Of(assessment);
        return steps.Count > 0
            ? new Block.Items([.. steps.Select(step => $"{step.Change}. {string.Join(" ", step.Helps.Select(Helped))}")], Numbered: true)
            : new Block.Paragraph(assessment.AllRequirementsMet
                ? "Every requirement that is judged is met with margin to spare. Build it, and work through the bench plan at the end of this sheet."
                : "No single change was found that helps; the budgets show what each figure is made of.");
    }

    private static string Helped(Result result)
    {
        Improvement change = result.Verdict.Improvement!;
        string after = change.After is { } value
            ? QuantityText.Format(value)
            : change.AfterInWords ?? "no number", side = change.SideEffect is { } worse
            ? $" (but {worse})."
            : ".";
        return $"{Capital(result.Name)}: from {Wording.Value(result)} to {after}, {Wording.Word(change.Verdict)}{side}";
    }

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    private static IEnumerable<Block> BudgetsAndPlots(Sheet sheet)
    {
        Assessment assessment = sheet.Assessment;
        ILookup<string, BudgetTable> tables = BudgetTables.Of(sheet).ToLookup(table => table.Title, StringComparer.Ordinal);
        yield return new Block.Pair(
            [
                .. Tables("noise by source").Select(block => block is Block.Table table ? WithoutTiny(table) : block),
                .. BudgetTables.PathFigures(assessment) is { } path ? Titled(path) : [],
            ],
            [
                .. Tables("mains at the electrodes"),
                .. BudgetTables.HarmonicsThatMatter(assessment) is { } harmonics ? Titled(harmonics) : [],
                .. Tables(ContactTimesTable.Title),
            ]);
        foreach ((string title, Picture drawing) in Charts.Of(assessment))
        {
            yield return new Block.Drawing(title, drawing, null);
        }

        foreach (Block block in Tables(SourceTables.Title).Concat(Tables(SourceTables.ReferenceTitle)))
        {
            yield return block;
        }

        IEnumerable<Block> Tables(string title) => tables[title].SelectMany(Titled);
    }

    /// <summary>A budget under its title.</summary>
    internal static IEnumerable<Block> Titled(BudgetTable table) =>
        [
            new Block.Heading(table.Title), new Block.Table(table.Columns, table.Rows, Small: true),
            .. table.Notes.Count == 0 ? (Block[])[] : [new Block.Items(table.Notes, Small: true)],
        ];

    /// <summary>Sources that nobody would miss in one line.</summary>
    private static Block.Table WithoutTiny(Block.Table table)
    {
        Row[] kept = [.. table.Rows.Where(row => !row.Cells[^1].StartsWith('<'))];
        int left = table.Rows.Count - kept.Length;
        return left < 2 ? table : table with { Rows = [.. kept[..^1], new Row([$"{left} others, each", "", "< 0.001 %"]), kept[^1]] };
    }
}
