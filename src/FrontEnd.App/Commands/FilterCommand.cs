using System.CommandLine;
using FrontEnd.Amplifier;
using FrontEnd.AntiAlias;
using FrontEnd.Documents;
using FrontEnd.Documents.Sheets;
using FrontEnd.Fields;
using FrontEnd.Filters;
using FrontEnd.Quantities;
using FrontEnd.Text;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend filter</c>: one filter from what is asked of it.</summary>
internal static class FilterCommand
{
    public static Command Make(Outlet outlet)
    {
        Options options = new();
        Command command = new("filter", "Designs a filter and shows what it does and what it is built of. Exit code 0: done, 2: there is no such filter.");
        foreach (Option option in options.All)
        {
            command.Options.Add(option);
        }

        command.SetAction(call => Run(call, options, outlet));
        return command;
    }

    private static int Run(ParseResult call, Options options, Outlet outlet)
    {
        List<Finding> findings = [];
        bool notch = string.Equals(call.GetRequiredValue(options.Shape), NotchWord, StringComparison.Ordinal);
        FilterWish? wish = notch ? Notch(call, options, findings) : Designed(call, options, findings);
        FilterParts build = new()
        {
            OpAmp = OpAmp(call.GetValue(options.OpAmp), options.OpAmp.Name, findings),
            Topology = notch || call.GetValue(options.Topology) is not { } section ? SectionKind.SallenKey : Word(section, options.Topology.Name, Topologies, findings),
            Notch = !notch || call.GetValue(options.Topology) is not { } circuit ? NotchKind.TwinT : Word(circuit, options.Topology.Name, NotchTopologies, findings),
        };
        FilterAnswer? answer = findings.Count == 0 ? wish!.Design() : null;
        findings.AddRange(answer?.Findings ?? []);
        outlet.Tell(findings);
        if (answer?.ZeroPoleGain is null)
        {
            return ExitCode.Unusable;
        }

        outlet.Results.Write(call.GetValue(options.Json) ? FilterJson.Of(answer) : FilterPage.Of(answer, build));
        return ExitCode.Met;
    }

    /// <summary>A notch by centre and Q.</summary>
    private static FilterWish? Notch(ParseResult call, Options options, List<Finding> findings)
    {
        List<Frequency> corners = Frequencies(call.GetRequiredValue(options.Corner), options.Corner.Name, findings) ?? [];
        Frequency? rate = Quantity<Frequency>(call.GetValue(options.Rate), options.Rate.Name, findings);
        double? q = call.GetValue(options.Q);
        foreach (Option option in (Option[])[options.Family, options.Order, options.StopFrequency, options.Ripple, options.Attenuation])
        {
            if (call.GetResult(option) is { Implicit: false })
            {
                findings.Add(CallMessages.NotForShape(option.Name, NotchWord));
            }
        }

        if (q is not > 0 || !double.IsFinite(q.Value))
        {
            findings.Add(CallMessages.NotchWants(options.Q.Name, "a number above 0", $"{options.Q.Name} 10"));
        }
        else if (corners is not [{ Hertz: > 0 } centre] || (rate is { } fs && (fs.Hertz / 2 <= centre.Hertz * (1 + (1 / (2 * q.Value))))))
        {
            findings.Add(CallMessages.NotchWants(options.Corner.Name, "one frequency above 0, its flank below half of a sampling rate", $"{options.Corner.Name} 50Hz"));
        }

        return findings.Count == 0 ? FilterWish.Notch(corners[0], q!.Value, rate) : null;
    }

    /// <summary>A part card's figures; the default op-amp where none is named.</summary>
    private static OpAmp OpAmp(string? card, string option, List<Finding> findings)
    {
        if (card is null)
        {
            return Amplifier.OpAmp.MicropowerCmos;
        }

        (OpAmp opAmp, IReadOnlyList<Finding> wrong) = DesignDocument.OpAmpCard(card, Environment.CurrentDirectory);
        findings.AddRange(wrong.Select(finding => finding with { Field = option }));
        return opAmp;
    }

    private static FilterWish? Designed(ParseResult call, Options options, List<Finding> findings)
    {
        if (call.GetValue(options.Family) is null)
        {
            findings.Add(CallMessages.FamilyMissing(options.Family.Name, FilterWords.Families.Keys));
        }

        if (call.GetResult(options.Q) is { Implicit: false })
        {
            findings.Add(CallMessages.NotForShape(options.Q.Name, call.GetRequiredValue(options.Shape)));
        }

        return new()
        {
            Family = call.GetValue(options.Family) is { } family ? Word(family, options.Family.Name, FilterWords.Families, findings) : default,
            Shape = Word(call.GetRequiredValue(options.Shape), options.Shape.Name, ShapeWords, findings),
            Corners = Frequencies(call.GetRequiredValue(options.Corner), options.Corner.Name, findings) ?? [],
            Order = call.GetValue(options.Order),
            StopEdges = Frequencies(call.GetValue(options.StopFrequency), options.StopFrequency.Name, findings),
            Rate = Quantity<Frequency>(call.GetValue(options.Rate), options.Rate.Name, findings),
            Ripple = Quantity<Decibels>(call.GetValue(options.Ripple), options.Ripple.Name, findings),
            Attenuation = Quantity<Decibels>(call.GetValue(options.Attenuation), options.Attenuation.Name, findings),
            Normalisation = Word(call.GetValue(options.Normalisation) ?? "magnitude", options.Normalisation.Name, Normalisations, findings),
        };
    }

    private const string NotchWord = "notch";

    /// <summary>The shapes; <see cref="NotchWord"/> stands among them for the sake of what is listed, and is taken out before.</summary>
    private static readonly Dictionary<string, FilterShape> ShapeWords = new(FilterWords.Shapes, StringComparer.Ordinal) { [NotchWord] = FilterShape.BandStop };

    private static readonly Dictionary<string, SectionKind> Topologies = new(StringComparer.Ordinal)
    {
        ["sallen-key"] = SectionKind.SallenKey,
        ["sallen-key-equal"] = SectionKind.SallenKeyEqual,
        ["multiple-feedback"] = SectionKind.MultipleFeedback,
    };

    private static readonly Dictionary<string, NotchKind> NotchTopologies = new(StringComparer.Ordinal)
    {
        ["twin-t"] = NotchKind.TwinT,
        ["state-variable"] = NotchKind.StateVariable,
    };

    private static readonly Dictionary<string, BesselNormalisation> Normalisations = new(StringComparer.Ordinal)
    {
        ["delay"] = BesselNormalisation.Delay,
        ["magnitude"] = BesselNormalisation.Magnitude,
    };

    private static T Word<T>(string text, string option, IReadOnlyDictionary<string, T> words, List<Finding> findings)
        where T : struct
    {
        if (words.TryGetValue(text, out T value))
        {
            return value;
        }

        findings.Add(CallMessages.NoWord(option, text, words.Keys, Nearest.Of(text, words.Keys)));
        return default;
    }

    private static List<Frequency>? Frequencies(string? text, string option, List<Finding> findings)
    {
        if (text is null)
        {
            return null;
        }

        List<Frequency> frequencies = [];
        foreach (string part in text.Split(','))
        {
            if (Quantity<Frequency>(part, option, findings) is { } frequency)
            {
                frequencies.Add(frequency);
            }
        }

        return frequencies;
    }

    private static T? Quantity<T>(string? text, string option, List<Finding> findings)
        where T : struct, IQuantity
    {
        if (text is null)
        {
            return null;
        }

        if (QuantityText.TryParse(text, out T value, out ParseProblem? problem))
        {
            return value;
        }

        findings.Add(problem!.ToFinding(option, text));
        return null;
    }

    private sealed class Options
    {
        public Option<string> Family { get; } = new("--family") { Description = "approximation: " + string.Join(", ", FilterWords.Families.Keys) + "; a notch has none", HelpName = "word" };

        public Option<string> Shape { get; } = new("--shape") { Description = "what it passes: " + string.Join(", ", ShapeWords.Keys) + " (with --q)", Required = true, HelpName = "word" };

        public Option<string> Corner { get; } = new("--corner")
        {
            Description = "corner, for a band shape both, such as 8Hz,13Hz: -3 dB for butterworth, bessel and critically-damped; ripple edge for chebyshev and elliptic; stop edge for inverse-chebyshev. "
                + "For a notch its centre. Together with --stop-frequency: the edge of the pass band",
            Required = true,
            HelpName = "F[,F]",
        };

        public Option<int?> Order { get; } = new("--order") { Description = "order of the prototype, 1 to 20, for band shapes 1 to 10 with twice as many poles", HelpName = "N" };

        public Option<string?> StopFrequency { get; } = new("--stop-frequency") { Description = "in place of --order: edge of the stop band, for a band shape both; the least order is sought", HelpName = "F[,F]" };

        public Option<string?> Rate { get; } = new("--rate") { Description = "sampling rate; default: an analogue filter", HelpName = "F" };

        public Option<string?> Ripple { get; } = new("--ripple") { Description = "largest loss in the pass band, such as 0.5dB; default where an order is sought: half the power, 3.01 dB", HelpName = "dB" };

        public Option<string?> Attenuation { get; } = new("--attenuation") { Description = "least loss in the stop band, such as 60dB", HelpName = "dB" };

        public Option<string?> Normalisation { get; } = new("--normalisation") { Description = "bessel: the corner is -3 dB (magnitude) or 1/(2π·group delay at 0 Hz) (delay); default: magnitude", HelpName = "word" };

        public Option<double?> Q { get; } = new("--q") { Description = "notch: centre over the width between its -3 dB points, such as 10", HelpName = "N" };

        public Option<string?> Topology { get; } = new("--topology")
        {
            Description = "circuit of an analogue low-pass: " + string.Join(", ", Topologies.Keys) + "; of an analogue notch: " + string.Join(", ", NotchTopologies.Keys) + "; default: the first", HelpName = "word",
        };

        public Option<string?> OpAmp { get; } = new("--op-amp")
        {
            Description = "part card of the op-amp that an analogue filter is built with: " + string.Join(", ", DesignDocument.CardNames(CardClass.OpAmp)) + ", or a file; default: a micropower CMOS whose offset, bias current and output resistance are not given",
            HelpName = "card",
        };

        public Option<bool> Json { get; } = new("--json") { Description = "print sections, zeros, poles and gain as JSON; default: text, 80 columns" };

        public IEnumerable<Option> All => [Family, Shape, Corner, Order, StopFrequency, Rate, Ripple, Attenuation, Normalisation, Q, Topology, OpAmp, Json];
    }
}
