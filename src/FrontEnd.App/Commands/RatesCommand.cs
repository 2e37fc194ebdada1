using System.CommandLine;
using FrontEnd.Documents.Sheets;
using FrontEnd.Rates;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend rates</c>: the design at several sampling rates, and which to take.</summary>
internal static class RatesCommand
{
    private const int MostRates = 64;

    public static Command Make(Outlet outlet)
    {
        Argument<string> design = new("design") { Description = "design file, TOML or plain-number JSON" };
        Option<string?> rates = new("--rates") { Description = $"rates to compare, in samples per second, separated by commas; default: {string.Join(',', RateStudy.Candidates.Select(rate => QuantityText.FormatTrimmed(rate.Hertz, "1", 6)))}" };
        Option<bool> json = OptionValues.Json();
        Command command = new("rates",
            "Compares sampling rates: anti-alias order, where mains of 50 and 60 Hz lands and how much is left of it, droop, delay. Exit code 0: the recommended rate meets every requirement that depends on it, 1: none does, 2: the call or the design cannot be used.") { design,
            rates, json };
        command.SetAction(call => Run(call.GetRequiredValue(design), call.GetValue(rates), call.GetValue(json), outlet));
        return command;
    }

    private static int Run(string path, string? rates, bool json, Outlet outlet)
    {
        if (!TryRates(rates, out List<Frequency>? wanted, out Finding? problem))
        {
            outlet.Tell(problem!);
            return ExitCode.Unusable;
        }

        if (DesignInput.Usable(path, outlet) is not { } document)
        {
            return ExitCode.Unusable;
        }

        RateComparison comparison = RateStudy.Compare(document.Design, wanted);
        outlet.Results.Write(json ? AnswerJson.Of(comparison) : RatesText.Of(comparison));
        if (comparison.Pick is null)
        {
            outlet.Tell(CallMessages.NoRate(rates is null ? path : "--rates", comparison.Because));
        }

        return comparison.Pick is null ? ExitCode.Unusable : comparison.Pick.Verdict == VerdictKind.Fail ? ExitCode.NotMet : ExitCode.Met;
    }

    private static bool TryRates(string? text, out List<Frequency>? rates, out Finding? problem)
    {
        (rates, problem) = (null, null);
        if (text is null)
        {
            return true;
        }

        rates = [];
        foreach (string word in text.Split(',', StringSplitOptions.TrimEntries))
        {
            bool bare = word.Length != 0 && word.All(c => char.IsAsciiDigit(c) || c == '.');
            if (!QuantityText.TryParse(bare ? word + " Hz" : word, out Frequency rate, out ParseProblem? parse))
            {
                string[] words = text.Split([',', ';', ' ', '-'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
                problem = parse!.ToFinding("--rates", word);
                problem = words.Length > 1 && words.All(NumberMeant.IsNumber) ? problem with { Help = CallMessages.Listed(words), Note = "commas stand between the rates" } : problem;
                return false;
            }

            if (rate.Hertz <= 0 || 1e6 < rate.Hertz || MostRates <= rates.Count)
            {
                problem = new Finding(Messages.RateOutOfRange, Severity.Error, "--rates", $"`{word}` is not a usable sampling rate",
                    null, $"give at most {MostRates} rates above 0 Hz and up to 1 MHz");
                return false;
            }

            rates.Add(rate);
        }

        return true;
    }
}
