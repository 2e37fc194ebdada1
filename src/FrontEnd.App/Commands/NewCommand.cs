using System.CommandLine;
using FrontEnd.Documents;
using FrontEnd.Documents.Files;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend new</c>: a design file to start from.</summary>
internal static class NewCommand
{
    public static Command Make(Outlet outlet)
    {
        Argument<string> file = new("file") { Description = "the file to write, TOML, or JSON where its name ends in .json; it must not exist" };
        Command command = new("new", "Writes the starter design: TOML commented line by line, or JSON in plain SI numbers. Never writes over a file.") { file };
        command.SetAction(call => Run(call.GetRequiredValue(file), outlet));
        return command;
    }

    private static int Run(string path, Outlet outlet)
    {
        Finding? problem = File.Exists(path) ? CallMessages.Exists(path) : TextFiles.WriteAtomically(path, DesignDocument.Starter(DesignDocument.FormatOf(path, "")));
        if (problem is not null)
        {
            outlet.Tell(problem);
            return ExitCode.Unusable;
        }

        outlet.Messages.WriteLine($"wrote {path}; `frontend check {path}` works it out");
        return ExitCode.Met;
    }
}
