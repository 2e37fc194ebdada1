using System.CommandLine;
using FrontEnd.Digital;
using FrontEnd.Documents;
using FrontEnd.Documents.Coefficients;
using FrontEnd.Documents.Files;
using FrontEnd.Filters;

namespace FrontEnd.App.Commands;

/// <summary>The options that send a digital filter to a coefficient file, and the writing.</summary>
internal sealed class CoefficientOutput
{
    internal static readonly IReadOnlyDictionary<string, DigitalWord> Words = Enum.GetValues<DigitalWord>().ToDictionary(
        DigitalArithmetic.WordOf, StringComparer.Ordinal);

    internal static readonly IReadOnlyDictionary<string, FilterForm> Forms = Enum.GetValues<FilterForm>().ToDictionary(
        DigitalArithmetic.FormOf, StringComparer.Ordinal);

    private readonly Option<string?> _file = new("--output", "-o")
    {
        Description = $"write coefficients for the firmware to this file instead of printing the page; the extension sets the format: {string.Join(", ", CoefficientFiles.Extensions)} (a C99 header with a self-test, JSON, CSV). An existing file is replaced",
        HelpName = "file",
    };

    private readonly Option<string?> _word = new("--word") { Description = "with -o: word format of the coefficients: "
        + string.Join(", ", Words.Keys) + "; default: double", HelpName = "word" };

    private readonly Option<string?> _form = new("--form") { Description = "with -o: structure of the sections: " + string.Join(", ", Forms.Keys)
        + "; default: transposed-2", HelpName = "word" };

    private readonly Option<string?> _fraction = new("--state-fraction") { Description = "with -o, sections in q31 or q15: bits below the sample's LSB in the states, 0 to 16; default: 0", HelpName = "N" };

    /// <param name="sections">False for filters without feedback: they have no form and no states.</param>
    public void AddTo(Command command, bool sections)
    {
        command.Options.Add(_file);
        command.Options.Add(_word);
        if (sections)
        {
            command.Options.Add(_form);
            command.Options.Add(_fraction);
        }
    }

    public string? File(ParseResult call) => call.GetValue(_file);

    /// <summary>What is wrong with the options, and the arithmetic that they ask for.</summary>
    public DigitalArithmetic Arithmetic(ParseResult call, List<Finding> findings)
    {
        if (File(call) is { } file && !CoefficientFiles.Knows(file))
        {
            findings.Add(WritingMessages.CoefficientFormat(file, CoefficientFiles.Extensions));
        }

        // Where a command has no such option its value is null.
        int fraction = call.CommandResult.Command.Options.Contains(_fraction) ? OptionValues.Whole(call.GetValue(_fraction), _fraction.Name, 0, 16, findings, code: CallMessages.UnknownWord) ?? 0 : 0;
        return new DigitalArithmetic
        {
            Word = OptionValues.Word(call.GetValue(_word) ?? "double", _word.Name, Words, findings),
            Form = OptionValues.Word((call.CommandResult.Command.Options.Contains(_form) ? call.GetValue(_form) : null)
                ?? "transposed-2", _form.Name, Forms, findings),
            StateFraction = fraction,
        };
    }

    /// <summary>Writes the export, or says why there is none.</summary>
    /// <param name="title">What is filtered, for the file's first lines.</param>
    /// <param name="export">Null where rounded poles are not inside the unit circle.</param>
    /// <param name="command">That writes them, with whether a program asks.</param>
    public static int Write(string file, string title, FilterExport? export, DigitalArithmetic arithmetic, (string Name, bool Json) command, Outlet outlet)
    {
        if (export is null)
        {
            outlet.Tell(CallMessages.RoundedUnstable(DigitalArithmetic.WordOf(arithmetic.Word)));
            return ExitCode.Unusable;
        }

        if (TextFiles.WriteAtomically(file, CoefficientFiles.Write(export, title, file)) is { } problem)
        {
            outlet.Tell(problem);
            return ExitCode.Unusable;
        }

        outlet.Wrote(command.Name, command.Json, [file]);
        return ExitCode.Met;
    }
}
