using System.CommandLine;
using System.Globalization;
using FrontEnd.Documents.Sheets;
using FrontEnd.Spread;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend spread</c>: how the figures of many devices of one design spread.</summary>
internal static class SpreadCommand
{
    public static Command Make(Outlet outlet)
    {
        Argument<string> design = new("design") { Description = "design file, TOML or plain-number JSON" };
        Option<string> builds = new("--builds") { Description = "number of builds", DefaultValueFactory = _ => "10000" };
        Option<string> seed = SeedOption();
        Option<string> distribution = new("--distribution") { Description = "resistors and capacitors uniform within their tolerance, or normal with tolerance = 3σ", DefaultValueFactory = _ => "uniform", HelpName = string.Join('|', Distributions.Keys.Order(StringComparer.Ordinal)) };
        Option<string?> least = new("--yield") { Description = "minimum share of builds that must meet every requirement, such as 99%; default: not judged" };
        Option<bool> json = OptionValues.Json();
        Command command = new(
            "spread",
            "Simulates many builds of a design, with parts drawn within their tolerances, and shows how the figures spread. Exit code 0: done, 1: below --yield, 2: the design cannot be used, 130: interrupted.") { design, builds, seed, distribution, least, json };
        command.SetAction(call =>
        {
            List<Finding> wrong = [];
            SpreadOptions options = new()
            {
                Builds = Builds(call.GetValue(builds), wrong) ?? 1,
                Seed = Seed(call.GetRequiredValue(seed), wrong),
                Distribution = OptionValues.Word(call.GetRequiredValue(distribution), "--distribution", Distributions, wrong),
            };
            double? share = Share(call.GetValue(least), wrong);
            if (wrong.Count != 0)
            {
                outlet.Tell(wrong);
                return ExitCode.Unusable;
            }

            if (DesignInput.Usable(call.GetValue(design)!, outlet) is not { } document)
            {
                return ExitCode.Unusable;
            }

            if (LongWork.Spread(document.Design, options, outlet, out int exit) is not { } result)
            {
                return exit;
            }

            outlet.Results.Write(call.GetValue(json) ? AnswerJson.Of(result) : SpreadText.Of(result));
            return share is { } wanted && !(wanted <= result.Yield) ? ExitCode.NotMet : ExitCode.Met;
        });
        return command;
    }

    private static readonly Dictionary<string, PartDistribution> Distributions =
        new(StringComparer.Ordinal) { ["uniform"] = PartDistribution.Uniform, ["normal"] = PartDistribution.Normal };

    /// <summary>The words for how parts are drawn.</summary>
    public static IEnumerable<string> DistributionWords => Distributions.Keys;

    /// <summary>The option that chooses the random numbers.</summary>
    public static Option<string> SeedOption() =>
        new("--seed") { Description = "seed of the random numbers", DefaultValueFactory = _ => "1" };

    /// <summary>What <see cref="SeedOption"/> says; 1 beside the finding.</summary>
    public static ulong Seed(string text, List<Finding> findings) => OptionValues.Whole(text, "--seed", 0UL, ulong.MaxValue, findings) ?? 1;

    /// <summary>A number of builds that can be drawn; null where the option is not given or cannot be used.</summary>
    public static int? Builds(string? text, List<Finding> findings)
    {
        long? builds = OptionValues.Whole(text, "--builds", 1, long.MaxValue, findings, FormattableString.Invariant($"1 to {SpreadOptions.MostBuilds}"));
        if (builds is > SpreadOptions.MostBuilds)
        {
            findings.Add(CallMessages.TooManyBuilds(builds.Value));
            return null;
        }

        return (int?)builds;
    }

    private static double? Share(string? text, List<Finding> findings)
    {
        if (text is null)
        {
            return null;
        }

        if (double.TryParse(text.TrimEnd('%', ' '), NumberStyles.Float, CultureInfo.InvariantCulture, out double percent) && percent is >= 0 and <= 100)
        {
            return percent / 100;
        }

        findings.Add(CallMessages.NotAShare("--yield", text));
        return null;
    }
}
