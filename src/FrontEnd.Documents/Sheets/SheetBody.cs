using System.Globalization;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Findings;
using FrontEnd.Identity;
using FrontEnd.Results;
using FrontEnd.Teaching;
using FrontEnd.Text;

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
    public sealed record Drawing(string Title, string Svg, Table? Instead) : Block;

    /// <summary>Drawings two by two, each with its title.</summary>
    public sealed record Drawings(IReadOnlyList<Drawing> All) : Block;
}

/// <summary>What stands on a sheet's pages, without its form: bench first, then budgets, then parts and settings, then what it rests on and how to read it.</summary>
internal static class SheetBody
{
    private const int NextSteps = 3;

    public static IReadOnlyList<IReadOnlyList<Block>> Pages(Sheet sheet)
    {
        List<List<Block>> pages =
        [
            [.. Bench(sheet)], [.. BudgetsAndPlots(sheet)], [.. FiltersAlone(sheet)], [.. sheet.Spread is { } spread ? SpreadBlocks.Of(spread) : []], [.. PartsAndSettings(sheet)], [.. Grounds(sheet)],
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
        yield return new Block.Items([.. Glossary.UsedIn(texts).Select(term => $"{Glossary.Head(term)}: {term.Meaning}")], Small: true, AsWritten: true);
        yield return new Block.Drawings([.. diagrams.Select(diagram => new Block.Drawing(diagram.Title, DiagramSvg.Of(diagram, assessment), null))]);
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
    }

    private static Block.Drawing Chain(Assessment assessment) => new(
        "", ChainDrawing.Of(assessment),
        new Block.Table(
            [new("block", true), new("what it is", true), new("headroom"), new("levels at its output", true)],
            [.. ChainBlocks.Of(assessment).Select(block => new Row([block.Name, string.Join(", ", block.Lines), block.Headroom, string.Join(", ", block.Levels)]))]));

    /// <summary>The changes that help failing and marginal verdicts most: what protects the wearer first, then what helps several at once, then the worst.</summary>
    private static Block Next(Assessment assessment)
    {
        string[] steps =
        [
            .. assessment.Judged.Where(result => result.Verdict.Kind is VerdictKind.Fail or VerdictKind.Marginal && result.Verdict.Improvement is not null)
                .GroupBy(result => result.Verdict.Improvement!.Change, StringComparer.Ordinal)
                .OrderByDescending(group => group.Any(result => result.Verdict.Kind == VerdictKind.Fail && ResultIds.Safety.All.Has(result.Id))).ThenByDescending(group => group.Count()).Take(NextSteps)
                .Select(group => $"{group.Key}. " + string.Join(" ", group.Select(result =>
                    $"{Capital(result.Name)}: from {Wording.Value(result)} to {(result.Verdict.Improvement!.After is { } after ? QuantityText.Format(after) : "no limit found")}, {Wording.Word(result.Verdict.Improvement.Verdict)}"
                    + (result.Verdict.Improvement.SideEffect is { } side ? $" (but {side})." : ".")))),
        ];
        return steps.Length > 0
            ? new Block.Items(steps, Numbered: true)
            : new Block.Paragraph(assessment.AllRequirementsMet ? "Every requirement that is judged is met with room to spare. Build it, and go through the bench tests at the end of this sheet." : "No single change was found that helps; the budgets show what each figure is made of.");
    }

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    private static IEnumerable<Block> BudgetsAndPlots(Sheet sheet)
    {
        ILookup<string, BudgetTable> tables = BudgetTables.Of(sheet.Assessment).ToLookup(table => table.Title, StringComparer.Ordinal);
        yield return new Block.Pair([.. Tables("noise by source").Select(block => block is Block.Table table ? WithoutTiny(table) : block)], [.. Tables("mains at the electrodes"), .. Tables("mains harmonics")]);
        foreach ((string title, string drawing) in Charts.Of(sheet.Assessment))
        {
            yield return new Block.Drawing(title, drawing, null);
        }

        IEnumerable<Block> Tables(string title) => tables[title].SelectMany(Titled);
    }

    private static IEnumerable<Block> Titled(BudgetTable table) => [new Block.Heading(table.Title), new Block.Table(table.Columns, table.Rows, Small: true)];

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
        IReadOnlyList<(string Title, string Drawing, IReadOnlyList<Curve> Lines)> charts = Charts.OfFilters(sheet.Assessment);
        if (charts.Count != 0)
        {
            yield return new Block.Heading("filters");
            yield return new Block.Paragraph(
                "Each line is against its own largest gain. Ideal are the fitted parts with ideal op-amps and the digital filters as designed; as built are the same parts with their op-amps and the coefficients as rounded to the word. Electrodes, coupling capacitors and the converter's own filter are in the plot of the whole path.");
        }

        foreach ((string title, string drawing, IReadOnlyList<Curve> lines) in charts)
        {
            // Differences of hundredths of a decibel are for the eye alone.
            yield return new Block.Drawing(title, drawing, ReferenceEquals(lines, sheet.Assessment.Curves.FilterDifference) ? null : Instead(lines));
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
                    .. Enumerable.Range(0, Rows).Select(i => i * (x.Length - 1) / (Rows - 1)).Select(at => new Row(
                        [QuantityText.Format(x[at], lines[0].XUnit), .. lines.Select(line => double.IsFinite(line.Y[at]) ? QuantityText.Format(line.Y[at], line.YUnit.Length == 0 ? "1" : line.YUnit) : "")])),
                ]);
    }

    private static IEnumerable<Block> PartsAndSettings(Sheet sheet)
    {
        Design design = sheet.Design;
        yield return new Block.Heading($"parts, for {design.Channels} channel{(design.Channels == 1 ? "" : "s")}");
        yield return new Block.Table(
            [new("part", true), new("value"), new("tolerance"), new("preferred value", true), new("per channel"), new("once")],
            [.. PartsList.Of(design).Select(part => new Row([part.Where, part.Value, part.Tolerance, part.Preferred, part.PerChannel == 0 ? "" : $"{part.PerChannel}", part.Once == 0 ? "" : $"{part.Once}"]))],
            Small: true);
        ILookup<string, BudgetTable> tables = BudgetTables.Of(sheet.Assessment).ToLookup(table => table.Title, StringComparer.Ordinal);
        yield return new Block.Pair([.. tables["converter"].SelectMany(Titled)], [.. tables["filters and delays"].SelectMany(Titled).Select(WithoutNames)]);
        if (design.Digital.Count > 0)
        {
            yield return new Block.Heading($"digital filters: second-order sections at {QuantityText.FormatPart(design.Converter.Rate)}, a0 = 1, in this order");
            yield return new Block.Paragraph($"y[n] = b0·x[n] + b1·x[n−1] + b2·x[n−2] − a1·y[n−1] − a2·y[n−2] for each section, {Arithmetic(design)}.");
            yield return new Block.Table([new("filter", true), new("b0"), new("b1"), new("b2"), new("a1"), new("a2")], [.. Sections(design)], Small: true);
        }

        yield return new Block.Heading("settings given");
        yield return new Block.Items([.. Settings(sheet)], Small: true);
    }

    /// <summary>The ids of filter figures say what they are; the names beside them would say it again.</summary>
    private static Block WithoutNames(Block block) => block is Block.Table table ? table with { Columns = [.. table.Columns.Take(2)], Rows = [.. table.Rows.Select(row => row with { Cells = [.. row.Cells.Take(2)] })] } : block;

    /// <summary>One line for each table of the design file.</summary>
    private static IEnumerable<string> Settings(Sheet sheet) => sheet.Document.Origins
        .Where(origin => origin.Kind != OriginKind.Default && origin.Key is not ("name" or "purpose" or "caution") && !origin.Key.EndsWith(".rows", StringComparison.Ordinal))
        .GroupBy(origin => origin.Key.LastIndexOf('.') is var dot and > 0 ? origin.Key[..dot] : "design", StringComparer.Ordinal)
        .Select(group => (group.Key, Text: string.Join(", ", group.Select(origin => $"{origin.Key[(origin.Key.LastIndexOf('.') + 1)..]} {origin.Text}{(origin.Kind == OriginKind.Card ? $" [{origin.Source}]" : "")}"))))
        .GroupBy(line => line.Text, StringComparer.Ordinal)
        .Select(same => string.Join(" and ", same.Select(line => line.Key)) + ": " + same.Key);

    private static string Arithmetic(Design design) => design.Arithmetic.Word switch
    {
        DigitalWord.Double => "in double precision",
        DigitalWord.Single => $"in single precision, {DigitalArithmetic.FormOf(design.Arithmetic.Form)}, coefficients as rounded",
        _ => $"in {DigitalArithmetic.WordOf(design.Arithmetic.Word)} words, {DigitalArithmetic.FormOf(design.Arithmetic.Form)}, {design.Arithmetic.StateFraction} bits below the LSB in the states, coefficients as rounded",
    };

    private static IEnumerable<Row> Sections(Design design)
    {
        DigitalChain chain = new(design.Digital, design.Converter.Rate, design.Arithmetic);
        for (int filter = 0; filter < chain.Filters.Count; filter++)
        {
            foreach (Filters.Biquad section in chain.Filters[filter].Sections)
            {
                yield return new Row([design.Digital[filter].Name, .. new[] { section.B0, section.B1, section.B2, section.A1, section.A2 }.Select(number => number.ToString("R", CultureInfo.InvariantCulture))]);
            }
        }
    }

    private static IEnumerable<Block> Grounds(Sheet sheet)
    {
        yield return new Block.Heading("bench tests, and the reading to expect");
        yield return new Block.Table([new("test", true), new("expect", true), new("figure", true)], [.. BenchTests.Of(sheet.Assessment).Select(test => new Row([test.What, test.Expect, test.Id]))], Small: true);
        if (sheet.Findings.Count > 0)
        {
            yield return new Block.Heading("what to know when reading the figures");
            yield return new Block.Items([.. sheet.Findings.Select(Told)], Small: true);
        }

        string[] assumptions = [.. sheet.Assessment.Results.Select(result => result.Hand).OfType<HandFigure>().Where(hand => hand.Assumption is not null && hand.Difference != 0).Select(hand => hand.Assumption!).Distinct(StringComparer.Ordinal)];
        yield return new Block.Heading("assumptions");
        yield return new Block.Items(
        [
            "Figures are of the nominal design in its stated worst case; parts are linear, op-amps have one pole, electrodes are one or two RC pairs.",
            $"Peak-to-peak noise is {Quantities.TradeConstants.NoisePeakToPeak} times the rms; mains figures add up with the worst signs.",
            .. assumptions.Length == 0 ? (string[])[] : ["Where a figure by hand differs from the network's: " + string.Join("; ", assumptions) + "."],
        ],
            Small: true);
        yield return new Block.Heading("defaults used, by their source");
        yield return new Block.Items(
            [.. DefaultUsed.Of(sheet).GroupBy(one => one.Source, StringComparer.Ordinal).Select(group => $"{group.Key}: " + string.Join(", ", group.Select(one => one.Value.Length == 0 ? one.Key : $"{one.Key} {one.Value}")))], Small: true);
        yield return new Block.Heading("sources of the equations and limits");
        IEnumerable<SourceRef> sources = sheet.Assessment.Results.SelectMany(result => new[] { result.Equation.Source, result.Hand?.Source, result.Verdict.LimitSource }).OfType<SourceRef>();
        yield return new Block.Items([.. sources.Select(SourceList.Of).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)], Small: true);
    }

    private static string Told(Finding finding) =>
        finding.Message + (finding.Note is null ? "" : $"; {finding.Note}") + (finding.Help is null ? "." : $". To do: {finding.Help}.") + $" [{finding.Code}]";
}
