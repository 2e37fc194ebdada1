using System.CommandLine;
using System.CommandLine.Parsing;

namespace FrontEnd.App.Commands;

/// <summary>What is wrong with a call before a command sees it, told by what the call lacks or has too much: the library that reads calls says
/// it in words of its own, which nobody sees.</summary>
internal static class WrongCalls
{
    /// <summary>Nothing for a call that a command can look at.</summary>
    /// <param name="words">As they were typed.</param>
    public static IReadOnlyList<Finding> In(ParseResult call, string[] words)
    {
        CommandResult result = call.CommandResult;
        string name = string.Join(' ', Names(result).Reverse());

        // A command that there is not takes its options with it: none of them is looked at.
        if (result.Command is RootCommand && words is [[not '-', ..] first, _, ..] && !words.Any(word => word is "--help" or "-h" or "-?" or "--version"))
        {
            return [DesignInput.IsDesign(first) ? CallMessages.DesignAndMore(first, words[1..])
                : CallMessages.NoCommand(first, Nearest.Of(first, result.Command.Subcommands.Where(one => !one.Hidden).Select(one => one.Name)))];
        }

        // An unknown option alone, since whatever else is wrong follows from it.
        if (UnknownOption(call) is { } option)
        {
            return [CallMessages.NoOption(option, Nearest.Of(option, result.Command.Options.Select(known => known.Name)), name)];
        }

        if (FlagsWithValues(result.Command, words, name) is { Count: > 0 } flags)
        {
            return flags;
        }

        if (Unreadable(result, name) is { Count: > 0 } unreadable)
        {
            return unreadable;
        }

        // The library is content where one of several values is there.
        if (Values(result, name).ToArray() is { Length: > 0 } values)
        {
            return values;
        }

        if (call.Errors.Count == 0)
        {
            return [];
        }

        if (call.UnmatchedTokens is [var word, ..])
        {
            string[] inner = [.. result.Command.Subcommands.Where(one => !one.Hidden).Select(one => one.Name)];
            return [result.Command is RootCommand ? CallMessages.NoCommand(word, Nearest.Of(word, inner))
                : inner.Length != 0 && result.Command.Arguments.Count == 0 ? CallMessages.NoInner(word, inner, Nearest.Of(word, inner), name)
                : CallMessages.TooMuch(word, name)];
        }

        Finding[] missing = [.. Missing(result, name)];
        return missing.Length != 0 ? missing : [CallMessages.NotTaken(name)];
    }

    /// <summary>Options without their value, or with several where one is taken.</summary>
    private static IEnumerable<Finding> Values(CommandResult result, string name)
    {
        foreach (OptionResult given in result.Children.OfType<OptionResult>().Where(one => !one.Implicit && one.Option.ValueType != typeof(bool)))
        {
            ArgumentArity arity = given.Option.Arity;
            if (arity.MinimumNumberOfValues > 0 && given.Tokens.Count < given.IdentifierTokenCount)
            {
                yield return CallMessages.NoValue(given.Option.Name, given.Option.Description, name);
            }
            else if (arity.MaximumNumberOfValues < given.Tokens.Count || (arity.MaximumNumberOfValues == 1 && given.IdentifierTokenCount > 1))
            {
                yield return CallMessages.ManyValues(given.Option.Name, name);
            }
        }
    }

    /// <summary>Arguments and options that are not there.</summary>
    private static IEnumerable<Finding> Missing(CommandResult result, string name)
    {
        foreach (Argument argument in result.Command.Arguments.Where(one => (result.GetResult(one)?.Tokens.Count ?? 0) < one.Arity.MinimumNumberOfValues))
        {
            yield return CallMessages.NoArgument(argument.Name, argument.Description, name);
        }

        foreach (Option option in result.Command.Options.Where(one => one.Required && result.GetResult(one) is null or { Implicit: true }))
        {
            yield return CallMessages.OptionMissing(option.Name, option.Description, name);
        }
    }

    /// <summary>Names of files that are empty or hold what nobody can see; whatever else is written so is told where it is read.</summary>
    private static List<Finding> Unreadable(CommandResult result, string name)
    {
        IEnumerable<(string Place, Token Token)> words = result.Children.OfType<OptionResult>().Where(one => NamesFile(one.Option)).SelectMany(one => one.Tokens.Select(token => (one.Option.Name, token)))
            .Concat(result.Children.OfType<ArgumentResult>().SelectMany(one => one.Tokens.Select(token => (one.Argument.Name, token))));
        return [.. words.Where(word => string.IsNullOrWhiteSpace(word.Token.Value) || word.Token.Value.Any(IsUnseen))
            .Select(word => CallMessages.Empty(word.Place, string.IsNullOrWhiteSpace(word.Token.Value), name))];
    }

    /// <summary>The library takes <c>--all=no</c> for the flag and a word behind it, which becomes an argument where there is room for one.</summary>
    private static List<Finding> FlagsWithValues(Command command, string[] words, string name)
    {
        List<Finding> findings = [];
        foreach (string word in words.TakeWhile(word => word != "--"))
        {
            int equals = word.IndexOf('=', StringComparison.Ordinal);
            if (equals > 0 && word[0] == '-' && command.Options.FirstOrDefault(one => one.ValueType == typeof(bool) && (one.Name == word[..equals] || one.Aliases.Contains(word[..equals]))) is { } flag)
            {
                findings.Add(CallMessages.NoValueTaken(flag.Name, word[(equals + 1)..], name));
            }
        }

        return findings;
    }

    /// <summary>"filter fir" of `frontend filter fir`, innermost first; "frontend" last.</summary>
    private static IEnumerable<string> Names(SymbolResult? result)
    {
        for (; result is CommandResult { Command: var command }; result = result.Parent)
        {
            yield return command is RootCommand ? "frontend" : command.Name;
        }
    }

    /// <summary>The parser takes an unknown option for an argument where there is room for one: a design would be called
    /// <c>--jsn</c>. A number below zero is a value where an option has taken it for one.</summary>
    private static string? UnknownOption(ParseResult call)
    {
        HashSet<Token> values = [.. call.CommandResult.Children.OfType<OptionResult>().SelectMany(one => one.Tokens)];
        IEnumerable<Token> words = call.Tokens.TakeWhile(token => token.Type != TokenType.DoubleDash).Where(token => token.Type == TokenType.Argument);
        return words.FirstOrDefault(token => token.Value.Length > 1 && token.Value[0] == '-' && !(IsNumber(token.Value) && values.Contains(token)))?.Value;
    }

    private static bool NamesFile(Option option) => option.HelpName is "file" or "folder" or "design" or "card" || option.Name is "--measured" or "--narrow" or "--output" or "--as-built";

    private static bool IsUnseen(char letter) => char.IsControl(letter) && letter is not ('\t' or '\n' or '\r');

    private static bool IsNumber(string word) => char.IsAsciiDigit(word[1]) || (word[1] is '.' or ',' && word.Length > 2 && char.IsAsciiDigit(word[2]));
}
