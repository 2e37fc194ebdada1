using System.CommandLine;
using FrontEnd.Documents;
using FrontEnd.Documents.Files;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend schema</c>: what an editor needs to complete and check a file while it is typed.</summary>
internal static class SchemaCommand
{
    private static readonly (string Word, Func<string> Schema)[] Kinds = [("design", DesignSchema.OfDesign), ("sizing", DesignSchema.OfSizing), ("homework", DesignSchema.OfHomework)];

    /// <summary>The kinds of files there is a schema for.</summary>
    public static IEnumerable<string> Words => Kinds.Select(one => one.Word);

    public static Command Make(Outlet outlet)
    {
        Argument<string> kind = new("kind") { Description = "of which file: design, sizing (a file of requirements) or homework", Arity = ArgumentArity.ExactlyOne };
        Option<string?> output = new("--output", "-o") { Description = "file to write to; default: the standard output", HelpName = "file" };
        Option<bool> json = new("--json") { Description = "with -o: print JSON that names the file written; without it the schema itself is printed, which is JSON; default: a line, to the messages" };
        Command command = new("schema", "Prints a JSON Schema with which an editor completes and checks a design file while it is typed.") { kind, output, json };
        command.SetAction(call => Run(call.GetValue(kind)!, call.GetValue(output), call.GetValue(json), outlet));
        return command;
    }

    private static int Run(string word, string? output, bool json, Outlet outlet)
    {
        if (Array.Find(Kinds, one => one.Word == word) is not { Schema: { } schema })
        {
            outlet.Tell(CallMessages.NoWord("schema", word, [.. Words], Nearest.Of(word, Words)));
            return ExitCode.Unusable;
        }

        if (output is null && json)
        {
            outlet.Tell(CallMessages.JsonOf("a schema that is printed", "frontend schema", "the schema itself is JSON; with -o the file written is named in JSON"));
            return ExitCode.Unusable;
        }

        if (output is null)
        {
            outlet.Results.Write(schema());
            return ExitCode.Met;
        }

        if (TextFiles.WriteAtomically(output, schema()) is { } problem)
        {
            outlet.Tell(problem);
            return ExitCode.Unusable;
        }

        outlet.Wrote("schema", json, [output], $"; a design whose first line is `#:schema ./{Path.GetFileName(output)}` is checked by it in an editor that knows schemas");
        return ExitCode.Met;
    }
}
