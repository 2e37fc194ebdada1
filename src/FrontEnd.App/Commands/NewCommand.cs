using System.CommandLine;
using FrontEnd.Documents;
using FrontEnd.Documents.Files;
using FrontEnd.Findings;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend new</c>: a design file to start from.</summary>
internal static class NewCommand
{
    public static Command Make(Outlet outlet)
    {
        Argument<string> file = new("file") { Description = "the file to write, TOML; it must not exist" };
        Command command = new("new", "Writes the starter design, commented line by line. Never writes over a file.") { file };
        command.SetAction(call => Run(call.GetRequiredValue(file), outlet));
        return command;
    }

    private static int Run(string path, Outlet outlet)
    {
        Finding? problem = File.Exists(path) ? CallMessages.Exists(path) : TextFiles.WriteAtomically(path, DesignDocument.StarterText);
        if (problem is not null)
        {
            outlet.Tell(problem);
            return ExitCode.Unusable;
        }

        outlet.Messages.WriteLine($"wrote {path}; `frontend check {path}` works it out");
        return ExitCode.Met;
    }
}
