using System.CommandLine;
using System.Text;
using FrontEnd.Documents.Files;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend manual</c>: the manual page, made from the commands themselves.</summary>
internal static class ManualCommand
{
    public static Command Make(Outlet outlet)
    {
        Option<string?> folder = new("--output", "-o") { Description = "folder to write frontend.1 and a page for each command to; default: the whole page, to the standard output", HelpName = "folder" };
        Option<bool> json = new("--json") { Description = "with -o: print JSON that names the files written; default: a line, to the messages" };
        Command command = new("manual", "Prints the manual page, for man: `frontend manual | man -l -`.") { folder, json };
        command.SetAction(call => Run(call.RootCommandResult.Command, call.GetValue(folder), call.GetValue(json), outlet));
        return command;
    }

    private static int Run(Command root, string? folder, bool json, Outlet outlet)
    {
        if (folder is null && json)
        {
            outlet.Tell(CallMessages.JsonOf("the page", "frontend manual", "the page is for `man`; with -o the files written are named in JSON"));
            return ExitCode.Unusable;
        }

        if (folder is null)
        {
            outlet.Results.Write(ManualPage.Of(root));
            return ExitCode.Met;
        }

        List<(string Name, string Text)> pages = [("frontend", ManualPage.Of(root)), .. root.Subcommands.Where(one => !one.Hidden).Select(one => ($"frontend-{one.Name}", ManualPage.Of(one, ["frontend"])))];
        foreach ((string name, string text) in pages)
        {
            if (TextFiles.WriteAtomically(PlaceOf(folder, name), text) is { } problem)
            {
                outlet.Tell(problem);
                return ExitCode.Unusable;
            }
        }

        if (json)
        {
            outlet.Wrote("manual", json, [.. pages.Select(page => PlaceOf(folder, page.Name))]);
            return ExitCode.Met;
        }

        outlet.Messages.WriteLine($"wrote {pages.Count} pages to {folder}; `man -l {PlaceOf(folder, "frontend")}` shows the first");
        return ExitCode.Met;
    }

    private static string PlaceOf(string folder, string name) => Path.Combine(folder, name + ".1");
}

/// <summary>A manual page in the macros of man(7).</summary>
internal static class ManualPage
{
    /// <summary>The whole program's page.</summary>
    public static string Of(Command root)
    {
        StringBuilder page = Begin("frontend", root.Description ?? "");
        page.Append(".B frontend\n[\\fIdesign\\fR]\n.br\n.B frontend\n\\fIcommand\\fR [\\fIargument\\fR ...] [\\fIoption\\fR ...]\n");
        page.Append(".SH DESCRIPTION\n").Append(Text(root.Description ?? "")).Append("\nWithout a command it opens its screens, over a design file or over a starting design.\n");
        page.Append(".SH COMMANDS\n");
        Inner(page, root, []);
        return End(page);
    }

    /// <summary>One command's page.</summary>
    /// <param name="above">The words before its name.</param>
    public static string Of(Command command, IReadOnlyList<string> above)
    {
        StringBuilder page = Begin($"{string.Join('-', above)}-{command.Name}", command.Description ?? "");
        page.Append(".B ").Append(Text(Usage(command, above))).Append("\n.SH DESCRIPTION\n").Append(Text(command.Description ?? "")).Append('\n');
        Symbols(page, command);
        Inner(page, command, [.. above, command.Name]);
        return End(page);
    }

    /// <summary>The commands below one, each with those below it.</summary>
    /// <param name="above">The words before their names.</param>
    private static void Inner(StringBuilder page, Command command, IReadOnlyList<string> above)
    {
        foreach (Command inner in command.Subcommands.Where(one => !one.Hidden))
        {
            page.Append(".SS ").Append(Text(Usage(inner, above))).Append('\n').Append(Text(inner.Description ?? "")).Append('\n');
            Symbols(page, inner);
            Inner(page, inner, [.. above, inner.Name]);
        }
    }

    private static StringBuilder Begin(string name, string says) => new StringBuilder()
        .Append(".TH ").Append(name.ToUpperInvariant()).Append(" 1 \"\" \"frontend\" \"User Commands\"\n.SH NAME\n")
        .Append(Text(name)).Append(" \\- ").Append(Text(says.TrimEnd('.'))).Append("\n.SH SYNOPSIS\n");

    private static string End(StringBuilder page)
    {
        page.Append(".SH EXIT STATUS\n");
        foreach ((string code, string says) in (ReadOnlySpan<(string, string)>)[
            ("0", "everything that is asked for is met, or the work is done"), ("1", "something that is asked for is not met"),
            ("2", "the input or the call cannot be used"), ("70", "a fault of the program"), ("128+n", "ended by signal n")])
        {
            page.Append(".TP\n.B ").Append(code).Append('\n').Append(Text(says)).Append('\n');
        }

        page.Append(".SH ENVIRONMENT\n.TP\n.B NO_COLOR\n").Append(Text("Where it is set and not empty, nothing is coloured."))
            .Append("\n.SH NOTES\n").Append(Text(Cautions.All[0]))
            .Append("\n.SH EXAMPLES\n.nf\nfrontend new mine.toml\nfrontend check mine.toml\nfrontend explain mine.toml noise.total\nfrontend sheet mine.toml \\-o mine.html\n.fi\n");
        return page.ToString();
    }

    private static string Usage(Command command, IReadOnlyList<string> above) => string.Join(' ',
        [.. above, command.Name, .. command.Arguments.Select(one => one.Arity.MinimumNumberOfValues == 0 ? $"[{one.Name}]" : one.Name), .. command.Options.Count > 0 ? (string[])["[option ...]"] : []]);

    private static void Symbols(StringBuilder page, Command command)
    {
        foreach (Argument argument in command.Arguments)
        {
            page.Append(".TP\n.I ").Append(Text(argument.Name)).Append('\n').Append(Text(argument.Description ?? "")).Append('\n');
        }

        foreach (Option option in command.Options.Where(one => !one.Hidden))
        {
            string names = string.Join(", ", option.Aliases.Where(alias => alias is not ("/?" or "/h" or "-?")).Prepend(option.Name).Distinct(StringComparer.Ordinal));
            page.Append(".TP\n.B ").Append(Text(names)).Append(option.HelpName is { } value ? $" \\fI{Text(value)}\\fR" : "").Append('\n').Append(Text(option.Description ?? ""))
                .Append(option.HasDefaultValue && option.GetDefaultValue() is string { Length: > 0 } usual ? Text($"; default: {usual}") : "").Append('\n');
        }
    }

    /// <summary>Text as the formatter takes it: its own signs escaped, no line that begins as a macro does.</summary>
    private static string Text(string text)
    {
        string plain = text.Replace("\\", "\\e", StringComparison.Ordinal).Replace("-", "\\-", StringComparison.Ordinal).ReplaceLineEndings(" ");
        return plain.Length > 0 && plain[0] is '.' or '\'' ? "\\&" + plain : plain;
    }
}
