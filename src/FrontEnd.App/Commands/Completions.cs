using System.CommandLine;
using System.CommandLine.Completions;
using FrontEnd.Head;
using FrontEnd.Teaching;

namespace FrontEnd.App.Commands;

/// <summary>What a shell may put in when a call is half typed: commands, options and, where the program knows them, values. Files are the shell's
/// own business.</summary>
internal static class Completions
{
    /// <summary>The word in front of a half-typed line, as the shells' scripts send it: <c>[suggest:17]</c>, with the place of the cursor.</summary>
    public const string Directive = "[suggest";

    /// <summary>The values of arguments and options by their command and name; an empty command means every one.</summary>
    private static readonly (string Command, string Name, Func<IEnumerable<string>> Values)[] Known =
    [
        ("explain", "id", () => Explanations.All.Select(one => one.Pattern.Text).Where(text => !text.Contains('*', StringComparison.Ordinal))),
        ("glossary", "term", () => Glossary.All.Select(term => term.Name)),
        ("lesson", "name", () => Lessons.All.Select(lesson => lesson.Name)),
        ("spread", "--distribution", () => SpreadCommand.DistributionWords),
        ("problems", "--topic", () => Topics.Words),
        ("problems", "--level", () => ["1", "2", "3"]),
        ("cards", "which", () => [.. CardsCommand.Words, .. CardsCommand.Names]),
        ("new", "kind", () => CardsCommand.Words),
        ("schema", "kind", () => SchemaCommand.Words),
        ("completion", "shell", () => CompletionCommand.Shells),
        ("sites", "--montage", () => Sites.Montages.Keys),
        ("", "--from", SiteNames), ("", "--to", SiteNames), ("", "--sites", SiteNames), ("", "--reference", SiteNames),
        ("", "--series", () => Enum.GetNames<PreferredSeries>()),
        ("", "--paper", () => Documents.Sheets.Paper.All.Select(paper => paper.Word)),
    ];

    /// <summary>Lets every argument and option of the tree know its values.</summary>
    public static void AddTo(Command command)
    {
        foreach ((string name, Func<IEnumerable<string>> values) in Known.Where(one => one.Command.Length == 0 || one.Command == command.Name)
            .Select(one => (one.Name, one.Values)))
        {
            IEnumerable<CompletionItem> Items(CompletionContext _) => values().Select(value => new CompletionItem(value));
            command.Arguments.FirstOrDefault(one => one.Name == name)?.CompletionSources.Add(Items);
            command.Options.FirstOrDefault(one => one.Name == name)?.CompletionSources.Add(Items);
        }

        foreach (Command inner in command.Subcommands)
        {
            AddTo(inner);
        }
    }

    /// <summary>Prints what may follow, one a line: only what begins as the word under the cursor does.</summary>
    /// <param name="args">The directive and the line.</param>
    public static int Print(RootCommand root, string[] args, Outlet outlet)
    {
        string line = args.Length > 1 ? args[1] : "";
        int colon = args[0].IndexOf(':', StringComparison.Ordinal);
        int cursor = colon >= 0 && int.TryParse(args[0].AsSpan(colon + 1).TrimEnd(']'), out int place) ? Math.Clamp(place, 0, line.Length) : line.Length;
        AddTo(root);
        string typed = line[..cursor];
        string word = typed[(typed.LastIndexOf(' ') + 1)..];
        foreach (string label in root.Parse(typed).GetCompletions(cursor).Select(item => item.InsertText ?? item.Label)
            .Where(label => label.StartsWith(word, StringComparison.OrdinalIgnoreCase) && IsOurs(label, word)).Distinct(StringComparer.Ordinal).OrderBy(label => label[0] == '-'))
        {
            outlet.Results.WriteLine(label);
        }

        return ExitCode.Met;
    }

    /// <summary>Options are offered once they are begun, or where nothing else can follow; the library's other spellings of help never.</summary>
    private static bool IsOurs(string label, string word) =>
        label is not ("/?" or "/h" or "-?") && (label[0] != '-' || word.Length == 0 || word[0] == '-');

    private static IEnumerable<string> SiteNames() => Sites.All.Select(site => site.Name);
}
