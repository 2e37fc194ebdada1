using FrontEnd.Advice;
using FrontEnd.Documents.Drawing;
using FrontEnd.Teaching;

namespace FrontEnd.Documents.Sheets;

/// <summary>What stands on a sheet's pages, without its form: bench first, then budgets, then parts and settings, then what it rests on and
/// how to read it.</summary>
internal static class SheetBody
{
    public static IReadOnlyList<IReadOnlyList<Block>> Pages(Sheet sheet)
    {
        if (sheet.PlainOnly)
        {
            return [PlainPage.Of(sheet)];
        }

        if (sheet.Assessment.PartlyKnown is not null)
        {
            return [PlainPage.Of(sheet), [.. OpenPage.Of(sheet)]];
        }

        List<List<Block>> pages =
        [
            [.. Bench(sheet)], [.. BudgetsAndPlots(sheet)], [.. FiltersAlone(sheet)],
            [.. sheet.Spread is { } spread ? SpreadBlocks.Of(spread) : []],
            [.. SheetParts.Of(sheet)], [.. SheetGrounds.Of(sheet)],
        ];
        pages.Add([.. Reading(sheet.Assessment, [.. pages.SelectMany(page => page)])]);
        return [.. pages.Where(page => page.Count != 0)];
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

    /// <summary>For whoever learns with the sheet: pictures of what stands behind the figures, and the terms used.</summary>
    private static IEnumerable<Block> Reading(Assessment assessment, IReadOnlyList<Block> rest)
    {
        IReadOnlyList<Diagram> diagrams = Diagrams.Of(assessment);
        yield return new Block.Heading("terms and symbols on this sheet");
        IEnumerable<string> texts = Texts(rest).Concat(diagrams.SelectMany(diagram => diagram.Lines(assessment)));
        yield return new Block.Items([.. Glossary.UsedIn(texts).Select(term => $"{Glossary.Head(term)}: {term.Meaning}")], Small: true,
            AsWritten: true);
        yield return new Block.Drawings([.. diagrams.Select(diagram =>
            new Block.Drawing(diagram.Title, DiagramDrawing.Of(diagram, assessment), null))]);
    }

    private static IEnumerable<Block> Bench(Sheet sheet)
    {
        if (sheet.Design.Caution.Length > 0)
        {
            yield return new Block.Warning("Caution: " + sheet.Design.Caution + ".");
        }

        if (sheet.Design.Purpose.Length > 0)
        {
            yield return new Block.Paragraph(sheet.Design.Purpose);
        }

        yield return new Block.Items(Cautions.All, Small: true);
        yield return new Block.Heading("Does it do what is asked?   " + Wording.Counts(sheet.Assessment));
        yield return new Block.Verdicts(sheet.Assessment.Judged);
        yield return new Block.Heading("The path, and how far each block is from clipping");
        yield return Chain(sheet.Assessment);
        yield return new Block.Heading("What to do next");
        yield return Next(sheet.Assessment);
        foreach (Block block in BudgetTables.Of(sheet.Assessment).Where(table => table.Title is ChannelTable.Title or ChannelTable.DerivedTitle or BudgetTables.BeforeARecording)
            .SelectMany(Titled))
        {
            yield return block;
        }
    }

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
                ? "Every requirement that is judged is met with room to spare. Build it, and go through the bench tests at the end of this sheet."
                : "No single change was found that helps; the budgets show what each figure is made of.");
    }

    private static string Helped(Result result)
    {
        Improvement change = result.Verdict.Improvement!;
        string after = change.After is { } value
            ? QuantityText.Format(value)
            : "no limit found", side = change.SideEffect is { } worse
            ? $" (but {worse})."
            : ".";
        return $"{Capital(result.Name)}: from {Wording.Value(result)} to {after}, {Wording.Word(change.Verdict)}{side}";
    }

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    private static IEnumerable<Block> BudgetsAndPlots(Sheet sheet)
    {
        ILookup<string, BudgetTable> tables = BudgetTables.Of(sheet).ToLookup(table => table.Title, StringComparer.Ordinal);
        yield return new Block.Pair(
            [.. Tables("noise by source").Select(block => block is Block.Table table ? WithoutTiny(table) : block)],
            [.. Tables("mains at the electrodes"), .. Tables("mains harmonics")]);
        foreach ((string title, Picture drawing) in Charts.Of(sheet.Assessment))
        {
            yield return new Block.Drawing(title, drawing, null);
        }

        foreach (Block block in Tables(ContactTimesTable.Title).Concat(Tables(SourceTables.Title)).Concat(Tables(SourceTables.ReferenceTitle)))
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

    /// <summary>What the anti-alias sections and the digital filters do by themselves; nothing for a design without filters.</summary>
    private static IEnumerable<Block> FiltersAlone(Sheet sheet)
    {
        IReadOnlyList<(string Title, Picture Drawing, IReadOnlyList<Curve> Lines)> charts = Charts.OfFilters(sheet.Assessment);
        if (charts.Count != 0)
        {
            yield return new Block.Heading("filters");
            yield return new Block.Paragraph(
                "Each line is against its own largest gain. Ideal are the fitted parts with ideal op-amps and the digital filters as designed; "
                + "as built are the same parts with their op-amps and the coefficients as rounded to the word. Electrodes, coupling capacitors and the converter's own filter are in the plot of the whole path.");
        }

        foreach ((string title, Picture drawing, IReadOnlyList<Curve> lines) in charts)
        {
            // Differences of hundredths of a decibel are for the eye alone.
            yield return new Block.Drawing(title, drawing, ReferenceEquals(lines, sheet.Assessment.Curves.FilterDifference)
                ? null
                : Instead(lines));
        }
    }

    /// <summary>Some points of lines over the same x, for a format without drawings; null where their x differ.</summary>
    private static Block.Table? Instead(IReadOnlyList<Curve> lines)
    {
        const int Rows = 16;
        double[] x = lines[0].X;
        return lines.Any(line => line.X != x)
            ? null
            : new Block.Table(
                [new(lines[0].XUnit is "Hz" ? "frequency" : "time"), .. lines.Select(line => new Column(line.Name))],
                [
                    .. Enumerable.Range(0, Rows).Select(i => i * (x.Length - 1) / (Rows - 1))
                        .Select(at => new Row([QuantityText.Format(x[at], lines[0].XUnit), .. lines.Select(line => Point(line, at))])),
                ]);
    }

    private static string Point(Curve line, int at) =>
        double.IsFinite(line.Y[at]) ? QuantityText.Format(line.Y[at], line.YUnit.Length == 0 ? "1" : line.YUnit) : "";
}
