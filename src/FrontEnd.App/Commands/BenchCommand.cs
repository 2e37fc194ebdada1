using System.CommandLine;
using FrontEnd.Bench;
using FrontEnd.Documents.Recordings;
using FrontEnd.Documents.Sheets;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend bench</c>: what a built board should read, and whether it does.</summary>
internal static class BenchCommand
{
    public static Command Make(Outlet outlet)
    {
        Argument<string> design = new("design") { Description = "design file, TOML or plain-number JSON" };
        Option<string?> measured = new("--measured") { Description = "readings (a .csv that begins with `test,reading`) or a recording (.csv of samples, .edf, .bdf). Samples of a .csv are in volts unless the column's heading (`ch1 [µV]`, `ch1_uV`) or a line `# unit: µV` says nV, µV, mV or counts; volts are at the electrodes (samples divided by the gain), counts are converter steps. A column headed time, t or seconds gives the rate and is never taken for the signal. Default: list the tests" };
        Option<string?> test = new("--test") { Description = "the test that was recorded, such as shorted; required for a recording" };
        Option<string?> channel = new("--channel") { Description = "name or number of the recording's channel; default: the first" };
        Option<bool> raw = new("--raw") { Description = "the recording was made with the digital filters off; default: on where the test has them on" };
        Option<string?> fixture = new("--fixture") { Description = "for a design with unknown values: the fixture of the recording, `shorted` or the resistor in every lead, such as 10k; default: that of the test named by --test" };
        Option<string?> narrow = new("--narrow") { Description = "for a design with unknown values: write the design to this file, its ranges narrowed to the draws that agree with the recording; comments are kept; an existing file is overwritten only if it is the design itself; default: only show the ranges" };
        Option<bool> json = OptionValues.Json();
        Command command = new("bench",
            "Lists the tests of a built board with the readings it should give, or compares readings or a recording with them. For a design with unknown values, a recording on a fixture narrows their ranges. Every test is done on a fixture, with nobody connected. Exit code 0: all agree, 1: some do not, 2: an input cannot be used.") { design,
            measured, test, channel, raw, fixture, narrow, json };
        command.SetAction(call => Run(call.GetRequiredValue(design),
            new BenchAsked(call.GetValue(measured), call.GetValue(test), call.GetValue(channel), call.GetValue(raw), call.GetValue(fixture), call.GetValue(narrow), call.GetValue(json)),
            outlet));
        return command;
    }

    private static int Run(string path, BenchAsked asked, Outlet outlet)
    {
        if (DesignInput.Readable(path, outlet) is not { } document)
        {
            return ExitCode.Unusable;
        }

        if (asked.Measured is null && (asked.Narrow is not null || asked.Fixture is not null))
        {
            outlet.Tell(CallMessages.OptionAlone(asked.Narrow is not null ? "--narrow" : "--fixture", "--measured"));
            return ExitCode.Unusable;
        }

        if (document.NotAllKnown is not null)
        {
            if (asked.Measured is not null)
            {
                return BenchNarrowing.Run(path, document, asked, outlet);
            }

            RecordingPlan plan = RecordingPlan.Of(document.PartlyKnown!, document.NotKnown);
            outlet.Results.Write(asked.Json ? AnswerJson.Of(plan) : RecordingPlanText.Of(plan, path));
            return ExitCode.Met;
        }

        if (asked.Narrow is not null || asked.Fixture is not null)
        {
            outlet.Tell(Messages.AllIsKnown(asked.Narrow is not null ? "--narrow" : "--fixture"));
            return ExitCode.Unusable;
        }

        return Known(document, asked, outlet);
    }

    private static int Known(Documents.DesignDocument document, BenchAsked asked, Outlet outlet)
    {
        (string? measured, bool json) = (asked.Measured, asked.Json);
        (IReadOnlyList<BenchReading> plan, IReadOnlyList<Finding> findings) = BenchPlan.Of(document.Design);
        List<Finding> problems = [.. findings.Select(document.Placed)];
        List<BenchResult> results = [];
        if (measured is not null && problems.Count == 0)
        {
            if (!Compare(measured, plan, (asked.Test, asked.Channel, asked.Raw), results, problems, outlet))
            {
                return ExitCode.Interrupted;
            }
        }

        if (json)
        {
            outlet.Results.Write(AnswerJson.Of(document.Design, plan, results, problems));
        }
        else if (measured is null)
        {
            outlet.Results.Write(BenchText.Of(document.Design, plan));
        }
        else if (results.Count != 0)
        {
            outlet.Results.Write(BenchText.Of(document.Design, results));
        }

        outlet.Tell(problems);
        return problems.Count != 0
            ? ExitCode.Unusable
            : results.Exists(result => result.Verdict == VerdictKind.Fail)
            ? ExitCode.NotMet
            : ExitCode.Met;
    }

    /// <summary>Adds the results and what is wrong; false where it was cancelled, and the outlet has been told.</summary>
    private static bool Compare(string path, IReadOnlyList<BenchReading> plan, (string? Test, string? Channel, bool Raw) asked,
        List<BenchResult> results, List<Finding> problems, Outlet outlet)
    {
        using MeasuredFile? file = MeasuredFile.Open(path, out Finding? finding);
        if (file is null)
        {
            problems.Add(finding!);
            return true;
        }

        if (file.HoldsReadings)
        {
            Readings(file, plan, results, problems);
            return true;
        }

        return LongWork.Recording(file, outlet, (progress, cancellation) =>
        {
            (BenchResult? result, IReadOnlyList<Finding> findings) = file.Compare(plan, asked.Test, asked.Channel, asked.Raw, progress, cancellation);
            results.AddRange(new[] { result }.OfType<BenchResult>());
            problems.AddRange(findings.Select(problem => problem with { File = problem.File ?? path }));
        });
    }

    private static void Readings(MeasuredFile file, IReadOnlyList<BenchReading> plan, List<BenchResult> results, List<Finding> problems)
    {
        (IReadOnlyList<(BenchReading Test, IQuantity Reading)> readings, IReadOnlyList<Finding> findings) = file.Readings(plan);
        problems.AddRange(findings);
        foreach ((BenchReading test, IQuantity reading) in readings)
        {
            (BenchResult? result, Finding? problem) = BenchComparison.Reading(test, reading);
            if (result is not null)
            {
                results.Add(result);
            }

            if (problem is not null)
            {
                problems.Add(problem with { File = file.Path });
            }
        }
    }
}

/// <summary>What <c>bench</c> is asked for besides the design.</summary>
internal sealed record BenchAsked(string? Measured, string? Test, string? Channel, bool Raw, string? Fixture, string? Narrow, bool Json);
