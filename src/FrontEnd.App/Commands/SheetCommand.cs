using System.CommandLine;
using FrontEnd.Advice;
using FrontEnd.Documents;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Sheets;
using FrontEnd.Reporting;
using FrontEnd.Spread;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend sheet</c>: the design sheet as files.</summary>
internal static class SheetCommand
{
    public static Command Make(Outlet outlet)
    {
        Argument<string> design = new("design") { Description = "design file, TOML or plain-number JSON" };
        Option<string[]> files = new("--output", "-o")
        {
            Description = $"file to write; its extension decides what: {string.Join(", ", SheetFormats.Extensions)}. May be given several times; a file that exists is replaced",
            Required = true,
            HelpName = "file",
        };
        Option<int?> builds = new("--builds") { Description = "devices to draw: yield, percentiles and histograms on a page of their own; default: no such page" };
        Option<ulong> seed = SpreadCommand.SeedOption();
        Command command = new("sheet",
            "Writes the design sheet: verdicts, budgets, plots, parts, filter coefficients, sources and bench tests.") { design, files,
            builds, seed };
        command.SetAction(call =>
            Run(call.GetRequiredValue(design), call.GetRequiredValue(files), call.GetValue(builds) is { } number
                ? new SpreadOptions { Builds = number, Seed = call.GetValue(seed) }
                : null, outlet));
        return command;
    }

    private static int Run(string path, string[] files, SpreadOptions? spread, Outlet outlet)
    {
        Finding[] wrong = [.. files.Where(file =>
            !SheetFormats.Knows(file)).Select(file => WritingMessages.Format(file, SheetFormats.Extensions)), .. Twice(files)];
        if (wrong.Length > 0)
        {
            outlet.Tell(wrong);
            return ExitCode.Unusable;
        }

        if ((spread is not null && !SpreadCommand.IsNumber(spread.Builds, "sheet", outlet))
            || DesignInput.Usable(path, outlet) is not { } document)
        {
            return ExitCode.Unusable;
        }

        Sheet sheet = new(document, Advisor.Advise(Evaluator.Evaluate(document.Design)))
        {
            Bench = Bench.BenchPlan.Of(document.Design).Readings,
        };
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

            sheet = sheet with { Spread = result };
        }

        foreach (string file in files)
        {
            if (TextFiles.WriteAtomically(file, SheetFormats.Write(sheet, file)) is { } problem)
            {
                outlet.Tell(problem);
                return ExitCode.Unusable;
            }

            outlet.Messages.WriteLine($"wrote {file}");
        }

        return ExitCode.Met;
    }

    private static IEnumerable<Finding> Twice(string[] files) =>
        files.GroupBy(Path.GetFullPath, StringComparer.Ordinal).Where(group =>
            group.Count() > 1).Select(group => CallMessages.Twice(group.First()));
}
