using System.CommandLine;
using System.CommandLine.Parsing;
using FrontEnd.Bench;
using FrontEnd.DesignedFilters;
using FrontEnd.Documents;
using FrontEnd.Documents.Sheets;
using FrontEnd.Fields;
using FrontEnd.Filters;
using FrontEnd.Head;
using FrontEnd.Reporting;
using FrontEnd.Simulation;
using FrontEnd.Teaching;

namespace FrontEnd.App.Commands;

/// <summary>What a shell may put in when a call is half typed: commands, options and, where the program knows them, values. Files are the shell's
/// own business.</summary>
internal static class Completions
{
    /// <summary>The word in front of a half-typed line, as the shells' scripts send it: <c>[suggest:17]</c>, with the place of the cursor.</summary>
    public const string Directive = "[suggest";

    /// <summary>The values of an argument or option by command and name; an empty command means every one. A design is the one that the line names.</summary>
    private static readonly (string Command, string Name, Func<DesignDocument?, IEnumerable<string>> Values)[] Known =
    [
        ("explain", "id", Ids),
        ("glossary", "term", _ => Glossary.All.Select(term => term.Name)),
        ("lesson", "name", _ => Lessons.All.Select(lesson => lesson.Name)),
        ("problems", "--topic", _ => Topics.Words),
        ("problems", "--level", _ => ["1", "2", "3"]),
        ("mark", "--half-points", _ => ["yes", "no"]),
        ("cards", "which", _ => [.. CardsCommand.Words, .. CardsCommand.Names]),
        ("new", "kind", _ => CardsCommand.Words),
        ("schema", "kind", _ => SchemaCommand.Words),
        ("completion", "shell", _ => CompletionCommand.Shells),
        ("sites", "--montage", _ => Sites.Montages.Keys),
        ("bench", "--test", Tests),
        ("samples", "--signal", _ => HeadSignal.All.Select(signal => signal.Word)),
        ("samples", "--without", design => LeftOut.WordsOf(design?.Design ?? Starter()).Distinct(StringComparer.Ordinal)),
        ("pairs", "--band", design => (design is null ? Designs.Band.Conventional : design.Design.Bands).Select(band => band.Name)),
        ("pairs", "--shells", _ => HeadWords.Shells.Keys),
        ("pairs", "--amplitude-kind", _ => HeadWords.Amplitudes.Keys),
        ("spread", "--distribution", _ => SpreadCommand.DistributionWords),
        ("filter", "--family", _ => FilterWords.Families.Keys),
        ("filter", "--topology", _ => FilterParts.Topologies.Keys),
        ("filter", "--normalisation", _ => FilterWords.Normalisations.Keys),
        ("notch", "--topology", _ => FilterParts.Notches.Keys),
        ("fir", "--method", _ => FilterWords.Methods.Keys),
        ("", "--shape", _ => FilterWords.Shapes.Keys),
        ("", "--word", _ => CoefficientOutput.Words.Keys),
        ("", "--form", _ => CoefficientOutput.Forms.Keys),
        ("", "--op-amp", _ => DesignDocument.CardNames(CardClass.OpAmp)),
        ("", "--from", _ => SiteNames), ("sites", "--to", _ => SiteNames), ("", "--sites", _ => SiteNames),
        ("", "--under", _ => SiteNames), ("", "--wall-towards", _ => SiteNames),
        ("", "--paper", _ => Paper.All.Select(paper => paper.Word)),
    ];

    /// <summary>Options that take several values in one word, and what stands between them: the last is the one that is typed.</summary>
    private static readonly Dictionary<string, char[]> Lists = new(StringComparer.Ordinal)
    {
        ["--signal"] = [','], ["--without"] = [','], ["--topic"] = [','], ["--sites"] = [' ', ',', ';', '-'],
    };

    private static IEnumerable<string> SiteNames => Sites.All.Select(site => site.Name);

    /// <summary>The names in the table, each of an argument or option that is there.</summary>
    internal static IEnumerable<string> Names => Known.Select(one => one.Name);

    /// <summary>True where an argument or option has values that the program knows.</summary>
    public static bool Knows(Command command, string name) => Values(command, name) is not null;

    /// <summary>Prints what may follow, one a line: only what begins as the word under the cursor does.</summary>
    /// <param name="args">The directive and the line.</param>
    public static int Print(RootCommand root, string[] args, Outlet outlet)
    {
        string line = args.Length > 1 ? args[1] : "";
        int colon = args[0].IndexOf(':', StringComparison.Ordinal);
        int cursor = colon >= 0 && int.TryParse(args[0].AsSpan(colon + 1).TrimEnd(']'), out int place) ? Math.Clamp(place, 0, line.Length) : line.Length;
        foreach (string answer in Of(root, CompletionLine.Of(line[..cursor])))
        {
            outlet.Results.WriteLine(answer);
        }

        return ExitCode.Met;
    }

    private static IEnumerable<string> Of(RootCommand root, CompletionLine line)
    {
        ParseResult call = root.Parse([.. line.Before], new ParserConfiguration { ResponseFileTokenReplacer = null });
        Command command = call.CommandResult.Command;
        // Behind a double hyphen no word is an option, whatever it begins with.
        bool isOptions = !line.Before.Contains("--");
        if (isOptions && line.Before.Count != 0 && Option(command, line.Before[^1]) is { } waiting && TakesValue(waiting))
        {
            return Beginning(line.Word, ValuesOf(waiting, call, line.Word));
        }

        // A value behind an equals sign belongs to the word.
        if (isOptions && line.Word.StartsWith('-') && line.Word.IndexOf('=', StringComparison.Ordinal) is > 0 and int sign)
        {
            return Option(command, line.Word[..sign]) is { } option && TakesValue(option)
                ? Beginning(line.Word, ValuesOf(option, call, line.Word[(sign + 1)..]).Select(value => line.Word[..(sign + 1)] + value))
                : [];
        }

        if (isOptions && line.Word.StartsWith('-'))
        {
            return Beginning(line.Word, OptionsOf(command));
        }

        // Behind a word that is nothing here, nothing is known.
        if (call.UnmatchedTokens.Count != 0)
        {
            return [];
        }

        int given = call.CommandResult.Children.OfType<ArgumentResult>().Sum(result => result.Tokens.Count);
        string[] answers = [.. Beginning(line.Word, [.. given == 0 ? command.Subcommands.Select(inner => inner.Name) : [], .. ArgumentsOf(call, given)])];
        // Where there is nothing else to be typed the options are the answer; where a file is, the shell's files.
        return isOptions && answers.Length == 0 && line.Word.Length == 0 && Next(command, given) is null ? OptionsOf(command) : answers;
    }

    private static IEnumerable<string> Beginning(string word, IEnumerable<string> answers) =>
        answers.Where(answer => answer.StartsWith(word, StringComparison.OrdinalIgnoreCase)).Distinct(StringComparer.Ordinal);

    /// <summary>The argument that is next, where some are given.</summary>
    private static Argument? Next(Command command, int given)
    {
        foreach (Argument argument in command.Arguments)
        {
            if (given < argument.Arity.MaximumNumberOfValues)
            {
                return argument;
            }

            given -= argument.Arity.MaximumNumberOfValues;
        }

        return null;
    }

    private static IEnumerable<string> ArgumentsOf(ParseResult call, int given)
    {
        Command command = call.CommandResult.Command;
        return Next(command, given) is { } next && Values(command, next.Name) is { } values ? values(DesignOf(call)) : [];
    }

    private static IEnumerable<string> OptionsOf(Command command) =>
        command.Options.Where(option => !option.Hidden).Select(option => option.Name).Append("--help");

    private static Option? Option(Command command, string name) =>
        command.Options.FirstOrDefault(option => option.Name == name || option.Aliases.Contains(name));

    private static bool TakesValue(Option option) => option.ValueType != typeof(bool) && option.Arity.MaximumNumberOfValues > 0;

    private static IEnumerable<string> ValuesOf(Option option, ParseResult call, string word)
    {
        if (Values(call.CommandResult.Command, option.Name) is not { } values)
        {
            return [];
        }

        string before = Lists.TryGetValue(option.Name, out char[]? between) ? word[..(word.LastIndexOfAny(between) + 1)] : "";
        return values(DesignOf(call)).Select(value => before + value);
    }

    private static Func<DesignDocument?, IEnumerable<string>>? Values(Command command, string name) =>
        Array.Find(Known, one => (one.Command.Length == 0 || one.Command == command.Name) && one.Name == name).Values;

    /// <summary>The design that the line names so far; null where there is none that can be used.</summary>
    private static DesignDocument? DesignOf(ParseResult call)
    {
        string? path = call.CommandResult.Children.OfType<ArgumentResult>().FirstOrDefault(result => result.Argument.Name == "design")?.Tokens is [var first, ..] ? first.Value : null;
        if (path is null || !File.Exists(path))
        {
            return null;
        }

        DesignDocument document = DesignDocument.Read(path);
        return document.HasErrors || document.NotAllKnown is not null ? null : document;
    }

    /// <summary>The results that the design has; without one those that any design has.</summary>
    private static IEnumerable<string> Ids(DesignDocument? design) =>
        design is null ? Explanations.All.Select(one => one.Pattern.Text).Where(text => !text.Contains('*', StringComparison.Ordinal))
        : Evaluator.Evaluate(design.Design).Results.Select(result => result.Id.Text);

    private static IEnumerable<string> Tests(DesignDocument? design) =>
        BenchPlan.Of(design?.Design ?? Starter()).Readings.Select(reading => reading.Name);

    private static Designs.Design Starter() => DesignInput.Read(null).Design;
}
