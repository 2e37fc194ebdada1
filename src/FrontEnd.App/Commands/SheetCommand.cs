using System.CommandLine;
using FrontEnd.Advice;
using FrontEnd.Building;
using FrontEnd.Documents;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Sheets;
using FrontEnd.Reporting;
using FrontEnd.Spread;
using FrontEnd.Unknowns;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend sheet</c>: the design sheet as files.</summary>
internal static class SheetCommand
{
    public static Command Make(Outlet outlet)
    {
        Argument<string> design = new("design") { Description = "design file, TOML or plain-number JSON" };
        Option<string[]> files = new("--output", "-o")
        {
            Description = $"file to write; its extension sets the format: {string.Join(", ", SheetFormats.Extensions)}. May be given several times; an existing file is replaced",
            HelpName = "file",
        };
        Option<string?> schematic = new("--schematic") { Description = $"file for the circuit diagram, {BoardFiles.SchematicExtension}", HelpName = "file" };
        Option<bool> headroom = new("--headroom") { Description = "with --schematic: show at each test point how far its node is from clipping" };
        Option<string?> netlist = new("--netlist") { Description = $"file for the netlist, {BoardFiles.NetlistExtension}: one row per pin", HelpName = "file" };
        Option<string?> builds = new("--builds") { Description = "number of builds: adds a page with yield, percentiles and histograms; default: no such page" };
        Option<bool> plain = new("--plain") { Description = "only one page, for a lay reader, .html, .pdf or .md; default: the whole sheet" };
        Option<bool> appendix = new("--appendix") { Description = "adds filters and their coefficients, further figures and tests, settings, defaults, sources, terms and theory drawings, .html, .pdf or .md; default: the pages for the bench alone" };
        Option<string?> day = new("--date") { Description = "date at the foot of a PDF's pages, such as 2026-11-26; default: none, so that the same design gives the same file", HelpName = "day" };
        Option<string?> prices = new("--prices") { Description = "your own table of prices, CSV: a designator, a class with its value, a card or a class, and the price of one; adds the cost of the parts and, with --builds, the cost per device that meets every requirement; default: no prices", HelpName = "file" };
        Option<string> seed = SpreadCommand.SeedOption();
        Option<bool> json = OptionValues.JsonOfFiles();
        Command command = new("sheet",
            "Writes the design sheet: verdicts and what to do next, budgets and response, parts and the bench plan; what they rest on is in the appendix.") { design,
            files, schematic, headroom, netlist, builds, seed, prices, plain, appendix, day, json };
        command.SetAction(call =>
        {
            string[] sheets = call.GetValue(files) ?? [];
            LooseFiles loose = new(call.GetValue(schematic), call.GetValue(netlist), call.GetValue(headroom));
            List<Finding> wrong = [];
            if (sheets.Length == 0 && !loose.Any)
            {
                wrong.Add(CallMessages.Call("no file to write is named", "frontend sheet", "-o names a sheet, --schematic and --netlist a file beside it"));
            }

            ulong seeded = SpreadCommand.Seed(call.GetRequiredValue(seed), wrong);
            SpreadOptions? spread = SpreadCommand.Builds(call.GetValue(builds), wrong) is { } number ? new SpreadOptions { Builds = number, Seed = seeded } : null;
            if (wrong.Count != 0)
            {
                outlet.Tell(wrong);
                return ExitCode.Unusable;
            }

            return Run(call.GetRequiredValue(design), sheets, loose, spread,
                new Asked(call.GetValue(plain), call.GetValue(appendix), call.GetValue(day), call.GetValue(prices)) { Json = call.GetValue(json) }, outlet);
        });
        return command;
    }

    /// <summary>What of a sheet is asked for.</summary>
    /// <param name="Day">As typed.</param>
    /// <param name="Prices">The file of prices.</param>
    private sealed record Asked(bool Plain, bool Appendix, string? Day, string? Prices)
    {
        public bool Json { get; init; }
    }

    /// <summary>Files beside the sheet; null for those that are not wanted.</summary>
    private sealed record LooseFiles(string? Schematic, string? Netlist, bool WithHeadroom)
    {
        public bool Any => Schematic is not null || Netlist is not null;

        public IEnumerable<string> Paths => new[] { Schematic, Netlist }.OfType<string>();

        public IEnumerable<Finding> Wrong() => new[] { (Schematic, BoardFiles.SchematicExtension), (Netlist, BoardFiles.NetlistExtension) }
            .Where(file => file.Item1 is { } path && !SheetFormats.Knows(path, [file.Item2])).Select(file => WritingMessages.Format(file.Item1!, [file.Item2]));

        public IEnumerable<(string Path, string Text)> Of(Results.Assessment assessment, Boards.Board board)
        {
            if (Schematic is { } schematic)
            {
                yield return (schematic, BoardFiles.SchematicOf(assessment, board, WithHeadroom));
            }

            if (Netlist is { } netlist)
            {
                yield return (netlist, BoardFiles.NetlistOf(assessment, board));
            }
        }
    }

    private static int Run(string path, string[] files, LooseFiles loose, SpreadOptions? spread, Asked asked, Outlet outlet)
    {
        IReadOnlyList<string> known = asked.Plain ? SheetFormats.Pages : SheetFormats.Extensions;
        Finding[] wrong = [.. files.Where(file => !SheetFormats.Knows(file, known)).Select(file => WritingMessages.Format(file, known)), .. loose.Wrong(), .. CallMessages.NamedTwice([.. files, .. loose.Paths]), .. Wrong(asked.Day, files)];
        if (wrong.Length > 0)
        {
            outlet.Tell(wrong);
            return ExitCode.Unusable;
        }

        if (DesignInput.Readable(path, outlet) is not { } document)
        {
            return ExitCode.Unusable;
        }

        // What lists parts or values, or draws builds, wants every value.
        if (document.NotAllKnown is { } open && (spread is not null || loose.Any || !Array.TrueForAll(files, file => SheetFormats.Knows(file, [.. SheetFormats.Pages, ".json"]))))
        {
            outlet.Tell(open);
            return ExitCode.Unusable;
        }

        Prices? prices = null;
        if (asked.Prices is { } priceFile)
        {
            (prices, IReadOnlyList<Finding> unreadable) = PriceTable.Read(priceFile);
            if (prices is null)
            {
                outlet.Tell(unreadable);
                return ExitCode.Unusable;
            }
        }

        Sheet sheet = SheetOf(document, asked.Plain || files.Length == 0, hasBoard: loose.Any || !asked.Plain) with { HasAppendix = asked.Appendix, Day = OptionValues.Day(asked.Day, "--date", []) };
        if (sheet.HasErrors)
        {
            outlet.Tell(sheet.Findings.Where(finding => finding.Severity == Severity.Error));
            return ExitCode.Unusable;
        }

        if (spread is not null)
        {
            if (LongWork.Spread(document.Design, spread, outlet, out int exit) is not { } result)
            {
                return exit;
            }

            sheet = sheet with { Spread = result, Board = sheet.Board is { } board ? board with { Marks = ToleranceStudy.Of(board.Board, spread) } : null };
        }

        if (sheet.Board is { } priced)
        {
            sheet = sheet with { Board = priced with { Prices = prices } };
        }

        IEnumerable<(string File, Func<Finding?> Write)> written =
        [
            .. files.Select(file => (file, (Func<Finding?>)(() => SheetFormats.WriteFile(sheet, file, outlet.Tell)))),
            .. (sheet.Board is { } given ? loose.Of(sheet.Assessment, given.Board) : []).Select(one => (one.Path, (Func<Finding?>)(() => TextFiles.WriteAtomically(one.Path, one.Text)))),
        ];
        List<string> done = [];
        foreach ((string file, Func<Finding?> write) in written)
        {
            if (write() is { } problem)
            {
                outlet.Tell(problem);
                return ExitCode.Unusable;
            }

            done.Add(file);
            if (!asked.Json)
            {
                outlet.Wrote("sheet", json: false, [file]);
            }
        }

        if (asked.Json)
        {
            outlet.Wrote("sheet", json: true, done);
        }

        // A sheet has them on its first page; a table or a drawing has no place for what cannot be built as stated.
        if (sheet.Board is { } built && Array.TrueForAll(files, file => SheetFormats.Knows(file, [".csv"])))
        {
            outlet.Tell(built.Board.Findings.Select(finding => finding with { File = path }));
        }

        return ExitCode.Met;
    }

    /// <param name="document">The design.</param>
    /// <param name="plain">True where neither advice nor bench plan is shown.</param>
    /// <param name="hasBoard">True where the board is asked for.</param>
    private static Sheet SheetOf(DesignDocument document, bool plain, bool hasBoard)
    {
        if (document.NotAllKnown is not null)
        {
            return new Sheet(document, PartlyKnownEvaluator.Evaluate(document.PartlyKnown!)) { PlainOnly = plain };
        }

        Results.Assessment assessment = Evaluator.Evaluate(document.Design);
        return plain || !assessment.HasFigures
            ? new Sheet(document, assessment) { PlainOnly = plain, Board = hasBoard && assessment.HasFigures ? BoardAnswers.Of(assessment) : null }
            : new Sheet(document, Advisor.Advise(assessment)).ForBuilding();
    }

    private static List<Finding> Wrong(string? day, string[] files)
    {
        List<Finding> wrong = [];
        if (OptionValues.Day(day, "--date", wrong) is not null && !Array.Exists(files, file => SheetFormats.Knows(file, [SheetFormats.Printed])))
        {
            wrong.Add(CallMessages.SaysNothing("--date", "a file that is not a PDF"));
        }

        return wrong;
    }
}
