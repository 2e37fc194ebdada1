using System.CommandLine;
using FrontEnd.Teaching;
using FrontEnd.Text;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend glossary</c>: symbols and terms.</summary>
internal static class GlossaryCommand
{
    public static Command Make(Outlet outlet)
    {
        Argument<string?> term = new("term") { Description = "term, symbol or short form, such as \"noise gain\", f_c or CMRR; default: all terms", Arity = ArgumentArity.ZeroOrOne };
        Command command = new("glossary", "Explains a term or a symbol in a sentence.") { term };
        command.SetAction(call => Run(call.GetValue(term), outlet));
        return command;
    }

    private static int Run(string? word, Outlet outlet)
    {
        IReadOnlyList<Term> terms = word is null ? Glossary.All : Glossary.Find(word);
        if (terms.Count == 0)
        {
            outlet.Tell(Messages.NoTerm(word!, Glossary.NearestTo(word!)));
            return ExitCode.Unusable;
        }

        foreach (Term term in terms)
        {
            string[] signs = [.. new[] { term.Symbol, term.Unit.Length == 0 ? "" : $"[{term.Unit}]" }.Where(sign => sign.Length > 0)];
            outlet.Results.WriteLine(term.Name + (signs.Length == 0 ? "" : $"  {string.Join(" ", signs)}"));
            outlet.Results.WriteLine($"  {term.Meaning}");
            if (word is not null && term.Others.Count > 0)
            {
                outlet.Results.WriteLine($"  also: {string.Join(", ", term.Others)}");
            }
        }

        return ExitCode.Met;
    }
}
