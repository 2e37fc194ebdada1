using System.Globalization;
using FrontEnd.Building;
using FrontEnd.Citations;
using FrontEnd.Digital;
using FrontEnd.Documents.Drawing;
using FrontEnd.Documents.Reading;
using FrontEnd.Teaching;

namespace FrontEnd.Documents.Sheets;

/// <summary>What a sheet has behind its pages where it is asked for: filters by themselves, their coefficients, further figures and tests, what
/// was set, left to defaults and assumed, sources, terms and theory drawings.</summary>
internal static class SheetAppendix
{
    /// <summary>A setting with more digits is no typed one.</summary>
    private const int MostDigits = 10;

    /// <param name="sheet">The sheet.</param>
    /// <param name="before">What stands on the pages before it: the terms used there are explained here.</param>
    public static IEnumerable<SheetPage> Of(Sheet sheet, IReadOnlyList<Block> before)
    {
        SheetPage[] pages =
        [
            new("appendix: filters", [.. FiltersAlone(sheet), .. Coefficients(sheet.Design)]),
            new("appendix: further figures", [.. Figures(sheet.Assessment)]),
            new("appendix: further bench tests", [.. BenchBlocks.Further(sheet)]),
            new("appendix: settings, defaults and sources", [.. Settings(sheet), .. Grounds(sheet)]),
        ];
        return [.. pages, new("appendix: terms and drawings", [.. Reading(sheet.Assessment, [.. before, .. pages.SelectMany(page => page.Blocks)])])];
    }

    private static IEnumerable<Block> Figures(Assessment assessment)
    {
        ILookup<string, BudgetTable> tables = BudgetTables.Of(assessment).ToLookup(table => table.Title, StringComparer.Ordinal);
        yield return new Block.Pair(
            [.. tables[BudgetTables.BeforeARecording].SelectMany(SheetBody.Titled), .. tables["converter"].SelectMany(SheetBody.Titled), .. tables["mains harmonics"].SelectMany(SheetBody.Titled)],
            [.. tables["filters and delays"].SelectMany(SheetBody.Titled).Select(WithoutNames)]);
        if (Charts.Landings(assessment) is var (title, drawing))
        {
            yield return new Block.Drawing(title, drawing, null);
        }
    }

    /// <summary>The ids of filter figures say what they are; the names beside them would say it again.</summary>
    private static Block WithoutNames(Block block) => block is Block.Table table
        ? table with { Columns = [.. table.Columns.Take(2)],
            Rows = [.. table.Rows.Select(row => row with { Cells = [.. row.Cells.Take(2)] })] }
        : block;

    /// <summary>What the anti-alias sections and the digital filters do by themselves; nothing for a design without filters.</summary>
    private static IEnumerable<Block> FiltersAlone(Sheet sheet)
    {
        IReadOnlyList<(string Title, Picture Drawing, IReadOnlyList<Curve> Lines)> charts = Charts.OfFilters(sheet.Assessment);
        if (charts.Count != 0)
        {
            yield return new Block.Heading("filters");
            yield return new Block.Paragraph(
                "Each line is relative to its own largest gain. Ideal: the fitted parts with ideal op-amps, and the digital filters as designed; "
                + "as built: the same parts with their op-amps, and the coefficients as rounded to the word. Electrodes, coupling capacitors and the converter's own filter are in the plot of the whole path.");
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

    private static IEnumerable<Block> Coefficients(Design design)
    {
        if (design.Digital.Count == 0)
        {
            yield break;
        }

        int digits = Digits(design.Arithmetic.Word);
        yield return new Block.Heading($"digital filters: second-order sections at {QuantityText.FormatPart(design.Converter.Rate)}, a0 = 1, in this order");
        yield return new Block.Paragraph($"y[n] = b0·x[n] + b1·x[n−1] + b2·x[n−2] − a1·y[n−1] − a2·y[n−2] for each section, {Arithmetic(design)}. Shown to {digits} digits; the exact ones: `frontend coefficients`.");
        yield return new Block.Table([new("filter", true), new("b0"), new("b1"), new("b2"), new("a1"), new("a2")],
            [.. Sections(design, digits)], Small: true);
    }

    /// <summary>Digits that tell a word's neighbours apart; of a double those that a reader can compare by eye.</summary>
    private static int Digits(DigitalWord word) => word switch
    {
        DigitalWord.Q15 => 6,
        DigitalWord.Q31 => 11,
        _ => 9,
    };

    private static IEnumerable<Row> Sections(Design design, int digits)
    {
        foreach (ProgrammedFilter filter in ProgrammedFilter.AllOf(design))
        {
            foreach (Filters.Biquad section in filter.Sections)
            {
                double[] numbers = [section.B0, section.B1, section.B2, section.A1, section.A2];
                yield return new Row([filter.Name, .. numbers.Select(number => number.ToString($"G{digits}", CultureInfo.InvariantCulture))]);
            }
        }
    }

    private static IEnumerable<Block> Settings(Sheet sheet)
    {
        yield return new Block.Heading("settings given");
        yield return new Block.Items([.. Given(sheet)], Small: true);
    }

    /// <summary>One line for each table of the design file.</summary>
    private static IEnumerable<string> Given(Sheet sheet) => sheet.Document.Origins
        .Where(origin => origin.Kind != OriginKind.Default)
        .Where(origin => origin.Key is not ("name" or "purpose" or "caution") && !origin.Key.EndsWith(".rows", StringComparison.Ordinal))
        .GroupBy(origin => origin.Key.LastIndexOf('.') is var dot and > 0 ? origin.Key[..dot] : "design", StringComparer.Ordinal)
        .Select(group => (group.Key, Text: string.Join(", ", group.Select(Set))))
        .GroupBy(line => line.Text, StringComparer.Ordinal)
        .Select(same => string.Join(" and ", same.Select(line => line.Key)) + ": " + same.Key);

    private static string Set(FieldOrigin origin) =>
        $"{origin.Key[(origin.Key.LastIndexOf('.') + 1)..]} {Short(origin.Text)}{(origin.Kind == OriginKind.Card ? $" [{origin.Source}]" : "")}";

    /// <summary>The digits that a number is written with, six of those that a card's figure has been worked out to.</summary>
    private static string Short(string text) => string.Join(' ', text.Split(' ').Select(word =>
        MostDigits < word.Count(char.IsAsciiDigit) && double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out double number)
            ? number.ToString("G6", CultureInfo.InvariantCulture) : word));

    private static string Arithmetic(Design design) => design.Arithmetic.Word switch
    {
        DigitalWord.Double => "in double precision",
        DigitalWord.Single => $"in single precision, {DigitalArithmetic.FormOf(design.Arithmetic.Form)}, coefficients as rounded",
        _ => $"in {DigitalArithmetic.WordOf(design.Arithmetic.Word)} words, {DigitalArithmetic.FormOf(design.Arithmetic.Form)}, "
            + $"{design.Arithmetic.StateFraction} bits below the LSB in the states, coefficients as rounded",
    };

    private static IEnumerable<Block> Grounds(Sheet sheet)
    {
        string[] assumptions =
        [
            .. sheet.Assessment.Results.Select(result => result.Hand).OfType<HandFigure>().Where(hand => hand.Difference != 0)
                .Select(hand => hand.Assumption).OfType<string>().Distinct(StringComparer.Ordinal),
        ];
        yield return new Block.Heading("assumptions");
        yield return new Block.Items(
        [
            "Figures are of the nominal design in its stated worst case; parts are linear, op-amps have one pole, electrodes are one or two RC pairs.",
            $"Peak-to-peak noise is {TradeConstants.NoisePeakToPeak} times the rms; mains figures are added with the worst signs.",
            .. assumptions.Length == 0
                ? (string[])[]
                : ["Where a figure by hand differs from the network's: " + string.Join("; ", assumptions) + "."],
        ],
            Small: true);
        yield return new Block.Heading("defaults used, by their source");
        yield return new Block.Items([.. DefaultUsed.BySource(sheet).Select(one => $"{one.Source}: {one.Texts}")], Small: true);
        yield return new Block.Heading("sources of the equations and limits");
        IEnumerable<SourceRef> sources = sheet.Assessment.Results
            .SelectMany(result => new[] { result.Equation.Source, result.Hand?.Source, result.Verdict.LimitSource }).OfType<SourceRef>();
        yield return new Block.Items([.. sources.Select(SourceList.Of).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)],
            Small: true);
    }

    /// <summary>For whoever learns with the sheet: pictures of what stands behind the figures, and the terms used.</summary>
    private static IEnumerable<Block> Reading(Assessment assessment, IReadOnlyList<Block> rest)
    {
        IReadOnlyList<Diagram> diagrams = Diagrams.Of(assessment);
        yield return new Block.Heading("terms and symbols on this sheet");
        IEnumerable<string> texts = SheetBody.Texts(rest).Concat(diagrams.SelectMany(diagram => diagram.Lines(assessment)));
        yield return new Block.Items([.. Glossary.UsedIn(texts).Select(term => $"{Glossary.Head(term)}: {term.Meaning}")], Small: true,
            AsWritten: true);
        yield return new Block.Drawings([.. diagrams.Select(diagram =>
            new Block.Drawing(diagram.Title, DiagramDrawing.Of(diagram, assessment), null))]);
    }
}
