using System.CommandLine;
using FrontEnd.Documents;
using FrontEnd.Documents.Reading;
using FrontEnd.Documents.Files;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend new</c>: a design file to start from.</summary>
internal static class NewCommand
{
    public static Command Make(Outlet outlet)
    {
        Argument<string> file = new("file") { Description = "the file to write, TOML, or JSON if its name ends in .json; it must not exist" };
        Option<bool> bought = new("--bought") { Description = "a short file for a headset that somebody else built, with an invented example; whatever it does not state counts as unknown; default: the starter design" };
        Option<bool> json = OptionValues.JsonOfFiles();
        Command command = new("new", "Writes the starter design: TOML commented line by line, or JSON in plain SI numbers. Never overwrites a file.") { file, bought, json };
        command.SetAction(call => Run(call.GetRequiredValue(file), call.GetValue(bought), call.GetValue(json), outlet));
        return command;
    }

    private static int Run(string path, bool bought, bool json, Outlet outlet)
    {
        DocumentFormat format = DesignDocument.FormatOf(path, "");
        Finding? problem = File.Exists(path) ? CallMessages.Exists(path)
            : TextFiles.WriteAtomically(path, bought ? DesignDocument.Bought(format) : DesignDocument.Starter(format));
        if (problem is not null)
        {
            outlet.Tell(problem);
            return ExitCode.Unusable;
        }

        outlet.Wrote("new", json, [path], $"; evaluate it with `frontend check {path}`");
        return ExitCode.Met;
    }
}
