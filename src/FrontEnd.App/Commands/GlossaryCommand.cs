using System.CommandLine;
using FrontEnd.Documents.Sheets;
using FrontEnd.Documents.Teaching;
using FrontEnd.Teaching;
using FrontEnd.Text;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend glossary</c>: symbols and terms.</summary>
internal static class GlossaryCommand
{
    public static Command Make(Outlet outlet)
    {
        Argument<string?> term = new("term") { Description = "term, symbol or short form, such as \"noise gain\", f_c or CMRR; default: all terms", Arity = ArgumentArity.ZeroOrOne };
        Option<bool> json = OptionValues.Json();
        Command command = new("glossary", "Explains a term or a symbol in a sentence.") { term, json };
        command.SetAction(call => Run(call.GetValue(term), call.GetValue(json), outlet));
        return command;
    }

    private static int Run(string? word, bool json, Outlet outlet)
    {
        IReadOnlyList<Term> terms = word is null ? Glossary.All : Glossary.Find(word);
        if (terms.Count == 0)
        {
            outlet.Tell(Messages.NoTerm(word!, Glossary.NearestTo(word!)));
            return ExitCode.Unusable;
        }

        outlet.Results.Write(json
            ? AnswerJson.Of(terms)
            : string.Concat(terms.Select(term => GlossaryText.Of(term, others: word is not null))));

        return ExitCode.Met;
    }
}
