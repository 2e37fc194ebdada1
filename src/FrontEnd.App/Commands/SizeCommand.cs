using System.CommandLine;
using FrontEnd.Compare;
using FrontEnd.Documents;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Sheets;
using FrontEnd.Documents.Sizing;
using FrontEnd.Reporting;
using FrontEnd.Sizing;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend size</c>: complete designs from requirements.</summary>
internal static class SizeCommand
{
    public static Command Make(Outlet outlet)
    {
        Argument<string?> requirements = new("requirements") { Description = "requirements file, TOML: the keys of a design file for whatever is given, and [sizing] with battery-life and parts", Arity = ArgumentArity.ZeroOrOne };
        Option<string?> asBuilt = new("--as-built") { Description = "instead of requirements: a design file, whose values are replaced by ones that can be bought; written with -o", HelpName = "design" };
        Option<string?> output = new("--output",
            "-o") { Description = "write one of the designs found to this file, TOML, or JSON if its name ends in .json; it must not exist; default: only show them" };
        Option<string> take = new("--take") { Description = "number in the list of the design to write, from 1", DefaultValueFactory = _ => "1" };
        Option<bool> json = OptionValues.Json();
        Command command = new("size",
            "Searches for complete designs that meet requirements. Exit code 0: found, 1: none meets them all, 2: an input cannot be used.") { requirements,
            asBuilt, output, take, json };
        command.SetAction(call =>
            (call.GetValue(requirements), call.GetValue(asBuilt)) switch
            {
                ({ } path, null) => Run(path, call.GetValue(output), call.GetRequiredValue(take), call.GetValue(json), outlet),
                (null, { } design) => AsBuilt(design, call.GetValue(output), call.GetValue(json), outlet),
                var (path, _) => Unusable(CallMessages.Call(path is null ? "neither requirements nor a design are given" : "requirements and a design are given", "frontend size",
                    "it takes either a file of requirements, or --as-built with a design"), outlet),
            });
        return command;
    }

    private static int Run(string path, string? output, string taken, bool json, Outlet outlet)
    {
        List<Finding> wrong = [];
        int take = OptionValues.Count(taken, "--take", wrong) ?? 1;
        if (wrong.Count != 0)
        {
            outlet.Tell(wrong);
            return ExitCode.Unusable;
        }

        if (output is not null && File.Exists(output))
        {
            outlet.Tell(CallMessages.Exists(output));
            return ExitCode.Unusable;
        }

        (SizingRequest? request, IReadOnlyList<Finding> findings) = SizingFile.Read(path);
        outlet.Tell(findings);
        if (request is null)
        {
            return ExitCode.Unusable;
        }

        SizingOutcome outcome = Sizer.Size(request);
        if (outcome.Findings.Count != 0)
        {
            outlet.Tell(outcome.Findings.Select(finding => finding with { File = path }));
            return ExitCode.Unusable;
        }

        bool isWritten = output is not null && outcome.Front.Count != 0;
        if (isWritten && Write(request, outcome, output!, take) is { } problem)
        {
            return Unusable(problem, outlet);
        }

        string[] files = isWritten ? [output!] : [];
        outlet.Results.Write(json ? AnswerJson.Of(request, outcome, findings, files) : SizeText.Of(request, outcome));
        if (outcome.Front.Count == 0)
        {
            outlet.Tell(SizingMessages.Nothing(path));
            return ExitCode.NotMet;
        }

        if (isWritten && !json)
        {
            outlet.Messages.WriteLine($"wrote design {take} to {output}; evaluate it with `frontend check {output}`");
        }

        return ExitCode.Met;
    }

    private static int Unusable(Finding finding, Outlet outlet)
    {
        outlet.Tell(finding);
        return ExitCode.Unusable;
    }

    /// <summary>Says which values of a design become ones that can be bought and what that moves, and writes the design with them.</summary>
    private static int AsBuilt(string path, string? output, bool json, Outlet outlet)
    {
        if (output is not null && File.Exists(output))
        {
            outlet.Tell(CallMessages.Exists(output));
            return ExitCode.Unusable;
        }

        if (DesignInput.Readable(path, outlet) is not { } document)
        {
            return ExitCode.Unusable;
        }

        if (document.NotAllKnown is { } open)
        {
            outlet.Tell(open);
            return ExitCode.Unusable;
        }

        Assessment assessment = Evaluator.Evaluate(document.Design);
        if (!assessment.HasFigures)
        {
            outlet.Tell(assessment.Findings);
            return ExitCode.Unusable;
        }

        AsBuilt built = Compare.AsBuilt.Of(assessment);
        if (output is not null)
        {
            TakenOver taken = Edits.TakeOver(document, built.Built.Design);
            if ((taken.Finding ?? TextFiles.WriteAtomically(output, taken.Document.Text)) is { } problem)
            {
                return Unusable(problem, outlet);
            }
        }

        outlet.Results.Write(json ? AnswerJson.Of(built, output is null ? null : [output]) : AsBuiltText.Page(built));
        outlet.Tell(built.Built.Findings.Select(finding => finding with { File = path }));
        if (output is not null && !json)
        {
            outlet.Messages.WriteLine($"wrote the design as it can be bought to {output}; evaluate it with `frontend check {output}`");
        }

        return ExitCode.Met;
    }

    private static Finding? Write(SizingRequest request, SizingOutcome outcome, string output, int take) => take < 1 || outcome.Front.Count < take
        ? CallMessages.NotInRange("--take", $"{take}", $"1 to {outcome.Front.Count}, which were found")
        : TextFiles.WriteAtomically(output, DesignWriter.ForFile(output, outcome.Front[take - 1].Design,
            DesignWriter.Stated(request.Stated, request.Fixed, outcome.Front[take - 1].Design)));
}
