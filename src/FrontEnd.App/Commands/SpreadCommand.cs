using System.CommandLine;
using System.Globalization;
using FrontEnd.Documents.Sheets;
using FrontEnd.Spread;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend spread</c>: how the figures of many devices of one design spread.</summary>
internal static class SpreadCommand
{
    /// <summary>How parts may be drawn.</summary>
    public static readonly IReadOnlyList<string> Distributions = ["uniform", "normal"];

    public static Command Make(Outlet outlet)
    {
        Argument<string> design = new("design") { Description = "design file, TOML or plain-number JSON" };
        Option<int> builds = new("--builds") { Description = "number of builds; default: 10000", DefaultValueFactory = _ => 10_000 };
        Option<ulong> seed = SeedOption();
        Option<string> distribution = new("--distribution") { Description = "resistors and capacitors uniform within their tolerance, or normal with tolerance = 3σ; default: uniform", DefaultValueFactory = _ => "uniform" };
        distribution.AcceptOnlyFromAmong([.. Distributions]);
        Option<string?> least = new("--yield") { Description = "minimum share of builds that must meet every requirement, such as 99%; default: not judged" };
        Option<bool> json = OptionValues.Json();
        Command command = new(
            "spread",
            "Simulates many builds of a design, with parts drawn within their tolerances, and shows how the figures spread. Exit code 0: done, 1: below --yield, 2: the design cannot be used, 130: interrupted.") { design, builds, seed, distribution, least, json };
        command.SetAction(call =>
        {
            double? share = null;
            if (call.GetValue(least) is { } text)
            {
                if (!double.TryParse(text.TrimEnd('%', ' '), NumberStyles.Float, CultureInfo.InvariantCulture, out double percent)
                    || percent is not (>= 0 and <= 100))
                {
                    outlet.Tell(CallMessages.Call($"'{text}' is not a share such as 99%", "frontend spread"));
                    return ExitCode.Unusable;
                }

                share = percent / 100;
            }

            if (!IsNumber(call.GetValue(builds), "spread", outlet)
                || DesignInput.Usable(call.GetValue(design)!, outlet) is not { } document)
            {
                return ExitCode.Unusable;
            }

            SpreadOptions options = new()
            {
                Builds = call.GetValue(builds),
                Seed = call.GetValue(seed),
                Distribution = call.GetValue(distribution) == "normal" ? PartDistribution.Normal : PartDistribution.Uniform,
            };
            if (LongWork.Spread(document.Design, options, outlet, out int exit) is not { } result)
            {
                return exit;
            }

            outlet.Results.Write(call.GetValue(json) ? AnswerJson.Of(result) : SpreadText.Of(result));
            return share is { } wanted && !(wanted <= result.Yield) ? ExitCode.NotMet : ExitCode.Met;
        });
        return command;
    }

    /// <summary>The option that chooses the random numbers.</summary>
    public static Option<ulong> SeedOption() =>
        new("--seed") { Description = "seed of the random numbers; default: 1", DefaultValueFactory = _ => 1UL };

    /// <summary>False for a number of builds that cannot be drawn; the outlet has been told.</summary>
    public static bool IsNumber(int builds, string command, Outlet outlet)
    {
        if (builds is >= 1 and <= SpreadOptions.MostBuilds)
        {
            return true;
        }

        outlet.Tell(builds < 1
            ? CallMessages.Call($"--builds takes a number from 1 to {SpreadOptions.MostBuilds}", $"frontend {command}")
            : CallMessages.TooManyBuilds(builds));
        return false;
    }
}
