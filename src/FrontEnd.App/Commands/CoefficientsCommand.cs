using System.CommandLine;
using FrontEnd.Documents;
using FrontEnd.Documents.Coefficients;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend coefficients</c>: a design's digital filters as a file for a microcontroller.</summary>
internal static class CoefficientsCommand
{
    public static Command Make(Outlet outlet)
    {
        Argument<string> design = new("design") { Description = "design file, TOML or plain-number JSON" };
        Option<string> file = new("--output", "-o")
        {
            Description = $"file to write; its extension sets the format: {string.Join(", ", CoefficientFiles.Extensions)} (a C99 header with a self-test, JSON, CSV). An existing file is replaced",
            Required = true,
            HelpName = "file",
        };
        Option<bool> json = OptionValues.JsonOfFiles();
        Command command = new("coefficients",
            "Writes the coefficients of a design's digital filters in its word format and structure (digital-word, digital-form). Exit code 0: done, 2: there is nothing to write.") { design,
            file, json };
        command.SetAction(call => Run(call.GetRequiredValue(design), call.GetRequiredValue(file), call.GetValue(json), outlet));
        return command;
    }

    private static int Run(string path, string file, bool json, Outlet outlet)
    {
        if (!CoefficientFiles.Knows(file))
        {
            outlet.Tell(WritingMessages.CoefficientFormat(file, CoefficientFiles.Extensions));
            return ExitCode.Unusable;
        }

        if (DesignInput.Usable(path, outlet) is not { } document)
        {
            return ExitCode.Unusable;
        }

        if (CoefficientWriting.Write(file, document.Design, path) is { } problem)
        {
            outlet.Tell(problem);
            return ExitCode.Unusable;
        }

        outlet.Wrote("coefficients", json, [file]);
        return ExitCode.Met;
    }
}
