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
        Option<int> take = new("--take") { Description = "number in the list of the design to write, from 1", DefaultValueFactory = _ => 1 };
        Option<bool> json = OptionValues.Json();
        Command command = new("size",
            "Searches for complete designs that meet requirements. Exit code 0: found, 1: none meets them all, 2: an input cannot be used.") { requirements,
            asBuilt, output, take, json };
        command.SetAction(call =>
            (call.GetValue(requirements), call.GetValue(asBuilt)) switch
            {
                ({ } path, null) => Run(path, call.GetValue(output), call.GetValue(take), call.GetValue(json), outlet),
                (null, { } design) => AsBuilt(design, call.GetValue(output), call.GetValue(json), outlet),
                _ => Unusable("size takes either a requirements file or --as-built with a design", outlet),
            });
        return command;
    }

    private static int Run(string path, string? output, int take, bool json, Outlet outlet)
    {
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

        outlet.Results.Write(json ? AnswerJson.Of(request, outcome, findings) : SizeText.Of(request, outcome));
        if (outcome.Front.Count == 0)
        {
            outlet.Tell(SizingMessages.Nothing(path));
            return ExitCode.NotMet;
        }

        return output is null ? ExitCode.Met : Write(request, outcome, output, take, outlet);
    }

    private static int Unusable(string message, Outlet outlet)
    {
        outlet.Tell(CallMessages.Call(message, "frontend size"));
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
        outlet.Results.Write(json ? AnswerJson.Of(built) : AsBuiltText.Page(built));
        outlet.Tell(built.Built.Findings.Select(finding => finding with { File = path }));
        if (output is null)
        {
            return ExitCode.Met;
        }

        TakenOver taken = Edits.TakeOver(document, built.Built.Design);
        if ((taken.Finding ?? TextFiles.WriteAtomically(output, taken.Document.Text)) is { } problem)
        {
            outlet.Tell(problem);
            return ExitCode.Unusable;
        }

        outlet.Messages.WriteLine($"wrote the design as it can be bought to {output}; evaluate it with `frontend check {output}`");
        return ExitCode.Met;
    }

    private static int Write(SizingRequest request, SizingOutcome outcome, string output, int take, Outlet outlet)
    {
        if (take < 1 || outcome.Front.Count < take)
        {
            outlet.Tell(CallMessages.Call($"--take is {take}, but the designs are 1 to {outcome.Front.Count}", "frontend size"));
            return ExitCode.Unusable;
        }

        if (TextFiles.WriteAtomically(output, DesignWriter.ForFile(output, outcome.Front[take - 1].Design, request.Stated)) is { } problem)
        {
            outlet.Tell(problem);
            return ExitCode.Unusable;
        }

        outlet.Messages.WriteLine($"wrote design {take} to {output}; evaluate it with `frontend check {output}`");
        return ExitCode.Met;
    }
}
