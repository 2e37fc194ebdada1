using System.CommandLine;
using System.Globalization;
using System.Text;
using System.Text.Json;
using FrontEnd.Documents.Sheets;
using FrontEnd.Spread;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend spread</c>: how the figures of many devices of one design spread.</summary>
internal static class SpreadCommand
{
    private const int BarWidth = 40;

    public static Command Make(Outlet outlet)
    {
        Argument<string> design = new("design") { Description = "design file, TOML or plain-number JSON" };
        Option<int> builds = new("--builds") { Description = "devices to draw; default: 10000", DefaultValueFactory = _ => 10_000 };
        Option<ulong> seed = new("--seed") { Description = "seed of the random numbers; default: 1", DefaultValueFactory = _ => 1UL };
        Option<string> distribution = new("--distribution") { Description = "resistors and capacitors uniform within their tolerance, or normal with tolerance = 3σ; default: uniform", DefaultValueFactory = _ => "uniform" };
        distribution.AcceptOnlyFromAmong("uniform", "normal");
        Option<bool> worst = new("--worst-phase-margin") { Description = "also the driven ground's least margin over all loads of every device, which takes long; default: leave it out" };
        Option<string?> least = new("--yield") { Description = "least share of devices that must meet every requirement, such as 99%; default: judge nothing" };
        Option<bool> json = new("--json") { Description = "print JSON with numbers in SI units; default: text" };
        Command command = new("spread", "Draws devices of a design and shows how their figures spread. Exit code 0: done, 1: below --yield, 2: the design cannot be used.") { design, builds, seed, distribution, worst, least, json };
        command.SetAction(call =>
        {
            double? share = null;
            if (call.GetValue(least) is { } text)
            {
                if (!double.TryParse(text.TrimEnd('%', ' '), NumberStyles.Float, CultureInfo.InvariantCulture, out double percent) || percent is not (>= 0 and <= 100))
                {
                    outlet.Tell(CallMessages.Call($"'{text}' is not a share such as 99%", "frontend spread"));
                    return ExitCode.Unusable;
                }

                share = percent / 100;
            }

            if (call.GetValue(builds) is not (>= 1 and <= 10_000_000))
            {
                outlet.Tell(CallMessages.Call("--builds takes a number from 1 to 10000000", "frontend spread"));
                return ExitCode.Unusable;
            }

            SpreadOptions options = new()
            {
                Builds = call.GetValue(builds),
                Seed = call.GetValue(seed),
                Distribution = call.GetValue(distribution) == "normal" ? PartDistribution.Normal : PartDistribution.Uniform,
                WorstPhaseMargin = call.GetValue(worst),
            };
            return Run(call.GetValue(design)!, options, share, call.GetValue(json), outlet);
        });
        return command;
    }

    private static int Run(string path, SpreadOptions options, double? least, bool json, Outlet outlet)
    {
        if (DesignInput.Usable(path, outlet) is not { } document)
        {
            return ExitCode.Unusable;
        }

        SpreadResult? result = SpreadRun.Run(document.Design, options, Console.IsErrorRedirected ? null : new Bar(options.Builds, outlet.Messages));
        if (result is null)
        {
            Finding[] errors = [.. Evaluator.Evaluate(document.Design).Findings.Where(finding => finding.Severity == Severity.Error)];
            outlet.Tell(errors.Length != 0 ? errors : [CallMessages.Call("some build of this design makes a network without an answer", "frontend spread")]);
            return ExitCode.Unusable;
        }

        outlet.Results.Write(json ? Json(result) : SpreadText.Of(result));
        return least is { } share && !(share <= result.Yield) ? ExitCode.NotMet : ExitCode.Met;
    }

    /// <summary>A line that is written over; the last one takes itself away.</summary>
    private sealed class Bar(int builds, TextWriter messages) : IProgress<int>
    {
        private readonly Lock _lock = new();
        private int _shown = -1;

        public void Report(int value)
        {
            lock (_lock)
            {
                int percent = (int)(100L * value / builds);
                if (percent <= _shown)
                {
                    return;
                }

                _shown = percent;
                string bar = new string('#', percent * BarWidth / 100).PadRight(BarWidth, '.');
                messages.Write(percent == 100 ? "\r" + new string(' ', BarWidth + 8) + "\r" : $"\r[{bar}] {percent,3} %");
                messages.Flush();
            }
        }
    }

    private static string Json(SpreadResult result)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter writer = new(stream, new JsonWriterOptions { Indented = true }))
        {
            writer.WriteStartObject();
            writer.WriteString("design", result.Design.Name);
            writer.WriteNumber("builds", result.Options.Builds);
            writer.WriteNumber("seed", result.Options.Seed);
            writer.WriteString("distribution", result.Options.Distribution == PartDistribution.Normal ? "normal" : "uniform");
            Number(writer, "yield", result.Yield);
            writer.WriteStartArray("figures");
            foreach (SpreadFigure figure in result.Figures)
            {
                writer.WriteStartObject();
                writer.WriteString("id", figure.Id);
                writer.WriteString("unit", figure.Unit);
                Number(writer, "nominal", figure.Nominal);
                Number(writer, "mean", figure.Mean);
                Number(writer, "standard_deviation", figure.StandardDeviation);
                Number(writer, "least_corner", figure.Least);
                Number(writer, "most_corner", figure.Most);
                Number(writer, "yield", figure.Yield);
                Number(writer, "limit", figure.Limit);
                writer.WriteStartObject("percentiles");
                for (int i = 0; i < figure.Percentiles.Count; i++)
                {
                    Number(writer, SpreadFigure.Percents[i].ToString(CultureInfo.InvariantCulture), figure.Percentiles[i]);
                }

                writer.WriteEndObject();
                writer.WriteStartObject("rank_correlation");
                foreach (RankCorrelation rank in figure.Ranks)
                {
                    Number(writer, rank.Key, rank.Coefficient);
                }

                writer.WriteEndObject();
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static void Number(Utf8JsonWriter writer, string name, double? value)
    {
        if (value is { } number && double.IsFinite(number))
        {
            writer.WriteNumber(name, number);
        }
        else
        {
            writer.WriteNull(name);
        }
    }
}
